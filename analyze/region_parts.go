package analyze

import "slices"

// parts are the connected parts of a raster of numbers: pixels that touch along
// a side and have the same number are one part. They are kept as runs along the
// rows, of which a raster of areas has a hundredth of its pixels.
type parts[N uint8 | uint16] struct {
	width, height int
	runs          []run[N]
	row           []int // row[y] is the first run of row y; len(row) == height+1
	pixels        []int // of each part
	first         []int // runs of part n are order[first[n]:first[n+1]]
	order         []int
}

// run is a stretch of pixels [from, to) of one row with one number.
type run[N uint8 | uint16] struct {
	y, from, to int32
	part        int32
	number      N
}

// partsOf returns the connected parts, numbered in the order of their first pixel.
func partsOf[N uint8 | uint16](of []N, width, height int) *parts[N] {
	q := &parts[N]{width: width, height: height, row: make([]int, height+1)}
	q.cut(of)
	q.join()
	q.list()
	return q
}

// cut writes the rows as runs; each run is its own part until join.
func (q *parts[N]) cut(of []N) {
	for y := range q.height {
		q.row[y] = len(q.runs)
		row := of[y*q.width : (y+1)*q.width]
		for x := 0; x < len(row); {
			from, n := x, row[x]
			for x++; x < len(row) && row[x] == n; x++ {
			}
			q.runs = append(q.runs, run[N]{y: int32(y), from: int32(from), to: int32(x), part: int32(len(q.runs)), number: n})
		}
	}
	q.row[q.height] = len(q.runs)
}

// join unites runs that touch the row above with the same number; the lower run
// index is the root, so the numbering does not depend on the order of the unions.
func (q *parts[N]) join() {
	root := func(i int32) int32 {
		for q.runs[i].part != i {
			q.runs[i].part = q.runs[q.runs[i].part].part
			i = q.runs[i].part
		}
		return i
	}
	for y := 1; y < q.height; y++ {
		above := q.row[y-1]
		for i := q.row[y]; i < q.row[y+1]; i++ {
			r := &q.runs[i]
			for ; q.runs[above].to <= r.from; above++ {
			}
			for j := above; j < q.row[y] && q.runs[j].from < r.to; j++ {
				if q.runs[j].number != r.number {
					continue
				}
				a, b := root(int32(i)), root(int32(j))
				q.runs[max(a, b)].part = min(a, b)
			}
		}
	}
	q.renumber()
}

// renumber turns the run that each run was united with into the number of its part.
func (q *parts[N]) renumber() {
	number := make([]int32, len(q.runs))
	for i := range q.runs {
		r := &q.runs[i]
		if r.part == int32(i) {
			number[i] = int32(len(q.pixels))
			q.pixels = append(q.pixels, 0)
		} else {
			number[i] = number[r.part] // that run is before this one
		}
		r.part = number[i]
		q.pixels[r.part] += int(r.to - r.from)
	}
}

// list sorts the runs by part.
func (q *parts[N]) list() {
	q.first = make([]int, len(q.pixels)+1)
	for i := range q.runs {
		q.first[q.runs[i].part+1]++
	}
	for n := range q.pixels {
		q.first[n+1] += q.first[n]
	}
	q.order = make([]int, len(q.runs))
	next := slices.Clone(q.first)
	for i := range q.runs {
		n := q.runs[i].part
		q.order[next[n]] = i
		next[n]++
	}
}

// touches calls touch with every run that shares a side with run i, and the
// number of pixel sides they share.
func (q *parts[N]) touches(i int, touch func(j, sides int)) {
	r := q.runs[i]
	if r.from > 0 {
		touch(i-1, 1)
	}
	if int(r.to) < q.width {
		touch(i+1, 1)
	}
	for _, y := range [2]int{int(r.y) - 1, int(r.y) + 1} {
		if y < 0 || y >= q.height {
			continue
		}
		j, _ := slices.BinarySearchFunc(q.runs[q.row[y]:q.row[y+1]], r.from, func(s run[N], from int32) int {
			if s.to <= from {
				return -1
			}
			return 1
		})
		for j += q.row[y]; j < q.row[y+1] && q.runs[j].from < r.to; j++ {
			touch(j, int(min(r.to, q.runs[j].to)-max(r.from, q.runs[j].from)))
		}
	}
}
