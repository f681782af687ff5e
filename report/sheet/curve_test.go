package sheet

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/grid"
)

// A circle kept as 32 places is drawn as a circle again: its sides were off by 0.24 mm at
// a radius of 50 mm, r (1 - cos(π/32)), and the curve runs through the places.
func TestCurvedCircle(t *testing.T) {
	const radius = 50
	var places []grid.Point
	for i := range 32 {
		a := 2 * math.Pi * float64(i) / 32
		places = append(places, grid.Point{X: grid.Millimetres(radius * math.Cos(a)), Y: grid.Millimetres(radius * math.Sin(a))})
	}
	line := curved(places, true, 0.3)
	require.Greater(t, len(line), 200)
	for _, p := range line {
		assert.InDelta(t, radius, math.Hypot(float64(p.X), float64(p.Y)), 0.02)
	}
	for _, p := range places {
		near := math.Inf(1)
		for _, q := range line {
			near = math.Min(near, float64(p.To(q)))
		}
		assert.Less(t, near, 1e-9)
	}
}

// A square has corners and stays one; so does a straight line, and a bend at the end of an
// open line.
func TestCurvedCorners(t *testing.T) {
	square := []grid.Point{{X: 0, Y: 0}, {X: 30, Y: 0}, {X: 30, Y: 30}, {X: 0, Y: 30}}
	for _, p := range curved(square, true, 0.3) {
		off := math.Min(math.Min(math.Abs(float64(p.X)), math.Abs(float64(p.X-30))), math.Min(math.Abs(float64(p.Y)), math.Abs(float64(p.Y-30))))
		assert.Less(t, off, 1e-9, "%v", p)
	}
	assert.Equal(t, square[:2], curved(square[:2], false, 0.3))
	assert.Equal(t, []grid.Point{{}}, curved([]grid.Point{{}, {}, {}}, true, 0.3)) // nothing to draw, and no division by it
}

// A long straight side beside a short piece that turns stays as straight as was found.
func TestCurvedLongSides(t *testing.T) {
	places := []grid.Point{{X: 0, Y: 0}, {X: 0, Y: 130}, {X: 3, Y: 133}, {X: 8, Y: 134}}
	for _, p := range curved(places, false, 0.3) {
		if p.Y <= 130 {
			assert.InDelta(t, 0, float64(p.X), 0.3+1e-9, "%v", p)
		}
	}
}
