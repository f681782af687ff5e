package painting

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/grid"
	"tonewright/match/layer"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// startOf returns a start on a panel of 300 × 200 mm with three regions, the last of
// them no larger than a mark of the ruler.
func startOf(opt plan.Options, unit grid.Unit) Start {
	return Start{
		Photo: "kettle.jpg", Name: "kettle", Options: opt, Command: "tonewright plan painting.toml",
		Found: plan.FoundPlan{
			Width: 300, Height: 200, Unit: unit, Cell: 25, CellUnit: grid.Centimetre, Columns: 12, Rows: 8,
			Regions: []plan.FoundRegion{
				{Name: "left, brown", Where: "A1:L2, A3:F3", Share: 0.6},
				{Name: "right, blue", Where: "C3:F7", Share: 0.14, Outline: [][]grid.Point{
					{{X: 100.2, Y: 50.3}, {X: 299.9, Y: 50.3}, {X: 299.9, Y: 199.8}, {X: 299.8, Y: 199.9}},
					{{X: 120, Y: 60}, {X: 130, Y: 60}, {X: 130, Y: 70}},
				}},
				{Name: "middle, pale", Where: "C3", Share: 0.001, Outline: [][]grid.Point{{{X: 60, Y: 60}, {X: 60.1, Y: 60}, {X: 60, Y: 60.1}}}},
			},
		},
	}
}

// readBack writes a start's text into a file and reads it.
func readBack(t *testing.T, s Start) (Painting, string) {
	t.Helper()
	text, err := s.Text()
	require.NoError(t, err)
	p, err := Read(write(t, text))
	require.NoError(t, err, text)
	return p, text
}

// What a start was given is what its file reads back to.
func TestStartReadsBack(t *testing.T) {
	black, err := plan.ParseGround("#102030")
	require.NoError(t, err)
	box := paint.StarterBox()
	box.Name, box.Paints = "painting.toml", box.Paints[:5]
	for name, opt := range map[string]plan.Options{
		"plain": {Box: paint.StarterBox()},
		"all of it": {
			Box: box, Ground: black, Literal: true, Sight: colour.Sight{Kind: "tritan", Severity: 0.35},
			Crop: grid.Crop{Window: grid.Window{X: 12.5, Y: 1e-7, Width: 50, Height: 99.9}},
		},
		"a side kept": {Box: paint.StarterBox(), Crop: grid.Crop{Keep: "left"}, Sight: colour.Sight{Kind: "deutan", Severity: 1}},
	} {
		t.Run(name, func(t *testing.T) {
			opt.Panel = plan.Size{Width: 300, Height: 200, Unit: grid.Millimetre}
			p, _ := readBack(t, startOf(opt, grid.Millimetre))
			want := opt
			want.Name, want.Cell = "kettle", plan.Length{Length: 25, Unit: grid.Centimetre}
			want.Photo = filepath.Join(filepath.Dir(p.Options.Photo), "kettle.jpg")
			if want.Ground.Name == "" {
				want.Ground, err = plan.ParseGround("white")
				require.NoError(t, err)
			}
			if want.Crop.Keep == "" && want.Crop.Window == (grid.Window{}) {
				want.Crop.Keep = "centre"
			}
			if want.Sight == (colour.Sight{}) {
				want.Sight.Kind = "full"
			}
			got := p.Options
			got.Regions = nil
			assert.Equal(t, ids(want.Box.Paints), ids(got.Box.Paints))
			assert.Equal(t, want.Box.Name, got.Box.Name)
			got.Box, want.Box = paint.Box{}, paint.Box{}
			assert.Equal(t, want, got)
		})
	}
}

// The first region has the whole panel; outlines go to the ruler's marks and to the
// panel's edge; a region that no ruler can find keeps its cells.
func TestStartRegions(t *testing.T) {
	for unit, first := range map[grid.Unit]grid.Point{
		grid.Millimetre: {X: 100, Y: 50.5},                // 100.2 and 50.3 to half a millimetre
		grid.Centimetre: {X: 100, Y: 50.5},                // the same
		grid.Inch:       {X: 3.94 * 25.4, Y: 1.98 * 25.4}, // 3.9449 and 1.9803 to a fiftieth
	} {
		p, text := readBack(t, startOf(plan.Options{Box: paint.StarterBox()}, unit))
		regions := p.Options.Regions
		require.Len(t, regions, 3)
		assert.Equal(t, plan.RegionWish{Name: "left, brown", Cells: "A1:L8"}, regions[0])
		require.Len(t, regions[1].Outline, 2)
		ring := regions[1].Outline[0]
		require.Len(t, ring, 3, "two corners become one: %s", text)
		assert.InDelta(t, float64(first.X), float64(ring[0].X), 1e-9)
		assert.InDelta(t, float64(first.Y), float64(ring[0].Y), 1e-9)
		assert.Equal(t, grid.Point{X: p.Options.Panel.Width, Y: p.Options.Panel.Height}, ring[2], "the edge")
		assert.Equal(t, "C3", regions[2].Cells)
		assert.Contains(t, text, "# About C3:F7; 14 % of the panel.\n")
	}
}

