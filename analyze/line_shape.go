// The shape of lines: smoothed, simplified, measured.

package analyze

import (
	"image"
	"math"
	"slices"
)

// Products are rounded before they are added to, so that no machine fuses the two: a line
// is the same on all.

// to returns the distance to another place.
func (p Place) to(q Place) float64 {
	d := Place{q.X - p.X, q.Y - p.Y}
	return math.Sqrt(d.dot(d))
}

// towards returns the way to another place, of length 1; none if they are one.
func (p Place) towards(q Place) Place {
	d := p.to(q)
	if d == 0 {
		return Place{}
	}
	return Place{(q.X - p.X) / d, (q.Y - p.Y) / d}
}

// plus returns the place so many times a way off.
func (p Place) plus(way Place, times float64) Place {
	return Place{p.X + float64(times*way.X), p.Y + float64(times*way.Y)}
}

func (p Place) dot(q Place) float64 { return float64(p.X*q.X) + float64(p.Y*q.Y) }

// smoothings is how often a line is smoothed. Ours: four times are a Gaussian of deviation
// 1.4 pixels of the sketch, which takes the stairs out of a ridge and rounds a corner by
// under a millimetre on a 12-inch panel.
const smoothings = 4

// smoothed evens out the steps of a line's places, but for its ends.
func smoothed(places []Place, closed bool) []Place {
	n := len(places)
	for range smoothings {
		next := slices.Clone(places)
		for i := range places {
			if !closed && (i == 0 || i == n-1) {
				continue
			}
			a, b := places[(i+n-1)%n], places[(i+1)%n]
			next[i] = Place{(a.X + 2*places[i].X + b.X) / 4, (a.Y + 2*places[i].Y + b.Y) / 4}
		}
		places = next
	}
	return places
}

// What simplerLine rounds to, in parts of a pixel, and how far it may move a line, in
// pixels. Ours: a quarter of a millimetre on a 12-inch panel, the breadth of a pencil's line.
const (
	fine          = 16
	lineTolerance = 0.75
)

// simplerLine returns a line with fewer places, as a border is made simpler.
func simplerLine(places []Place, closed bool) []Place {
	stops := make([]stop, 0, len(places)+1)
	for _, p := range places {
		stops = append(stops, stop{Point: image.Pt(int(math.Round(fine*p.X)), int(math.Round(fine*p.Y)))})
	}
	if closed {
		stops = append(stops, stops[0])
	}
	kept := douglasPeucker(stops, fine*lineTolerance)
	if closed {
		kept = kept[:len(kept)-1]
	}
	result := make([]Place, len(kept))
	for i, s := range kept {
		result[i] = Place{float64(s.X) / fine, float64(s.Y) / fine}
	}
	return result
}

// fromTop turns a line so that it begins at its upper end, the left one of two as high;
// a closed one at its highest place, and then clockwise.
func fromTop(places []Place, closed bool) []Place {
	last := len(places) - 1
	if !closed {
		if higher(places[last], places[0]) {
			slices.Reverse(places)
		}
		return places
	}
	twice := 0.0 // the area, positive where the line runs clockwise
	top := 0
	for i, p := range places {
		q := places[(i+1)%len(places)]
		twice += float64(p.X*q.Y) - float64(p.Y*q.X)
		if higher(p, places[top]) {
			top = i
		}
	}
	places = slices.Concat(places[top:], places[:top])
	if twice < 0 {
		slices.Reverse(places[1:])
	}
	return places
}

func higher(p, q Place) bool { return p.Y < q.Y || p.Y == q.Y && p.X < q.X }
