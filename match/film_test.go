package match

import (
	"math"
	"testing"

	"tonewright/analyze/colour"
	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
)

func flat(r float64) (s colour.Spectrum) {
	for b := range s {
		s[b] = r
	}
	return s
}

// thicker returns K and S of a layer that is so many times as thick.
func thicker(v colour.Spectrum, times float64) colour.Spectrum {
	for b := range v {
		v[b] *= times
	}
	return v
}

// By definition: a layer of any thickness is between the ground and the opaque mix,
// and tends to each.
func TestCoverTendsToGroundAndToTheMix(t *testing.T) {
	ground := flat(0.3)
	for _, p := range paint.Library() {
		for _, finish := range []paint.Finish{paint.Gloss, paint.Matt} {
			k, s := thicker(p.K, 1e-7), thicker(p.S, 1e-7)
			c := CoverOf(&k, &s, &ground, finish, 1)
			assert.InDelta(t, 0, colour.DeltaE00(ground.Lab(), c.OneCoat), 0.01, "%s, thin", p.ID)

			k, s = thicker(p.K, 1e4), thicker(p.S, 1e4)
			c = CoverOf(&k, &s, &ground, finish, 1)
			assert.InDelta(t, 0, c.DeltaE, 0.01, "%s, thick", p.ID)
			assert.InDelta(t, 0, c.ValueShift, 0.001, "%s, thick", p.ID)
			assert.True(t, c.Carries())
		}
	}
}

// One coat against the two printed forms of the solution, each worked out from its
// letters: [Kubelka1948] R = (1 - Rg(a - b·coth bSX)) / (a - Rg + b·coth bSX), and
// [KubelkaMunk1931] with exponentials and R∞. Both from memory.
func TestOneCoatAgainstThePrintedForms(t *testing.T) {
	hyperbolic := func(k, s, x, g float64) float64 {
		a := (s + k) / s
		b := math.Sqrt(a*a - 1)
		coth := math.Cosh(b*s*x) / math.Sinh(b*s*x)
		return (1 - g*(a-b*coth)) / (a - g + b*coth)
	}
	exponential := func(k, s, x, g float64) float64 {
		thick := 1 + k/s - math.Sqrt(k/s*k/s+2*k/s)
		e := math.Exp(s * x * (1/thick - thick))
		return ((g-thick)/thick - thick*(g-1/thick)*e) / (g - thick - (g-1/thick)*e)
	}
	for _, id := range []string{"zinc-white", "yellow-ochre", "indian-yellow", "ultramarine-blue"} {
		p := box(t, id)[0]
		ground := flat(0.2)
		inside := 0.2 / (0.4 + 0.6*0.2) // [Saunderson1942] with k1 = 0, k2 = 0.6
		for name, form := range map[string]func(k, s, x, g float64) float64{"1948": hyperbolic, "1931": exponential} {
			var want, sunk colour.Spectrum
			for b := range want {
				r := form(p.K[b], p.S[b], paint.Coat, inside)
				want[b] = 0.4 * r / (1 - 0.6*r)
				bare := (0.2 - 0.03) / 0.97
				r = form(p.K[b], p.S[b], paint.Coat, bare/(0.4+0.6*bare))
				sunk[b] = 0.03 + 0.97*0.4*r/(1-0.6*r)
			}
			got := CoverOf(&p.K, &p.S, &ground, paint.Gloss, 1).OneCoat
			assert.InDelta(t, 0, colour.DeltaE00(want.Lab(), got), 1e-5, "%s, %s", id, name)
			got = CoverOf(&p.K, &p.S, &ground, paint.Matt, 1).OneCoat
			assert.InDelta(t, 0, colour.DeltaE00(sunk.Lab(), got), 1e-5, "%s, %s, matt", id, name)
		}
	}
}

// threeBands spreads figures for red, green and blue over the bands of each third.
func threeBands(r, g, b float64) (s colour.Spectrum) {
	for i := range s {
		s[i] = [3]float64{b, g, r}[i*3/colour.Bands]
	}
	return s
}

