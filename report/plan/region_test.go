package plan

import (
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze"
	"tonewright/grid"
)

func TestParseRegion(t *testing.T) {
	r, err := ParseRegion(" kettle = C3:F7,G4 ")
	require.NoError(t, err)
	assert.Equal(t, RegionWish{Name: "kettle", Cells: "C3:F7,G4"}, r)
	for _, text := range []string{"", "kettle", "=C3", "kettle=", " = "} {
		_, err := ParseRegion(text)
		assert.Error(t, err, text)
	}
}

func testGrid(t *testing.T, w, h grid.Millimetres) grid.Grid {
	g, err := grid.New(w, h, 10, grid.Millimetre)
	require.NoError(t, err)
	return g
}

// The cells of a grid tile the picture: every pixel once, whatever the sizes.
func TestPixelsTile(t *testing.T) {
	g := testGrid(t, 75, 42)
	for _, size := range []image.Point{{100, 56}, {7, 5}, {3, 40}, {1200, 800}} {
		count := make([]int, size.X*size.Y)
		for row := range g.Rows {
			for column := range g.Columns {
				r := pixels(g, grid.Cell{Column: column, Row: row}, size.X, size.Y)
				for y := r.Min.Y; y < r.Max.Y; y++ {
					for x := r.Min.X; x < r.Max.X; x++ {
						count[y*size.X+x]++
					}
				}
			}
		}
		for i, n := range count {
			require.Equal(t, 1, n, "%v pixel %d", size, i)
		}
	}
}

// areasOf returns the areas of regions on a photo of 80 × 60 pixels.
func areasOf(g grid.Grid, regions ...RegionWish) ([]analyze.Area, error) {
	return areas(Options{Regions: regions}, &analyze.Photo{File: "photo", Width: 80, Height: 60}, g, image.Rect(0, 0, 80, 60))
}

func TestAreas(t *testing.T) {
	g := testGrid(t, 40, 30)
	got, err := areasOf(g, RegionWish{Name: "kettle", Cells: "B1:C2"})
	require.NoError(t, err)
	assert.Equal(t, []image.Rectangle{image.Rect(20, 0, 40, 20), image.Rect(40, 0, 60, 20), image.Rect(20, 20, 40, 40), image.Rect(40, 20, 60, 40)}, got[0].Rects)

	for part, regions := range map[string][]RegionWish{
		"is off the panel": {{Name: "a", Cells: "Z9"}},
		"named twice":      {{Name: "a", Cells: "A1"}, {Name: "A", Cells: "B1"}},
		"is kept for":      {{Name: "The Rest", Cells: "A1"}},
		"too many":         make([]RegionWish, MostRegions+1),
	} {
		_, err := areasOf(g, regions...)
		assert.ErrorContains(t, err, part)
	}
}

func ring(numbers ...grid.Millimetres) (points []grid.Point) {
	for i := 0; i < len(numbers); i += 2 {
		points = append(points, grid.Point{X: numbers[i], Y: numbers[i+1]})
	}
	return points
}

// By hand: 40 × 30 mm are 80 × 60 pixels, so a millimetre is two.
func TestAreaByOutline(t *testing.T) {
	g := testGrid(t, 40, 30)
	got, err := areasOf(g, RegionWish{Name: "lid", Outline: [][]grid.Point{ring(10, 5, 40, 5, 40, 30), ring(-1, 0, 1, 0, 1, 0.25)}})
	require.NoError(t, err)
	assert.Equal(t, [][]analyze.Place{{{X: 20, Y: 10}, {X: 80, Y: 10}, {X: 80, Y: 60}}, {{X: -2, Y: 0}, {X: 2, Y: 0}, {X: 2, Y: 0.5}}}, got[0].Outline)
	assert.Equal(t, ring(10, 5, 40, 5, 40, 30), onPanel(got[0].Outline[0], g, image.Pt(80, 60)))

	nan, inf := grid.Millimetres(math.NaN()), grid.Millimetres(math.Inf(1))
	for part, outline := range map[string][][]grid.Point{
		"a ring of its outline has too few points, 2; give three or more": {ring(1, 1, 5, 5, 9, 1), ring(1, 1, 2, 2)},
		"a ring of its outline has too few points, 0":                     {{}},
		"a point of its outline is not a number; give":                    {ring(1, 1, 5, nan, 9, 1)},
		"is not a number; give its distance from the panel's left":        {ring(1, 1, inf, 5, 9, 1)},
		"holds nothing of the panel of 40 × 30 mm; measure its points":    {ring(40, 0, 50, 0, 50, 30)},
		"holds nothing of the panel":                                      {ring(5, -5, 9, -5, 9, 0), ring(-5, 5, 0, 5, 0, 9)},
		"its outline holds nothing":                                       {ring(5, 5, 5, 9, 5, 7)},
	} {
		_, err := areasOf(g, RegionWish{Name: "lid", Outline: outline})
		require.ErrorContains(t, err, part)
		assert.ErrorContains(t, err, `region "lid": `)
	}
}

