package analyze

import (
	"math/bits"

	"tonewright/analyze/colour"
)

// The steps of a window are counted in the lanes of a word, eight bits each: lane n
// counts the pixels of a step above n. A window has at most 127 pixels.
const (
	ones  = 0x0101010101010101
	highs = 0x8080808080808080
)

// mostRadius is that of the largest window that lanes can count.
const mostRadius = 5

// counted[n] has a one in each lane below n: step n is above the steps 0 to n-1.
var counted = [...]uint64{0, ones >> 56, ones >> 48, ones >> 40, ones >> 32, ones >> 24, ones >> 16, ones >> 8, ones}

// assign gives each pixel the median step of the square around it, of 2 × radius + 1
// pixels a side, cut off at the picture's edges. A median, unlike a mean, makes no step
// of its own where a dark and a light one meet.
// Source: [Fitch1985]: the median of steps is the sum of the medians of their thresholds.
func assign(p *Picture, steps []float64, radius int, of []uint8) {
	raw := stepsOf(p, steps)
	columns := make([]uint64, p.Width) // lanes summed down the rows within the radius
	for y := -radius; y < p.Height; y++ {
		if in := y + radius; in < p.Height {
			for x, n := range raw[in*p.Width : (in+1)*p.Width] {
				columns[x] += counted[n]
			}
		}
		if out := y - radius - 1; out >= 0 {
			for x, n := range raw[out*p.Width : (out+1)*p.Width] {
				columns[x] -= counted[n]
			}
		}
		if y >= 0 {
			rows := min(p.Height-1, y+radius) - max(0, y-radius) + 1
			medians(columns, radius, rows, of[y*p.Width:(y+1)*p.Width])
		}
	}
}

// medians gives the pixels of a row the median of their window, from the column sums
// of rows rows. A lane with more than half of the window's pixels reaches its high bit.
func medians(columns []uint64, radius, rows int, of []uint8) {
	var sum uint64
	pixels := 0
	for x := -radius; x < len(columns); x++ {
		if in := x + radius; in < len(columns) {
			sum += columns[in]
			pixels += rows
		}
		if out := x - radius - 1; out >= 0 {
			sum -= columns[out]
			pixels -= rows
		}
		if x >= 0 {
			of[x] = uint8(bits.OnesCount64((sum + ones*uint64(127-pixels/2)) & highs))
		}
	}
}

// perL is how finely lightness is told apart: 256ths of L*.
const perL = 256

// stepsOf returns the step of each pixel's own lightness.
func stepsOf(p *Picture, steps []float64) []uint8 {
	table := stepTable(steps)
	of := make([]uint8, p.Width*p.Height)
	for i := range of {
		l := p.Lab[3*i]*perL + 0.5
		if l < 0 {
			l = 0
		} else if l > 100*perL {
			l = 100 * perL
		}
		of[i] = table[int(l)]
	}
	return of
}

// stepTable returns the step of every lightness, 0 to 100 in 256ths of L*.
func stepTable(steps []float64) []uint8 {
	table := make([]uint8, 100*perL+1)
	for n := range len(steps) - 1 {
		from := colour.LOf((steps[n] + steps[n+1]) / 2)
		for l := range table {
			if float64(l) >= from*perL {
				table[l] = uint8(n + 1)
			}
		}
	}
	return table
}
