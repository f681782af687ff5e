// The contours of a picture, as a painter would draw them.

package analyze

import (
	"cmp"
	"math"
	"slices"
)

// Line is a contour of the picture as a painter would draw it: a smooth polyline.
type Line struct {
	Places   []Place // from its upper end; of a closed one, clockwise from its highest place
	Closed   bool    // it goes on from its last place to its first
	Strength float64 // of the strongest of the picture, 0-1
	Main     bool    // long and strong enough to be set out by measure
}

// Of the details that a drawing can be asked for, 1 to 10: the main contours only, and
// what is drawn where the painter says nothing.
const (
	leastDetail = 1
	usualDetail = 5
)

// Lines returns the contours of a picture, the strongest first: where its colour changes
// sharply along a line, cleaned of texture, joined, smoothed and made simpler.
// detail is from 1, the main ones only, to 10, all that were found; what is drawn at one is
// drawn at the next, in the same places. Contours on the borders of the parting count
// for more; where there is no edge in the picture a border makes none. A picture without
// edges has no lines. It panics if the parting is not of the picture.
//
// Edges are the ridges of the colour gradient [DiZenzo1986, Canny1986], less the
// gradient around them [Grigorescu2003]; a line weighs what its two sides differ by
// [Martin2004] along its length.
func Lines(p *Picture, parting Parting, detail int) []Line {
	if len(parting.Of) != p.Width*p.Height {
		panic("analyze: the parting is not of that picture")
	}
	lines := []Line{}
	for i, l := range linesIn(p, parting) {
		l.Main = isMain(i, l.Strength)
		if l.Main || detail > leastDetail && coarse(l.Strength) >= coarse(leastStrength(detail)) {
			lines = append(lines, l)
		}
	}
	for i := len(lines) - 1; i >= 0; i-- { // the first, which all are measured by, last
		lines[i].Strength /= lines[0].Strength
	}
	return lines
}

// The strength that lines need at the least detail, and what share of it at each next one.
// Ours: 100 is 18 strides of full weight, 2 cm on a 12-inch panel, or an edge of a
// fourteenth of it from side to side; at the usual detail a quarter will do. Set on the
// demo and a made scene, whose outlines are known, and looked at on eight photographs.
const (
	mainStrength = 100
	detailShare  = 0.7
)

// leastStrength returns how strong a line must be to be drawn at a detail.
func leastStrength(detail int) float64 {
	return mainStrength * math.Pow(detailShare, float64(detail-leastDetail))
}

// How many lines are main. Ours: fewer than these do not hold a drawing together, so
// that a soft picture's strongest are, if they are drawn at the usual detail; more
// than the most nobody sets out with a ruler.
const (
	fewestMain = 8
	mostMain   = 40
)

// isMain tells whether a line is main by its rank, from 0, and its strength.
func isMain(rank int, strength float64) bool {
	least := leastStrength(leastDetail)
	if rank < fewestMain {
		least = leastStrength(usualDetail)
	}
	return rank < mostMain && coarse(strength) >= coarse(least)
}

// lineSide is about the long side that lines are looked for at, in pixels, 450 to 900 of
// them: 0.3 to 0.7 mm each on a 12-inch panel. Ours: what is finer no pencil draws, and
// grain evens out.
const lineSide = 600

// linesIn returns all lines of a picture, the strongest first; a strength is the sum of
// the weights along the line, in a sketch of usualSide.
func linesIn(p *Picture, parting Parting) []Line {
	if len(parting.Of) == 0 {
		return nil
	}
	s := reduced(p, max(1, int(math.Round(float64(max(p.Width, p.Height))/lineSide))))
	planes := s.planes()
	strokes := joinStrokes(strokesOf(ridgesOf(slopesOf(planes, s.width, s.height))))
	reachOut(strokes, s.width, s.height)
	lines := make([]Line, 0, len(strokes))
	for _, w := range weighed(strokes, planes, s.width, s.height) {
		if len(w.stroke.places) >= leastLine {
			lines = append(lines, w.line(s, p, parting))
		}
	}
	slices.SortStableFunc(lines, func(a, b Line) int { return cmp.Compare(coarse(b.Strength), coarse(a.Strength)) })
	return lines
}

// leastLine is the fewest places of a line that is drawn. Ours: 5 to 10 mm on a 12-inch
// panel.
const leastLine = 8

// usualSide is the long side of the sketch of a picture of the usual size, in pixels;
// strengths are measured in it, so that the size of the photo does not matter.
const usualSide = 500

// line returns a stroke as a line on the picture.
func (w weighedStroke) line(s *sketch, p *Picture, parting Parting) Line {
	places := slices.Clone(w.stroke.places)
	for i, at := range places { // the sketch may reach over the picture's edge by a part of its pixel
		places[i] = Place{min(at.X*float64(s.factor), float64(p.Width)), min(at.Y*float64(s.factor), float64(p.Height))}
	}
	strength := w.sum * usualSide / float64(max(s.width, s.height)) * (1 + borderWeight*onBorder(parting, p, places))
	places = simplerLine(places, w.stroke.closed)
	closed := w.stroke.closed && len(places) > 2
	return Line{Places: fromTop(places, closed), Closed: closed, Strength: strength}
}

// edgeSigma is the deviation of the smoothing before edges are looked for, in pixels of
// the sketch. Ours.
const edgeSigma = 1.2

// planes returns the colours of a sketch axis by axis, smoothed.
func (s *sketch) planes() (planes [3][]float32) {
	for k := range planes {
		plane := make([]float32, len(s.colours))
		for i, c := range s.colours {
			plane[i] = float32(c[k])
		}
		planes[k] = blurred(plane, s.width, s.height, edgeSigma)
	}
	return planes
}
