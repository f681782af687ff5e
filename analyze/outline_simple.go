package analyze

import (
	"image"
	"slices"
)

// simplerRing returns a ring with fewer places, none of its borders moved by more than
// tolerance. It is cut at its knots, and each piece is made simpler the same way in
// whichever direction it runs, since a neighbour runs it backwards.
func simplerRing(ring []stop, tolerance float64) []Place {
	first := slices.IndexFunc(ring, func(s stop) bool { return s.knot })
	if first < 0 {
		first = topmost(ring)
	}
	ring = slices.Concat(ring[first:], ring[:first+1])
	var result []Place
	for from := 0; from < len(ring)-1; {
		to := from + 1
		for to < len(ring)-1 && !ring[to].knot {
			to++
		}
		for _, p := range simplerPiece(ring[from:to+1], tolerance) {
			result = append(result, Place{float64(p.X), float64(p.Y)})
		}
		from = to
	}
	return result
}

// topmost returns the stop that comes first row by row: the same one in both directions.
func topmost(ring []stop) int {
	best := 0
	for i, s := range ring {
		if before(s.Point, ring[best].Point) {
			best = i
		}
	}
	return best
}

func before(p, q image.Point) bool { return p.Y < q.Y || p.Y == q.Y && p.X < q.X }

// simplerPiece returns the stops kept of a piece, but for its last, which the next
// piece begins with. One that closes on itself keeps an area.
func simplerPiece(piece []stop, tolerance float64) []stop {
	last := len(piece) - 1
	closed := piece[0] == piece[last]
	a, b := piece[0].Point, piece[last].Point
	if closed {
		a, b = piece[1].Point, piece[last-1].Point
	}
	backwards := before(b, a)
	if backwards {
		piece = slices.Clone(piece)
		slices.Reverse(piece)
	}
	kept := douglasPeucker(piece, tolerance)
	for closed && len(kept) < 4 { // less than a triangle
		tolerance /= 2
		kept = douglasPeucker(piece, tolerance)
	}
	if backwards {
		slices.Reverse(kept)
	}
	return kept[:len(kept)-1]
}

// douglasPeucker returns the ends of a line of stops, and of those between as few as
// keep all the others within tolerance of the straight lines between what is kept.
// Source: [Douglas1973] method 2, [Ramer1972]; the distance is to the straight line's
// nearest place, not to the line prolonged, so that a line that doubles back is held too.
func douglasPeucker(line []stop, tolerance float64) []stop {
	last := len(line) - 1
	at, far := 0, tolerance*tolerance
	for i := 1; i < last; i++ {
		if d := squareFrom(line[i].Point, line[0].Point, line[last].Point); d > far {
			at, far = i, d
		}
	}
	if at == 0 {
		return []stop{line[0], line[last]}
	}
	kept := douglasPeucker(line[:at+1], tolerance)
	return append(kept[:len(kept)-1], douglasPeucker(line[at:], tolerance)...)
}

// squareFrom returns the square of the distance of p from the straight line between a
// and b. Only whole numbers are added, so that no machine rounds the sums differently.
func squareFrom(p, a, b image.Point) float64 {
	along, off := b.Sub(a), p.Sub(a)
	length, foot := dot(along, along), dot(along, off)
	switch {
	case foot <= 0:
		return dot(off, off)
	case foot >= length:
		off = p.Sub(b)
		return dot(off, off)
	}
	across := dot(image.Pt(-along.Y, along.X), off)
	return across * across / length
}

func dot(a, b image.Point) float64 {
	return float64(int64(a.X)*int64(b.X) + int64(a.Y)*int64(b.Y))
}