func TestOneSayingWhere(t *testing.T) {
	g := testGrid(t, 40, 30)
	outline := [][]grid.Point{ring(1, 1, 5, 1, 5, 5)}
	for want, r := range map[string]RegionWish{
		"where it lies is not said; give its cells, its outline or a mask":                  {},
		"where it lies is said by its cells and its outline; keep one of them":              {Cells: "A1", Outline: outline},
		"where it lies is said by its outline and its mask; keep one of them":               {Outline: outline, Mask: "m.png"},
		"where it lies is said by its cells and its outline and its mask; keep one of them": {Cells: "A1", Outline: outline, Mask: "m.png"},
	} {
		r.Name = "jug"
		_, err := areasOf(g, r)
		assert.EqualError(t, err, `region "jug": `+want)
	}
}

// maskFile writes a mask of w × h pixels that is light where is tells.
func maskFile(t *testing.T, w, h int, is func(x, y int) bool) string {
	m := image.NewGray(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			if is(x, y) {
				m.SetGray(x, y, color.Gray{Y: 255})
			}
		}
	}
	file := filepath.Join(t.TempDir(), "mask.png")
	f, err := os.Create(file)
	require.NoError(t, err)
	require.NoError(t, png.Encode(f, m))
	require.NoError(t, f.Close())
	return file
}

// A mask's header is looked at with all the other mistakes, before any mask is read: a
// slip in a later region's cells is said first.
func TestAreaByMask(t *testing.T) {
	g := testGrid(t, 40, 30)
	left := maskFile(t, 160, 120, func(x, _ int) bool { return x < 80 })
	got, err := areasOf(g, RegionWish{Name: "left", Mask: left})
	require.NoError(t, err)
	require.Len(t, got[0].Mask, 80*60)
	for i, in := range got[0].Mask {
		require.Equal(t, i%80 < 40, in, "pixel %d", i)
	}
	dark := maskFile(t, 160, 120, func(int, int) bool { return false })
	_, err = areasOf(g, RegionWish{Name: "dark", Mask: dark})
	assert.ErrorContains(t, err, `region "dark": `+dark+": this mask is dark everywhere")
	_, err = areasOf(g, RegionWish{Name: "dark", Mask: dark}, RegionWish{Name: "b", Cells: "Z9"})
	assert.ErrorContains(t, err, `region "b": `)
	_, err = areasOf(g, RegionWish{Name: "dark", Mask: dark}, RegionWish{Name: "b", Mask: maskFile(t, 100, 120, func(int, int) bool { return true })})
	assert.ErrorContains(t, err, "another proportion")
	_, err = areas(Options{Megapixels: 0.001, Regions: []RegionWish{{Name: "left", Mask: left}}}, &analyze.Photo{Width: 80, Height: 60}, g, image.Rect(0, 0, 80, 60))
	assert.ErrorContains(t, err, "the limit is 0.001")
}

func TestGround(t *testing.T) {
	for text, pencil := range map[string]string{"white": "dark", "Black": "light", "grey": "dark", "#101010": "light", "#F0E0D0": "dark"} {
		g, err := ParseGround(text)
		require.NoError(t, err, text)
		assert.Equal(t, pencil, g.Pencil(), text)
	}
	for _, text := range []string{"", "mauve", "#12", "#gggggg", "101010"} {
		_, err := ParseGround(text)
		assert.Error(t, err, text)
	}
}
