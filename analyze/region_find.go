package analyze

import "tonewright/analyze/colour"

// The picture is parted at a reduced size: a painter's areas are far larger than
// its pixels, and detail would only cut them up.
const findSide = 334 // pixels on the long side

// How many areas a picture is parted into. A picture with less to tell gets fewer.
const (
	fewestAreas = 4
	mostAreas   = 10
)

// findRegions parts the picture into connected areas by colour and place: superpixels,
// joined two at a time at the least cost, brought back to full size and named.
func findRegions(p *Picture) Parting {
	if p.Width == 0 || p.Height == 0 {
		return Parting{Regions: []Region{}, Of: []uint8{}}
	}
	s := reduced(p, (max(p.Width, p.Height)+findSide-1)/findSide)
	areas := joined(s, superpixels(s))
	of := raised(p, s, areas)
	q := partsOf(of, p.Width, p.Height)
	q.absorb(of, q.scraps(), p.Width*p.Height)
	return Parting{Regions: describe(p, of), Of: of}
}

// sketch is the picture at the size it is parted at.
type sketch struct {
	width, height int
	factor        int          // working pixels along a side of one of the sketch's
	lab           []colour.Lab // row by row
	colours       []even       // the same
}

// reduced returns the picture with f × f pixels averaged into one; at the right and lower
// edge, what there is of them.
func reduced(p *Picture, f int) *sketch {
	s := &sketch{width: (p.Width + f - 1) / f, height: (p.Height + f - 1) / f, factor: f}
	s.lab = make([]colour.Lab, s.width*s.height)
	s.colours = make([]even, s.width*s.height)
	sums := make([][3]float32, s.width)
	for y := range s.height {
		clear(sums)
		top, bottom := y*f, min(p.Height, y*f+f)
		for row := top; row < bottom; row++ {
			line := p.Lab[3*row*p.Width : 3*(row+1)*p.Width]
			for x := range sums {
				block := line[3*x*f : min(len(line), 3*(x+1)*f)]
				l, a, b := sums[x][0], sums[x][1], sums[x][2]
				for ; len(block) >= 3; block = block[3:] {
					l, a, b = l+block[0], a+block[1], b+block[2]
				}
				sums[x] = [3]float32{l, a, b}
			}
		}
		for x, sum := range sums {
			n := float64((bottom - top) * (min(p.Width, x*f+f) - x*f))
			c := colour.Lab{L: float64(sum[0]) / n, A: float64(sum[1]) / n, B: float64(sum[2]) / n}
			s.lab[y*s.width+x], s.colours[y*s.width+x] = c, unshaded(c)
		}
	}
	return s
}

// Ours: light falling off over a thing changes its lightness more than its chroma,
// so areas are told apart by less of the one and more of the other. With 0.7 and
// 1.1 nine tenths of every thing in the demo lie in areas of its own, with 1 and 1
// six tenths of a lemon; looked at on eight photos too.
const (
	lightnessWeight = 0.7
	chromaWeight    = 1.1
)

// unshaded returns c in the even space with its axes weighted for telling areas apart.
func unshaded(c colour.Lab) even {
	e := evenly(c)
	return even{lightnessWeight * e[0], chromaWeight * e[1], chromaWeight * e[2]}
}
