// Is the pile right, and if not, what to add: paint cannot be taken out.

package match

import (
	"cmp"
	"math"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Right is the CIEDE2000 up to which a pile is right. Ours: half of it is the camera's.
const Right = 2

// A Verdict is what to do with a pile.
type Verdict string

const (
	Leave Verdict = "right" // it is near enough
	Add   Verdict = "add"   // it comes near enough with the additions
	Anew  Verdict = "anew"  // a new pile takes less paint
	Short Verdict = "short" // these paints do not get there; the additions bring it nearest
)

// Correction is what a pile misses and what to do about it.
type Correction struct {
	Verdict  Verdict
	Measured colour.Lab
	DeltaE   float64 // CIEDE2000 of what was measured to the aim
	Words    string  // what differs: "half a value too dark and a little too red"

	Additions []Addition // the nearest that adding comes; none where the pile is right, or nothing helps
	After     Pile       // with the additions
	Lab       colour.Lab // predicted with the additions
	Remaining float64    // CIEDE2000 predicted then

	Fresh *Recipe // where a new pile is better: its parts, of the owned paints
	Keep  float64 // how much of the old pile may be stirred into it, as a share of the fresh paint

	Tubes Tubes // what was learned of the paints in the piles
}

// Correct says whether the last round's pile is right, and what to add of one or two
// owned paints. It takes the tubes to be as all rounds together tell.
// It panics if there is no round, or a pile without paint.
func Correct(owned []paint.Paint, rounds []Round, aim colour.Lab) Correction {
	return advise(owned, rounds[len(rounds)-1], aim, Learn(rounds), leftoverShare)
}

// advise corrects a pile of known tubes, which differs from their mix by a share of
// what is left over.
func advise(owned []paint.Paint, last Round, aim colour.Lab, tubes Tubes, share float64) Correction {
	c := Correction{Measured: last.Measured, DeltaE: colour.DeltaE00(last.Measured, aim), After: last.Pile, Tubes: tubes}
	c.Words = Differs(last.Measured, aim)
	pile := c.Tubes.pile(last.Pile).corrected(last.Measured, share)
	c.Lab = pile.Masstone()
	c.Remaining = colour.DeltaE00(c.Lab, aim)
	if c.DeltaE <= Right {
		c.Verdict = Leave
		return c
	}
	w := newWork(c.Tubes.All(owned), last.Pile, pile, aim)
	best := w.best()
	if best.deltaE < c.Remaining {
		c.Additions = w.additions(best, owned)
		c.After, c.Lab, c.Remaining = last.Pile.with(c.Additions), best.lab, best.deltaE
	}
	c.Verdict = Add
	if c.Remaining > Right {
		c.Verdict = Short
		c.fresh(w)
	}
	return c
}

// fresh sets what a new pile would be, where that comes nearer than adding.
func (c *Correction) fresh(w *work) {
	r := Recipes(w.paints, []colour.Lab{w.aim}, Options{Alternatives: -1})
	if len(r[0]) == 0 || r[0][0].DeltaE > max(Right, c.Remaining-Right) {
		return
	}
	c.Verdict, c.Fresh = Anew, &r[0][0]
	var paints []paint.Paint
	var parts []float64
	for _, p := range c.Fresh.Parts {
		paints, parts = append(paints, w.paints[p.Paint]), append(parts, p.Parts)
	}
	bound := max(Right, c.Fresh.DeltaE)
	for keep := 1.0 / 2; keep >= 1.0/16; keep /= 2 {
		if colour.DeltaE00(labOf(append(paints, w.pile), append(parts, keep*sum(parts)), paint.Gloss), w.aim) <= bound {
			c.Keep = keep
			return
		}
	}
}

// work is a pile on its way to an aim.
type work struct {
	paints  []paint.Paint // owned, as learned
	pile    paint.Paint   // as it lies
	whole   float64       // its parts
	aim     colour.Lab
	amounts []Addition
	share   []float64 // of the pile, beside amounts
	strips  [][]optics
	base    optics
	taken   []bool // paints that are in the pile
	room    int    // for paints that are not
}

func newWork(paints []paint.Paint, pile Pile, as paint.Paint, aim colour.Lab) *work {
	w := &work{paints: paints, pile: as, whole: sum(pile.Parts), aim: aim, room: mostInPile - len(pile.Paints)}
	w.amounts = amounts(w.whole)
	w.base = opticsOf(&as, w.whole)
	for i := range paints {
		strips := make([]optics, len(w.amounts))
		for j, a := range w.amounts {
			strips[j] = opticsOf(&paints[i], a.Parts)
		}
		w.strips = append(w.strips, strips)
		w.taken = append(w.taken, indexOf(pile.Paints, paints[i].ID) >= 0)
	}
	return w
}

// change is one or two additions by index: paint and amount; -1 for none.
type change struct {
	paint, amount [2]int
	lab           colour.Lab
	deltaE        float64
	volume        float64
}

func (c change) size() int { return 1 + min(1, c.paint[1]+1) }

// compareChanges puts the one of less paint first, in specks of the pile, then the fewer
// paints, then the nearer, then the lower indices.
func compareChanges(a, b change) int {
	return cmp.Or(
		cmp.Compare(math.Round(a.volume/speckShare), math.Round(b.volume/speckShare)),
		cmp.Compare(a.size(), b.size()),
		compareNear(a, b))
}

func compareNear(a, b change) int {
	return cmp.Or(
		cmp.Compare(math.Round(a.deltaE/tie), math.Round(b.deltaE/tie)),
		slices.Compare(a.paint[:], b.paint[:]),
		slices.Compare(a.amount[:], b.amount[:]))
}

// best returns the change of the least paint that comes near enough to the aim, or else
// the nearest one of all.
func (w *work) best() change {
	within, nearest := w.look()
	slices.SortFunc(within, compareChanges)
	for _, c := range within {
		if full := w.full(c); full.deltaE <= Right {
			return full
		}
	}
	best := change{deltaE: math.Inf(1)}
	for _, c := range nearest {
		if full := w.full(c); compareNear(full, best) < 0 {
			best = full
		}
	}
	return best
}

// look goes through all changes in fast optics. It returns those that may come near
// enough, and the nearest few.
func (w *work) look() (within, nearest []change) {
	far := math.Inf(1)
	note := func(c change, p point) {
		if math.Abs(float64(p.l)-w.aim.L) > mostLightnessWeight*min(far, 1e3) {
			return
		}
		c.lab = p.lab()
		c.deltaE = colour.DeltaE00(w.aim, c.lab)
		if c.deltaE > far {
			return
		}
		if c.deltaE <= Right+screenError {
			within = append(within, c)
		}
		nearest = append(nearest, c)
		if len(nearest) == 2*looksInFull {
			slices.SortFunc(nearest, compareNear)
			nearest = nearest[:looksInFull]
			far = max(nearest[looksInFull-1].deltaE, Right+screenError)
		}
	}
	for i := range w.paints {
		if !w.taken[i] && w.room < 1 {
			continue
		}
		for a := range w.amounts {
			base := w.base.add(&w.strips[i][a])
			c := change{paint: [2]int{i, -1}, amount: [2]int{a, -1}, volume: w.amounts[a].Parts / w.whole}
			note(c, glossGlow.screen(&base, &optics{}))
			for j := i + 1; j < len(w.paints); j++ {
				if !w.fits(i, j) {
					continue
				}
				for b := range w.amounts {
					volume := c.volume + w.amounts[b].Parts/w.whole
					if volume > 1+1e-9 {
						break
					}
					note(change{paint: [2]int{i, j}, amount: [2]int{a, b}, volume: volume}, glossGlow.screen(&base, &w.strips[j][b]))
				}
			}
		}
	}
	slices.SortFunc(nearest, compareNear)
	return within, nearest[:min(len(nearest), looksInFull)]
}

// looksInFull is how many of the nearest changes are made over all bands.
const looksInFull = 8

// mostLightnessWeight is over S_L of CIEDE2000 anywhere. Source: [Sharma2005] eq. 15: 1.75 at L* 0 and 100.
const mostLightnessWeight = 1.8

// fits tells whether the pile may take both paints.
func (w *work) fits(i, j int) bool {
	new := 0
	for _, p := range [2]int{i, j} {
		if !w.taken[p] {
			new++
		}
	}
	return new <= max(w.room, 0)
}

// full returns a change with its colour over all bands.
func (w *work) full(c change) change {
	paints, parts := []paint.Paint{w.pile}, []float64{w.whole}
	for n := range c.size() {
		paints, parts = append(paints, w.paints[c.paint[n]]), append(parts, w.amounts[c.amount[n]].Parts)
	}
	c.lab = labOf(paints, parts, paint.Gloss)
	c.deltaE = colour.DeltaE00(c.lab, w.aim)
	return c
}

// additions returns what to add, the larger first.
func (w *work) additions(c change, owned []paint.Paint) (all []Addition) {
	for n := range c.size() {
		a := w.amounts[c.amount[n]]
		a.Paint = owned[c.paint[n]]
		all = append(all, a)
	}
	slices.SortStableFunc(all, func(a, b Addition) int { return cmp.Compare(b.Parts, a.Parts) })
	return all
}
