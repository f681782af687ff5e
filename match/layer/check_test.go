package layer

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// stacked returns coats, each with its day; the lowest first.
func stacked(coats ...Laid) []Laid {
	for i := range coats {
		coats[i].Name = fmt.Sprintf("coat %d", i+1)
	}
	return coats
}

// rulesOf returns the rules broken, as "rule below-above".
func rulesOf(stack []Laid) (broken []string) {
	for _, f := range Check(stack, Indoors) {
		broken = append(broken, fmt.Sprintf("%s %d-%d", f.Rule, f.Below, f.Above))
	}
	return broken
}

// A painter's way that breaks no rule: a lean block-in washed in, a plain coat, a fat glaze,
// each after its days. Common practice, no source.
func TestSoundStack(t *testing.T) {
	stack := stacked(
		Laid{Coat: coat(t, "burnt-umber").with(Medium{Solvent, 1}), Day: 1},
		Laid{Coat: coat(t, "titanium-white", 6, "yellow-ochre", 1), Day: 5},
		Laid{Coat: coat(t, "titanium-white", 5, "yellow-ochre", 1).with(Medium{Linseed, 0.1}), Day: 14},
		Laid{Coat: Coat{coat(t, "alizarin-crimson").Paints, []float64{1}, 25, Medium{Linseed, 1}, false}, Day: 60},
	)
	assert.Empty(t, rulesOf(stack))
}

// Lamp black under titanium white: the black is the slowest of all, the white over it
// cracks. [Saitzyk1987]: none of the carbon blacks under faster paint.
func TestLampBlackUnderTitaniumWhite(t *testing.T) {
	stack := stacked(Laid{Coat: coat(t, "lamp-black"), Day: 1}, Laid{Coat: coat(t, "titanium-white"), Day: 10})
	faults := Check(stack, Indoors)
	require.Len(t, faults, 1)
	f := faults[0]
	assert.Equal(t, FastOverSlow, f.Rule)
	assert.Equal(t, []int{0, 1}, []int{f.Below, f.Above})
	assert.Equal(t, "coat 1 is slow with Lamp Black: it skins over while it is soft beneath, and the faster coat 2 over it cracks.", f.Reason)
	assert.Equal(t, "Wait until day 36 with coat 2, and try the paint beneath with a finger first. Or take Mars Black, which dries sooner, in place of Lamp Black beneath.", f.Mend)
	assert.Equal(t, Change{WaitDays: 26}, f.Change)
	assert.Contains(t, f.Source, "Saitzyk 1987")

	assert.Empty(t, rulesOf(stacked(stack[1], Laid{Coat: stack[0].Coat, Day: 20})), "the other way about is slow over fast")
	swapped := stacked(Laid{Coat: coat(t, "mars-black"), Day: 1}, stack[1])
	assert.Empty(t, rulesOf(swapped), "what the mend offers mends")
	thin := coat(t, "lamp-black")
	thin.Film = 50 // no slower than the white, but the same paint
	assert.Equal(t, []string{"fast over slow 0-1"}, rulesOf(stacked(Laid{Coat: thin, Day: 1}, stack[1])))
	early := stacked(stack[0], Laid{Coat: stack[1].Coat, Day: 3})
	assert.Contains(t, rulesOf(early), "over wet 0-1")
}

// A glaze over wet alizarin, which takes a week. Common practice, no source.
func TestGlazeOverWetAlizarin(t *testing.T) {
	glaze := Coat{coat(t, "transparent-oxide-yellow").Paints, []float64{1}, 25, Medium{Linseed, 1}, false}
	stack := stacked(Laid{Coat: coat(t, "alizarin-crimson"), Day: 1}, Laid{Coat: glaze, Day: 3})
	assert.Equal(t, []string{"over wet 0-1", "glaze too soon 0-1", "fast over slow 0-1"}, rulesOf(stack))
	stack[1].Day = 8 // touch dry, not through
	assert.Equal(t, []string{"glaze too soon 0-1", "fast over slow 0-1"}, rulesOf(stack))
	stack[1].Day = 10
	assert.Empty(t, rulesOf(stack))
}

