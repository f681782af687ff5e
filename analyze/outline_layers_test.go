package analyze

import (
	"image"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// stacked lays the layers one over the other, as the painter's areas are laid.
func stacked(layers []Layer, width, height int) []uint8 {
	of := make([]uint8, width*height)
	for _, l := range layers {
		fillMask(of, filled(l.Rings, width, height), uint8(l.Region))
	}
	return of
}

// By hand: 1 is largest but lies inside the frame 0, and 3 inside 1; 2 is a line along
// the frame, and too thin for the tolerance.
func TestLayersByHand(t *testing.T) {
	p, w, h := digitParting(
		"00000000000",
		"01111111110",
		"01133111110",
		"01133111110",
		"01111111110",
		"01111111110",
		"00000000000",
		"22222222222")
	layers := Layers(p, w, h, 1.6)
	for _, l := range layers {
		require.Len(t, l.Rings, 1)
		assert.GreaterOrEqual(t, len(l.Rings[0]), 3)
	}
	assert.Equal(t, []int{0, 1, 2, 3}, regionsOf(layers))
	assert.Equal(t, []Place{{0, 0}, {11, 0}, {11, 8}, {0, 8}}, layers[0].Rings[0])
	assert.Equal(t, p.Of, stacked(Layers(p, w, h, 0), w, h))
	open, w, h := digitParting(
		"0000000",
		"0111110",
		"0111110",
		"0111110",
		"2222222")
	assert.Equal(t, []int{1, 0, 2}, regionsOf(Layers(open, w, h, 0)), "by size alone: nothing lies inside an open frame")
	lens, w, h := digitParting(
		"000000",
		"022220",
		"111111")
	require.Empty(t, Outlines(lens, w, h, 1.6)[2], "both its borders become one line")
	assert.Equal(t, []Place{{1, 1}, {5, 1}, {5, 2}, {1, 2}}, shifted([][][]Place{Layers(lens, w, h, 1.6)[2].Rings})[0][0])
	around, w, h := digitParting( // each has a part inside the other: no order is right, none is left out
		"000000111",
		"010000101",
		"000000111")
	assert.Equal(t, []int{0, 1}, regionsOf(Layers(around, w, h, 0)))
	assert.Empty(t, Layers(Parting{}, 0, 0, 1))
}

// Partings found in pictures come back exactly with no tolerance.
func TestLayersGiveTheParting(t *testing.T) {
	for _, size := range [][2]int{{300, 240}, {401, 799}} {
		p, _ := scene(size[0], size[1])
		parting := Regions(p, nil)
		assert.Equal(t, parting.Of, stacked(Layers(parting, p.Width, p.Height, 0), p.Width, p.Height))
	}
}

func regionsOf(layers []Layer) (order []int) {
	for _, l := range layers {
		order = append(order, l.Region)
	}
	return order
}

// What simpler outlines cost, on the demo and five photographs at working size: at half a
// millimetre on a panel of 12 in (304.8 mm) a border moves by 1.6 pixels at the most. At a
// border of 1000 pixels' length a third of that on average, over a few such borders, is
// half a percent of the picture; that much may change, and the figures are logged.
func TestLayersOfPhotos(t *testing.T) {
	slow(t)
	for _, name := range []string{"", "01_tulips_pink.png", "02_dahlia_orange.jpg", "05_fig_red_bowl.jpg", "16_brushes_multicolour.jpg", "17_coffee_still_life.png"} {
		file := filepath.Join("..", "testdata", "kettle.jpg")
		if name != "" {
			file = sharedPhoto(t, name)
		}
		photo, err := Open(file, Limits{})
		require.NoError(t, err)
		p, err := photo.Picture(image.Rectangle{}, 0, colour.Lab{})
		require.NoError(t, err)
		parting := Regions(p, nil)
		for _, mm := range []float64{0, 0.25, 0.5, 1, 2} {
			layers := Layers(parting, p.Width, p.Height, mm/304.8*float64(max(p.Width, p.Height)))
			got := stacked(layers, p.Width, p.Height)
			changed, points := 0, 0
			for i := range got {
				if got[i] != parting.Of[i] {
					changed++
				}
			}
			for _, l := range layers[1:] {
				points += places([][][]Place{l.Rings})
			}
			share := float64(changed) / float64(len(got))
			t.Logf("%-28s %4.2f mm: %2d regions, %.2f %% of the pixels change, %3d points a region", filepath.Base(file), mm, len(layers), 100*share, points/(len(layers)-1))
			assert.LessOrEqual(t, share, 0.01*mm, "%s at %v mm", name, mm)
		}
	}
}

func BenchmarkOutlines(b *testing.B) {
	p := workingPicture(b, benchPhoto, 0)
	parting := Regions(p, nil)
	b.Run("floor: Regions", func(b *testing.B) {
		for b.Loop() {
			Regions(p, nil)
		}
	})
	b.Run("Outlines", func(b *testing.B) {
		for b.Loop() {
			Outlines(parting, p.Width, p.Height, 3.3)
		}
	})
	layers := Layers(parting, p.Width, p.Height, 3.3)
	b.Run("Layers", func(b *testing.B) {
		for b.Loop() {
			Layers(parting, p.Width, p.Height, 3.3)
		}
	})
	var areas []Area
	for _, l := range layers {
		areas = append(areas, Area{Outline: l.Rings})
	}
	b.Run("fill", func(b *testing.B) {
		for b.Loop() {
			Regions(p, areas)
		}
	})
}
