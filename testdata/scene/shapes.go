// Signed distances of turned and swept shapes.

package main

import "math"

// point is a place in the plane of a profile or a curve, in centimetres.
type point struct{ x, y float64 }

// field is a quantity known on a square lattice in a plane.
type field struct {
	low    point
	cell   float64
	nx, ny int
	v      []float32
}

// newField fills the lattice from low to high with f.
func newField(low, high point, cell float64, f func(p point) float64) *field {
	g := &field{low: low, cell: cell}
	g.nx, g.ny = int((high.x-low.x)/cell)+3, int((high.y-low.y)/cell)+3
	for j := range g.ny {
		for i := range g.nx {
			g.v = append(g.v, float32(f(point{low.x + float64(i)*cell, low.y + float64(j)*cell})))
		}
	}
	return g
}

// at returns the smooth value near (x, y): a quadratic B-spline, so that normals taken
// from it have no creases at the lattice lines. Outside the lattice the edge value holds.
func (g *field) at(x, y float64) float64 {
	i, wx := spline((x-g.low.x)/g.cell, g.nx)
	j, wy := spline((y-g.low.y)/g.cell, g.ny)
	var sum float64
	for r := range 3 {
		row := g.v[(j+r)*g.nx+i:]
		sum += wy[r] * (wx[0]*float64(row[0]) + wx[1]*float64(row[1]) + wx[2]*float64(row[2]))
	}
	return sum
}

// spline returns the first of the three lattice lines around u and their weights.
func spline(u float64, n int) (int, [3]float64) {
	u = min(max(u, 1), float64(n-2))
	i := int(u + 0.5)
	t := u - float64(i)
	return i - 1, [3]float64{(0.5 - t) * (0.5 - t) / 2, 0.75 - t*t, (0.5 + t) * (0.5 + t) / 2}
}

// curve draws a smooth line through the points (Catmull and Rom's spline, 16 steps a span);
// a point given twice is a corner.
func curve(through []point) []point {
	const steps = 16
	last := len(through) - 1
	line := []point{through[0]}
	for i := range last {
		a, b := through[max(i-1, 0)], through[i]
		c, d := through[i+1], through[min(i+2, last)]
		if b == c {
			continue
		}
		for k := 1; k <= steps; k++ {
			t := float64(k) / steps
			line = append(line, point{through4(a.x, b.x, c.x, d.x, t), through4(a.y, b.y, c.y, d.y, t)})
		}
	}
	return line
}

func through4(a, b, c, d, t float64) float64 {
	return b + t/2*(c-a+t*(2*a-5*b+4*c-d+t*(3*(b-c)+d-a)))
}

// nearest returns the squared distance from p to the line and where on it, as a share of its points.
func nearest(line []point, p point) (square, place float64) {
	square = math.Inf(1)
	for i := range len(line) - 1 {
		a, b := line[i], line[i+1]
		dx, dy := b.x-a.x, b.y-a.y
		t := min(max(((p.x-a.x)*dx+(p.y-a.y)*dy)/(dx*dx+dy*dy), 0), 1)
		ex, ey := p.x-a.x-t*dx, p.y-a.y-t*dy
		if e := ex*ex + ey*ey; e < square {
			square, place = e, (float64(i)+t)/float64(len(line)-1)
		}
	}
	return square, place
}

// lathe is a turned body: a profile of (radius, height) spun about the y axis.
type lathe struct {
	line    []point
	outside *field // distance to the profile, negative inside
}

// newLathe spins the profile, which starts and ends on the axis.
func newLathe(profile ...point) *lathe {
	const cell, margin = 0.08, 1.2
	l := &lathe{line: curve(profile)}
	var high point
	low := point{-0.3, math.Inf(1)}
	for _, p := range l.line {
		high = point{max(high.x, p.x), max(high.y, p.y)}
		low.y = min(low.y, p.y)
	}
	l.outside = newField(point{low.x, low.y - margin}, point{high.x + margin, high.y + margin}, cell,
		func(p point) float64 {
			p.x = math.Abs(p.x)
			square, _ := nearest(l.line, p)
			if within(l.line, p) {
				return -math.Sqrt(square)
			}
			return math.Sqrt(square)
		})
	return l
}

// within tells whether p lies inside the closed line: an odd number of edges to its right.
func within(line []point, p point) bool {
	in := false
	for i, a := range line {
		b := line[(i+1)%len(line)]
		if (a.y > p.y) != (b.y > p.y) && p.x < a.x+(p.y-a.y)/(b.y-a.y)*(b.x-a.x) {
			in = !in
		}
	}
	return in
}

func (l *lathe) distance(p vec) float64 { return l.outside.at(math.Hypot(p.x, p.z), p.y) }

// rest returns how high the lathe's origin floats when its axis points along up and it touches y = 0.
func (l *lathe) rest(axis vec) float64 {
	lowest := math.Inf(1)
	for _, p := range l.line {
		lowest = min(lowest, axis.y*p.y-p.x*math.Sqrt(1-axis.y*axis.y))
	}
	return -lowest
}

// sweep is a tube along a curve in the xy plane, its radius changing from end to end.
type sweep struct{ square, radius, place *field }

// newSweep draws the tube; radius is asked for shares 0 to 1 of the way.
func newSweep(radius func(share float64) float64, through ...point) *sweep {
	const cell, margin = 0.12, 3
	line := curve(through)
	low, high := line[0], line[0]
	for _, p := range line {
		low = point{min(low.x, p.x), min(low.y, p.y)}
		high = point{max(high.x, p.x), max(high.y, p.y)}
	}
	low, high = point{low.x - margin, low.y - margin}, point{high.x + margin, high.y + margin}
	of := func(f func(square, place float64) float64) *field {
		return newField(low, high, cell, func(p point) float64 { return f(nearest(line, p)) })
	}
	return &sweep{
		square: of(func(square, _ float64) float64 { return square }),
		radius: of(func(_, place float64) float64 { return radius(place) }),
		place:  of(func(_, place float64) float64 { return place }),
	}
}

// distance to the tube when it is flattened: flat times as thick in the plane as across it.
func (s *sweep) distance(p vec, flat float64) float64 {
	away := max(s.square.at(p.x, p.y), 0)
	r := s.radius.at(p.x, p.y)
	return (math.Sqrt(away/(flat*flat)+p.z*p.z) - r) * min(flat, 1)
}

// joined blends two distances with a fillet about as wide as k.
func joined(a, b, k float64) float64 {
	h := max(k-math.Abs(a-b), 0) / k
	return min(a, b) - h*h*k/4
}
