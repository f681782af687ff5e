package plan

import (
	"encoding/json"
	"fmt"
	"image"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/grid"
)

// pictureOf returns a picture whose pixels have the colours that paint gives.
func pictureOf(width, height int, paint func(x, y int) colour.Lab) *analyze.Picture {
	p := &analyze.Picture{Width: width, Height: height}
	for y := range height {
		for x := range width {
			c := paint(x, y)
			p.Lab = append(p.Lab, float32(c.L), float32(c.A), float32(c.B))
		}
	}
	return p
}

// disc is light on dark, its edge antialiased.
func disc(cx, cy, r float64) func(x, y int) colour.Lab {
	return func(x, y int) colour.Lab {
		in := min(1, max(0, r+0.5-math.Hypot(float64(x)+0.5-cx, float64(y)+0.5-cy)))
		return colour.Lab{L: 30 + 40*in}
	}
}

// A disc of radius 60 mm about (111, 80) on a panel of 200 × 150 mm in cells of 50 mm. By
// hand, its circle crosses a line that is d from its centre √(60² − d²) to each hand of the
// centre: x = 100 (d = 11), x = 150 (39), y = 50 (30), y = 100 (20); clockwise from its top,
// (111, 20). All to half a millimetre.
func TestCrossingsOfADisc(t *testing.T) {
	p := pictureOf(800, 600, disc(4*111, 4*80, 4*60))
	parting := analyze.Regions(p, []analyze.Area{{Name: "left half", Rects: []image.Rectangle{image.Rect(0, 0, 444, 600)}}})
	g, err := grid.New(200, 150, 50, grid.Millimetre)
	require.NoError(t, err)
	d := drawingOf(p, parting, g, 1)
	assert.Equal(t, 1, d.Detail)
	require.Len(t, d.Contours, 1)
	c := d.Contours[0]
	assert.Equal(t, 1, c.ID)
	assert.True(t, c.Closed && c.Main)
	assert.InDelta(t, 1, c.Strength, 1e-9)
	assert.InDelta(t, 2*math.Pi*60, c.LengthMM, 4)
	assert.Equal(t, "C1", c.Start.Cell)
	assert.InDelta(t, 11.0/50, c.Start.Right, 0.15, "the top of a circle is flat")
	assert.InDelta(t, 20.0/50, c.Start.Down, 0.02)
	assert.Equal(t, c.Start, c.End)
	assert.ElementsMatch(t, []string{"A", "B"}, c.Beside)

	deep := func(r, off float64) float64 { return math.Sqrt(r*r - off*off) }
	want := []struct {
		line, cell string
		mm, from   float64 // in the cell, and from the panel's edge
		way        string
	}{
		{"C|D", "C1", 80 - deep(60, 39), 80 - deep(60, 39), "down"},
		{"1|2", "D1", 111 + deep(60, 30) - 150, 111 + deep(60, 30), "across"},
		{"2|3", "D2", 111 + deep(60, 20) - 150, 111 + deep(60, 20), "across"},
		{"C|D", "D3", 80 + deep(60, 39) - 100, 80 + deep(60, 39), "down"},
		{"B|C", "C3", 80 + deep(60, 11) - 100, 80 + deep(60, 11), "down"},
		{"2|3", "B3", 111 - deep(60, 20) - 50, 111 - deep(60, 20), "across"},
		{"1|2", "B2", 111 - deep(60, 30) - 50, 111 - deep(60, 30), "across"},
		{"B|C", "B1", 80 - deep(60, 11), 80 - deep(60, 11), "down"},
	}
	require.Len(t, c.Crossings, len(want))
	for i, w := range want {
		got := c.Crossings[i]
		assert.Equal(t, w.line+" "+w.cell, got.Line+" "+got.Cell)
		assert.InDelta(t, w.mm, got.MM, 0.5)
		assert.InDelta(t, got.MM/50, got.At, 0.0051)
		number, way, _ := strings.Cut(got.Text, " mm ")
		from, err := strconv.ParseFloat(number, 64)
		require.NoError(t, err, got.Text)
		assert.InDelta(t, w.from, from, 0.5+0.5, "half of a ruler's millimetre more")
		assert.Equal(t, w.way, way)
	}
}

// In the painter's unit: 12 × 9 in; the text is from the panel's edge.
func TestCrossingsInInches(t *testing.T) {
	p := pictureOf(800, 600, func(_, y int) colour.Lab { return colour.Lab{L: 30 + 40*float64(y/310)} })
	g, err := grid.New(304.8, 228.6, 25.4, grid.Inch)
	require.NoError(t, err)
	d := drawingOf(p, analyze.Regions(p, []analyze.Area{{Name: "all", Rects: []image.Rectangle{image.Rect(0, 0, 800, 600)}}}), g, 0)
	assert.Equal(t, DetailUsual, d.Detail)
	require.Len(t, d.Contours, 1)
	c := d.Contours[0]
	assert.Equal(t, []string{"A"}, c.Beside)
	require.Len(t, c.Crossings, 11)
	for i, crossed := range c.Crossings { // 310 of 600 pixels: 118.1 mm down, 4.65 in
		assert.Equal(t, "4 5/8 in down", crossed.Text)
		assert.InDelta(t, 0.65, crossed.At, 1e-9)
		assert.InDelta(t, 16.5, crossed.MM, 1e-9)
		assert.Equal(t, fmt.Sprintf("%c|%c", 'A'+i, 'B'+i), crossed.Line, "from left to right")
		assert.Equal(t, fmt.Sprintf("%c5", 'A'+i), crossed.Cell)
	}
}

