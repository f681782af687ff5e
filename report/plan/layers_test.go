package plan

import (
	"encoding/json"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/layer"
	"tonewright/match/paint"
)

// By hand: a wall with a shelf across its foot, on both a jug with a label, and a window
// in the wall. Painters work from the back: the wall before what stands before it, the jug
// before its label (common practice).
func TestBehindComesFirst(t *testing.T) {
	of := digits(
		"0000000000",
		"0440000000",
		"0440022200",
		"0000023200",
		"1111122211",
		"1111111111",
	)
	parting := analyze.Parting{Of: of, Regions: make([]analyze.Region, 5)}
	for _, r := range of {
		parting.Regions[r].Pixels++
	}
	order := behindOf(parting, false, 10, 6)
	before := func(a, b int) {
		assert.Less(t, slices.Index(order, a), slices.Index(order, b), "%d lies behind %d", a, b)
	}
	require.Len(t, order, 5)
	before(0, 1)
	before(0, 2)
	before(0, 4)
	before(1, 2)
	before(2, 3)
}

// The painter's own order is kept, and what none of their regions covers lies behind all;
// a region that others cover whole has nothing to paint.
func TestPaintersOrderIsKept(t *testing.T) {
	parting := analyze.Parting{Regions: []analyze.Region{
		{Name: "jug", Pixels: 1}, {Name: "covered"}, {Name: "shelf", Pixels: 5}, {Name: analyze.TheRest, Pixels: 4},
	}}
	assert.Equal(t, []int{3, 0, 2}, behindOf(parting, true, 5, 2))
}

// Within each pass what lies behind comes first, and no pass comes before an earlier one.
func TestCoatsComeInPassesFromBehind(t *testing.T) {
	opt := onGround(t, "black", paint.StarterBox(), Work{})
	in := anywhere(madeRegions(rand.New(rand.NewPCG(1, 1)), opt, 3, 2, 4), opt)
	in.behind = []int{2, 0, 1}
	l := layersOf(in)
	assert.Equal(t, []string{"C", "A", "B"}, l.Order)
	var passes []string
	last := map[string]int{}
	for _, c := range l.Coats {
		if n := len(passes); n == 0 || passes[n-1] != c.Pass {
			require.NotContains(t, passes, c.Pass)
			passes, last = append(passes, c.Pass), map[string]int{}
		}
		rank := slices.Index(l.Order, c.Region)
		assert.GreaterOrEqual(t, rank, last[c.Pass], c.ID)
		if c.Pass == PassBlockIn {
			last[c.Pass] = rank
		}
	}
	assert.Equal(t, PassBlockIn, passes[0])
	assert.Equal(t, PassNext, passes[1])
}

// What is proposed breaks no rule of the trade as layer.Check has it, on the very days of
// the schedule, whatever box, ground and medium; and every colour gets its own mix.
func TestProposalsBreakNoRule(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 5))
	passes := map[string]int{}
	for try := range 40 {
		ground := []string{"black", "gray", "white", "umber"}[try%4]
		work := Work{Medium: medium(t, []string{"none", "linseed 1:10", "alkyd 1:8", "stand oil 1:10", "solvent 1:3"}[try%5])}
		opt := onGround(t, ground, aBox(random), work)
		opt.Mixing.Coat = []float64{1, 1, 0.4, 1.5}[try/4%4]
		regions := madeRegions(random, opt, 2, 3, 1)
		l := layersOf(anywhere(regions, opt))
		require.Empty(t, l.Broken, "%v", l.Broken)
		d := daysOf(l, regions, opt.Work)
		for _, r := range regions {
			for _, c := range r.Colours {
				stack := laidBy(t, l, d, r.Tag, c.ID)
				require.NotEmpty(t, stack, c.ID)
				for _, f := range layer.Check(stack, layer.Indoors) {
					t.Errorf("box %v on %s: %+v", ids(opt.Box.Paints), ground, f)
				}
			}
		}
		for _, c := range l.Coats {
			passes[c.Pass]++
		}
	}
	assert.Greater(t, passes[PassBlockIn], 50) // that there was something to break
	assert.Greater(t, passes[PassNext], 120)
}

