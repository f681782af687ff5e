package grid

import (
	"image"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The inch is 25.4 mm exactly (international yard and pound agreement, 1959).
func TestParseLength(t *testing.T) {
	for text, want := range map[string]Millimetres{"1in": 25.4, "2.5 cm": 25, "25MM": 25, " 0.5in ": 12.7} {
		got, _, err := ParseLength(text)
		require.NoError(t, err, text)
		assert.InDelta(t, float64(want), float64(got), 1e-9, text)
	}
	for _, text := range []string{"", "1", "in", "-1in", "0cm", "NaNcm", "Infin", "1e9mm", "1 ft"} {
		_, _, err := ParseLength(text)
		assert.Error(t, err, text)
	}
}

func TestParsePanel(t *testing.T) {
	w, h, unit, err := ParsePanel("12x16in")
	require.NoError(t, err)
	assert.InDelta(t, 304.8, float64(w), 1e-9)
	assert.InDelta(t, 406.4, float64(h), 1e-9)
	assert.Equal(t, Inch, unit)
	_, _, unit, err = ParsePanel("30 × 40 cm")
	require.NoError(t, err)
	assert.Equal(t, Centimetre, unit)
	for _, text := range []string{"12in", "12x16", "x16in", "12xin", "12x16x20in", "12inx16in"} {
		_, _, _, err := ParsePanel(text)
		assert.Error(t, err, text)
	}
}

// A panel of 10.5 × 8 in in 1-inch cells, by hand: 11 columns, the last half a
// cell wide, and 8 whole rows.
func TestPartCells(t *testing.T) {
	g, err := New(10.5*25.4, 8*25.4, 25.4, Inch)
	require.NoError(t, err)
	assert.Equal(t, []int{11, 8}, []int{g.Columns, g.Rows})
	assert.InDelta(t, 12.7, float64(g.PartColumn()), 1e-9)
	assert.Zero(t, g.PartRow())
	assert.Equal(t, "K8", g.Last().String())
	b := g.Box(Cell{10, 7})
	assert.InDelta(t, 254, float64(b.X), 1e-9)
	assert.InDelta(t, 12.7, float64(b.Width), 1e-9)
}

// 12 in is 304.8 mm; in 25.4 mm cells rounding must not add a thirteenth column,
// and 305 mm must not either: the sliver joins the last column.
func TestNoSlivers(t *testing.T) {
	for _, width := range []Millimetres{12 * 25.4, 304.8, 305, 304.8000001} {
		g, err := New(width, 200, 25.4, Millimetre)
		require.NoError(t, err)
		assert.Equal(t, 12, g.Columns, width)
		last := g.Box(Cell{11, 0})
		assert.InDelta(t, float64(width), float64(last.X+last.Width), 1e-9)
	}
}

func TestNewRefuses(t *testing.T) {
	_, err := New(100, 100, 101, Millimetre)
	assert.ErrorContains(t, err, "larger than the panel")
	_, err = New(1000, 1000, 1, Millimetre)
	assert.ErrorContains(t, err, "larger cell")
}

// Columns count as in a spreadsheet: A…Z, AA…AZ, BA….
func TestColumnName(t *testing.T) {
	for i, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 51: "AZ", 52: "BA", 701: "ZZ", 702: "AAA"} {
		assert.Equal(t, want, ColumnName(i))
	}
	for i := range 800 {
		c, err := ParseCell(ColumnName(i) + "7")
		require.NoError(t, err)
		assert.Equal(t, Cell{i, 6}, c)
	}
}

func TestCells(t *testing.T) {
	g, err := New(8*25.4, 6*25.4, 25.4, Inch)
	require.NoError(t, err)
	cells, err := g.Cells("c3:d4, g4,C3")
	require.NoError(t, err)
	assert.Equal(t, []Cell{{2, 2}, {3, 2}, {2, 3}, {3, 3}, {6, 3}}, cells)
	assert.Equal(t, "C3:D4, G4", Spans(cells))

	for text, part := range map[string]string{
		"J1":    "cell J1 is off the panel: its cells run from A1 to H6",
		"C3:C9": "cell C9 is off the panel",
		"F7:C3": "write it from the top left to the bottom right, C3:F7",
		"C7:F3": "C3:F7",
		"":      "not a cell",
		"3C":    "not a cell",
		"C":     "not a cell",
		"C0":    "not a cell",
		"C+3":   "not a cell",
		"C-3":   "not a cell",
		"C3:":   "not a cell",
		"C3,,D": "not a cell",
		"AAAA1": "not a cell",
	} {
		_, err := g.Cells(text)
		assert.ErrorContains(t, err, part, text)
	}
}

