// Other paints in a coat of the painter's, in place of one that breaks a rule.

package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
)

// substitute is a paint that may take another's place in a pile, with what that does to it.
type substitute struct {
	paint  paint.Paint
	tinges bool    // it tints strongly, and would tinge all that is brushed over it
	kin    bool    // a black for a black, or a white for a white
	dull   bool    // the pile is dull then, or hardly changed
	value  float64 // by how much the pile is lighter or darker, Munsell
	off    float64 // CIEDE2000
}

// The farthest a paint may take a pile's colour off for it to be offered before a wait.
// Ours: in a box with one earth and one black they let umber stand for the black, whose
// shadows it keeps, and not viridian.
const (
	nearOff   = 15 // CIEDE2000
	nearValue = 1  // Munsell
)

// near tells whether a painter would take it for the other beneath a coat.
func (s substitute) near() bool { return !s.tinges && s.off <= nearOff && s.value <= nearValue }

// swapMends takes other paints of the box for one in a coat's own pile, or the one to where
// it is named, the best first: those that are near, and the others.
func (in layersFrom) swapMends(coats []coat, of int, from, to string) (near, far []coatMend) {
	c := coats[of]
	if in.opt.Work.Coats[c.wish].Pile == nil {
		return nil, nil
	}
	pile := c.piles[0].of
	at := indexOf(pile.Paints, from)
	if at < 0 {
		return nil, nil
	}
	for _, s := range in.substitutes(pile, at) {
		if to != "" && s.paint.ID != to {
			continue
		}
		other := withPaint(pile, at, s.paint)
		changed := c
		changed.piles = []pileOn{c.piles[0]}
		changed.piles[0].of, changed.piles[0].parts = other, PartsOf(other)
		m := coatMend{coats: with(coats, of, changed), at: of, line: fmt.Sprintf("mix = %q", other)}
		m.words = fmt.Sprintf("Take %s in place of %s in %s", s.paint.Name, pile.Paints[at].Name, in.id(c))
		if s.near() || to != "" {
			m.words += "."
			near = append(near, m)
			continue
		}
		m.words += fmt.Sprintf(", though it takes the mix %.0f CIEDE2000 off.", s.off)
		far = append(far, m)
	}
	return near, far
}

// substitutes returns the paints of the box that may take the place of one in a pile, the
// best first: by the rule of the stand-ins strong tinters come last and dull ones before
// others, which lie under any hue; of those that are near a black stands best for a black;
// then by half steps of value, and by colour.
func (in layersFrom) substitutes(pile match.Pile, at int) (found []substitute) {
	now := thickOf(pile, in.opt.Mixing.Finish)
	for _, p := range in.box {
		if indexOf(pile.Paints, p.ID) >= 0 {
			continue
		}
		then := thickOf(withPaint(pile, at, p), in.opt.Mixing.Finish)
		off := Round(colour.DeltaE00(now, then), 1)
		found = append(found, substitute{
			paint: p, off: off,
			tinges: p.Facts.Strong() && !p.White() && !p.Black(),
			kin:    p.Black() && pile.Paints[at].Black() || p.White() && pile.Paints[at].White(),
			dull:   then.Munsell().Chroma <= dullStand || off <= strongMore,
			value:  Round(math.Abs(colour.ValueOf(now.L)-colour.ValueOf(then.L)), 1),
		})
	}
	slices.SortStableFunc(found, func(a, b substitute) int {
		return cmp.Or(
			trueFirst(!a.tinges, !b.tinges), trueFirst(a.near(), b.near()), trueFirst(a.kin, b.kin), trueFirst(a.dull, b.dull),
			cmp.Compare(math.Round(a.value*2), math.Round(b.value*2)), cmp.Compare(a.off, b.off),
		)
	})
	return found
}

// trueFirst compares for an order in which what holds comes first.
func trueFirst(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return -1
	}
	return 1
}

// withPaint returns a pile with another paint in one's place.
func withPaint(pile match.Pile, at int, p paint.Paint) match.Pile {
	paints := slices.Clone(pile.Paints)
	paints[at] = p
	return match.Pile{Paints: paints, Parts: pile.Parts}
}