// A block-in is broad: as few piles as one session has, and each about as light as what
// comes over it.
func TestBlockInsFitOneSession(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 7))
	for range 6 {
		opt := onGround(t, "black", paint.StarterBox(), Work{})
		regions := madeRegions(random, opt, 4, 5, 6, 4, 5)
		l := layersOf(anywhere(regions, opt))
		piles := map[string]bool{}
		for _, c := range l.Coats {
			for _, m := range c.Mixes {
				if c.Pass == PassBlockIn {
					piles[m.Pile] = true
				}
			}
		}
		assert.LessOrEqual(t, len(piles), PilesUsual)
	}
}

// Over white no block-in is needed; none of the lists is nil, which JSON would have as null.
func TestOneCoatOverWhite(t *testing.T) {
	opt := onGround(t, "white", paint.StarterBox(), Work{})
	regions := madeRegions(rand.New(rand.NewPCG(2, 2)), opt, 2, 3)
	regions = append(regions, Region{Tag: "C", Name: "hidden", Colours: []Colour{}})
	l := layersOf(anywhere(regions, opt))
	for _, c := range l.Coats {
		assert.NotEqual(t, PassBlockIn, c.Pass)
		assert.NotEqual(t, "C", c.Region)
	}
	d := daysOf(l, regions, opt.Work)
	for _, v := range []any{l, d, layersOf(layersFrom{opt: opt}), daysOf(Layers{}, nil, Work{})} {
		text, err := json.Marshal(v)
		require.NoError(t, err)
		assert.NotContains(t, string(text), "null")
	}
}

// faulty are the layers of one region whose coats are set, with a box that has the paints.
func faulty(t testing.TB, coats []CoatWish, box ...string) (Layers, layersFrom) {
	b := paint.Box{Name: "box"}
	for _, id := range box {
		b.Paints = append(b.Paints, owned(id))
	}
	for i, c := range coats {
		coats[i].Region = "Jug" // the file may write a region's name in another case
		if c.Pass == "" {
			coats[i].Pass = PassNext
		}
	}
	opt := onGround(t, "white", b, Work{Coats: coats})
	regions := madeRegions(rand.New(rand.NewPCG(3, 3)), opt, 2)
	regions[0].Name = "jug"
	in := anywhere(regions, opt)
	return layersOf(in), in
}

func pileFrom(t testing.TB, text string) *match.Pile {
	p, err := match.ParsePile(paint.Library(), text)
	require.NoError(t, err)
	return &p
}

