// The grid of a page and the names of its cells.

package sheet

import (
	"fmt"

	"tonewright/grid"
)

// edgesOf returns the places of the grid's lines across and down the panel, its sides
// included.
func edgesOf(g grid.Grid) (xs, ys []grid.Millimetres) {
	xs, ys = []grid.Millimetres{0}, []grid.Millimetres{0}
	for i := range g.Columns {
		b := g.Box(grid.Cell{Column: i})
		xs = append(xs, b.X+b.Width)
	}
	for i := range g.Rows {
		b := g.Box(grid.Cell{Row: i})
		ys = append(ys, b.Y+b.Height)
	}
	return xs, ys
}

// gridLines draws the grid's lines that run through a view, the panel's edges left out.
func gridLines(g grid.Grid, v view, pens ...Pen) []Mark {
	xs, ys := edgesOf(g)
	b := v.part
	var runs [][]grid.Point
	for _, x := range xs[1 : len(xs)-1] {
		if x > b.X && x < b.X+b.Width {
			runs = append(runs, v.points([]grid.Point{{X: x, Y: b.Y}, {X: x, Y: b.Y + b.Height}}))
		}
	}
	for _, y := range ys[1 : len(ys)-1] {
		if y > b.Y && y < b.Y+b.Height {
			runs = append(runs, v.points([]grid.Point{{X: b.X, Y: y}, {X: b.X + b.Width, Y: y}}))
		}
	}
	var marks []Mark
	for _, p := range pens {
		if len(runs) > 0 {
			marks = append(marks, Path{Runs: runs, Pen: p})
		}
	}
	return marks
}

// cellNames writes the columns' letters above and below a view, and the rows' numbers
// left and right of it.
func cellNames(g grid.Grid, v view) []Mark {
	xs, ys := edgesOf(g)
	b := v.box()
	var marks []Mark
	name := func(words string, x, y grid.Millimetres) {
		marks = append(marks, Text{At: grid.Point{X: x, Y: y + smallSize*0.36}, Words: words, Size: smallSize, Gray: quiet, Align: Centre})
	}
	wide := widthOf(grid.ColumnName(g.Columns-1), smallSize, false) + 1
	for _, s := range named(xs, v.part.X, v.part.Width, wide/grid.Millimetres(v.scale)) {
		x := v.point(grid.Point{X: s.middle}).X
		name(grid.ColumnName(s.index), x, b.Y-band/2)
		name(grid.ColumnName(s.index), x, b.Y+b.Height+band/2)
	}
	for _, s := range named(ys, v.part.Y, v.part.Height, smallSize*1.1/grid.Millimetres(v.scale)) {
		y := v.point(grid.Point{Y: s.middle}).Y
		name(fmt.Sprint(s.index+1), b.X-band/2, y)
		name(fmt.Sprint(s.index+1), b.X+b.Width+band/2, y)
	}
	return marks
}

// span is a column or row and the middle of what is seen of it.
type span struct {
	index  int
	middle grid.Millimetres
}

// named returns the columns or rows between from and from + length that have room for
// their name: all of them, or every second, fifth and so on where they are narrow.
func named(edges []grid.Millimetres, from, length, need grid.Millimetres) []span {
	every := 1
	for _, n := range []int{2, 5, 10, 20, 50, 100} {
		if (edges[1]-edges[0])*grid.Millimetres(every) >= need {
			break
		}
		every = n
	}
	var seen []span
	for i := 0; i+1 < len(edges); i += every {
		near, far := max(edges[i], from), min(edges[i+1], from+length)
		if far-near >= min(need, (edges[1]-edges[0])*0.99) {
			seen = append(seen, span{i, (near + far) / 2})
		}
	}
	return seen
}
