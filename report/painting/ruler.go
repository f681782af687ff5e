// Lengths as a painter reads them off a ruler.

package painting

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"tonewright/grid"
)

// mark is the smallest step that is read off a ruler, in each unit. Common practice, no
// source: half a millimetre; of an inch a fiftieth, as near as decimals come to that.
var mark = map[grid.Unit]float64{grid.Inch: 0.02, grid.Centimetre: 0.05, grid.Millimetre: 0.5}

// ruler writes lengths on a panel in its unit.
type ruler struct {
	unit          grid.Unit
	width, height float64 // of the panel, as written, in units
}

// inUnits returns how many units a length is.
func inUnits(m grid.Millimetres, unit grid.Unit) float64 { return float64(m / unit.Of(1)) }

// decimals returns a number with at most n decimals and no trailing zeros.
func decimals(v float64, n int) string {
	text := strconv.FormatFloat(v, 'f', n, 64)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

// along returns the mark nearest to a length on a side, in units; what is nearest to the
// panel's edge is the edge.
func (r ruler) along(m grid.Millimetres, side float64) float64 {
	step, v := mark[r.unit], inUnits(m, r.unit)
	if v > side-step/2 {
		return side
	}
	return max(math.Round(v/step)*step, 0)
}

// ring returns a ring's points as they are written; none where nothing is left of it
// between the marks.
func (r ruler) ring(points []grid.Point) []string {
	var at [][2]float64
	for _, p := range points {
		at = append(at, [2]float64{r.along(p.X, r.width), r.along(p.Y, r.height)})
	}
	at = slices.Compact(at)
	for len(at) > 1 && at[0] == at[len(at)-1] {
		at = at[:len(at)-1]
	}
	if len(at) < 3 || flat(at) {
		return nil
	}
	words := make([]string, len(at))
	for i, p := range at {
		words[i] = "[" + figure(p[0]) + ", " + figure(p[1]) + "]"
	}
	return words
}

// flat tells whether a ring holds nothing: as a ruler reads it, a thin one may not.
func flat(at [][2]float64) bool {
	twice := 0.0
	for i, p := range at {
		q := at[(i+1)%len(at)]
		twice += p[0]*q[1] - q[0]*p[1]
	}
	return math.Abs(twice) < 1e-9
}

// figure writes a length on the panel: two decimals tell a mark, six the panel's edge.
func figure(v float64) string {
	if short := decimals(v, 2); near(short, v) {
		return short
	}
	return decimals(v, 6)
}

// near tells whether a number as written is the number, but for its last bits.
func near(text string, v float64) bool {
	n, err := strconv.ParseFloat(text, 64)
	return err == nil && math.Abs(n-v) < 1e-9
}