// The classes named in [Curtis1997]: an opaque paint looks alike on white and black, a
// transparent one is coloured on white and nearly black on black, an interference one
// clear on white and coloured on black. The figures are its K and S in red, green and
// blue, of a layer of unit thickness.
func TestWatercoloursBehaveAsTheirClasses(t *testing.T) {
	type three [3]float64
	const rose, red, lilac = 0, 1, 2
	apart := make([]float64, 12)
	for i, c := range []struct {
		name string
		k, s three
	}{
		{"Quinacridone Rose", three{0.22, 1.47, 0.57}, three{0.05, 0.003, 0.03}},
		{"Indian Red", three{0.46, 1.07, 1.50}, three{1.28, 0.38, 0.21}},
		{"Interference Lilac", three{0.08, 0.11, 0.07}, three{1.25, 0.42, 1.43}},
		{"Cadmium Yellow", three{0.10, 0.36, 3.45}, three{0.97, 0.65, 0.007}},
		{"Hookers Green", three{1.62, 0.61, 1.64}, three{0.01, 0.012, 0.003}},
		{"Cerulean Blue", three{1.52, 0.32, 0.25}, three{0.06, 0.26, 0.40}},
		{"Burnt Umber", three{0.74, 1.54, 2.10}, three{0.09, 0.09, 0.004}},
		{"Cadmium Red", three{0.14, 1.08, 1.68}, three{0.77, 0.015, 0.018}},
		{"Brilliant Orange", three{0.13, 0.81, 3.45}, three{0.005, 0.009, 0.007}},
		{"Hansa Yellow", three{0.06, 0.21, 1.78}, three{0.50, 0.88, 0.009}},
		{"Phthalo Green", three{1.55, 0.47, 0.63}, three{0.01, 0.05, 0.035}},
		{"French Ultramarine", three{0.86, 0.86, 0.06}, three{0.005, 0.005, 0.09}},
	} {
		k := threeBands(c.k[0]/paint.Coat, c.k[1]/paint.Coat, c.k[2]/paint.Coat)
		s := threeBands(c.s[0]/paint.Coat, c.s[1]/paint.Coat, c.s[2]/paint.Coat)
		white, black := flat(1), flat(0)
		overWhite, overBlack := CoverOf(&k, &s, &white, paint.Gloss, 1).OneCoat, CoverOf(&k, &s, &black, paint.Gloss, 1).OneCoat
		apart[i] = colour.DeltaE00(overWhite, overBlack)
		onWhite, onBlack := overWhite.Munsell(), overBlack.Munsell()
		switch i {
		case rose:
			assert.Greater(t, onWhite.Chroma, 8.0, "%s: coloured on white", c.name)
			assert.Less(t, onBlack.Value, 1.0, "%s: nearly black on black", c.name)
		case red:
			assert.Less(t, math.Abs(onWhite.Value-onBlack.Value), 1.0, "%s: alike in value", c.name)
			assert.Less(t, math.Abs(onWhite.Chroma-onBlack.Chroma), 1.0, "%s: alike in chroma", c.name)
		case lilac:
			assert.Greater(t, onWhite.Value, 8.0, "%s: clear on white", c.name)
			assert.Less(t, onWhite.Chroma, 4.0, "%s: clear on white", c.name)
			assert.Greater(t, onBlack.Chroma, 2*onWhite.Chroma, "%s: coloured on black", c.name)
		}
	}
	for i, a := range apart {
		if i != red {
			assert.Greater(t, a, 2*apart[red], "number %d shows the ground more than the opaque one", i)
		}
	}
}

func TestHiddenIsHalfAValue(t *testing.T) {
	middle, half := colour.Lab{L: colour.LOf(5)}, colour.Lab{L: colour.LOf(5 + hiddenValue)}
	assert.InDelta(t, hiddenDeltaE, colour.DeltaE00(middle, half), 0.2)
	// A film that shows a ground of its own value but of another hue is not hidden:
	// a thin coat of light earth over a blue gray.
	p := box(t, "naples-yellow")[0]
	k, s := thicker(p.K, 0.01), thicker(p.S, 0.01)
	blue := box(t, "titanium-white", "ultramarine-blue")
	var c Cover
	for white := 1.0; ; white += 0.1 { // until the blue has the value of the earth
		bk, bs := paint.Mix(blue, []float64{white, 1})
		ground := paint.Thick(&bk, &bs, paint.Gloss)
		if c = CoverOf(&k, &s, &ground, paint.Gloss, 1); c.ValueShift > -valueWord/2 {
			break
		}
	}
	assert.Less(t, c.ValueShift, valueWord)
	assert.False(t, c.Carries())
	assert.Contains(t, c.Note("blue"), "towards", "%+v", c)
}

