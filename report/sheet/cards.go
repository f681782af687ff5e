// Pages of cells by themselves, enlarged or not.

package sheet

import (
	"fmt"

	"tonewright/grid"
)

// cutCards returns the cards on paper that stands or lies, whichever takes fewer pages.
func (o Options) cutCards(g grid.Grid) ([]grid.Card, grid.Paper, error) {
	var best []grid.Card
	var on grid.Paper
	var failed error
	for _, p := range [2]grid.Paper{o.Paper, o.Paper.Turned()} {
		r := room(p)
		cards, err := g.Cards(o.Cells, r.Width, r.Height, o.Enlarge, mostSheets)
		if err != nil {
			failed = err
		} else if on.Name == "" || len(cards) < len(best) {
			best, on = cards, p
		}
	}
	if on.Name != "" {
		failed = nil
	}
	return best, on, failed
}

// cards are blocks of cells by themselves.
func (b *book) cards() ([]draft, error) {
	cards, paper, err := b.cutCards(b.grid)
	if err != nil {
		return nil, err
	}
	size := "actual size"
	if b.Enlarge != 1 {
		size = fmt.Sprintf("%g times the panel's size", b.Enlarge)
	}
	var drafts []draft
	for _, c := range cards {
		v := view{part: c.Box, scale: b.Enlarge, mirrored: b.Mirror}
		v.at = grid.Point{X: room(paper).X + (room(paper).Width-v.box().Width)/2, Y: room(paper).Y}
		marks, err := b.content(v, b.Finer)
		if err != nil {
			return nil, err
		}
		d := draft{paper: paper, about: fmt.Sprintf("cells %s, %s%s", grid.Spans(cellsOf(c)), size, b.fineness(b.Enlarge))}
		d.next = fmt.Sprintf("The same fine lines on the panel are %s apart; the ticks are tenths of a cell.", b.grid.Unit.Format(b.grid.Cell/grid.Millimetres(b.Finer)))
		if b.Finer == 1 {
			d.next = "The ticks at the edges are tenths of a cell."
		}
		marks = append(marks, frame(Pen{Width: 0.3, Gray: ink}, v.box(), nil))
		marks = append(marks, tenths(b.grid, v)...)
		d.marks = append(marks, neighbours(b.grid, c, v)...)
		drafts = append(drafts, d)
	}
	return drafts, nil
}

// cellsOf lists the cells of a card, row by row.
func cellsOf(c grid.Card) []grid.Cell {
	var cells []grid.Cell
	for row := c.From.Row; row <= c.To.Row; row++ {
		for column := c.From.Column; column <= c.To.Column; column++ {
			cells = append(cells, grid.Cell{Column: column, Row: row})
		}
	}
	return cells
}
