package match

import (
	"math"
	"testing"

	"tonewright/analyze/colour"
	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
)

// The number as it is printed decides: what reads 2.0 is right, what reads 2.1 is not. Grays
// by [Sharma2005]: of L* alone, ΔL/S_L.
func TestTheEdgeOfRight(t *testing.T) {
	gray := func(deltaE float64) colour.Lab { // darker than L* 50, where S_L is near 1
		low, high := 40.0, 50.0
		for range 60 {
			if middle := (low + high) / 2; colour.DeltaE00(colour.Lab{L: middle}, colour.Lab{L: 50}) > deltaE {
				low = middle
			} else {
				high = middle
			}
		}
		return colour.Lab{L: high}
	}
	for deltaE, want := range map[float64]Verdict{1.9: Leave, 2.04: Leave, 2.06: Off, 2.5: Off} {
		c := Judge(Round{Measured: gray(deltaE)}, colour.Lab{L: 50})
		assert.InDelta(t, deltaE, c.DeltaE, 1e-6)
		assert.Equal(t, want, c.Verdict, "%v", deltaE)
		assert.Contains(t, c.Difference.Words, "too dark")
	}
}

// No paint is spent on a gain that no camera shows: of piles just off the aim, either
// the addition wins 0.8 or there is none.
func TestASmallGainIsNotWorthThePaint(t *testing.T) {
	owned := paint.StarterBox().Paints
	none, some := 0, 0
	for i := range 24 {
		pile := Pile{[]paint.Paint{owned[0], owned[1+i%11]}, []float64{4, 1}}
		aim := pile.look()
		aim.L, aim.B = aim.L+1+float64(i)/8, aim.B-1
		c := Correct(owned, []Round{{Pile: pile, Measured: pile.look()}}, aim)
		switch {
		case c.Verdict == Leave:
		case len(c.Additions) == 0:
			none++
			assert.Equal(t, Short, c.Verdict)
		default:
			some++
			assert.GreaterOrEqual(t, c.DeltaE-c.Remaining, 0.8-0.1, "%v", c.Additions) // the pile before is as measured
		}
	}
	t.Log(none, some)
	assert.Positive(t, some)
}

// What is measured of quite another pile gives no orders and teaches nothing.
func TestAnotherPileIsMeasuredAgain(t *testing.T) {
	pile := Pile{box(t, "ultramarine-blue"), []float64{1}}
	c := Correct(paint.StarterBox().Paints, []Round{{Pile: pile, Measured: colour.Lab{L: 70, A: 10, B: 40}}}, colour.Lab{L: 75, A: 8, B: 40})
	assert.Equal(t, Again, c.Verdict)
	assert.Empty(t, c.Additions)
	assert.Nil(t, c.Fresh)
	assert.Empty(t, c.Tubes)
	assert.Equal(t, pile, c.After)
}

// The rule of starting again, by itself: a new pile is offered where it is right or
// nearer by 2 than mending comes, and advised where mending does not come within 3.
func TestWhenToStartAgain(t *testing.T) {
	slow(t)
	owned := box(t, "titanium-white", "yellow-ochre", "burnt-sienna", "ultramarine-blue")
	short, anew, offered, close := 0, 0, 0, 0
	for i, aim := range testAims(240, 71) {
		pile := Pile{[]paint.Paint{owned[i%4], owned[(i+1)%4]}, []float64{1, 2}}
		if i%2 > 0 { // a mix that the box has, in need of three paints
			aim = Pile{owned, []float64{float64(1 + i%7), float64(1 + i%3), float64(i % 5), float64(i%4) / 2}}.look()
		}
		c := Correct(owned, []Round{{Pile: pile, Measured: pile.look()}}, aim)
		if c.Verdict == Leave || c.Verdict == Add {
			assert.Nil(t, c.Fresh)
			continue
		}
		best := Recipes(c.Tubes.All(owned), []colour.Lab{aim}, Options{})[0][0].DeltaE
		clearly := best <= 2.04 || best <= c.Remaining-2+0.04
		if !clearly && best < c.Remaining-0.2 && best > 2.2 {
			close++
		}
		switch {
		case c.Fresh == nil:
			short++
			assert.Equal(t, Short, c.Verdict)
			assert.False(t, best <= 1.95 || best <= c.Remaining-2.1, "fresh %.2f, mended %.2f", best, c.Remaining)
		case c.Verdict == Anew:
			anew++
			assert.True(t, clearly, "fresh %.2f, mended %.2f", best, c.Remaining)
			assert.Greater(t, c.Remaining, 3.0)
		default:
			offered++
			assert.True(t, clearly)
			assert.Less(t, c.Remaining, 3.06)
		}
	}
	t.Logf("%d short, %d of them with a new pile a little nearer; %d anew; %d mended first", short, close, anew, offered)
	assert.Positive(t, short)
	assert.Positive(t, close)
	assert.Positive(t, anew)
	assert.Positive(t, offered)
}

// No advice makes a pile worse: what is hoped of it is nearer than what was measured, and
// where nothing is added the pile stays as far as it reads. Here each reads near the aim
// and far from its paints, so that it is thought to lie between the two, which is farther
// off than it reads. advise has no bound on the surprise that would stop it first.
func TestNoAdviceMakesThePileWorse(t *testing.T) {
	owned := paint.StarterBox().Paints
	dropped := 0
	for i, aim := range testAims(60, 73) {
		pile := Pile{[]paint.Paint{owned[i%len(owned)]}, []float64{2}}
		measured := aim
		measured.L += 6 + float64(i%5)
		measured.B += float64(i%7) - 3
		round := Round{Pile: pile, Measured: measured}
		c := advise(owned, round, aim, Learn([]Round{round}), leftoverShare)
		if c.Verdict == Leave {
			continue
		}
		if len(c.Additions) > 0 {
			assert.Less(t, math.Round(10*c.Remaining), math.Round(10*c.DeltaE), "aim %v, pile %s, measured %v", aim, pile, measured)
			continue
		}
		dropped++
		assert.LessOrEqual(t, c.Remaining, c.DeltaE)
	}
	t.Log(dropped)
	assert.Positive(t, dropped)
}
