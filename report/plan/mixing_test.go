package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
)

// A region painted for its values from two paints: its mixes hold no other paint than
// those and the white, their values are the photo's, and the photo's hues are gone.
func TestPaletteByValue(t *testing.T) {
	p, err := Make(Options{Photo: demo, Regions: []RegionWish{
		{Name: "left", Cells: "A1:F9", Palette: []string{"burnt-sienna", "ultramarine-blue"}},
		{Name: "right", Cells: "G1:L9"},
	}})
	require.NoError(t, err)
	left := p.Regions[0]
	assert.Equal(t, Palette{
		Paints: []string{"burnt-sienna", "ultramarine-blue"}, White: "titanium-white", Aim: AimValue, From: Painters,
		ValueMin: left.Palette.ValueMin, ValueMax: 9.7, Family: "near complements", Note: left.Palette.Note,
	}, left.Palette)
	require.GreaterOrEqual(t, len(left.Colours), 3)
	for _, c := range left.Colours {
		for _, part := range c.Recipe.Parts {
			assert.Contains(t, []string{"burnt-sienna", "ultramarine-blue", "titanium-white"}, part.Paint, c.ID)
		}
		photo := colour.Lab{L: c.Lab[0], A: c.Lab[1], B: c.Lab[2]}
		if v := p.ValueKey.aim(photo).L; v > colour.LOf(left.Palette.ValueMin) {
			assert.InDelta(t, colour.ValueOf(v), c.AimValue, 0.06, "%s: the photo's value, keyed", c.ID)
			assert.InDelta(t, 0, c.Recipe.ValueShift, 0.3, "%s: and mixed so", c.ID)
		}
	}
	assert.Equal(t, WholeBox, p.Regions[1].Palette.From)
}

// The same palette after the photo's colours comes nearer to them than after its values
// alone, and never as near as the whole box.
func TestPaletteByPhoto(t *testing.T) {
	miss := func(w RegionWish) (mean float64) {
		w.Name, w.Cells = "all", "A1:L9"
		p, err := Make(Options{Photo: demo, Colours: 8, Regions: []RegionWish{w}})
		require.NoError(t, err)
		for _, c := range p.Regions[0].Colours {
			photo := p.ValueKey.aim(colour.Lab{L: c.Lab[0], A: c.Lab[1], B: c.Lab[2]})
			mean += c.Share * colour.DeltaE00(photo, colour.Lab{L: c.Recipe.Lab[0], A: c.Recipe.Lab[1], B: c.Recipe.Lab[2]})
		}
		return mean
	}
	palette := []string{"burnt-umber", "viridian"}
	box, photo, value := miss(RegionWish{}), miss(RegionWish{Palette: palette, Aim: AimPhoto}), miss(RegionWish{Palette: palette, Aim: AimValue})
	assert.Less(t, box, photo)
	assert.Less(t, photo, value)
}

// One paint without white is that paint and nothing else; what it does not reach is
// said, and what would reach it.
func TestMonochromeWithoutWhite(t *testing.T) {
	p, err := Make(Options{Photo: demo, Regions: []RegionWish{{Name: "all", Cells: "A1:L9", Palette: []string{"yellow-ochre"}, NoWhite: true}}})
	require.NoError(t, err)
	for _, c := range p.Regions[0].Colours {
		require.Len(t, c.Recipe.Parts, 1)
		assert.Equal(t, "yellow-ochre", c.Recipe.Parts[0].Paint)
	}
	note := p.Regions[0].Palette.Note
	assert.NotEmpty(t, note)
	var told []string
	for _, w := range p.Warnings {
		if w.Kind == AboutPalette {
			told = append(told, w.Text)
		}
	}
	assert.Equal(t, []string{"Region A, all: " + note}, told)
}

// A proposed palette is taken, a complement comes after what it is one of, and what is
// proposed for it lies across the hue circle (Munsell's, [ASTMD1535]: opposite is 50
// steps of 100).
func TestProposed(t *testing.T) {
	p, err := Make(Options{Photo: demo, Regions: []RegionWish{
		{Name: "left", Cells: "A1:F9", Wish: Wish{Scheme: match.Complement, Of: "right"}},
		{Name: "right", Cells: "G1:L9", Wish: Wish{Hue: "orange"}},
	}})
	require.NoError(t, err)
	for _, r := range p.Regions {
		require.NotEmpty(t, r.Suggestions, r.Name)
		assert.Equal(t, Proposed, r.Palette.From)
		assert.Equal(t, r.Suggestions[0].Paints, r.Palette.Paints)
	}
	hue := func(r Region) float64 {
		best := r.Colours[0]
		for _, c := range r.Colours {
			if m, err := colour.ParseMunsell(c.Recipe.Munsell); err == nil && m.Value > 3 && m.Chroma > 2 && c.Share > best.Share {
				best = c
			}
		}
		m, err := colour.ParseMunsell(best.Recipe.Munsell)
		require.NoError(t, err)
		return m.Hue
	}
	assert.Greater(t, colour.HuesApart(hue(p.Regions[0]), hue(p.Regions[1])), 30.0)
	assert.Equal(t, "complement of right", p.Regions[0].Scheme)
	assert.Equal(t, "hue orange", p.Regions[1].Scheme)
}

