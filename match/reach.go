// How dark and how light a box can go.

package match

import "tonewright/match/paint"

// Reach returns the L* of the darkest and of the lightest mix of the box, of one
// or two paints: a third never goes further than the better two by anything that
// is seen. No paints: 0 and 100.
func Reach(paints []paint.Paint, f paint.Finish) (lo, hi float64) {
	if len(paints) == 0 {
		return 0, 100
	}
	return newSearch(paints, nil, Options{Finish: f}.defaulted()).reach()
}

func (s *search) reach() (lo, hi float64) {
	var dark, light mix
	darkest, lightest := float32(200), float32(-200)
	note := func(of set, m measure) {
		l := s.screen(of, m).l
		if l < darkest {
			darkest, dark = l, mix{set: of, measure: m}
		}
		if l > lightest {
			lightest, light = l, mix{set: of, measure: m}
		}
	}
	for i := range s.paints {
		note(set{int32(i), -1, -1}, measure{1})
	}
	for _, of := range s.pairsOfPaints() {
		for _, m := range s.menu(of) {
			note(of, m)
		}
	}
	return s.lab(dark.set, dark.measure).L, s.lab(light.set, light.measure).L
}
