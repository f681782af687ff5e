package analyze

import "image"

// A crack is the side between two pixels of different regions. Borders are walked crack
// by crack from corner to corner, the region on the right hand, always turning as far to
// the right as there is a crack: pixels that touch by a corner only are thus not taken
// for joined. This is crack following, the simplest way to know a border exactly.
// Source: [Rosenfeld1982], chapter 11.

// The four ways along a crack. Turning right adds one.
var ways = [4]image.Point{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}

// ahead holds the pixels ahead of a corner on the right and the left hand, from the
// corner, by way: pixel (x, y) lies right and below of corner (x, y).
var ahead = [4][2]image.Point{{{0, 0}, {0, -1}}, {{-1, 0}, {0, 0}}, {{-1, -1}, {-1, 0}}, {{0, -1}, {-1, -1}}}

// tracer walks the borders of a raster of regions.
type tracer struct {
	of            []uint8
	width, height int
	seen          []bool // of a pixel: the crack above it was walked
}

// nowhere is the region of what lies off the picture.
const nowhere = -1

// at returns the region of a pixel.
func (t *tracer) at(x, y int) int {
	if x < 0 || y < 0 || x >= t.width || y >= t.height {
		return nowhere
	}
	return int(t.of[y*t.width+x])
}

// stop is a corner of a ring where the ring turns, or a knot where it may not.
type stop struct {
	image.Point
	knot bool // three or more regions meet, or two by their corners, or the picture ends
}

// trace walks the ring that has the crack above pixel start, whose region is on the
// inside; every ring has such a crack. The ring is at least a pixel: four stops.
func (t *tracer) trace(start image.Point) []stop {
	region := t.at(start.X, start.Y)
	var ring []stop
	p, way := start, 0
	for {
		if way == 0 {
			t.seen[p.Y*t.width+p.X] = true
		}
		p = p.Add(ways[way])
		turned := t.turn(p, way, region)
		if knot := t.knot(p); knot || turned != way {
			ring = append(ring, stop{p, knot})
		}
		if way = turned; p == start && way == 0 {
			return ring
		}
	}
}

// turn returns the way a ring goes on from corner p.
func (t *tracer) turn(p image.Point, way, region int) int {
	right, left := p.Add(ahead[way][0]), p.Add(ahead[way][1])
	switch {
	case t.at(right.X, right.Y) != region:
		return (way + 1) % 4
	case t.at(left.X, left.Y) != region:
		return way
	}
	return (way + 3) % 4
}

// knot tells whether rings come together at a corner, or it is one of the picture's.
// Between knots a border parts the same two regions all along.
func (t *tracer) knot(p image.Point) bool {
	if (p.X == 0 || p.X == t.width) && (p.Y == 0 || p.Y == t.height) {
		return true
	}
	a, b, c, d := t.at(p.X-1, p.Y-1), t.at(p.X, p.Y-1), t.at(p.X, p.Y), t.at(p.X-1, p.Y)
	cracks := 0
	for _, unlike := range [4]bool{a != b, b != c, c != d, d != a} {
		if unlike {
			cracks++
		}
	}
	return cracks > 2
}
