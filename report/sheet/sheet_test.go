package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/grid"
	"tonewright/report/plan"
)

const demo = "../../testdata/kettle.jpg"

// The rule of every kind of page, on upright and lying paper, is 100 mm and 4 in (of
// 25.4 mm, by the agreement of 1959) as another program draws it.
func TestRuleIsTrue(t *testing.T) {
	o := Options{Kinds: []Kind{Whole, Panel, Table, Cards}, Cells: "A1:B2"}
	for _, name := range []string{"A4", "Letter"} {
		o.Paper, _ = grid.ParsePaper(name)
		for i, r := range printed(t, pagesOf(t, planOf(t, plan.Options{Photo: demo}, o), o)) {
			above, below := r.rule(t)
			assertLengths(t, []float64{0, 50, 100}, above, "%s, page %d", name, i+1)
			assertLengths(t, []float64{0, 25.4, 50.8, 76.2, 101.6}, below, "%s, page %d", name, i+1)
		}
	}
}

// A panel of 6 × 8 in fits on A4 as it is: its sides and the lines of the grid are where
// a ruler wants them.
func TestPanelIsTrue(t *testing.T) {
	o := Options{Kinds: []Kind{Panel}}
	r := printed(t, pagesOf(t, flatPlan(t, inches(6, 8), o), o))
	require.Len(t, r, 1)
	across := r[0].uprights(14, 168.5, 60, 62)
	down := r[0].levels(40, 41, 20, 265)
	assertPitch(t, across, 25.4, 7)
	assertPitch(t, down, 25.4, 9)
}

// The whole of a panel of 12 × 16 in is drawn at the scale that its head says.
func TestWholeIsTrue(t *testing.T) {
	o := Options{Kinds: []Kind{Whole}}
	pages := pagesOf(t, flatPlan(t, inches(12, 16), o), o)
	r := printed(t, pages)
	require.Len(t, r, 1)
	assert.Contains(t, pages[0].About, "1 : 1.7;")
	assertPitch(t, r[0].uprights(14, 196, 60, 62), 25.4/1.7, 13)
	assertPitch(t, r[0].levels(40, 41, 20, 265), 25.4/1.7, 17)
}

// A card enlarged twice is twice as large, and its finer lines a quarter of a cell apart.
func TestCardIsTrue(t *testing.T) {
	o := Options{Cells: "B2:D3", Enlarge: 2}
	r := printed(t, pagesOf(t, flatPlan(t, inches(6, 8), o), o))
	require.Len(t, r, 1)
	assertPitch(t, r[0].uprights(14, 283, 35, 37), 50.8/4, 3*4+1)
	assertPitch(t, r[0].levels(72, 73, 20, 165), 50.8/4, 2*4+1)
}

// assertPitch holds n lines against an even pitch, each from the first.
func assertPitch(t *testing.T, lines []float64, pitch float64, n int) {
	t.Helper()
	var want, got []float64
	for i := range n {
		want = append(want, float64(i)*pitch)
	}
	for _, at := range lines {
		got = append(got, at-lines[0])
	}
	assertLengths(t, want, got, "pitch %.2f", pitch)
}

func assertLengths(t *testing.T, want, got []float64, what string, args ...any) {
	t.Helper()
	if assert.Len(t, got, len(want), append([]any{what + ": %.1f"}, append(args, got)...)...) {
		assert.InDeltaSlice(t, want, got, trueTo, append([]any{what}, args...)...)
	}
}
