package plan

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/match/paint"
)

// Of few tubes every recipe is made, those of a painter's palette and its white stay, and
// the error told is the recipes' own: of the regions without a palette, by their shares.
func TestFewTubesAreMixedFrom(t *testing.T) {
	p, err := Make(Options{Photo: demo, Tubes: TubeWish{Most: 5}, Regions: []RegionWish{
		{Name: "left", Cells: "A1:C9", Palette: []string{"viridian"}},
		{Name: "middle", Cells: "D1:E9"},
		{Name: "right", Cells: "F1:L9"},
	}})
	require.NoError(t, err)
	require.LessOrEqual(t, len(p.Tubes.Kept), 5)
	assert.Subset(t, p.Tubes.Kept, []string{"viridian", "titanium-white"})
	var miss, share float64
	for _, r := range p.Regions {
		for _, c := range r.Colours {
			for _, part := range c.Recipe.Parts {
				assert.Contains(t, p.Tubes.Kept, part.Paint, c.ID)
			}
			if r.Palette.From == WholeBox {
				miss, share = miss+c.PanelShare*c.Recipe.DeltaE, share+c.PanelShare
			}
		}
	}
	assert.InDelta(t, miss/share, p.Tubes.MeanError, 0.06)
}

func TestFixedTubes(t *testing.T) {
	box := []paint.Paint{owned("burnt-sienna"), owned("ivory-black"), owned("titanium-white"), owned("viridian")}
	assert.Equal(t, []int{0, 2}, fixedTubes([]RegionWish{{Palette: []string{"burnt-sienna"}}, {}}, box))
	assert.Equal(t, []int{0, 3}, fixedTubes([]RegionWish{{Palette: []string{"viridian"}, NoWhite: true}, {Palette: []string{"burnt-sienna"}, NoWhite: true}}, box))
	assert.Empty(t, fixedTubes([]RegionWish{{}}, box))
}

// What the errors of few tubes are over is said where it is not the whole panel, and
// where nothing is left to choose for.
func TestFewTubesSayWhatIsMeasured(t *testing.T) {
	text := func(w ...RegionWish) string {
		p, err := Make(Options{Photo: demo, Tubes: TubeWish{Most: 6}, Regions: w})
		require.NoError(t, err)
		return p.Tubes.Text
	}
	umber := []string{"burnt-umber"}
	assert.Contains(t, text(RegionWish{Name: "left", Cells: "A1:F9", Palette: umber}), "over the 50 % of the panel without a palette")
	assert.NotContains(t, text(RegionWish{Name: "left", Cells: "A1:F9"}), "of the panel without")
	assert.Equal(t, "2 of 12 tubes: those of the regions' palettes.", text(RegionWish{Name: "all", Cells: "A1:L9", Palette: umber}))
}
