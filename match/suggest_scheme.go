// Whether a palette is in the scheme that is wished for.

package match

import "tonewright/analyze/colour"

// inScheme tells whether the paints of a palette stand to one another as is wished.
func (t *table) inScheme(set []int) bool {
	switch t.ask.Scheme {
	case Monochrome:
		return len(set) == 1
	case Analogous:
		return t.areNeighbours(set)
	case Quiet:
		return t.isTamed(set)
	}
	return true
}

// huesOf returns the hues of the paints that have one.
func (t *table) huesOf(set []int) (hues []float64) {
	for _, i := range set {
		if t.colour[i].Chroma >= hueless {
			hues = append(hues, t.colour[i].Hue)
		}
	}
	return hues
}

// areNeighbours tells whether a palette has two hues or three within a quarter of the
// circle, and none of them twice.
func (t *table) areNeighbours(set []int) bool {
	hues := t.huesOf(set)
	for i, a := range hues {
		for _, b := range hues[:i] {
			if colour.HuesApart(a, b) < oneHue {
				return false
			}
		}
	}
	return len(hues) > 1 && analogous(hues)
}

// isTamed tells whether a palette has no strong tube but beside its complement.
//
// What two complements gray, a ladder shows only under the lighter one's masstone; over
// it there is that one and white, warm with burnt umber whatever is beside it. Ours: of
// the library's 542 pairs of complements, 25 are quiet and look otherwise than the
// lighter alone for a region of values 1.5 to 4.5, one for 2.5 to 5.5, none for 4 to 7.
func (t *table) isTamed(set []int) bool {
	for _, i := range set {
		if t.colour[i].Chroma > strong && !complementary(t.huesOf(set)) {
			return false
		}
	}
	return true
}

// nearOwn tells whether the hue of a palette of neighbours and the region's own are
// neighbours: umber and lemon are none for blue-green leaves. The palette's is that of
// what it gives over the region, in the middle, or where that is near gray that of its
// paints. A region near gray has no hue to keep.
func (t *table) nearOwn(set []int, s *tally) bool {
	if t.own.Chroma < toned {
		return true
	}
	m := s.middle.Munsell()
	if m.Chroma < neutral {
		m.Hue = middleHue(t.huesOf(set))
	}
	return tenth(colour.HuesApart(t.own.Hue, m.Hue)) <= neighbours
}

// middleHue returns the hue in the middle of some that lie within half of the circle.
func middleHue(hues []float64) float64 {
	turn := 0.0
	for _, h := range hues[1:] {
		turn += turnTo(hues[0], h)
	}
	return hues[0] + turn/float64(len(hues))
}
