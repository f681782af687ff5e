package analyze

import "slices"

// under returns the parts of fewer than least pixels.
func (q *parts[N]) under(least int) []int {
	var small []int
	for n, pixels := range q.pixels {
		if pixels < least {
			small = append(small, n)
		}
	}
	return small
}

// scraps returns every part but the largest of each number.
func (q *parts[N]) scraps() []int {
	var largest [1 << 16]int // part + 1 of each number
	for n, pixels := range q.pixels {
		if l := largest[q.number(n)]; l == 0 || pixels > q.pixels[l-1] {
			largest[q.number(n)] = n + 1
		}
	}
	var scraps []int
	for n := range q.pixels {
		if largest[q.number(n)] != n+1 {
			scraps = append(scraps, n)
		}
	}
	return scraps
}

// absorb joins each of the small parts to the neighbour it shares the longest border
// with, the smallest first, and writes the outcome to of.
// One that has grown to enough pixels by its turn stays.
func (q *parts[N]) absorb(of []N, small []int, enough int) {
	slices.SortStableFunc(small, func(a, b int) int { return q.pixels[a] - q.pixels[b] })
	w := newUnion(q)
	for _, n := range small {
		if w.pixels[n] < enough {
			w.join(n)
		}
	}
	for _, n := range small {
		if h := w.holder(n); h != n {
			q.paint(of, n, q.number(h))
		}
	}
}

// number returns the number of part n.
func (q *parts[N]) number(n int) N { return q.runs[q.order[q.first[n]]].number }

// paint gives the pixels of part n a number.
func (q *parts[N]) paint(of []N, n int, number N) {
	for _, i := range q.order[q.first[n]:q.first[n+1]] {
		r := q.runs[i]
		row := of[int(r.y)*q.width+int(r.from) : int(r.y)*q.width+int(r.to)]
		for x := range row {
			row[x] = number
		}
	}
}

// union is the parts as they are joined.
type union[N uint8 | uint16] struct {
	parts  *parts[N]
	into   []int   // the part that took part n in; n itself if none did
	taken  [][]int // the parts that part n took in
	pixels []int   // of part n with those
	sides  []int   // scratch: sides shared with part n
}

func newUnion[N uint8 | uint16](q *parts[N]) *union[N] {
	w := &union[N]{parts: q, into: make([]int, len(q.pixels)), taken: make([][]int, len(q.pixels)),
		pixels: slices.Clone(q.pixels), sides: make([]int, len(q.pixels))}
	for n := range w.into {
		w.into[n] = n
	}
	return w
}

// holder returns the part that part n has become part of.
func (w *union[N]) holder(n int) int {
	for w.into[n] != n {
		w.into[n] = w.into[w.into[n]]
		n = w.into[n]
	}
	return n
}

// join joins part n to the part it shares the longest border with, ties to the lower
// number; the only part there is stays.
func (w *union[N]) join(n int) {
	best := -1
	near := w.near(n)
	for _, h := range near {
		if best < 0 || w.sides[h] > w.sides[best] || w.sides[h] == w.sides[best] && h < best {
			best = h
		}
	}
	for _, h := range near {
		w.sides[h] = 0
	}
	if best < 0 {
		return
	}
	w.into[n] = best
	w.pixels[best] += w.pixels[n]
	w.taken[best] = append(append(w.taken[best], w.taken[n]...), n)
}

// near returns the parts around part n, and leaves in sides what it shares with each.
func (w *union[N]) near(n int) []int {
	var near []int
	q := w.parts
	for _, m := range append(slices.Clip(w.taken[n]), n) {
		for _, i := range q.order[q.first[m]:q.first[m+1]] {
			q.touches(i, func(j, sides int) {
				h := w.holder(int(q.runs[j].part))
				if h == n {
					return
				}
				if w.sides[h] == 0 {
					near = append(near, h)
				}
				w.sides[h] += sides
			})
		}
	}
	return near
}
