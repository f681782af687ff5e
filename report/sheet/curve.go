// Contours drawn as curves through their places.

package sheet

import (
	"math"

	"tonewright/grid"
)

// Ours: a contour that turns by more than this at a place has a corner there, and is not
// rounded off: cos 60°.
const cornerCosine = 0.5

// curved returns a line through the same places as a smooth one, in steps of about a
// millimetre. Contours are kept as few places with straight lines between them, each
// within a quarter of a millimetre of what was found; drawn so, they look cut out by
// scissors. Each piece is a cubic that leaves and enters its places along the line's
// direction there, estimated from its neighbours (Catmull and Rom's spline, with the
// lengths of the pieces for its knots), but strays from the straight by no more than most:
// beside a short piece that turns, a long straight one would else swing out by 3 mm, off
// what was found and off the table of crossings.
// Source: [Catmull1974]; [Barry1988] for unequal knots.
func curved(places []grid.Point, closed bool, most grid.Millimetres) []grid.Point {
	n := len(places)
	if n < 3 {
		return places
	}
	last := n - 1
	if closed {
		last = n
	}
	line := []grid.Point{places[0]}
	for i := range last {
		p, q := places[i], places[(i+1)%n]
		long := p.To(q)
		a, b := direction(places, i, 1, closed), direction(places, (i+1)%n, -1, closed)
		a, b = steadied(a, b, towards(p, q), most/long)
		steps := min(24, int(math.Ceil(float64(long))))
		for k := 1; k <= steps; k++ {
			line = append(line, hermite(p, q, a, b, long, grid.Millimetres(k)/grid.Millimetres(steps)))
		}
	}
	return line
}

// steadied turns the directions at the ends of a piece towards the straight between them, so
// that the cubic strays from that by no more than most of its length: each end brings up to
// 4/27 of what its direction is off.
func steadied(a, b, straight grid.Point, most grid.Millimetres) (c, d grid.Point) {
	off := func(p grid.Point) float64 { return math.Abs(float64(p.X*straight.Y - p.Y*straight.X)) }
	strays := grid.Millimetres(4. / 27 * (off(a) + off(b)))
	if strays <= most {
		return a, b
	}
	part := most / strays
	turned := func(p grid.Point) grid.Point {
		return grid.Point{X: straight.X + part*(p.X-straight.X), Y: straight.Y + part*(p.Y-straight.Y)}
	}
	return turned(a), turned(b)
}

// direction returns the way the line runs at place i, as a change for each millimetre;
// at an end or a corner that of the piece after it (side 1) or before it (-1).
func direction(places []grid.Point, i, side int, closed bool) grid.Point {
	n := len(places)
	before, here, after := places[(i+n-1)%n], places[i], places[(i+1)%n]
	in, out := towards(before, here), towards(here, after)
	end := !closed && (i == 0 || i == n-1)
	if end || in.X*out.X+in.Y*out.Y < cornerCosine {
		if side > 0 {
			return out
		}
		return in
	}
	u, v := before.To(here), here.To(after)
	return grid.Point{X: (in.X*v + out.X*u) / (u + v), Y: (in.Y*v + out.Y*u) / (u + v)}
}

// towards returns the way from a to b for each millimetre, nothing where they are one.
func towards(a, b grid.Point) grid.Point {
	long := a.To(b)
	if long == 0 {
		return grid.Point{}
	}
	return grid.Point{X: (b.X - a.X) / long, Y: (b.Y - a.Y) / long}
}

// hermite returns the place at part t of the cubic from p to q that is long and runs by
// a at p and by b at q.
func hermite(p, q, a, b grid.Point, long, t grid.Millimetres) grid.Point {
	s := 1 - t
	h0, h1, k0, k1 := s*s*(1+2*t), t*t*(1+2*s), t*s*s*long, -t*t*s*long
	return grid.Point{X: h0*p.X + h1*q.X + k0*a.X + k1*b.X, Y: h0*p.Y + h1*q.Y + k0*a.Y + k1*b.Y}
}
