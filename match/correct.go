// Is the pile right, and if not, what to add: paint cannot be taken out.

package match

import (
	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Right is the CIEDE2000 up to which a pile is right. Ours: half of it is the camera's.
const Right = 2

// Of additions that bring the pile within Right, those are taken that are hoped to come
// within sure where they are not more than sureCosts times as much paint. Ours: of 1000
// painters as in TestTwoHundredPainters the median miss after one round fell from 1.68
// to 1.52, and the paint that two rounds took rose from 4 to 5 % of the pile.
const (
	sure      = 1.5
	sureCosts = 2
)

// A Verdict is what to do with a pile.
type Verdict string

const (
	Leave Verdict = "right" // it is near enough
	Add   Verdict = "add"   // it comes near enough with the additions
	Anew  Verdict = "anew"  // it would take more paint than there is in it, and a new pile gets there
	Short Verdict = "short" // these paints do not get there; the additions bring it nearest
)

// Correction is what a pile misses and what to do about it.
type Correction struct {
	Verdict    Verdict
	Measured   colour.Lab
	DeltaE     float64 // CIEDE2000 of what was measured to the aim
	Difference Difference
	Surprise   float64 // CIEDE2000 of what was measured to what typical tubes would give

	Additions []Addition // the nearest that adding comes, the larger first; nil where the pile is right or nothing helps
	After     Pile       // with the additions
	Lab       colour.Lab // predicted of it
	Remaining float64    // CIEDE2000 predicted of it to the aim

	Fresh *Recipe // of the owned paints, where it is better to start again; else nil
	Keep  float64 // how much of the old pile may go into it, as a share of the fresh paint: 0 to 1/2

	Tubes Tubes // what was learned of the paints in the piles
}

// Correct says whether the last round's pile is right, and if not, what to add to it: the
// least of one or two owned paints that brings it within Right of the aim. The tubes are
// taken to be as all rounds together tell. Nothing owned: there is nothing to add.
// It panics if there is no round, or its pile has no paint.
func Correct(owned []paint.Paint, rounds []Round, aim colour.Lab) Correction {
	return advise(owned, rounds[len(rounds)-1], aim, Learn(rounds), leftoverShare)
}

// advise corrects a pile of known tubes, which differs from their mix by a share of
// what is left over.
func advise(owned []paint.Paint, last Round, aim colour.Lab, tubes Tubes, share float64) Correction {
	c := Correction{
		Verdict: Leave, Measured: last.Measured, DeltaE: colour.DeltaE00(last.Measured, aim),
		Difference: Differ(last.Measured, aim), Surprise: colour.DeltaE00(last.Measured, last.Pile.look()), After: last.Pile, Tubes: tubes,
	}
	pile := tubes.pile(last.Pile).corrected(last.Measured, share)
	c.Lab = pile.Masstone()
	c.Remaining = colour.DeltaE00(c.Lab, aim)
	if c.DeltaE <= Right {
		return c
	}
	w := newWork(tubes.All(owned), last.Pile, pile, aim)
	if best := w.best(); best.deltaE < c.Remaining {
		c.Additions = w.additions(best, owned)
		c.After, c.Lab, c.Remaining = last.Pile.with(c.Additions), best.lab, best.deltaE
	}
	c.Verdict = Add
	if c.Remaining > Right {
		c.Verdict = Short
		c.startAgain(w)
	}
	return c
}

// startAgain sets what a new pile would be, where it is right or clearly nearer than
// adding comes.
func (c *Correction) startAgain(w *work) {
	recipes := Recipes(w.paints, []colour.Lab{w.aim}, Options{Alternatives: -1})[0]
	if len(recipes) == 0 || recipes[0].DeltaE > max(Right, c.Remaining-Right) {
		return
	}
	c.Verdict, c.Fresh = Anew, &recipes[0]
	c.Keep = w.keeps(c.Fresh)
}

// keeps returns how much of the old pile a new one bears, as a share of its fresh
// paint: a half, a quarter and so on to a sixteenth, or none.
func (w *work) keeps(fresh *Recipe) float64 {
	paints, parts := []paint.Paint{w.pile}, []float64{0}
	for _, p := range fresh.Parts {
		paints, parts = append(paints, w.paints[p.Paint]), append(parts, p.Parts)
	}
	whole := sum(parts)
	for keep := 1.0 / 2; keep >= 1.0/16; keep /= 2 {
		parts[0] = keep * whole
		if colour.DeltaE00(labOf(paints, parts, paint.Gloss), w.aim) <= max(Right, fresh.DeltaE) {
			return keep
		}
	}
	return 0
}
