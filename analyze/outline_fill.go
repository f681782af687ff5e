package analyze

import "math"

// Place is a place on the picture in working pixels: pixel (x, y) reaches from (x, y)
// to (x+1, y+1), and its centre is at (x+½, y+½).
type Place struct{ X, Y float64 }

// filled tells of each pixel of a picture whether its centre is inside an odd number of
// rings. A ring closes from its last place to its first and may cross itself; what
// lies off the picture is cut off, and a ring with a place that is not finite is left out.
//
// A centre on a left or upper border is in, on a right or lower one out, so that
// neighbours with the same places along their border share no pixel and leave none out.
// The crossing of a border with a row of centres is computed from its upper end
// whichever way it runs, and no product is fused with a sum: it is one number for both
// neighbours and on every machine.
func filled(rings [][]Place, width, height int) []bool {
	in := make([]bool, width*height)
	if width == 0 {
		return in
	}
	for _, ring := range rings {
		if !finite(ring) {
			continue
		}
		for i, p := range ring {
			flip(in, width, height, p, ring[(i+1)%len(ring)])
		}
	}
	for row := in; len(row) > 0; row = row[width:] {
		inside := false
		for x, flips := range row[:width] {
			inside = inside != flips
			row[x] = inside
		}
	}
	return in
}

// flip notes one straight border: in each row of centres it crosses, everything from
// the first centre on or after the crossing changes sides.
func flip(in []bool, width, height int, from, to Place) {
	if from.Y > to.Y {
		from, to = to, from
	}
	first, last := upTo(from.Y, height), upTo(to.Y, height)
	for y := first; y < last; y++ {
		if x := upTo(crossing(from, to, float64(y)+0.5), width); x < width {
			in[y*width+x] = !in[y*width+x]
		}
	}
}

// upTo returns how many of n pixels have their centre before at.
func upTo(at float64, n int) int {
	return int(math.Ceil(min(max(at, 0), float64(n)) - 0.5))
}

// crossing returns where the line from one place down to another is at height y between
// them. Weighted ends, not a difference, so that no length is too large.
func crossing(from, to Place, y float64) float64 {
	if from.X == to.X {
		return from.X
	}
	t := (y - from.Y) / (to.Y - from.Y)
	return float64(from.X*(1-t)) + float64(to.X*t)
}

func finite(ring []Place) bool {
	for _, p := range ring {
		if math.IsNaN(p.X-p.X) || math.IsNaN(p.Y-p.Y) { // ∞ - ∞ is not a number either
			return false
		}
	}
	return true
}
