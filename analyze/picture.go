// Package analyze reads a photo and says what is in it: the picture at working
// size, its values, its regions and their colours. It knows no paint and no panel.
package analyze

import "tonewright/analyze/colour"

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
