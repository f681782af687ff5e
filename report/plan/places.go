// Where regions and colours lie, in the grid's cells and as places for their tags.

package plan

import (
	"cmp"
	"math"
	"slices"

	"tonewright/analyze"
	"tonewright/grid"
)

// A cell is listed with a region or colour that covers covered of it, or that has
// ownPart of itself in it: the words alone must say where a thing is, and a strip
// along an edge fills no cell well. Ours.
const (
	covered = 0.10
	ownPart = 0.10
)

// places is where regions and colours lie.
type places struct {
	regionCells, colourCells [][]grid.Cell  // by region; by colour, over all regions
	regionMarks, colourMarks []analyze.Mark // where their tags can be printed
}

// placesOf finds where regions and colours lie; of is the colour of each pixel.
// More colours than analyze.Marks counts get no marks.
func placesOf(p *analyze.Picture, g grid.Grid, parting analyze.Parting, c analyze.Clustering, of []uint16) places {
	colours := 0
	for _, region := range c.Clusters {
		colours += len(region)
	}
	at := places{colourMarks: []analyze.Mark{}}
	at.regionCells = cellsOf(g, p.Width, p.Height, len(parting.Regions), parting.Of)
	at.colourCells = cellsOf(g, p.Width, p.Height, colours, of)
	n := 0
	for i, region := range c.Clusters {
		at.regionCells[i] = withColours(at.regionCells[i], at.colourCells[n:n+len(region)])
		n += len(region)
	}
	at.regionMarks = analyze.Marks(p, parting.Of)
	if colours <= math.MaxUint8 {
		small := make([]uint8, len(of))
		for i, n := range of {
			small[i] = uint8(n)
		}
		at.colourMarks = analyze.Marks(p, small)
	}
	return at
}

// cellsOf lists the cells of each label, row by row. labels counts the labels; of[i]
// is the label of pixel i.
func cellsOf[T uint8 | uint16](g grid.Grid, w, h, labels int, of []T) [][]grid.Cell {
	total := make([]int, labels)
	for _, label := range of {
		total[label]++
	}
	result := make([][]grid.Cell, labels)
	count := make([]int, labels)
	for row := range g.Rows {
		for column := range g.Columns {
			c := grid.Cell{Column: column, Row: row}
			r := pixels(g, c, w, h)
			clear(count)
			for y := r.Min.Y; y < r.Max.Y; y++ {
				for _, label := range of[y*w+r.Min.X : y*w+r.Max.X] {
					count[label]++
				}
			}
			for label, n := range count {
				if n > 0 && (float64(n) >= covered*float64(r.Dx()*r.Dy()) || float64(n) >= ownPart*float64(total[label])) {
					result[label] = append(result[label], c)
				}
			}
		}
	}
	for label, cells := range result {
		if len(cells) == 0 && total[label] > 0 { // spread thinly over a fine grid
			result[label] = fullest(g, w, h, of, T(label))
		}
	}
	return result
}

// fullest returns the one cell that holds most of a label.
func fullest[T uint8 | uint16](g grid.Grid, w, h int, of []T, label T) []grid.Cell {
	most, at := 0, grid.Cell{}
	for row := range g.Rows {
		for column := range g.Columns {
			c := grid.Cell{Column: column, Row: row}
			r, n := pixels(g, c, w, h), 0
			for y := r.Min.Y; y < r.Max.Y; y++ {
				for _, l := range of[y*w+r.Min.X : y*w+r.Max.X] {
					if l == label {
						n++
					}
				}
			}
			if n > most {
				most, at = n, c
			}
		}
	}
	return []grid.Cell{at}
}

// withColours adds to a region's cells those of its colours: where a colour is said
// to be, its region is said to be too.
func withColours(region []grid.Cell, colours [][]grid.Cell) []grid.Cell {
	all := slices.Clone(region)
	for _, cells := range colours {
		all = append(all, cells...)
	}
	slices.SortFunc(all, func(a, b grid.Cell) int { return cmp.Or(a.Row-b.Row, a.Column-b.Column) })
	return slices.Compact(all)
}

// names returns the cells' names.
func names(cells []grid.Cell) []string {
	result := make([]string, len(cells))
	for i, c := range cells {
		result[i] = c.String()
	}
	return result
}
