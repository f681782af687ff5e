package analyze

import (
	"image"
	"math"
)

// lamp is the light on a photo as its card tells it.
//
// Where light changes across the card it changes on to the swatch, and how it does
// there can be read off the swatch too if it is painted evenly: the mean of the two
// slopes over the way between is exact for a logarithm of light that bends evenly.
// Ours, measured on made photos with a smooth swatch beside the card, one and two
// and a half cards off, in five fields (lamps at the side, above and behind, a lens's
// fall-off, even light), worst of 8 swatches in CIEDE2000: nothing carried 6.2, 11.4
// and 20.2; the card's slope alone 1.2, 4.1 and 13.0; the mean of both 0.3, 0.3 and 1.0.
// Brush marks spoil the swatch's own slope, so where it is not clean the card's is
// carried alone, and no farther than two cards.
type lamp struct {
	gains cones      // that even it out, at the card's middle
	x, y  float64    // the card's middle, in upright pixels
	side  float64    // of the card, pixels
	slope [2]float64 // of the logarithm of light, per pixel right and down; 0 if none is clear
}

const (
	// The least change across the card that is carried, and how far it has to stand
	// out of the blocks' own scatter. Ours: under these, carrying grain cost more than it won.
	clearSlope = 0.01
	// The most: twice the light from one corner of a card to the other is no light but a picture.
	mostSlope      = 1
	slopeOverNoise = 4
	// A swatch whose blocks scatter by less is painted evenly enough to read a slope of any size.
	smoothNoise = 0.01
	// How many cards far its slope alone is carried.
	cardReach = 2
)

// even brings a swatch to the light at the card's middle; far tells that
// it is too far off for a slope of light that only the card knows.
func (l *lamp) even(c sample) (far bool) {
	relight(c.pixels, l.gains.matrix())
	if l.slope == [2]float64{} {
		return false
	}
	x, y := middleOf(c.rect)
	x, y = x-l.x, y-l.y
	slope, f := l.slope, fieldOf(c.rect, bodyOf(c.pixels).pixels)
	if f.noise < max(f.change/slopeOverNoise, smoothNoise) {
		slope[0], slope[1] = (slope[0]+f.slope[0])/2, (slope[1]+f.slope[1])/2
	} else if reach := cardReach * l.side / math.Hypot(x, y); reach < 1 {
		x, y, far = reach*x, reach*y, true
	}
	by := math.Exp(-slope[0]*x - slope[1]*y)
	relight(c.pixels, matrix{{by}, {0, by}, {0, 0, by}})
	return far
}

// middleOf is the middle of a rectangle.
func middleOf(r image.Rectangle) (x, y float64) {
	return float64(r.Min.X+r.Max.X) / 2, float64(r.Min.Y+r.Max.Y) / 2
}
