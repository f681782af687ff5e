package analyze

import (
	"runtime"
	"sync"
	"sync/atomic"
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
	channels      int // numbers a pixel has: 3, or 4 with alpha
	// across gives a reader, one for each worker, that sums the pixels of a row cell by cell.
	across func(columns []span) func(line int, sums []float32)
}

// stripRows is how many finished rows a worker takes at a time. Ours: few enough
// that no worker waits long for the last one, many enough that reading the row
// between two strips twice costs next to nothing.
const stripRows = 16

// reduce averages a raster to width × height by area and hands each finished row
// to emit, from several goroutines but never one row twice. A row's sum is made
// by one worker in the order of its pixels, so the result does not depend on how
// many there are.
func (r raster) reduce(width, height int, emit func(y int, row []float32)) {
	columns, lines := spans(r.width, width), spans(r.height, height)
	var next atomic.Int64
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), (height+stripRows-1)/stripRows) {
		wait.Go(func() {
			w := r.worker(columns, lines)
			for from := int(next.Add(stripRows)) - stripRows; from < height; from = int(next.Add(stripRows)) - stripRows {
				w.strip(from, min(height, from+stripRows), emit)
			}
		})
	}
	wait.Wait()
}

// reducer is one worker's share of a reduction.
type reducer struct {
	lines       []span
	read        func(line int, sums []float32)
	across, sum []float32
	scale       float32 // from a cell's sum to its mean
}

func (r raster) worker(columns, lines []span) *reducer {
	n := len(columns) * r.channels
	return &reducer{
		lines: lines, read: r.across(columns), across: make([]float32, n), sum: make([]float32, n),
		scale: float32(len(columns)) * float32(len(lines)) / (float32(r.width) * float32(r.height)),
	}
}

// strip makes rows from to to. A pixel row that belongs to two of them is read
// once: its sums along x are kept.
func (w *reducer) strip(from, to int, emit func(y int, row []float32)) {
	have := -1
	for y := from; y < to; y++ {
		clear(w.sum)
		s := w.lines[y]
		for line := s.first; line <= s.last; line++ {
			if line != have {
				w.read(line, w.across)
				have = line
			}
			addWeighted(w.sum, w.across, s.weight(line)*w.scale)
		}
		emit(y, w.sum)
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

// sumAcross adds each cell's pixels along a row of so many channels.
func sumAcross(columns []span, channels int, pixels, sums []float32) {
	for x, s := range columns {
		cell := sums[channels*x : channels*(x+1)]
		clear(cell)
		for i := s.first; i <= s.last; i++ {
			addWeighted(cell, pixels[channels*i:channels*(i+1)], s.weight(i))
		}
	}
}
