// Is the pile right, and if not, what to add: paint cannot be taken out.

package match

import (
	"math"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Right is the CIEDE2000 up to which a pile is right, as it is printed: 2.04 is 2.0.
// Ours: half of it is the camera's.
const Right = 2

// within tells whether a CIEDE2000 is no more than a bound when it is printed, to a
// tenth.
func within(deltaE, bound float64) bool { return math.Round(10*deltaE) <= 10*bound }

// nearer tells whether a CIEDE2000 is less than another when both are printed.
func nearer(deltaE, than float64) bool { return math.Round(10*deltaE) < math.Round(10*than) }

// asPrinted is the most that rounding takes off a CIEDE2000.
const asPrinted = 0.05

// Of additions that bring the pile within Right, those are taken that are hoped to come
// within sure where they are not more than sureCosts times as much paint. Ours: of 1000
// painters as in TestTwoHundredPainters the median miss after one round fell from 1.59
// to 1.45, those within 2.5 rose from 91 to 95 %, and the paint that two rounds took from
// 6 to 7 % of the pile.
const (
	sure      = 1.5
	sureCosts = 2
)

// How far a measured pile may be from what typical tubes give, in CIEDE2000. Ours: of
// 1000 piles of 500 painters as in TestTwoHundredPainters, whose parts were up to a tenth
// off, 95 in 100 were 5.5 off or less, 99 in 100 8.1, and the worst 10.4; past half
// again as much as that, it is not the pile that was measured.
const (
	Surprising = 5.5
	impossible = 15
)

// A Verdict is what to do with a pile.
type Verdict string

const (
	Leave Verdict = "right" // it is near enough
	Off   Verdict = "off"   // it is not, and what is in it is not known
	Add   Verdict = "add"   // it comes near enough with the additions
	Anew  Verdict = "anew"  // as much paint again does not bring it within Near, and a new pile is clearly nearer
	Short Verdict = "short" // adding does not bring it near enough; the additions bring it nearest
	Again Verdict = "again" // what was measured cannot be that pile: measure again, and learn nothing from it
)

// Correction is what a pile misses and what to do about it.
type Correction struct {
	Verdict    Verdict
	Measured   colour.Lab
	DeltaE     float64 // CIEDE2000 of what was measured to the aim
	Difference Difference
	Surprise   float64 // CIEDE2000 of what was measured to what typical tubes would give

	Additions []Addition // the nearest that adding comes, the larger first; nil where the pile is right or nothing clearly helps
	After     Pile       // with the additions
	Lab       colour.Lab // predicted of it
	Remaining float64    // CIEDE2000 predicted of it to the aim

	Fresh *Recipe // of the owned paints, where a new pile is right or clearly nearer than adding comes; else nil
	Keep  float64 // how much of the old pile may go into it, as a share of the fresh paint: 0 to 1/2

	Tubes Tubes // what was learned of the paints in the piles
}

// Judge says whether a pile is right, Leave or Off, and how it differs from the aim. Its
// paints need not be known.
func Judge(r Round, aim colour.Lab) Correction {
	c := Correction{
		Verdict: Off, Measured: r.Measured, DeltaE: colour.DeltaE00(r.Measured, aim),
		Difference: Differ(r.Measured, aim), After: r.Pile,
	}
	if len(r.Pile.Paints) > 0 {
		c.Surprise = colour.DeltaE00(r.Measured, r.Pile.look())
	}
	if within(c.DeltaE, Right) {
		c.Verdict = Leave
	}
	return c
}

// Correct says whether the last round's pile is right, and if not, what to add to it: the
// least of one or two owned paints that brings it within Right of the aim, and nearer by
// more than a camera errs. The tubes are taken to be as all rounds together tell.
// Nothing owned: there is nothing to add.
// It panics if there is no round, or its pile has no paint.
func Correct(owned []paint.Paint, rounds []Round, aim colour.Lab) Correction {
	last := rounds[len(rounds)-1]
	if c := Judge(last, aim); c.Surprise > impossible {
		c.Verdict = Again
		return c
	}
	return advise(owned, last, aim, Learn(rounds), leftoverShare)
}

// advise corrects a pile of known tubes, which differs from their mix by a share of
// what is left over.
func advise(owned []paint.Paint, last Round, aim colour.Lab, tubes Tubes, share float64) Correction {
	c := Judge(last, aim)
	c.Tubes = tubes
	pile := tubes.pile(last.Pile).corrected(last.Measured, share)
	c.Lab = pile.Masstone()
	c.Remaining = colour.DeltaE00(c.Lab, aim)
	if c.Verdict == Leave {
		return c
	}
	w := newWork(tubes.All(owned), last.Pile, pile, aim)
	// Ours: a gain that no camera shows is not worth the paint. Of 600 painters as in
	// TestTwoHundredPainters it took 549 additions, not 621, in two rounds, and the median
	// miss after them fell from 1.42 to 1.25, for 3.3 % of the pile in paint a round, not 2.6.
	worth := c.Remaining - cameraError
	switch best := w.best(min(Right, worth)); {
	case within(best.deltaE, worth) && nearer(best.deltaE, c.DeltaE):
		c.Additions = w.additions(best, owned)
		c.After, c.Lab, c.Remaining = last.Pile.with(c.Additions), best.lab, best.deltaE
	case !nearer(c.Remaining, c.DeltaE): // the pile is thought to be farther than it reads
		c.Lab, c.Remaining = last.Measured, c.DeltaE
	}
	c.Verdict = Add
	if len(c.Additions) == 0 || !within(c.Remaining, Right) {
		c.Verdict = Short
		c.startAgain(w)
	}
	return c
}

// startAgain sets what a new pile would be, where it is right or clearly nearer than
// adding comes. It is advised only where adding does not come within Near: mending
// never takes more paint than the pile, a new one as much as the pile and the old one too.
func (c *Correction) startAgain(w *work) {
	if within(c.Remaining, Right) {
		return
	}
	recipes := Recipes(w.paints, []colour.Lab{w.aim}, Options{Alternatives: -1})[0]
	if len(recipes) == 0 || !within(recipes[0].DeltaE, max(Right, c.Remaining-Right)) {
		return
	}
	c.Fresh = &recipes[0]
	c.Keep = w.keeps(c.Fresh)
	if !within(c.Remaining, Near) {
		c.Verdict = Anew
	}
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
