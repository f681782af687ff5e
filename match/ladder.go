// The ladder of a palette: one mix for every value, from its darkest to its lightest.

package match

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Ladder is a palette's row from dark to light: of its darkest paint towards the next,
// and so on to the lightest, and of that towards white.
type Ladder struct {
	paints []paint.Paint // by the value of their masstones, the white last
	finish paint.Finish
	rungs  []rung // by rising L*, no two of them alike
}

// rung is one mix of a ladder: its shares of the ladder's paints, and its colour.
type rung struct {
	shares []float64
	lab    colour.Lab
}

// LadderOf returns the ladder of a palette, with tints of its lightest paint up to
// white where there is one to tint with; nil for none. One paint makes a monochrome.
// The order of paints does not matter.
//
// A string between two paints may go darker than both, as complements do; the ladder
// then starts at the darkest mix and goes on from there to the lighter paint. Where a
// string further up goes dark again, the ladder takes the straight way past that dip:
// see rising. So a palette reaches as dark and as light as any of those strings, and
// has one mix for a value. Without paints and white it has none.
// Source: mixing as [Duncan1940], see paint.Mix.
func LadderOf(paints []paint.Paint, white *paint.Paint, finish paint.Finish) *Ladder {
	l := &Ladder{paints: byValue(paints), finish: finish}
	if white != nil && indexOf(paints, white.ID) < 0 {
		l.paints = append(l.paints, *white)
	}
	if len(l.paints) > 0 {
		l.rungs = l.rising(l.row())
	}
	return l
}

// byValue returns paints from the darkest masstone to the lightest, by id where two
// are as dark, so that the order of a box decides nothing.
func byValue(paints []paint.Paint) []paint.Paint {
	sorted := slices.Clone(paints)
	slices.SortStableFunc(sorted, func(a, b paint.Paint) int {
		return cmp.Or(cmp.Compare(tenth(a.Masstone().L), tenth(b.Masstone().L)), cmp.Compare(a.ID, b.ID))
	})
	return sorted
}

// tenth is to a tenth, so that the last bit decides nothing.
func tenth(x float64) float64 { return roundTo(x, 10) }

// row returns every mix along the strings from each paint to the next.
func (l *Ladder) row() (row []rung) {
	if len(l.paints) == 1 {
		return []rung{l.mixed([]float64{1})}
	}
	for i := range l.paints[1:] {
		for _, p := range way(&l.paints[i], &l.paints[i+1], l.finish) {
			shares := make([]float64, len(l.paints))
			shares[i], shares[i+1] = 1-p.share, p.share
			row = append(row, rung{shares, p.lab})
		}
	}
	return row
}

// mixed returns the mix of given shares.
func (l *Ladder) mixed(shares []float64) rung {
	return rung{shares, labOf(l.paints, shares, l.finish)}
}

// Reach returns the L* of the ladder's darkest and of its lightest mix; 0 and 0 where
// it has none.
func (l *Ladder) Reach() (lo, hi float64) {
	if len(l.rungs) == 0 {
		return 0, 0
	}
	return l.rungs[0].lab.L, l.rungs[len(l.rungs)-1].lab.L
}

// At returns the colour of the ladder's mix of that lightness, and whether it is within
// reach, to a quarter of a value step. Outside its reach it is the end's colour. L* of the result is
// the lightness within reach, and rises with it.
func (l *Ladder) At(lightness float64) (c colour.Lab, within bool) {
	if len(l.rungs) == 0 {
		return colour.Lab{}, false
	}
	last := len(l.rungs) - 1
	i := sort.Search(last, func(i int) bool { return l.rungs[i].lab.L >= lightness })
	switch b := l.rungs[i].lab; {
	case i == 0 || lightness >= b.L:
		return b, near(lightness, b.L)
	default:
		return onWay(l.rungs[i-1].lab, b, lightness), true
	}
}

// onWay returns the colour of a lightness between two.
func onWay(a, b colour.Lab, lightness float64) colour.Lab {
	at := towards(waypoint{lab: a}, waypoint{lab: b}, (lightness-a.L)/(b.L-a.L)).lab
	at.L = lightness
	return at
}

// reached is how far in value a mix may lie from what is wanted and reach it. Ours: half
// of tintMiss; a painter who lays nine values keeps halves of a step apart, no quarters.
const reached = 0.25

// missed is how far in value a mix must lie from what is wanted to miss it altogether:
// what a tint of a whole value may miss.
const missed = tintMiss

// near tells whether two lightnesses are as good as one.
func near(a, b float64) bool {
	return math.Abs(colour.ValueOf(a)-colour.ValueOf(b)) <= reached
}

// covers returns how far a mix of one lightness does for another, 0-1: 1 within
// reached, none from missed on, and evenly less between the two. A sharp cut would fall
// on one large tone of a region and take half of it or none: of two palettes whose
// darks differ by less than is seen, one would cover it and one not.
func covers(a, b float64) float64 {
	off := math.Abs(colour.ValueOf(a) - colour.ValueOf(b))
	return min(1, max(0, (missed-off)/(missed-reached)))
}

// covers returns how far the ladder does for a lightness, 0-1: 1 within its reach, and
// beyond its ends as their mixes do.
func (l *Ladder) covers(lightness float64) float64 {
	lo, hi := l.Reach()
	return covers(lightness, min(hi, max(lo, lightness)))
}