// Faults that any handbook warns of (common practice, no source; carbon black as the
// slowest pigment beneath others: [PaintFacts] PBk6, PBk7) are caught, each with a reason,
// and the line that mends it does: planned again with it, the fault is gone.
func TestFaultsAreCaughtAndMended(t *testing.T) {
	fat, glaze := medium(t, "linseed 1:1"), medium(t, "linseed 2:1")
	for _, c := range []struct {
		name, rule string
		coats      []CoatWish
		box        []string
	}{
		{"lamp black under titanium white", layer.FastOverSlow,
			[]CoatWish{{Pile: pileFrom(t, "lamp-black"), Film: 1}, {Pile: pileFrom(t, "titanium-white")}},
			[]string{"titanium-white", "lamp-black", "mars-black", "burnt-umber"}},
		{"lamp black under titanium white, in a box without another black", layer.FastOverSlow,
			[]CoatWish{{Pile: pileFrom(t, "lamp-black"), Film: 1}, {Pile: pileFrom(t, "titanium-white")}},
			[]string{"titanium-white", "lamp-black"}},
		{"a glaze over alizarin laid the day before", layer.OverWet,
			[]CoatWish{{Pile: pileFrom(t, "alizarin-crimson")}, {Pass: PassGlaze, Pile: pileFrom(t, "ultramarine-blue"), Medium: &glaze, After: 1}},
			[]string{"titanium-white", "alizarin-crimson", "ultramarine-blue"}},
		{"lean white over fat sienna", layer.FatOverLean,
			[]CoatWish{{Pile: pileFrom(t, "raw-sienna"), Medium: &fat, Film: 0.4}, {Pile: pileFrom(t, "lead-white")}},
			[]string{"raw-sienna", "lead-white"}},
		{"zinc white beneath", layer.ZincBeneath,
			[]CoatWish{{Pile: pileFrom(t, "zinc-white 3, yellow-ochre 1")}, {Pile: pileFrom(t, "titanium-white 1, yellow-ochre 1")}},
			[]string{"titanium-white", "zinc-white", "yellow-ochre"}},
		{"a knife's thickness", layer.TooThick,
			[]CoatWish{{Pile: pileFrom(t, "titanium-white 1, yellow-ochre 1"), Film: 8}},
			[]string{"titanium-white", "yellow-ochre"}},
	} {
		l, in := faulty(t, c.coats, c.box...)
		i := slices.IndexFunc(l.Broken, func(b Broken) bool { return b.Rule == c.rule })
		if !assert.GreaterOrEqual(t, i, 0, "%s: %v", c.name, l.Broken) {
			continue
		}
		b := l.Broken[i]
		t.Logf("%s: %s %s | %s | %s | %s", c.name, b.Coats, b.Reason, b.Mend, b.Line, b.Source)
		assert.NotEmpty(t, b.Reason)
		assert.NotEmpty(t, b.Source)
		require.NotEmpty(t, b.Line, c.name)
		mended := false
		for w := range c.coats { // the line stands in one of the blocks: the mend says which
			if !strings.Contains(b.Mend, "A."+string(rune('1'+w))) {
				continue
			}
			again := in
			again.opt.Work.Coats = slices.Clone(c.coats)
			again.opt.Work.Coats[w] = changedBy(t, c.coats[w], b.Line, in.box)
			after := layersOf(again).Broken
			mended = mended || !slices.ContainsFunc(after, func(a Broken) bool { return a.Rule == b.Rule && slices.Equal(a.Coats, b.Coats) })
		}
		assert.True(t, mended, "%s: %s", c.name, b.Line)
	}
}

// A mix of ochre tint whose aim is that tint under a film of burnt sienna: the film's colour
// is worked out here from Kubelka and Munk's film, so the glaze that is proposed has to be
// that one. A mix that is as near as any glaze earns none.
func TestGlazeIsEarned(t *testing.T) {
	box := paint.Box{Paints: []paint.Paint{owned("titanium-white"), owned("yellow-ochre"), owned("burnt-sienna"), owned("ivory-black")}}
	opt := onGround(t, "white", box, Work{})
	pile := match.Pile{Paints: []paint.Paint{box.Paints[0], box.Paints[1]}, Parts: []float64{1, 2}}
	k, s := pile.Optics()
	under := paint.Thick(&k, &s, opt.Mixing.Finish)
	film := paint.Film(&box.Paints[2].K, &box.Paints[2].S, 0.25*paint.Coat/(1+3), &under, opt.Mixing.Finish)
	aim := film.Lab()
	off := colour.DeltaE00(aim, under.Lab())
	require.Greater(t, off, 6.0)
	tint, wanted := under.Lab().Munsell(), aim.Munsell()
	recipe := &Recipe{
		Parts: PartsOf(pile), Lab: TripleOf(under.Lab()), DeltaE: Round(off, 2),
		ValueShift: Round(tint.Value-wanted.Value, 2), ChromaShift: Round(tint.Chroma-wanted.Chroma, 1),
	}
	regions := []Region{{Tag: "A", Name: "pot", Palette: Palette{From: WholeBox}, Colours: []Colour{{ID: "A1", Share: 1, PanelShare: 1, AimLab: TripleOf(aim), Recipe: recipe}}}}
	l := layersOf(anywhere(regions, opt))
	require.Len(t, l.Coats, 2)
	glaze := l.Coats[1]
	assert.Equal(t, PassGlaze, glaze.Pass)
	assert.Equal(t, "linseed 3:1", glaze.Medium)
	assert.Equal(t, "burnt-sienna", glaze.Mixes[0].Parts[0].Paint)
	assert.Equal(t, "glaze 1", glaze.Mixes[0].Pile)
	assert.Contains(t, glaze.Why, "to 0.0 CIEDE2000")
	assert.Greater(t, l.Coats[0].GoOver.From, l.Coats[0].TouchDry.From) // a glaze waits for more than a skin
	assert.Greater(t, glaze.Oil.From, l.Coats[0].Oil.To)

	regions[0].Palette = Palette{From: Painters, Paints: []string{"yellow-ochre"}, White: "titanium-white"}
	assert.Len(t, layersOf(anywhere(regions, opt)).Coats, 1) // the palette has no sienna
	recipe.DeltaE = 2.9
	regions[0].Palette = Palette{From: WholeBox}
	assert.Len(t, layersOf(anywhere(regions, opt)).Coats, 1) // near enough
}

