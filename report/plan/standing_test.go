package plan

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/grid"
)

func TestStandingText(t *testing.T) {
	for want, s := range map[string]analyze.Standing{
		"First to catch the eye: far from what is around it (38 L*a*b*), by value most.":                 {Rank: 1, Around: 38.4, Value: 0.7, Chroma: 0.2, Hue: 0.1},
		"No. 3 to catch the eye: very far from what is around it (63 L*a*b*), by chroma and hue.":        {Rank: 3, Around: 63.3, Value: 0.2, Chroma: 0.42, Hue: 0.38},
		"No. 7 to catch the eye: close to what is around it (1 L*a*b*), by value, chroma and hue alike.": {Rank: 7, Around: 0.6, Value: 0.34, Chroma: 0.33, Hue: 0.33},
		"No. 2 to catch the eye: some way from what is around it (10 L*a*b*), by hue most.":              {Rank: 2, Around: 9.6, Value: 0.3, Chroma: 0.2, Hue: 0.5},
		"Does not catch the eye: nothing parts jug from what is around it.":                              {Rank: 1, Around: 0.3, Value: 1},
	} {
		assert.Equal(t, want, standingOf(s, Region{Name: "jug"}).Text)
	}
	assert.Nil(t, standingOf(analyze.Standing{}, Region{}))
	got := standingOf(analyze.Standing{Rank: 2, Score: 0.123456, Around: 12.3456, Overall: 7.8912, Value: 0.123, Chroma: 0.456, Hue: 0.421}, Region{})
	got.Text = ""
	assert.Equal(t, &Standing{Rank: 2, Score: 0.12, Around: 12.3, Overall: 7.9, Value: 0.12, Chroma: 0.46, Hue: 0.42}, got)
}

// A jug in the middle of a shelf, by hand: 80 × 60 mm in cells of 10 mm, 5 pixels a
// millimetre; the jug is 20 mm wide, from C to D, and as tall as rows 3 and 4, its lower
// half and the shelf around it at one value, its upper half light.
func jugOnShelf() (*analyze.Picture, analyze.Parting) {
	const w, h = 400, 300
	study := &analyze.Picture{Width: w, Height: h}
	parting := analyze.Parting{Regions: []analyze.Region{{Name: "shelf"}, {Name: "jug"}}}
	for y := range h {
		for x := range w {
			region, c := uint8(0), colour.Lab{L: 40}
			if x >= 100 && x < 200 && y >= 100 && y < 200 {
				if region, c = 1, (colour.Lab{L: 41, B: 25}); y < 150 {
					c.L = 80
				}
			}
			parting.Of = append(parting.Of, region)
			parting.Regions[region].Pixels++
			study.Lab = append(study.Lab, float32(c.L), float32(c.A), float32(c.B))
		}
	}
	return study, parting
}

// The lower half of the jug's outline is lost: 10 mm down each side and 20 mm along the
// foot, 40 of 80 mm, in the jug's cells of row 4.
func TestLostEdgeInCells(t *testing.T) {
	study, parting := jugOnShelf()
	g := testGrid(t, 80, 60)
	regions := []Region{{Tag: "A", Name: "shelf"}, {Tag: "B", Name: "jug"}}
	edges := lostEdgesOf(study, parting, g, regions)
	require.Len(t, edges, 1)
	e := edges[0]
	assert.Equal(t, []string{"A", "B"}, []string{e.A, e.B})
	assert.InDelta(t, 40, e.LengthMM, 2)
	assert.InDelta(t, 0.5, e.Share, 0.03)
	assert.InDelta(t, 0.1, e.ValueApart, 0.051)
	assert.Equal(t, "C4:D4", e.Where, "where the jug is, not what is beside it")
	again, err := g.Cells(e.Where)
	require.NoError(t, err)
	assert.Equal(t, e.Cells, names(again))
	assert.Equal(t, fmt.Sprintf("Lost edge between shelf and jug along %s, %.0f mm, %.0f %% of their border: their values are 0.1 apart, colour tells them apart (CIEDE2000 %.0f).",
		e.Where, e.LengthMM, 100*e.Share, e.DeltaE), e.Text)

	whole := analyze.Parting{Regions: parting.Regions[:1], Of: make([]uint8, len(parting.Of))}
	assert.Equal(t, []LostEdge{}, lostEdgesOf(study, whole, g, regions), "an empty list, not null in the JSON")
}

// Of more than can be gone through the longest are listed, the longest first; each is
// told by what is left to tell it.
func TestLongestLostEdgesFirst(t *testing.T) {
	const w, h = 600, 400 // stripes of 30 pixels, each a little shorter than the one before
	study := &analyze.Picture{Width: w, Height: h}
	parting := analyze.Parting{Regions: make([]analyze.Region, 21)}
	for y := range h {
		for x := range w {
			n := x / 30
			region, c := uint8(n+1), colour.Lab{L: 50, A: float64(n % 2 * (n + 1))}
			if y > 390-n*10 {
				region, c = 0, colour.Lab{L: 95}
			}
			parting.Of = append(parting.Of, region)
			study.Lab = append(study.Lab, float32(c.L), float32(c.A), float32(c.B))
		}
	}
	var regions []Region
	for n := range parting.Regions {
		regions = append(regions, Region{Tag: grid.ColumnName(n), Name: fmt.Sprint("stripe ", n)})
	}
	edges := lostEdgesOf(study, parting, testGrid(t, 120, 80), regions)
	require.Len(t, edges, mostLostEdges)
	assert.Equal(t, []string{"B", "C"}, []string{edges[0].A, edges[0].B})
	for i := 1; i < len(edges); i++ {
		assert.LessOrEqual(t, edges[i].LengthMM, edges[i-1].LengthMM)
	}
	assert.Contains(t, edges[0].Text, "hardly anything tells them apart (CIEDE2000 3).")
	assert.Contains(t, edges[5].Text, "colour tells them apart a little")
	assert.Contains(t, edges[11].Text, "colour tells them apart (CIEDE2000 ")
}
