package analyze

import "image"

// crack is the side between two pixels of different regions, walked so that the region
// with the lower number is on the left hand.
type crack struct {
	from image.Point // corner of pixels; (0, 0) is the top left of the picture
	way  uint8       // east, south, west, north
	a, b uint8       // regions on the left and the right, a < b
}

const (
	east = iota
	south
	west
	north
)

// stride is one step each way; y runs down.
var stride = [4]image.Point{east: {1, 0}, south: {0, 1}, west: {-1, 0}, north: {0, -1}}

// leftOf and rightOf are the pixels beside a crack, from the corner that it starts at.
var (
	leftOf  = [4]image.Point{east: {0, -1}, south: {0, 0}, west: {-1, 0}, north: {-1, -1}}
	rightOf = [4]image.Point{east: {0, 0}, south: {-1, 0}, west: {-1, -1}, north: {0, -1}}
)

// line is a border of two regions in order: a ring, or from where it meets a third
// region or the frame to where it meets the next.
type line struct {
	cracks []crack
	ring   bool
}

// linesOf returns the borders between the regions of a raster, in the order of their
// first crack, row by row; those that are no ring first.
func linesOf(of []uint8, width, height int) []line {
	cracks := cracksOf(of, width, height)
	next := follow(cracks, width, height)
	begins := make([]bool, len(cracks))
	for i := range begins {
		begins[i] = true
	}
	for _, n := range next {
		if n >= 0 {
			begins[n] = false
		}
	}
	var lines []line
	taken := make([]bool, len(cracks))
	for _, ring := range [2]bool{false, true} {
		for i := range cracks {
			if taken[i] || !ring && !begins[i] {
				continue
			}
			l := line{ring: ring}
			for n := int32(i); n >= 0 && !taken[n]; n = next[n] {
				taken[n] = true
				l.cracks = append(l.cracks, cracks[n])
			}
			lines = append(lines, l)
		}
	}
	return lines
}

// cracksOf returns the sides between pixels of different regions, row by row.
func cracksOf(of []uint8, width, height int) []crack {
	var cracks []crack
	for y := range height {
		row := of[y*width : (y+1)*width]
		if y > 0 {
			for x, above := range of[(y-1)*width : y*width] {
				switch below := row[x]; {
				case above < below:
					cracks = append(cracks, crack{image.Pt(x, y), east, above, below})
				case above > below:
					cracks = append(cracks, crack{image.Pt(x+1, y), west, below, above})
				}
			}
		}
		for x := 1; x < width; x++ {
			switch left, right := row[x-1], row[x]; {
			case left < right:
				cracks = append(cracks, crack{image.Pt(x, y+1), north, left, right})
			case left > right:
				cracks = append(cracks, crack{image.Pt(x, y), south, right, left})
			}
		}
	}
	return cracks
}

// follow returns the crack that each goes on with, or -1: one of the same two regions
// that starts where it ends. Where two do, at a corner where each region meets itself,
// the one to the left, so that every crack is gone on with once.
func follow(cracks []crack, width, height int) []int32 {
	first := make([]int32, (width+1)*(height+1)) // by corner: 1 + the crack that starts there
	other := make([]int32, len(cracks))          // the same: 1 + another that does
	at := func(p image.Point) int { return p.Y*(width+1) + p.X }
	for i, c := range cracks {
		other[i] = first[at(c.from)]
		first[at(c.from)] = int32(i + 1)
	}
	next := make([]int32, len(cracks))
	for i, c := range cracks {
		next[i] = -1
		for n := first[at(c.from.Add(stride[c.way]))]; n > 0; n = other[n-1] {
			d := &cracks[n-1]
			if d.a == c.a && d.b == c.b && (next[i] < 0 || d.way == (c.way+north)%4) {
				next[i] = n - 1
			}
		}
	}
	return next
}
