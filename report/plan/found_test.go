package plan

import (
	"image"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/grid"
)

// asked turns what was found into what a painter asks for.
func asked(found FoundPlan) (regions []RegionWish) {
	for _, r := range found.Regions {
		regions = append(regions, RegionWish{Name: r.Name, Outline: r.Outline})
	}
	return regions
}

// givenBack finds the regions of a photo, lays their outlines as a plan does, and
// returns the share of the pixels that are then of another region than found.
func givenBack(t *testing.T, opt Options) float64 {
	found, err := Found(opt)
	require.NoError(t, err)
	photo, layout, crop, err := open(opt.withDefaults())
	require.NoError(t, err)
	picture, err := photo.Picture(crop, 0, colour.Lab{L: 100})
	require.NoError(t, err)
	require.Equal(t, image.Pt(picture.Width, picture.Height), photo.WorkingSize(crop, 0))
	want := analyze.Regions(picture, nil)
	opt.Regions = asked(found)
	named, err := areas(opt, photo, layout, crop)
	require.NoError(t, err)
	got := analyze.Regions(picture, named)
	require.Len(t, got.Regions, len(found.Regions), "and no rest")
	changed := 0
	for i, r := range want.Of {
		if want.Regions[r].Name != got.Regions[got.Of[i]].Name {
			changed++
		}
	}
	return float64(changed) / float64(len(want.Of))
}

// What a painting file begins with gives back what was found: of a border that moves by
// a pencil's line at the most, 1 % of the picture is as much as may be.
func TestFoundIsGivenBack(t *testing.T) {
	slow(t)
	files := []string{demo}
	for _, name := range []string{"01_tulips_pink.png", "02_dahlia_orange.jpg", "05_fig_red_bowl.jpg", "16_brushes_multicolour.jpg", "17_coffee_still_life.png"} {
		file := filepath.Join("..", "..", "..", "shared", "photos", name)
		if _, err := os.Stat(file); err != nil {
			t.Logf("the shared folder is not beside the repository: no %s", name)
			continue
		}
		files = append(files, file)
	}
	for _, file := range files {
		share := givenBack(t, Options{Photo: file})
		t.Logf("%s: %.2f %% of the pixels change", filepath.Base(file), 100*share)
		assert.Less(t, share, 0.01, file)
	}
	crop, err := grid.ParseCrop("30,20,50,60")
	require.NoError(t, err)
	assert.Less(t, givenBack(t, Options{Photo: demo, Crop: crop, Panel: Size{200, 300, grid.Centimetre}}), 0.01, "a part of the photo")
}

// The same grid and regions as the plan's, the largest first.
func TestFoundIsThePlans(t *testing.T) {
	p, err := makeDemo()
	require.NoError(t, err)
	found, err := Found(Options{Photo: demo, Regions: []RegionWish{{Name: "not looked at"}}})
	require.NoError(t, err)
	assert.Equal(t, []int{p.Grid.Columns, p.Grid.Rows}, []int{found.Columns, found.Rows})
	assert.InDelta(t, p.Panel.WidthMM, float64(found.Width), 0.005)
	assert.Equal(t, p.Panel.Size, found.Unit.Size(found.Width, found.Height))
	assert.Equal(t, p.Grid.Cell, found.CellUnit.Format(found.Cell))
	require.Len(t, found.Regions, len(p.Regions))
	largest := found.Regions[0]
	assert.Equal(t, [][]grid.Point{{{}, {X: found.Width}, {X: found.Width, Y: found.Height}, {Y: found.Height}}}, largest.Outline)
	byName := map[string]Region{}
	for _, r := range p.Regions {
		byName[r.Name] = r
	}
	for _, r := range found.Regions {
		assert.Equal(t, byName[r.Name].Share, r.Share, r.Name)
		assert.LessOrEqual(t, r.Share, largest.Share, r.Name)
		cells, err := p.Grid.Layout().Cells(r.Where)
		require.NoError(t, err)
		assert.Subset(t, byName[r.Name].Cells, names(cells), "%s: the plan lists those of its colours too", r.Name)
		for _, ring := range r.Outline {
			for _, point := range ring {
				assert.True(t, point.X >= 0 && point.X <= found.Width && point.Y >= 0 && point.Y <= found.Height, "%s: %v", r.Name, point)
			}
		}
	}
}

// Mistakes are told as Make tells them.
func TestFoundRefuses(t *testing.T) {
	_, err := Found(Options{Photo: demo, Panel: Size{100, 100, grid.Millimetre}, Cell: Length{200, grid.Millimetre}})
	assert.ErrorAs(t, err, &UsageError{})
	_, err = Found(Options{Photo: filepath.Join(t.TempDir(), "none.jpg")})
	assert.ErrorContains(t, err, "there is no such file")
}

// A plan takes a region by any of the three: the demo's lemon by its mask and by a box
// around it (testdata/kettle.json), beside cells.
func TestPlanOfEveryKind(t *testing.T) {
	known, objects := demoTruth(t)
	lemon := known.Objects[6]
	require.Equal(t, "lemon apart", lemon.Name)
	mask := maskFile(t, objects.Rect.Dx(), objects.Rect.Dy(), func(x, y int) bool { return int(objects.ColorIndexAt(x, y)) == lemon.Mask })
	found, err := Found(Options{Photo: demo})
	require.NoError(t, err)
	p, err := Make(Options{Photo: demo, Regions: []RegionWish{
		{Name: "left", Outline: [][]grid.Point{{{}, {X: found.Width / 2}, {X: found.Width / 2, Y: found.Height}, {Y: found.Height}}}},
		{Name: "corner", Cells: "A1:B2"},
		{Name: "lemon", Mask: mask},
	}})
	require.NoError(t, err)
	cells := 4.0 / float64(found.Columns*found.Rows)
	assert.InDelta(t, cells, p.Regions[1].Share, 0.002)
	assert.InDelta(t, 0.5-cells, p.Regions[0].Share, 0.002)
	assert.InDelta(t, lemon.Share, p.Regions[2].Share, 0.0005)
	assert.Equal(t, analyze.TheRest, p.Regions[3].Name)
}
