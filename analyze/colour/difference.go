package colour

import "math"

// oppositeSlack is the share by which two hues may fall short of exactly
// opposite and still be handled by their angles: there the sum of the two hue
// directions is too short to point anywhere.
const oppositeSlack = 1e-6

// halfTurn is where two hues count as more than half a turn apart, in degrees.
// Exactly opposite hues land a bit to either side of 180 by rounding and must
// take the branch of "at most 180": pair 14 of [Sharma2005] does.
const halfTurn = 180 + 1e-9

// DeltaE00 returns the CIEDE2000 difference of two colours, with kL = kC = kH = 1.
// 0 for equal colours; about 1 is just seen side by side. Symmetric.
// Source: [Sharma2005] eq. 2-22, doi:10.1002/col.20070.
func DeltaE00(a, b Lab) float64 {
	g := 1.5 - 0.5*chromaWeight((a.Chroma()+b.Chroma())/2) // eq. 4, as 1 + G
	a1, a2 := g*a.A, g*b.A                                 // eq. 5
	c1, c2 := math.Sqrt(a1*a1+a.B*a.B), math.Sqrt(a2*a2+b.B*b.B)

	dL, dC := b.L-a.L, c2-c1 // eq. 8, 9
	dH, cosH, sinH := hues(a1, a.B, c1, a2, b.B, c2)

	// eq. 15; the cosines of 2h, 3h and 4h follow from the double angle.
	cos2, sin2 := cosH*cosH-sinH*sinH, 2*sinH*cosH
	cos3, sin3 := cos2*cosH-sin2*sinH, sin2*cosH+cos2*sinH
	cos4, sin4 := cos2*cos2-sin2*sin2, 2*sin2*cos2
	t := 1 - 0.17*(cosH*cos30+sinH*sin30) + 0.24*cos2 +
		0.32*(cos3*cos6-sin3*sin6) - 0.20*(cos4*cos63+sin4*sin63)

	mL, mC := (a.L+b.L)/2-50, (c1+c2)/2            // eq. 12, 13
	sL := 1 + 0.015*mL*mL/math.Sqrt(20+mL*mL)      // eq. 18
	sC, sH := 1+0.045*mC, 1+0.015*mC*t             // eq. 19, 20
	rT := -2 * chromaWeight(mC) * turn(cosH, sinH) // eq. 17, 21

	l, c, h := dL/sL, dC/sC, dH/sH
	return math.Sqrt(max(0, l*l+c*c+h*h+rT*c*h)) // eq. 22
}

// The fixed angles of eq. 15, in degrees.
var (
	sin30, cos30 = math.Sincos(30 * math.Pi / 180)
	sin6, cos6   = math.Sincos(6 * math.Pi / 180)
	sin63, cos63 = math.Sincos(63 * math.Pi / 180)
)

// chromaWeight returns sqrt(c⁷ / (c⁷ + 25⁷)), in 0-1.
// Source: [Sharma2005] eq. 4 and 17.
func chromaWeight(c float64) float64 {
	const pow25 = 25 * 25 * 25 * 25 * 25 * 25 * 25
	c7 := c * c * c
	c7 *= c7 * c
	return math.Sqrt(c7 / (c7 + pow25))
}

// hues returns the hue difference dH of two colours (a1, b1) and (a2, b2) of
// chroma c1 and c2, and the cosine and sine of their mean hue. They come from
// the two directions as vectors, which gives the same as the angles of
// eq. 7, 10, 11 and 14 on the shorter way round and needs no arc tangent.
// Beside a neutral, dH is 0 and the mean hue is that of the other colour.
func hues(a1, b1, c1, a2, b2, c2 float64) (dH, cos, sin float64) {
	if c1 == 0 && c2 == 0 {
		return 0, 1, 0
	}
	product := c1 * c2
	if product == 0 {
		return 0, (a1 + a2) / (c1 + c2), (b1 + b2) / (c1 + c2)
	}
	sum := product + a1*a2 + b1*b2 // product × (1 + cosine of the angle between)
	if sum <= oppositeSlack*product {
		return oppositeHues(Lab{0, a1, b1}.Hue(), Lab{0, a2, b2}.Hue(), product)
	}
	x, y := a1*c2+a2*c1, b1*c2+b2*c1
	n := math.Sqrt(x*x + y*y)
	return (a1*b2 - a2*b1) * math.Sqrt(2/sum), x / n, y / n
}

// oppositeHues does the work of hues from two angles in degrees, as printed.
// Source: [Sharma2005] eq. 10, 11 and 14.
func oppositeHues(h1, h2, product float64) (dH, cos, sin float64) {
	d, mean := h2-h1, (h1+h2)/2
	if math.Abs(d) > halfTurn {
		d -= math.Copysign(360, d)
		mean += 180 // a mean of 360 or more is the same direction
	}
	sin, cos = math.Sincos(mean * (math.Pi / 180))
	return 2 * math.Sqrt(product) * math.Sin(d/2*(math.Pi/180)), cos, sin
}

// turn returns sin(2Δθ), the strength of the turn of the blue ellipses, at the
// mean hue with this cosine and sine. Below a hue of 150° it is under 1e-10 and
// taken as 0, which spares the arc tangent.
// Source: [Sharma2005] eq. 16 and 21.
func turn(cos, sin float64) float64 {
	if sin >= 0 && cos > -cos30 {
		return 0
	}
	off := (Lab{0, cos, sin}.Hue() - 275) / 25
	return math.Sin(math.Pi / 3 * math.Exp(-off*off))
}
