package analyze

import "tonewright/analyze/colour"

// Lightness is summed in whole 256ths of L*, so that sums kept up along the rows
// stay exact.
const perL = 256

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

// assign gives each pixel the step of the mean lightness of the square around it.
func assign(p *Picture, steps []float64, of []uint8) {
	radius := blurRadius(p)
	table := stepTable(steps)
	sums := make([]int32, p.Width) // down the rows within the radius
	for y := -radius; y < p.Height; y++ {
		if in := y + radius; in < p.Height {
			addRow(sums, p.Lab[3*in*p.Width:], 1)
		}
		if out := y - radius - 1; out >= 0 {
			addRow(sums, p.Lab[3*out*p.Width:], -1)
		}
		if y >= 0 {
			rows := min(p.Height-1, y+radius) - max(0, y-radius) + 1
			assignRow(sums, radius, int32(rows), table, of[y*p.Width:(y+1)*p.Width])
		}
	}
}

// addRow adds the lightness of a row to the sums, times sign.
func addRow(sums []int32, lab []float32, sign int32) {
	for x := range sums {
		l := min(max(lab[3*x], 0), 100)
		sums[x] += sign * int32(l*perL+0.5)
	}
}

// assignRow gives a row's pixels their steps; sums holds rows rows of lightness.
func assignRow(sums []int32, radius int, rows int32, table []uint8, of []uint8) {
	sum, columns := int32(0), int32(0)
	for x := -radius; x < len(sums); x++ {
		if in := x + radius; in < len(sums) {
			sum += sums[in]
			columns++
		}
		if out := x - radius - 1; out >= 0 {
			sum -= sums[out]
			columns--
		}
		if x >= 0 {
			of[x] = table[sum/(rows*columns)]
		}
	}
}
