// Pages of the panel at its own size, to be glued together.

package sheet

import (
	"errors"
	"fmt"

	"tonewright/grid"
)

// tiling cuts the panel into sheets of a paper, standing or lying, whichever takes fewer;
// where both take as many, the way the panel lies. on is the paper so turned.
func (o Options) tiling(g grid.Grid, p grid.Paper) (best grid.Tiling, on grid.Paper, err error) {
	first := upright(p, g)
	fewest := 0
	for _, turned := range [2]grid.Paper{first, first.Turned()} {
		r := room(turned)
		l, failed := grid.Lay(g.Width, g.Height, r.Width, r.Height, o.Overlap, mostSheets)
		n := len(l.Tiles)
		if many, ok := errors.AsType[grid.TooManyTiles](failed); ok {
			n = many.Columns * many.Rows
		}
		if err == nil && fewest == 0 || n > 0 && n < fewest {
			best, on, err, fewest = l, turned, failed, n
		}
	}
	return best, on, err
}

// checkPanel says what to do instead where the panel takes too many sheets.
func (o Options) checkPanel(g grid.Grid) error {
	_, _, err := o.tiling(g, o.Paper)
	many, ok := errors.AsType[grid.TooManyTiles](err)
	if !ok {
		return err
	}
	larger := ""
	for _, p := range grid.Papers() {
		if l, _, err := o.tiling(g, p); err == nil {
			larger = fmt.Sprintf("take larger paper, %d sheets with --paper %s, or ", len(l.Tiles), p.Name)
			break
		}
	}
	return fmt.Errorf("a panel of %s takes %d sheets of %s, and past %d the joins stray by more than a grid does: %scopy it cell by cell from one page, --sheets whole,table, or from cards of the cells that matter, --cards C3:F7",
		g.Unit.Size(g.Width, g.Height), many.Columns*many.Rows, o.Paper.Name, mostSheets, larger)
}

// panel is the picture at the panel's size, on as many sheets as that takes.
func (b *book) panel() ([]draft, error) {
	l, paper, err := b.tiling(b.grid, b.Paper)
	if err != nil {
		return nil, err
	}
	r := room(paper)
	var drafts []draft
	for i, t := range l.Tiles {
		v := view{part: t.Box, at: grid.Point{X: r.X, Y: r.Y}, scale: 1, mirrored: b.Mirror}
		if b.Mirror { // the tiles lie as the picture is printed
			v.part.X = b.grid.Width - t.X - t.Width
		}
		marks, err := b.content(v, 1)
		if err != nil {
			return nil, err
		}
		d := draft{paper: paper, about: "panel, actual size" + b.fineness(1), next: "At actual size: trace it onto the panel, corner on corner."}
		if n := len(l.Tiles); n > 1 {
			d.about = fmt.Sprintf("panel, actual size, row %d, sheet %d of %d%s", t.Row+1, i+1, n, b.fineness(1))
			d.next = joining(t, l)
			d.marks = append(d.marks, glueStrips(t, l, v.box())...)
			marks = append(marks, joinMarks(t, l, v.box())...)
			marks = append(marks, keyMap(t, l, b.grid, paper)...)
		}
		marks = append(marks, panelEdges(t, l, v.box())...)
		d.marks = append(append(d.marks, marks...), cellNames(b.grid, v)...)
		drafts = append(drafts, d)
	}
	return drafts, nil
}

// joining says how a tile is joined to those before it.
func joining(t grid.Tile, l grid.Tiling) string {
	number := t.Row*l.Columns + t.Column + 1
	left, above := fmt.Sprintf("sheet %d", number-1), fmt.Sprintf("sheet %d", number-l.Columns)
	const cut = "Cut along the dashed line and glue this over the edge of "
	switch {
	case t.Column > 0 && t.Row > 0:
		return "Cut along the dashed lines and glue this over the edges of " + left + " and " + above + ", cross on cross."
	case t.Column > 0:
		return cut + left + ", cross on cross."
	case t.Row > 0:
		return cut + above + ", cross on cross."
	}
	return "Begin with this sheet; the next ones are glued over its edges, cross on cross."
}

// glueStrips tints the strips of a tile that its neighbours right and below come to lie on.
func glueStrips(t grid.Tile, l grid.Tiling, b grid.Box) []Mark {
	var marks []Mark
	fill := tint
	if t.Column < l.Columns-1 {
		marks = append(marks, frame(Pen{}, grid.Box{X: b.X + b.Width - l.Overlap, Y: b.Y, Width: l.Overlap, Height: b.Height}, &fill))
	}
	if t.Row < l.Rows-1 {
		marks = append(marks, frame(Pen{}, grid.Box{X: b.X, Y: b.Y + b.Height - l.Overlap, Width: b.Width, Height: l.Overlap}, &fill))
	}
	return marks
}

