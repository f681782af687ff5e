package sheet

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/report/plan"
)

// piece is a tile as printed: where its crosses and its sides stand on the page, in
// millimetres.
type piece struct {
	raster
	across, down []float64
}

// pieceOf finds the crosses of a tile by the arms that reach out of it: above its top,
// which lies near y, and left of its left side, near x. The panel's own corners have a
// mark there as well.
func pieceOf(r raster, x, y float64) piece {
	return piece{r, r.uprights(x-1, x+200, y-1.4, y-0.5), r.levels(x-1.4, x-0.5, y-1, y+225)}
}

// The demo's photo on a panel of 12 × 16 in takes four sheets of A4. Laid together cross
// on cross they show one picture: the strip that two of them share is the same on both,
// shifted by no more than 0.2 mm, and together they are as large as the panel.
func TestTilesJoin(t *testing.T) {
	slow(t)
	o := Options{Kinds: []Kind{Panel}, As: Photo}
	r := printed(t, pagesOf(t, planOf(t, plan.Options{Photo: demo, Panel: inches(12, 16)}, o), o))
	require.Len(t, r, 4)
	const x, y = 15, 23 // about where pictures begin
	var at [4]piece
	for i := range r {
		at[i] = pieceOf(r[i], x, y)
		require.Len(t, at[i].across, 3, "sheet %d across: %.1f", i+1, at[i].across) // a side of the panel and both edges of the overlap
		require.Len(t, at[i].down, 3, "sheet %d down: %.1f", i+1, at[i].down)
	}
	for _, pair := range [][2]int{{0, 1}, {2, 3}} { // left and right
		a, b := at[pair[0]], at[pair[1]]
		assert.InDelta(t, 304.8, a.across[1]-a.across[0]+b.across[2]-b.across[0], trueTo, "width of sheets %v", pair)
		assertSame(t, a, b, [2]float64{a.across[1], a.down[0]}, [2]float64{b.across[0], b.down[0]}, 10, 200)
	}
	for _, pair := range [][2]int{{0, 2}, {1, 3}} { // above and below
		a, b := at[pair[0]], at[pair[1]]
		assert.InDelta(t, 406.4, a.down[1]-a.down[0]+b.down[2]-b.down[0], trueTo, "height of sheets %v", pair)
		assertSame(t, a, b, [2]float64{a.across[0], a.down[1]}, [2]float64{b.across[0], b.down[0]}, 150, 10)
	}
}

// assertSame lays b on a, place on place, and shifts it until both look most alike; all in
// millimetres. It leaves out the rims, where one sheet has a line that the other has not.
func assertSame(t *testing.T, a, b piece, atA, atB [2]float64, width, height float64) {
	t.Helper()
	const reach, rim = 8, 12 // dots: 0.7 and 1 mm
	differ := func(dx, dy int) float64 {
		sum, n := 0.0, 0
		for y := rim; y < a.dot(height)-rim; y += 2 {
			for x := rim; x < a.dot(width)-rim; x += 2 {
				one := a.GrayAt(a.dot(atA[0])+x, a.dot(atA[1])+y).Y
				other := b.GrayAt(b.dot(atB[0])+x+dx, b.dot(atB[1])+y+dy).Y
				sum, n = sum+math.Abs(float64(one)-float64(other)), n+1
			}
		}
		return sum / float64(n)
	}
	best, bestX, bestY := math.Inf(1), 0, 0
	for dy := -reach; dy <= reach; dy++ {
		for dx := -reach; dx <= reach; dx++ {
			if d := differ(dx, dy); d < best {
				best, bestX, bestY = d, dx, dy
			}
		}
	}
	assert.LessOrEqual(t, a.mm(math.Hypot(float64(bestX), float64(bestY))), trueTo, "shift")
	assert.Less(t, best, 6.0, "mean difference in gray levels")
}
