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
// Whole photos at 4096 were no worse than at 8192.
const maxCells = 4096

// maxTable bounds the look-up table from colour to cell: a megabyte, so that it
// stays in the cache.
const maxTable = 1 << 18

// cellsOf gathers a region's pixels into at most maxCells cells, and returns for each
// pixel the index of its cell. Up to maxCells pixels, every distinct colour is a cell.
func cellsOf(p *Picture, pixels []int32) (cells []cell, of []int32) {
	of = make([]int32, len(pixels))
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
func distinct(p *Picture, pixels, of []int32) (cells []cell) {
	met := make(map[[3]float32]int32)
	for j, i := range pixels {
		c := [3]float32(p.Lab[3*i : 3*i+3])
		n, ok := met[c]
		if !ok {
			n = int32(len(cells))
			met[c] = n
			cells = append(cells, cell{})
		}
		cells[n].add(float64(c[0]), float64(c[1]), float64(c[2]), 1)
		of[j] = n
	}
	return cells
}

// box is the part of Lab that a region's colours fill, cut into cubes.
type box struct {
	low  [3]float32
	side float32
	size [3]int // cubes along L*, a*, b*
}

// boxOf returns the finest box whose cubes fit maxTable.
func boxOf(p *Picture, pixels []int32) box {
	low := [3]float32{math.MaxFloat32, math.MaxFloat32, math.MaxFloat32}
	high := [3]float32{-math.MaxFloat32, -math.MaxFloat32, -math.MaxFloat32}
	for _, i := range pixels {
		c := (*[3]float32)(p.Lab[3*i:])
		for k, v := range c {
			low[k], high[k] = min(low[k], v), max(high[k], v)
		}
	}
	for side := float32(0.25); ; side *= 2 {
		b := box{low: low, side: side}
		table := 1
		for k := range b.size {
			b.size[k] = int((high[k]-low[k])/side) + 1
			table *= b.size[k]
		}
		if table <= maxTable {
			return b
		}
	}
}

// gather makes a cell of each filled cube of the region's box, in the order they are
// met, and doubles the cubes' side until there are few enough.
func gather(p *Picture, pixels, of []int32) []cell {
	b := boxOf(p, pixels)
	table := make([]int32, b.size[0]*b.size[1]*b.size[2]) // cell + 1; 0 is none yet
	var cells []cell
	var cube []int32 // of each cell
	scale := 1 / b.side
	for j, i := range pixels {
		c := (*[3]float32)(p.Lab[3*i:])
		at := (int32((c[0]-b.low[0])*scale)*int32(b.size[1])+int32((c[1]-b.low[1])*scale))*int32(b.size[2]) + int32((c[2]-b.low[2])*scale)
		n := table[at]
		if n == 0 {
			cells = append(cells, cell{})
			cube = append(cube, at)
			n = int32(len(cells))
			table[at] = n
		}
		cells[n-1].add(float64(c[0]), float64(c[1]), float64(c[2]), 1)
		of[j] = n - 1
	}
	to := make([]int32, len(cells))
	for n := range to {
		to[n] = int32(n)
	}
	whole := cells
	for double := 2; len(cells) > maxCells; double *= 2 {
		clear(table)
		cells = nil
		for n := range whole {
			l, a, bb := int(cube[n])/b.size[2]/b.size[1], int(cube[n])/b.size[2]%b.size[1], int(cube[n])%b.size[2]
			at := (l/double*b.size[1]+a/double)*b.size[2] + bb/double
			if table[at] == 0 {
				cells = append(cells, cell{})
				table[at] = int32(len(cells))
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
