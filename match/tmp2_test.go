package match

import (
	"math"
	"testing"

	"tonewright/analyze/colour"
)

func TestTmpDbg(t *testing.T) {
	for _, q := range []struct {
		n   int
		aim colour.Lab
	}{{9, colour.Lab{40.49539809819433, 7.697627719394696, -48.87804597002765}}, {9, colour.Lab{56.65630113566131, 87.38520249833881, -29.094970327711067}}, {12, colour.Lab{63.00046344154585, 67.47770901691047, -34.18897396712677}}} {
		paints := own(q.n)
		s := newSearch(paints, []colour.Lab{q.aim}, Options{}.defaulted())
		lo := s.firstLooks(3)
		l := newLens(q.aim, lo)
		bound := l.bound()
		t.Log(q.aim, "bound", bound)
		best := math.Inf(1)
		for i := range paints {
			for j := i + 1; j < q.n; j++ {
				for k := j + 1; k < q.n; k++ {
					of := set{int32(i), int32(j), int32(k)}
					for _, m := range s.menu(of) {
						lab := s.lab(of, m)
						if d := colour.DeltaE00(q.aim, lab); d < best {
							best = d
							p := s.screen(of, m)
							col := columnOf(p)
							mid := middleOfColumn(col)
							t.Log(of, m, lab, d, "screen", p, colour.DeltaE00(q.aim, p.lab()), "sq", sqrt32(l.weight[storeyOf(p.l)]*(p.l-float32(q.aim.L))*(p.l-float32(q.aim.L))+l.form(col).form(p.a, p.b)), "near", l.isNear(mid), "jump", l.grained[col], "used", lo.used[col])
						}
					}
				}
			}
		}
		f := s.finds(3)[0]
		n := 0
		for _, x := range f {
			if x.set.size() == 3 {
				n++
				if n < 5 {
					t.Log(x)
				}
			}
		}
	}
}
