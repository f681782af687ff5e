package plan

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/match"
	"tonewright/match/layer"
	"tonewright/match/paint"
)

// brokenIn returns what is said of a rule.
func brokenIn(t testing.TB, l Layers, rule string) Broken {
	i := slices.IndexFunc(l.Broken, func(b Broken) bool { return b.Rule == rule })
	require.GreaterOrEqual(t, i, 0, "%s: %v", rule, l.Broken)
	return l.Broken[i]
}

// again plans the coats with the line of a mend in one of them, and returns from what.
func again(t testing.TB, in layersFrom, at int, line string) (Layers, layersFrom) {
	require.NotEmpty(t, line)
	in.opt.Work.Coats = slices.Clone(in.opt.Work.Coats)
	in.opt.Work.Coats[at] = changedBy(t, in.opt.Work.Coats[at], line, in.box)
	return layersOf(in), in
}

// A glaze that is laid after two days is told to wait as long as one without a day of its
// own is planned for, and that the thumb decides until the late end.
func TestWaitIsNoShorterThanPlanned(t *testing.T) {
	glaze := medium(t, "linseed 1:2")
	coats := func(after int) []CoatWish {
		return []CoatWish{
			{Pass: PassBlockIn, Pile: pileFrom(t, "alizarin-crimson")},
			{Pass: PassGlaze, Pile: pileFrom(t, "burnt-umber"), Medium: &glaze, After: after},
		}
	}
	unset, _ := faulty(t, coats(0), "alizarin-crimson", "burnt-umber")
	require.Empty(t, unset.Broken)
	days := int(planned(unset.Coats[0].GoOver))

	early, in := faulty(t, coats(2), "alizarin-crimson", "burnt-umber")
	after, _ := again(t, in, 1, brokenIn(t, early, layer.TooSoon).Line)
	assert.Equal(t, days, after.Coats[1].After)
	assert.Empty(t, after.Broken)
	late := unset.Coats[0].GoOver.To
	assert.Greater(t, late, float64(days))
	assert.Equal(t, "Lay A.2 13 days after A.1, by the thumb; it may take 22 days.", brokenIn(t, early, layer.TooSoon).Mend)
}

// A black is stood for by a black or by an umber, whose shadows are dark and dull, and by
// no green; without either it waits. Both ways are named. Common practice, no source.
func TestPaintsThatStandForABlack(t *testing.T) {
	for _, c := range []struct {
		box        []string
		line, mend string
	}{
		{[]string{"phthalo-green-bs", "viridian", "burnt-umber", "mars-black"}, `mix = "mars-black 1"`, "Take Mars Black in place of Lamp Black in A.1. Or lay A.2 "},
		{[]string{"phthalo-green-bs", "viridian", "dioxazine-violet", "raw-umber"}, `mix = "raw-umber 1"`, "Take Raw Umber in place of Lamp Black in A.1. Or lay A.2 "},
		{[]string{"phthalo-green-bs", "viridian", "prussian-blue"}, "after = ", "Lay A.2 "},
	} {
		l, in := faulty(t, []CoatWish{
			{Pile: pileFrom(t, "lamp-black"), Medium: &layer.Medium{Kind: layer.Solvent, Parts: 1}, Film: 1}, {Pile: pileFrom(t, "titanium-white")},
		}, append(c.box, "titanium-white", "lamp-black")...)
		b := brokenIn(t, l, layer.FastOverSlow)
		assert.Contains(t, b.Line, c.line, "%v", c.box)
		assert.Contains(t, b.Mend, c.mend, "%v", c.box)
		assert.NotContains(t, b.Mend, "Green")
		assert.NotContains(t, b.Mend, "Viridian")
		at := 0
		if c.line == "after = " {
			at = 1
		}
		after, _ := again(t, in, at, b.Line)
		assert.Empty(t, after.Broken)
	}
}

// A body coat over a glaze: the glaze is moved above it, and with that no rule is broken.
func TestGlazeIsMovedAboveBodyCoats(t *testing.T) {
	glaze := medium(t, "linseed 2:1")
	coats := []CoatWish{
		{Pass: PassBlockIn, Pile: pileFrom(t, "burnt-umber")},
		{Pile: pileFrom(t, "yellow-ochre 2, titanium-white 1")},
		{Pass: PassGlaze, Pile: pileFrom(t, "burnt-sienna"), Medium: &glaze},
		{Pile: pileFrom(t, "yellow-ochre 1, titanium-white 1")},
		{Pile: pileFrom(t, "yellow-ochre 1, titanium-white 2")},
	}
	l, in := faulty(t, coats, "titanium-white", "burnt-umber", "burnt-sienna", "yellow-ochre")
	b := brokenIn(t, l, layer.FatOverLean)
	assert.Equal(t, "A glaze comes last: move A.3's [[layer]] below A.5's.", b.Mend)
	assert.Empty(t, b.Line, "no one line does it")
	in.opt.Work.Coats = []CoatWish{coats[0], coats[1], coats[3], coats[4], coats[2]}
	assert.Empty(t, layersOf(in).Broken)
}

