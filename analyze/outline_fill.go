package analyze

import (
	"math"
	"slices"
)

// Place is a place on the picture in working pixels: pixel (x, y) reaches from (x, y)
// to (x+1, y+1), and its centre is at (x+½, y+½).
type Place struct{ X, Y float64 }

// dash is the pixels [from, to) of row y.
type dash struct{ y, from, to int }

// inside returns the pixels of a picture whose centres are inside an odd number of
// rings, row by row. A ring closes from its last place to its first and may cross itself;
// what lies off the picture is cut off, and a ring with a place that is not finite is
// left out.
//
// A centre on a left or upper border is in, on a right or lower one out, so that
// neighbours with the same places along their border share no pixel and leave none out.
// The crossing of a border with a row of centres is computed from its upper end
// whichever way it runs, and no product is fused with a sum: it is one number for both
// neighbours and on every machine.
func inside(rings [][]Place, width, height int) []dash {
	var crossed []int64 // row << 32 + the first pixel on the right of a crossing
	for _, ring := range rings {
		if !finite(ring) {
			continue
		}
		for i, p := range ring {
			crossed = appendCrossed(crossed, p, ring[(i+1)%len(ring)], width, height)
		}
	}
	slices.Sort(crossed)
	var in []dash
	for ; len(crossed) > 1; crossed = crossed[2:] { // a closed ring crosses every row an even number of times
		if crossed[0] < crossed[1] {
			in = append(in, dash{int(crossed[0] >> 32), int(int32(crossed[0])), int(int32(crossed[1]))})
		}
	}
	return in
}

// appendCrossed adds what one straight border crosses, row by row of centres.
func appendCrossed(crossed []int64, from, to Place, width, height int) []int64 {
	if from.Y > to.Y {
		from, to = to, from
	}
	last := upTo(to.Y, height)
	for y := upTo(from.Y, height); y < last; y++ {
		crossed = append(crossed, int64(y)<<32+int64(upTo(crossing(from, to, float64(y)+0.5), width)))
	}
	return crossed
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
