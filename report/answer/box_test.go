package answer

import (
	"encoding/json"
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/match/paint"
	"tonewright/report/plan"
)

func boxOf(t *testing.T, ids ...string) paint.Box {
	b := paint.Box{Name: "test"}
	for _, id := range ids {
		p, err := paint.Find(nil, id)
		require.NoError(t, err)
		b.Paints = append(b.Paints, p)
	}
	return b
}

// Source: [PaintFacts] rows PW6, PW1, PR83, PBk9, whose oil is from Gettens and Stout
// 1942 and Church 1901 but for PW6; titanium white's contrast: [PaintOptics] model.units.
func TestTubesAgainstTheFacts(t *testing.T) {
	a, err := BoxFor(BoxOptions{Box: boxOf(t, "titanium-white", "lead-white", "alizarin-crimson", "ivory-black")})
	require.NoError(t, err)
	white, lead, alizarin, black := a.Paints[0], a.Paints[1], a.Paints[2], a.Paints[3]

	assert.Equal(t, 0.93, white.Contrast)
	assert.Equal(t, "opaque", white.Opacity)
	assert.Equal(t, white.Masstone, white.Tint, "white in white")
	assert.Empty(t, white.Cautions)

	assert.Equal(t, []any{"fast", [2]int{1, 3}, [2]float64{9, 16}, "low"}, []any{lead.Drying, lead.TouchDry, lead.Oil, lead.Strength})
	assert.Contains(t, lead.Cautions[0], "Lead pigment")
	assert.Equal(t, []any{"III", "slow", [2]float64{55, 103}, "transparent"}, []any{alizarin.Lightfastness, alizarin.Drying, alizarin.Oil, alizarin.Opacity})
	assert.Contains(t, alizarin.Cautions[0], "Fades")
	assert.Equal(t, []any{"very slow", [2]int{8, 14}, [2]float64{88, 112}}, []any{black.Drying, black.TouchDry, black.Oil})

	// A tint lies between the paint and the white in lightness.
	for _, p := range a.Paints[2:] {
		assert.Greater(t, p.Tint.Lab[0], p.Masstone.Lab[0]+20, p.Name)
		assert.Less(t, p.Tint.Lab[0], white.Masstone.Lab[0], p.Name)
	}
	assert.Equal(t, "Titanium White", a.White)
}

// A tube of the painter's own says so.
func TestOwnTubeSaysItsBasis(t *testing.T) {
	b := boxOf(t, "titanium-white", "viridian")
	b.Paints[1].Basis = paint.Own
	a, err := BoxFor(BoxOptions{Box: b})
	require.NoError(t, err)
	assert.Equal(t, []string{"fitted", "own tube"}, []string{a.Paints[0].Basis, a.Paints[1].Basis})
}

// What is close is so to the painter's sight, whatever full sight makes of it: to an
// eye without green cones a very dark green is a black, as it comes. Common practice,
// no source.
func TestCloseIsToThePaintersSight(t *testing.T) {
	a, err := BoxFor(BoxOptions{Box: boxOf(t, "titanium-white", "viridian", "ivory-black"), Sight: "deuteranopia"})
	require.NoError(t, err)
	require.Len(t, a.Alike, 1)
	p := a.Alike[0]
	assert.Equal(t, [2]string{"viridian", "ivory-black"}, p.Paints)
	assert.Equal(t, []bool{true, false, false, false}, []bool{p.Masstone.Close, p.Tint.Close, p.Twins, p.LabelOnly})
	assert.Greater(t, p.Masstone.Full, 3*a.Close)
	assert.Equal(t, "deutan 1", a.Sight)
}

// A masstone that is nearly black says so, in place of a name for its hue: phthalo
// green's, 3.7B at value 1.3, is no "greenish blue". A black is one, viridian is not.
func TestNearBlackMasstones(t *testing.T) {
	a, err := BoxFor(BoxOptions{Box: boxOf(t, "titanium-white", "phthalo-green-bs", "ivory-black", "viridian")})
	require.NoError(t, err)
	var near []bool
	for _, p := range a.Paints {
		near = append(near, p.NearBlack)
	}
	assert.Equal(t, []bool{false, true, false, false}, near)
	assert.Contains(t, a.Paints[1].Tint.Name, "green")
}

// The gaps told as stretches are the cells of the table that are short by four.
func TestGapsAreTheShortCells(t *testing.T) {
	a, err := BoxFor(BoxOptions{Box: boxOf(t, "titanium-white", "ultramarine-blue", "burnt-sienna", "hansa-yellow-medium"), Gaps: true})
	require.NoError(t, err)
	require.NotEmpty(t, a.Gamut.Gaps)
	cells := 0
	for _, h := range a.Gamut.Hues {
		for i, short := range h.Short {
			assert.Equal(t, h.All[i]-h.Box[i] > 3.95, short, "%s at value %d", h.Hue, a.Gamut.Values[i])
			if short {
				cells++
			}
		}
	}
	told := 0
	for _, s := range a.Gamut.Gaps {
		told += s.To - s.From + 1
	}
	assert.Equal(t, cells, told)
	assert.Greater(t, a.Gamut.Widening[0].Share, a.Gamut.Share)
	assert.LessOrEqual(t, a.Gamut.AllDarkest, a.Gamut.Darkest)
}

// A program that reads the answer meets no null, not even in the smallest box.
func TestBoxHasNoNulls(t *testing.T) {
	for _, opt := range []BoxOptions{
		{Box: boxOf(t, "zinc-white"), Gaps: true},
		{Box: boxOf(t, "titanium-white", "zinc-white")},
		{All: true, Sight: "tritan"},
	} {
		a, err := BoxFor(opt)
		require.NoError(t, err)
		text, err := json.Marshal(a)
		require.NoError(t, err)
		assert.NotContains(t, string(text), "null")
	}
}

func TestBoxMisused(t *testing.T) {
	for _, opt := range []BoxOptions{{All: true, Gaps: true}, {Sight: "deutan 2"}} {
		_, err := BoxFor(opt)
		_, misused := errors.AsType[plan.UsageError](err)
		assert.True(t, misused, "%v", err)
	}
}
