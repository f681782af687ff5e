package analyze

import (
	"math"

	"github.com/muesli/clusters"

	"tonewright/analyze/colour"
)

// cell is a set of pixels of one region that are all but one colour: the
// observation that is clustered, in place of its pixels.
type cell struct {
	lab    colour.Lab // mean of its pixels
	even   even       // of lab
	pixels float64
}

// Coordinates returns L*, a*, b*.
func (c *cell) Coordinates() clusters.Coordinates {
	return clusters.Coordinates{c.lab.L, c.lab.A, c.lab.B}
}

// Distance returns CIEDE2000 from the cell to L*, a*, b*.
func (c *cell) Distance(centre clusters.Coordinates) float64 {
	return colour.DeltaE00(c.lab, labOf(centre))
}

// labOf reads a cluster's centre.
func labOf(c clusters.Coordinates) colour.Lab {
	return colour.Lab{L: c[0], A: c[1], B: c[2]}
}

// Ours: few enough for a dozen clusterings of a region in milliseconds.
const maxCells = 8192

// maxTable bounds the look-up table from colour to cell: small enough to stay in the
// cache, and so that the number of a cell fits 16 bits.
const maxTable = 1 << 16

// cellsOf gathers a region's pixels into at most maxCells cells, and returns for each
// pixel the index of its cell. Up to maxCells pixels, every distinct colour is a cell.
func cellsOf(p *Picture, pixels []int32) (cells []cell, of []uint16) {
	of = make([]uint16, len(pixels))
	if len(pixels) <= maxCells {
		cells = distinct(p, pixels, of)
	} else {
		cells = gather(p, pixels, of)
	}
	for i := range cells {
		c := &cells[i]
		c.lab = colour.Lab{L: c.lab.L / c.pixels, A: c.lab.A / c.pixels, B: c.lab.B / c.pixels}
		c.even = evenly(c.lab)
	}
	return cells, of
}

// add adds one or more pixels' colour to the sums that cellsOf will divide.
func (c *cell) add(l, a, b, pixels float64) {
	c.lab.L += l
	c.lab.A += a
	c.lab.B += b
	c.pixels += pixels
}

// distinct makes a cell of each colour, in the order they are met.
func distinct(p *Picture, pixels []int32, of []uint16) (cells []cell) {
	met := make(map[[3]float32]uint16)
	for j, i := range pixels {
		c := [3]float32(p.Lab[3*i : 3*i+3])
		n, ok := met[c]
		if !ok {
			n = uint16(len(cells))
			met[c] = n
			cells = append(cells, cell{})
		}
		cells[n].add(float64(c[0]), float64(c[1]), float64(c[2]), 1)
		of[j] = n
	}
	return cells
}

// gather makes a cell of each filled cube of the region's colours, in the order they
// are met, and doubles the cubes' side until there are few enough.
func gather(p *Picture, pixels []int32, of []uint16) []cell {
	g := cubesOf(p, pixels)
	table := make([]uint16, g.count()) // cell + 1; 0 is none yet
	var cells []cell
	var cube []int // of each cell
	for j, i := range pixels {
		c := (*[3]float32)(p.Lab[3*i:])
		at := g.at(c)
		n := table[at]
		if n == 0 {
			cells = append(cells, cell{})
			cube = append(cube, at)
			n = uint16(len(cells))
			table[at] = n
		}
		cells[n-1].add(float64(c[0]), float64(c[1]), float64(c[2]), 1)
		of[j] = n - 1
	}
	whole, to := cells, make([]uint16, len(cells))
	for double := 2; len(cells) > maxCells; double *= 2 {
		clear(table)
		cells = nil
		for n := range whole {
			at := g.wider(cube[n], double)
			if table[at] == 0 {
				cells = append(cells, cell{})
				table[at] = uint16(len(cells))
			}
			to[n] = table[at] - 1
			c := &whole[n]
			cells[to[n]].add(c.lab.L, c.lab.A, c.lab.B, c.pixels)
		}
	}
	if len(cells) < len(whole) {
		for j := range of {
			of[j] = to[of[j]]
		}
	}
	return cells
}
