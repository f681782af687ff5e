// How dark and how light a box can go.

package match

import "tonewright/match/paint"

// Reach returns the L* of the darkest and of the lightest mix of the box, of one
// or two paints. No paints: 0 and 100.
func Reach(paints []paint.Paint) (lo, hi float64) {
	if len(paints) == 0 {
		return 0, 100
	}
	s := newSearch(paints, nil, Options{}.defaulted())
	lo, hi = 100, 0
	note := func(of set, m measure) {
		l := s.lab(of, m).L
		lo, hi = min(lo, l), max(hi, l)
	}
	for i := range paints {
		note(set{int32(i), -1, -1}, measure{1})
	}
	for _, of := range s.pairsOfPaints() {
		for _, m := range s.menu(of) {
			note(of, m)
		}
	}
	return lo, hi
}
