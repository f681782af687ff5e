package tube

import (
	"math"
	"math/rand/v2"
	"testing"

	"tonewright/analyze/colour"
	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The streams themselves, against what is known of them without a table.
func TestStreamsAlone(t *testing.T) {
	for power := range 12 { // Gauss's rule of 6 points is exact up to the 11th power
		sum := 0.0
		for i, w := range weights {
			sum += w * math.Pow(cosines[i], float64(power))
		}
		assert.InDelta(t, 1/float64(power+1), sum, 1e-12)
	}
	// Nothing absorbed: all comes back, whatever the surface.
	back, _ := layer(0, 1, 1e9, 60)
	assert.InDelta(t, 1, seenBack(back), 1e-3)
	// Without a surface, what comes straight back of a thick layer lit evenly is
	// 1 - H(1)·sqrt(1 - ω), and H follows from its own equation, 1/H(μ) = sqrt(1 - ω) +
	// ω/2·∫ μ'H(μ')/(μ + μ') dμ': Chandrasekhar, "Radiative Transfer" chapter V, from memory.
	back, _ = layer(0.1, 0.9, 1000, 34)
	top := 0.0
	for j := range back {
		top += back[5][j]
	}
	h := [6]float64{1, 1, 1, 1, 1, 1}
	for range 200 {
		var next [6]float64
		for i := range h {
			sum := math.Sqrt(0.1)
			for j := range h {
				sum += 0.45 * weights[j] * cosines[j] * h[j] / (cosines[i] + cosines[j])
			}
			next[i] = 1 / sum
		}
		h = next
	}
	assert.InDelta(t, 1-h[5]*math.Sqrt(0.1), top, 1e-6)
}

var titanium = truthOf(0.0004, 1, -0.4, 0, [3]float64{392, 4, 0.5})

// Tubes as a painter may own them, each a few CIEDE2000 from the typical one.
var truths = []struct {
	id string
	truth
}{
	{"yellow-ochre", truthOf(0.02, 0.15, 0.4, 0.35, [3]float64{400, 45, 0.9}, [3]float64{488, 17, 0.25})},
	{"ultramarine-blue", truthOf(0.009, 0.0115, 0.6, 0.9, [3]float64{595, 45, 0.85}, [3]float64{530, 25, 0.18})},
	{"quinacridone-rose", truthOf(0.003, 0.06, -0.3, 0.4, [3]float64{556, -26, 1.2}, [3]float64{510, -25, 0.5}, [3]float64{400, 15, 0.12})},
	{"cadmium-red-light", truthOf(0.003, 0.28, 0.75, 0.2, [3]float64{547, -25, 1.2}, [3]float64{480, -45, 0.9}, [3]float64{420, -60, 0.8})},
	{"phthalo-green-bs", truthOf(0.006, 0.04, 0.5, 1.2, [3]float64{645, 40, 5}, [3]float64{590, 25, 0.6}, [3]float64{400, 30, 1.3})},
}

func library(t testing.TB, id string) paint.Paint {
	p, err := paint.Find(nil, id)
	require.NoError(t, err)
	return p
}

// fitted is a tube measured by the streams and fitted: masstone, a tint of 1:4, the white.
func fitted(t *testing.T, i int, noise float64, random *rand.Rand, white *colour.Spectrum) Fitted {
	tr := truths[i]
	m := Measured{Masstone: tr.measure(noise, random), White: white,
		Tints: []Tint{{1, 4, mixed([]float64{1, 4}, tr.truth, titanium).measure(noise, random)}}}
	f, err := Fit(library(t, tr.id), library(t, "titanium-white"), m)
	require.NoError(t, err)
	return f
}

// off returns the mean of |ln(a/b)| over the bands, b being in units of the true white's S.
func off(a, b colour.Spectrum) (mean float64) {
	for i := range a {
		mean += math.Abs(math.Log(a[i]/b[i]*titanium.s[i])) / colour.Bands
	}
	return mean
}

// The tubes are those of streams_test.go: shapes and light unlike ours. Without noise
// and with 0.2 % of reflectance of it, K comes back within 13 % on average and S
// within 21 %, but for the S of phthalo green, whose swing of 60 % the fit follows to 23 %
// (0.204 and 0.217 measured at most).
func TestRecoversAnotherOptics(t *testing.T) {
	for _, noise := range []float64{0, 0.002} {
		random := rand.New(rand.NewPCG(1, 2))
		white := titanium.measure(noise, random)
		for i, tr := range truths {
			f := fitted(t, i, noise, random, &white)
			k, s := off(f.Paint.K, tr.k), off(f.Paint.S, tr.s)
			t.Logf("noise %v, %s: ln K off by %.3f, ln S by %.3f; fit %.2f, worst %.2f; away %.1f and %.1f; strength %.2f", noise, tr.id, k, s, f.Mean, f.Worst, f.MasstoneAway, f.TintAway, f.Strength)
			like := library(t, tr.id)
			assert.Less(t, k, 0.13, tr.id)
			assert.Less(t, s, map[bool]float64{false: 0.21, true: 0.23}[tr.id == "phthalo-green-bs"], tr.id)
			assert.Less(t, k+s, off(like.K, tr.k)+off(like.S, tr.s), "%s: nearer than the typical tube", tr.id)
			assert.Less(t, f.Worst, 0.6, tr.id)
			assert.Empty(t, f.Unlike, "%s is a tube of its own name", tr.id)
		}
	}
}

// Mixes that no fit has seen: two paints, other parts, with and without white.
func TestPredictsAHeldBackMixture(t *testing.T) {
	for _, noise := range []float64{0, 0.002} {
		random := rand.New(rand.NewPCG(3, 4))
		measured := titanium.measure(noise, random)
		white := whiteOf(library(t, "titanium-white"), Measured{White: &measured})
		own := make([]paint.Paint, len(truths))
		for i := range truths {
			own[i] = fitted(t, i, noise, random, &measured).Paint
		}
		var ours, typicals []float64
		for i := range truths {
			j := (i + 1) % len(truths)
			for _, parts := range [][]float64{{2, 1, 3}, {1, 1, 0}, {1, 0, 12}, {3, 1, 1}} {
				r := mixed(parts, truths[i].truth, truths[j].truth, titanium).measure(0, random)
				miss := func(a paint.Paint) float64 {
					k, s := paint.Mix([]paint.Paint{a, own[j], white}, parts)
					guess := paint.Thick(&k, &s, ShineOut)
					return colour.DeltaE00(r.Lab(), guess.Lab())
				}
				ours, typicals = append(ours, miss(own[i])), append(typicals, miss(library(t, truths[i].id)))
			}
		}
		sum, typical, worst, better := 0.0, 0.0, 0.0, 0
		for i := range ours {
			sum, typical, worst = sum+ours[i]/20, typical+typicals[i]/20, max(worst, ours[i])
			if ours[i] < typicals[i] {
				better++
			}
		}
		t.Logf("noise %v: own tubes miss by %.2f (worst %.2f), typical by %.2f; better in %d of %d", noise, sum, worst, typical, better, len(ours))
		assert.Less(t, sum, 0.8)
		assert.Less(t, worst, 1.5)
		assert.Greater(t, typical, 3.0)
		assert.GreaterOrEqual(t, better, 19)
	}
}

// Where the light does as Kubelka and Munk say, K and S come back wherever tint and
// masstone differ. The reflectances are worked out here again, in the printed form:
// [Kubelka1948] R = 1 + q - sqrt(q² + 2q), [Saunderson1942] with k2 = 0.6 and k1.
func TestRecoversTheEquationsOwn(t *testing.T) {
	white := library(t, "titanium-white")
	for _, k1 := range []float64{0, 0.04} {
		seen := func(tr truth) (r colour.Spectrum) {
			for b := range r {
				q := tr.k[b] / tr.s[b]
				inside := 1 + q - math.Sqrt(q*q+2*q)
				r[b] = k1 + (1-k1)*0.4*inside/(1-0.6*inside)
			}
			return r
		}
		for _, tr := range truths {
			m := Measured{Masstone: seen(tr.truth), Surface: paint.Finish(k1), Tints: []Tint{
				{1, 4, seen(mixed([]float64{1, 4}, tr.truth, truth{white.K, white.S}))},
				{1, 1, seen(mixed([]float64{1, 1}, tr.truth, truth{white.K, white.S}))},
			}}
			f, err := Fit(library(t, tr.id), white, m)
			require.NoError(t, err)
			assert.Less(t, f.Worst, 0.3, tr.id)
			for b := range tr.k {
				if math.Abs(lightness(m.Masstone[b])-lightness(m.Tints[0].R[b])) > 5 {
					assert.InDelta(t, math.Log(tr.k[b]), math.Log(f.Paint.K[b]), 0.05, "%s, k1 %v, K in band %d", tr.id, k1, b)
					allowed := 0.15
					if m.Masstone[b]-k1 < 0.01 { // nearly black: the typical tube has more of a say
						allowed = 0.4
					}
					assert.InDelta(t, math.Log(tr.s[b]), math.Log(f.Paint.S[b]), allowed, "%s, k1 %v, S in band %d", tr.id, k1, b)
				}
			}
		}
	}
}

// Films over black and white, of a thickness nobody told, are predicted as well and
// tell the S of a paint whose masstone is too dark to.
func TestFilmsTellScattering(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	white := titanium.measure(0, random)
	tr := truths[1] // ultramarine, transparent
	chart := func(g float64) (r colour.Spectrum) {
		return truth{}.overGround(0, g)
	}
	m := Measured{Masstone: tr.measure(0.002, random), White: &white,
		Tints: []Tint{{1, 4, mixed([]float64{1, 4}, tr.truth, titanium).measure(0.002, random)}}}
	without, err := Fit(library(t, tr.id), library(t, "titanium-white"), m)
	require.NoError(t, err)
	m.Films = []Film{{OverBlack: tr.overGround(3, 0.02), OverWhite: tr.overGround(3, 0.85), Black: chart(0.02), White: chart(0.85)}}
	with, err := Fit(library(t, tr.id), library(t, "titanium-white"), m)
	require.NoError(t, err)
	t.Logf("ln S off by %.3f without the film, %.3f with it; fit %.2f, %.2f", off(without.Paint.S, tr.s), off(with.Paint.S, tr.s), without.Mean, with.Mean)
	assert.Len(t, with.Misses, 4)
	assert.Less(t, with.Worst, 1.5)
	assert.False(t, without.Checked)
	assert.True(t, with.Checked)
	assert.Less(t, off(with.Paint.S, tr.s), 0.16) // 0.144 measured
	assert.Less(t, off(with.Paint.S, tr.s), 0.8*off(without.Paint.S, tr.s))
	thin := tr.overGround(1.5, 0.85) // a film that no fit has seen
	guess := func(f Fitted) float64 {
		least := math.Inf(1)
		for x := 0.3; x < 8; x *= 1.05 {
			r := paint.Film(&f.Paint.K, &f.Paint.S, x, &m.Films[0].White, ShineOut)
			least = min(least, colour.DeltaE00(r.Lab(), thin.Lab()))
		}
		return least
	}
	t.Logf("a thinner film is missed by %.2f without and %.2f with", guess(without), guess(with))
	assert.Less(t, guess(with), 1.8) // 1.66 measured
	assert.Less(t, guess(with), 0.6*guess(without))
}

func TestFitRefuses(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	tr, white := truths[0], library(t, "titanium-white")
	mass := tr.measure(0, random)
	tint := mixed([]float64{1, 4}, tr.truth, titanium).measure(0, random)
	none, pure := mass, titanium.measure(0, random)
	none[4] = math.NaN()
	upsideDown := Film{OverBlack: mass, OverWhite: mass, Black: flat(0.8), White: flat(0.01)}
	for _, c := range []struct {
		name string
		m    Measured
		want string
	}{
		{"a masstone alone", Measured{Masstone: mass}, "measure a tint too: 1 part to 4 of white"},
		{"a tint that is the masstone", Measured{Masstone: mass, Tints: []Tint{{1, 4, mass}}}, "the tint 1:4 is the masstone's colour"},
		{"a tint that is the white", Measured{Masstone: mass, White: &pure, Tints: []Tint{{1, 4, pure}}}, "the tint 1:4 is the white's colour"},
		{"each in the other's place", Measured{Masstone: tint, Tints: []Tint{{1, 4, mass}}}, "no paint gives these samples"},
		{"tints that contradict", Measured{Masstone: mass, Tints: []Tint{{1, 4, tint}, {4, 1, tint}}}, "no paint gives these samples"},
		{"too little paint", Measured{Masstone: mass, Tints: []Tint{{1, 51, tint}}}, "a tint of 1 parts to 51 of white is out of range; make one between 1:50 and 10:1, best 1:4"},
		{"too little white", Measured{Masstone: mass, Tints: []Tint{{11, 1, tint}}}, "out of range"},
		{"no parts", Measured{Masstone: mass, Tints: []Tint{{0, 0, tint}}}, "a tint of 0 parts to 0 of white is none; write figures over 0, at most 1000, best 1:4"},
		{"parts below nothing", Measured{Masstone: mass, Tints: []Tint{{-1, -4, tint}}}, "a tint of -1 parts to -4 of white is none"},
		{"parts that are none", Measured{Masstone: mass, Tints: []Tint{{math.NaN(), 4, tint}}}, "a tint of NaN parts to 4 of white is none"},
		{"parts without end", Measured{Masstone: mass, Tints: []Tint{{1e308, 1e308, tint}}}, "a tint of 1e+308 parts to 1e+308 of white is none"},
		{"no number", Measured{Masstone: none, Tints: []Tint{{1, 4, tint}}}, "a reflectance of NaN is none"},
		{"shine that is not there", Measured{Masstone: mass, Tints: []Tint{{1, 4, tint}}, Surface: ShineIn}, "less than the shine alone would"},
		{"grounds in each other's place", Measured{Masstone: mass, Tints: []Tint{{1, 4, tint}}, Films: []Film{upsideDown}}, "the black ground under a film is lighter than the white one"},
		{"an endless surface", Measured{Masstone: mass, Tints: []Tint{{1, 4, tint}}, Surface: 1}, "a surface that mirrors 1 of the light"},
	} {
		f, err := Fit(library(t, tr.id), white, c.m)
		if assert.Error(t, err, "%s: %v", c.name, f.Misses) {
			assert.Contains(t, err.Error(), c.want, c.name)
		}
	}
	_, err := Fit(paint.Paint{Name: "nothing"}, white, Measured{Masstone: mass, Tints: []Tint{{1, 4, tint}}})
	assert.ErrorContains(t, err, "these samples lead to figures without end", "a paint that scatters nothing")
	_, err = Fit(library(t, tr.id), library(t, "viridian"), Measured{})
	assert.ErrorContains(t, err, "Viridian is no white")
}

// What a tube is said to be beside the typical one, of tubes that are known: half as
// strong again tints 1.5 times as much, and the typical tube itself is no way off.
func TestBesideTheTypicalTube(t *testing.T) {
	white := library(t, "titanium-white")
	for _, id := range []string{"yellow-ochre", "ultramarine-blue", "viridian"} {
		for _, strength := range []float64{1, 1.5} {
			like := library(t, id)
			real := like.Vary(strength, 1, 0)
			k, s := paint.Mix([]paint.Paint{real, white}, []float64{1, 4})
			f, err := Fit(like, white, Measured{Masstone: paint.Thick(&real.K, &real.S, ShineOut), Tints: []Tint{{1, 4, paint.Thick(&k, &s, ShineOut)}}})
			require.NoError(t, err)
			assert.InDelta(t, strength, f.Strength, 0.02, id)
			assert.InDelta(t, colour.DeltaE00(real.Masstone(), like.Masstone()), f.MasstoneAway, 0.1, id)
			assert.InDelta(t, colour.DeltaE00(real.Tint(white), like.Tint(white)), f.TintAway, 0.1, id)
			assert.InDelta(t, max(f.MasstoneAway, f.TintAway), f.Paint.Fit.Away, 0.005, id)
			assert.Equal(t, []string{paint.Own, id}, []string{f.Paint.Basis, f.Paint.Like})
		}
	}
}

// How strongly a white tints white is no figure: the sums that are compared are nothing,
// or nearly so.
func TestNoStrengthOfAWhite(t *testing.T) {
	white := library(t, "titanium-white")
	for _, id := range []string{"titanium-white", "unbleached-titanium"} {
		like := library(t, id)
		own := like.Vary(50, 1, 0)
		k, s := paint.Mix([]paint.Paint{own, white}, []float64{1, 1})
		f, err := Fit(like, white, Measured{Masstone: paint.Thick(&own.K, &own.S, ShineOut), Tints: []Tint{{1, 1, paint.Thick(&k, &s, ShineOut)}}})
		require.NoError(t, err, id)
		assert.Zero(t, f.Strength, id)
	}
}
