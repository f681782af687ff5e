package analyze

import (
	"math"

	"tonewright/analyze/colour"
)

// twoTone is a sample taken apart into two colours.
type twoTone struct {
	darker float64 // share of the blocks in the darker one, 0-1
	apart  float64 // CIEDE2000 between the two
	clean  float64 // distance of the two over the scatter within them
	whole  float64 // share of neighbouring blocks that are in one part: streaks mix them
}

// twoToneOf takes blocks apart by two means, from the two that differ most. The
// distance is straight in L*a*b*, that of [CIE15] 8.2.1.
// Source: [Lloyd1982]; clean is the D of [Ashman1994].
func twoToneOf(blocks []block) twoTone {
	labs := make([]colour.Lab, len(blocks))
	for i, b := range blocks {
		labs[i] = b.light.lab()
	}
	one, two := farthest(labs)
	var of []bool
	for range 20 { // settles in five or so
		of = make([]bool, len(labs))
		for i, c := range labs {
			of[i] = gap(c, two) < gap(c, one)-1e-9 // a tie goes to the first
		}
		one, two = meanOf(labs, of, false, one), meanOf(labs, of, true, two)
	}
	return twoTone{darker: darker(of, one, two), apart: colour.DeltaE00(one, two), clean: ashman(labs, of, one, two), whole: together(blocks, of)}
}

// plain tells whether each part is in one piece or nearly so and neither is a mere spot.
func (t twoTone) plain() bool {
	return t.whole >= partsWhole && min(t.darker, 1-t.darker) >= partsShare
}

// together is the share of neighbouring blocks that are on the same side.
func together(blocks []block, of []bool) float64 {
	same, pairs := 0.0, 0.0
	for i, a := range blocks {
		for j, b := range blocks[i+1:] {
			if across, down := b.col-a.col, b.row-a.row; across*across+down*down != 1 {
				continue
			}
			pairs++
			if of[i] == of[i+1+j] {
				same++
			}
		}
	}
	return same / max(1, pairs)
}

// gap is the squared distance of two colours.
func gap(a, b colour.Lab) float64 {
	l, m, n := a.L-b.L, a.A-b.A, a.B-b.B
	return l*l + m*m + n*n
}

// farthest are the two colours that differ most; of equals the first.
func farthest(labs []colour.Lab) (one, two colour.Lab) {
	most := -1.0
	for i, a := range labs {
		for _, b := range labs[i:] {
			if g := gap(a, b); g > most+1e-9 {
				most, one, two = g, a, b
			}
		}
	}
	return one, two
}

// meanOf is the mean of the colours on one side, or as before if there are none.
func meanOf(labs []colour.Lab, of []bool, side bool, before colour.Lab) colour.Lab {
	var sum colour.Lab
	n := 0.0
	for i, c := range labs {
		if of[i] == side {
			sum.L, sum.A, sum.B, n = sum.L+c.L, sum.A+c.A, sum.B+c.B, n+1
		}
	}
	if n == 0 {
		return before
	}
	return colour.Lab{L: sum.L / n, A: sum.A / n, B: sum.B / n}
}

// darker is the share of the darker of two sides.
func darker(of []bool, one, two colour.Lab) float64 {
	n := 0
	for _, second := range of {
		if second == (two.L < one.L-1e-9) {
			n++
		}
	}
	return float64(n) / float64(max(1, len(of)))
}

// ashman is the distance of two means over the scatter along the line between them.
func ashman(labs []colour.Lab, of []bool, one, two colour.Lab) float64 {
	length := math.Sqrt(gap(one, two))
	if length == 0 {
		return 0
	}
	var square, n [2]float64
	for i, c := range labs {
		mean, side := one, 0
		if of[i] {
			mean, side = two, 1
		}
		off := ((c.L-mean.L)*(two.L-one.L) + (c.A-mean.A)*(two.A-one.A) + (c.B-mean.B)*(two.B-one.B)) / length
		square[side] += off * off
		n[side]++
	}
	scatter := math.Sqrt(square[0]/max(1, n[0]) + square[1]/max(1, n[1]))
	return math.Sqrt2 * length / max(scatter, 1e-6)
}
