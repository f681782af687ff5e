package analyze

import (
	"math"

	"github.com/kovidgoyal/imaging/prism/meta/icc"
)

// matrix is 3 × 3, row by row.
type matrix [3][3]float64

func (m matrix) times(n matrix) (p matrix) {
	for i := range 3 {
		for j := range 3 {
			p[i][j] = m[i][0]*n[0][j] + m[i][1]*n[1][j] + m[i][2]*n[2][j]
		}
	}
	return p
}

func (m matrix) apply(v [3]float64) [3]float64 {
	return [3]float64{
		m[0][0]*v[0] + m[0][1]*v[1] + m[0][2]*v[2],
		m[1][0]*v[0] + m[1][1]*v[1] + m[1][2]*v[2],
		m[2][0]*v[0] + m[2][1]*v[1] + m[2][2]*v[2],
	}
}

// inverse is by cofactors; m must not be singular.
func (m matrix) inverse() (n matrix) {
	minor := func(i, j int) float64 {
		a, b, c, d := (i+1)%3, (i+2)%3, (j+1)%3, (j+2)%3
		return m[a][c]*m[b][d] - m[a][d]*m[b][c]
	}
	det := m[0][0]*minor(0, 0) + m[0][1]*minor(0, 1) + m[0][2]*minor(0, 2)
	for i := range 3 {
		for j := range 3 {
			n[j][i] = minor(i, j) / det
		}
	}
	return n
}

// affine is m·v + offset.
type affine struct {
	m      matrix
	offset [3]float64
}

var identity = affine{m: matrix{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}}

func (a affine) apply(v [3]float64) [3]float64 {
	w := a.m.apply(v)
	return [3]float64{w[0] + a.offset[0], w[1] + a.offset[1], w[2] + a.offset[2]}
}

// after is first b, then a.
func (a affine) after(b affine) affine {
	return affine{m: a.m.times(b.m), offset: a.apply(b.offset)}
}

// primaries are the chromaticities x, y of red, green, blue and white.
type primaries [4][2]float64

var (
	d65Chromaticity  = [2]float64{0.3127, 0.3290}
	srgbPrimaries    = primaries{{0.64, 0.33}, {0.30, 0.60}, {0.15, 0.06}, d65Chromaticity}       // [IEC61966-2-1] table 1
	adobePrimaries   = primaries{{0.64, 0.33}, {0.21, 0.71}, {0.15, 0.06}, d65Chromaticity}       // [AdobeRGB] 4.3
	displayPrimaries = primaries{{0.680, 0.320}, {0.265, 0.690}, {0.150, 0.060}, d65Chromaticity} // [P3] RP 431-2 with white D65
	// [ROMM]; its white is D50.
	prophotoPrimaries = primaries{{0.7347, 0.2653}, {0.1596, 0.8404}, {0.0366, 0.0001}, {0.3457, 0.3585}}
)

// d50 is the white of ICC profiles. Source: [ICC] 7.2.16.
var d50 = [3]float64{0.9642, 1, 0.8249}

// bradford is the cone response for adapting one white to another. Source: [ICC] annex E.
var bradford = matrix{
	{0.8951, 0.2664, -0.1614},
	{-0.7502, 1.7135, 0.0367},
	{0.0389, -0.0685, 1.0296},
}

var (
	srgbToXYZ   = rgbToXYZ(srgbPrimaries)
	xyzToSRGB   = srgbToXYZ.inverse()
	xyzToSRGB50 = affine{m: xyzToSRGB.times(adapt(d50, whiteXYZ(d65Chromaticity)))} // from D50
)

func whiteXYZ(c [2]float64) [3]float64 { return [3]float64{c[0] / c[1], 1, (1 - c[0] - c[1]) / c[1]} }

// rgbToXYZ is the matrix of an RGB space; Y of its white is 1. Each primary is
// scaled so that together they make the white.
func rgbToXYZ(p primaries) matrix {
	var m matrix
	for c := range 3 {
		xyz := whiteXYZ(p[c])
		for i := range 3 {
			m[i][c] = xyz[i]
		}
	}
	scale := m.inverse().apply(whiteXYZ(p[3]))
	for c := range 3 {
		for i := range 3 {
			m[i][c] *= scale[c]
		}
	}
	return m
}

// adapt takes XYZ under one white to another. Source: [ICC] annex E, linear Bradford.
func adapt(from, to [3]float64) matrix {
	a, b := bradford.apply(from), bradford.apply(to)
	var gain matrix
	for i := range 3 {
		gain[i][i] = b[i] / a[i]
	}
	return bradford.inverse().times(gain).times(bradford)
}

// srgbToLinear decodes one sRGB number, 0 to 1. Source: [IEC61966-2-1] 5.2.
func srgbToLinear(v float64) float64 {
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

// linearToSRGB encodes linear light, 0 to 1. Source: [IEC61966-2-1] 5.2.
func linearToSRGB(v float64) float64 {
	if v <= 0.0031308 {
		return 12.92 * v
	}
	return 1.055*math.Pow(v, 1/2.4) - 0.055
}

// xyzOfLab50 takes the Lab of a profile to XYZ under D50. Source: [CIE15] 8.2.1.
func xyzOfLab50(l, a, b float64) [3]float64 {
	fy := (l + 16) / 116
	return [3]float64{d50[0] * labInverse(fy+a/500), d50[1] * labInverse(fy), d50[2] * labInverse(fy-b/200)}
}

// labF and labInverse are CIELAB's cube root with its straight foot. Source: [CIE15] 8.2.1.
func labF(t float64) float64 {
	if t > 216.0/24389 {
		return math.Cbrt(t)
	}
	return (24389.0/27*t + 16) / 116
}

func labInverse(f float64) float64 {
	if f > 6.0/29 {
		return f * f * f
	}
	return (116*f - 16) * 27 / 24389
}

// commonSpace names a profile by what its primaries measure: "" if none of the common ones.
func commonSpace(p *icc.Profile) string {
	if p.Header.DataColorSpace != icc.ColorSpaceRGB {
		return ""
	}
	xyz, err := profileXYZ(p, 3)
	if err != nil {
		return ""
	}
	for _, s := range []struct {
		name      string
		primaries primaries
	}{
		{"Display P3", displayPrimaries}, {"Adobe RGB (1998)", adobePrimaries}, {"ProPhoto RGB", prophotoPrimaries}, {"sRGB", srgbPrimaries},
	} {
		if primariesMatch(xyz, s.primaries) {
			return s.name
		}
	}
	return ""
}

func primariesMatch(xyz func([4]float64) [3]float64, p primaries) bool {
	const tolerance = 0.002 // between rounded tables of one space; spaces differ by 0.02 and more
	m := adapt(whiteXYZ(p[3]), d50).times(rgbToXYZ(p))
	for c := range 3 {
		var in [4]float64
		in[c] = 1
		got := xyz(in)
		for i := range 3 {
			if !(math.Abs(got[i]-m[i][c]) < tolerance) {
				return false
			}
		}
	}
	return true
}
