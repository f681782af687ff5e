package answer

import (
	"testing"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What stands for a colour that is glazed over: the mix of the box that comes near,
// with its own look; else a reflectance that has the colour itself.
func TestWhatAGlazeGoesOver(t *testing.T) {
	box := paint.StarterBox()
	gray, err := colour.Parse("N 5")
	require.NoError(t, err)
	over, r, err := underLayer("N 5", box)
	require.NoError(t, err)
	assert.NotEmpty(t, over.Mix)
	assert.False(t, over.Guess)
	assert.LessOrEqual(t, colour.DeltaE00(gray, r.Lab()), float64(match.Near))
	assert.Equal(t, look(r.Lab()), over.Look, "its look is the mix's own")

	vivid, err := colour.Parse("5GY 7/16")
	require.NoError(t, err)
	over, r, err = underLayer("5GY 7/16", box)
	require.NoError(t, err)
	assert.Empty(t, over.Mix)
	assert.True(t, over.Guess)
	assert.InDelta(t, 0, colour.DeltaE00(vivid, r.Lab()), 0.01)

	over, r, err = underLayer("viridian 2, titanium-white 1", box)
	require.NoError(t, err)
	pile, err := match.ParsePile(nil, "titanium-white 1, viridian 2")
	require.NoError(t, err)
	k, s := pile.Optics()
	want := paint.Thick(&k, &s, paint.Gloss)
	assert.InDelta(t, 0, colour.DeltaE00(want.Lab(), r.Lab()), 1e-9)
	assert.False(t, over.Guess)
}

// The white of a string: the box's own where none is named.
func TestWhiteOfAString(t *testing.T) {
	lead, err := paint.Find(nil, "lead-white")
	require.NoError(t, err)
	umber, err := paint.Find(nil, "burnt-umber")
	require.NoError(t, err)
	a, err := StringFor(StringOptions{Paints: []string{"burnt-umber"}, White: BoxWhite, Box: paint.Box{Paints: []paint.Paint{umber, lead}}})
	require.NoError(t, err)
	assert.Equal(t, "lead-white", a.From.ID)
	assert.True(t, a.From.Owned)
	assert.Nil(t, a.White, "its tints are the string itself")
	assert.Greater(t, a.Values[1], a.Values[0])
	a, err = StringFor(StringOptions{Paints: []string{"burnt-umber", "viridian"}, White: "titanium-white", Box: paint.Box{Paints: []paint.Paint{umber, lead}}})
	require.NoError(t, err)
	assert.Equal(t, "titanium-white", a.White.ID)
	assert.False(t, a.White.Owned)
	assert.False(t, a.To.Owned)
	assert.NotEmpty(t, a.Steps[3].Tints)
}
