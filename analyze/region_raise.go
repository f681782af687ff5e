package analyze

import (
	"math"

	"tonewright/analyze/colour"
)

// raised brings the areas of the sketch back to working size. Away from edges a
// pixel takes the area of its block; within a block of an edge it takes that of the
// block nearby that is nearest to it in place and colour.
func raised(p *Picture, s *sketch, areas []uint8) []uint8 {
	of := make([]uint8, p.Width*p.Height)
	for y := range s.height {
		for x := range s.width {
			if edge(s, areas, x, y) {
				trace(p, s, areas, x, y, of)
			} else {
				blot(p, s, areas[y*s.width+x], x, y, of)
			}
		}
	}
	return of
}

// edge reports whether a block touches, also by a corner, one of another area.
func edge(s *sketch, areas []uint8, x, y int) bool {
	for v := max(0, y-1); v <= min(s.height-1, y+1); v++ {
		for u := max(0, x-1); u <= min(s.width-1, x+1); u++ {
			if areas[v*s.width+u] != areas[y*s.width+x] {
				return true
			}
		}
	}
	return false
}

// blot gives a block's pixels one area.
func blot(p *Picture, s *sketch, area uint8, x, y int, of []uint8) {
	for row := y * s.factor; row < min(p.Height, (y+1)*s.factor); row++ {
		line := of[row*p.Width+x*s.factor : row*p.Width+min(p.Width, (x+1)*s.factor)]
		for i := range line {
			line[i] = area
		}
	}
}

// Ours: one block's distance counts as much as this much colour, in Lab.
const blockColour = 8

// trace gives each pixel of a block the area of the nearest of the nine blocks around.
func trace(p *Picture, s *sketch, areas []uint8, x, y int, of []uint8) {
	f := float64(s.factor)
	for row := y * s.factor; row < min(p.Height, (y+1)*s.factor); row++ {
		for column := x * s.factor; column < min(p.Width, (x+1)*s.factor); column++ {
			i := row*p.Width + column
			of[i] = nearestBlock(s, areas, x, y, (float64(column)+0.5)/f-0.5, (float64(row)+0.5)/f-0.5, p.At(i))
		}
	}
}

// nearestBlock returns the area of the block, of those around x, y, that is nearest to
// a place and a colour.
func nearestBlock(s *sketch, areas []uint8, x, y int, atX, atY float64, c colour.Lab) uint8 {
	area, least := areas[y*s.width+x], math.MaxFloat64
	for v := max(0, y-1); v <= min(s.height-1, y+1); v++ {
		for u := max(0, x-1); u <= min(s.width-1, x+1); u++ {
			k := &s.lab[v*s.width+u]
			dx, dy, dl, da, db := atX-float64(u), atY-float64(v), c.L-k.L, c.A-k.A, c.B-k.B
			if far := dl*dl + da*da + db*db + blockColour*blockColour*(dx*dx+dy*dy); far < least {
				area, least = areas[v*s.width+u], far
			}
		}
	}
	return area
}
