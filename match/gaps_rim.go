// The rim of a box: the strongest mix of every hue at every value.

package match

import "tonewright/analyze/colour"

// A rim is taken on planes of one value each, half a Munsell value apart, and so many
// directions in a*b*, about 4° each. Ours: value 2 to 9, since near black and white
// no paint has chroma to speak of and Munsell's table ends at 1 and 9.
const (
	lowestPlane = 2
	planeStep   = 0.5
	rimPlanes   = 15 // 2, 2.5, … 9
	directions  = 96
)

// corner is the strongest mix of one direction on one plane, and its chroma squared;
// 0 where there is none.
type corner struct {
	square float32
	at     point
}

// rim holds corners by plane and direction.
type rim [rimPlanes][directions]corner

// planeL has the L* of each plane.
var planeL = makePlanes()

func makePlanes() (l [rimPlanes]float32) {
	for i := range l {
		l[i] = float32(colour.LOf(lowestPlane + planeStep*float64(i)))
	}
	return l
}

// planesFrom has, for each quarter of an L*, the first plane that may lie above it.
var planesFrom = makePlanesFrom()

func makePlanesFrom() (first [4*100 + 1]int) {
	for i := range first {
		for first[i] < rimPlanes && planeL[first[i]] < float32(i)/4 {
			first[i]++
		}
	}
	return first
}

// firstPlane returns the lowest plane at or above a mix; rimPlanes where there is none.
func firstPlane(p point) int {
	i := planesFrom[min(max(int(4*p.l), 0), len(planesFrom)-1)]
	for i < rimPlanes && planeL[i] < p.l {
		i++
	}
	return i
}

// hold takes note of a mix that lies on a plane.
func (r *rim) hold(plane int, a, b float32) {
	square := a*a + b*b
	if square == 0 {
		return
	}
	if c := &r[plane][directionOf(a, b)]; square > c.square {
		*c = corner{square, point{planeL[plane], a, b}}
	}
}

// line holds the mixes along a string between two neighbouring mixes of it, where it
// crosses planes. It is taken as straight.
func (r *rim) line(p, q point) {
	if p.l > q.l {
		p, q = q, p
	}
	for i := firstPlane(p); i < rimPlanes && planeL[i] < q.l; i++ {
		a, b := crossing(p, q, planeL[i])
		r.hold(i, a, b)
	}
}

// sheet holds the mixes between three neighbouring mixes, where they cross planes. The
// sheet between them is taken as flat.
func (r *rim) sheet(low, mid, high point) {
	if low.l > mid.l {
		low, mid = mid, low
	}
	if mid.l > high.l {
		mid, high = high, mid
	}
	if low.l > mid.l {
		low, mid = mid, low
	}
	for i := firstPlane(low); i < rimPlanes && planeL[i] < high.l; i++ {
		a, b := crossing(low, high, planeL[i])
		from, to := low, mid
		if planeL[i] >= mid.l {
			from, to = mid, high
		}
		a2, b2 := crossing(from, to, planeL[i])
		r.across(i, a, b, a2, b2)
	}
}

// across holds the mixes on a plane along a straight line, one in each direction it
// passes or so.
func (r *rim) across(plane int, a, b, a2, b2 float32) {
	r.hold(plane, a, b)
	r.hold(plane, a2, b2)
	if a*a+b*b == 0 || a2*a2+b2*b2 == 0 {
		return
	}
	passed := directionOf(a, b) - directionOf(a2, b2)
	passed = max(passed, -passed)
	passed = min(passed, directions-passed)
	for i := 1; i < passed; i++ {
		t := float32(i) / float32(passed)
		r.hold(plane, a+t*(a2-a), b+t*(b2-b))
	}
}

// crossing returns where the straight line from p up to q crosses an L* between
// theirs; q is above p.
func crossing(p, q point, l float32) (a, b float32) {
	t := (l - p.l) / (q.l - p.l)
	return p.a + t*(q.a-p.a), p.b + t*(q.b-p.b)
}

// join takes in the corners of another rim.
func (r *rim) join(other *rim) {
	for i := range other {
		for d, c := range other[i] {
			if c.square > r[i][d].square {
				r[i][d] = c
			}
		}
	}
}

// directionOf returns the place of a hue round the circle, in even steps along a
// square that stands on its corner: it rises with the hue angle and costs one
// division. Not for neutral.
func directionOf(a, b float32) int {
	t := b / (abs32(a) + abs32(b)) // -1 to 1
	switch {
	case a < 0:
		t = 2 - t
	case b < 0:
		t = 4 + t
	}
	return min(int(t*(directions/4)), directions-1)
}
