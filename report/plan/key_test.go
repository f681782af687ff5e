package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"tonewright/analyze"
	"tonewright/analyze/colour"
)

// picture is w × h pixels with the lightness light gives for pixel i.
func picture(w, h int, light func(i int) float64) *analyze.Picture {
	p := &analyze.Picture{Width: w, Height: h, Lab: make([]float32, 3*w*h), RGB: make([]uint8, 3*w*h)}
	for i := range w * h {
		p.Lab[3*i] = float32(light(i))
	}
	return p
}

// The photo's range leaves out one pixel in a thousand at each end: by hand, 3 of
// 2000 pixels are more than that, 2 are not.
func TestLightness(t *testing.T) {
	p := picture(100, 20, func(i int) float64 {
		switch {
		case i < 2:
			return 0
		case i < 5:
			return 10
		case i > 1997:
			return 100
		}
		return 50
	})
	lo, hi := lightness(p)
	assert.InDelta(t, 10, lo, 0.05)
	assert.InDelta(t, 50, hi, 0.05)
}

// A fit is linear in L*, by hand: 0-100 into 10-90 sends 50 to 50 and 25 to 30.
func TestKeyNarrows(t *testing.T) {
	k := ValueKey{Mode: "fit", PhotoMin: 0, PhotoMax: 100, PaintMin: 10, PaintMax: 90}
	for l, want := range map[float64]float64{0: 10, 25: 30, 50: 50, 100: 90} {
		assert.InDelta(t, want, k.aim(colour.Lab{L: l}).L, 1e-9)
	}
	c := k.aim(colour.Lab{L: 25, A: 20, B: -30})
	assert.Equal(t, []float64{20, -30}, []float64{c.A, c.B})
}

// A photo that the box covers is left alone, and a literal key moves nothing.
func TestKeyLeavesAlone(t *testing.T) {
	within := ValueKey{Mode: "fit", PhotoMin: 20, PhotoMax: 80, PaintMin: 10, PaintMax: 90}
	literal := ValueKey{Mode: "literal", PhotoMin: 0, PhotoMax: 100, PaintMin: 10, PaintMax: 90}
	for _, l := range []float64{20, 33.3, 80} {
		assert.InDelta(t, l, within.aim(colour.Lab{L: l}).L, 1e-9)
		assert.InDelta(t, l, literal.aim(colour.Lab{L: l}).L, 1e-9)
	}
	assert.Equal(t, 0.0, literal.aim(colour.Lab{}).L)
	assert.Contains(t, within.words(), "no value was moved")
	assert.Contains(t, literal.words(), "as photographed")
}

// A picture of one value has no range to fit; its aim stays within the paint's.
func TestKeyFlat(t *testing.T) {
	k := ValueKey{Mode: "fit", PhotoMin: 2, PhotoMax: 2, PaintMin: 10, PaintMax: 90}
	assert.InDelta(t, 10, k.aim(colour.Lab{L: 2}).L, 1e-9)
	k = ValueKey{Mode: "fit", PhotoMin: 98, PhotoMax: 99, PaintMin: 10, PaintMax: 90}
	assert.InDelta(t, 90, k.aim(colour.Lab{L: 98.5}).L, 1e-9)
}

// The values to paint are the keyed ones: black, L* 0, comes out at the box's
// darkest, L* 41.2, Munsell value 4, and white stays.
func TestTonesAreKeyed(t *testing.T) {
	p := picture(40, 40, func(i int) float64 { return float64(i / 800 * 100) })
	got := tonesOf(p, [2]float64{41.2, 100}, false)
	assert.Equal(t, 4.0, got.nine.Steps[got.nine.Of[0]])
	assert.Equal(t, 9.0, got.nine.Steps[got.nine.Of[1599]])
	assert.Equal(t, 1.0, tonesOf(p, [2]float64{41.2, 100}, true).nine.Steps[0])
	assert.Zero(t, tonesOf(p, [2]float64{41.2, 100}, true).nine.Of[0])
	assert.Zero(t, p.Lab[0], "the picture itself is left alone")
}
