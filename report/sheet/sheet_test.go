package sheet

import (
	"image"
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

// What is in the picture lies where it should on the panel: a black square, put between
// the grid's lines, from pixel 130 to 170 across and 330 to 370 down of 600 × 800, is from
// 33.02 mm to 43.18 mm and from 83.82 mm to 93.98 mm on a panel of 6 × 8 in.
func TestPictureIsInPlace(t *testing.T) {
	for _, as := range []As{Photo, GrayAs, Values} {
		for _, mirror := range []bool{false, true} {
			o := Options{Kinds: []Kind{Panel}, As: as, Mirror: mirror}
			p := squarePlan(t, inches(6, 8), image.Rect(130, 330, 170, 370), o)
			r := printed(t, pagesOf(t, p, o))[0]
			from, to := 33.02, 43.18
			if mirror {
				from, to = 152.4-to, 152.4-from
			}
			left, top := r.uprights(14, 16, 60, 62)[0], r.levels(45, 46, 20, 25)[0]
			across := r.extent(func(mm float64) uint8 { return r.GrayAt(r.dot(left+mm), r.dot(top+88)).Y }, from-6, to+6)
			down := r.extent(func(mm float64) uint8 { return r.GrayAt(r.dot(left+from+3), r.dot(top+mm)).Y }, 83.82-7, 93.98+7)
			assertLengths(t, []float64{from, to}, across, "%s, mirrored %v, across", as, mirror)
			assertLengths(t, []float64{83.82, 93.98}, down, "%s, mirrored %v, down", as, mirror)
		}
	}
}

// extent returns the first and the last place between from and to that is darker than the
// paper by far.
func (r raster) extent(at func(mm float64) uint8, from, to float64) []float64 {
	var found []float64
	for mm := from; mm <= to; mm += 0.02 {
		if at(mm) < 150 {
			found = append(found, mm)
		}
	}
	if len(found) == 0 {
		return nil
	}
	return []float64{found[0], found[len(found)-1]}
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