var unused = regexp.MustCompile(`(?m)^# (\[left\]|[a-z_-]+ = )`)

// Every key that is written behind a # can be taken into use as it stands.
func TestStartNotesAreGoodKeys(t *testing.T) {
	_, text := readBack(t, startOf(plan.Options{Box: paint.StarterBox()}, grid.Inch))
	used := unused.ReplaceAllString(strings.ReplaceAll(text, "# box = ", "# "), "$1")
	p, err := Read(write(t, used))
	require.NoError(t, err, used)
	assert.Equal(t, plan.TubeWish{Most: 8, Within: 3}, p.Options.Tubes)
	assert.Equal(t, plan.Work{
		Air: layer.Indoors, Medium: layer.Medium{Kind: layer.Linseed, Parts: 0.1}, Absorbent: true, Film: plan.FilmUsual, Waste: new(plan.WasteUsual),
		Start: "2026-12-01", Sessions: plan.SessionsUsual, Piles: plan.PilesUsual,
	}, p.Options.Work, "the defaults, where there are any")
	assert.Equal(t, plan.DetailUsual, p.Options.Detail)
	assert.Equal(t, map[string]float64{"titanium-white": 37}, p.Options.Box.Left)
	for _, r := range p.Options.Regions {
		assert.Equal(t, "support", r.Role)
		assert.Len(t, r.Palette, 2)
		assert.Equal(t, "photo", r.Aim)
	}
	for _, name := range append(namesOf(pictureKeys()), slices.Concat(namesOf(regionKeys()), namesOf(layerKeys()))...) {
		if name != "region" && name != "layer" && name != "left" && name != "quiet" && name != "megapixels" { // the last two are no painter's
			assert.Regexp(t, `(?m)(^|# +)`+name+" = ", text)
		}
	}
	for line := range strings.Lines(text) {
		assert.LessOrEqual(t, len([]rune(strings.TrimSuffix(line, "\n"))), 88, line)
	}
}

// Whatever a photo is called, the file names it.
func TestStartOddNames(t *testing.T) {
	for _, photo := range []string{
		`a "b".jpg`, `a\b.jpg`, `a\u0041.jpg`, "a\nb.jpg", "a\tb\x7f.jpg", "wasserkessel äöü ☕.jpg", "'''.jpg", `"""`, "#x.jpg", " .jpg ",
		strings.Repeat("é", 120) + ".jpg", "a\u202eb.jpg",
	} {
		s := startOf(plan.Options{Box: paint.StarterBox()}, grid.Inch)
		s.Photo, s.Name = photo, strings.TrimSuffix(photo, ".jpg")
		p, _ := readBack(t, s)
		assert.Equal(t, photo, filepath.Base(p.Options.Photo))
		if len([]rune(s.Name)) <= longestWord {
			assert.Equal(t, s.Name, p.Options.Name)
		}
	}
	s := startOf(plan.Options{Box: paint.StarterBox()}, grid.Inch)
	s.Photo = "a\xffb.jpg"
	_, err := s.Text()
	assert.ErrorContains(t, err, "a?b.jpg: its name is not written in UTF-8")
}

// A box file is named, not listed.
func TestStartWithBoxFile(t *testing.T) {
	s := startOf(plan.Options{Box: paint.StarterBox()}, grid.Inch)
	s.BoxFile = "studio.toml"
	text, err := s.Text()
	require.NoError(t, err)
	assert.NotContains(t, text, "\npaints = ")
	file := write(t, text)
	require.NoError(t, os.WriteFile(filepath.Join(filepath.Dir(file), "studio.toml"), []byte(`paints = ["viridian", "ivory-black"]`), 0o600))
	p, err := Read(file)
	require.NoError(t, err)
	assert.Equal(t, []string{"viridian", "ivory-black"}, ids(p.Options.Box.Paints))
}

// A panel that is left to the photo is written with two decimals, one that the painter
// gave in full.
func TestStartPanelAsWritten(t *testing.T) {
	for given, want := range map[bool]string{false: `panel = "12x8.44in"`, true: `panel = "12x8.4375in"`} {
		s := startOf(plan.Options{Box: paint.StarterBox()}, grid.Inch)
		s.Found.Width, s.Found.Height = 12*25.4, 8.4375*25.4
		if given {
			s.Options.Panel = plan.Size{Width: s.Found.Width, Height: s.Found.Height, Unit: grid.Inch}
		}
		_, text := readBack(t, s)
		assert.Contains(t, text, want)
	}
}

// A ring that a ruler reads as a line holds nothing and is not written: plan would refuse it.
func TestFlatRingIsLeftOut(t *testing.T) {
	assert.True(t, flat([][2]float64{{0, 0}, {0.5, 0.5}, {1, 1}}))
	assert.False(t, flat([][2]float64{{0, 0}, {0.5, 0.5}, {1, 0}}))
}
