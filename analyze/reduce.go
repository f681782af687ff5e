package analyze

import (
	"runtime"
	"sync"
)

// span is what one cell of the smaller picture covers of the larger along one
// side: pixels first to last, of which the two at the ends count in part.
// A cell inside one pixel has first == last and only its first weight counts.
type span struct {
	first, last             int
	firstWeight, lastWeight float32
}

// spans parts n pixels evenly into cells; cells ≤ n. All in whole numbers of
// 1/(n·cells), so that the weights are exact and sum to n/cells.
func spans(n, cells int) []span {
	all := make([]span, cells)
	for i := range all {
		from, to := i*n, (i+1)*n // in units of which a pixel has cells
		s := span{first: from / cells, last: (to - 1) / cells}
		s.firstWeight = float32(min(to, (s.first+1)*cells)-from) / float32(cells)
		s.lastWeight = float32(to-s.last*cells) / float32(cells)
		all[i] = s
	}
	return all
}

// raster is a picture that can be read row by row, as light.
type raster struct {
	width, height int
	channels      int                               // numbers a pixel has
	rows          func() func(y int, row []float32) // a reader of rows, one for each worker
}

// reduce averages a raster to width × height by area and hands each finished row
// to emit, from several goroutines but never one row twice. A row's sum is made
// by one worker in the order of its pixels, so the result does not depend on how
// many there are.
func (r raster) reduce(width, height int, emit func(y int, row []float32)) {
	columns, lines := spans(r.width, width), spans(r.height, height)
	workers := min(runtime.GOMAXPROCS(0), height)
	var wait sync.WaitGroup
	for k := range workers {
		wait.Go(func() {
			r.strip(columns, lines, k*height/workers, (k+1)*height/workers, emit)
		})
	}
	wait.Wait()
}

// strip makes rows from to to. A pixel row that belongs to two of them is read
// once: its sums along x are kept.
func (r raster) strip(columns, lines []span, from, to int, emit func(y int, row []float32)) {
	read := r.rows()
	pixels := make([]float32, r.width*r.channels)
	across := make([]float32, len(columns)*r.channels)
	sum := make([]float32, len(across))
	scale := float32(len(columns)) * float32(len(lines)) / (float32(r.width) * float32(r.height))
	have := -1
	for y := from; y < to; y++ {
		clear(sum)
		for line := lines[y].first; line <= lines[y].last; line++ {
			if line != have {
				read(line, pixels)
				r.sumAcross(columns, pixels, across)
				have = line
			}
			addWeighted(sum, across, lines[y].weight(line)*scale)
		}
		emit(y, sum)
	}
}

func (s span) weight(i int) float32 {
	switch i {
	case s.first:
		return s.firstWeight
	case s.last:
		return s.lastWeight
	}
	return 1
}

func addWeighted(sum, row []float32, weight float32) {
	row = row[:len(sum)]
	for i := range sum {
		sum[i] += row[i] * weight
	}
}

// sumAcross adds each cell's pixels along a row.
func (r raster) sumAcross(columns []span, pixels, across []float32) {
	if r.channels == 4 {
		sumAcross4(columns, pixels, across)
		return
	}
	for x, s := range columns {
		p := pixels[3*s.first : 3*s.last+3]
		a, b, c := p[0]*s.firstWeight, p[1]*s.firstWeight, p[2]*s.firstWeight
		if s.last > s.first {
			for p = p[3:]; len(p) >= 6; p = p[3:] {
				a, b, c = a+p[0], b+p[1], c+p[2]
			}
			a, b, c = a+p[0]*s.lastWeight, b+p[1]*s.lastWeight, c+p[2]*s.lastWeight
		}
		across[3*x], across[3*x+1], across[3*x+2] = a, b, c
	}
}

func sumAcross4(columns []span, pixels, across []float32) {
	for x, s := range columns {
		cell := across[4*x : 4*x+4]
		clear(cell)
		for i := s.first; i <= s.last; i++ {
			addWeighted(cell, pixels[4*i:4*i+4], s.weight(i))
		}
	}
}
