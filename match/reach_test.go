package match

import (
	"slices"
	"testing"

	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
)

// Reach is held against every mix of one or two paints, made in full, with the box
// in two orders.
func TestReach(t *testing.T) {
	forwards := paint.StarterBox().Paints
	backwards := slices.Clone(forwards)
	slices.Reverse(backwards)
	for _, paints := range [][]paint.Paint{forwards, backwards} {
		s := newSearch(paints, nil, Options{}.defaulted())
		darkest, lightest := 100.0, 0.0
		for i := range paints {
			l := paints[i].Masstone().L
			darkest, lightest = min(darkest, l), max(lightest, l)
			for j := range i {
				of := set{int32(j), int32(i), -1}
				for _, m := range s.menu(of) {
					l := s.lab(of, m).L
					darkest, lightest = min(darkest, l), max(lightest, l)
				}
			}
		}
		lo, hi := Reach(paints, paint.Gloss)
		assert.InDelta(t, darkest, lo, 0.1)
		assert.InDelta(t, lightest, hi, 0.1)
	}
}

func TestReachOfOneAndNone(t *testing.T) {
	lo, hi := Reach(box(t, "viridian"), paint.Gloss)
	assert.InDelta(t, lo, hi, exact)
	lo, hi = Reach(nil, paint.Gloss)
	assert.Equal(t, []float64{0, 100}, []float64{lo, hi})
}
