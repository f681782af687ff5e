package match

import (
	"math"
	"slices"
	"strings"
	"testing"

	"tonewright/analyze/colour"
	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// layer is a pile as seen thick and dry.
func layer(t *testing.T, text string) colour.Spectrum {
	p, err := ParsePile(nil, text)
	require.NoError(t, err)
	k, s := p.Optics()
	return paint.Thick(&k, &s, paint.Gloss)
}

func tried(t *testing.T, over, with string) []Glaze {
	under := layer(t, over)
	return TryGlaze(box(t, with)[0], &under, paint.Gloss)
}

// Bouguer's law, [Bouguer1729]: light through a film that only absorbs falls by
// exp(-K·X) each way, so that inside the surface R = Rg·exp(-2KX). Thickness: a third
// of the 12 units of a coat, by the paint's share of paint and medium.
func TestAClearGlazeFollowsBouguer(t *testing.T) {
	clear := box(t, "quinacridone-rose")[0]
	clear.S = colour.Spectrum{}
	under := layer(t, "titanium-white 3, yellow-ochre 1")
	all := TryGlaze(clear, &under, paint.Gloss)
	require.Len(t, all, 16)
	for i, g := range all {
		medium, coats := []float64{1, 2, 3, 5, 8, 12, 20, 40}[i/2], float64(1+i%2)
		x := coats * 12 / 3 / (1 + medium)
		var want colour.Spectrum
		for b := range want {
			inside := under[b] / (0.4 + 0.6*under[b]) * math.Exp(-2*clear.K[b]*x)
			want[b] = 0.4 * inside / (1 - 0.6*inside)
		}
		assert.InDelta(t, 0, colour.DeltaE00(want.Lab(), g.Lab), 1e-6, "1:%d, %d coats", g.Medium, g.Coats)
		assert.Equal(t, int(medium), g.Medium)
		assert.Equal(t, int(coats), g.Coats)
	}
}

// From the physics: a film that only absorbs never lifts value, over anything, and the
// more of it, the darker; and what it does is less over a darker layer.
func TestAClearGlazeOnlyDarkens(t *testing.T) {
	for _, p := range paint.Library() {
		p.S = colour.Spectrum{}
		for _, over := range []string{"titanium-white 1", "yellow-ochre 1", "burnt-umber 1", "cadmium-red-light 1", "ultramarine-blue 1, titanium-white 2"} {
			under := layer(t, over)
			all := TryGlaze(p, &under, paint.Gloss)
			for i, g := range all {
				assert.Less(t, g.Lifts, 1e-9, "%s over %s", p.ID, over)
				assert.False(t, g.Milky())
				if i >= 2 && g.Coats == all[i-2].Coats {
					assert.GreaterOrEqual(t, g.Lab.L, all[i-2].Lab.L, "%s over %s, 1:%d", p.ID, over, g.Medium)
				}
			}
		}
	}
}

// Facts of the trade: common practice, no source.
func TestWhatGlazesDo(t *testing.T) {
	hueOf := func(m colour.Munsell) string { return familyOf(m) }
	// Ultramarine over yellow turns it green and darker.
	for _, g := range tried(t, "cadmium-yellow-lemon 1", "ultramarine-blue") {
		assert.Contains(t, []string{"yellow-green", "green", "blue-green"}, hueOf(g.Lab.Munsell()), "1:%d", g.Medium)
		assert.Less(t, g.Lifts, 0.0)
	}
	// A red over yellow gives orange to red.
	for _, g := range tried(t, "cadmium-yellow-light 1", "quinacridone-rose") {
		assert.Contains(t, []string{"yellow", "orange", "red"}, hueOf(g.Lab.Munsell()), "1:%d", g.Medium)
	}
	// A complement grays: viridian over red, violet over yellow.
	for _, pair := range [][2]string{{"cadmium-red-light 1", "viridian"}, {"cadmium-yellow-lemon 1", "ultramarine-violet"}} {
		for _, g := range tried(t, pair[0], pair[1]) {
			assert.Less(t, g.Gains, 0.0, "%v 1:%d", pair, g.Medium)
		}
	}
	// Transparent colours glow over white: the chroma is over that of the same amount of
	// paint mixed into white at the same value.
	blue := box(t, "titanium-white", "phthalo-blue-gs")
	for _, g := range tried(t, "titanium-white 1", "phthalo-blue-gs")[8:] {
		value, mix := g.Lab.Munsell().Value, colour.Munsell{Value: 10}
		for share := 0.001; mix.Value > value; share *= 1.05 {
			mix = pointAt(&blue[0], &blue[1], share, paint.Gloss).lab.Munsell()
		}
		assert.Greater(t, g.Lab.Munsell().Chroma, mix.Chroma, "1:%d", g.Medium)
	}
	// Over black, a transparent blue leaves black; zinc white and a semi-transparent
	// yellow veil it, and say so.
	for _, g := range tried(t, "ivory-black 1", "ultramarine-blue") {
		assert.Less(t, g.Lab.Munsell().Value, 1.5)
		assert.False(t, g.Milky())
	}
	for _, veil := range []string{"zinc-white", "hansa-yellow-light", "raw-sienna"} {
		assert.True(t, tried(t, "ivory-black 1", veil)[0].Milky(), veil)
	}
}

// From 1 : 8 on less than an eighth of the film is paint.
func TestFatGlazes(t *testing.T) {
	for _, g := range tried(t, "titanium-white 1", "viridian") {
		assert.Equal(t, 1/float64(1+g.Medium) < 1.0/8, g.Fat(), "1:%d", g.Medium)
	}
}

func TestWhatIsOfferedAsAGlaze(t *testing.T) {
	for id, want := range map[string]bool{
		"ultramarine-blue": true, "raw-sienna": true, "viridian": true,
		"titanium-white": false, "zinc-white": false, "venetian-red": false, "yellow-ochre": false, // opaque, white or semi-opaque
	} {
		assert.Equal(t, want, Glazes(box(t, id)[0]), id)
	}
}

// A glaze is found again from its colour, with the thinner of two that are alike.
func TestAGlazeIsFoundAgain(t *testing.T) {
	owned := paint.StarterBox().Paints
	under := layer(t, "titanium-white 2, yellow-ochre 1")
	for _, id := range []string{"quinacridone-rose", "viridian", "phthalo-blue-gs", "burnt-sienna"} {
		for _, g := range TryGlaze(box(t, id)[0], &under, paint.Gloss) {
			a := AdviseGlaze(owned, &under, g.Lab, paint.Gloss)
			if a.Bare <= matches {
				continue
			}
			require.NotEmpty(t, a.Best)
			best := a.Best[0]
			assert.Equal(t, id, best.Paint.ID)
			assert.Less(t, best.DeltaE, tie)
			assert.LessOrEqual(t, best.Coats, g.Coats)
			assert.Contains(t, best.Note, "Matches.")
			assert.Empty(t, a.Warnings, "%+v", best)
		}
	}
}

func TestAdviseGlazeTellsTheNearestFirst(t *testing.T) {
	under := layer(t, "titanium-white 2, ivory-black 1")
	counts := map[int]bool{}
	for _, aim := range []colour.Lab{{L: 40, A: 20, B: -25}, {L: 45, A: 5, B: -15}, {L: 40, A: 25, B: 15}, {L: 50, A: -20, B: 5}} {
		a := AdviseGlaze(paint.Library(), &under, aim, paint.Gloss)
		var nearest []float64 // of each paint that glazes
		for _, p := range paint.Library() {
			least := math.Inf(1)
			for _, g := range TryGlaze(p, &under, paint.Gloss) {
				least = min(least, colour.DeltaE00(aim, g.Lab))
			}
			if Glazes(p) {
				nearest = append(nearest, least)
			}
		}
		slices.Sort(nearest)
		within := 0
		for within < 3 && nearest[within] <= nearest[0]+worseBy {
			within++
		}
		counts[within] = true
		require.Len(t, a.Best, within)
		for i, g := range a.Best {
			assert.InDelta(t, nearest[i], g.DeltaE, tie)
			assert.InDelta(t, colour.DeltaE00(aim, g.Lab), g.DeltaE, exact)
			assert.InDelta(t, g.Lab.Munsell().Value-aim.Munsell().Value, g.ValueShift, exact)
			assert.InDelta(t, g.Lab.Munsell().Chroma-aim.Munsell().Chroma, g.ChromaShift, exact)
		}
	}
	assert.Greater(t, len(counts), 1, "some aims have fewer glazes near than others")
}

// What cannot be done follows from the physics above; the figures are worked out here.
func TestWhatGlazesCannotDo(t *testing.T) {
	owned := paint.StarterBox().Paints
	all := func(over, aim string) string {
		under, wanted := layer(t, over), must(colour.Parse(aim))
		return strings.Join(AdviseGlaze(owned, &under, wanted, paint.Gloss).Warnings, " ")
	}
	dark := layer(t, "burnt-umber 1")
	beneath := dark.Lab().Munsell().Value
	assert.InDelta(t, 2.7, 4-beneath, 0.05) // so that the 2.7 below is the difference of values
	assert.Contains(t, all("burnt-umber 1", "5YR 4/4"), "The aim is 2.7 value lighter than what lies beneath, and a glaze takes light away: repaint")
	assert.Contains(t, all("cadmium-red-light 1", "5G 4/4"), "hue lies across from what lies beneath, green over red")
	assert.Contains(t, all("cadmium-red-light 1", "5G 4/4"), "Choose an underpainting nearer to green, and lighter.")
	assert.Contains(t, all("titanium-white 3, ivory-black 1", "5Y 6/12"), "stronger than these glazes get here")
	white := layer(t, "titanium-white 1")
	assert.Contains(t, strings.Join(AdviseGlaze(owned, &white, white.Lab(), paint.Gloss).Warnings, " "), "No glaze is needed")
	gray := layer(t, "titanium-white 1, ivory-black 1")
	darkening := AdviseGlaze(box(t, "ultramarine-blue", "viridian"), &gray, must(colour.Parse("N 9")), paint.Gloss)
	assert.Empty(t, darkening.Best, "each takes it further off")
	assert.Contains(t, strings.Join(darkening.Warnings, " "), "comes nearer to the aim than what lies beneath")
	opaque := box(t, "titanium-white", "venetian-red")
	a := AdviseGlaze(opaque, &white, colour.Lab{L: 50}, paint.Gloss)
	assert.Empty(t, a.Best)
	assert.Contains(t, a.Warnings[0], "None of these paints glazes")
}

func must(c colour.Lab, err error) colour.Lab {
	if err != nil {
		panic(err)
	}
	return c
}
