package colour

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// roughness returns what Reflectance makes least: the squared changes of z from
// band to band, R = (tanh z + 1) / 2. Source: Burns 2020.
func roughness(s *Spectrum) (sum float64) {
	for i := 1; i < Bands; i++ {
		d := math.Atanh(2*s[i]-1) - math.Atanh(2*s[i-1]-1)
		sum += d * d
	}
	return sum
}

// checkReflectance requires the reflectance of c to lie between 0 and 1 and to
// have the colour c within tolerance, and returns it.
func checkReflectance(t *testing.T, c Lab, tolerance float64) Spectrum {
	t.Helper()
	s := c.Reflectance()
	for _, r := range s {
		require.True(t, r > 0 && r < 1, "%v: %v", c, s)
	}
	require.LessOrEqual(t, DeltaE00(c, s.Lab()), tolerance, "%v", c)
	return s
}

// Identity, over all of sRGB with its corners; only black and white are clamped.
func TestReflectanceOfSRGB(t *testing.T) {
	const steps = 12
	for r := range steps + 1 {
		for g := range steps + 1 {
			for b := range steps + 1 {
				c := FromSRGB(float64(r)/steps, float64(g)/steps, float64(b)/steps)
				tolerance := 1e-6
				if r+g+b == 0 || r+g+b == 3*steps {
					tolerance = 0.01
				}
				checkReflectance(t, c, tolerance)
			}
		}
	}
	for _, c := range []Lab{{1, 0, 0}, {1, 0.5, -0.5}, {2, 4, -4}, {8, 20, -30}, {99.9, 0, 0}, {99.5, 0, 3}} {
		checkReflectance(t, c, 1e-6)
	}
}

func TestReflectanceOfGrayIsFlat(t *testing.T) {
	for l := 1.0; l < 100; l += 3 {
		s := checkReflectance(t, Lab{L: l}, exact)
		for _, r := range s {
			assert.InDelta(t, Lab{L: l}.XYZ().Y/100, r, exact)
		}
	}
}

// CIE 13.3-1995, tables 1 and 2: none of the chips' own reflectances, each of
// which has the colour asked for, is smoother than what is found. Under the lamps
// the smooth one looks like the chip to about 3 CIEDE2000 (2.9 was measured).
func TestReflectanceOfChips(t *testing.T) {
	for _, c := range publishedChips(t) {
		s := checkReflectance(t, c.s.Lab(), 1e-6)
		assert.Less(t, roughness(&s), roughness(&c.s), c.label)
		for _, l := range Lamps() {
			assert.Less(t, DeltaE00(l.Lab(&s), l.Lab(&c.s)), 3.0, "%s under %s", c.label, l.Key)
		}
	}
}

// Nor is one that is moved a little in such a way that its colour stays.
func TestReflectanceIsSmoothest(t *testing.T) {
	for _, c := range []Lab{{50, 0, 0}, {60, 30, 40}, {30, 40, -60}, {70, -50, 20}, {20, 5, 30}} {
		s := checkReflectance(t, c, 1e-6)
		least := roughness(&s)
		for first := range Bands - 6 {
			for _, amount := range []float64{1e-3, -1e-3} {
				moved := s
				for i, d := range unseen(first) {
					moved[first+2*i] += amount * d
				}
				require.Less(t, DeltaE00(c, moved.Lab()), 1e-4, "%v", c)
				assert.Greater(t, roughness(&moved), least, "%v, %d", c, first)
			}
		}
	}
}

// unseen returns moves of every second band from first on, the largest 1, which
// together leave X, Y and Z as they were: the cofactors of their weights.
func unseen(first int) (d [4]float64) {
	most := 0.0
	for skip := range d {
		var m matrix // the weights of the other three bands
		for k := range m {
			j := 0
			for i := range d {
				if i != skip {
					m[k][j] = weights[k][first+2*i]
					j++
				}
			}
		}
		d[skip] = m[0][0]*(m[1][1]*m[2][2]-m[1][2]*m[2][1]) +
			m[0][1]*(m[1][2]*m[2][0]-m[1][0]*m[2][2]) +
			m[0][2]*(m[1][0]*m[2][1]-m[1][1]*m[2][0])
		if skip%2 == 1 {
			d[skip] = -d[skip]
		}
		most = max(most, math.Abs(d[skip]))
	}
	for i := range d {
		d[i] /= most
	}
	return d
}

// possible tells whether a surface can have the ratios u to the white: what
// reflectances of 0 to 1 can have is a body whose faces each lie along two bands,
// so that it is enough to look past every such face.
// Source: MacAdam 1935, J. Optical Society of America 25(11), 361-367, for the body.
func possible(u [3]float64) bool {
	band := func(i int) [3]float64 { return [3]float64{weights[0][i], weights[1][i], weights[2][i]} }
	dot := func(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
	for i := range Bands {
		for j := range Bands { // i, j and j, i are a face and the one opposite
			a, b := band(i), band(j)
			n := [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
			most := 0.0
			for k := range Bands {
				if k != i && k != j {
					most += max(0, dot(n, band(k)))
				}
			}
			if dot(n, u) > most {
				return false
			}
		}
	}
	return true
}

// A colour that a surface can have is reached; of another, at least 0.98 of the
// chroma that a surface can have, at its lightness and hue.
func TestReflectanceToTheEdge(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	inside := 0
	for range 200 {
		c := Lab{1 + 98*r.Float64(), 240*r.Float64() - 120, 240*r.Float64() - 120}
		s := c.Reflectance()
		got := s.Lab()
		if possible(ratios(c)) {
			inside++
			assert.Less(t, DeltaE00(c, got), 1e-6, "%v", c)
			continue
		}
		low, high := 0.0, 1.0
		for range 10 {
			mid := (low + high) / 2
			if possible(ratios(Lab{c.L, mid * c.A, mid * c.B})) {
				low = mid
			} else {
				high = mid
			}
		}
		share := got.Chroma() / c.Chroma()
		assert.True(t, share > 0.98*low && share <= high, "%v: %.4f of %.4f", c, share, low)
		assert.InDelta(t, c.L, got.L, 1e-6, "%v", c)
		assert.Less(t, apart(c.Hue(), got.Hue(), 360), 1e-4, "%v", c)
	}
	assert.Greater(t, inside, 50)
	assert.Less(t, inside, 150)
}

func TestReflectanceIsTotal(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []Lab{{}, {L: -5}, {L: 100}, {L: 300}, {50, 1e9, 0}, {50, 0, -1e9}, {nan, 0, 0}, {50, nan, 0}, {50, 0, inf}, {inf, inf, -inf}} {
		s := c.Reflectance()
		for _, r := range s {
			require.True(t, r > 0 && r < 1, "%v: %v", c, s)
		}
	}
}

func BenchmarkReflectance(b *testing.B) {
	for _, c := range []struct {
		name string
		c    Lab
	}{{"orange", Lab{60, 30, 40}}, {"blue", FromSRGB(0, 0, 1)}, {"impossible", Lab{50, 150, 150}}} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				s := c.c.Reflectance()
				sink.L = s[0]
			}
		})
	}
}
