// The drawing: as a view of the picture, and as a table to set it out with a ruler.

package report

import (
	"fmt"
	"math"
	"strings"

	"tonewright/grid"
	"tonewright/report/plan"
)

// stroke is a contour as an SVG path in working pixels.
type stroke struct{ D, Width string }

// Widths of the faintest and of the strongest contour, and the size of their numbers,
// as parts of the picture's longer side. Ours: a telephone 390 pixels wide shows the
// faintest half a pixel wide, a printed page a quarter of a millimetre.
const (
	thinStroke, thickStroke = 1.0 / 800, 1.0 / 260
	numberSize              = 1.0 / 60
)

// drawn is the contours of a plan at the size of its picture.
type drawn struct {
	width, height float64
	contours      []plan.Contour
	lines         [][]grid.Point // of each contour, in working pixels
}

func drawnOf(p *plan.Plan) drawn {
	d := drawn{float64(p.Pictures.Photo.Width), float64(p.Pictures.Photo.Height), p.Drawing.Contours, nil}
	g := p.Grid.Layout()
	for _, c := range d.contours {
		line := make([]grid.Point, len(c.Points()))
		for i, at := range c.Points() {
			line[i] = grid.Point{X: at.X / g.Width * grid.Millimetres(d.width), Y: at.Y / g.Height * grid.Millimetres(d.height)}
		}
		d.lines = append(d.lines, line)
	}
	return d
}

// drawingViews is the view of the contours; none where the plan has none.
func drawingViews(p *plan.Plan) []view {
	if len(p.Drawing.Contours) == 0 {
		return nil
	}
	d := drawnOf(p)
	return []view{{ID: "drawing", Label: "Drawing", Paper: true, Strokes: d.strokes(), Numbers: d.numbers(),
		Caption: fmt.Sprintf("What to draw before painting: the heavier a line, the more it matters. Those with a number are set out below. This is weight %d of 10: at 1 only the main lines are drawn, at 10 all that were found.", p.Drawing.Detail)}}
}

// strokes returns the contours as paths, the faintest first so that the others lie on it.
func (d drawn) strokes() []stroke {
	long := math.Max(d.width, d.height)
	list := []stroke{}
	for i := len(d.contours) - 1; i >= 0; i-- {
		c := d.contours[i]
		list = append(list, stroke{pathOf(d.lines[i], c.Closed), number(long * (thinStroke + (thickStroke-thinStroke)*c.Strength))})
	}
	return list
}

func pathOf(points []grid.Point, closed bool) string {
	var b strings.Builder
	for i, at := range points {
		b.WriteString(either(i == 0, "M", "L"))
		b.WriteString(number(float64(at.X)) + " " + number(float64(at.Y)))
	}
	if closed {
		b.WriteByte('Z')
	}
	return b.String()
}

// numbers puts the numbers of the main contours on them, where there is room: as near
// to a contour's middle as no other number stands, and inside the picture.
func (d drawn) numbers() []label {
	size := math.Max(d.width, d.height) * numberSize
	list, taken := []label{}, []grid.Point{}
	for i, c := range d.contours {
		if !c.Main {
			continue
		}
		text := fmt.Sprint(c.ID)
		for _, at := range outward(d.lines[i]) {
			if d.room(at, taken, size) {
				taken = append(taken, at)
				list = append(list, label{number(float64(at.X)), number(float64(at.Y)), number(size), text})
				break
			}
		}
	}
	return list
}

// room tells whether a number can stand at a place: so far from all others that two
// digits do not touch where a telephone has them larger, and one size from the edge.
func (d drawn) room(at grid.Point, taken []grid.Point, size float64) bool {
	x, y := float64(at.X), float64(at.Y)
	for _, other := range taken {
		if math.Abs(x-float64(other.X)) < 2*size && math.Abs(y-float64(other.Y)) < 1.8*size {
			return false
		}
	}
	return x >= size && y >= size && x <= d.width-size && y <= d.height-size
}

// outward returns the points of a line from its middle outward.
func outward(points []grid.Point) []grid.Point {
	list, middle := []grid.Point{}, len(points)/2
	for step := range len(points) {
		at := middle + (step+1)/2
		if step%2 == 1 {
			at = middle - (step+1)/2
		}
		if at >= 0 && at < len(points) {
			list = append(list, points[at])
		}
	}
	return list
}

// settingOut is the section; Contours is empty where the plan has none to follow.
type settingOut struct {
	Contours []contourRow
	Rest     string // how many more the drawing has
}

// contourRow is a main contour and where it crosses the grid.
type contourRow struct {
	ID, Text, Start, End string
	Beside               []string
	Crossings            []plan.Crossing
}

func settingOutOf(p *plan.Plan) settingOut {
	s := settingOut{Contours: []contourRow{}}
	rest := 0
	for _, c := range p.Drawing.Contours {
		if !c.Main {
			rest++
			continue
		}
		row := contourRow{ID: fmt.Sprint(c.ID), Beside: c.Beside, Crossings: c.Crossings, Start: spotText(c.Start)}
		row.Text = fmt.Sprintf("%s, %s", p.Grid.Layout().Unit.Format(grid.Millimetres(c.LengthMM)), count(len(c.Crossings), "crossing"))
		if c.Closed {
			row.Text += ", closed"
		} else {
			row.End = spotText(c.End)
		}
		s.Contours = append(s.Contours, row)
	}
	if rest > 0 {
		s.Rest = fmt.Sprintf("The drawing has %s, fainter or shorter, without a number: put those in by eye.", count(rest, "more line"))
	}
	if p.Drawing.Note != "" {
		s.Rest = strings.TrimSpace(s.Rest + " " + p.Drawing.Note)
	}
	return s
}

// spotText is "D3, 0.40 right and 0.25 down".
func spotText(s plan.Spot) string {
	return fmt.Sprintf("%s, %.2f right and %.2f down", s.Cell, s.Right, s.Down)
}
