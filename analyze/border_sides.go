package analyze

import (
	"image"
	"math"

	"tonewright/analyze/colour"
)

// How the two sides of a border are looked at, as shares of the picture's short side.
// Ours: at 667 pixels the two pixels at the seam, which are of both sides in a photo or
// where a region was found a pixel off, are left out and the four after them taken, over
// six to each hand along the border: grain evens out, and a light that changes along the
// border is still followed.
const (
	seamShare  = 1.0 / 300
	alongShare = 0.01
)

// sides is what both sides of a border are like at one crack.
type sides struct {
	left, right colour.Lab
	value       float64 // of the left less that of the right, Munsell
	length      float64 // pixels of border that the crack stands for
}

// firm tells whether the edge is seen by its value there.
func (s sides) firm() bool { return coarse(math.Abs(s.value)) >= coarse(lostBelow) }

// compare returns the sides along a line, one a crack, evened out along it.
func (l line) compare(p *Picture, of []uint8) []sides {
	short := min(p.Width, p.Height)
	seam := max(1, int(math.Round(seamShare*float64(short))))
	left, right := newSums(len(l.cracks)), newSums(len(l.cracks))
	for i, c := range l.cracks {
		inward := leftOf[c.way].Sub(rightOf[c.way])
		left.put(i, sideOf(p, of, c.from.Add(leftOf[c.way]), inward, seam))
		right.put(i, sideOf(p, of, c.from.Add(rightOf[c.way]), image.Point{}.Sub(inward), seam))
	}
	along := max(1, int(math.Round(alongShare*float64(short))))
	all := make([]sides, len(l.cracks))
	for i := range all {
		from, to := l.window(i, along)
		s := sides{left: left.mean(from, to), right: right.mean(from, to)}
		s.value = colour.ValueOf(s.left.L) - colour.ValueOf(s.right.L)
		s.length = l.chord(from, to) / float64(to-from)
		all[i] = s
	}
	return all
}

// window returns the cracks up to along before and after crack i: from to to, which in
// a ring go past its start or end, and never over half of it.
func (l line) window(i, along int) (from, to int) {
	if l.ring {
		along = min(along, len(l.cracks)/4)
		return i - along, i + along + 1
	}
	return max(0, i-along), min(len(l.cracks), i+along+1)
}

// chord returns the straight distance between the ends of cracks from to to: a border
// goes along the pixels' sides in stairs, and stairs are longer than what they follow.
func (l line) chord(from, to int) float64 {
	n := len(l.cracks)
	first, last := l.cracks[(from+n)%n], l.cracks[(to-1+n)%n]
	d := last.from.Add(stride[last.way]).Sub(first.from)
	return math.Hypot(float64(d.X), float64(d.Y))
}

// sideOf returns the mean colour of the pixels from at inwards, as far as they are of
// the region there: without the first seam of them and twice as many again. Of a region
// that is no wider, the innermost.
func sideOf(p *Picture, of []uint8, at, inward image.Point, seam int) colour.Lab {
	region := of[at.Y*p.Width+at.X]
	var sum, last colour.Lab
	n := 0.0
	for step := 0; step < 3*seam; step, at = step+1, at.Add(inward) {
		if !at.In(image.Rect(0, 0, p.Width, p.Height)) || of[at.Y*p.Width+at.X] != region {
			break
		}
		last = p.At(at.Y*p.Width + at.X)
		if step >= seam {
			sum.L, sum.A, sum.B, n = sum.L+last.L, sum.A+last.A, sum.B+last.B, n+1
		}
	}
	if n == 0 {
		return last
	}
	return colour.Lab{L: sum.L / n, A: sum.A / n, B: sum.B / n}
}

// sums are the colours along a line, summed from its start: sums[i] is of those before i.
type sums []colour.Lab

func newSums(n int) sums { return make(sums, n+1) }

// put adds the colour at i, which is the next one.
func (s sums) put(i int, c colour.Lab) {
	s[i+1] = colour.Lab{L: s[i].L + c.L, A: s[i].A + c.A, B: s[i].B + c.B}
}

// mean returns the mean of those from to to, which may go past both ends of a ring.
func (s sums) mean(from, to int) colour.Lab {
	end, n := len(s)-1, float64(to-from)
	before, after := s.upTo(from, end), s.upTo(to, end)
	return colour.Lab{L: (after.L - before.L) / n, A: (after.A - before.A) / n, B: (after.B - before.B) / n}
}

// upTo returns the sum before i, which may be less than 0 or more than end, the number
// of colours.
func (s sums) upTo(i, end int) colour.Lab {
	turn := 0.0
	switch {
	case i < 0:
		i, turn = i+end, -1
	case i > end:
		i, turn = i-end, 1
	}
	return colour.Lab{L: s[i].L + turn*s[end].L, A: s[i].A + turn*s[end].A, B: s[i].B + turn*s[end].B}
}
