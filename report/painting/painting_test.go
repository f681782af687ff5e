package painting

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/grid"
	"tonewright/match"
	"tonewright/match/layer"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// everyKey sets every key to what is not its default.
const everyKey = `
photo = "photos/kettle.jpg"
name = "Kettle \"at noon\""
panel = "30x40cm"
cell = "2.5cm"
crop = "10,0,80,100"
ground = "#202020"
detail = 7
key = "literal"
sight = { kind = "Deutan", severity = 0.8 }
paints = [
  "titanium-white",
  "Yellow Ochre", "PB29",
  "burnt-umber",
]
tubes = 8
within = 3
colours = 5
finish = "matt"
coat = 0.3
holds = true
start = 2026-12-01
sessions = 2
piles = 12
medium = "Linseed oil 1:10"
film = 80
absorbent = true
waste = 0.5
temperature = 17
humidity = 65
megapixels = 50.5
out = "out/kettle.html"
json = "kettle.json"
study = "../study.png"
ics = "kettle.ics"
checklist = "days.txt"
quiet = true

[left]
titanium-white = "37 ml"
PY43 = 0

[[region]]
name = "shelf"
cells = "A1:L9"
role = "Quiet"
white = false
palette = ["Burnt Umber"]
aim = "value"
value_shift = -0.5

[[region]]
name = "kettle"
outline = [[1, 2.5], [10, 2.5], [10, 20]]
role = "focal"
scheme = "complement of SHELF"

[[region]]
name = "lid"
outline = [
  [[0, 0], [1, 0], [1, 1]],
  [[0.2, 0.2], [0.4, 0.2], [0.4, 0.4]],
]
scheme = "analogous"
hue = "5YR"

[[region]]
name = "spout"
mask = "masks/spout.png"
palette = ["titanium-white", "ultramarine-blue"]

[[layer]]
region = " Kettle"
pass = "Block-in"
mix = "PB29 1, burnt-umber 2"
medium = "solvent 1:4"
film = 0.5

[[layer]]
region = "kettle"
pass = "glaze"
wet = true
after = 7
`

func TestReadEveryKey(t *testing.T) {
	file := write(t, everyKey)
	p, err := Read(file)
	require.NoError(t, err)
	here := filepath.Dir(file)
	o := p.Options
	assert.Equal(t, filepath.Join(here, "photos", "kettle.jpg"), o.Photo)
	assert.Equal(t, `Kettle "at noon"`, o.Name)
	assert.Equal(t, plan.Size{Width: 300, Height: 400, Unit: grid.Centimetre}, o.Panel)
	assert.Equal(t, plan.Length{Length: 25, Unit: grid.Centimetre}, o.Cell)
	assert.Equal(t, grid.Crop{Window: grid.Window{X: 10, Width: 80, Height: 100}}, o.Crop)
	assert.Equal(t, "#202020", o.Ground.Name)
	assert.Equal(t, 7, o.Detail)
	assert.True(t, o.Literal)
	assert.Equal(t, colour.Sight{Kind: "deutan", Severity: 0.8}, o.Sight)
	assert.Equal(t, []string{"titanium-white", "yellow-ochre", "ultramarine-blue", "burnt-umber"}, ids(o.Box.Paints))
	assert.Equal(t, "painting.toml", o.Box.Name)
	assert.Equal(t, plan.TubeWish{Most: 8, Within: 3}, o.Tubes)
	assert.Equal(t, 5, o.Colours)
	assert.Equal(t, match.Options{Finish: paint.Matt, Coat: 0.3, Holds: true}, o.Mixing)
	assert.Equal(t, 50.5, o.Megapixels)
	assert.Equal(t, filepath.Join(here, "out", "kettle.html"), p.Out)
	assert.Equal(t, filepath.Join(here, "kettle.json"), p.JSON)
	assert.Equal(t, filepath.Join(filepath.Dir(here), "study.png"), p.Study)
	assert.Equal(t, filepath.Join(here, "kettle.ics"), p.Calendar)
	assert.Equal(t, filepath.Join(here, "days.txt"), p.Checklist)
	assert.True(t, p.Quiet)
	assert.Equal(t, map[string]float64{"titanium-white": 37, "yellow-ochre": 0}, o.Box.Left)
	assert.Equal(t, plan.Work{
		Air: layer.Air{Celsius: 17, Humidity: 65}, Medium: layer.Medium{Kind: layer.Linseed, Parts: 0.1}, Film: 80, Absorbent: true, Waste: new(0.5),
		Start: "2026-12-01", Sessions: 2, Piles: 12,
		Coats: []plan.CoatWish{
			{
				Region: "kettle", Pass: plan.PassBlockIn, Medium: &layer.Medium{Kind: layer.Solvent, Parts: 0.25}, Film: 0.5,
				Pile: &match.Pile{Paints: []paint.Paint{o.Box.Paints[2], o.Box.Paints[3]}, Parts: []float64{1, 2}},
			},
			{Region: "kettle", Pass: plan.PassGlaze, Wet: true, After: 7},
		},
	}, o.Work)
	assert.Equal(t, []plan.RegionWish{
		{Name: "shelf", Cells: "A1:L9", Role: "quiet", NoWhite: true, Palette: []string{"burnt-umber"}, Aim: "value", Shift: -0.5},
		{
			Name: "kettle", Role: "focal", Outline: [][]grid.Point{{{X: 10, Y: 25}, {X: 100, Y: 25}, {X: 100, Y: 200}}},
			Wish: plan.Wish{Scheme: match.Complement, Of: "shelf"},
		},
		{
			Name: "lid", Wish: plan.Wish{Scheme: match.Analogous, Hue: "5YR"},
			Outline: [][]grid.Point{{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 10}}, {{X: 2, Y: 2}, {X: 4, Y: 2}, {X: 4, Y: 4}}},
		},
		{Name: "spout", Mask: filepath.Join(here, "masks", "spout.png"), Palette: []string{"titanium-white", "ultramarine-blue"}},
	}, o.Regions)
}

