package colour

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSRGBComesBack(t *testing.T) {
	for _, c := range randomLabs(3000) {
		r, g, b := c.SRGB()
		back := FromSRGB(r, g, b)
		assert.InDelta(t, c.L, back.L, 1e-7)
		assert.InDelta(t, c.A, back.A, 1e-7)
		assert.InDelta(t, c.B, back.B, 1e-7)
	}
}

// Identity: the sRGB primaries add up to the white that L*a*b* is taken from.
func TestGrayHasNoChroma(t *testing.T) {
	for i := range 256 {
		v := float64(i) / 255
		assert.InDelta(t, 0, FromSRGB(v, v, v).Chroma(), exact)
	}
	assert.InDelta(t, 100, FromSRGB(1, 1, 1).L, exact)
	assert.Equal(t, Lab{}, FromSRGB(0, 0, 0))
}

// CIE 15:2018 8.2.1 gives L* = 116 f(Y) - 16; a gray that gives back 18.4187 %
// of the light is by that formula exactly L* = 50.
func TestMiddleGray(t *testing.T) {
	y := math.Pow(66.0/116, 3)
	assert.InDelta(t, 18.4187, 100*y, printed)
	c := XYZ{100 * y * white[0], 100 * y, 100 * y * white[2]}.Lab()
	assert.InDelta(t, 50, c.L, exact)
	assert.InDelta(t, 0, c.Chroma(), exact)
}

func TestXYZComesBack(t *testing.T) {
	for _, c := range randomLabs(300) {
		back := c.XYZ().Lab()
		assert.InDelta(t, c.L, back.L, exact)
		assert.InDelta(t, c.A, back.A, exact)
		assert.InDelta(t, c.B, back.B, exact)
	}
}

// space is an RGB space by its primaries and transfer function; white is D65.
type space struct {
	primaries [3][2]float64
	linear    func(float64) float64
}

