package analyze

import (
	"math"

	"tonewright/analyze/colour"
)

// even is a colour in a space where a straight distance is close to CIEDE2000, so
// that means and squared distances can be used. The order is lightness, then the
// two chromatic axes.
type even [3]float64

// evenly returns c in the even space.
// Its axes are the CIEDE2000 weights summed along lightness and along chroma from
// neutral: dL/SL and dC/SC. Hue is left as it is, which makes an arc of hue at
// chroma C as long as ln(1 + 0.045 C)/0.045 where CIEDE2000 has C/(1 + 0.015 C);
// the hue terms T and RT are left out, and the 20 in SL, which rounds off the
// weight near L* 50. What is reported is measured with colour.DeltaE00, not here.
// Source: [Sharma2005] eq. 4-5 (G, a') and 18-20 (SL, SC, SH); the summing is ours, in
// the manner of the DIN99 family of spaces [Cui2002].
func evenly(c colour.Lab) even {
	u := c.L - 50
	light := math.Copysign(math.Log(1+0.015*math.Abs(u))/0.015, u)
	c2 := c.A*c.A + c.B*c.B
	c7 := c2 * c2 * c2 * math.Sqrt(c2)
	g := 0.5 * (1 - math.Sqrt(c7/(c7+6103515625))) // 25 to the 7th
	a := (1 + g) * c.A
	chroma := math.Sqrt(a*a + c.B*c.B)
	if chroma < 1e-9 {
		return even{light, 0, 0}
	}
	shrink := math.Log(1+0.045*chroma) / 0.045 / chroma
	return even{light, a * shrink, c.B * shrink}
}

// squared returns the squared distance.
func (e *even) squared(f *even) float64 {
	l, a, b := e[0]-f[0], e[1]-f[1], e[2]-f[2]
	return l*l + a*a + b*b
}
