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
		c.ID, c.Beside = len(d.Contours)+1, besideOf(line, parting, picture.Width, picture.Height)
		d.Contours = append(d.Contours, c)
	}
	return d
}

// contourOf lays a line of a picture on the panel.
func contourOf(line analyze.Line, p *analyze.Picture, g grid.Grid) Contour {
	c := Contour{Strength: Round(line.Strength, 3), Closed: line.Closed, Main: line.Main, Crossings: []Crossing{}}
	for _, at := range line.Places {
		c.points = append(c.points, grid.Point{
			X: tenth(at.X / float64(p.Width) * float64(g.Width)),
			Y: tenth(at.Y / float64(p.Height) * float64(g.Height)),
		})
	}
	c.LengthMM = Round(lengthOf(c.points, c.Closed), 0)
	c.Start = spotOf(g, c.points[0])
	c.End = c.Start
	if !c.Closed {
		c.End = spotOf(g, c.points[len(c.points)-1])
	}
	if c.Main {
		for _, crossed := range g.Crossings(c.points, c.Closed) {
			c.Crossings = append(c.Crossings, crossingOf(g, crossed))
		}
	}
	return c
}

// tenth returns millimetres to a tenth.
func tenth(mm float64) grid.Millimetres { return grid.Millimetres(Round(mm, 1)) }

// lengthOf returns how long a polyline is.
func lengthOf(points []grid.Point, closed bool) (mm float64) {
	for i := 1; i < len(points); i++ {
		mm += apart(points[i-1], points[i])
	}
	if closed {
		mm += apart(points[len(points)-1], points[0])
	}
	return mm
}

func apart(a, b grid.Point) float64 { return math.Hypot(float64(a.X-b.X), float64(a.Y-b.Y)) }

// spotOf returns where a point of the panel is in its cell.
func spotOf(g grid.Grid, at grid.Point) Spot {
	cell := grid.Cell{
		Column: min(int(at.X/g.Cell), g.Columns-1),
		Row:    min(int(at.Y/g.Cell), g.Rows-1),
	}
	b := g.Box(cell)
	return Spot{cell.String(), Round(float64((at.X-b.X)/g.Cell), 2), Round(float64((at.Y-b.Y)/g.Cell), 2)}
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
		Text: g.Unit.Format(from) + " " + way,
	}
}

// besideOf returns the tags of the regions that a line runs along or through, the one
// along most of it first.
func besideOf(line analyze.Line, parting analyze.Parting, width, height int) []string {
	count := make([]int, len(parting.Regions))
	total := 0
	n := len(line.Places)
	for i := range line.Places {
		if i == n-1 && !line.Closed {
			break
		}
		a, b := line.Places[i], line.Places[(i+1)%n]
		long := math.Hypot(b.X-a.X, b.Y-a.Y)
		for step := 0.5; step < long; step++ {
			for _, side := range [2]float64{-besideReach, besideReach} {
				x := a.X + (b.X-a.X)*step/long - (b.Y-a.Y)/long*side
				y := a.Y + (b.Y-a.Y)*step/long + (b.X-a.X)/long*side
				if x >= 0 && y >= 0 && int(x) < width && int(y) < height {
					count[parting.Of[int(y)*width+int(x)]]++
					total++
				}
			}
		}
	}
	order := []int{}
	for r, m := range count {
		if m > 0 && float64(m) >= besideLeast*float64(total) {
			order = append(order, r)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return count[b] - count[a] })
	tags := []string{}
	for _, r := range order {
		tags = append(tags, tagOf(r))
	}
	return tags
}

// A region is beside a line where it is so far from it, in pixels, if it is so along
// this share of both its sides. Ours.
const (
	besideReach = 3
	besideLeast = 0.1
)