func TestWetIntoWet(t *testing.T) {
	white := coat(t, "titanium-white")
	into := func(day float64, wet bool) []Laid {
		return stacked(Laid{Coat: white, Day: 1}, Laid{Coat: white, Day: day, Wet: wet})
	}
	assert.Empty(t, rulesOf(into(2, true)), "within the window")
	assert.Equal(t, []string{"over wet 0-1"}, rulesOf(into(2, false)), "over, not into")
	assert.Equal(t, []string{"over wet 0-1"}, rulesOf(into(6.5, true)), "set too far to blend")
	assert.Contains(t, Check(into(6.5, true), Indoors)[0].Reason, "set too far")
	assert.Empty(t, rulesOf(into(7, true)), "dry to the touch")

	// What lies over two coats laid wet into wet waits for the later.
	stack := append(into(2, true), Laid{Coat: white, Day: 7, Name: "coat 3"})
	assert.Equal(t, []string{"over wet 1-2"}, rulesOf(stack))
	stack[2].Day = 8
	assert.Empty(t, rulesOf(stack))
}

// Oil by volume. Common practice, no source.
func TestFatOverLean(t *testing.T) {
	white := coat(t, "titanium-white")
	over := func(below, above Coat) []Laid {
		return stacked(Laid{Coat: below, Day: 1}, Laid{Coat: above, Day: 90})
	}
	assert.Empty(t, rulesOf(over(white, white)))
	assert.Empty(t, rulesOf(over(white, white.with(Medium{Linseed, 0.2}))), "fat over lean is right")
	assert.Empty(t, rulesOf(over(white, white.with(Medium{Solvent, 0.4}))), "solvent leaves")
	assert.Empty(t, rulesOf(over(white.with(Medium{Alkyd, 0.2}), white)), "an alkyd under oil is right")

	faults := Check(over(white.with(Medium{Linseed, 0.2}), white), Indoors)
	require.Len(t, faults, 1)
	assert.Equal(t, FatOverLean, faults[0].Rule)
	assert.Equal(t, "coat 2 is leaner than coat 1 beneath: it stiffens first, and cracks over what still moves.", faults[0].Reason)
	// By hand, with s = 0.618 the most oil a tube holds: (1-s)·(1/(1+m) - 1/1.2) is 0.021 for
	// m of 1:8 and 0.009 for 1:6; over 0.02 is leaner.
	assert.Equal(t, "Take 1 part of linseed oil to 6 of paint in coat 2.", faults[0].Mend)
	assert.Equal(t, Change{Coat: 1, Medium: &Medium{Linseed, 1. / 6}}, faults[0].Change)

	assert.Equal(t, []string{"fat over lean 0-1"}, rulesOf(over(white, white.with(Medium{Alkyd, 0.2}))), "an alkyd over oil is lean")
	assert.False(t, everOver(white, white.with(Medium{Alkyd, 0.2})))
	assert.True(t, everOver(coat(t, "lamp-black"), white))

	// Too fat beneath for anything the upper coat bears: less oil there.
	rich := white.with(Medium{StandOil, 1})
	rich.Film = 50
	faults = Check(over(rich, white), Indoors)
	require.Len(t, faults, 1)
	assert.Equal(t, 0, faults[0].Change.Coat)
	assert.Contains(t, faults[0].Mend, "of stand oil to")

	// Umber is fat by its pigment, and goes beneath as a wash.
	umber := coat(t, "burnt-umber")
	assert.Equal(t, []string{"fat over lean 0-1"}, rulesOf(over(umber, white)))
	assert.Empty(t, rulesOf(over(umber.with(Medium{Solvent, 1}), white)))
}

