// What stands at the edges of a card: finer lines, ticks, neighbours' names.

package sheet

import "tonewright/grid"

// finerLines parts every cell that a view shows into finer × finer.
func finerLines(g grid.Grid, v view, finer int, pen Pen) []Mark {
	b := v.part
	step := g.Cell / grid.Millimetres(finer)
	var runs [][]grid.Point
	for i := int(b.X/step) + 1; grid.Millimetres(i)*step < b.X+b.Width; i++ {
		if x := grid.Millimetres(i) * step; i%finer != 0 {
			runs = append(runs, v.points([]grid.Point{{X: x, Y: b.Y}, {X: x, Y: b.Y + b.Height}}))
		}
	}
	for i := int(b.Y/step) + 1; grid.Millimetres(i)*step < b.Y+b.Height; i++ {
		if y := grid.Millimetres(i) * step; i%finer != 0 {
			runs = append(runs, v.points([]grid.Point{{X: b.X, Y: y}, {X: b.X + b.Width, Y: y}}))
		}
	}
	if len(runs) == 0 {
		return nil
	}
	return []Mark{Path{Runs: runs, Pen: pen}}
}

// tenths draws ticks at the tenths of the cells around a view, outside of it: the middle
// of a cell longer, its ends longest.
func tenths(g grid.Grid, v view) []Mark {
	b, part := v.box(), v.part
	pen := Pen{Width: 0.15, Gray: ink}
	var runs [][]grid.Point
	long := func(i int) grid.Millimetres {
		return [10]grid.Millimetres{2.2, 0.8, 0.8, 0.8, 0.8, 1.5, 0.8, 0.8, 0.8, 0.8}[i%10]
	}
	const hair = 1e-6
	step := g.Cell / 10
	for i := int(part.X/step + 0.5); grid.Millimetres(i)*step <= part.X+part.Width+hair; i++ {
		x := v.point(grid.Point{X: grid.Millimetres(i) * step}).X
		runs = append(runs, []grid.Point{{X: x, Y: b.Y}, {X: x, Y: b.Y - long(i)}}, []grid.Point{{X: x, Y: b.Y + b.Height}, {X: x, Y: b.Y + b.Height + long(i)}})
	}
	for i := int(part.Y/step + 0.5); grid.Millimetres(i)*step <= part.Y+part.Height+hair; i++ {
		y := v.point(grid.Point{Y: grid.Millimetres(i) * step}).Y
		runs = append(runs, []grid.Point{{X: b.X, Y: y}, {X: b.X - long(i), Y: y}}, []grid.Point{{X: b.X + b.Width, Y: y}, {X: b.X + b.Width + long(i), Y: y}})
	}
	return []Mark{Path{Runs: runs, Pen: pen}}
}

// neighbours writes the names of the cells around a card outside of its edges, and of
// more than one the names of its own into their corners.
func neighbours(g grid.Grid, c grid.Card, v view) []Mark {
	b := v.box()
	var marks []Mark
	name := func(cell grid.Cell, x, y grid.Millimetres) {
		if g.Has(cell) {
			marks = append(marks, Text{At: grid.Point{X: x, Y: y + smallSize*0.36}, Words: cell.String(), Size: smallSize, Gray: quiet, Align: Centre})
		}
	}
	before, after := c.From.Column-1, c.To.Column+1
	if v.mirrored {
		before, after = after, before
	}
	const off = band * 0.75
	for row := c.From.Row; row <= c.To.Row; row++ {
		at := v.boxOf(g.Box(grid.Cell{Column: c.From.Column, Row: row}))
		y := at.Y + at.Height/2
		name(grid.Cell{Column: before, Row: row}, b.X-off, y)
		name(grid.Cell{Column: after, Row: row}, b.X+b.Width+off, y)
	}
	for column := c.From.Column; column <= c.To.Column; column++ {
		at := v.boxOf(g.Box(grid.Cell{Column: column, Row: c.From.Row}))
		x := at.X + at.Width/2
		name(grid.Cell{Column: column, Row: c.From.Row - 1}, x, b.Y-off)
		name(grid.Cell{Column: column, Row: c.To.Row + 1}, x, b.Y+b.Height+off)
	}
	if c.From != c.To {
		for _, cell := range cellsOf(c) {
			marks = append(marks, cornerName(v.boxOf(g.Box(cell)), cell.String())...)
		}
	}
	return marks
}

// cornerName writes a cell's name into its top left corner.
func cornerName(b grid.Box, words string) []Mark {
	w, h := widthOf(words, smallSize, false)+1, smallSize
	if w > b.Width || h > b.Height {
		return nil
	}
	white := Gray(255)
	return []Mark{
		frame(Pen{}, grid.Box{X: b.X + 0.4, Y: b.Y + 0.4, Width: w, Height: h}, &white),
		Text{At: grid.Point{X: b.X + 0.4 + w/2, Y: b.Y + 0.4 + h*0.86}, Words: words, Size: smallSize, Gray: quiet, Align: Centre},
	}
}