// Every key is in everyKey, but for the box, which stands in for the paints.
func TestEveryKeyIsTried(t *testing.T) {
	for i, keys := range [][]string{namesOf(pictureKeys()), namesOf(regionKeys()), namesOf(layerKeys())} {
		text := everyKey
		if i > 0 {
			_, text, _ = strings.Cut(text, []string{"", "\n[[region]]", "\n[[layer]]"}[i])
		}
		for _, name := range keys {
			if name != "box" {
				assert.Regexp(t, `(?m)^(\[\[?`+name+`\]|`+name+` = )`, text)
			}
		}
	}
}

// A key that is left out leaves the plan's own default.
func TestReadOnlyAPhoto(t *testing.T) {
	file := write(t, `photo = "kettle.jpg"`)
	p, err := Read(file)
	require.NoError(t, err)
	assert.Equal(t, plan.Options{Photo: filepath.Join(filepath.Dir(file), "kettle.jpg"), Box: paint.StarterBox()}, p.Options)
	assert.Empty(t, p.Out+p.JSON+p.Study+p.Calendar+p.Checklist+p.BoxFile)
}

// A path from the root stays.
func TestReadAbsolutePath(t *testing.T) {
	photo := filepath.Join(t.TempDir(), "kettle.jpg")
	p, err := Read(write(t, "photo = "+paint.TOMLString(filepath.ToSlash(photo))))
	require.NoError(t, err)
	assert.Equal(t, photo, p.Options.Photo)
}

func TestReadSight(t *testing.T) {
	for _, c := range []struct {
		text string
		want colour.Sight
	}{
		{`sight = "deutan 0.8"`, colour.Sight{Kind: "deutan", Severity: 0.8}},
		{`sight = "full"`, colour.Sight{Kind: "full"}},
		{`sight = {kind = "protan"}`, colour.Sight{Kind: "protan", Severity: 1}},
		{`sight = {severity = 0, kind = "tritan"}`, colour.Sight{Kind: "tritan"}},
		{"[sight]\nkind = \"deutan\"\nseverity = 1", colour.Sight{Kind: "deutan", Severity: 1}},
		{"sight.kind = \"deutan\"\nsight.severity = 5e-1", colour.Sight{Kind: "deutan", Severity: 0.5}},
	} {
		p, err := Read(write(t, "photo = \"a.jpg\"\n"+c.text))
		require.NoError(t, err, c.text)
		assert.Equal(t, c.want, p.Options.Sight, c.text)
	}
}

// The day may stand in quotes or not; what is not said of the air is as indoors.
func TestReadWork(t *testing.T) {
	for text, want := range map[string]plan.Work{
		`start = " 2028-02-29 "`: {Start: "2028-02-29"},
		`start = 2028-02-29`:     {Start: "2028-02-29"},
		`temperature = 0`:        {Air: layer.Air{Celsius: 0, Humidity: 50}},
		`humidity = 95`:          {Air: layer.Air{Celsius: 20, Humidity: 95}},
		`waste = 0`:              {Waste: new(0.0)},
		`absorbent = true`:       {Absorbent: true},
		`medium = "none"`:        {Medium: layer.Medium{Kind: layer.None}},
	} {
		p, err := Read(write(t, "photo = \"a.jpg\"\n"+text))
		require.NoError(t, err, text)
		assert.Equal(t, want, p.Options.Work, text)
	}
}

