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
	slow(t)
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
	slow(t)
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
		"without white":   with(RegionWish{Name: "a", NoWhite: true}),
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

// A white that is named is the palette's white, whatever others the box has.
func TestNamedWhite(t *testing.T) {
	box := []paint.Paint{owned("titanium-white"), owned("zinc-white"), owned("burnt-umber")}
	of := paletteOf(RegionWish{Palette: []string{"zinc-white", "burnt-umber"}}, box)
	assert.Equal(t, "zinc-white", of.white.ID)
	assert.Equal(t, []string{"burnt-umber"}, ids(of.paints))
	of = paletteOf(RegionWish{Palette: []string{"burnt-umber"}}, box)
	assert.Equal(t, "titanium-white", of.white.ID)
}

// A circle of complements that a palette opens is none.
func TestComplementOfAPalette(t *testing.T) {
	a := RegionWish{Name: "a", Wish: Wish{Scheme: match.Complement, Of: "b"}}
	b := RegionWish{Name: "b", Wish: Wish{Scheme: match.Complement, Of: "a"}, Palette: []string{"viridian"}}
	assert.NoError(t, a.checkComplement([]RegionWish{a, b}))
	b.Palette = nil
	assert.Error(t, a.checkComplement([]RegionWish{a, b}))
}

// The hue of a region that is part red, part green is one of the two, not the yellow
// between them; a gray one with a speck of red has none. By hand.
func TestHueOfUnlikeHues(t *testing.T) {
	red, green, gray := colour.Munsell{Hue: 5, Value: 5, Chroma: 10}, colour.Munsell{Hue: 45, Value: 5, Chroma: 8}, colour.Munsell{Value: 5}
	x := mixed{aims: []colour.Lab{red.Lab(), green.Lab(), gray.Lab()}}
	hue, ok := hueOf(x, []tone{{share: 0.2}, {share: 0.2}, {share: 0.1}})
	assert.True(t, ok)
	assert.InDelta(t, 5, hue, 0.1)
	hue, _ = hueOf(x, []tone{{share: 0.2}, {share: 0.3}, {share: 0.1}})
	assert.InDelta(t, 45, hue, 0.1)
	_, ok = hueOf(x, []tone{{share: 0.02}, {share: 0.01}, {share: 0.5}})
	assert.False(t, ok)
}

// Palettes are asked for with the region's own colours, shifted as it is, those of what
// is around it and of no other region, and the tubes that others use. By hand.
func TestAsked(t *testing.T) {
	gray := func(l float64) colour.Lab { return colour.Lab{L: l} }
	m := &mixer{
		key:     ValueKey{PaintMin: 5, PaintMax: 97},
		mixing:  match.Options{Finish: paint.Matt},
		wishes:  []RegionWish{{Shift: 1}, {}, {}},
		colours: [][]tone{{{gray(colour.LOf(4)), 0.3}, {gray(colour.LOf(6)), 0.1}}, {{gray(50), 0.2}}, {{gray(60), 0.4}}},
		ring:    func(a int) []float64 { return []float64{0, 0.6, 0} },
		inUse:   map[string][]string{"umber": {"A"}, "ochre": {"A", "C"}},
	}
	ask := m.asked(0, Wish{Scheme: match.Quiet})
	assert.Equal(t, match.Quiet, ask.Scheme)
	assert.Equal(t, paint.Matt, ask.Finish)
	assert.InDeltaSlice(t, []float64{0.75, 0.25}, ask.Shares, 1e-9)
	require.Len(t, ask.Aims, 2)
	assert.InDelta(t, 5, colour.ValueOf(ask.Aims[0].L), 1e-3)
	assert.InDelta(t, 7, colour.ValueOf(ask.Aims[1].L), 1e-3)
	assert.Equal(t, []colour.Lab{gray(50)}, ask.Around)
	assert.Equal(t, []float64{0.6}, ask.AroundShares)
	assert.Equal(t, map[string][]string{"ochre": {"C"}}, ask.InUse)
}

// What is mixed looks as its first recipe does, what is not as its aim.
func TestLook(t *testing.T) {
	x := mixed{aims: []colour.Lab{{L: 10}}}
	assert.Equal(t, colour.Lab{L: 10}, x.look(0))
	x.recipes = [][]match.Recipe{{{Lab: colour.Lab{L: 20}}, {Lab: colour.Lab{L: 30}}}}
	assert.Equal(t, colour.Lab{L: 20}, x.look(0))
}

// Past a palette's reach its end's hue is aimed at in the lightness wanted, so that the
// recipe says what it misses.
func TestAimsPastALadder(t *testing.T) {
	ochre := owned("yellow-ochre")
	l := match.LadderOf([]paint.Paint{ochre}, nil, paint.Gloss)
	aims := onLadder(l, []colour.Lab{{L: 95}, {L: 5}})
	end := ochre.Masstone()
	for i, lightness := range []float64{95, 5} {
		assert.InDelta(t, lightness, aims[i].L, 1e-9)
		assert.InDelta(t, end.A, aims[i].A, 1e-6)
		assert.InDelta(t, end.B, aims[i].B, 1e-6)
	}
}

// A quiet palette does not bring a dark thing near a light wall: that is said, with the
// shift that does, to half a value.
func TestQuietSaysHowFarInValue(t *testing.T) {
	at := func(v float64) []colour.Lab { return []colour.Lab{{L: colour.LOf(v)}} }
	one := []float64{1}
	assert.Equal(t, " In value it stays 3.2 darker than what is around it; value_shift = 3 brings it near.",
		besides(match.Asked{Aims: at(3), Shares: one, Around: at(6.2), AroundShares: one}))
	assert.Equal(t, " In value it stays 1.6 lighter than what is around it; value_shift = -1.5 brings it near.",
		besides(match.Asked{Aims: at(5.6), Shares: one, Around: at(4), AroundShares: one}))
	assert.Empty(t, besides(match.Asked{Aims: at(5), Shares: one, Around: at(5.8), AroundShares: one}))
	assert.Empty(t, besides(match.Asked{Aims: at(5), Shares: one}))
}

// A region that is to be quiet gets a quieter palette for the same wish.
func TestRoleQuietIsProposedQuieter(t *testing.T) {
	slow(t)
	chroma := func(role string) float64 {
		p, err := Make(Options{Photo: demo, Box: paint.Box{Paints: paint.Library()}, Regions: []RegionWish{{Name: "wall", Cells: "A1:L2", Role: role, Wish: Wish{Hue: "violet-blue"}}}})
		require.NoError(t, err)
		require.NotEmpty(t, p.Regions[0].Suggestions)
		return p.Regions[0].Suggestions[0].Chroma
	}
	assert.Less(t, chroma(RoleQuiet), chroma(RoleSupport))
}
