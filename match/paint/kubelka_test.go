package paint

import (
	"math"
	"testing"

	"tonewright/analyze/colour"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Tolerances: half the last printed digit of a published figure, and what float64
// leaves of an identity.
const exact = 1e-9

func TestInfiniteLayer(t *testing.T) {
	// Identity: R = 1 + q - sqrt(q² + 2q) is 2 - √3 at q = 1 and 6 - √35 at q = 5.
	for q, want := range map[float64]float64{0: 1, 1: 0.267949192431123, 5: 0.083920216900384} {
		assert.InDelta(t, want, Infinite(q), exact, "q = %v", q)
	}
	// Identity, [Kubelka1948]: K/S = (1 - R)² / 2R gives q back, large ones too.
	for _, q := range []float64{1e-6, 0.01, 0.3, 7, 1e3, 1e6} {
		r := Infinite(q)
		assert.InEpsilon(t, q, (1-r)*(1-r)/(2*r), 1e-6, "q = %v", q)
	}
}

// climb is the outside check on the closed forms: Kubelka and Munk's differential
// equation for the reflectance of a film as it grows by dx,
// dR/dx = S - 2(K + S)R + S·R², by Runge and Kutta's fourth-order steps from the
// ground up. Source: [KubelkaMunk1931]; the equation, not its solution.
func climb(k, s, thickness, ground float64) float64 {
	grow := func(r float64) float64 { return s - 2*(k+s)*r + s*r*r }
	const steps = 20000
	h, r := thickness/steps, ground
	for range steps {
		a := grow(r)
		b := grow(r + h/2*a)
		c := grow(r + h/2*b)
		d := grow(r + h*c)
		r += h / 6 * (a + 2*b + 2*c + d)
	}
	return r
}

func TestFilmAgainstTheEquation(t *testing.T) {
	for _, c := range []struct{ k, s, x, ground float64 }{
		{0.5, 1, 2, 0}, {0.5, 1, 2, 0.9}, {0.02, 0.3, 12, 0.05}, {2.6, 0.15, 1, 0.8},
		{0.001, 0.05, 12, 0.4}, {1.2, 0, 1.5, 0.7}, {1.2, 1e-9, 1.5, 0.7}, {0, 1, 12, 0}, {0, 0.3, 4, 1}, {1e-12, 0.3, 4, 0.2},
	} {
		assert.InDelta(t, climb(c.k, c.s, c.x, c.ground), film(c.k, c.s, c.x, c.ground), 1e-8, "%+v", c)
	}
	// By definition: no film shows the ground, and no optics at all show it too.
	assert.Equal(t, 0.37, film(1, 1, 0, 0.37))
	assert.InDelta(t, 0.37, film(0, 0, 5, 0.37), exact)
}

// A mix by the trade's names is worked out here again from the sum over volumes
// and the equation, in its own way.
func TestMixAgainstTheEquation(t *testing.T) {
	paints := []Paint{known(t, "titanium-white"), known(t, "cadmium-red-light"), known(t, "ultramarine-blue")}
	parts := []float64{5, 2, 1}
	k, s := Mix(paints, parts)
	var ground colour.Spectrum
	for b := range ground {
		ground[b] = 0.2
	}
	thick, thin := Thick(&k, &s, Matt), Film(&k, &s, 0.8, &ground, Matt)
	for b := range colour.Bands {
		var kb, sb float64
		for i, p := range paints {
			kb += parts[i] / 8 * p.K[b]
			sb += parts[i] / 8 * p.S[b]
		}
		seen := func(r float64) float64 { return 0.03 + 0.97*0.4*r/(1-0.6*r) } // [Saunderson1942]
		assert.InDelta(t, seen(climb(kb, sb, 200, 0)), thick[b], 1e-6, "band %d, thick", b)
		inside := (0.2 - 0.03) / 0.97 / (0.4 + 0.6*(0.2-0.03)/0.97)
		assert.InDelta(t, seen(climb(kb, sb, 0.8, inside)), thin[b], 1e-6, "band %d, over a ground", b)
	}
}

func TestSurface(t *testing.T) {
	for _, f := range []Finish{Gloss, Matt} {
		for _, r := range []float64{0, 0.02, 0.5, 1} {
			assert.InDelta(t, r, f.In(f.Out(r)), exact)
		}
	}
	assert.InDelta(t, 1, Gloss.Out(1), exact) // a perfect white stays one
	assert.Equal(t, 0.0, Matt.In(0.01))       // darker than the surface's own shine: black inside
}

func TestMixOfOnePaintIsThatPaint(t *testing.T) {
	p := known(t, "viridian")
	k, s := Mix([]Paint{p, p}, []float64{3, 1})
	for b := range k {
		assert.InDelta(t, p.K[b], k[b], exact)
		assert.InDelta(t, p.S[b], s[b], exact)
	}
	assert.Panics(t, func() { Mix([]Paint{p}, nil) })
}

func known(t *testing.T, id string) Paint {
	p, err := find(id)
	require.NoError(t, err)
	return p
}

func thickOf(t *testing.T, parts []float64, names ...string) colour.Lab {
	var paints []Paint
	for _, id := range names {
		paints = append(paints, known(t, id))
	}
	k, s := Mix(paints, parts)
	r := Thick(&k, &s, Gloss)
	return r.Lab()
}

// The tests below hold facts of the trade: common practice, no source.

func TestWhiteRaisesValue(t *testing.T) {
	for _, white := range []string{"titanium-white", "zinc-white", "lead-white"} {
		for _, p := range Library() {
			if known(t, white).Masstone().L-p.Masstone().L < 1 {
				continue // another white
			}
			last := p.Masstone().L
			for _, parts := range []float64{0.2, 0.5, 1, 3, 9} {
				l := thickOf(t, []float64{1, parts}, p.ID, white).L
				assert.Greater(t, l, last, "%s with %v parts of %s", p.ID, parts, white)
				last = l
			}
		}
	}
}

func TestMarsBlackIntoYellowOchreIsDarkEarthyBrown(t *testing.T) {
	ochre := known(t, "yellow-ochre").Masstone()
	for _, parts := range []float64{0.3, 1, 2} {
		mix := thickOf(t, []float64{1, parts}, "yellow-ochre", "mars-black")
		assert.Less(t, mix.L, 35.0, "%v: dark", mix)
		assert.Less(t, mix.Chroma(), ochre.Chroma()/2, "%v: of low chroma", mix)
		assert.Greater(t, mix.Hue(), 40.0, "%v: earthy, no red", mix)
		assert.Less(t, mix.Hue(), 95.0, "%v: earthy, no green", mix)
	}
}

func TestCadmiumYellowDeepToQuinacridoneRose(t *testing.T) {
	last := known(t, "cadmium-yellow-deep").Masstone().Hue()
	rose := known(t, "quinacridone-rose").Masstone().Hue()
	for _, parts := range []float64{0.1, 0.3, 1, 3, 9, 30} {
		mix := thickOf(t, []float64{1, parts}, "cadmium-yellow-deep", "quinacridone-rose")
		assert.Less(t, mix.Hue(), last, "towards the rose all the way")
		assert.Greater(t, mix.Chroma(), 45.0, "never muddy")
		last = mix.Hue()
	}
	assert.Greater(t, last, rose)
	orange := thickOf(t, []float64{3, 1}, "cadmium-yellow-deep", "quinacridone-rose").Hue()
	assert.True(t, orange > 35 && orange < 65, "hue %v is no orange", orange)
	pink := thickOf(t, []float64{1, 9, 9}, "cadmium-yellow-deep", "quinacridone-rose", "titanium-white")
	assert.True(t, pink.L > 50 && (pink.Hue() < 25 || pink.Hue() > 340), "%v is no pink", pink)
}

func TestDarksWithWhiteSpanFiveValues(t *testing.T) {
	for _, id := range []string{"alizarin-crimson", "indigo"} {
		dark := colour.ValueOf(known(t, id).Masstone().L)
		light := colour.ValueOf(thickOf(t, []float64{1, 30}, id, "titanium-white").L)
		assert.Greater(t, light-dark, 5.0, id)
	}
}

// Lemon, every green and ultramarine, in pairs and threes: hues from lemon's own
// through green to ultramarine's own, and never the red side.
func TestLemonGreensUltramarineStayGreenToBlue(t *testing.T) {
	names := []string{"cadmium-yellow-lemon", "viridian", "phthalo-green-bs", "phthalo-green-ys", "chromium-oxide-green", "cobalt-green", "terre-verte", "ultramarine-blue"}
	from := known(t, "cadmium-yellow-lemon").Masstone().Hue()
	to := known(t, "ultramarine-blue").Masstone().Hue()
	for i := range names {
		for j := range i {
			for k := range j + 1 {
				for n := range 100 {
					parts := []float64{float64(1 + n%5), float64(1 + n/5%5), float64(n / 25)}
					mix := thickOf(t, parts, names[i], names[j], names[k])
					assert.True(t, mix.Hue() > from-2 && mix.Hue() < to+2, "%v of %s, %s, %s: %v", parts, names[i], names[j], names[k], mix)
				}
			}
		}
	}
}

func TestOpaqueHideMoreThanTransparent(t *testing.T) {
	rank := map[string]int{"transparent": 0, "semi-transparent": 1, "semi-opaque": 2, "opaque": 3}
	var sum, count [4]float64
	for _, p := range Library() {
		ratio := ContrastRatio(&p.K, &p.S)
		l := p.Masstone().L
		sum[rank[p.Opacity]], count[rank[p.Opacity]] = sum[rank[p.Opacity]]+ratio, count[rank[p.Opacity]]+1
		for _, q := range Library() {
			if p.Opacity == "opaque" && q.Opacity == "transparent" && math.Abs(q.Masstone().L-l) < 10 && l > 20 {
				assert.Greater(t, ratio, ContrastRatio(&q.K, &q.S), "%s over %s", p.ID, q.ID)
			}
		}
	}
	for i := range 3 {
		assert.Less(t, sum[i]/count[i], sum[i+1]/count[i+1], "mean contrast ratio by opacity, class %d", i)
	}
}

func TestContrastRatioOfTitaniumWhite(t *testing.T) {
	p := known(t, "titanium-white")
	// [PaintOptics] model.units prints 0.93 for one coat.
	assert.InDelta(t, 0.93, ContrastRatio(&p.K, &p.S), 0.01)
}
