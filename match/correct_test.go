package match

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"tonewright/analyze/colour"
	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// plainly returns the colour of a pile with additions straight from the definitions,
// the pile being one paint of so many parts.
func plainly(pile paint.Paint, whole float64, additions []Addition) colour.Lab {
	paints, parts := []paint.Paint{pile}, []Part{{Parts: whole}}
	for i, a := range additions {
		paints = append(paints, a.Paint)
		parts = append(parts, Part{Paint: i + 1, Parts: a.Parts})
	}
	return mixed(paints, parts)
}

// The oracle: every one and two additions, each made in full, straight from the
// definitions. The additions advised take the least paint of those within the bound, to
// a speck of the pile; where none comes within, none is nearer.
func TestNoLesserAdditionWouldDo(t *testing.T) {
	slow(t)
	owned := box(t, "titanium-white", "yellow-ochre", "burnt-sienna", "ultramarine-blue", "ivory-black")
	random := rand.New(rand.NewPCG(7, 8))
	reached, short, surely, dear := 0, 0, 0, 0
	for i, aim := range testAims(40, 51) {
		pile := Pile{owned[:4], []float64{3, 1 + 2*random.Float64(), random.Float64(), random.Float64()}}
		if i%5 > 0 { // a mix of the box, off by up to a half of each part
			parts := slices.Clone(pile.Parts)
			for j := range parts {
				parts[j] *= 0.5 + random.Float64()
			}
			aim = Pile{owned[:4], parts}.look()
		}
		c := Correct(owned, []Round{{Pile: pile, Measured: pile.look()}}, aim)
		if c.Verdict == Leave {
			continue
		}
		whole := sum(pile.Parts)
		before := colour.DeltaE00(plainly(pile.corrected(pile.look(), leftoverShare), whole, nil), aim)
		worth := min(2, before-0.8) // within 2, and a gain that a camera shows
		least, nearest := leastBy(owned, pile, aim, worth)
		if math.IsInf(least, 1) {
			short++
			assert.NotEqual(t, Add, c.Verdict)
			if nearest < before-0.8-0.05 {
				assert.InDelta(t, nearest, c.Remaining, 0.05, "aim %v", aim)
			}
			continue
		}
		reached++
		assert.Equal(t, Add, c.Verdict)
		assert.LessOrEqual(t, c.Remaining, 2.0+0.05)
		// What comes within 1.5 is taken where it is at most twice the paint: the figures as
		// they were chosen, written out.
		if surer, _ := leastBy(owned, pile, aim, min(1.5, worth)); surer <= 2*least {
			least = surer
			assert.LessOrEqual(t, c.Remaining, 1.5+0.05)
			surely++
		} else if surer <= 5*least {
			dear++
		}
		assert.LessOrEqual(t, partsOf(c.Additions), least+speckShare*whole+exact, "aim %v: %v", aim, c.Additions)
	}
	t.Logf("%d reached, %d of them surely, %d too dear to be sure; %d not", reached, surely, dear, short)
	assert.Positive(t, dear)
	assert.Greater(t, reached, 15)
	assert.Greater(t, short, 5)
}

// leastBy returns the fewest parts of one or two additions that bring a pile within a
// bound of the aim, infinite where none do, and the nearest that any comes.
func leastBy(owned []paint.Paint, pile Pile, aim colour.Lab, bound float64) (least, nearest float64) {
	as, whole := pile.corrected(pile.look(), leftoverShare), sum(pile.Parts)
	least, nearest = math.Inf(1), colour.DeltaE00(plainly(as, whole, nil), aim)
	for _, additions := range everyAddition(owned, whole) {
		d := colour.DeltaE00(plainly(as, whole, additions), aim)
		nearest = min(nearest, d)
		if within(d, bound) {
			least = min(least, partsOf(additions))
		}
	}
	return least, nearest
}

func partsOf(additions []Addition) (parts float64) {
	for _, a := range additions {
		parts += a.Parts
	}
	return parts
}

// everyAddition lists all ones and twos up to as much as the pile.
func everyAddition(owned []paint.Paint, whole float64) (all [][]Addition) {
	of := func(p paint.Paint) (list []Addition) {
		for _, a := range amounts(whole) {
			a.Paint = p
			list = append(list, a)
		}
		return list
	}
	for i, p := range owned {
		for _, a := range of(p) {
			all = append(all, []Addition{a})
			for _, q := range owned[i+1:] {
				for _, b := range of(q) {
					if a.Parts+b.Parts <= whole*(1+1e-9) {
						all = append(all, []Addition{a, b})
					}
				}
			}
		}
	}
	return all
}

