// The page with the whole picture.

package sheet

import (
	"fmt"
	"math"

	"tonewright/grid"
)

// wholeView fits the whole panel into a room, never larger than it is. The scale is
// rounded so that what is printed of it, 1 : n to two decimals, is exact.
func wholeView(g grid.Grid, r grid.Box, mirrored bool) (v view, ratio float64) {
	ratio = math.Max(1, math.Ceil(100*float64(max(g.Width/r.Width, g.Height/r.Height))-1e-6)/100)
	v = view{part: grid.Box{Width: g.Width, Height: g.Height}, scale: 1 / ratio, mirrored: mirrored}
	b := v.box()
	v.at = grid.Point{X: r.X + (r.Width-b.Width)/2, Y: r.Y}
	return v, ratio
}

// whole is the whole picture on one page.
func (b *book) whole() ([]draft, error) {
	paper := upright(b.Paper, b.grid)
	v, ratio := wholeView(b.grid, room(paper), b.Mirror)
	marks, err := b.content(v, 1)
	if err != nil {
		return nil, err
	}
	marks = append(marks, frame(Pen{Width: 0.3, Gray: ink}, v.box(), nil))
	about := fmt.Sprintf("whole picture, 1 : %s; panel %s, cells %s%s", ratioText(ratio), b.plan.Panel.Size, b.plan.Grid.Cell, b.fineness(1/ratio))
	next := fmt.Sprintf("Draw the grid on the panel in cells of %s, then copy what each cell holds.", b.plan.Grid.Cell)
	return []draft{{paper: paper, about: about, next: next, marks: append(marks, cellNames(b.grid, v)...)}}, nil
}

func ratioText(ratio float64) string { return fmt.Sprint(math.Round(ratio*100) / 100) }

// upright returns the paper as the picture fits it best: lying for a wide panel.
func upright(p grid.Paper, g grid.Grid) grid.Paper {
	if g.Width > g.Height {
		return p.Turned()
	}
	return p
}
