package plan

import (
	"image"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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

func TestAreas(t *testing.T) {
	g := testGrid(t, 40, 30)
	got, err := areas([]RegionWish{{Name: "kettle", Cells: "B1:C2"}}, g, 80, 60)
	require.NoError(t, err)
	assert.Equal(t, []image.Rectangle{image.Rect(20, 0, 40, 20), image.Rect(40, 0, 60, 20), image.Rect(20, 20, 40, 40), image.Rect(40, 20, 60, 40)}, got[0].Rects)

	for part, regions := range map[string][]RegionWish{
		"is off the panel": {{Name: "a", Cells: "Z9"}},
		"named twice":      {{Name: "a", Cells: "A1"}, {Name: "A", Cells: "B1"}},
		"is kept for":      {{Name: "The Rest", Cells: "A1"}},
		"too many":         make([]RegionWish, MostRegions+1),
	} {
		_, err := areas(regions, g, 80, 60)
		assert.ErrorContains(t, err, part)
	}
}

// By hand, 4 × 2 cells of 2 × 2 pixels: label 1 fills B1 and half of C1, label 2
// has a single pixel, a quarter of D2; label 3 has none.
func TestCellsOf(t *testing.T) {
	g := testGrid(t, 40, 20)
	got := cellsOf(g, 8, 4, 4, digits(
		"00111000",
		"00111000",
		"00000002",
		"00000000"))
	assert.Equal(t, []string{"B1", "C1"}, names(got[1]))
	assert.Equal(t, []string{"D2"}, names(got[2]))
	assert.Empty(t, got[3])
	assert.Equal(t, []string{"A1", "C1", "D1", "A2", "B2", "C2", "D2"}, names(got[0]))
	assert.Equal(t, []string{"B1", "C1", "D2"}, names(withColours(got[1], [][]grid.Cell{got[2], got[1]})))
}

// A speck of a sixteenth of a cell is in the cell that holds all of it, and not a
// word is lost of what is thinly spread: by hand, 2 cells of 4 × 4 pixels.
func TestCellsOfSmallThings(t *testing.T) {
	g := testGrid(t, 20, 10)
	got := cellsOf(g, 8, 4, 2, digits(
		"00000000",
		"01000000",
		"00000000",
		"00000000"))
	assert.Equal(t, []string{"A1"}, names(got[1]))
	assert.Equal(t, []grid.Cell{{Column: 1}}, fullest(g, 8, 4, digits("01000110", "00000000", "00000000", "00000000"), 1))
}

func digits(rows ...string) (of []uint8) {
	for _, digit := range strings.Join(rows, "") {
		of = append(of, uint8(digit-'0'))
	}
	return of
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
