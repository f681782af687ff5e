package analyze

import (
	"bytes"
	"cmp"
	"math"
	"slices"
)

// Mark is a place where the number of a step can be printed.
type Mark struct {
	X, Y   int // pixel
	Step   int
	Radius float64 // pixels to the nearest of another step or off the picture; all nearer are free
}

// mostMarks bounds the numbers on a picture: more could not be read. Ours.
const mostMarks = 150

// Ours: a number needs this share of the long side free around it to be read.
const leastRadiusShare = 1.0 / 150

// Ours: marks of one part are this share of the long side apart or more, so that
// only long parts get several.
const markSpacingShare = 1.0 / 4

// measuredSide is about how long the picture is when its room is measured; what is
// found is measured again at full size.
const measuredSide = 400

// marks returns where the numbers of the steps go: in each part that has room, the
// point farthest from its border, the roomiest parts first; then more of the kind
// in long parts.
func marks(width, height int, of []uint8) []Mark {
	long := float64(max(width, height))
	room := &room{width: width, height: height, of: of}
	room.measure(max(1, int(long)/measuredSide))
	least := max(1, long*leastRadiusShare)
	peaks := room.peaks(least)
	placed := make([][]Mark, room.parts)
	total := 0
	for _, first := range [2]bool{true, false} {
		for _, i := range peaks {
			if total == mostMarks {
				break
			}
			have := placed[room.part[i]]
			if first != (len(have) == 0) {
				continue
			}
			m := room.at(i)
			if crowded(m, have, long*markSpacingShare) {
				continue
			}
			if m.Radius = room.radius(m); m.Radius < least {
				continue
			}
			placed[room.part[i]] = append(have, m)
			total++
		}
	}
	all := slices.Concat(placed...)
	all = append(all, room.leftOut(all)...)
	slices.SortFunc(all, func(a, b Mark) int { return cmp.Or(a.Y-b.Y, a.X-b.X) })
	return slices.Clip(all)
}

// leftOut returns a mark for each step that has none yet, where it has the most room,
// however little that is.
func (r *room) leftOut(marked []Mark) []Mark {
	var has [256]bool
	for _, m := range marked {
		has[m.Step] = true
	}
	var best [256]int
	for i, far := range r.far {
		if n := r.step[i]; n != rim && !has[n] && (best[n] == 0 || far > r.far[best[n]-1]) {
			best[n] = i + 1
		}
	}
	var marks []Mark
	for _, i := range best {
		if i > 0 {
			m := r.at(i - 1)
			m.Radius = r.radius(m)
			marks = append(marks, m)
		}
	}
	return marks
}

// crowded reports whether m is nearer than spacing to one of the marks.
func crowded(m Mark, marks []Mark, spacing float64) bool {
	for _, n := range marks {
		if math.Hypot(float64(m.X-n.X), float64(m.Y-n.Y)) < spacing {
			return true
		}
	}
	return false
}

// room is how far the pixels are from another step, at a reduced size: every
// factor-th pixel of every factor-th row, with a rim of no step around.
type room struct {
	width, height int // of the picture
	of            []uint8
	factor        int
	columns, rows int // with the rim
	step          []uint8
	far           []int32 // to another step or the picture's edge, in thirds of a reduced pixel
	part          []int32 // connected part
	parts         int
}

// One step along a row or column counts 3 and a diagonal one 4: within 6 % of the
// straight distance. Source: [Borgefors1986], chamfer 3-4.
const (
	straight = 3
	diagonal = 4
)

// rim is the step of no step.
const rim = 255

// measure thins the picture out and measures it.
func (r *room) measure(factor int) {
	r.factor = factor
	r.columns, r.rows = (r.width+factor-1)/factor+2, (r.height+factor-1)/factor+2
	r.step = bytes.Repeat([]byte{rim}, r.columns*r.rows)
	for y := 1; y < r.rows-1; y++ {
		row := r.of[(y-1)*factor*r.width:]
		for x := 1; x < r.columns-1; x++ {
			r.step[y*r.columns+x] = row[(x-1)*factor]
		}
	}
	q := partsOf(r.step, r.columns, r.rows)
	r.parts = len(q.pixels)
	r.part = make([]int32, len(r.step))
	for _, s := range q.runs {
		row := r.part[int(s.y)*r.columns:]
		for x := s.from; x < s.to; x++ {
			row[x] = s.part
		}
	}
	r.far = make([]int32, len(r.step))
	inner := len(r.far) - r.columns - 1 // the first pixel that is surely of the rim
	for i := r.columns + 1; i < inner; i++ {
		r.far[i] = math.MaxInt32
		r.sweep(i, -1)
	}
	for i := inner - 1; i > r.columns; i-- {
		r.sweep(i, 1)
	}
}

// sweep lets pixel i take what its neighbours before it (d = -1) or after it (d = 1)
// know of the distance.
func (r *room) sweep(i, d int) {
	step, far := r.step[i], r.far[i]
	if step == rim {
		r.far[i] = 0
		return
	}
	for _, n := range [4]struct {
		at   int
		cost int32
	}{{i + d, straight}, {i + d*r.columns, straight}, {i + d*(r.columns+1), diagonal}, {i + d*(r.columns-1), diagonal}} {
		through := n.cost
		if r.step[n.at] == step {
			through += r.far[n.at]
		}
		if through < far {
			far = through
		}
	}
	r.far[i] = far
}

// peaks returns the reduced pixels that are no nearer to another step than any
// around them and have least picture pixels of room, the roomiest first.
func (r *room) peaks(least float64) []int {
	enough := int32(least * straight / float64(r.factor))
	var peaks []int
	for i, far := range r.far {
		if far >= enough && r.step[i] != rim && r.peak(i) {
			peaks = append(peaks, i)
		}
	}
	slices.SortStableFunc(peaks, func(a, b int) int { return int(r.far[b] - r.far[a]) })
	return peaks
}

// peak reports whether none of the eight pixels around i, not of the rim, has more room.
func (r *room) peak(i int) bool {
	for _, row := range [3]int{i - r.columns, i, i + r.columns} {
		if r.far[row-1] > r.far[i] || r.far[row] > r.far[i] || r.far[row+1] > r.far[i] {
			return false
		}
	}
	return true
}

// at returns the mark at reduced pixel i, its radius still to be measured.
func (r *room) at(i int) Mark {
	x, y := (i%r.columns-1)*r.factor, (i/r.columns-1)*r.factor
	return Mark{X: x, Y: y, Step: int(r.of[y*r.width+x])}
}

// radius measures on the picture how far the mark is from another step or the edge.
func (r *room) radius(m Mark) float64 {
	best := min(m.X+1, r.width-m.X, m.Y+1, r.height-m.Y)
	square := best * best
	for dy := 0; dy*dy < square; dy++ {
		for _, y := range [2]int{m.Y - dy, m.Y + dy} {
			if y < 0 || y >= r.height {
				continue
			}
			row := r.of[y*r.width : (y+1)*r.width]
			for dx := 0; dx*dx+dy*dy < square; dx++ {
				left, right := m.X-dx, m.X+dx
				if left >= 0 && int(row[left]) != m.Step || right < r.width && int(row[right]) != m.Step {
					square = dx*dx + dy*dy
				}
			}
		}
	}
	return math.Sqrt(float64(square))
}
