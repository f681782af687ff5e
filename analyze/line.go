package analyze

import (
	"cmp"
	"image"
	"math"
	"slices"
)

// Line is a contour of the picture as a painter would draw it: a smooth polyline.
type Line struct {
	Places   []Place
	Closed   bool    // it goes on from its last place to its first
	Strength float64 // of the strongest of the picture, 0-1
	Main     bool    // long and strong enough to be set out by measure
}

// The details a drawing can be asked for: only the main contours, and all there are.
const (
	LeastDetail = 1
	MostDetail  = 10
)

// lineSide is the longest side lines are looked for at, in pixels.
const lineSide = 600

// Lines returns the contours of a picture, the strongest first. detail is from
// LeastDetail to MostDetail; what is drawn at one is drawn at the next.
func Lines(p *Picture, parting Parting, detail int) []Line {
	if p.Width == 0 || p.Height == 0 {
		return []Line{}
	}
	s := reduced(p, lineSide)
	planes := s.planes()
	for k := range planes {
		planes[k] = blurred(planes[k], s.width, s.height, edgeSigma)
	}
	r := ridgesOf(slopesOf(planes, s.width, s.height))
	lines := []Line{}
	for _, stroke := range joinStrokes(strokesOf(r)) {
		if l := r.line(stroke, s.factor, planes); l.Strength >= leastStrength(detail) {
			lines = append(lines, l)
		}
	}
	slices.SortStableFunc(lines, func(a, b Line) int { return cmp.Compare(coarse(b.Strength), coarse(a.Strength)) })
	strongest := 0.0
	for _, l := range lines {
		strongest = max(strongest, l.Strength)
	}
	for i := range lines {
		lines[i].Main = lines[i].Strength >= leastStrength(2)
		lines[i].Strength /= strongest
	}
	return lines
}

// edgeSigma is the deviation of the smoothing before edges are looked for, in pixels.
const edgeSigma = 1.2

// leastStrength returns how strong a line must be to be drawn.
func leastStrength(detail int) float64 {
	return 120 * math.Pow(0.7, float64(detail-LeastDetail))
}

// planes returns the colours of a sketch axis by axis.
func (s *sketch) planes() (planes [3][]float32) {
	for k := range planes {
		planes[k] = make([]float32, len(s.colours))
		for i, c := range s.colours {
			planes[k][i] = float32(c[k])
		}
	}
	return planes
}

// line returns a stroke as a line on the picture; Strength is its weight.
func (r *ridges) line(s stroke, factor int, planes [3][]float32) Line {
	l := Line{Closed: s.closed}
	weight := 0.0
	places := smoothed(s.places, l.Closed)
	cs := contrasts(planes, r.width, r.height, places, l.Closed)
	for i, h := range s.heights {
		weight += zzMeasure(float64(h), cs[i])
	}
	l.Strength = weight
	if len(s.places) < 8 {
		l.Strength = 0
	}
	for i := range places {
		places[i].X *= float64(factor)
		places[i].Y *= float64(factor)
	}
	l.Places = simplerLine(places, l.Closed)
	return l
}

// smoothed evens out the steps of a line's places, in place but for its ends.
func smoothed(places []Place, closed bool) []Place {
	n := len(places)
	for range 4 {
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

// simplerLine returns a line with fewer places. Places are taken to a 16th of a pixel.
func simplerLine(places []Place, closed bool) []Place {
	const fine = 16
	stops := make([]stop, 0, len(places)+1)
	for _, p := range places {
		stops = append(stops, stop{Point: image.Pt(int(math.Round(fine*p.X)), int(math.Round(fine*p.Y)))})
	}
	if closed {
		stops = append(stops, stops[0])
	}
	kept := douglasPeucker(stops, fine*0.75)
	if closed {
		kept = kept[:len(kept)-1]
	}
	result := make([]Place, len(kept))
	for i, s := range kept {
		result[i] = Place{float64(s.X) / fine, float64(s.Y) / fine}
	}
	return result
}

var zzMode = 3
var zzCap = 15.0

func zzMeasure(h, c float64) float64 {
	switch zzMode {
	case 0:
		return min(6, h)
	case 1:
		return min(zzCap, c)
	case 2:
		return math.Sqrt(min(6, h) * min(zzCap, c))
	case 3:
		return min(6, h, c/3)
	}
	return min(6, h) * min(zzCap, c) / 10
}