// [Rogala2010], [PaintDamage]: zinc white in any underlayer.
func TestZincWhiteBeneath(t *testing.T) {
	zinc, white := coat(t, "zinc-white", 1, "titanium-white", 3), coat(t, "titanium-white")
	stack := stacked(Laid{Coat: zinc, Day: 1}, Laid{Coat: white, Day: 60})
	faults := Check(stack, Indoors)
	require.Len(t, faults, 1)
	assert.Equal(t, ZincBeneath, faults[0].Rule)
	assert.Equal(t, Change{Coat: 0, Swap: Swap{"zinc-white", "titanium-white"}}, faults[0].Change)
	assert.False(t, everOver(zinc, white))

	assert.Empty(t, rulesOf(stacked(stack[1], Laid{Coat: zinc, Day: 120})), "the last coat may hold it")
	assert.Empty(t, rulesOf(stacked(Laid{Coat: coat(t, "zinc-white", 1, "titanium-white", 11), Day: 1}, stack[1])), "a small share")
	wet := stacked(Laid{Coat: zinc, Day: 1}, Laid{Coat: white, Day: 1, Wet: true})
	assert.Empty(t, rulesOf(wet), "blended in, it lies in the last film")
	wet = append(wet, Laid{Coat: white, Day: 60, Name: "coat 3"})
	assert.Equal(t, []string{"zinc white beneath 0-2"}, rulesOf(wet))
}

// Common practice, no source.
func TestFilmAndMediumOfOneCoat(t *testing.T) {
	one := func(c Coat, film float64, m Medium) []string {
		c.Film, c.Medium = film, m
		return rulesOf(stacked(Laid{Coat: c, Day: 1}))
	}
	white := coat(t, "titanium-white")
	assert.Empty(t, one(white, 400, Medium{}), "impasto of a lean paint")
	assert.Equal(t, []string{"too thick 0-0"}, one(white, 600, Medium{}))
	assert.Equal(t, []string{"too thick 0-0"}, one(coat(t, "burnt-umber"), 400, Medium{}), "fat paint wrinkles sooner")
	assert.Empty(t, one(white, 100, Medium{Linseed, 0.2}))
	assert.Equal(t, []string{"too much medium 0-0"}, one(white, 100, Medium{Linseed, 0.5}))
	assert.Empty(t, one(white, 25, Medium{Linseed, 3}), "a glaze is mostly medium, and thin")
	assert.Equal(t, []string{"too much medium 0-0"}, one(white, 100, Medium{Solvent, 2}))
	assert.Equal(t, "Take at most linseed 1:3 in coat 1.", Check(stacked(Laid{Coat: white.with(Medium{Linseed, 0.5})}), Indoors)[0].Mend)
}

// mended returns the stack as its painter lays it after a change; false where the painter
// has to choose a paint.
func mended(t *testing.T, stack []Laid, f Fault) ([]Laid, bool) {
	stack = slices.Clone(stack)
	c := &stack[f.Change.Coat]
	switch change := f.Change; {
	case change.WaitDays > 0:
		for i := f.Above; i < len(stack); i++ {
			stack[i].Day += change.WaitDays
		}
	case change.Medium != nil:
		c.Medium = *change.Medium
	case change.Film > 0:
		c.Film = change.Film
	case change.Swap.To != "":
		c.Paints = slices.Clone(c.Paints)
		for i, p := range c.Paints {
			if p.ID == change.Swap.From {
				c.Paints[i] = tube(t, change.Swap.To)
			}
		}
	default:
		require.NotEmpty(t, change.Swap.From, "%s: no mend at all", f.Rule)
		return nil, false
	}
	return stack, true
}

func randomStack(r *rand.Rand, all []paint.Paint) []Laid {
	kinds := append(Kinds(), None, None, None)
	stack := make([]Laid, 1+r.IntN(4))
	day := 1.0
	for i := range stack {
		c := Coat{Film: []float64{20, 25, 40, 60, 100, 100, 100, 150, 300, 700}[r.IntN(10)]}
		for range 1 + r.IntN(4) {
			c.Paints = append(c.Paints, all[r.IntN(len(all))])
			c.Parts = append(c.Parts, []float64{1. / 128, 1. / 32, 1, 2, 3, 6}[r.IntN(6)])
		}
		if kind := kinds[r.IntN(len(kinds))]; kind != None {
			c.Medium = Medium{kind, []float64{0.05, 0.1, 0.2, 0.25, 0.5, 1, 2, 4}[r.IntN(8)]}
		}
		stack[i] = Laid{c, fmt.Sprintf("coat %d", i+1), day, r.IntN(4) == 0}
		day += float64(r.IntN(3)) * float64(r.IntN(15)) / float64(1+r.IntN(3))
	}
	return stack
}

