// Searching for the least additions: every one or two of the amounts of any owned
// paints, in fast optics, and the promising ones in full.

package match

import (
	"cmp"
	"math"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// work is a pile on its way to an aim.
type work struct {
	paints  []paint.Paint // owned, as learned
	pile    paint.Paint   // all of it as one paint, as it lies
	whole   float64       // its parts
	aim     colour.Lab
	amounts []Addition
	base    optics
	strips  [][]optics // by paint and amount
	within  []bool     // paints that are in the pile
	room    int        // for paints that are not
	lists   shortlists
}

func newWork(paints []paint.Paint, pile Pile, as paint.Paint, aim colour.Lab) *work {
	w := &work{paints: paints, pile: as, whole: sum(pile.Parts), aim: aim, room: max(0, mostInPile-len(pile.Paints))}
	w.amounts = amounts(w.whole)
	w.base = opticsOf(&as, w.whole)
	for i := range paints {
		strips := make([]optics, len(w.amounts))
		for j, a := range w.amounts {
			strips[j] = opticsOf(&paints[i], a.Parts)
		}
		w.strips = append(w.strips, strips)
		w.within = append(w.within, indexOf(pile.Paints, paints[i].ID) >= 0)
	}
	return w
}

// fits tells whether the pile may take both paints: it is not to have more than a
// pile is read with.
func (w *work) fits(i, j int) bool {
	others := 0
	for _, within := range [2]bool{w.within[i], w.within[j]} {
		if !within {
			others++
		}
	}
	return others <= w.room
}

// change is one or two additions, by index of paint and amount; -1 for no second one.
type change struct {
	paint, amount [2]int
	volume        float64 // as a share of the pile
	lab           colour.Lab
	deltaE        float64
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

// best returns the change of the least paint that comes within a bound of the aim, at
// most Right, or else the nearest one of all; infinitely far where there is none.
func (w *work) best(bound float64) change {
	w.look()
	slices.SortFunc(w.lists.enough, compareChanges)
	if least, found := w.least(bound); found {
		if surer, found := w.least(min(sure, bound)); found && surer.volume <= sureCosts*least.volume {
			return surer
		}
		return least
	}
	best := change{paint: [2]int{0, -1}, deltaE: math.Inf(1)}
	for _, c := range w.lists.nearest {
		if c = w.full(c); compareNear(c, best) < 0 {
			best = c
		}
	}
	return best
}

// least returns the first of the changes that are near enough which comes within a bound.
func (w *work) least(bound float64) (change, bool) {
	for _, c := range w.lists.enough {
		if c.deltaE > bound+asPrinted+screenError {
			continue
		}
		if full := w.full(c); within(full.deltaE, bound) {
			return full, true
		}
	}
	return change{}, false
}

// look goes through all changes of no more paint than is in the pile, in fast optics.
func (w *work) look() {
	w.lists.far = math.Inf(1)
	for i := range w.paints {
		if !w.fits(i, i) && !w.within[i] {
			continue
		}
		for a, amount := range w.amounts {
			base := w.base.add(&w.strips[i][a])
			c := change{paint: [2]int{i, -1}, amount: [2]int{a, -1}, volume: amount.Parts / w.whole}
			w.lists.note(w.aim, c, glossGlow.screen(&base, &optics{}))
			w.lookBeside(c, &base)
		}
	}
	w.lists.trim()
}

// lookBeside goes through the second additions to a first, whose pile is base.
func (w *work) lookBeside(first change, base *optics) {
	for j := first.paint[0] + 1; j < len(w.paints); j++ {
		if !w.fits(first.paint[0], j) {
			continue
		}
		for b, amount := range w.amounts {
			c := first
			c.paint[1], c.amount[1] = j, b
			c.volume += amount.Parts / w.whole
			if c.volume > 1+tinyShare {
				break
			}
			w.lists.note(w.aim, c, glossGlow.screen(base, &w.strips[j][b]))
		}
	}
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

// additions returns what a change adds, the larger first.
func (w *work) additions(c change, owned []paint.Paint) (all []Addition) {
	for n := range c.size() {
		a := w.amounts[c.amount[n]]
		a.Paint = owned[c.paint[n]]
		all = append(all, a)
	}
	slices.SortStableFunc(all, func(a, b Addition) int { return cmp.Compare(b.Parts, a.Parts) })
	return all
}

// looksInFull is how many of the nearest changes are made over all bands.
const looksInFull = 8

// mostLightnessWeight is over S_L of CIEDE2000 anywhere.
// Source: [Sharma2005] eq. 15, which is 1.75 at L* 0 and 100.
const mostLightnessWeight = 1.8

// shortlists are the changes to look at in full.
type shortlists struct {
	enough  []change // those that may come near enough
	nearest []change
	far     float64 // CIEDE2000 past which a change gets on no list
}

// note puts a change of a colour on the lists.
func (l *shortlists) note(aim colour.Lab, c change, p point) {
	if math.Abs(float64(p.l)-aim.L) > mostLightnessWeight*l.far {
		return
	}
	c.lab = p.lab()
	c.deltaE = colour.DeltaE00(aim, c.lab)
	if c.deltaE > l.far {
		return
	}
	if c.deltaE <= Right+asPrinted+screenError {
		l.enough = append(l.enough, c)
	}
	if l.nearest = append(l.nearest, c); len(l.nearest) == 8*looksInFull {
		l.trim()
		l.far = max(l.nearest[looksInFull-1].deltaE+tie, Right+asPrinted+screenError)
	}
}

// trim leaves the nearest few.
func (l *shortlists) trim() {
	slices.SortFunc(l.nearest, compareNear)
	l.nearest = l.nearest[:min(len(l.nearest), looksInFull)]
}
