package answer

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// planFile returns a function that writes a plan to a file, and the file.
func planFile(t *testing.T) (write func(text string), file string) {
	file = filepath.Join(t.TempDir(), "plan.json")
	return func(text string) { require.NoError(t, os.WriteFile(file, []byte(text), 0o600)) }, file
}

// A plan's colour comes with its recipe, small amounts too, in the owned paints: the parts
// are the figure, whatever they are counted in. A touch is 1/32 of the pile by definition.
func TestReadPlanned(t *testing.T) {
	own := paint.StarterBox().Paints
	own[0].Basis = paint.Own
	write, file := planFile(t)
	write(`{"tool":"tonewright","regions":[{"colours":[{"id":"A1","aim_lab":[52,-3,18],"recipe":{"parts":[
		{"paint":"titanium-white","parts":3,"count":3},{"paint":"viridian","parts":0.2,"measure":"touch","count":2}]}},{"id":"A2","aim_lab":[52,-3,400]},{"id":"A3","aim_lab":[50,0,0],"recipe":null}]}]}`)
	p, from, err := findAim(" a1", file, own)
	require.NoError(t, err)
	assert.Equal(t, "A1", from)
	assert.Equal(t, colour.Lab{L: 52, A: -3, B: 18}, p.aim)
	require.Len(t, p.pile.Paints, 2)
	assert.Equal(t, paint.Own, p.pile.Paints[0].Basis)
	assert.InDelta(t, 2.0/32, p.pile.Parts[1]/(p.pile.Parts[0]+p.pile.Parts[1]), 1e-9)
	p, _, err = findAim("A3", file, own)
	require.NoError(t, err)
	assert.Empty(t, p.pile.Paints)
	_, _, err = findAim("A2", file, own)
	assert.ErrorContains(t, err, "A2: colour")
	write(`{"tool":"another","regions":[]}`)
	_, _, err = findAim("A1", file, own)
	assert.ErrorContains(t, err, "is not the data of a plan")
}

// A colour without an aim is not black; a file's fault is no wrong usage.
func TestAPlanWithoutAims(t *testing.T) {
	write, file := planFile(t)
	for _, aim := range []string{"", `"aim_lab":null,`, `"aim_lab":[],`, `"aim_lab":[50,0],`, `"aim_lab":[50,null,0],`, `"aim_lab":[50,0,0,0],`} {
		write(`{"tool":"tonewright","regions":[{"colours":[{` + aim + `"id":"A1"}]}]}`)
		_, _, err := findAim("A1", file, nil)
		require.ErrorContains(t, err, "A1 has no aim_lab of three numbers", aim)
		assert.NotErrorAs(t, err, new(plan.UsageError))
	}
	write(`{"tool":"tonewright","regions":[{"colours":[]}]}`)
	_, _, err := findAim("A1", file, nil)
	assert.ErrorContains(t, err, "has no colours at all, so none is A1")
	write(`{"tool":"tonewright","regions":[{"colours":[` + strings.Repeat(`{"id":"A1"},`, 49) + `{"id":"A1"}]}]}`)
	_, _, err = findAim("B1", file, nil)
	assert.ErrorContains(t, err, "has no colour B1; it has A1, ")
	assert.Equal(t, 12, strings.Count(err.Error(), "A1"))
	assert.ErrorContains(t, err, ", and 38 more")
}

// What is larger than any plan is not read.
func TestAPlanThatIsTooLarge(t *testing.T) {
	large := filepath.Join(t.TempDir(), "plan.json")
	require.NoError(t, os.WriteFile(large, nil, 0o600))
	require.NoError(t, os.Truncate(large, largestPlan+1))
	_, _, err := findAim("A1", large, nil)
	assert.ErrorContains(t, err, "is over 64 MiB")
}

// An aim is a colour that a surface can have. The strongest yellows and reds there are and
// all that a screen shows can be: [Burns2020] gives each sRGB colour a reflectance. Chroma
// 30 of yellow is past the solid of object colours [MacAdam1935], from memory.
func TestAnAimIsPossible(t *testing.T) {
	for _, text := range []string{"#ffff00", "#0000ff", "#000001", "#00ffff", "#fff", "#000", "N 10", "N 0", "N5", "5Y 8/14", "5R 5/16", "5PB 3/12"} {
		_, _, err := findAim(text, "none.json", nil)
		assert.NoError(t, err, text)
	}
	for _, text := range []string{"5Y 9.9/40", "5PB 1/38", "5R 5/50", "5Y 9/30", "lab(99, 60, 0)", "lab(3, -80, 0)"} {
		_, _, err := findAim(text, "none.json", nil)
		require.ErrorContains(t, err, "--aim: "+text+" is stronger than any surface can be", text)
		assert.ErrorAs(t, err, new(plan.UsageError))
	}
}
