package analyze

import (
	"cmp"
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

// The details a drawing can be asked for: the main contours only, and all there are.
const (
	LeastDetail = 1
	MostDetail  = 10
)

// lineSide is about the long side of the picture that lines are looked for in, in pixels.
const lineSide = 600

// Lines returns the contours of a picture, the strongest first. detail is from
// LeastDetail to MostDetail; what is drawn at one is drawn at the next.
func Lines(p *Picture, parting Parting, detail int) []Line {
	lines := []Line{}
	for i, l := range linesIn(p, parting) {
		l.Main = i < mostMain && l.Strength >= leastStrength(LeastDetail) || i < fewestMain && l.Strength >= leastStrength(5)
		if l.Main || l.Strength >= leastStrength(detail) {
			lines = append(lines, l)
		}
	}
	for i := range lines {
		lines[i].Strength /= max(lines[0].Strength, 1e-9)
	}
	return lines
}

const (
	fewestMain = 8
	mostMain   = 40
)

func linesIn(p *Picture, parting Parting) []Line {
	if p.Width == 0 || p.Height == 0 {
		return nil
	}
	s := reduced(p, max(1, int(math.Round(float64(max(p.Width, p.Height))/lineSide))))
	planes := s.planes()
	for k := range planes {
		planes[k] = blurred(planes[k], s.width, s.height, edgeSigma)
	}
	strokes := joinStrokes(strokesOf(ridgesOf(slopesOf(planes, s.width, s.height))))
	reachOut(strokes, s.width, s.height)
	type weighed struct {
		stroke *stroke
		each   []float64
		sum    float64
	}
	var all []weighed
	for i := range strokes {
		st := &strokes[i]
		st.places = smoothed(st.places, st.closed)
		w := weighed{st, weights(st, planes, s.width, s.height), 0}
		for _, v := range w.each {
			w.sum += v
		}
		all = append(all, w)
	}
	strongestFirst := func(a, b weighed) int { return cmp.Compare(coarse(b.sum), coarse(a.sum)) }
	slices.SortStableFunc(all, strongestFirst)
	c := crowd{s.width, s.height, make([]int32, s.width*s.height)}
	var lines []Line
	for i := range all {
		w := &all[i]
		l := Line{Closed: w.stroke.closed}
		l.Strength = c.weigh(w.stroke, w.each, int32(i+1)) * 500 / float64(max(s.width, s.height))
		if len(w.each) < 8 {
			continue
		}
		places := w.stroke.places
		for k := range places {
			places[k].X = min(places[k].X*float64(s.factor), float64(p.Width))
			places[k].Y = min(places[k].Y*float64(s.factor), float64(p.Height))
		}
		if len(parting.Of) > 0 {
			l.Strength *= 1 + borderWeight*onBorder(parting, p, places)
		}
		l.Places = simplerLine(places, l.Closed)
		lines = append(lines, l)
	}
	slices.SortStableFunc(lines, func(a, b Line) int { return cmp.Compare(coarse(b.Strength), coarse(a.Strength)) })
	return lines
}


// edgeSigma is the deviation of the smoothing before edges are looked for, in pixels.
const edgeSigma = 1.2

// leastStrength returns how strong a line must be to be drawn.
func leastStrength(detail int) float64 {
	return 100 * math.Pow(0.7, float64(detail-LeastDetail))
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
