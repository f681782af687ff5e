// How the paints of a palette stand to one another on the hue circle.

package match

import (
	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Where hues stand to one another, in Munsell steps of the hundred round the circle.
//
// Neighbours lie within a quarter of the circle: common practice, no source. Opposites
// are farther apart than the arms of a triad, a third of the circle: nearer to
// opposite than red to blue is. Ours, and measured: burnt sienna and ultramarine, which
// go to gray together, are 35 apart, not 50. A wished hue is met within half a quarter
// to either side, so that what meets it are neighbours.
const (
	neighbours = 25
	opposites  = 100.0 / 3
	meets      = neighbours / 2.0
)

// hueless is the Munsell chroma that a paint's strongest tint must reach for its hue to
// count. Ours: the book's first chip; under it lie the blacks alone, while the umbers
// reach 2.3 and 2.9.
const hueless = 2

// How a paint's tints are sampled for the strongest. Ours: it is then within 0.1 chroma
// of the strongest of waySamples.
const (
	tintOdds    = 1e-3
	tintSamples = 23
)

// strongest returns a paint's tint with white of the highest chroma, the paint as it
// comes included: what a painter calls its colour. The masstones of transparent paints
// are nearly black, and their hue says little; ultramarine has chroma 10 thick and 16
// in its strongest tint.
func strongest(p *paint.Paint) (best colour.Munsell) {
	white := paint.TintingWhite(nil)
	for _, point := range sampled(p, &white, tintOdds, tintSamples, paint.Gloss) {
		if m := point.lab.Munsell(); tenth(m.Chroma) > tenth(best.Chroma) {
			best = m
		}
	}
	return best
}

// Family says how the paints of a palette stand to one another, whites aside: "one
// paint"; "no hue" where all are near neutral, such as black; "one hue" where all but
// one are; else, of those that have a hue, "analogous" where the hues lie within a
// quarter of the circle; "near complements" where each is near one hue or opposite to
// it; "mixed" where neither holds. The hue is that of a paint's strongest tint.
func Family(paints []paint.Paint) string {
	var hues []float64
	coloured := 0
	for i := range paints {
		if paints[i].White() {
			continue
		}
		coloured++
		if m := strongest(&paints[i]); m.Chroma >= hueless {
			hues = append(hues, m.Hue)
		}
	}
	switch {
	case coloured <= 1:
		return "one paint"
	case len(hues) == 0:
		return "no hue"
	case len(hues) == 1:
		return "one hue"
	case analogous(hues):
		return "analogous"
	case complementary(hues):
		return "near complements"
	}
	return "mixed"
}

// analogous tells whether all hues are neighbours.
func analogous(hues []float64) bool { return widest(hues) <= neighbours }

// widest returns how far the farthest two of some hues lie apart.
func widest(hues []float64) (most float64) {
	for i, a := range hues {
		for _, b := range hues[:i] {
			most = max(most, colour.HuesApart(a, b))
		}
	}
	return most
}

// complementary tells whether hues fall into two sets, each about one hue, of which each
// lies opposite to all of the other set. Red, yellow and blue do not: the first two are
// neighbours, but not one hue.
func complementary(hues []float64) bool {
	var near, far []float64
	for _, h := range hues {
		if colour.HuesApart(h, hues[0]) >= opposites {
			far = append(far, h)
		} else {
			near = append(near, h)
		}
	}
	if widest(near) > meets || widest(far) > meets {
		return false
	}
	for _, a := range near {
		for _, b := range far {
			if colour.HuesApart(a, b) < opposites {
				return false
			}
		}
	}
	return len(far) > 0
}
