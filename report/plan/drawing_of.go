// The drawing made from the lines of the picture.

package plan

import (
	"fmt"
	"math"
	"slices"

	"tonewright/analyze"
	"tonewright/grid"
)

// drawingOf returns the contours of a picture on its panel, with where the main ones
// cross the grid. detail is 1-10, 0 meaning DetailUsual.
func drawingOf(picture *analyze.Picture, parting analyze.Parting, g grid.Grid, detail int) Drawing {
	if detail == 0 {
		detail = DetailUsual
	}
	d := Drawing{Detail: detail, Contours: []Contour{}}
	for _, line := range analyze.Lines(picture, parting, detail) {
		c := contourOf(line, picture, g)
		if len(c.points) < 2 {
			continue // on so small a panel it is a point
		}
		c.ID, c.Beside = len(d.Contours)+1, besideOf(line, parting, picture.Width)
		d.Contours = append(d.Contours, c)
	}
	d.Note = d.note()
	return d
}

// manyLines is how many lines of a drawing are too many to follow. Ours: bowls, cups and
// kettles have 20 to 60 at the usual detail; a bed of daisies has 155, half of them petals'
// streaks.
const manyLines = 100

// note says that a drawing has too many lines; "" where it has not.
func (d Drawing) note() string {
	if len(d.Contours) <= manyLines || d.Detail == 1 {
		return ""
	}
	return fmt.Sprintf("%d lines are many to draw: a detail of %d or less leaves out the lesser ones.", len(d.Contours), (d.Detail+1)/2)
}

// contourOf lays a line of a picture on the panel.
func contourOf(line analyze.Line, p *analyze.Picture, g grid.Grid) Contour {
	c := Contour{
		Strength: Round(line.Strength, 3), Closed: line.Closed, Main: line.Main,
		Crossings: []Crossing{}, points: pointsOf(line, p, g),
	}
	c.LengthMM = Round(lengthOf(c.points, c.Closed), 0)
	c.Start = spotOf(g, c.points[0])
	c.End = c.Start
	if !c.Closed {
		c.End = spotOf(g, c.points[len(c.points)-1])
	}
	if c.Main {
		for _, crossed := range withoutHairs(g.Crossings(c.points, c.Closed)) {
			c.Crossings = append(c.Crossings, crossingOf(g, crossed))
		}
	}
	return c
}

// pointsOf returns the places of a line on the panel to a tenth of a millimetre, each
// other than the one before: what is drawn, measured and written is the same.
func pointsOf(line analyze.Line, p *analyze.Picture, g grid.Grid) []grid.Point {
	points := make([]grid.Point, len(line.Places))
	for i, at := range line.Places {
		points[i] = grid.Point{
			X: grid.Millimetres(Round(at.X/float64(p.Width)*float64(g.Width), 1)),
			Y: grid.Millimetres(Round(at.Y/float64(p.Height)*float64(g.Height), 1)),
		}
	}
	points = slices.Compact(points)
	if last := len(points) - 1; line.Closed && last > 0 && points[last] == points[0] {
		points = points[:last]
	}
	return points
}

// lengthOf returns how long a polyline is.
func lengthOf(points []grid.Point, closed bool) (mm float64) {
	for i := 1; i < len(points); i++ {
		mm += float64(points[i-1].To(points[i]))
	}
	if closed {
		mm += float64(points[len(points)-1].To(points[0]))
	}
	return mm
}

// spotOf returns where a point of the panel is in its cell; on a line of the grid, in the
// cell to the right or below.
func spotOf(g grid.Grid, at grid.Point) Spot {
	cell := grid.Cell{
		Column: min(int(at.X/g.Cell), g.Columns-1),
		Row:    min(int(at.Y/g.Cell), g.Rows-1),
	}
	b := g.Box(cell)
	return Spot{cell.String(), Round(float64((at.X-b.X)/g.Cell), 2), Round(float64((at.Y-b.Y)/g.Cell), 2)}
}

// hair is how near two crossings of one line, over and back at once, may be without
// being told, in millimetres. Ours: the breadth of a pencil's line and a half; a contour
// that runs along a line of the grid would be told of a dozen times.
const hair = 1

// withoutHairs leaves out pairs of crossings that go over a line and back at once.
func withoutHairs(crossings []grid.Crossing) (told []grid.Crossing) {
	for _, c := range crossings {
		last := len(told) - 1
		if last >= 0 && told[last].Upright == c.Upright && told[last].Line == c.Line && float64(told[last].At.To(c.At)) <= hair {
			told = told[:last]
			continue
		}
		told = append(told, c)
	}
	return told
}

// crossingOf says where a line of the grid is crossed.
func crossingOf(g grid.Grid, c grid.Crossing) Crossing {
	b := g.Box(c.From)
	line, along, from, way := fmt.Sprintf("%d|%d", c.Line+1, c.Line+2), c.At.X-b.X, c.At.X, "across"
	if c.Upright {
		line, along, from, way = grid.ColumnName(c.Line)+"|"+grid.ColumnName(c.Line+1), c.At.Y-b.Y, c.At.Y, "down"
	}
	return Crossing{
		Line: line, Cell: c.From.String(),
		At: Round(float64(along/g.Cell), 2), MM: Round(float64(along), 1),
		Text: g.Unit.Ruled(from) + " " + way,
	}
}

// A region is beside a line if it is so far from it, in pixels, along this share of the
// line. Ours: as far as the line of a found region may be off, and not where a line only
// passes a corner.
const (
	besideReach = 4
	besideLeast = 0.1
)

// besideOf returns the tags of the regions on either side of a line, the one along most
// of it first.
func besideOf(line analyze.Line, parting analyze.Parting, width int) []string {
	count, total := make([]int, len(parting.Regions)), 0
	height := len(parting.Of) / width
	n := len(line.Places)
	for i, a := range line.Places {
		b := line.Places[(i+1)%n]
		long := math.Hypot(b.X-a.X, b.Y-a.Y)
		if i == n-1 && !line.Closed {
			break
		}
		for step := 0.5; step < long; step++ {
			total++
			x, y := a.X+(b.X-a.X)*step/long, a.Y+(b.Y-a.Y)*step/long
			u, v := (b.Y-a.Y)/long*besideReach, (a.X-b.X)/long*besideReach
			left := regionAt(parting, x+u, y+v, width, height)
			right := regionAt(parting, x-u, y-v, width, height)
			count[left]++
			if right != left {
				count[right]++
			}
		}
	}
	var beside []int
	for r, times := range count {
		if times > 0 && float64(times) >= besideLeast*float64(total) {
			beside = append(beside, r)
		}
	}
	slices.SortStableFunc(beside, func(a, b int) int { return count[b] - count[a] })
	tags := []string{}
	for _, r := range beside {
		tags = append(tags, tagOf(r))
	}
	return tags
}

// regionAt returns the region at a place of the picture, or at its edge nearest to it.
func regionAt(parting analyze.Parting, x, y float64, width, height int) uint8 {
	column, row := min(max(0, int(x)), width-1), min(max(0, int(y)), height-1)
	return parting.Of[row*width+column]
}
