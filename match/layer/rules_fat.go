// Fat over lean: what lies above should hold no less oil than what lies beneath.

package layer

import (
	"fmt"

	"tonewright/match/paint"
)

// leanerWord is by how much of its film a coat must surely hold less oil before it is
// called leaner. Ours: a palette knife measures a medium to no better, and 1 part to 50.
const leanerWord = 0.02

// wash is the film, once its solvent has left, of a coat thinned with solvent that is a
// stain rather than a film, µm: it moves too little to crack what lies over it. Common
// practice, no source: block-ins are washed in with umber, which is fat by its pigment.
const wash = 50

// shareTie is less oil than matters: of coats beneath that are alike, the lowest is named.
const shareTie = 1e-9

// leaner tells whether one coat is surely leaner than another beneath it.
func leaner(above, below Coat) bool {
	return leanerBy(above, below) > leanerWord && (below.Medium.Kind != Solvent || below.left() > wash)
}

// fatOverLean: judged by the share of oil in the dry film, by volume, of tubes that are the
// same in both coats.
func fatOverLean(s judged, above int) (Fault, bool) {
	below, by := -1, 0.0
	for i := range above {
		if d := leanerBy(s.stack[above].Coat, s.stack[i].Coat); leaner(s.stack[above].Coat, s.stack[i].Coat) && d > by+shareTie {
			below, by = i, d
		}
	}
	if below < 0 {
		return Fault{}, false
	}
	upper, lower := s.stack[above], s.stack[below]
	f := s.fatter(above, below)
	f.Rule, f.Below, f.Source = FatOverLean, below, practice
	f.Reason = fmt.Sprintf("%s is leaner than %s beneath: it stiffens first, and cracks over what still moves.", upper.Name, lower.Name)
	return f, true
}

// fatter is a fault with the mildest mend there is: oil in the coat above, less of it in
// the one below, a first coat washed in, or another paint.
func (s judged) fatter(above, below int) Fault {
	upper, lower := s.stack[above], s.stack[below]
	if m, found := s.oilFor(above); found {
		return Fault{
			Mend:   fmt.Sprintf("Take %s in %s%s.", m.words(), upper.Name, inPlaceOf(upper.Medium)),
			Change: Change{Coat: above, Medium: &m},
		}
	}
	if m, found := s.leanFor(above, below); found {
		f := Fault{Change: Change{Coat: below, Medium: &m}}
		f.Mend = fmt.Sprintf("Take no %s in %s.", lower.Medium.Kind, lower.Name)
		if !m.none() {
			f.Mend = fmt.Sprintf("Take %s in %s%s.", m.words(), lower.Name, inPlaceOf(lower.Medium))
		}
		return f
	}
	p := lower.fattest()
	if m := (Medium{Solvent, mostSolvent}); below == 0 && !leaner(upper.Coat, lower.with(m)) {
		return Fault{
			Mend:   fmt.Sprintf("Wash %s in with %s%s, or take a leaner paint than %s in it.", lower.Name, m.words(), inPlaceOf(lower.Medium), p.Name),
			Change: Change{Coat: below, Medium: &m},
		}
	}
	return Fault{
		Mend:   fmt.Sprintf("Take a leaner paint in place of %s in %s: no medium evens it out.", p.Name, lower.Name),
		Change: Change{Coat: below, Swap: Swap{From: p.ID}},
	}
}

// inPlaceOf words the medium that another is taken for: " in place of alkyd 1:4".
func inPlaceOf(old Medium) string {
	if old.none() {
		return ""
	}
	return fmt.Sprintf(" in place of %s", old)
}

// with returns a coat with another medium.
func (c Coat) with(m Medium) Coat {
	c.Medium = m
	return c
}

// oilFor returns the least oil, in parts a painter can measure, that makes a coat no leaner
// than any beneath it, and which it bears without becoming a glaze that it is not.
func (s judged) oilFor(above int) (Medium, bool) {
	old := s.stack[above].Coat
	kind := Linseed
	if old.oilAdded() > 0 {
		kind = old.Medium.Kind
	}
	for _, parts := range measures {
		c := old.with(Medium{kind, parts})
		if parts > old.oilAdded() && parts <= c.mostParts() && (old.glaze() || !c.glaze()) && s.fitsOver(above, c) {
			return c.Medium, true
		}
	}
	return Medium{}, false
}

// fitsOver tells whether a coat in this place would be leaner than none of those beneath.
func (s judged) fitsOver(above int, c Coat) bool {
	for i := range above {
		if leaner(c, s.stack[i].Coat) {
			return false
		}
	}
	return true
}

// leanFor returns the most of its own medium that a coat below may hold, in parts a painter
// can measure, for the one above not to be leaner.
func (s judged) leanFor(above, below int) (Medium, bool) {
	upper, lower := s.stack[above].Coat, s.stack[below].Coat
	if lower.oilAdded() == 0 {
		return Medium{}, false
	}
	for i := len(measures) - 1; i >= 0; i-- {
		c := lower.with(Medium{lower.Medium.Kind, measures[i]})
		if !leaner(upper, c) { // never with more than it has, which is too fat
			return c.Medium, true
		}
	}
	none := Medium{Kind: None}
	return none, !leaner(upper, lower.with(none))
}

// measures are the amounts of medium a painter measures, to one of paint, from little to
// much.
var measures = []float64{1. / 20, 1. / 16, 1. / 12, 1. / 10, 1. / 8, 1. / 6, 1. / 5, 1. / 4, 1. / 3, 1. / 2, 1, 2, 3}

// fattest returns the paint that brings most oil into a coat beyond its share.
func (c Coat) fattest() paint.Paint {
	at, most := 0, -1.0
	mean := Oil(Coat{Paints: c.Paints, Parts: c.Parts})
	for i, share := range c.shares() {
		if brings := share * (oilOf(c.Paints[i]).From - mean.From); brings > most+1e-9 {
			at, most = i, brings
		}
	}
	return c.Paints[at]
}
