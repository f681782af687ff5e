package match

import (
	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Recipes: first simple version, replaced shortly.
func Recipes(paints []paint.Paint, aims []colour.Lab, opt Options) [][]Recipe {
	opt = opt.defaulted()
	l := levels{level(opt.MaxParts)}
	type mix struct {
		set [3]int
		m   measure
		n   int
		lab colour.Lab
	}
	var mixes []mix
	add := func(set [3]int, n int, ms []measure) {
		for _, m := range ms {
			ps, sh := []paint.Paint{}, []float64{}
			for i := range n {
				ps, sh = append(ps, paints[set[i]]), append(sh, l.parts(m[i]))
			}
			k, s := paint.Mix(ps, sh)
			r := paint.Thick(&k, &s, paint.Gloss)
			mixes = append(mixes, mix{set, m, n, r.Lab()})
		}
	}
	for i := range paints {
		add([3]int{i}, 1, single)
		for j := i + 1; j < len(paints); j++ {
			st := [3]bool{paints[i].Facts.Strong(), paints[j].Facts.Strong()}
			add([3]int{i, j}, 2, l.pairs([2]bool{st[0], st[1]}))
			for k := j + 1; k < len(paints); k++ {
				st[2] = paints[k].Facts.Strong()
				add([3]int{i, j, k}, 3, l.triples(st))
			}
		}
	}
	out := make([][]Recipe, len(aims))
	for a, aim := range aims {
		var best [4]float64
		var at [4]int
		for n := range best {
			best[n] = 1e9
		}
		for i, x := range mixes {
			if d := colour.DeltaE00(aim, x.lab); d < best[x.n] {
				best[x.n], at[x.n] = d, i
			}
		}
		least := min(best[1], best[2], best[3])
		for n := 1; n <= 3; n++ {
			if best[n] <= least+1 {
				x := mixes[at[n]]
				r := Recipe{Lab: x.lab, DeltaE: best[n], ValueShift: colour.ValueOf(x.lab.L) - colour.ValueOf(aim.L), Basis: "typical"}
				for i := range n {
					r.Parts = append(r.Parts, Part{x.set[i], l.parts(x.m[i]), l.isTouch(x.m[i])})
				}
				out[a] = append(out[a], r)
				break
			}
		}
	}
	return out
}

// Reach returns the L* of the darkest and the lightest mix.
func Reach(paints []paint.Paint) (lo, hi float64) {
	lo, hi = 100, 0
	for _, p := range paints {
		l := p.Masstone().L
		lo, hi = min(lo, l), max(hi, l)
	}
	return lo, hi
}