// Zinc white out of a block-in makes it fatter than the coat with alkyd over it, which is
// the milder fault: the line is of the graver, and the words name both.
func TestGraverFaultIsMendedInTwoSteps(t *testing.T) {
	alkyd := medium(t, "alkyd 1:4")
	l, in := faulty(t, []CoatWish{
		{Pass: PassBlockIn, Pile: pileFrom(t, "zinc-white 1, yellow-ochre 1")},
		{Pile: pileFrom(t, "titanium-white"), Medium: &alkyd},
	}, "titanium-white", "zinc-white", "yellow-ochre")
	b := brokenIn(t, l, layer.ZincBeneath)
	assert.Contains(t, b.Mend, "Take Titanium White in place of Zinc White in A.1. Then take ")
	assert.Contains(t, b.Mend, "in A.2, without the alkyd, which dries fast over slower oil.")
	first, in := again(t, in, 0, b.Line)
	require.Len(t, first.Broken, 1)
	then, _ := again(t, in, 1, first.Broken[0].Line)
	assert.Empty(t, then.Broken)
}

// An alkyd coat over slow, fat oil, early and wet: blended in while the oil is wet it is one
// film; over oil that has set it waits, and goes without the alkyd. The lines, one after
// the other, lead to a sound stack.
func TestAlkydOverSlowOil(t *testing.T) {
	alkyd, fat := medium(t, "alkyd 1:4"), medium(t, "linseed 1:5")
	early := []string{layer.OverWet, layer.FastOverSlow, layer.FatOverLean}
	for _, c := range []struct {
		after int
		wet   bool
		rules []string
	}{
		{1, true, nil}, {7, true, early[1:]}, {1, false, early}, {8, false, early[1:]},
	} {
		l, in := faulty(t, []CoatWish{
			{Pile: pileFrom(t, "alizarin-crimson 1, titanium-white 1"), Medium: &fat},
			{Pile: pileFrom(t, "titanium-white"), Medium: &alkyd, After: c.after, Wet: c.wet},
		}, "titanium-white", "alizarin-crimson", "burnt-umber")
		var rules []string
		for _, b := range l.Broken {
			rules = append(rules, b.Rule)
		}
		assert.Equal(t, c.rules, rules, "%v", c)
		if len(rules) == 0 {
			continue
		}
		assert.Regexp(t, `in A\.2, without the alkyd, which dries fast over slower oil\.`, brokenIn(t, l, layer.FatOverLean).Mend)
		for step := 0; len(l.Broken) > 0 && step < len(rules); step++ {
			l, in = again(t, in, 1, l.Broken[0].Line)
		}
		assert.Empty(t, l.Broken, "%v", c)
	}
}

// Laid wet into what has set too far: the lines of its mend lay it later and dry.
func TestCoatThatTearsIsLaidDry(t *testing.T) {
	l, in := faulty(t, []CoatWish{
		{Pile: pileFrom(t, "alizarin-crimson 1, titanium-white 1")}, {Pile: pileFrom(t, "titanium-white"), After: 5, Wet: true},
	}, "titanium-white", "alizarin-crimson")
	b := brokenIn(t, l, layer.OverWet)
	assert.Contains(t, b.Reason, "tears")
	assert.Regexp(t, `^after = \d+\nwet = false$`, b.Line)
	dry, _ := again(t, in, 1, b.Line)
	assert.Empty(t, dry.Broken)
	assert.Empty(t, dry.Coats[1].Into)
}

// Whatever is wrong, the line that is given does away with it, planned again from the
// file: that rule is no more broken by those coats.
func TestLinesMendWhatTheySay(t *testing.T) {
	random, all, lines := rand.New(rand.NewPCG(5, 11)), paint.Library(), map[string]int{}
	for range 150 {
		var coats []CoatWish
		box := []string{"titanium-white", "burnt-umber", "mars-black"}
		for n := range 2 + random.IntN(3) {
			p, q := all[random.IntN(len(all))], all[random.IntN(len(all))]
			pile := match.Pile{Paints: []paint.Paint{p}, Parts: []float64{1}}
			if q.ID != p.ID && random.IntN(2) == 0 {
				pile = match.Pile{Paints: []paint.Paint{p, q}, Parts: []float64{2, 1}}
			}
			for _, of := range pile.Paints {
				if !slices.Contains(box, of.ID) {
					box = append(box, of.ID)
				}
			}
			m := medium(t, []string{"none", "linseed 1:5", "alkyd 1:4", "solvent 1:1", "linseed 2:1"}[random.IntN(5)])
			wish := CoatWish{Pile: &pile, Medium: &m, Pass: []string{PassBlockIn, PassNext, PassGlaze}[random.IntN(3)], After: max(0, random.IntN(12)-5)}
			wish.Wet = n > 0 && random.IntN(4) == 0
			coats = append(coats, wish)
		}
		l, in := faulty(t, coats, box...)
		for _, b := range l.Broken {
			require.NotEmpty(t, b.Mend)
			if b.Line == "" {
				continue
			}
			key, _, _ := strings.Cut(b.Line, " = ")
			lines[key]++
			mended := false
			for w := range coats {
				if first, _, _ := strings.Cut(b.Mend, " Or "); strings.Contains(first, "A."+string(rune('1'+w))) {
					after, _ := again(t, in, w, b.Line)
					mended = mended || !slices.ContainsFunc(after.Broken, func(a Broken) bool { return a.Rule == b.Rule && slices.Equal(a.Coats, b.Coats) })
				}
			}
			assert.True(t, mended, "%+v", b)
		}
	}
	for _, key := range []string{"after", "medium", "mix", "film"} {
		assert.Positive(t, lines[key], key)
	}
}
