package grid

import (
	"fmt"
	"math"
)

// most is the largest number of columns or rows: 702 is the last two-letter
// column, ZZ, and finer grids than this are no help to a hand.
const most = 702

// sliver is the smallest part cell kept as a cell of its own, as a fraction of a
// cell. Ours: a part cell thinner than this cannot be drawn and comes from
// rounding (12 in is 304.8 mm), so it is joined to its neighbour.
const sliver = 0.01

// Point is a place on the panel, from its top left.
type Point struct{ X, Y Millimetres }

// To returns how far it is from p to q.
func (p Point) To(q Point) Millimetres {
	return Millimetres(math.Hypot(float64(q.X-p.X), float64(q.Y-p.Y)))
}

// Grid is a transfer grid on a panel, counted from the top left.
type Grid struct {
	Width, Height Millimetres // of the panel
	Cell          Millimetres // side of a whole cell
	Columns, Rows int         // part cells at the right and the bottom included
	Unit          Unit        // the unit lengths are printed in
}

// New lays cells of the given side over a panel.
// An error says that the cells are larger than the panel or too many.
func New(width, height, cell Millimetres, unit Unit) (Grid, error) {
	if cell > width || cell > height {
		return Grid{}, fmt.Errorf("a cell of %s is larger than the panel of %s: choose a smaller cell",
			unit.Format(cell), unit.Size(width, height))
	}
	g := Grid{Width: width, Height: height, Cell: cell, Unit: unit}
	g.Columns, g.Rows = count(width, cell), count(height, cell)
	if g.Columns > most || g.Rows > most {
		return Grid{}, fmt.Errorf("cells of %s on a panel of %s make %d × %d of them, at most %d × %d: choose a larger cell",
			unit.Format(cell), unit.Size(width, height), g.Columns, g.Rows, most, most)
	}
	return g, nil
}

func count(side, cell Millimetres) int {
	return max(1, int(math.Ceil(float64(side/cell)-sliver)))
}

// Box is a rectangle on the panel from its top left corner.
type Box struct{ X, Y, Width, Height Millimetres }

// Box returns where cell c lies; part cells have their true, smaller size.
// It panics if c is not on the grid.
func (g Grid) Box(c Cell) Box {
	if !g.Has(c) {
		panic("grid: cell " + c.String() + " is not on the grid")
	}
	x0, x1 := edges(c.Column, g.Columns, g.Cell, g.Width)
	y0, y1 := edges(c.Row, g.Rows, g.Cell, g.Height)
	return Box{x0, y0, x1 - x0, y1 - y0}
}

// edges returns the near and far edge of column or row i of n; the last one ends
// where the panel ends.
func edges(i, n int, cell, side Millimetres) (near, far Millimetres) {
	near, far = Millimetres(i)*cell, Millimetres(i+1)*cell
	if i == n-1 {
		far = side
	}
	return near, far
}

// Has tells whether c is on the grid.
func (g Grid) Has(c Cell) bool {
	return c.Column >= 0 && c.Row >= 0 && c.Column < g.Columns && c.Row < g.Rows
}

// Last returns the cell at the bottom right.
func (g Grid) Last() Cell { return Cell{g.Columns - 1, g.Rows - 1} }

// PartColumn returns the width of the last column if it is not a whole cell, else 0.
func (g Grid) PartColumn() Millimetres { return part(g.Box(g.Last()).Width, g.Cell) }

// PartRow returns the height of the last row if it is not a whole cell, else 0.
func (g Grid) PartRow() Millimetres { return part(g.Box(g.Last()).Height, g.Cell) }

func part(side, cell Millimetres) Millimetres {
	if math.Abs(float64(side-cell)) <= sliver*float64(cell) {
		return 0
	}
	return side
}
