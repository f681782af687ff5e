// How large a pile is, in measures a hand knows.

package plan

import (
	"fmt"
	"math"
	"strings"

	"tonewright/grid"
)

// nozzle is the width in mm of what comes out of a tube. Common practice, no source: tubes
// of 37 or 40 ml have an opening of about 8 mm.
const nozzle = 8.0

// sizes are things of known volume in ml, the smallest first.
// Ours: balls of 8, 12.5, 20 and 30 mm across, 0.27, 1.02, 4.2 and 14 ml.
var sizes = []struct {
	name, several string
	ml            float64
}{
	{"a pea", "two peas", 0.3}, {"a hazelnut", "two hazelnuts", 1}, {"a cherry", "two cherries", 4}, {"a walnut", "two walnuts", 15},
}

// sizesText says how large they are.
func sizesText() string {
	var words []string
	for _, s := range sizes {
		words = append(words, fmt.Sprintf("%s %g", s.name, s.ml))
	}
	return "In ml, " + strings.Join(words, ", ") + "."
}

// mostSizes is past how many of the largest thing a pile is told by its width only.
const mostSizes = 3

// sizeOf says how large a pile of so many ml is: "two hazelnuts, heaped 2.5 cm wide".
func sizeOf(ml float64, unit grid.Unit) string {
	wide := fmt.Sprintf("heaped %s wide", handLength(Round(heapWidth(ml), 2), unit))
	if ml > mostSizes*sizes[len(sizes)-1].ml {
		return wide
	}
	name, off := "", math.Inf(1)
	for _, s := range sizes {
		for n, word := range []string{s.name, s.several} {
			if d := Round(math.Abs(math.Log(ml/(s.ml*float64(n+1)))), 6); d < off {
				name, off = word, d
			}
		}
	}
	return name + ", " + wide
}

// heapWidth returns how wide a heap of so many ml is, in mm.
//
// A cap of a ball, of radius r at its foot and h high, has π·h·(3r² + h²)/6.
// Ours: stiff paint heaped by a knife stands about a third as high as it is wide, h = 2r/3,
// which makes it 31π/81·r³.
func heapWidth(ml float64) float64 { return 2 * math.Cbrt(1000*ml*81/(31*math.Pi)) }

// ribbon returns how long a ribbon of so many ml from the nozzle is, in mm: a cylinder.
func ribbon(ml float64) float64 { return 1000 * ml / (math.Pi * nozzle * nozzle / 4) }

// handLength writes a length to what a hand does at a glance: up to 2 cm to 2 mm, past it to
// 5 mm; up to an inch to an eighth of one, past it to a quarter.
func handLength(mm float64, unit grid.Unit) string {
	if unit == grid.Inch {
		eighths := math.Round(mm / 25.4 * 8)
		if eighths > 8 {
			eighths = 2 * math.Round(mm/25.4*4)
		}
		return unit.Ruled(grid.Millimetres(max(1, eighths) * 25.4 / 8))
	}
	step := 2.0
	if mm > 20 {
		step = 5
	}
	return unit.Format(grid.Millimetres(max(1, math.Round(mm/step)) * step))
}

// squeezed says what to squeeze out for so many ml of a stock, by the length of ribbon.
func (c *count) squeezed(s *stock, ml float64) string {
	var words []string
	for i, p := range s.of.Paints {
		words = append(words, p.Name+" "+ribbonText(ml*s.of.Parts[i], c.unit))
	}
	return strings.Join(words, ", ")
}

// shortest is the shortest ribbon told by its length, in mm. Ours: a nozzle gives no less.
const shortest = 1.5

func ribbonText(ml float64, unit grid.Unit) string {
	if mm := ribbon(ml); Round(mm, 2) >= shortest {
		return handLength(Round(mm, 2), unit)
	}
	return "a dab"
}