// Settings that no coat bears are told once, with the line at the top of the file that
// mends them: with it none is left.
func TestSettingsAreMended(t *testing.T) {
	box := paint.StarterBox()
	for line, set := range map[string]func(o *Options){
		"medium": func(o *Options) { o.Work.Medium = layer.Medium{Kind: layer.StandOil, Parts: 2} },
		"coat":   func(o *Options) { o.Mixing.Coat = 15 },
		"film":   func(o *Options) { o.Work.Film = 1000 },
	} {
		opt := onGround(t, "white", box, Work{})
		set(&opt)
		regions := madeRegions(rand.New(rand.NewPCG(4, 4)), opt, 3, 2)
		l := layersOf(anywhere(regions, opt))
		require.Len(t, l.Broken, 1, line)
		key, value, _ := strings.Cut(l.Broken[0].Line, " = ")
		require.Equal(t, line, key, "%v", l.Broken)
		assert.Len(t, l.Broken[0].Coats, 2)
		if key == "medium" {
			value, err := strconv.Unquote(value)
			require.NoError(t, err)
			opt.Work.Medium = medium(t, value)
		} else {
			n, err := strconv.ParseFloat(value, 64)
			require.NoError(t, err)
			if key == "coat" {
				opt.Mixing.Coat = n
			} else {
				opt.Work.Film = n
			}
		}
		assert.Empty(t, layersOf(anywhere(regions, opt)).Broken, line)
	}
}

// A sound stack of the painter's own, umber under ochre under a glaze of it, waits as it
// must and is not blamed.
func TestSoundCoatsAreNotBlamed(t *testing.T) {
	glaze := medium(t, "linseed 2:1")
	l, _ := faulty(t, []CoatWish{
		{Pass: PassBlockIn, Pile: pileFrom(t, "burnt-umber")},
		{Pile: pileFrom(t, "yellow-ochre 2, titanium-white 1")},
		{Pass: PassGlaze, Pile: pileFrom(t, "burnt-sienna"), Medium: &glaze},
	}, "titanium-white", "burnt-umber", "burnt-sienna", "yellow-ochre")
	assert.Empty(t, l.Broken)
	require.Len(t, l.Coats, 3)
	assert.True(t, l.Coats[0].Own)
	assert.InDelta(t, 50, l.Coats[0].FilmUM, 1e-9)
	assert.Equal(t, "A.3", l.Coats[2].Mixes[0].Pile)
}

// An absorbent ground may let the first coat set sooner, and no other; the late end stays,
// since it may do little.
func TestAbsorbentGround(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 9))
	opt := onGround(t, "black", paint.StarterBox(), Work{})
	regions := madeRegions(random, opt, 3, 3)
	plain := layersOf(anywhere(regions, opt))
	opt.Work.Absorbent = true
	soaked := layersOf(anywhere(regions, opt))
	assert.True(t, soaked.Absorbent)
	require.Equal(t, len(plain.Coats), len(soaked.Coats))
	firsts := 0
	for i, c := range soaked.Coats {
		before := plain.Coats[i].TouchDry
		require.Equal(t, plain.Coats[i].ID, c.ID)
		assert.Equal(t, before.To, c.TouchDry.To)
		if strings.HasSuffix(c.ID, ".1") {
			assert.Less(t, c.TouchDry.From, before.From)
			firsts++
		} else {
			assert.Equal(t, before.From, c.TouchDry.From)
		}
	}
	assert.Equal(t, 2, firsts)
}