// A mend mends: after its change, Check finds that fault no more. And one mend after the
// other leads to a sound stack, or to one that only another paint mends.
func TestMendsMend(t *testing.T) {
	const stacks = 1000
	r, all := rand.New(rand.NewPCG(5, 1)), paint.Library()
	tried, paints, sound, stuck := map[string]int{}, map[string]int{}, 0, 0
	for range stacks {
		stack := randomStack(r, all)
		air := Air{5 + float64(r.IntN(30)), float64(10 + r.IntN(90))}
		for _, f := range Check(stack, air) {
			assert.NotEmpty(t, f.Reason)
			assert.NotEmpty(t, f.Mend)
			assert.NotEmpty(t, f.Source)
			after, ok := mended(t, stack, f)
			if !ok {
				paints[f.Rule]++
				continue
			}
			tried[f.Rule]++
			for _, left := range Check(after, air) {
				if left.Rule == f.Rule && left.Above == f.Above && left.Below == f.Below {
					assert.Fail(t, "not mended", "%s\n%+v\n%+v", f.Mend, stack, left)
				}
			}
		}
		if settles(t, stack, air) {
			sound++
		} else {
			stuck++
		}
	}
	for _, rule := range []string{OverWet, TooSoon, FastOverSlow, FatOverLean, ZincBeneath, TooThick, TooMuchMedium} {
		assert.Positive(t, tried[rule], "%s never tried", rule)
	}
	t.Logf("mended: %v; another paint: %v; of %d stacks %d came out sound", tried, paints, stacks, sound)
}

// settles mends one fault after the other and tells whether the stack comes out sound.
func settles(t *testing.T, stack []Laid, air Air) bool {
	for range 60 {
		at, faults := -1, Check(stack, air)
		for i, f := range faults {
			if after, ok := mended(t, stack, f); ok {
				at, stack = i, after
				break
			}
		}
		if at < 0 {
			return len(faults) == 0
		}
	}
	assert.Fail(t, "mends go round in a circle", "%+v", stack)
	return false
}

// From its first day on, a coat may go over another as far as waiting can tell; the day
// before it may not.
func TestGoOver(t *testing.T) {
	r, all := rand.New(rand.NewPCG(5, 2)), paint.Library()
	timed := map[string]bool{OverWet: true, TooSoon: true, FastOverSlow: true}
	for range 2000 {
		stack := randomStack(r, all)
		if len(stack) < 2 {
			continue
		}
		stack = stack[:2]
		stack[1].Wet = false
		days := GoOver(stack[0].Coat, stack[1].Coat, Indoors)
		require.LessOrEqual(t, days.From, days.To)
		broken := func(after float64) bool {
			stack[1].Day = stack[0].Day + after
			return slices.ContainsFunc(Check(stack, Indoors), func(f Fault) bool { return timed[f.Rule] })
		}
		assert.False(t, broken(days.From), "%+v", stack)
		assert.False(t, broken(days.To), "%+v", stack)
		assert.True(t, broken(days.From-0.01), "%+v", stack)
		lasting := slices.ContainsFunc(Check(stack, Indoors), func(f Fault) bool { return !timed[f.Rule] && f.Below < f.Above })
		assert.Equal(t, !lasting, everOver(stack[0].Coat, stack[1].Coat))
	}
}

// everOver tells whether one coat may ever go over another, be it late.
func everOver(below, above Coat) bool {
	day := math.Ceil(GoOver(below, above, Indoors).To)
	return !slices.ContainsFunc(Check([]Laid{{Coat: below}, {Coat: above, Day: day}}, Indoors), func(f Fault) bool { return f.Below < f.Above })
}

func TestCheckOfLittle(t *testing.T) {
	assert.Empty(t, Check(nil, Indoors))
	assert.Empty(t, rulesOf(stacked(Laid{Coat: coat(t, "titanium-white")})))
	// Days out of order are too early, not an error.
	stack := stacked(Laid{Coat: coat(t, "lead-white"), Day: 10}, Laid{Coat: coat(t, "lead-white"), Day: 1})
	faults := Check(stack, Indoors)
	require.NotEmpty(t, faults)
	assert.Equal(t, 10.0, faults[0].Change.WaitDays)
	assert.Equal(t, 10.0, math.Trunc(faults[0].Change.WaitDays))
}
