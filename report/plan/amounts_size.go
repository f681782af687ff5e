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
	wide := fmt.Sprintf("heaped %s wide", handLength(heapWidth(ml), unit))
	name, off := "", math.Inf(1)
	for _, s := range sizes {
		for n, word := range []string{s.name, s.several} {
			if d := math.Abs(math.Log(ml / (s.ml * float64(n+1)))); d < off {
				name, off = word, d
			}
		}
	}
	if ml > mostSizes*sizes[len(sizes)-1].ml {
		return wide
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

// handLength writes a length to what a hand does at a glance: half a centimetre, a quarter
// of an inch.
func handLength(mm float64, unit grid.Unit) string {
	step := handStep(unit)
	return unit.Format(grid.Millimetres(max(1, math.Round(mm/step)) * step))
}

func handStep(unit grid.Unit) float64 {
	if unit == grid.Inch {
		return 25.4 / 4
	}
	return 5
}

// squeezed says what to squeeze out for so many ml of a stock, by the length of ribbon;
// under half a step that is a dab.
func (c *count) squeezed(s *stock, ml float64) string {
	var words []string
	for i, p := range s.of.Paints {
		words = append(words, p.Name+" "+ribbonText(ml*s.of.Parts[i], c.unit))
	}
	return strings.Join(words, ", ")
}

func ribbonText(ml float64, unit grid.Unit) string {
	mm := ribbon(ml)
	if math.Round(mm/handStep(unit)) < 1 {
		return "a dab"
	}
	return handLength(mm, unit)
}
