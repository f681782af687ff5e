// The colour study: the painting before it is painted.

package plan

import (
	"cmp"
	"math"
	"runtime"
	"slices"
	"sync"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// A study shows each pixel between the piles of its region, by its value: a painter
// blends two neighbouring piles where a thing turns from light to dark. A place
// between the values of its own pile and of the next lighter or darker one gets the
// mix of both that has its value, up to half way, where the other pile takes over.
// Past the last pile the palette's lightest paint, or a darker one, is blended in.

// levels is how finely the study knows lightness: a quarter of L*, under what is seen.
const levels = 401

func levelOf(l float32) int { return int(min(100, max(0, l))*((levels-1)/100) + 0.5) }

func lightnessOf(level int) float64 { return float64(level) * 100 / (levels - 1) }

// look is how one level of lightness of one colour is painted.
type look struct {
	lab [3]float32
	rgb [3]uint8
}

// pile is a mix as it lies on the palette.
type pile struct {
	k, s  colour.Spectrum
	aim   float64    // L* it is for
	photo colour.Lab // the colour it stands for; of a region painted for its values, their grays
	lab   colour.Lab // as mixed, thick
	end   bool       // a paint that is blended in past the last pile
}

// studyOf paints the picture: thick, and, where a ground is given, as one coat over it.
func studyOf(p *analyze.Picture, colourOf []uint16, regions []mixed, clusters [][]analyze.Cluster, m *mixer) (thick, coat *analyze.Picture) {
	looks, coats := make([][][levels]look, len(regions)), make([][][levels]look, len(regions))
	inBands(len(regions), func(from, to int) {
		for r := from; r < to; r++ {
			looks[r], coats[r] = looksOf(regions[r], clusters[r], m, m.wishes[r].Shift)
		}
	})
	thick = repaint(p, colourOf, slices.Concat(looks...))
	if m.mixing.Ground != nil {
		coat = repaint(p, colourOf, slices.Concat(coats...))
	}
	return thick, coat
}

// repaint gives every pixel the look of its colour at its lightness.
func repaint(p *analyze.Picture, colourOf []uint16, looks [][levels]look) *analyze.Picture {
	q := &analyze.Picture{Width: p.Width, Height: p.Height, Lab: make([]float32, len(p.Lab)), RGB: make([]uint8, len(p.RGB))}
	inBands(len(colourOf), func(from, to int) {
		for i := from; i < to; i++ {
			l := &looks[colourOf[i]][levelOf(p.Lab[3*i])]
			copy(q.Lab[3*i:3*i+3], l.lab[:])
			copy(q.RGB[3*i:3*i+3], l.rgb[:])
		}
	})
	return q
}

// inBands does work on 0 to n, cut into one band for each processor.
func inBands(n int, work func(from, to int)) {
	var wait sync.WaitGroup
	bands := runtime.GOMAXPROCS(0)
	for b := range bands {
		wait.Go(func() { work(n*b/bands, n*(b+1)/bands) })
	}
	wait.Wait()
}

// looksOf returns the looks of a region's colours by the lightness as photographed,
// thick and, where a ground is asked about, as one coat.
func looksOf(x mixed, clusters []analyze.Cluster, m *mixer, shift float64) (thick, coat [][levels]look) {
	piles := pilesOf(x, clusters)
	ends := endsOf(x.paints, m.mixing.Finish)
	thick = make([][levels]look, len(piles))
	if m.mixing.Ground != nil {
		coat = make([][levels]look, len(piles))
	}
	for j := range piles {
		lighter, darker := neighbours(piles, j)
		lighter, darker = cmp.Or(lighter, lightened(&piles[j], ends)), cmp.Or(darker, darkened(&piles[j], ends))
		up, down := blend(&piles[j], lighter, m), blend(&piles[j], darker, m)
		for level := range levels {
			l := m.key.shifted(m.key.aim(colour.Lab{L: lightnessOf(level)}).L, shift)
			row, next := up, lighter
			if l < piles[j].aim {
				row, next = down, darker
			}
			at := row.at(wanted(l, &piles[j], next))
			thick[j][level] = lookOf(at.thick)
			if coat != nil {
				coat[j][level] = lookOf(at.coat)
			}
		}
	}
	return thick, coat
}

func pilesOf(x mixed, clusters []analyze.Cluster) []pile {
	piles := make([]pile, len(x.recipes))
	for j, recipes := range x.recipes {
		of, parts := make([]paint.Paint, len(recipes[0].Parts)), make([]float64, len(recipes[0].Parts))
		for i, part := range recipes[0].Parts {
			of[i], parts[i] = x.paints[part.Paint], part.Parts
		}
		k, s := paint.Mix(of, parts)
		photo := clusters[j].Lab
		if x.palette.Aim == AimValue {
			photo = colour.Lab{L: photo.L}
		}
		piles[j] = pile{k: k, s: s, aim: x.aims[j].L, photo: photo, lab: recipes[0].Lab}
	}
	return piles
}

// fewPaints is how many paints a palette may have for its pairs to be blended in too.
// Ours: as many as a painting file takes; a whole box has darks enough.
const fewPaints = 6

// endsOf returns what can be blended in past the last piles, the lightest first: a
// palette's paints and, of few, pairs of them in equal parts.
func endsOf(paints []paint.Paint, f paint.Finish) []pile {
	var ends []pile
	add := func(k, s colour.Spectrum) {
		r := paint.Thick(&k, &s, f)
		ends = append(ends, pile{k: k, s: s, aim: r.Lab().L, lab: r.Lab(), end: true})
	}
	for i, p := range paints {
		add(p.K, p.S)
		for _, q := range paints[:i] {
			if len(paints) <= fewPaints {
				add(paint.Mix([]paint.Paint{p, q}, []float64{1, 1}))
			}
		}
	}
	slices.SortStableFunc(ends, func(a, b pile) int { return cmp.Compare(b.lab.L, a.lab.L) })
	return ends
}

// lightened returns the palette's lightest paint where it is lighter than the pile by
// more than a trace, else nil.
func lightened(own *pile, ends []pile) *pile {
	if ends[0].past(own, 1) {
		return &ends[0]
	}
	return nil
}

// darkened returns what is darker than the pile and turns its colour least, nil where
// there is nothing: ultramarine is darker than umber and turns a shadow blue, umber turns
// it brown, and both together do not.
func darkened(own *pile, ends []pile) (least *pile) {
	turn := math.Inf(1)
	for i := range ends {
		d := math.Hypot(ends[i].lab.A-own.lab.A, ends[i].lab.B-own.lab.B)
		if ends[i].past(own, -1) && d < turn {
			least, turn = &ends[i], d
		}
	}
	return least
}

// past tells whether a paint lies beyond a pile, up (1) or down (-1), by more than a trace.
func (p *pile) past(own *pile, way float64) bool {
	return way*(p.lab.L-own.lab.L) >= 1 && way*(p.aim-own.aim) >= 1
}

// neighbours returns the piles that a pile is blended with towards light and dark: of
// those that differ from it by value rather than by colour the nearest; nil where there
// is none, since a thing of another colour is no shade of it.
func neighbours(piles []pile, j int) (lighter, darker *pile) {
	nearUp, nearDown := math.Inf(1), math.Inf(1)
	for i := range piles {
		step := piles[i].photo.L - piles[j].photo.L
		across := math.Hypot(piles[i].photo.A-piles[j].photo.A, piles[i].photo.B-piles[j].photo.B)
		if across > math.Abs(step)+slack || (piles[i].lab.L-piles[j].lab.L)*step <= 0 {
			continue
		}
		switch d := math.Abs(step) + 2*across; {
		case step > 0 && d < nearUp:
			lighter, nearUp = &piles[i], d
		case step < 0 && d < nearDown:
			darker, nearDown = &piles[i], d
		}
	}
	return lighter, darker
}

// slack is how much more than their lightness the colours of two piles may differ, in
// L*a*b* units, to count as shades of one. Ours: with 4 the demo's copper blends into
// its highlights, and the brown wall in shadow beside it, 18 across and 10 down, does
// not turn copper.
const slack = 4

// wanted returns the L* to mix for a place of lightness l: as far from the pile's own
// towards the next one's as l lies between their aims, up to half way, or up to the end
// of the palette. Two piles at the end of what the box reaches may have one aim: nothing
// lies between them.
func wanted(l float64, own, next *pile) float64 {
	if next == nil || next.aim == own.aim {
		return own.lab.L
	}
	far := 0.5
	if next.end {
		far = 1
	}
	t := min(far, max(0, (l-own.aim)/(next.aim-own.aim)))
	return own.lab.L + t*(next.lab.L-own.lab.L)
}

// blended is a row of mixes of two piles, from the first alone to the second alone.
type blended []struct{ thick, coat colour.Lab }

// blendSteps is how many mixes of two piles are made. Ours: between two of them the
// study is off by 0.3 CIEDE2000 at worst, over some 600 pairs of the library's paints
// whose mixes rise in lightness from one to the other.
const blendSteps = 33

// leastBlend is the smallest share of a pile in a blend but for none at all.
const leastBlend = 1.0 / 1024

// blend mixes two piles at even steps of the logarithm of second to first.
func blend(a, b *pile, m *mixer) (row blended) {
	shares := []float64{0}
	if b != nil {
		for i := range blendSteps - 2 {
			odds := math.Log(leastBlend) * (1 - 2*float64(i)/(blendSteps-3))
			shares = append(shares, 1/(1+math.Exp(-odds)))
		}
		shares = append(shares, 1)
	}
	row = make(blended, len(shares))
	for i, share := range shares {
		k, s := a.k, a.s
		if share > 0 {
			for band := range k {
				k[band] += share * (b.k[band] - k[band])
				s[band] += share * (b.s[band] - s[band])
			}
		}
		r := paint.Thick(&k, &s, m.mixing.Finish)
		row[i].thick = r.Lab()
		if m.mixing.Ground != nil {
			r = paint.Film(&k, &s, m.mixing.Coat*paint.Coat, m.mixing.Ground, m.mixing.Finish)
			row[i].coat = r.Lab()
		}
	}
	return row
}

// at returns the mix of that lightness, between the two made that are next to it.
func (row blended) at(l float64) (c struct{ thick, coat colour.Lab }) {
	for i := 1; i < len(row); i++ {
		a, b := row[i-1], row[i]
		from, to := a.thick.L, b.thick.L
		if (l-from)*(l-to) > 0 || from == to {
			continue
		}
		t := (l - from) / (to - from)
		c.thick, c.coat = along(a.thick, b.thick, t), along(a.coat, b.coat, t)
		return c
	}
	return row[0]
}

func along(a, b colour.Lab, t float64) colour.Lab {
	return colour.Lab{L: a.L + t*(b.L-a.L), A: a.A + t*(b.A-a.A), B: a.B + t*(b.B-a.B)}
}

func lookOf(c colour.Lab) look {
	r, g, b := c.SRGB()
	level := func(v float64) uint8 { return uint8(min(1, max(0, v))*255 + 0.5) }
	return look{[3]float32{float32(c.L), float32(c.A), float32(c.B)}, [3]uint8{level(r), level(g), level(b)}}
}
