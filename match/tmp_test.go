package match

import (
	"math"
	"testing"
)

func TestTmpMore(t *testing.T) {
	for _, q := range []struct{ n, a, s int }{{9, 1000, 103}, {12, 800, 104}} {
		paints, aims := own(q.n), testAims(q.a, uint64(q.s))
		want := dense(paints, aims, mostParts)
		s := newSearch(paints, aims, Options{}.defaulted())
		found := s.finds(3)
		bad := 0
		for a, aim := range aims {
			c := &choice{s, aim, found[a], make([]*refined, len(found[a]))}
			best, nearest := min(want[a][1], want[a][2], want[a][3]), math.Inf(1)
			for size := 3; size > 0; size-- {
				if want[a][size] > best+fewerWithin {
					continue
				}
				r := c.bestOfSize(size, nearest+fewerWithin, nil)
				if r == nil {
					t.Log("none", aim, size, want[a], nearest)
					continue
				}
				nearest = min(nearest, r.best.deltaE)
				if r.best.deltaE > want[a][size]+.05 {
					t.Log(aim, "hue", aim.Hue(), "size", size, want[a], r.best.deltaE, r.best.lab)
					bad++
				}
			}
		}
		t.Log(bad)
	}
}