// What Spans writes, Cells reads back, whatever the cells.
func FuzzSpans(f *testing.F) {
	f.Add("A1:B2,D4", uint8(8), uint8(6))
	f.Add("C3:F6,A1:A6,H1", uint8(8), uint8(6))
	f.Add("Z1,AA1:AB2", uint8(40), uint8(3))
	f.Fuzz(func(t *testing.T, text string, columns, rows uint8) {
		g := Grid{Width: 1, Height: 1, Cell: 1, Columns: int(columns)%50 + 1, Rows: int(rows)%50 + 1, Unit: Inch}
		cells, err := g.Cells(text)
		if err != nil {
			return
		}
		again, err := g.Cells(Spans(cells))
		require.NoError(t, err, Spans(cells))
		assert.Equal(t, cells, again)
	})
}

// By hand: a photo of 400 × 300 on a square panel keeps 300 × 300.
func TestCrop(t *testing.T) {
	for keep, want := range map[string]image.Rectangle{
		"":       image.Rect(50, 0, 350, 300),
		"centre": image.Rect(50, 0, 350, 300),
		"center": image.Rect(50, 0, 350, 300),
		"left":   image.Rect(0, 0, 300, 300),
		"right":  image.Rect(100, 0, 400, 300),
		"top":    image.Rect(50, 0, 350, 300),
	} {
		c, err := ParseCrop(keep)
		require.NoError(t, err)
		assert.Equal(t, want, c.Rect(400, 300, 1), keep)
	}
	bottom, err := ParseCrop("bottom")
	require.NoError(t, err)
	assert.Equal(t, image.Rect(0, 100, 400, 300), bottom.Rect(400, 300, 2))

	window, err := ParseCrop("50,0,50,100%")
	require.NoError(t, err)
	assert.Equal(t, image.Rect(200, 50, 400, 250), window.Rect(400, 300, 1))
	assert.InDelta(t, 200.0/300, window.Proportion(400, 300), 1e-9)
	assert.Equal(t, "50.0 % at the left, 16.7 % at the top, 16.7 % at the bottom", CutOff(window.Rect(400, 300, 1), 400, 300))
	assert.Equal(t, "nothing", CutOff(image.Rect(0, 0, 400, 300), 400, 300))

	for _, text := range []string{"middle", "1,2,3", "1,2,3,4,5", "60,0,50,100", "0,0,0,10", "-1,0,10,10", "a,b,c,d", "NaN,0,1,1"} {
		_, err := ParseCrop(text)
		assert.Error(t, err, text)
	}
}

// A crop is never empty and never leaves the photo, even for a line of pixels.
func TestCropStaysInside(t *testing.T) {
	for _, size := range []image.Point{{1, 1}, {1286, 3}, {3, 1286}, {7, 5}} {
		for _, proportion := range []float64{0.01, 0.5, 1, 3, 100} {
			for _, text := range []string{"centre", "top", "right", "99,99,1,1"} {
				c, err := ParseCrop(text)
				require.NoError(t, err)
				r := c.Rect(size.X, size.Y, proportion)
				assert.False(t, r.Empty(), "%v %v %s", size, proportion, text)
				assert.True(t, r.In(image.Rect(0, 0, size.X, size.Y)), "%v %v %s: %v", size, proportion, text, r)
			}
		}
	}
}

// A crop has the panel's proportion to within half a pixel a side.
func TestCropProportion(t *testing.T) {
	r := Crop{}.Rect(4000, 3000, 12.0/16)
	assert.InDelta(t, 12.0/16*float64(r.Dy()), float64(r.Dx()), 0.5)
}
