package analyze

import (
	"math"
	"sync"
	"sync/atomic"

	"tonewright/analyze/colour"
)

// finisher turns averaged light into a picture's colours.
type finisher struct {
	picture  *Picture
	channels int        // of the light: 3, or 4 with alpha
	toSRGB   affine     // to linear sRGB
	ground   [3]float64 // linear sRGB, under what alpha lets through
	turn     turn
	levels   *[encodeSteps + 1]uint8 // sRGB levels of linear light
	through  atomic.Bool             // set where the ground shows
}

// row finishes row y. Light that alpha lets through is the ground's: the two are
// added as light, as they would be behind a half-open blind.
func (f *finisher) row(y int, light []float32) {
	m, o, under := &f.toSRGB.m, f.toSRGB.offset, f.ground
	for x := 0; len(light) >= f.channels; x, light = x+1, light[f.channels:] {
		a, b, c := float64(light[0]), float64(light[1]), float64(light[2])
		red := m[0][0]*a + m[0][1]*b + m[0][2]*c + o[0]
		green := m[1][0]*a + m[1][1]*b + m[1][2]*c + o[1]
		blue := m[2][0]*a + m[2][1]*b + m[2][2]*c + o[2]
		if f.channels == 4 {
			through := 1 - float64(light[3])
			if through > 0.5/255 {
				f.through.Store(true)
			}
			red += (under[0] - o[0]) * through
			green += (under[1] - o[1]) * through
			blue += (under[2] - o[2]) * through
		}
		f.pixel(3*f.turn.place(x, y), red, green, blue)
	}
}

// pixel writes one pixel of linear sRGB.
func (f *finisher) pixel(at int, r, g, b float64) {
	c := colour.FromLinear(r, g, b)
	lab, rgb := f.picture.Lab[at:at+3], f.picture.RGB[at:at+3]
	lab[0], lab[1], lab[2] = float32(c.L), float32(c.A), float32(c.B)
	rgb[0], rgb[1], rgb[2] = f.level(r), f.level(g), f.level(b)
}

// level is the nearest sRGB level of linear light, clipped to 0 to 255.
func (f *finisher) level(v float64) uint8 {
	if !(v > 0) { // not a number, too
		return f.levels[0]
	}
	return f.levels[int(min(1, v)*encodeSteps+0.5)]
}

// encodeSteps parts linear light for the table of levels: at the steep foot of
// the curve, 12.92·255 levels to 1, a step is a twentieth of a level.
const encodeSteps = 65535

var levelTable = sync.OnceValue(func() *[encodeSteps + 1]uint8 {
	t := new([encodeSteps + 1]uint8)
	for i := range t {
		t[i] = uint8(math.Round(255 * linearToSRGB(float64(i)/encodeSteps)))
	}
	return t
})

// linearOf is a colour as linear sRGB.
func linearOf(c colour.Lab) [3]float64 {
	r, g, b := c.SRGB()
	return [3]float64{srgbToLinear(r), srgbToLinear(g), srgbToLinear(b)}
}
