package plan

import (
	"image"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze"
	"tonewright/grid"
)

func TestDrawingThin(t *testing.T) {
	photo, err := analyze.Open(demo, analyze.Limits{})
	require.NoError(t, err)
	p, err := photo.Picture(image.Rectangle{}, 0, grounds[0].Lab)
	require.NoError(t, err)
	g, err := grid.New(304.8, 228.6, 25.4, grid.Inch)
	require.NoError(t, err)
	d := drawingOf(p, analyze.Regions(p, nil), g, 0)
	assert.NotEmpty(t, d.Contours)
	for _, c := range d.Contours[:3] {
		t.Logf("%+v", c)
	}
}
