// Cards: blocks of cells that a sheet takes by themselves.

package grid

import (
	"fmt"
	"strings"
)

// Card is a block of cells that one sheet takes.
type Card struct {
	From, To Cell // top left and bottom right
	Box
}

// Cards cuts a list of cells and ranges, such as "C3:F7,G4", into blocks of whole cells
// that fit, enlarged so many times, into a room of across × down. Each piece of the list
// begins a card of its own, so that "C3,D3" is two cards and "C3:D3" one if it fits.
// The cards of a piece are as few and as equal as can be, row by row.
// An error names a piece that is no cell or off the panel, says that not even one cell
// fits, or that there would be more than most cards.
func (g Grid) Cards(text string, across, down Millimetres, enlarge float64, most int) ([]Card, error) {
	side := g.Cell * Millimetres(enlarge)
	wide, high := int(across/side+sliver), int(down/side+sliver)
	if wide < 1 || high < 1 {
		return nil, fmt.Errorf("a cell of %s, enlarged %g times, is larger than the %s that a sheet has room for: take larger paper, less enlargement or a smaller cell",
			g.Unit.Format(g.Cell), enlarge, g.Unit.Size(across, down))
	}
	var cards []Card
	for piece := range strings.SplitSeq(text, ",") {
		from, to, err := g.span(strings.TrimSpace(piece))
		if err != nil {
			return nil, err
		}
		columns, rows := evenly(from.Column, to.Column, wide), evenly(from.Row, to.Row, high)
		if n := len(cards) + (len(columns)-1)*(len(rows)-1); n > most {
			return nil, fmt.Errorf("cells %s make more than %d cards: name fewer cells, or take larger paper or less enlargement", text, most)
		}
		for r := range len(rows) - 1 {
			for c := range len(columns) - 1 {
				cards = append(cards, g.card(Cell{columns[c], rows[r]}, Cell{columns[c+1] - 1, rows[r+1] - 1}))
			}
		}
	}
	return cards, nil
}

func (g Grid) card(from, to Cell) Card {
	a, b := g.Box(from), g.Box(to)
	return Card{from, to, Box{a.X, a.Y, b.X + b.Width - a.X, b.Y + b.Height - a.Y}}
}

// evenly cuts first to last into as few runs of at most most as can be, which differ by
// one at the most; it returns where each begins, and one past the last.
func evenly(first, last, most int) []int {
	n := last - first + 1
	runs := (n + most - 1) / most
	starts := make([]int, runs+1)
	for i := range starts {
		starts[i] = first + i*n/runs
	}
	return starts
}