func srgbCurve(v float64) float64 {
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

// Sources: IEC 61966-2-1; SMPTE EG 432-1 primaries with the sRGB curve (Display
// P3); Adobe RGB (1998) Color Image Encoding, gamma 563/256.
var spaces = map[string]space{
	"sRGB":       {[3][2]float64{{0.64, 0.33}, {0.30, 0.60}, {0.15, 0.06}}, srgbCurve},
	"Display-P3": {[3][2]float64{{0.68, 0.32}, {0.265, 0.69}, {0.15, 0.06}}, srgbCurve},
	"Adobe-RGB": {[3][2]float64{{0.64, 0.33}, {0.21, 0.71}, {0.15, 0.06}},
		func(v float64) float64 { return math.Pow(v, 563.0/256) }},
}

// toXYZ returns the map from linear RGB to XYZ with Y of the white 1: the
// primaries scaled so that they add up to the white.
func (s space) toXYZ() matrix {
	var p, scale matrix
	for i, c := range s.primaries {
		p[0][i], p[1][i], p[2][i] = c[0]/c[1], 1, (1-c[0]-c[1])/c[1]
	}
	for i, v := range p.inverse().times(white) {
		scale[i][i] = v
	}
	return p.after(scale)
}

// Each colour, brought to L*a*b* under D65 here, must agree under D50 with what
// an ICC colour-management library made of it (Bradford, as ICC profiles do).
// The profiles carry their matrices in steps of 1/65536, which the library's
// white shows too (a* = 0.0005); 0.0172 was measured as the largest effect, on the
// saturated corners.
func TestAgainstColourManagement(t *testing.T) {
	const profileSteps = 0.02
	// ICC.1:2022 7.2.16: the D50 of the connection space.
	d50 := [3]float64{0.9642, 1, 0.8249}
	toD50 := adaptation(white, d50)
	seen, worst := map[string]int{}, 0.0
	for _, line := range testTable(t, "profiles.txt") {
		var name string
		var rgb [3]float64
		var want Lab
		_, err := fmt.Sscan(line, &name, &rgb[0], &rgb[1], &rgb[2], &want.L, &want.A, &want.B)
		require.NoError(t, err)
		s, ok := spaces[name]
		require.True(t, ok, name)
		var c Lab
		if name == "sRGB" {
			c = FromSRGB(rgb[0]/255, rgb[1]/255, rgb[2]/255)
		} else {
			x := s.toXYZ().times([3]float64{s.linear(rgb[0] / 255), s.linear(rgb[1] / 255), s.linear(rgb[2] / 255)})
			c = XYZ{100 * x[0], 100 * x[1], 100 * x[2]}.Lab()
		}
		x := c.XYZ()
		u := toD50.times([3]float64{x.X / 100, x.Y / 100, x.Z / 100})
		got := fromRatios(u[0]/d50[0], u[1], u[2]/d50[2])
		off := max(math.Abs(got.L-want.L), math.Abs(got.A-want.A), math.Abs(got.B-want.B))
		assert.LessOrEqual(t, off, profileSteps, "%s: %v, want %v", line, got, want)
		worst = max(worst, off)
		seen[name]++
	}
	t.Logf("largest difference %.4f", worst)
	assert.Equal(t, map[string]int{"sRGB": 20, "Display-P3": 20, "Adobe-RGB": 20}, seen)
}

func TestFromLinearIsCloseToExact(t *testing.T) {
	worst := 0.0
	check := func(r, g, b float64) {
		x := spaces["sRGB"].toXYZ().times([3]float64{r, g, b})
		want := fromRatios(x[0]/white[0], x[1], x[2]/white[2])
		got := FromLinear(r, g, b)
		worst = max(worst, math.Abs(got.L-want.L), math.Abs(got.A-want.A), math.Abs(got.B-want.B))
	}
	for i := range 32768 { // dense near black, where the curve bends
		v := math.Pow(float64(i)/32767, 3)
		check(v, v, v)
		check(v, 0, 1-v)
		check(0, v, 0)
	}
	check(-0.2, 1.3, 0.5)
	check(1, 1, 1)
	t.Logf("largest difference %.6f", worst)
	assert.Less(t, worst, 1e-3)
}

func TestHex(t *testing.T) {
	for _, s := range []string{"#000000", "#ffffff", "#7f7f80", "#b4783c", "#0102fe"} {
		c, err := ParseHex(s)
		require.NoError(t, err)
		assert.Equal(t, s, c.Hex())
		assert.True(t, c.InGamut(), s)
	}
	short, err := ParseHex("#B73")
	require.NoError(t, err)
	assert.Equal(t, "#bb7733", short.Hex())
}

func TestParseHexRefuses(t *testing.T) {
	for _, s := range []string{"", "red", "7f7f7f", "#12345", "#gggggg", "#1234567", "#+1+2+3"} {
		_, err := ParseHex(s)
		require.Error(t, err, s)
		assert.Equal(t, fmt.Sprintf("colour %q: not a hex colour; write it as #rrggbb, such as #7f7f7f", s), err.Error())
	}
}

func TestGamut(t *testing.T) {
	green := Lab{60, -150, 60} // far past the green of sRGB
	assert.False(t, green.InGamut())
	r, _, _ := green.SRGB()
	assert.Less(t, r, 0.0)
	assert.Equal(t, "00", green.Hex()[1:3])
	assert.False(t, Lab{L: 101}.InGamut())
	assert.Equal(t, "#ffffff", Lab{L: 101}.Hex())
}

func TestHueAndChroma(t *testing.T) {
	for i, c := range []Lab{{50, 3, 0}, {50, 0, 3}, {50, -3, 0}, {50, 0, -3}} {
		assert.InDelta(t, 3, c.Chroma(), exact)
		assert.InDelta(t, float64(90*i), c.Hue(), exact)
	}
	assert.Zero(t, Lab{L: 50}.Hue())
	assert.Zero(t, Lab{50, 1, -1e-18}.Hue())                   // a hair under 360 must not print as 360
	assert.InDelta(t, 306.8699, Lab{50, 3, -4}.Hue(), printed) // the 3-4-5 triangle
}

func BenchmarkFromSRGB(b *testing.B) {
	for b.Loop() {
		sink = FromSRGB(0.7, 0.4, 0.2)
	}
}

func BenchmarkFromLinear(b *testing.B) {
	for b.Loop() {
		sink = FromLinear(0.7, 0.4, 0.2)
	}
}

var sink Lab
