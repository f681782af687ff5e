// Tints of a string's steps, at whole values.

package match

import (
	"math"

	"tonewright/match/paint"
)

// tintMiss is how far in value a tint may lie from its whole value. Ours: further off,
// it is a tint of the next value.
const tintMiss = 0.5

// tintTie is the value by which a harder split must come nearer than an easier one.
// Ours: half of valueWord, which is not worth a word.
const tintTie = 0.05

// tints returns a step's tints with white, one at each whole value over its own that
// is reached, up to the lightest asked for; each the nearest that a knife can do.
func (s *String) tints(step *StringStep, opt StringOptions) (tints []Tint) {
	pile := s.pile(step)
	mixes := tintsOf(&pile, opt.White, opt.Finish)
	for value := int(step.Munsell.Value) + 1; value <= opt.Lightest; value++ {
		if t, found := tintAt(mixes, value); found {
			tints = append(tints, t)
		}
	}
	return tints
}

// pile returns a step as if it were one paint.
func (s *String) pile(step *StringStep) (pile paint.Paint) {
	pile.K, pile.S = paint.Mix([]paint.Paint{s.From, s.To}, []float64{step.First.Parts, step.Second.Parts})
	return pile
}

// measuredTint is a tint with what it costs to measure.
type measuredTint struct {
	Tint
	effort int
}

// tintsOf returns every tint of a pile that a knife can do.
func tintsOf(pile, white *paint.Paint, finish paint.Finish) (all []measuredTint) {
	for _, s := range splits() {
		lab := pointAt(pile, white, s.share, finish).lab
		all = append(all, measuredTint{Tint{Pile: s.first, White: s.second, Lab: lab, Munsell: lab.Munsell()}, s.effort})
	}
	return all
}

// tintAt returns the tint nearest to a value, the easier of two as near to tintTie;
// none where all are too far.
func tintAt(mixes []measuredTint, value int) (best Tint, found bool) {
	least, effort := math.Round(tintMiss/tintTie)+1, 0
	for _, m := range mixes {
		miss := math.Round(math.Abs(m.Munsell.Value-float64(value)) / tintTie)
		if miss < least || found && miss == least && m.effort < effort {
			best, found, least, effort = m.Tint, true, miss, m.effort
		}
	}
	best.Value = value
	return best, found
}
