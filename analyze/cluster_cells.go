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

// Ours: few enough for a dozen clusterings of a region in milliseconds; a region that
// is the whole picture gets all, a small one a quarter.
const (
	fewCells  = 1024
	mostCells = 4096
)

// maxTable bounds the look-up table from colour to cell: small enough to stay in the
// cache, and so that the number of a cell fits 16 bits.
const maxTable = 1 << 16

// cellsOf gathers a region's pixels into at most mostCells cells, and returns for each
// pixel the index of its cell. Up to mostCells pixels, every distinct colour is a cell.
func cellsOf(p *Picture, pixels []int32) (cells []cell, of []uint16) {
	of = make([]uint16, len(pixels))
	if len(pixels) <= mostCells {
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

// blurSample is how many pixels of a region blurOf looks at, more or less.
const blurSample = 2000

// blurOf returns the mean squared distance of the pixels from their cell in the even
// space, from a sample: what clustering cells instead of pixels does not see.
func blurOf(p *Picture, pixels []int32, cells []cell, of []uint16) float64 {
	sum, n := 0.0, 0.0
	for j := 0; j < len(pixels); j += max(1, len(pixels)/blurSample) {
		e := evenly(p.At(int(pixels[j])))
		sum += e.squared(&cells[of[j]].even)
		n++
	}
	return sum / n
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
// are met; if there are too many, cells are put together in larger cubes.
func gather(p *Picture, pixels []int32, of []uint16) []cell {
	g := cubesOf(p, pixels)
	table := make([]uint16, g.count()) // cell + 1; 0 is none yet
	cells := make([]cell, 0, 4*mostCells)
	for j, i := range pixels {
		c := (*[3]float32)(p.Lab[3*i:])
		at := g.at(c)
		n := table[at]
		if n == 0 {
			cells = append(cells, cell{})
			n = uint16(len(cells))
			table[at] = n
		}
		cells[n-1].add(float64(c[0]), float64(c[1]), float64(c[2]), 1)
		of[j] = n - 1
	}
	limit := fewCells + (mostCells-fewCells)*len(pixels)/(p.Width*p.Height)
	if len(cells) <= limit {
		return cells
	}
	few, to := fewer(cells, g, limit)
	for j := range of {
		of[j] = to[of[j]]
	}
	return few
}

// fewer puts cells together whose means share a cube of wider and wider cubes until
// there are at most limit, and returns for each old cell its new one.
func fewer(cells []cell, g *cubes, limit int) (few []cell, to []uint16) {
	to = make([]uint16, len(cells))
	table := make([]uint16, g.count())
	few = cells
	for len(few) > limit {
		g = g.wider(math.Max(1.06, math.Sqrt(float64(len(few))/float64(limit))))
		clear(table)
		few = make([]cell, 0, limit)
		for n := range cells {
			c := &cells[n]
			at := g.at(&[3]float32{float32(c.lab.L / c.pixels), float32(c.lab.A / c.pixels), float32(c.lab.B / c.pixels)})
			if table[at] == 0 {
				few = append(few, cell{})
				table[at] = uint16(len(few))
			}
			to[n] = table[at] - 1
			few[to[n]].add(c.lab.L, c.lab.A, c.lab.B, c.pixels)
		}
	}
	return few, to
}