// What is advised is what was evaluated: the pile with the printed amounts, in full.
func TestAdviceWasEvaluated(t *testing.T) {
	owned := paint.StarterBox().Paints
	pile := Pile{box(t, "yellow-ochre", "titanium-white"), []float64{3, 1}}
	aim := Pile{box(t, "yellow-ochre", "titanium-white", "ultramarine-blue"), []float64{3, 2, 0.15}}.look()
	c := Correct(owned, []Round{{Pile: pile, Measured: pile.look()}}, aim)
	require.Equal(t, Add, c.Verdict)
	require.NotEmpty(t, c.Additions)
	assert.LessOrEqual(t, c.Remaining, 2.0)
	as := pile.corrected(pile.look(), leftoverShare)
	assert.InDelta(t, 0, colour.DeltaE00(plainly(as, 4, c.Additions), c.Lab), 1e-6)
	assert.InDelta(t, colour.DeltaE00(c.Lab, aim), c.Remaining, exact)
	assert.InDelta(t, sum(pile.Parts)+partsOf(c.Additions), sum(c.After.Parts), exact)
	assert.Equal(t, []float64{3, 1}, pile.Parts, "the round's own pile is left as it is")
	for _, a := range c.Additions {
		switch a.Measure {
		case Speck:
			assert.InDelta(t, 4.0/128*a.Count, a.Parts, exact)
		case Touch:
			assert.InDelta(t, 4.0/32*a.Count, a.Parts, exact)
		default:
			assert.Equal(t, math.Round(4*a.Parts), 4*a.Parts)
		}
	}
}

// Common practice, no source: a tint that is too light wants its colour; a colour that is
// too green wants its opposite, red; too dark a tint wants white.
func TestAdviceIsWhatAPainterWouldDo(t *testing.T) {
	owned := box(t, "titanium-white", "ultramarine-blue", "pyrrole-red", "viridian", "yellow-ochre")
	pile := func(parts ...float64) Pile { return Pile{owned[:len(parts)], parts} }
	for _, c := range []struct {
		name     string
		is, want Pile
		add      string
		says     string
	}{
		{"a tint too light", pile(8, 0.5), pile(8, 1), "ultramarine-blue", "too light"},
		{"a tint too dark", pile(4, 1), pile(7, 1), "titanium-white", "too dark"},
		{"a green too cold for its aim", pile(6, 0, 0.3, 1), pile(6, 0, 0.8, 1), "pyrrole-red", "too light"},
	} {
		got := Correct(owned, []Round{{Pile: c.is, Measured: c.is.look()}}, c.want.look())
		require.NotEmpty(t, got.Additions, c.name)
		assert.Equal(t, Add, got.Verdict, c.name)
		assert.Equal(t, c.add, got.Additions[0].Paint.ID, "%s: %s", c.name, got.Additions)
		assert.Contains(t, got.Difference.Words, c.says, c.name)
	}
}

func TestVerdicts(t *testing.T) {
	owned := paint.StarterBox().Paints
	pile := Pile{box(t, "titanium-white", "ultramarine-blue"), []float64{4, 1}}
	right := Correct(owned, []Round{{Pile: pile, Measured: pile.look()}}, pile.look())
	assert.Equal(t, Leave, right.Verdict)
	assert.Empty(t, right.Additions)
	assert.Zero(t, right.Surprise)

	// A black pile cannot be made pale with as much again.
	black := Pile{box(t, "ivory-black"), []float64{1}}
	pale := Pile{box(t, "titanium-white", "ivory-black"), []float64{30, 1}}.look()
	anew := Correct(owned, []Round{{Pile: black, Measured: black.look()}}, pale)
	require.Equal(t, Anew, anew.Verdict)
	assert.Zero(t, anew.Surprise, "it is far from the aim, but as it was mixed")
	assert.LessOrEqual(t, anew.Fresh.DeltaE, 2.0)
	assert.Zero(t, anew.Keep, "not even a sixteenth of black")

	// Blue is not to be had of white and ochre.
	blue := colour.Lab{L: 28.778, A: 14.179, B: -50.297}
	short := Correct(box(t, "titanium-white", "yellow-ochre"), []Round{{Pile: pile, Measured: pile.look()}}, blue)
	assert.Equal(t, Short, short.Verdict)
	assert.Nil(t, short.Fresh)
	assert.Equal(t, Short, Correct(nil, []Round{{Pile: pile, Measured: pile.look()}}, blue).Verdict)
}

