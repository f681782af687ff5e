package colour

import (
	"math"
	"slices"
)

// The darkest and lightest that Reflectance goes to, as shares of the white, so
// that black and white too lie between 0 and 1: black comes back as L* = 0.009,
// white as 99.9996.
const (
	leastLight = 1e-5
	mostLight  = 1 - leastLight
)

// Ours: over 4,913 colours spread over sRGB, all were reached from gray in one go
// and in 12 steps at most. The longest step, of z, keeps the first steps of strong
// colours from running off to where the tangent is flat.
const (
	newtonSteps = 15
	longestStep = 1.5
	smallStep   = 1e-6  // of z: nothing is left to smooth
	onColour    = 1e-10 // of X/Xn, Y/Yn and Z/Zn
	leastShare  = 1.0 / 1024
)

// Reflectance returns the smoothest reflectance that has the colour c under D65:
// of all that do, the one whose z, with R = (tanh z + 1) / 2, changes least from
// band to band, in squares. It is in (0, 1) in every band, flat for a gray, and
// Spectrum.Lab gives c again.
// No surface has a colour outside the solid of object colours: for such a c, as
// much of its chroma is kept as was reached, to 1/1024 of it, at the same L* and
// hue. L* is clamped to where R is between 1e-5 and 1 - 1e-5. An L* that is not a
// number counts as black, an a* or b* that is not finite as neutral.
// Source: [Burns2020], the method of least hyperbolic tangent slope squared.
func (c Lab) Reflectance() Spectrum {
	y := min(max(Lab{L: c.L}.XYZ().Y/100, leastLight), mostLight)
	if math.IsNaN(y) {
		y = leastLight
	}
	s := flat(y)
	l := 116*labRoot(y) - 16
	for reached, step := 0.0, 1.0; reached < 1 && step >= leastShare; {
		share := min(reached+step, 1)
		if next, ok := s.towards(ratios(Lab{l, share * c.A, share * c.B})); ok {
			s, reached = next, share
		} else {
			step /= 2
		}
	}
	return s.spectrum()
}

// ratios returns the tristimulus values of c divided by those of the white.
func ratios(c Lab) [3]float64 {
	xyz := c.XYZ()
	return [3]float64{xyz.X / (100 * white[0]), xyz.Y / 100, xyz.Z / (100 * white[2])}
}

// curve is a reflectance on the way to being the smoothest: its z by bands, with
// R = (tanh z + 1) / 2, and three multipliers that hold X, Y and Z in place.
type curve [Bands + 3]float64

// flat returns the smoothest curve of a gray.
func flat(y float64) (s curve) {
	for i := range Bands {
		s[i] = math.Atanh(2*y - 1)
	}
	return s
}

// spectrum returns the reflectance of s.
func (s *curve) spectrum() (r Spectrum) {
	for i := range r {
		r[i] = 1 / (1 + math.Exp(-2*s[i]))
	}
	return r
}

// towards returns the smoothest curve with these ratios to the white, by Newton's
// steps from s, and whether it got there.
func (s curve) towards(want [3]float64) (curve, bool) {
	for range newtonSteps {
		m := s.system(want)
		off := max(math.Abs(m[Bands][right]), math.Abs(m[Bands+1][right]), math.Abs(m[Bands+2][right]))
		step, ok := m.solve()
		if !ok {
			return s, false
		}
		size := max(slices.Max(step[:Bands]), -slices.Min(step[:Bands]))
		if off < onColour && size < smallStep {
			return s, true
		}
		scale := min(1, longestStep/size)
		for i, d := range step {
			s[i] += scale * d
		}
	}
	return s, false
}

// right is the column of the right sides of a system.
const right = Bands + 3

// system is a system of linear equations.
type system [Bands + 3][Bands + 4]float64

// system returns Newton's equations at s: the rise of the sum of squared slopes
// is balanced by the multipliers in each band, and the ratios are those wanted.
// Source: [Burns2020].
func (s *curve) system(want [3]float64) (m system) {
	r := s.spectrum()
	for k, w := range weights {
		m[Bands+k][right] = want[k]
		for i := range r {
			rise := 2 * r[i] * (1 - r[i]) // of R with z
			m[i][Bands+k] = rise * w[i]
			m[Bands+k][i] = rise * w[i]
			m[Bands+k][right] -= w[i] * r[i]
			m[i][i] += s[Bands+k] * w[i] * rise * 2 * (1 - 2*r[i])
			m[i][right] -= s[Bands+k] * w[i] * rise
		}
	}
	for i := range Bands - 1 {
		slope := 2 * (s[i+1] - s[i])
		m[i][right] += slope
		m[i+1][right] -= slope
		m[i][i] += 2
		m[i+1][i+1] += 2
		m[i][i+1] -= 2
		m[i+1][i] -= 2
	}
	return m
}

// solve returns the solution of m, which it uses up, by elimination with the
// largest pivot of each column; ok is false where there is none.
func (m *system) solve() (x curve, ok bool) {
	const n = right // as many equations
	for c := range n {
		p := c
		for i := c + 1; i < n; i++ {
			if math.Abs(m[i][c]) > math.Abs(m[p][c]) {
				p = i
			}
		}
		if !(math.Abs(m[p][c]) > 0) {
			return x, false
		}
		m[c], m[p] = m[p], m[c]
		for i := c + 1; i < n; i++ {
			if f := m[i][c] / m[c][c]; f != 0 {
				for j := c + 1; j <= right; j++ {
					m[i][j] -= f * m[c][j]
				}
			}
		}
	}
	for i := n - 1; i >= 0; i-- {
		x[i] = m[i][right]
		for j := i + 1; j < n; j++ {
			x[i] -= m[i][j] * x[j]
		}
		x[i] /= m[i][i]
	}
	return x, true
}
