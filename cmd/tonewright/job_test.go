package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/grid"
	"tonewright/match"
	"tonewright/match/paint"
	"tonewright/report/painting"
	"tonewright/report/plan"
)

// Every flag of plan is a key of the painting file: one that is none would be called so.
func TestEveryFlagIsAKey(t *testing.T) {
	(&planFlags{}).set().VisitAll(func(flag *pflag.Flag) {
		_, err := painting.Read(paintingFile(t, flag.Name+" = {}\n"))
		require.Error(t, err)
		assert.NotContains(t, err.Error(), "is not a key", flag.Name)
		assert.Contains(t, err.Error(), "painting.toml:1: "+flag.Name)
	})
}

const fullPainting = `photo = "kettle.jpg"
name = "morning"
panel = "30x40cm"
cell = "2cm"
crop = "left"
ground = "black"
detail = 7
start = 2026-12-01
sessions = 2
key = "literal"
sight = "protan"
tubes = 8
within = 3
colours = 5
finish = "matt"
coat = 0.3
holds = true
megapixels = 50
out = "out.html"
json = "out.json"
study = "out.png"
ics = "out.ics"
checklist = "out.txt"
quiet = true
[[region]]
name = "jug"
cells = "A1"
[[layer]]
region = "jug"
pass = "glaze"
`

// fullJob returns the job of the full painting with flags.
func fullJob(t *testing.T, flags ...string) (planFlags, job) {
	t.Helper()
	var f planFlags
	set := f.set()
	require.NoError(t, set.Parse(flags))
	j, err := f.job(set, paintingFile(t, fullPainting))
	require.NoError(t, err)
	return f, j
}

// Without flags all is as the file says; each flag that is given wins, even where it asks
// for the default.
func TestFlagsWin(t *testing.T) {
	f, j := fullJob(t)
	folder := filepath.Dir(j.reads[0])
	o := j.Options
	assert.Equal(t, "morning", o.Name)
	assert.Equal(t, plan.Size{Width: 300, Height: 400, Unit: grid.Centimetre}, o.Panel)
	assert.Equal(t, plan.Length{Length: 20, Unit: grid.Centimetre}, o.Cell)
	assert.Equal(t, "left", o.Crop.Keep)
	assert.Equal(t, "black", o.Ground.Name)
	assert.Equal(t, 7, o.Detail)
	assert.Equal(t, "2026-12-01", o.Work.Start)
	assert.Equal(t, 2, o.Work.Sessions)
	assert.Len(t, o.Work.Coats, 1)
	assert.True(t, o.Literal)
	assert.Equal(t, colour.Sight{Kind: "protan", Severity: 1}, o.Sight)
	assert.Equal(t, plan.TubeWish{Most: 8, Within: 3}, o.Tubes)
	assert.Equal(t, 5, o.Colours)
	assert.Equal(t, match.Options{Finish: paint.Matt, Coat: 0.3, Holds: true}, o.Mixing)
	assert.Equal(t, 50.0, o.Megapixels)
	assert.Equal(t, "jug", o.Regions[0].Name)
	assert.Equal(t, version, o.Version)
	assert.Equal(t, []string{filepath.Join(folder, "out.html"), filepath.Join(folder, "out.json"), filepath.Join(folder, "out.png"), filepath.Join(folder, "out.ics"), filepath.Join(folder, "out.txt")}, []string{f.out, f.json, f.study, f.ics, f.checklist})
	assert.True(t, f.quiet)

	f, j = fullJob(t, "--name=noon", "--panel=12x9in", "--cell=1in", "--crop=centre", "--ground=white", "--key=fit", "--detail=5", "--start=2027-01-31", "--sessions=3", "--sight=full",
		"--tubes=3", "--within=5", "--colours=2", "--finish=gloss", "--coat=1", "--holds=false", "--megapixels=200",
		"--region=lid=B2", "--out=report.html", "--json=", "--study=other.png", "--ics=other.ics", "--checklist=", "--quiet=false")
	o = j.Options
	assert.Equal(t, "noon", o.Name)
	assert.Equal(t, grid.Inch, o.Panel.Unit)
	assert.Equal(t, grid.Inch, o.Cell.Unit)
	assert.Equal(t, "centre", o.Crop.Keep)
	assert.Equal(t, "white", o.Ground.Name)
	assert.Equal(t, 5, o.Detail)
	assert.Equal(t, "2027-01-31", o.Work.Start)
	assert.Equal(t, 3, o.Work.Sessions)
	assert.Empty(t, o.Work.Coats, "they are for regions of the file")
	assert.False(t, o.Literal)
	assert.True(t, o.Sight.Full())
	assert.Equal(t, plan.TubeWish{Most: 3, Within: 5}, o.Tubes)
	assert.Equal(t, 2, o.Colours)
	assert.Equal(t, match.Options{Finish: paint.Gloss, Coat: 1}, o.Mixing)
	assert.Equal(t, 200.0, o.Megapixels)
	assert.Equal(t, []plan.RegionWish{{Name: "lid", Cells: "B2"}}, o.Regions)
	assert.Equal(t, []string{"report.html", "", "other.png", "other.ics", ""}, []string{f.out, f.json, f.study, f.ics, f.checklist})
	assert.False(t, f.quiet)
}

// A box on the command line takes the place of the file's, which is not read.
func TestBoxFlagWins(t *testing.T) {
	file := paintingFile(t, "photo = \"a.jpg\"\nbox = \"none.toml\"\n")
	box := filepath.Join(filepath.Dir(file), "mine.toml")
	require.NoError(t, os.WriteFile(box, []byte(`paints = ["viridian"]`), 0o600))
	var f planFlags
	set := f.set()
	require.NoError(t, set.Parse([]string{"--box", box}))
	j, err := f.job(set, file)
	require.NoError(t, err)
	assert.Equal(t, "viridian", j.Options.Box.Paints[0].ID)
	own := filepath.Join(filepath.Dir(file), "none.toml")
	assert.Equal(t, []string{file, own, filepath.Join(filepath.Dir(file), "a.jpg"), box}, j.reads, "its own is not to be written over either")
}

func paintingFile(t *testing.T, text string) string {
	t.Helper()
	folder, err := filepath.EvalSymlinks(t.TempDir())
	require.NoError(t, err)
	file := filepath.Join(folder, "painting.toml")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
	return file
}

// What a shell would take apart stands in quotes.
func TestAsTyped(t *testing.T) {
	assert.Equal(t, "work/k-1.toml", asTyped("work/k-1.toml"))
	assert.Equal(t, `'it'\''s $a.toml'`, asTyped("it's $a.toml"))
	assert.Equal(t, "''", asTyped(""))
	assert.False(t, strings.HasPrefix(asTyped("é.toml"), "'"))
}
