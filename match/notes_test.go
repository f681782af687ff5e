package match

import (
	"testing"

	"tonewright/analyze/colour"
	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
)

// What an earth box lacks, worded from what the search found. The box: white, ochre,
// light earth red, umber and black. Common practice, no source: it has no bright
// colour and no blue, and goes down to about value 1.
func TestNotesSayWhatIsMissing(t *testing.T) {
	paints := box(t, "titanium-white", "yellow-ochre", "red-iron-oxide", "burnt-umber", "ivory-black")
	for _, c := range []struct {
		name string
		aim  colour.Lab
		want []string
	}{
		{"a bright yellow", colour.Lab{L: 71, A: 12, B: 95}, []string{"These paints lack chroma in this hue at value 7: duller by ", " chroma"}},
		{"the deepest black", colour.Lab{L: 1}, []string{"Darker than these paints go, value 1.", " at the darkest: lighter by "}},
		{"a blue", colour.Lab{L: 50, A: -5, B: -25}, []string{"These paints lack chroma in this hue at value 5: duller by "}},
		{"a gray of its own", mixed(paints, []Part{{0, 2, Knife, 2}, {4, 3, Knife, 3}}), []string{"Matches."}},
	} {
		r := Recipes(paints, []colour.Lab{c.aim}, Options{})[0][0]
		for _, part := range c.want {
			assert.Contains(t, r.Note, part, c.name)
		}
	}
	black := box(t, "ivory-black", "burnt-umber")
	assert.Contains(t, Recipes(black, []colour.Lab{{L: 80}}, Options{})[0][0].Note, "Lighter than these paints go, value 1.")
	bright := box(t, "titanium-white", "pyrrole-red")
	assert.Contains(t, Recipes(bright, []colour.Lab{{L: 60, A: 14, B: 6}}, Options{})[0][0].Note, "stronger by ")
}

// The shift in the note is the one in the figures.
func TestNotesAgreeWithFigures(t *testing.T) {
	paints := paint.StarterBox().Paints
	for _, recipes := range Recipes(paints, testAims(200, 29), Options{}) {
		for _, r := range recipes {
			for word, right := range map[string]bool{
				"duller by": r.ChromaShift < 0, "stronger by": r.ChromaShift >= 0,
				"lighter by": r.ValueShift >= 0, "darker by": r.ValueShift < 0,
			} {
				if assert.ObjectsAreEqual(false, right) {
					assert.NotContains(t, r.Note, word, "%+v", r)
				}
			}
		}
	}
}

func TestTowards(t *testing.T) {
	for _, c := range []struct {
		aim, mix float64
		want     string
	}{
		{5, 9, "orange"}, {15, 11, "red"}, {2, 98, "red-purple"}, {98, 3, "red"}, {55, 51, "green"}, {65, 69, "violet-blue"},
	} {
		m := miss{aim: colour.Munsell{Hue: c.aim, Value: 5, Chroma: 6}, mix: colour.Munsell{Hue: c.mix, Value: 5, Chroma: 6}}
		assert.Equal(t, c.want, m.towards(), "%v to %v", c.aim, c.mix)
	}
	gray := miss{aim: colour.Munsell{Value: 5}, mix: colour.Munsell{Hue: 40, Value: 5, Chroma: 6}}
	assert.Zero(t, gray.hueShift(), "gray has no hue to turn from")
}
