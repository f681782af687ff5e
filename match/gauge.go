// A quick measure of how far a colour is from an aim.

package match

import (
	"math"

	"tonewright/analyze/colour"
)

// gauge approximates the square of CIEDE2000 from an aim by a quadratic form in
// the L*, a*, b* differences.
type gauge struct {
	at             point
	ll, aa, ab, bb float32 // weights of the squares; ab is that of a·b doubled
}

// newGauge returns the gauge of an aim for colours around near: the form is taken
// half-way, since CIEDE2000 weighs a pair of colours by their mean.
func newGauge(aim, near colour.Lab) gauge {
	middle := colour.Lab{L: (aim.L + near.L) / 2, A: (aim.A + near.A) / 2, B: (aim.B + near.B) / 2}
	ll := slope(middle, colour.Lab{L: 1})
	aa := slope(middle, colour.Lab{A: 1})
	bb := slope(middle, colour.Lab{B: 1})
	ab := (slope(middle, colour.Lab{A: 1, B: 1}) - slope(middle, colour.Lab{A: 1, B: -1})) / 2
	limit := 1.9 * math.Sqrt(aa*bb) // keeps the form positive
	return gauge{
		at: point{float32(aim.L), float32(aim.A), float32(aim.B)},
		ll: float32(ll), aa: float32(aa), bb: float32(bb), ab: float32(min(max(ab, -limit), limit)),
	}
}

// slope returns the square of CIEDE2000 across a step centred on a colour.
func slope(c, step colour.Lab) float64 {
	d := colour.DeltaE00(
		colour.Lab{L: c.L - step.L/2, A: c.A - step.A/2, B: c.B - step.B/2},
		colour.Lab{L: c.L + step.L/2, A: c.A + step.A/2, B: c.B + step.B/2})
	return d * d
}

// square returns about the square of CIEDE2000 from the aim to p.
func (g *gauge) square(p point) float32 {
	l, a, b := p.l-g.at.l, p.a-g.at.a, p.b-g.at.b
	return g.ll*l*l + a*(g.aa*a+g.ab*b) + g.bb*b*b
}

// reach returns how far from the aim a colour within a distance can lie along
// each axis.
func (g *gauge) reach(distance float32) point {
	det := g.aa*g.bb - g.ab*g.ab/4
	return point{
		distance / sqrt32(g.ll),
		distance * sqrt32(g.bb/det),
		distance * sqrt32(g.aa/det),
	}
}

func sqrt32(v float32) float32 { return float32(math.Sqrt(float64(v))) }
