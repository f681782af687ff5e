package plan

import (
	"cmp"
	"fmt"
	"slices"

	"tonewright/analyze"
	"tonewright/grid"
)

// mostLostEdges is how many lost edges are listed, the longest ones: more than a dozen a
// painter does not go through. Ours.
const mostLostEdges = 12

// lostEdgesOf lists where neighbouring regions have nearly one value in the study, the
// longest first. regions are those of the parting, in its order.
func lostEdgesOf(study *analyze.Picture, parting analyze.Parting, g grid.Grid, regions []Region) []LostEdge {
	scale := float64(g.Width) / float64(max(1, study.Width)) // mm a pixel
	cells := cellFinder(g, study.Width, study.Height)
	edges := []LostEdge{}
	for _, e := range analyze.LostEdges(study, parting) {
		along := cells(e)
		lost := LostEdge{
			A: regions[e.A].Tag, B: regions[e.B].Tag, Cells: names(along), Where: grid.Spans(along),
			LengthMM: Round(e.Length*scale, 0), Share: Round(e.Share, 2),
			ValueApart: Round(e.ValueApart, 1), DeltaE: Round(e.DeltaE, 1),
		}
		lost.Text = lost.words(regions[e.A].Name, regions[e.B].Name, g.Unit)
		edges = append(edges, lost)
	}
	slices.SortStableFunc(edges, func(a, b LostEdge) int { return cmp.Compare(b.LengthMM, a.LengthMM) })
	return edges[:min(len(edges), mostLostEdges)]
}

// words says where the edge is lost and what still tells its sides apart.
func (e LostEdge) words(a, b string, unit grid.Unit) string {
	tells := "colour tells them apart"
	switch {
	case e.DeltaE <= nearlyAlike:
		tells = "hardly anything tells them apart"
	case e.DeltaE < clearlyApart:
		tells = "colour tells them apart a little"
	}
	return fmt.Sprintf("Lost edge between %s and %s along %s, %s, %.0f %% of their border: their values are %.1f apart, %s (CIEDE2000 %.0f).",
		a, b, e.Where, unit.Format(grid.Millimetres(e.LengthMM)), 100*e.Share, e.ValueApart, tells, e.DeltaE)
}

// cellFinder returns a function that lists the cells along an edge on a picture of
// w × h pixels, row by row: those that it goes through for covered of a cell's side, or
// with ownPart of itself.
func cellFinder(g grid.Grid, w, h int) func(analyze.Edge) []grid.Cell {
	column, row := make([]int, w), make([]int, h)
	for c := range g.Columns {
		r := pixels(g, grid.Cell{Column: c}, w, h)
		for x := r.Min.X; x < r.Max.X; x++ {
			column[x] = c
		}
	}
	for c := range g.Rows {
		r := pixels(g, grid.Cell{Row: c}, w, h)
		for y := r.Min.Y; y < r.Max.Y; y++ {
			row[y] = c
		}
	}
	side := float64(w) * float64(g.Cell/g.Width)
	return func(e analyze.Edge) []grid.Cell {
		count := make([]int, g.Columns*g.Rows)
		for _, at := range e.Pixels {
			count[row[at.Y]*g.Columns+column[at.X]]++
		}
		enough := min(covered*side, ownPart*float64(len(e.Pixels)))
		most := slices.Max(count)
		var cells []grid.Cell
		for i, n := range count {
			if n > 0 && (float64(n) >= enough || n == most) {
				cells = append(cells, grid.Cell{Column: i % g.Columns, Row: i / g.Columns})
			}
		}
		return cells
	}
}