// Reach of the crosses and of the panel's corner marks, in millimetres from where they
// stand.
const (
	crossReach  grid.Millimetres = 2.5
	cornerStart grid.Millimetres = 1
	cornerEnd   grid.Millimetres = 4.5
)

// joinMarks draws a cross wherever an edge of this tile or of a neighbour's meets another:
// the crosses of neighbours fall on one another when they are joined.
func joinMarks(t grid.Tile, l grid.Tiling, b grid.Box) []Mark {
	across := joins(b.X, b.Width, l.Overlap, t.Column, l.Columns)
	down := joins(b.Y, b.Height, l.Overlap, t.Row, l.Rows)
	var runs [][]grid.Point
	cross := func(x, y grid.Millimetres) {
		runs = append(runs, []grid.Point{{X: x - crossReach, Y: y}, {X: x + crossReach, Y: y}}, []grid.Point{{X: x, Y: y - crossReach}, {X: x, Y: y + crossReach}})
	}
	for _, x := range across {
		for _, y := range append([]grid.Millimetres{b.Y, b.Y + b.Height}, down...) {
			cross(x, y)
		}
	}
	for _, y := range down {
		cross(b.X, y)
		cross(b.X+b.Width, y)
	}
	return []Mark{Path{Runs: runs, Pen: lightSide}, Path{Runs: runs, Pen: Pen{Width: 0.15, Gray: ink}}}
}

// joins returns where along a side the edges of neighbours run over this tile, and its
// own edges over theirs.
func joins(from, length, overlap grid.Millimetres, i, n int) []grid.Millimetres {
	var at []grid.Millimetres
	if i > 0 {
		at = append(at, from, from+overlap)
	}
	if i < n-1 {
		at = append(at, from+length-overlap, from+length)
	}
	return at
}

// panelEdges draws the tile's edges: through where the panel ends, dashed where it is to
// be cut, thin where it goes on; and marks outside the panel's corners.
func panelEdges(t grid.Tile, l grid.Tiling, b grid.Box) []Mark {
	right, bottom := b.X+b.Width, b.Y+b.Height
	edge := func(first, last bool) Pen {
		switch {
		case first:
			return Pen{Width: 0.3, Gray: ink}
		case last:
			return Pen{Width: 0.15, Gray: faint}
		}
		return Pen{Width: 0.2, Gray: ink, Dash: 2}
	}
	firstColumn, lastColumn, firstRow, lastRow := t.Column == 0, t.Column == l.Columns-1, t.Row == 0, t.Row == l.Rows-1
	marks := []Mark{
		line(edge(firstColumn, false), b.X, b.Y, b.X, bottom), line(edge(lastColumn, true), right, b.Y, right, bottom),
		line(edge(firstRow, false), b.X, b.Y, right, b.Y), line(edge(lastRow, true), b.X, bottom, right, bottom),
	}
	corner := func(is bool, x, y, outX, outY grid.Millimetres) {
		if is {
			pen := Pen{Width: 0.3, Gray: ink}
			marks = append(marks, line(pen, x+outX*cornerStart, y, x+outX*cornerEnd, y), line(pen, x, y+outY*cornerStart, x, y+outY*cornerEnd))
		}
	}
	corner(firstColumn && firstRow, b.X, b.Y, -1, -1)
	corner(lastColumn && firstRow, right, b.Y, 1, -1)
	corner(firstColumn && lastRow, b.X, bottom, -1, 1)
	corner(lastColumn && lastRow, right, bottom, 1, 1)
	return marks
}

// keyMap draws the panel small at the foot of the page, with this tile filled and all
// numbered.
func keyMap(t grid.Tile, l grid.Tiling, g grid.Grid, p grid.Paper) []Mark {
	scale := min(keyWidth/g.Width, (foot-4)/g.Height)
	x0, y0 := p.Width-margin-g.Width*scale, p.Height-margin-g.Height*scale
	pen := Pen{Width: 0.15, Gray: quiet}
	var marks []Mark
	for i, each := range l.Tiles {
		step := grid.Point{X: (each.Width - l.Overlap) * scale, Y: (each.Height - l.Overlap) * scale}
		cell := grid.Box{X: x0 + each.X*scale, Y: y0 + each.Y*scale, Width: step.X, Height: step.Y}
		if each.Column == l.Columns-1 {
			cell.Width = each.Width * scale
		}
		if each.Row == l.Rows-1 {
			cell.Height = each.Height * scale
		}
		fill, letter := Gray(255), quiet
		if each == t {
			fill, letter = Gray(60), Gray(255)
		}
		marks = append(marks, frame(pen, cell, &fill))
		if size := min(smallSize, cell.Height*0.8, cell.Width*0.6); size > 1.2 {
			marks = append(marks, Text{At: grid.Point{X: cell.X + cell.Width/2, Y: cell.Y + cell.Height/2 + size*0.36}, Words: fmt.Sprint(i + 1), Size: size, Gray: letter, Align: Centre})
		}
	}
	return marks
}