// A fresh pile bears as much of the old one as still leaves it right, no more.
func TestKeepIsEvaluated(t *testing.T) {
	owned := paint.StarterBox().Paints
	kept := map[float64]int{}
	for i, aim := range testAims(24, 61) {
		pile := Pile{[]paint.Paint{owned[i%12], owned[(i+5)%12]}, []float64{1, 1}}
		c := Correct(owned, []Round{{Pile: pile, Measured: pile.look()}}, aim)
		if c.Verdict != Anew {
			continue
		}
		as := pile.corrected(pile.look(), leftoverShare)
		kept[c.Keep]++
		with := func(keep float64) float64 {
			fresh := pileOf(owned, c.Fresh)
			paints, parts := append(fresh.Paints, as), append(fresh.Parts, keep*sum(fresh.Parts))
			return colour.DeltaE00(Pile{paints, parts}.look(), aim)
		}
		bound := max(2, c.Fresh.DeltaE)
		assert.LessOrEqual(t, with(c.Keep), bound+exact)
		if c.Keep < 0.5 {
			assert.Greater(t, with(max(2*c.Keep, 1.0/16)), bound)
		}
	}
	t.Log(kept)
	assert.Greater(t, len(kept), 1)
}

// A pile that has as many paints as a pile may have gets no other.
func TestAFullPileGetsNoOtherPaint(t *testing.T) {
	owned := paint.StarterBox().Paints
	pile := Pile{owned[:6], []float64{4, 1, 1, 1, 1, 1}}
	c := Correct(owned, []Round{{Pile: pile, Measured: pile.look()}}, owned[9].Masstone())
	for _, a := range c.Additions {
		assert.GreaterOrEqual(t, indexOf(pile.Paints, a.Paint.ID), 0, a.Paint.ID)
	}
	assert.Len(t, c.After.Paints, 6)
}

func TestAmounts(t *testing.T) {
	for _, pile := range []float64{0.5, 1, 4, 12, 40, 1000} {
		all := amounts(pile)
		assert.InDelta(t, pile/128, all[0].Parts, exact)
		assert.LessOrEqual(t, all[len(all)-1].Parts, pile*(1+exact))
		assert.Less(t, len(all), 40, "pile of %v", pile)
		for i := 1; i < len(all); i++ {
			assert.Greater(t, all[i].Parts, all[i-1].Parts)
		}
	}
	var words []string
	for _, a := range amounts(4) {
		words = append(words, a.Amount())
	}
	assert.Equal(t, []string{"a speck", "2 specks", "3 specks", "a touch", "2 touches", "3 touches", "4 touches",
		"three quarters of a part", "1 part", "1½ parts", "2 parts", "2½ parts", "3 parts", "4 parts"}, words)
}

// Golden: the advice in full, to the digits that are printed or logged.
func TestAdviceIsTheSameOnAnyMachine(t *testing.T) {
	pile := Pile{box(t, "titanium-white", "yellow-ochre"), []float64{4, 1}}
	c := Correct(paint.StarterBox().Paints, []Round{{Pile: pile, Measured: colour.Lab{L: 74, A: 8, B: 30}}}, colour.Lab{L: 80, A: 4, B: 22})
	got := fmt.Sprintf("%s %.1f, surprise %.1f: %s; then %s, %.1f", c.Verdict, c.DeltaE, c.Surprise, ListAdditions(c.Additions), c.After, c.Remaining)
	ochre := c.Tubes[1]
	got += fmt.Sprintf("; %s %.2f %.2f %.1f %v", ochre.ID, ochre.Strength, ochre.Scatter, ochre.Shift, ochre.Far)
	assert.Equal(t, "add 6.2, surprise 8.0: 4 parts of Titanium White and 2 specks of Ultramarine Blue; "+
		"then titanium-white 8, yellow-ochre 1, ultramarine-blue 0.078125, 1.1; yellow-ochre 1.77 0.98 5.6 true", got)
}

// One correction with 24 paints, the fourth round of a painting.
func BenchmarkCorrect24(b *testing.B) {
	owned := own(24)
	var rounds []Round
	for i := range 4 {
		pile := Pile{[]paint.Paint{owned[i], owned[i+5], owned[i+9]}, []float64{4, 2, 1}}
		seen := pile.look()
		seen.L, seen.B = seen.L+4, seen.B-3
		rounds = append(rounds, Round{Pile: pile, Measured: seen})
	}
	aim := rounds[3].Pile.look()
	for b.Loop() {
		Correct(owned, rounds, aim)
	}
}
