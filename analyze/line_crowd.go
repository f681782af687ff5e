// Lines that run beside a stronger one count for less.

package analyze

import (
	"cmp"
	"slices"
)

// weighedStroke is a stroke and what its places weigh together.
type weighedStroke struct {
	stroke *stroke
	each   []float64 // weight of each place
	sum    float64
}

// weighed smooths strokes and returns them with their weights. Where a heavier stroke
// runs beside, a place weighs nothing: both edges of a rim or of a stem thinner than a
// pencil draws are one line.
func weighed(strokes []stroke, planes [3][]float32, width, height int) []weighedStroke {
	all := make([]weighedStroke, len(strokes))
	inParallel(len(strokes), func(i int) {
		s := &strokes[i]
		s.places = smoothed(s.places, s.closed)
		all[i] = weighedStroke{stroke: s, each: weights(s, planes, width, height)}
		for _, w := range all[i].each {
			all[i].sum += w
		}
	})
	slices.SortStableFunc(all, func(a, b weighedStroke) int { return cmp.Compare(coarse(b.sum), coarse(a.sum)) })
	c := crowd{width, height, make([]bool, width*height)}
	for i := range all {
		all[i].sum = c.weigh(all[i])
	}
	return all
}

// crowdReach is how near a line may be to a stronger one and still count, in pixels of
// the sketch. Ours: 2 mm on a 12-inch panel.
const crowdReach = 3

// crowd is where strokes have been drawn.
type crowd struct {
	width, height int
	taken         []bool
}

// weigh returns the sum of the weights of a stroke where no stroke so far is near, and
// adds the stroke.
func (c *crowd) weigh(w weighedStroke) (sum float64) {
	for i, p := range w.stroke.places {
		if !c.taken[pixelAt(p, c.width, c.height)] {
			sum += w.each[i]
		}
	}
	for _, p := range w.stroke.places {
		x, y := int(p.X), int(p.Y)
		for v := max(0, y-crowdReach); v <= min(c.height-1, y+crowdReach); v++ {
			for u := max(0, x-crowdReach); u <= min(c.width-1, x+crowdReach); u++ {
				c.taken[v*c.width+u] = true
			}
		}
	}
	return sum
}