// What is left in the tubes may be written as any table is, of the starter box too.
func TestReadLeft(t *testing.T) {
	for _, text := range []string{`left = {viridian = "5 ml"}`, `left.viridian = "5 ml"`, "[left]\n\"Viridian\" = '5ml'", "[[region]]\nname = \"a\"\ncells = \"A1\"\n[left]\nPG18 = \"5 ml\""} {
		p, err := Read(write(t, "photo = \"a.jpg\"\n"+text))
		require.NoError(t, err, text)
		assert.Equal(t, map[string]float64{"viridian": 5}, p.Options.Box.Left, text)
	}
	assert.Empty(t, paint.StarterBox().Left, "the starter box itself stays as it is")
	p, err := ReadWithBox(write(t, "photo = \"a.jpg\"\n[left]\nviridian = \"5 ml\""), paint.Box{Paints: paint.StarterBox().Paints[:2]})
	require.NoError(t, err, "another box says itself what is left in it")
	assert.Empty(t, p.Options.Box.Left)
}

// A layer may stand before its region, whose coats are in the order of the layers.
func TestLayerBeforeItsRegion(t *testing.T) {
	p, err := Read(write(t, "photo = \"a.jpg\"\n[[layer]]\nregion = \"JUG\"\npass = \"glaze\"\n[[region]]\nname = \"jug\"\ncells = \"A1\""))
	require.NoError(t, err)
	assert.Equal(t, []plan.CoatWish{{Region: "jug", Pass: plan.PassGlaze}}, p.Options.Work.Coats)
}

// Points are in the panel's unit, else in the cell's, else in inches.
func TestOutlineUnit(t *testing.T) {
	outline := "\n[[region]]\nname = \"a\"\noutline = [[1, 0], [2, 0], [2, 2]]"
	for text, want := range map[string]grid.Millimetres{
		"": 25.4, `cell = "2cm"`: 10, "cell = \"2cm\"\npanel = \"300x400mm\"": 1,
	} {
		p, err := Read(write(t, "photo = \"a.jpg\"\n"+text+outline))
		require.NoError(t, err, text)
		assert.Equal(t, want, p.Options.Regions[0].Outline[0][0].X, text)
	}
}

// A box file is found from the painting file's folder, and another takes its place.
func TestReadBox(t *testing.T) {
	file := write(t, "photo = \"a.jpg\"\nbox = \"studio.toml\"\n[[region]]\nname = \"a\"\ncells = \"A1\"\npalette = [\"viridian\"]")
	box := filepath.Join(filepath.Dir(file), "studio.toml")
	require.NoError(t, os.WriteFile(box, []byte(`paints = ["viridian", "ivory-black"]`), 0o600))
	p, err := Read(file)
	require.NoError(t, err)
	assert.Equal(t, box, p.BoxFile)
	assert.Equal(t, []string{"viridian", "ivory-black"}, ids(p.Options.Box.Paints))

	_, err = Read(write(t, "photo = \"a.jpg\"\nbox = "+paint.TOMLString(filepath.ToSlash(box))+"\n[left]\nviridian = \"5 ml\""))
	assert.ErrorContains(t, err, "painting.toml:3: left: your paints are in "+box+"; what is left in their tubes is written there, below a line [left]")

	other := paint.Box{Paints: p.Options.Box.Paints[1:]}
	_, err = ReadWithBox(file, other)
	assert.ErrorContains(t, err, `painting.toml:6: palette: "viridian" is not in your box; nearest to its colour there are "ivory-black"; to use it, add "viridian" to the box file that --box names`)
	require.NoError(t, os.Remove(box))
	p, err = ReadWithBox(file, paint.StarterBox())
	require.NoError(t, err)
	assert.Equal(t, box, p.BoxFile, "it is not read, and not to be written over")
}

// Windows' line ends and the mark that its editors put first change nothing.
func TestReadOtherLineEnds(t *testing.T) {
	plainly, err := Read(write(t, everyKey))
	require.NoError(t, err)
	p, err := Read(write(t, "\xef\xbb\xbf"+strings.ReplaceAll(everyKey, "\n", "\r\n")))
	require.NoError(t, err)
	assert.Equal(t, plainly.Options.Regions[:3], p.Options.Regions[:3])
	_, err = Read(write(t, "\xef\xbb\xbfphoto = \"a.jpg\"\r\n\r\nground = \"mauve\"\r\n"))
	assert.ErrorContains(t, err, "painting.toml:3: ground: ")
}

// A plan's error about where a region lies gets the line that says so.
func TestBlame(t *testing.T) {
	p, err := Read(write(t, "photo = \"a.jpg\"\n[[region]]\nname = \"Lid\"\ncells = \"A1\""))
	require.NoError(t, err)
	other := os.ErrNotExist
	assert.Equal(t, other, p.Blame(other))
	assert.ErrorContains(t, p.Blame(plan.Misused(plan.RegionError{Name: "Lid"})), `painting.toml:4: region "Lid": `)
}

func ids(paints []paint.Paint) (ids []string) {
	for _, p := range paints {
		ids = append(ids, p.ID)
	}
	return ids
}

func write(t testing.TB, text string) string {
	t.Helper()
	folder, err := filepath.EvalSymlinks(t.TempDir())
	require.NoError(t, err)
	file := filepath.Join(folder, "painting.toml")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
	return file
}