// Facts of the trade: common practice, no source. Black is a dry, glossy ivory black.
func TestCoatsOverBlack(t *testing.T) {
	paints := box(t, "ivory-black", "titanium-white", "zinc-white", "raw-sienna", "indian-yellow", "venetian-red")
	black := paint.Thick(&paints[0].K, &paints[0].S, paint.Gloss)
	cover := func(i int) Cover { return CoverOf(&paints[i].K, &paints[i].S, &black, paint.Gloss, 1) }
	titanium, zinc, earth, indian, red := cover(1), cover(2), cover(3), cover(4), cover(5)
	assert.True(t, titanium.Coats >= 1 && titanium.Coats <= 2, "titanium white hides in few coats: %+v", titanium)
	assert.True(t, zinc.Coats == 0 || zinc.Coats > titanium.Coats+1, "zinc white needs more: %+v", zinc)
	assert.Less(t, earth.ValueShift, -valueWord, "a semi-transparent yellow earth darkens")
	assert.Less(t, indian.ValueShift, -1.0, "a transparent yellow goes dark")
	assert.True(t, red.Carries(), "an opaque earth red carries: %+v", red)
	assert.Empty(t, red.Note("black"))
}

// Coats by their definition, for every paint over white and black: so many hide, one
// fewer do not.
func TestCoatsAreTheFewest(t *testing.T) {
	hides := func(p *paint.Paint, ground *colour.Spectrum, coats int) bool {
		film, thick := paint.Film(&p.K, &p.S, float64(coats)*paint.Coat, ground, paint.Satin), paint.Thick(&p.K, &p.S, paint.Satin)
		lab, hidden := film.Lab(), thick.Lab()
		return math.Abs(lab.Munsell().Value-hidden.Munsell().Value) <= 0.5 && math.Abs(lab.Munsell().Chroma-hidden.Munsell().Chroma) <= 1 && colour.DeltaE00(lab, hidden) <= hiddenDeltaE
	}
	more := 0
	for _, p := range paint.Library() {
		for _, r := range []float64{0.02, 0.9} {
			ground := flat(r)
			coats := CoverOf(&p.K, &p.S, &ground, paint.Satin, 1).Coats
			if coats == 0 {
				assert.False(t, hides(&p, &ground, MostCoats), "%s over %v", p.ID, r)
			} else {
				assert.True(t, hides(&p, &ground, coats), "%s over %v: %d", p.ID, r, coats)
				assert.False(t, coats > 1 && hides(&p, &ground, coats-1), "%s over %v: %d", p.ID, r, coats)
			}
			if coats > 2 {
				more++
			}
		}
	}
	assert.Positive(t, more)
}

func TestCoverNote(t *testing.T) {
	gray := func(value float64) colour.Lab { return colour.Lab{L: colour.LOf(value)} }
	assert.Equal(t, "One coat over black comes out darker by 1.4 value; 3 coats hide it.", Cover{Hidden: gray(6), OneCoat: gray(4.6), Coats: 3}.Note("black"))
	assert.Equal(t, "One coat over white comes out lighter by 1.0 value; 2 coats hide it.", Cover{Hidden: gray(5), OneCoat: gray(6), Coats: 2}.Note("white"))
	assert.Equal(t, "One coat over black comes out darker by 4.2 value, and 8 coats never hide it: treat it as a glaze.", Cover{Hidden: gray(7), OneCoat: gray(2.8)}.Note("black"))
}

// A mix with next to no scattering never hides a white ground.
func TestAClearFilmNeverHides(t *testing.T) {
	k, s := flat(0.0004), flat(0.00001)
	white := flat(0.9)
	assert.Equal(t, 0, CoverOf(&k, &s, &white, paint.Gloss, 1).Coats)
}
