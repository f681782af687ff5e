// Mends of the rules that the painter's coats break: each is tried before it is offered.

package plan

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/layer"
	"tonewright/match/paint"
)

// coatMend is one change to the painting file.
type coatMend struct {
	coat  int    // index in the region's coats of the changed one
	to    coat   // as it is then
	line  string // of its block
	words string
}

// longWait is the wait, in days, from which other paints are offered first. Ours: two
// weeks are about what the slowest paint takes to be dry to the touch.
const longWait = 14

// mend returns the change of one line that does away with a fault and brings no other;
// false where none of those tried does.
func (in layersFrom) mend(coats []coat, f layer.Fault) (coatMend, bool) {
	before := in.faults(coats)
	for _, m := range in.mends(coats, f, before) {
		changed := slices.Clone(coats)
		changed[m.coat] = m.to
		after := in.faults(changed)
		again := slices.ContainsFunc(after, func(g layer.Fault) bool {
			return g.Rule == f.Rule && g.Below == f.Below && g.Above == f.Above
		})
		if !again && len(after) < len(before) {
			return m, true
		}
	}
	return coatMend{}, false
}

// mends lists the changes to try for a fault, the best first.
func (in layersFrom) mends(coats []coat, f layer.Fault, all []layer.Fault) (mends []coatMend) {
	change := f.Change
	switch {
	case change.WaitDays > 0:
		wait := in.waitMend(coats, f.Above, all)
		if f.Rule == layer.FastOverSlow && wait.to.after > longWait {
			mends = in.swapMends(coats, f.Below, in.slowest(coats[f.Below]), "")
		}
		return append(mends, wait)
	case change.Medium != nil:
		c := coats[change.Coat]
		c.medium = *change.Medium
		return []coatMend{{change.Coat, c, fmt.Sprintf("medium = %q", c.medium), fmt.Sprintf("Take %s in %s.", c.medium, in.id(c))}}
	case change.Film > 0:
		c := coats[change.Coat]
		c.film = change.Film
		times := strconv.FormatFloat(math.Floor(c.film/in.opt.Work.Film*100)/100, 'g', -1, 64)
		return []coatMend{{change.Coat, c, "film = " + times, fmt.Sprintf("Lay %s no thicker than %s times an ordinary coat.", in.id(c), times)}}
	}
	return in.swapMends(coats, change.Coat, change.Swap.From, change.Swap.To)
}

// waitMend lays a coat later, by as much as all faults ask that it is the upper one of.
func (in layersFrom) waitMend(coats []coat, above int, all []layer.Fault) coatMend {
	c, wait := coats[above], 0.0
	for _, f := range all {
		if f.Above == above {
			wait = max(wait, f.Change.WaitDays)
		}
	}
	below := coats[above-1]
	if dry := planned(days(goOver(below, c, in.opt.Work.Air))); c.wet && dry >= wait {
		c.wet, c.after = false, 0
		return coatMend{above, c, "wet = false", fmt.Sprintf("Lay %s when %s is dry, not into it while it is wet.", in.id(c), in.id(below))}
	}
	c.after = int(math.Ceil(waits(below, c, true, in.opt.Work.Air) + wait))
	c.wet = false
	return coatMend{above, c, fmt.Sprint("after = ", c.after), fmt.Sprintf("Lay %s %d days after %s.", in.id(c), c.after, in.id(below))}
}

// slowest returns the paint that a coat waits for: of its first pile.
func (in layersFrom) slowest(c coat) string {
	laid := c.laid(c.piles[0])
	return laid.Paints[layer.Drying(laid, in.opt.Work.Air).Slowest].ID
}

// swapMends takes other paints of the box for one in a coat's own pile, the nearest in
// colour first, or to where it is named.
func (in layersFrom) swapMends(coats []coat, of int, from, to string) (mends []coatMend) {
	c := coats[of]
	if in.opt.Work.Coats[c.wish].Pile == nil {
		return nil
	}
	pile := c.piles[0].of
	at := indexOf(pile.Paints, from)
	if at < 0 {
		return nil
	}
	for _, p := range in.likest(pile, at) {
		if to != "" && p.ID != to {
			continue
		}
		other := withPaint(pile, at, p)
		changed := c
		changed.piles = []pileOn{c.piles[0]}
		changed.piles[0].of, changed.piles[0].parts = other, PartsOf(other)
		mends = append(mends, coatMend{of, changed, fmt.Sprintf("mix = %q", other),
			fmt.Sprintf("Take %s in place of %s in %s.", p.Name, pile.Paints[at].Name, in.id(c))})
	}
	return mends
}

// likest returns the paints of the box that may take the place of one in a pile, by how
// near the pile's colour stays.
func (in layersFrom) likest(pile match.Pile, at int) (paints []paint.Paint) {
	now, off := thickOf(pile, in.opt.Mixing.Finish), map[string]float64{}
	for _, p := range in.box {
		if indexOf(pile.Paints, p.ID) < 0 {
			paints = append(paints, p)
			off[p.ID] = Round(colour.DeltaE00(now, thickOf(withPaint(pile, at, p), in.opt.Mixing.Finish)), 1)
		}
	}
	slices.SortStableFunc(paints, func(a, b paint.Paint) int {
		if off[a.ID] < off[b.ID] {
			return -1
		}
		if off[a.ID] > off[b.ID] {
			return 1
		}
		return 0
	})
	return paints
}

// withPaint returns a pile with another paint in one's place.
func withPaint(pile match.Pile, at int, p paint.Paint) match.Pile {
	paints := slices.Clone(pile.Paints)
	paints[at] = p
	return match.Pile{Paints: paints, Parts: pile.Parts}
}
