// How steeply a picture's colour changes, and in which direction.

package analyze

import "math"

// slopes are the edges of a sketch: how steeply its colour changes at each pixel, and
// which way.
type slopes struct {
	width, height int
	steep         []float32    // colour a pixel, in the even space with its axes weighted
	across        [][2]float32 // the way it changes most, of length 1; either of both ways
}

// slopesOf returns the gradient of a picture of three planes together: the greatest
// eigenvalue of the sum of their structure tensors, and its direction.
// Source: [DiZenzo1986].
func slopesOf(planes [3][]float32, width, height int) *slopes {
	s := &slopes{width: width, height: height, steep: make([]float32, width*height), across: make([][2]float32, width*height)}
	inParallel(height, func(y int) {
		above, below := max(0, y-1)*width, min(height-1, y+1)*width
		for x := range width {
			left, right := y*width+max(0, x-1), y*width+min(width-1, x+1)
			var xx, xy, yy float32
			for _, p := range planes {
				dx, dy := (p[right]-p[left])/2, (p[below+x]-p[above+x])/2
				xx += float32(dx * dx)
				xy += float32(dx * dy)
				yy += float32(dy * dy)
			}
			i := y*width + x
			s.steep[i], s.across[i] = steepest(xx, xy, yy)
		}
	})
	return s
}

// steepest returns the square root of the greater eigenvalue of a tensor, and its
// direction.
func steepest(xx, xy, yy float32) (float32, [2]float32) {
	half := (xx - yy) / 2
	root := root32(float32(half*half) + float32(xy*xy))
	greatest := (xx+yy)/2 + root
	u, v := xy, root-half // of two ways to write the eigenvector the one that does not vanish
	if half > 0 {
		u, v = root+half, xy
	}
	n := root32(float32(u*u) + float32(v*v))
	if n == 0 {
		return root32(max(0, greatest)), [2]float32{1, 0}
	}
	return root32(max(0, greatest)), [2]float32{u / n, v / n}
}

func root32(x float32) float32 { return float32(math.Sqrt(float64(x))) }

// blurred returns a plane smoothed by a Gaussian of deviation sigma, in pixels; beyond
// its edges it goes on as it ends.
func blurred(plane []float32, width, height int, sigma float64) []float32 {
	kernel := gaussian(sigma)
	reach := len(kernel) - 1
	rows := make([]float32, len(plane))
	inParallel(height, func(y int) {
		in, out := plane[y*width:(y+1)*width], rows[y*width:(y+1)*width]
		padded := make([]float32, width+2*reach)
		for i := range padded {
			padded[i] = in[min(max(0, i-reach), width-1)]
		}
		for x := range out {
			sum := float32(kernel[0] * padded[x+reach])
			for k := 1; k <= reach; k++ {
				sum += float32(kernel[k] * (padded[x+reach-k] + padded[x+reach+k]))
			}
			out[x] = sum
		}
	})
	result := make([]float32, len(plane))
	inParallel(height, func(y int) {
		out := result[y*width : (y+1)*width]
		for x, v := range rows[y*width : (y+1)*width] {
			out[x] = float32(kernel[0] * v)
		}
		for k := 1; k <= reach; k++ {
			above, below := rows[max(0, y-k)*width:], rows[min(height-1, y+k)*width:]
			for x := range out {
				out[x] += float32(kernel[k] * (above[x] + below[x]))
			}
		}
	})
	return result
}

// gaussian returns half of a Gaussian of sum 1, from its middle to three deviations.
func gaussian(sigma float64) []float32 {
	half := make([]float64, 1+int(math.Ceil(3*sigma)))
	sum := 0.0
	for k := range half {
		half[k] = math.Exp(-float64(k*k) / (2 * sigma * sigma))
		sum += half[k]
		if k > 0 {
			sum += half[k]
		}
	}
	kernel := make([]float32, len(half))
	for k, v := range half {
		kernel[k] = float32(v / sum)
	}
	return kernel
}
