package analyze

import "math"

// Ours: enough superpixels that an area of a hundredth of the picture holds a few,
// few enough to compare all neighbours in a millisecond.
const superpixelCount = 500

// The weight of place against colour: at one superpixel's spacing, place counts as
// much as this much colour. [Achanta2012] use 10 of CIELAB; our space is tighter.
const compactness = 6

// [Achanta2012] iterate ten times; on our photos nothing visible moves after five.
const superpixelRounds = 5

// seed is a superpixel as it forms: its mean colour and place.
type seed struct {
	colour even
	x, y   float64
}

// superpixels returns for each pixel of the sketch the number of its superpixel: a
// small patch of one colour, about square where there is no edge to follow.
// Not every patch is connected.
// Source: [Achanta2012], without their move of the seeds to the lowest gradient.
func superpixels(s *sketch) []uint16 {
	step := math.Max(1, math.Sqrt(float64(s.width*s.height)/superpixelCount))
	columns := max(1, int(math.Round(float64(s.width)/step)))
	rows := max(1, int(math.Round(float64(s.height)/step)))
	of := make([]uint16, s.width*s.height)
	for y := range s.height {
		for x := range s.width {
			of[y*s.width+x] = uint16(y*rows/s.height*columns + x*columns/s.width)
		}
	}
	seeds := make([]seed, rows*columns)
	near := make([]float64, len(of))
	for range superpixelRounds {
		reseed(s, of, seeds)
		for i := range near {
			near[i] = math.MaxFloat64
		}
		for n := range seeds {
			seeds[n].claim(s, uint16(n), step, near, of)
		}
	}
	return of
}

// reseed moves the seeds to the mean of their pixels; one without pixels stays.
func reseed(s *sketch, of []uint16, seeds []seed) {
	sums := make([]seed, len(seeds))
	pixels := make([]float64, len(seeds))
	for y := range s.height {
		for x := range s.width {
			i := y*s.width + x
			n := of[i]
			sum, c := &sums[n], &s.colours[i]
			sum.colour[0] += c[0]
			sum.colour[1] += c[1]
			sum.colour[2] += c[2]
			sum.x += float64(x)
			sum.y += float64(y)
			pixels[n]++
		}
	}
	for n, sum := range sums {
		if w := pixels[n]; w > 0 {
			c := sum.colour
			seeds[n] = seed{even{c[0] / w, c[1] / w, c[2] / w}, sum.x / w, sum.y / w}
		}
	}
}

// claim takes the pixels within a step of the seed that are nearer to it, in colour
// and place, than to the seed that holds them.
func (d *seed) claim(s *sketch, n uint16, step float64, near []float64, of []uint16) {
	weight := compactness * compactness / (step * step)
	left, right := max(0, int(d.x-step)), min(s.width-1, int(d.x+step+1))
	top, bottom := max(0, int(d.y-step)), min(s.height-1, int(d.y+step+1))
	for y := top; y <= bottom; y++ {
		dy := float64(y) - d.y
		for x := left; x <= right; x++ {
			i := y*s.width + x
			dx := float64(x) - d.x
			if far := d.colour.squared(&s.colours[i]) + weight*(dx*dx+dy*dy); far < near[i] {
				near[i], of[i] = far, n
			}
		}
	}
}
