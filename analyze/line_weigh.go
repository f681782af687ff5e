package analyze

import (
	"math"

	"tonewright/analyze/colour"
)

// contrasts returns, along a line on the sketch, how far the colours of its two sides
// are apart over a hand's breadth of it.
func contrasts(planes [3][]float32, width, height int, places []Place, closed bool) []float64 {
	n := len(places)
	apart := newSums(n)
	for i := range places {
		a, b := places[max(0, i-2)], places[min(n-1, i+2)]
		if closed {
			a, b = places[(i+n-2)%n], places[(i+2)%n]
		}
		u, v := b.X-a.X, b.Y-a.Y
		long := math.Sqrt(u*u + v*v)
		if long == 0 {
			long = 1
		}
		u, v = u/long, v/long
		left := bandMean(planes, width, height, places[i], v, -u)
		right := bandMean(planes, width, height, places[i], -v, u)
		apart.put(i, colour.Lab{L: left[0] - right[0], A: left[1] - right[1], B: left[2] - right[2]})
	}
	result := make([]float64, n)
	for i := range result {
		from, to := max(0, i-zzAlong), min(n, i+zzAlong+1)
		if closed {
			w := min(zzAlong, n/4)
			from, to = i-w, i+w+1
		}
		m := apart.mean(from, to)
		result[i] = math.Sqrt(m.L*m.L + m.A*m.A + m.B*m.B)
	}
	return result
}

var zzAlong, zzFrom, zzTo = 10, 1.5, 6.0

func bandMean(planes [3][]float32, width, height int, at Place, u, v float64) (mean [3]float64) {
	n := 0.0
	for d := zzFrom; d <= zzTo; d++ {
		x, y := int(at.X+d*u), int(at.Y+d*v)
		if x < 0 || y < 0 || x >= width || y >= height {
			break
		}
		n++
		for k := range planes {
			mean[k] += float64(planes[k][y*width+x])
		}
	}
	if n == 0 {
		x, y := min(max(0, int(at.X)), width-1), min(max(0, int(at.Y)), height-1)
		for k := range planes {
			mean[k] = float64(planes[k][y*width+x])
		}
		return mean
	}
	for k := range mean {
		mean[k] /= n
	}
	return mean
}
