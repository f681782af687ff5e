// A quick measure of how far a colour is from an aim.

package match

import (
	"math"

	"tonewright/analyze/colour"
)

// gauge approximates the square of CIEDE2000 from an aim, for colours of one block.
// CIEDE2000 is a part that hangs on L* and one that hangs on a* and b*: the first is
// taken as a square, the second as a quadratic form.
type gauge struct {
	at          point   // where the differences count from
	ll          float32 // weight of the square of L*
	whole, a, b float32 // of the form in a* and b*: its constant and slopes
	aa, ab, bb  float32 // its weights of squares and product
	grain       *grain  // in place of the form where that would break; else nil
}

// square returns about the square of CIEDE2000 from the aim to p.
func (g *gauge) square(p point) float32 {
	l := p.l - g.at.l
	return g.ll*l*l + g.form(p.a, p.b)
}

// form is the part of square that hangs on a* and b*.
func (g *gauge) form(pa, pb float32) float32 {
	if g.grain != nil {
		return g.grain.at(pa, pb, &g.at)
	}
	a, b := pa-g.at.a, pb-g.at.b
	return g.whole + a*(g.a+g.aa*a+g.ab*b) + b*(g.b+g.bb*b)
}

// nearGauge returns the form of an aim for colours around middle that are not far
// from it. It is taken half-way, since CIEDE2000 weighs a pair of colours by their mean.
func nearGauge(aim, middle colour.Lab) gauge {
	half := colour.Lab{L: aim.L, A: (aim.A + middle.A) / 2, B: (aim.B + middle.B) / 2}
	aa := stretch(half, 1, 0)
	bb := stretch(half, 0, 1)
	ab := (stretch(half, 1, 1) - stretch(half, 1, -1)) / 2
	limit := 1.9 * math.Sqrt(aa*bb) // keeps the form positive
	return gauge{
		at: pointOf(aim),
		aa: float32(aa), bb: float32(bb), ab: float32(min(max(ab, -limit), limit)),
	}
}

// stretch returns the square of CIEDE2000 across a step in a* and b* centred on a colour.
func stretch(c colour.Lab, a, b float64) float64 {
	d := colour.DeltaE00(
		colour.Lab{L: c.L, A: c.A - a/2, B: c.B - b/2},
		colour.Lab{L: c.L, A: c.A + a/2, B: c.B + b/2})
	return d * d
}

// farGauge returns the form through the square of CIEDE2000 at nine places: middle
// and all around it at a distance. Far from the aim the square has valleys, in the
// violets above all, that no form taken from the aim follows.
func farGauge(aim, middle colour.Lab, step float64) gauge {
	var f [3][3]float64
	for i := range f {
		for j := range f[i] {
			at := colour.Lab{L: aim.L, A: middle.A + step*float64(i-1), B: middle.B + step*float64(j-1)}
			d := colour.DeltaE00(aim, at)
			f[i][j] = d * d
		}
	}
	g := gauge{at: pointOf(middle), whole: float32(f[1][1])}
	g.at.l = float32(aim.L)
	g.a = float32((f[2][1] - f[0][1]) / (2 * step))
	g.b = float32((f[1][2] - f[1][0]) / (2 * step))
	g.aa = float32((f[2][1] + f[0][1] - 2*f[1][1]) / (2 * step * step))
	g.bb = float32((f[1][2] + f[1][0] - 2*f[1][1]) / (2 * step * step))
	g.ab = float32((f[2][2] + f[0][0] - f[2][0] - f[0][2]) / (4 * step * step))
	return g
}

// lightness returns the weight of the square of an L* difference from the aim, for
// colours of about this L*.
func lightness(aim colour.Lab, l float64) float32 {
	half := (aim.L + l) / 2
	d := colour.DeltaE00(colour.Lab{L: half - 0.5}, colour.Lab{L: half + 0.5})
	return float32(d * d)
}
