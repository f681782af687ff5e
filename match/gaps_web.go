// The web: mixes of two and three paints in steady ratios, close enough to one
// another that what lies between them is nearly straight.

package match

import (
	"math"

	"tonewright/match/paint"
)

// The ratios of a web are 1:64 to 64:1, each double the one before, and none.
// Ours, in place of the parts that a knife can do: those step from 12:1 to a touch
// and leave holes that are no fault of the paints. With white, ultramarine, burnt
// sienna and a yellow they left 92 of 300 hues and values empty and others short by up
// to 4 chroma, all of a gap, and the volume a sixth short. Against webs of four times
// as many ratios, up to 512:1, the volumes of four boxes of 4, 4, 5 and 12 paints come
// out 1 % short, and the worst of their 1,200 hues and values, on a steep side of the
// rim, by 2.8 chroma; against mixes made in full see TestRimAgainstDense.
const (
	ratioBase  = 2
	ratioSteps = 6 // to either side of 1:1
	ratios     = 2*ratioSteps + 1
)

// web has the optics of each paint in the amounts that its mixes take.
type web struct {
	first  [][ratios + 2]optics // by paint, as the first of two: all of it to none
	second [][ratios + 2]optics // as the second: none to all
	third  [][ratios + 1]optics // beside one part of two others: none to 64
	alone  []point
	plain  []bool // by paint: white or black
}

func newWeb(paints []paint.Paint) *web {
	n := len(paints)
	w := &web{make([][ratios + 2]optics, n), make([][ratios + 2]optics, n), make([][ratios + 1]optics, n), make([]point, n), make([]bool, n)}
	for i := range paints {
		p := &paints[i]
		whole := opticsOf(p, 1)
		w.first[i][0], w.second[i][ratios+1] = whole, whole
		for k := range ratios {
			ratio := math.Pow(ratioBase, float64(k-ratioSteps))
			w.first[i][k+1] = opticsOf(p, 1/(1+ratio))
			w.second[i][k+1] = opticsOf(p, ratio/(1+ratio))
			w.third[i][k+1] = opticsOf(p, ratio)
		}
		w.alone[i] = glossGlow.screen(&whole, &optics{})
		w.plain[i] = p.White() || p.Black()
	}
	return w
}

// two holds the mixes of two paints.
func (w *web) two(r *rim, a, b int) {
	before := w.alone[a]
	for i := 1; i < ratios+2; i++ {
		mix := glossGlow.screen(&w.first[a][i], &w.second[b][i])
		r.line(before, mix)
		before = mix
	}
}

// three holds the mixes of three paints: the strings from every mix of the first two
// to the third, and what lies between each string and the next.
func (w *web) three(r *rim, a, b, c int) {
	var row [ratios + 2]point // the string before
	for i := range ratios + 2 {
		base := w.first[a][i].add(&w.second[b][i])
		var before, corner point // on this string and on that, the mix before
		for j := range ratios + 2 {
			mix := w.alone[c]
			if j <= ratios {
				mix = glossGlow.screen(&base, &w.third[c][j])
			}
			if i > 0 && j > 0 {
				r.sheet(corner, row[j], mix)
				r.sheet(corner, before, mix)
			}
			corner, before, row[j] = row[j], mix, mix
		}
	}
}

// rimOf returns the rim of the first n paints.
func (w *web) rimOf(n int) *rim {
	return w.sweep(n, func(a, b, c int) bool { return true })
}

// rimOfAll returns the rim of all paints, of three only with a white or a black among
// them. Ours: of the library, the others add 1.8 % of volume, and at no hue and value
// more than 0.9 chroma, for four times the work.
func (w *web) rimOfAll() *rim {
	return w.sweep(len(w.alone), func(a, b, c int) bool { return w.plain[a] || w.plain[b] || w.plain[c] })
}

// sweep returns the rim of the first n paints, of three only those wanted.
func (w *web) sweep(n int, wanted func(a, b, c int) bool) *rim {
	parts := make([]rim, n)
	inParallel(n, func(a int) {
		r := &parts[a]
		for b := a + 1; b < n; b++ {
			w.two(r, a, b)
			for c := b + 1; c < n; c++ {
				if wanted(a, b, c) {
					w.three(r, a, b, c)
				}
			}
		}
	})
	all := new(rim)
	for i := range parts {
		all.join(&parts[i])
	}
	return all
}

// widened returns the rim of the first n paints, known already, with one more: only
// the mixes with it are new.
func (w *web) widened(known *rim, n, more int) *rim {
	r := *known
	for a := range n {
		w.two(&r, a, more)
		for b := a + 1; b < n; b++ {
			w.three(&r, a, b, more)
		}
	}
	return &r
}
