package sheet

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/grid"
)

// A circle kept as 20 places is drawn as a circle again: its sides were off by 0.62 mm at
// a radius of 50 mm, r (1 - cos(π/20)), and the curve runs through the places.
func TestCurvedCircle(t *testing.T) {
	const radius = 50
	var places []grid.Point
	for i := range 20 {
		a := 2 * math.Pi * float64(i) / 20
		places = append(places, grid.Point{X: grid.Millimetres(radius * math.Cos(a)), Y: grid.Millimetres(radius * math.Sin(a))})
	}
	line := curved(places, true)
	require.Greater(t, len(line), 200)
	for _, p := range line {
		assert.InDelta(t, radius, math.Hypot(float64(p.X), float64(p.Y)), 0.02)
	}
	for _, p := range places {
		near := math.Inf(1)
		for _, q := range line {
			near = math.Min(near, float64(distance(p, q)))
		}
		assert.Less(t, near, 1e-9)
	}
}

// A square has corners and stays one; so does a straight line, and a bend at the end of an
// open line.
func TestCurvedCorners(t *testing.T) {
	square := []grid.Point{{X: 0, Y: 0}, {X: 30, Y: 0}, {X: 30, Y: 30}, {X: 0, Y: 30}}
	for _, p := range curved(square, true) {
		off := math.Min(math.Min(math.Abs(float64(p.X)), math.Abs(float64(p.X-30))), math.Min(math.Abs(float64(p.Y)), math.Abs(float64(p.Y-30))))
		assert.Less(t, off, 1e-9, "%v", p)
	}
	assert.Equal(t, square[:2], curved(square[:2], false))
	assert.Equal(t, []grid.Point{{}}, curved([]grid.Point{{}, {}, {}}, true)) // nothing to draw, and no division by it
}
