// Package analyze reads a photo and says what is in it: the picture at working
// size, its values, its regions and their colours. It knows no paint and no panel.
package analyze

import (
	"image"

	"tonewright/analyze/colour"
)

// Picture is the upright, cropped photo at working size.
// len(Lab) == len(RGB) == 3 × Width × Height, row by row from the top left.
type Picture struct {
	Width, Height int
	Lab           []float32 // L* 0-100, a*, b*; D65, 2° observer
	RGB           []uint8   // the same pixels as sRGB, 0-255, for the views
}

// At returns the colour of pixel i, counted row by row from the top left.
func (p *Picture) At(i int) colour.Lab {
	return colour.Lab{L: float64(p.Lab[3*i]), A: float64(p.Lab[3*i+1]), B: float64(p.Lab[3*i+2])}
}

// Median returns the median of each of L*, a* and b* over a rectangle of at least one
// pixel of the picture, so that a bright speck or a line across it does not pull it.
func (p *Picture) Median(r image.Rectangle) colour.Lab {
	var of [3][]float64
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			i := 3 * (y*p.Width + x)
			for c := range of {
				of[c] = append(of[c], float64(p.Lab[i+c]))
			}
		}
	}
	return colour.Lab{L: median(of[0]), A: median(of[1]), B: median(of[2])}
}
