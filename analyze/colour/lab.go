// Package colour is numbers only: spectra, XYZ, Lab, colour difference, Munsell
// notation and colour names. It knows no pictures and no paints.
package colour

import (
	"fmt"
	"math"

	"github.com/lucasb-eyer/go-colorful"
)

// Lab is a CIE 1976 L*a*b* colour under D65 for the 2° observer; L in 0-100.
type Lab struct{ L, A, B float64 }

// XYZ is a colour in CIE tristimulus values under D65 for the 2° observer,
// scaled so that Y of the white is 100.
type XYZ struct{ X, Y, Z float64 }

// white is D65 as x = 0.3127, y = 0.3290, Y = 1: the white that sRGB red,
// green and blue at full add up to, so that a gray has a* = b* = 0 exactly.
// go-colorful's own D65 is rounded to five digits and gives a gray b* = -0.01.
// Source: [IEC61966-2-1] table 1.
var white = [3]float64{0.3127 / 0.3290, 1, (1 - 0.3127 - 0.3290) / 0.3290}

// gamutSlack is half a step of an 8-bit channel: clipping by less than this
// changes no digit of Hex.
const gamutSlack = 0.5 / 255

// FromSRGB returns the Lab of an encoded sRGB colour.
// r, g, b in 0-1; values outside are carried on by the same formula.
// Source: [IEC61966-2-1].
func FromSRGB(r, g, b float64) Lab {
	x, y, z := colorful.LinearRgbToXyz(colorful.Color{R: r, G: g, B: b}.LinearRgb())
	return fromRatios(x/white[0], y, z/white[2])
}

// SRGB returns the encoded sRGB channels of c, unclipped: a colour that sRGB
// cannot show has a channel under 0 or over 1.
func (c Lab) SRGB() (r, g, b float64) {
	x, y, z := colorful.LabToXyzWhiteRef(c.L/100, c.A/100, c.B/100, white)
	e := colorful.LinearRgb(colorful.XyzToLinearRgb(x, y, z))
	return e.R, e.G, e.B
}

// InGamut tells whether sRGB can show c, within half a step of an 8-bit channel.
func (c Lab) InGamut() bool {
	r, g, b := c.SRGB()
	return min(r, g, b) >= -gamutSlack && max(r, g, b) <= 1+gamutSlack
}

// Hex returns c as #rrggbb, each sRGB channel clipped to what it can show.
func (c Lab) Hex() string {
	r, g, b := c.SRGB()
	return colorful.Color{R: r, G: g, B: b}.Clamped().Hex()
}

// ParseHex returns the colour written as #rrggbb or #rgb.
func ParseHex(s string) (Lab, error) {
	e, err := colorful.Hex(s)
	if err != nil {
		return Lab{}, fmt.Errorf("colour %q: not a hex colour; write it as #rrggbb, such as #7f7f7f", s)
	}
	return FromSRGB(e.R, e.G, e.B), nil
}

// Chroma returns the distance of c from the neutral of the same lightness.
func (c Lab) Chroma() float64 { return math.Sqrt(c.A*c.A + c.B*c.B) }

// Hue returns the hue angle of c in degrees, [0, 360); 0 for a neutral.
func (c Lab) Hue() float64 {
	h := math.Atan2(c.B, c.A) * (180 / math.Pi)
	if h < 0 {
		h += 360
	}
	if h >= 360 { // a tiny negative angle plus 360 rounds to 360
		return 0
	}
	return h
}

// XYZ returns the tristimulus values of c.
// Source: [CIE15] 8.2.1, inverse.
func (c Lab) XYZ() XYZ {
	x, y, z := colorful.LabToXyzWhiteRef(c.L/100, c.A/100, c.B/100, white)
	return XYZ{100 * x, 100 * y, 100 * z}
}

// Lab returns the L*a*b* of c.
// Source: [CIE15] 8.2.1.
func (c XYZ) Lab() Lab {
	l, a, b := colorful.XyzToLabWhiteRef(c.X/100, c.Y/100, c.Z/100, white)
	return Lab{100 * l, 100 * a, 100 * b}
}

// fromRatios returns the Lab of tristimulus values divided by those of the white.
// Source: [CIE15] 8.2.1.
func fromRatios(x, y, z float64) Lab {
	fx, fy, fz := labRoot(x), labRoot(y), labRoot(z)
	return Lab{116*fy - 16, 500 * (fx - fy), 200 * (fy - fz)}
}

// labRoot is the f of L*a*b*: a cube root, with a straight line near black.
// Source: [CIE15] 8.2.1.
func labRoot(t float64) float64 {
	if t > 216.0/24389 { // (6/29)³
		return math.Cbrt(t)
	}
	return t*(841.0/108) + 4.0/29
}