// A closed contour inside one cell crosses nothing and still has its start; no list is
// null in the JSON, and none in that of a picture without lines.
func TestContourInsideACell(t *testing.T) {
	p := pictureOf(800, 600, disc(100, 100, 60))
	parting := analyze.Regions(p, []analyze.Area{{Name: "all", Rects: []image.Rectangle{image.Rect(0, 0, 800, 600)}}})
	g, err := grid.New(200, 150, 50, grid.Centimetre)
	require.NoError(t, err)
	d := drawingOf(p, parting, g, 1)
	require.Len(t, d.Contours, 1)
	assert.Equal(t, "A1", d.Contours[0].Start.Cell)
	assert.InDelta(t, 0.2, d.Contours[0].Start.Down, 0.02) // 40 of 200 pixels
	empty := drawingOf(pictureOf(80, 60, func(int, int) colour.Lab { return colour.Lab{L: 50} }), analyze.Parting{Regions: []analyze.Region{{Pixels: 4800}}, Of: make([]uint8, 4800)}, g, 10)
	for _, drawing := range []Drawing{d, empty} {
		text, err := json.Marshal(drawing)
		require.NoError(t, err)
		assert.NotContains(t, string(text), "null")
	}
}

// A contour that runs along a line of the grid, a hair to either side, is told of once
// where it leaves it; one that goes over and comes back farther on is told of twice.
func TestNoHairs(t *testing.T) {
	at := func(mm float64) grid.Crossing {
		return grid.Crossing{Upright: true, At: grid.Point{X: 10, Y: grid.Millimetres(mm)}}
	}
	row := grid.Crossing{At: grid.Point{X: 10, Y: 10}}
	assert.Empty(t, withoutHairs([]grid.Crossing{at(1), at(1.9)}))
	assert.Equal(t, []grid.Crossing{at(3)}, withoutHairs([]grid.Crossing{at(1), at(1.9), at(3)}))
	assert.Equal(t, []grid.Crossing{at(1), at(2.1)}, withoutHairs([]grid.Crossing{at(1), at(2.1)}))
	assert.Equal(t, []grid.Crossing{at(9.5), row, at(10)}, withoutHairs([]grid.Crossing{at(9.5), row, at(10)}))
	assert.Empty(t, withoutHairs([]grid.Crossing{at(1), at(2), at(3), at(3.5)}))
}

// Following the demo's table crossing by crossing leads from the start to the end, cell
// by cell, as a ruler would; each place is within its cell.
func TestDemoCrossingsCanBeFollowed(t *testing.T) {
	p, err := makeDemo()
	require.NoError(t, err)
	main := 0
	for _, c := range p.Drawing.Contours {
		if !c.Main {
			assert.Empty(t, c.Crossings)
			continue
		}
		main++
		cell := c.Start.Cell
		for _, crossed := range c.Crossings {
			if !c.Closed { // a closed one may start on a line
				assert.Equal(t, cell, crossed.Cell, "contour %d", c.ID)
			}
			assert.True(t, crossed.At >= 0 && crossed.At <= 1)
			cell = beyond(t, crossed)
		}
		if !c.Closed && len(c.Crossings) > 0 {
			assert.Equal(t, c.End.Cell, cell, "contour %d", c.ID)
		}
		assert.NotEmpty(t, c.Beside)
	}
	assert.GreaterOrEqual(t, main, 8)
	assert.LessOrEqual(t, main, 40)
}

// beyond returns the cell on the other side of a crossing.
func beyond(t *testing.T, c Crossing) string {
	cell, err := grid.ParseCell(c.Cell)
	require.NoError(t, err)
	before, after, _ := strings.Cut(c.Line, "|")
	column, row := cell.String()[:1], cell.String()[1:] // the demo has columns A to L
	switch {
	case before == column:
		column = after
	case after == column:
		column = before
	case before == row:
		row = after
	case after == row:
		row = before
	default:
		t.Errorf("%s is not beside %s", c.Cell, c.Line)
	}
	return column + row
}

// A drawing that nobody could follow says so, with what to do.
func TestManyLinesAreTold(t *testing.T) {
	assert.Empty(t, Drawing{Detail: 5, Contours: make([]Contour, 100)}.note())
	assert.Equal(t, "101 lines are many to draw: a detail of 3 or less leaves out the lesser ones.", Drawing{Detail: 5, Contours: make([]Contour, 101)}.note())
	assert.Empty(t, Drawing{Detail: 1, Contours: make([]Contour, 101)}.note(), "there is no lower one")
}
