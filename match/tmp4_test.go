package match

import "testing"

func BenchmarkTmpBounds(b *testing.B) {
	p, a := own(24), testAims(100, 1)
	s := newSearch(p, a, Options{}.defaulted())
	lo := s.firstLooks(3)
	for b.Loop() {
		for a := range s.aims {
			l := newLens(s.aims[a], lo)
			bo := l.bound()
			l.patch(int32(a), bo)
		}
	}
}
func BenchmarkTmpScan(b *testing.B) {
	p, a := own(24), testAims(100, 1)
	s := newSearch(p, a, Options{}.defaulted())
	lo := s.firstLooks(3)
	bounds, patches := make([]float32, len(s.aims)), make([]patch, len(s.aims))
	for a := range s.aims {
		l := newLens(s.aims[a], lo)
		bounds[a] = l.bound()
		patches[a] = l.patch(int32(a), bounds[a])
	}
	fl := newField(patches)
	pr := newPrograms(s.levels)
	for b.Loop() {
		for sh := range shards {
			s.scan(sh, fl, bounds, pr, 3)
		}
	}
}
