// Ridges of the slopes: where colour changes most steeply, without texture.

package analyze

import "math"

// ridges are where a sketch's colour changes most steeply across: the middles of edges,
// a pixel wide.
type ridges struct {
	*slopes
	high []float32 // of the ridge at each pixel, less the texture around it; 0 where there is none
	at   []Place   // on the sketch, of a pixel that is on a ridge
}

// ridgesOf thins the edges to their middles and takes off what the surroundings are full
// of too. Source: [Canny1986] (non-maximum suppression), [Grigorescu2003] (surround
// inhibition, isotropic).
func ridgesOf(s *slopes) *ridges {
	r := &ridges{slopes: s, high: make([]float32, len(s.steep)), at: make([]Place, len(s.steep))}
	around := s.around()
	inParallel(s.height, func(y int) {
		if y == 0 || y == s.height-1 {
			return
		}
		for x := 1; x < s.width-1; x++ {
			i := y*s.width + x
			high := s.steep[i] - float32(inhibition*around[i])
			if high <= 0 {
				continue
			}
			if off, is := s.crest(i); is {
				r.high[i] = high
				way := s.across[i]
				r.at[i] = Place{float64(x) + 0.5 + float64(off*way[0]), float64(y) + 0.5 + float64(off*way[1])}
			}
		}
	})
	return r
}

// crest tells whether pixel i is steeper than what is before and behind it across the
// edge, and how far from its centre the steepest place is, by a parabola.
// Source: [Devernay1995].
func (s *slopes) crest(i int) (float32, bool) {
	way := s.across[i]
	before, behind := s.between(i, -way[0], -way[1]), s.between(i, way[0], way[1])
	m := s.steep[i]
	if m < before || m <= behind {
		return 0, false
	}
	return (before - behind) / (2 * (before - 2*m + behind)), true
}

// between returns the steepness a pixel from pixel i the way (u, v), of length 1, where
// that crosses the square of its eight neighbours' centres.
func (s *slopes) between(i int, u, v float32) float32 {
	stepX, stepY := 1, s.width
	if u < 0 {
		stepX, u = -1, -u
	}
	if v < 0 {
		stepY, v = -s.width, -v
	}
	diagonal := s.steep[i+stepX+stepY]
	if u >= v {
		t := v / u
		return float32((1-t)*s.steep[i+stepX]) + float32(t*diagonal)
	}
	t := u / v
	return float32((1-t)*s.steep[i+stepY]) + float32(t*diagonal)
}

// What is taken off a ridge: the mean steepness in a square ring around it, from
// ringInside to ringOutside pixels of the sketch. Ours: 2 to 7 mm on a 12-inch panel; a
// lone edge loses about a tenth, a texture most of what it has.
const (
	inhibition  = 1
	ringInside  = 3
	ringOutside = 12
)

// around returns the mean steepness in a square ring around each pixel.
func (s *slopes) around() []float32 {
	w := s.width + 1
	sums := make([]float64, w*(s.height+1))
	for y := range s.height {
		row := 0.0
		for x := range s.width {
			row += float64(s.steep[y*s.width+x])
			sums[(y+1)*w+x+1] = sums[y*w+x+1] + row
		}
	}
	square := func(x, y, reach int) (sum, n float64) {
		x0, x1, y0, y1 := max(0, x-reach), min(s.width, x+reach+1), max(0, y-reach), min(s.height, y+reach+1)
		return sums[y1*w+x1] - sums[y0*w+x1] - sums[y1*w+x0] + sums[y0*w+x0], float64((x1 - x0) * (y1 - y0))
	}
	means := make([]float32, len(s.steep))
	inParallel(s.height, func(y int) {
		for x := range s.width {
			all, n := square(x, y, ringOutside)
			middle, m := square(x, y, ringInside)
			means[y*s.width+x] = float32((all - middle) / math.Max(1, n-m))
		}
	})
	return means
}
