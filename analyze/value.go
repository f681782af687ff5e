package analyze

import "fmt"

// ValueMap is the picture in a few steps of lightness.
type ValueMap struct {
	Steps []float64 // Munsell value of each step, dark to light
	Of    []uint8   // len == Width × Height: index in Steps of each pixel
	Marks []Mark    // row by row
}

// Values returns the picture in 5 steps (Munsell values 1, 3, 5, 7, 9) or 9 (1 to 9).
// A step reaches half way to the next; the outer ones reach to black and to white.
// Parts too small to paint are joined to what surrounds them.
// It panics on any other number of steps.
func Values(p *Picture, steps int) ValueMap {
	m := ValueMap{Steps: stepValues(steps), Of: make([]uint8, p.Width*p.Height), Marks: []Mark{}}
	if len(m.Of) == 0 {
		return m
	}
	assign(p, m.Steps, smoothing(p), m.Of)
	q := partsOf(m.Of, p.Width, p.Height)
	q.absorb(m.Of, q.under(smallestPart(p)), smallestPart(p))
	m.Marks = marks(p.Width, p.Height, m.Of)
	return m
}

// stepValues returns the Munsell value of each step, dark to light.
func stepValues(steps int) []float64 {
	switch steps {
	case 5:
		return []float64{1, 3, 5, 7, 9}
	case 9:
		return []float64{1, 2, 3, 4, 5, 6, 7, 8, 9}
	}
	panic(fmt.Sprintf("analyze: %d value steps, want 5 or 9", steps))
}

// Ours: the smallest part that is kept, as a share of the picture. On a panel of
// 12 × 9 in it is a patch of 4 mm by 4 mm, about a small brush's touch.
const smallestPartShare = 0.00023

// smallestPart returns the pixels of the smallest part that is kept.
func smallestPart(p *Picture) int {
	return int(smallestPartShare * float64(p.Width*p.Height))
}

// smoothing returns the radius of the window whose median a pixel takes, so that grain
// and texture do not fray the edges of the steps.
// Ours: one in 400 of the long side; none in a picture of hand size.
func smoothing(p *Picture) int { return min(mostRadius, max(p.Width, p.Height)/400) }
