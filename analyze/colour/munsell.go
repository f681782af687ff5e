package colour

import (
	"fmt"
	"math"
)

// Munsell is a colour in Munsell notation.
// Hue on the ASTM scale [0, 100): 5R is 5, 5YR 15, 10RP 0. Value 0-10. Chroma ≥ 0.
type Munsell struct{ Hue, Value, Chroma float64 }

// neutralChroma is the chroma under which a colour is called neutral, as the
// ISCC-NBS blocks do. Source: [KellyJudd1976] section 13.
const neutralChroma = 0.5

// hueFamilies are the ten families of hue, each ten steps long.
// Source: [ASTMD1535].
var hueFamilies = [10]string{"R", "YR", "Y", "GY", "G", "BG", "B", "PB", "P", "RP"}

// String returns the notation to one decimal, "5.2YR 6.1/8.3", or "N 6.1" when
// chroma is under 0.5.
func (m Munsell) String() string {
	value := roundTo(m.Value, 10)
	if m.isNeutral() {
		return fmt.Sprintf("N %.1f", value)
	}
	step, family := hueStep(roundTo(m.Hue, 10))
	return fmt.Sprintf("%.1f%s %.1f/%.1f", step, family, value, roundTo(m.Chroma, 10))
}

// Short returns the notation to whole steps, "5YR 6/8" or "N 6".
func (m Munsell) Short() string {
	value := roundTo(m.Value, 1)
	if m.isNeutral() {
		return fmt.Sprintf("N %.0f", value)
	}
	step, family := hueStep(roundTo(m.Hue, 1))
	return fmt.Sprintf("%.0f%s %.0f/%.0f", step, family, value, roundTo(m.Chroma, 1))
}

func (m Munsell) isNeutral() bool { return m.Chroma < neutralChroma }

// hueStep returns the step in (0, 10] and the family of a hue that is rounded
// already.
func hueStep(hue float64) (step float64, family string) {
	i := familyAt(hue)
	if step = wrap(hue, 100) - float64(10*i); step <= 0 { // 10RP, which is 0
		step += 100
	}
	return step, hueFamilies[i]
}

// familyAt returns the place of a hue's family in hueFamilies: the end of a family
// is its step 10, never step 0 of the next.
func familyAt(hue float64) int {
	return (int(math.Ceil(wrap(hue, 100)/10)) + len(hueFamilies) - 1) % len(hueFamilies)
}

// roundTo returns x rounded to a whole number of parts of 1. Rounding is done
// before printing so that a last bit that differs between machines rarely shows.
func roundTo(x, parts float64) float64 { return math.Round(x*parts) / parts }

// wrap returns x brought into [0, turn).
func wrap(x, turn float64) float64 {
	x = math.Mod(x, turn)
	if x < 0 {
		x += turn
	}
	if x >= turn { // a tiny negative x plus turn rounds to turn
		return 0
	}
	return x
}
