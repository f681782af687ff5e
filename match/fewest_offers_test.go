package match

import (
	"math"
	"math/bits"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
)

// missOfThree is what three paints of a box of n offer by a list.
func missOfThree(list []offer, n int, three []int) float64 {
	h := make(held, n+1)
	h[0] = true
	for _, p := range three {
		h[p+1] = true
	}
	least := nothing.miss
	for _, o := range list {
		if h.has(o.of) {
			least = min(least, o.miss)
		}
	}
	return float64(least) * tie
}

// What any three paints offer is held against their mixes made in full: near an aim it
// is right to what the fast optics err by, and far off it is right on average.
func TestOffersAgainstFullMixes(t *testing.T) {
	for _, f := range fews() {
		s := newSearch(f.paints, f.aims, Options{}.defaulted())
		full := fullOffers(s)
		var off []float64
		worst := 0.0
		for a, list := range s.offers(3) {
			for _, three := range choicesOf(len(f.paints), 3) {
				want := missOfThree(full[a], len(f.paints), three)
				err := math.Abs(missOfThree(list, len(f.paints), three) - want)
				off = append(off, err)
				if want < 4 {
					worst = max(worst, err)
				}
			}
		}
		slices.Sort(off)
		t.Logf("%s: %d, median %.3f, 95 in 100 within %.3f, near ones within %.2f", f.name, len(off), off[len(off)/2], off[len(off)*95/100], worst)
		assert.LessOrEqual(t, off[len(off)/2], 0.05)
		assert.LessOrEqual(t, off[len(off)*95/100], 0.3)
		assert.LessOrEqual(t, worst, screenError)
	}
}

// Three paints that are good together alone lose no more if all three go: the bound may
// not count that thrice. Keeping the fourth is the best of one, made by hand.
func TestBoundCountsOnce(t *testing.T) {
	thrift := &thrift{
		paints: 4, weights: []int64{1}, regions: []int{0}, fixed: make([]bool, 4), most: mostScans,
		offers: [][]offer{{{set{0, 1, 2}, 0}, {set{3, -1, -1}, 100}, nothing}},
	}
	b := &branching{thrift: thrift, count: 1, cost: 150}
	b.visit(0, thrift.newState(), make([]bool, 4))
	assert.Equal(t, int64(100), b.cost)
	assert.Equal(t, []int{3}, b.best.indices())
}

// choicesOf returns every choice of so many of the first n numbers, each rising.
func choicesOf(n, count int) (all [][]int) {
	for mask := range uint(1) << n {
		if bits.OnesCount(mask) != count {
			continue
		}
		var choice []int
		for p := range n {
			if mask>>p&1 == 1 {
				choice = append(choice, p)
			}
		}
		all = append(all, choice)
	}
	return all
}