// A region lightened by a value is planned so, and says so.
func TestValueShift(t *testing.T) {
	wishes := func(shift float64) *Plan {
		p, err := Make(Options{Photo: demo, Regions: []RegionWish{{Name: "all", Cells: "A1:L9", Shift: shift}}})
		require.NoError(t, err)
		return p
	}
	as, lighter := wishes(0).Regions[0], wishes(1).Regions[0]
	assert.Equal(t, 1.0, lighter.Shift)
	for i, c := range as.Colours {
		if c.AimValue < 8 {
			assert.InDelta(t, c.AimValue+1, lighter.Colours[i].AimValue, 0.11, c.ID)
		}
	}
}

func TestWrongWishes(t *testing.T) {
	with := func(w ...RegionWish) Options {
		for i := range w {
			w[i].Cells = "A1"
		}
		return Options{Photo: demo, Box: paint.StarterBox(), Regions: w}
	}
	for part, opt := range map[string]Options{
		"not in the box":  with(RegionWish{Name: "a", Palette: []string{"zinc-white"}}),
		"role \"main\"":   with(RegionWish{Name: "a", Role: "main"}),
		"aim \"hue\"":     with(RegionWish{Name: "a", Aim: "hue"}),
		"needs a palette": with(RegionWish{Name: "a", Aim: AimValue}),
		"out of range":    with(RegionWish{Name: "a", Shift: 5}),
		"not a hue":       with(RegionWish{Name: "a", Wish: Wish{Hue: "loud"}}),
		"no region \"b\"": with(RegionWish{Name: "a", Wish: Wish{Scheme: match.Complement, Of: "b"}}),
		"comes back to itself": with(RegionWish{Name: "a", Wish: Wish{Scheme: match.Complement, Of: "B"}},
			RegionWish{Name: "b", Wish: Wish{Scheme: match.Complement, Of: "a"}}),
	} {
		_, err := Make(opt)
		require.Error(t, err, part)
		assert.Contains(t, err.Error(), part)
		assert.ErrorAs(t, err, new(UsageError), part)
	}
}

// A palette followed by value has one mix for a value: a region of middle values from
// two darks has nothing of the darker, and that is said.
func TestIdlePaintsAreTold(t *testing.T) {
	note := func(aim string) string {
		p, err := Make(Options{Photo: demo, Regions: []RegionWish{{Name: "wall", Cells: "A1:L2", Palette: []string{"ultramarine-blue", "burnt-umber"}, Aim: aim}}})
		require.NoError(t, err)
		return p.Regions[0].Palette.Note
	}
	assert.Contains(t, note(AimValue), "Ultramarine Blue is in none of these mixes")
	assert.NotContains(t, note(AimPhoto), "none of these mixes")
}

// Without white is without white in what is proposed, too.
func TestProposedWithoutWhite(t *testing.T) {
	p, err := Make(Options{Photo: demo, Regions: []RegionWish{{Name: "wall", Cells: "A1:L2", NoWhite: true, Wish: Wish{Scheme: match.Analogous}}}})
	require.NoError(t, err)
	r := p.Regions[0]
	assert.Empty(t, r.Palette.White)
	assert.NotEmpty(t, r.Suggestions)
	for _, s := range r.Suggestions {
		assert.Empty(t, s.White, s.Why)
	}
}

// A region that is to be quiet gets a quieter palette for the same wish.
func TestQuietRoleIsProposedQuieter(t *testing.T) {
	chroma := func(role string) float64 {
		p, err := Make(Options{Photo: demo, Box: paint.Box{Paints: paint.Library()}, Regions: []RegionWish{{Name: "wall", Cells: "A1:L2", Role: role, Wish: Wish{Hue: "violet-blue"}}}})
		require.NoError(t, err)
		require.NotEmpty(t, p.Regions[0].Suggestions)
		return p.Regions[0].Suggestions[0].Chroma
	}
	assert.Less(t, chroma(QuietRole), chroma(Support))
}
