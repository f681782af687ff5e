package grid

import (
	"fmt"
	"sort"
	"strconv"
	"strings"
)

// Cell is a place on the grid; both counts start at 0 at the top left.
type Cell struct{ Column, Row int }

// String returns the cell's name, column letters and row number: "A1", "AA12".
func (c Cell) String() string { return ColumnName(c.Column) + strconv.Itoa(c.Row+1) }

// ColumnName returns the letters of column i ≥ 0: A…Z, AA…ZZ, AAA….
func ColumnName(i int) string {
	name := ""
	for i++; i > 0; i = (i - 1) / 26 {
		name = string(rune('A'+(i-1)%26)) + name
	}
	return name
}

// ParseCell reads a cell's name, such as "C3", in either case.
func ParseCell(text string) (Cell, error) {
	name := strings.ToUpper(strings.TrimSpace(text))
	column, i := 0, 0
	for ; i < len(name) && name[i] >= 'A' && name[i] <= 'Z' && i < 3; i++ {
		column = column*26 + int(name[i]-'A') + 1
	}
	row, err := strconv.Atoi(name[i:])
	if i == 0 || err != nil || row < 1 || name[i] == '+' {
		return Cell{}, fmt.Errorf("%q is not a cell: write column letters and a row number, like C3", text)
	}
	return Cell{column - 1, row - 1}, nil
}

// Cells reads a list of cells and ranges, such as "C3:F7,G4", on this grid.
// The result is sorted by row, then column, each cell once.
// An error names the piece that is no cell, lies off the panel or runs backwards.
func (g Grid) Cells(text string) ([]Cell, error) {
	seen := map[Cell]bool{}
	var cells []Cell
	for piece := range strings.SplitSeq(text, ",") {
		from, to, err := g.span(strings.TrimSpace(piece))
		if err != nil {
			return nil, err
		}
		for row := from.Row; row <= to.Row; row++ {
			for column := from.Column; column <= to.Column; column++ {
				if c := (Cell{column, row}); !seen[c] {
					seen[c] = true
					cells = append(cells, c)
				}
			}
		}
	}
	sort.Slice(cells, func(i, j int) bool {
		a, b := cells[i], cells[j]
		return a.Row < b.Row || a.Row == b.Row && a.Column < b.Column
	})
	return cells, nil
}

// CheckCells tells what is wrong with a list of cells and ranges on any grid; nil if
// nothing is. Which cells there are on a panel is for Cells to say.
func CheckCells(text string) error {
	finest := Grid{Columns: most, Rows: most}
	for piece := range strings.SplitSeq(text, ",") {
		if _, _, err := finest.span(strings.TrimSpace(piece)); err != nil {
			return err
		}
	}
	return nil
}

// span reads one piece of a list: "G4", or "C3:F7" from top left to bottom right.
func (g Grid) span(piece string) (from, to Cell, err error) {
	first, second, isRange := strings.Cut(piece, ":")
	if from, err = ParseCell(first); err != nil {
		return from, to, err
	}
	to = from
	if isRange {
		if to, err = ParseCell(second); err != nil {
			return from, to, err
		}
	}
	if to.Column < from.Column || to.Row < from.Row {
		low := Cell{min(from.Column, to.Column), min(from.Row, to.Row)}
		high := Cell{max(from.Column, to.Column), max(from.Row, to.Row)}
		return from, to, fmt.Errorf("range %s runs backwards: write it from the top left to the bottom right, %s:%s", piece, low, high)
	}
	if !g.Has(to) {
		off := from
		if g.Has(from) {
			off = to
		}
		return from, to, fmt.Errorf("cell %s is off the panel: its cells run from A1 to %s", off, g.Last())
	}
	return from, to, nil
}

// Spans returns a list of cells as short text that Cells reads back: runs along
// a row, and equal runs in rows below one another, are joined: "C3:F7, G4".
func Spans(cells []Cell) string {
	runs := rowRuns(cells)
	var words []string
	for i := range runs {
		if runs[i].used {
			continue
		}
		r := runs[i]
		for j := i + 1; j < len(runs); j++ {
			if n := &runs[j]; !n.used && n.from.Column == r.from.Column && n.to.Column == r.to.Column && n.from.Row == r.to.Row+1 {
				n.used = true
				r.to.Row = n.to.Row
			}
		}
		words = append(words, r.String())
	}
	return strings.Join(words, ", ")
}

type run struct {
	from, to Cell
	used     bool
}

func (r run) String() string {
	if r.from == r.to {
		return r.from.String()
	}
	return r.from.String() + ":" + r.to.String()
}

// rowRuns joins neighbours along each row; cells are sorted by row, then column.
func rowRuns(cells []Cell) []run {
	var runs []run
	for _, c := range cells {
		if n := len(runs); n > 0 && runs[n-1].to == (Cell{c.Column - 1, c.Row}) {
			runs[n-1].to = c
			continue
		}
		runs = append(runs, run{from: c, to: c})
	}
	return runs
}
