package analyze

import (
	"image"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// hexPicture returns a picture of rows of colours, six hex digits each, set apart by
// spaces.
func hexPicture(t testing.TB, rows ...string) *Picture {
	p := &Picture{Height: len(rows)}
	for _, row := range rows {
		fields := strings.Fields(row)
		p.Width = len(fields)
		for _, f := range fields {
			c, err := colour.ParseHex("#" + f)
			require.NoError(t, err)
			p.Lab = append(p.Lab, float32(c.L), float32(c.A), float32(c.B))
		}
	}
	require.Len(t, p.Lab, 3*p.Width*p.Height)
	return p
}

// paintedPicture returns a picture whose pixels have the colours that paint gives.
func paintedPicture(width, height int, paint func(x, y int) colour.Lab) *Picture {
	p := &Picture{Width: width, Height: height}
	for y := range height {
		for x := range width {
			c := paint(x, y)
			p.Lab = append(p.Lab, float32(c.L), float32(c.A), float32(c.B))
		}
	}
	return p
}

// grain is noise that is the same on every run: up to ±size on each axis.
type grain struct{ state uint32 }

func (g *grain) on(c colour.Lab, size float64) colour.Lab {
	next := func() float64 { // a linear congruential generator, Numerical Recipes' constants
		g.state = g.state*1664525 + 1013904223
		return (float64(g.state>>8)/(1<<23) - 1) * size
	}
	return colour.Lab{L: c.L + next(), A: c.A + next(), B: c.B + next()}
}

// workingPicture returns a shared photo at a working size.
func workingPicture(t testing.TB, name string, longSide int) *Picture {
	photo, err := Open(sharedPhoto(t, name), Limits{})
	require.NoError(t, err)
	p, err := photo.Picture(image.Rectangle{}, longSide, colour.Lab{})
	require.NoError(t, err)
	return p
}

// oneRegion returns the whole picture as one region.
func oneRegion(p *Picture) Parting {
	n := p.Width * p.Height
	return Parting{Regions: []Region{{Name: "all", Pixels: n}}, Of: make([]uint8, n)}
}

// regionErrors returns the mean CIEDE2000 of every region's pixels from the colour
// they are painted with.
func regionErrors(p *Picture, parting Parting, c Clustering) []float64 {
	sums := make([]float64, len(parting.Regions))
	for i, r := range parting.Of {
		sums[r] += colour.DeltaE00(p.At(i), c.Clusters[r][c.Of[i]].Lab)
	}
	for r := range sums {
		sums[r] /= float64(parting.Regions[r].Pixels)
	}
	return sums
}
