// Where a line on the panel crosses the grid.

package grid

import (
	"cmp"
	"math"
	"slices"
)

// Crossing is a place where a polyline goes over a line of the grid into the next cell.
type Crossing struct {
	Upright bool  // the line is between two columns, else between two rows
	Line    int   // between column or row Line, counted from 0, and the next
	At      Point // on the line
	From    Cell  // that the polyline leaves
}

// Crossings returns where a polyline crosses the lines of the grid, in order along it.
// A closed one goes on from its last point to its first; the panel's edges are no lines.
//
// The polyline crosses a line where it gets from one side to the other: where it only
// touches a line there is no crossing, where it runs along one there is one where it
// leaves it, if it does so on the other side. At a corner of the grid the line between
// columns is crossed first. So each crossing leads from its cell into the one beside it,
// where the next begins, and a closed polyline crosses every line an even number of times.
// Points off the panel count to the outermost cells; those that are not finite to none.
func (g Grid) Crossings(points []Point, closed bool) []Crossing {
	points = slices.DeleteFunc(slices.Clone(points), func(p Point) bool { return !finite(p) })
	if len(points) == 0 {
		return nil
	}
	var found []passing
	var cell Cell
	x, y := func(p Point) Millimetres { return p.X }, func(p Point) Millimetres { return p.Y }
	for line := range g.Columns - 1 {
		beyond, passed := passings(points, closed, Millimetres(line+1)*g.Cell, x)
		if beyond {
			cell.Column++
		}
		found = appendLine(found, passed, true, line)
	}
	for line := range g.Rows - 1 {
		beyond, passed := passings(points, closed, Millimetres(line+1)*g.Cell, y)
		if beyond {
			cell.Row++
		}
		found = appendLine(found, passed, false, line)
	}
	slices.SortFunc(found, passing.compare)
	return g.follow(found, points, cell)
}

func finite(p Point) bool { return !math.IsNaN(float64(p.X-p.X)) && !math.IsNaN(float64(p.Y-p.Y)) }

// passing is where a polyline passes a line: between a point and the next.
type passing struct {
	along   float64 // index of the point and the share of the way to the next, in billionths
	segment int
	share   float64 // of the way
	upright bool
	line    int
	beyond  bool // to the side right of or below the line
}

// compare orders passings along a polyline. What is at one place, to a billionth of the
// way, is in one order on every machine: lines between columns first; of those of one
// direction as they are passed.
func (p passing) compare(q passing) int {
	line := cmp.Compare(p.line, q.line)
	if !p.beyond {
		line = -line
	}
	upright := 0
	if p.upright != q.upright {
		upright = 1
		if p.upright {
			upright = -1
		}
	}
	return cmp.Or(cmp.Compare(p.along, q.along), upright, cmp.Compare(p.segment, q.segment), line)
}

func appendLine(found, passed []passing, upright bool, line int) []passing {
	for _, p := range passed {
		p.upright, p.line = upright, line
		found = append(found, p)
	}
	return found
}

// passings returns where a polyline passes the line at a coordinate, and whether it
// begins beyond it. Points on the line are on the side where the polyline was before, at
// the start of an open one where it goes to.
func passings(points []Point, closed bool, line Millimetres, of func(Point) Millimetres) (beyond bool, passed []passing) {
	side := sideAtStart(points, closed, line, of)
	beyond = side > 0
	steps := len(points)
	if !closed {
		steps--
	}
	for i := range steps {
		a, b := of(points[i]), of(points[(i+1)%len(points)])
		next := cmp.Compare(b, line)
		if next == 0 || next == side {
			continue
		}
		share := float64((line - a) / (b - a)) // a may be on the line, b is not
		passed = append(passed, passing{along: math.Round(1e9 * (float64(i) + share)), segment: i, share: share, beyond: next > 0})
		side = next
	}
	return beyond, passed
}

// sideAtStart returns on which side a polyline begins: 1 beyond the line, -1 before it.
func sideAtStart(points []Point, closed bool, line Millimetres, of func(Point) Millimetres) int {
	for i := range points {
		if closed {
			i = (len(points) - i) % len(points) // backwards
		}
		if side := cmp.Compare(of(points[i]), line); side != 0 {
			return side
		}
	}
	return -1
}

// follow returns the crossings with the cells they lead out of, from the first cell on.
func (g Grid) follow(found []passing, points []Point, cell Cell) []Crossing {
	crossings := make([]Crossing, len(found))
	for i, p := range found {
		a, b := points[p.segment], points[(p.segment+1)%len(points)]
		at := Point{between(a.X, b.X, p.share), between(a.Y, b.Y, p.share)}
		step := -1
		if p.beyond {
			step = 1
		}
		crossings[i] = Crossing{Upright: p.upright, Line: p.line, From: cell}
		box := g.Box(cell)
		if p.upright {
			at = Point{Millimetres(p.line+1) * g.Cell, min(max(at.Y, box.Y), box.Y+box.Height)}
			cell.Column += step
		} else {
			at = Point{min(max(at.X, box.X), box.X+box.Width), Millimetres(p.line+1) * g.Cell}
			cell.Row += step
		}
		crossings[i].At = at
	}
	return crossings
}

// between returns what lies a share of the way from a to b, the same on every machine.
func between(a, b Millimetres, share float64) Millimetres {
	return Millimetres(float64(float64(a)*(1-share)) + float64(float64(b)*share))
}
