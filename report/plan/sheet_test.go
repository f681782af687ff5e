package plan

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/grid"
)

// What the sheets show is what the plan says: the same drawing, and the same values, whose
// traced areas are those of the plan's value map; together they cover the panel.
func TestSheetsShowThePlan(t *testing.T) {
	opt := Options{Photo: demo}
	made, err := Make(opt)
	require.NoError(t, err)
	for _, steps := range []int{5, 9} {
		wish := SheetWish{Drawing: true, Steps: steps, Size: func(g grid.Grid) (int, error) { return 700, nil }}
		sheets, err := Sheets(opt, wish)
		require.NoError(t, err)
		assert.Equal(t, 700, sheets.Picture.Width)
		assert.JSONEq(t, asJSON(t, made.Drawing), asJSON(t, sheets.Drawing))
		assert.Len(t, sheets.Regions, len(made.Regions))

		of := made.Pictures.Values5.Of
		if steps == 9 {
			of = made.Pictures.Values9.Of
		}
		count := make([]int, steps)
		for _, s := range of {
			count[s]++
		}
		panel, all := float64(sheets.Grid.layout.Width*sheets.Grid.layout.Height), 0.0
		for i, s := range sheets.Values {
			area := 0.0
			for _, ring := range s.Rings {
				area += signedArea(ring)
			}
			area = math.Abs(area) / panel
			assert.InDelta(t, float64(count[i])/float64(len(of)), area, 0.005, "value %.0f of %d steps", s.Value, steps)
			all += area
		}
		assert.InDelta(t, 1, all, 1e-6)
	}
}

// signedArea is that of a ring by the surveyor's formula; holes run the other way round.
func signedArea(ring []grid.Point) (sum float64) {
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		sum += float64(p.X*q.Y-q.X*p.Y) / 2
	}
	return sum
}

func asJSON(t *testing.T, v any) string {
	t.Helper()
	text, err := json.Marshal(v)
	require.NoError(t, err)
	return string(text)
}

// What is wrong with the sheets asked for is said before the photo is decoded, as a
// mistake in what was asked for; nothing is read that is not shown.
func TestSheetsAsk(t *testing.T) {
	opt := Options{Photo: demo}
	var steps []string
	opt.Step = func(s string) { steps = append(steps, s) }
	_, err := Sheets(opt, SheetWish{Drawing: true, Size: func(g grid.Grid) (int, error) {
		assert.Equal(t, "L9", g.Last().String())
		return 0, errors.New("too many sheets")
	}})
	_, misused := errors.AsType[UsageError](err)
	assert.True(t, misused)
	assert.EqualError(t, err, "too many sheets")
	assert.Equal(t, []string{"reading the photo"}, steps)

	sheets, err := Sheets(opt, SheetWish{Size: func(grid.Grid) (int, error) { return 0, nil }})
	require.NoError(t, err)
	assert.Nil(t, sheets.Picture)
	assert.Empty(t, sheets.Values)
	assert.Empty(t, sheets.Drawing.Contours)
}
