package match

import (
	"testing"

	"tonewright/analyze/colour"
	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// By definition: the eye is used to each lamp, so what is gray in every band stays as
// it is, and the shift of a recipe is that of its own reflectance.
func TestShiftsOfGrayAndOfAMix(t *testing.T) {
	var gray colour.Spectrum
	for b := range gray {
		gray[b] = 0.2
	}
	for _, s := range shiftsOf(&gray) {
		assert.InDelta(t, 0, s.DeltaE, 0.05, s.Lamp.Name) // the noise of the lamps' weights
	}
	paints := box(t, "titanium-white", "cadmium-yellow-deep", "viridian")
	r := Recipes(paints, []colour.Lab{{L: 45, A: -8, B: 30}}, Options{})[0][0]
	var parts []float64
	var of []paint.Paint
	for _, p := range r.Parts {
		of, parts = append(of, paints[p.Paint]), append(parts, p.Parts)
	}
	k, s := paint.Mix(of, parts)
	seen := paint.Thick(&k, &s, paint.Gloss)
	for i, lamp := range colour.Lamps() {
		assert.InDelta(t, colour.DeltaE00(r.Lab, lamp.Lab(&seen)), r.Lamps[i].DeltaE, 1e-9)
	}
}

// A blue that sends back much long red, as cobalt blue does, turns towards violet in
// the red-rich light of a warm lamp; common practice, no source.
func TestCobaltBlueTurnsVioletUnderAWarmLamp(t *testing.T) {
	paints := box(t, "titanium-white", "cobalt-blue")
	aim := labOf(paints, []float64{1, 2}, paint.Gloss)
	warm := Recipes(paints, []colour.Lab{aim}, Options{})[0][0].Lamps[0]
	require.Equal(t, "A", warm.Lamp.Key)
	assert.Greater(t, warm.Hue, 0.5) // from purple-blue towards purple
}

// Of mixes about as near, the steadier is taken where it is asked for.
func TestHoldsIsPreferred(t *testing.T) {
	paints := paint.StarterBox().Paints
	aims := testAims(120, 3)
	plain, held := Recipes(paints, aims, Options{}), Recipes(paints, aims, Options{Holds: true})
	better, apart, shifts := 0, 0, [2]float64{}
	for a := range aims {
		p, h := plain[a][0], held[a][0]
		before, after := worst(p.Lamps).DeltaE, worst(h.Lamps).DeltaE
		assert.LessOrEqual(t, h.DeltaE, p.DeltaE+fewerWithin, "aim %d", a)
		assert.LessOrEqual(t, h.DeltaE+unheld*after, p.DeltaE+unheld*before+1e-9, "aim %d", a)
		shifts[0], shifts[1] = shifts[0]+before, shifts[1]+after
		if before > 5 { // the bound that is printed, in figures
			apart++
			assert.Contains(t, p.LampNote(), "Changes under a ")
			if after <= 5 {
				better++
			}
		} else {
			assert.Empty(t, p.LampNote())
		}
	}
	t.Logf("%d of %d mixes change, %d of them have a near one that holds; worst shifts %.2f on average, %.2f where asked",
		apart, len(aims), better, shifts[0]/120, shifts[1]/120)
	assert.Positive(t, apart)
	assert.Positive(t, better)
	assert.Less(t, shifts[1], 0.9*shifts[0])
}

// Over a black ground a mix that does not carry comes with one that does, if any near
// one does; the oracle is the cover of its printed parts.
func TestCarrierCarries(t *testing.T) {
	paints := box(t, "zinc-white", "titanium-white", "yellow-ochre", "raw-sienna", "quinacridone-rose", "ultramarine-blue", "viridian")
	black := colour.Lab{L: 18}.Reflectance()
	aims := testAims(60, 4)
	thin, carried := 0, 0
	for a, list := range Recipes(paints, aims, Options{Ground: &black}) {
		first := list[0]
		require.NotNil(t, first.Cover)
		if first.Cover.Carries() {
			assert.Nil(t, first.Carrier, "aim %d", a)
			continue
		}
		thin++
		if first.Carrier == nil {
			continue
		}
		carried++
		var parts []float64
		var of []paint.Paint
		for _, p := range first.Carrier.Parts {
			of, parts = append(of, paints[p.Paint]), append(parts, p.Parts)
		}
		k, s := paint.Mix(of, parts)
		cover := CoverOf(&k, &s, &black, paint.Gloss, 1)
		assert.True(t, cover.Carries(), "aim %d", a)
		assert.Less(t, colour.DeltaE00(cover.OneCoat, aims[a]), colour.DeltaE00(first.Cover.OneCoat, aims[a]), "aim %d: in one coat it comes nearer", a)
		assert.LessOrEqual(t, first.Carrier.DeltaE, first.DeltaE+worseBy, "aim %d", a)
	}
	t.Logf("%d of %d do not carry, %d of them have a near one that does", thin, len(aims), carried)
	assert.Positive(t, carried)
}
