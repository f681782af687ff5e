package grid

import (
	"encoding/binary"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// written writes crossings as short text: the cell left, the line, and where on it.
func written(crossings []Crossing) string {
	var words []string
	for _, c := range crossings {
		line := fmt.Sprint(c.Line+1, "|", c.Line+2)
		if c.Upright {
			line = ColumnName(c.Line) + "|" + ColumnName(c.Line+1)
		}
		words = append(words, fmt.Sprintf("%s %s %.4g,%.4g", c.From, line, float64(c.At.X), float64(c.At.Y)))
	}
	return strings.Join(words, "; ")
}

// By hand, on a panel of 45 × 35 mm in cells of 10 mm: columns A to E, the last 5 mm
// wide, and rows 1 to 4, the last 5 mm high.
func TestCrossingsByHand(t *testing.T) {
	g, err := New(45, 35, 10, Millimetre)
	require.NoError(t, err)
	for name, c := range map[string]struct {
		points []Point
		closed bool
		want   string
	}{
		"inside one cell":              {[]Point{{1, 1}, {9, 9}, {9, 1}}, true, ""},
		"straight across":              {[]Point{{5, 4}, {25, 4}}, false, "A1 A|B 10,4; B1 B|C 20,4"},
		"and back":                     {[]Point{{25, 4}, {5, 4}}, false, "C1 B|C 20,4; B1 A|B 10,4"},
		"slanting":                     {[]Point{{5, 5}, {25, 15}}, false, "A1 A|B 10,7.5; B1 1|2 15,10; B2 B|C 20,12.5"},
		"into the part cells":          {[]Point{{38, 28}, {44, 34}}, false, "D3 D|E 40,30; E3 3|4 40,30"},
		"to the panel's corner":        {[]Point{{35, 27}, {45, 35}}, false, "D3 3|4 38.75,30; D4 D|E 40,31"},
		"through a corner of the grid": {[]Point{{5, 5}, {15, 15}}, false, "A1 A|B 10,10; B1 1|2 10,10"},
		"through one at a point":       {[]Point{{5, 5}, {10, 10}, {15, 15}}, false, "A1 A|B 10,10; B1 1|2 10,10"},
		"into a corner and back out":   {[]Point{{5, 5}, {10, 10}, {5, 9}}, false, ""},
		"past a corner by one line":    {[]Point{{5, 5}, {10, 10}, {15, 5}}, false, "A1 A|B 10,10"},
		"touches at a point":           {[]Point{{5, 2}, {10, 5}, {5, 8}}, false, ""},
		"touches along":                {[]Point{{5, 2}, {10, 3}, {10, 7}, {5, 8}}, false, ""},
		"runs along and goes over":     {[]Point{{5, 2}, {10, 3}, {10, 7}, {15, 8}}, false, "A1 A|B 10,7"},
		"along, over another line":     {[]Point{{5, 8}, {10, 8}, {10, 12}, {15, 12}}, false, "A1 1|2 10,10; A2 A|B 10,12"},
		"starts on a line":             {[]Point{{10, 5}, {15, 5}}, false, ""},
		"starts on a line, goes over":  {[]Point{{10, 5}, {15, 5}, {5, 6}}, false, "B1 A|B 10,5.5"},
		"ends on a line":               {[]Point{{5, 5}, {10, 5}}, false, ""},
		"lies on a line":               {[]Point{{10, 2}, {10, 8}}, false, ""},
		"a square around a corner":     {[]Point{{5, 5}, {15, 5}, {15, 15}, {5, 15}}, true, "A1 A|B 10,5; B1 1|2 15,10; B2 A|B 10,15; A2 1|2 5,10"},
		"begun on the line":            {[]Point{{10, 5}, {15, 15}, {5, 15}}, true, "A1 A|B 10,5; B1 1|2 12.5,10; B2 A|B 10,15; A2 1|2 7.5,10"},
		"along the frame":              {[]Point{{0, 0}, {45, 0}}, false, "A1 A|B 10,0; B1 B|C 20,0; C1 C|D 30,0; D1 D|E 40,0"},
		"off the panel":                {[]Point{{-5, -5}, {-5, 15}}, false, "A1 1|2 0,10"},
		"one point":                    {[]Point{{10, 10}}, true, ""},
		"none":                         {nil, true, ""},
		"a point nowhere is left out":  {[]Point{{5, 4}, {Millimetres(math.NaN()), 90}, {15, 4}}, false, "A1 A|B 10,4"},
	} {
		assert.Equal(t, c.want, written(g.Crossings(c.points, c.closed)), name)
	}
}

// A grid of one cell has no lines to cross; a sliver of a column is none either.
func TestNoLinesNoCrossings(t *testing.T) {
	for _, side := range []Millimetres{10, 10.05} {
		g, err := New(side, side, 10, Millimetre)
		require.NoError(t, err)
		assert.Empty(t, g.Crossings([]Point{{1, 1}, {side, side}}, false))
	}
}

// FuzzCrossings: whatever the polyline, every crossing lies on its line and on the side
// of the cell it leads out of, each leads into the cell that the next leads out of, and
// a closed polyline crosses every line an even number of times and ends in the cell it
// began in.
func FuzzCrossings(f *testing.F) {
	bytesOf := func(values ...float64) (b []byte) {
		for _, v := range values {
			b = binary.LittleEndian.AppendUint64(b, math.Float64bits(v))
		}
		return b
	}
	f.Add(bytesOf(5, 5, 15, 5, 15, 15, 5, 15), true)
	f.Add(bytesOf(10, 10, 20, 20, 10, 20, 10, 10), true)
	f.Add(bytesOf(10, 0, 10, 40, 30, 40), false)
	f.Add(bytesOf(-1e300, 1e300, 1e300, -1e300, 7, 7), true)
	f.Add(bytesOf(math.MaxFloat64, 0, -math.MaxFloat64, 3, math.NaN(), 2, 10, math.Inf(1)), true)
	f.Add(bytesOf(9.999999999999998, 10.000000000000002, 10.000000000000002, 9.999999999999998, 10, 10), true)
	f.Fuzz(func(t *testing.T, data []byte, closed bool) {
		g, err := New(45, 35, 10, Millimetre)
		require.NoError(t, err)
		var points []Point
		for ; len(data) >= 16 && len(points) < 60; data = data[16:] {
			x, y := math.Float64frombits(binary.LittleEndian.Uint64(data)), math.Float64frombits(binary.LittleEndian.Uint64(data[8:]))
			points = append(points, Point{Millimetres(x), Millimetres(y)})
		}
		crossings := g.Crossings(points, closed)
		times := map[string]int{}
		var next, last Cell
		for i, c := range crossings {
			require.True(t, g.Has(c.From), "%v", c)
			require.True(t, i == 0 || c.From == next, "%v does not go on from %v", c, next)
			box := g.Box(c.From)
			next = c.From
			if c.Upright {
				require.Equal(t, Millimetres(c.Line+1)*g.Cell, c.At.X)
				require.True(t, c.At.Y >= box.Y && c.At.Y <= box.Y+box.Height, "%v", c)
				require.True(t, c.From.Column == c.Line || c.From.Column == c.Line+1, "%v", c)
				next.Column = 2*c.Line + 1 - c.From.Column
			} else {
				require.Equal(t, Millimetres(c.Line+1)*g.Cell, c.At.Y)
				require.True(t, c.At.X >= box.X && c.At.X <= box.X+box.Width, "%v", c)
				require.True(t, c.From.Row == c.Line || c.From.Row == c.Line+1, "%v", c)
				next.Row = 2*c.Line + 1 - c.From.Row
			}
			last = next
			times[fmt.Sprint(c.Upright, c.Line)]++
		}
		if closed && len(crossings) > 0 {
			require.Equal(t, crossings[0].From, last)
			for line, n := range times {
				require.Zero(t, n%2, "line %s is crossed %d times", line, n)
			}
		}
	})
}
