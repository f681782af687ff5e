package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze"
	"tonewright/analyze/colour"
)

// A red and a green of one lightness are two colours, and one value: the mean of both
// stands for it. By hand.
func TestClustersByValue(t *testing.T) {
	red, green := colour.Lab{L: 50, A: 60, B: 30}, colour.Lab{L: 50, A: -40, B: 20}
	p := &analyze.Picture{Width: 20, Height: 10, RGB: make([]uint8, 600)}
	for i := range 200 {
		c := red
		if i%20 >= 10 {
			c = green
		}
		p.Lab = append(p.Lab, float32(c.L), float32(c.A), float32(c.B))
	}
	parting := analyze.Parting{Regions: []analyze.Region{{Name: "all", Pixels: 200}}, Of: make([]uint8, 200)}
	c := clustersOf(p, parting, Options{Regions: []RegionWish{{Name: "all"}}})
	require.Len(t, c.Clusters[0], 2)
	c = clustersOf(p, parting, Options{Regions: []RegionWish{{Name: "all", Palette: []string{"viridian"}}}})
	require.Len(t, c.Clusters[0], 1)
	assert.InDelta(t, 50, c.Clusters[0][0].Lab.L, 1e-3)
	assert.InDelta(t, 10, c.Clusters[0][0].Lab.A, 1e-3)
	assert.InDelta(t, 25, c.Clusters[0][0].Lab.B, 1e-3)
}
