package plan

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/match/paint"
)

func tubesNamed(t *testing.T, ids ...string) (paints []paint.Paint) {
	for _, id := range ids {
		p, err := paint.Find(nil, id)
		require.NoError(t, err)
		paints = append(paints, p)
	}
	return paints
}

// partsOf takes the parts of paints by turns: "lead-white", 3.0, "cobalt-blue", 1.0.
func partsOf(parts ...any) (mix []Part) {
	for i := 0; i < len(parts); i += 2 {
		mix = append(mix, Part{Paint: parts[i].(string), Parts: parts[i+1].(float64)})
	}
	return mix
}

// regionWith has the mixes as A1, A2, …
func regionWith(mixes ...[]Part) []Region {
	r := Region{Tag: "A"}
	for i, m := range mixes {
		r.Colours = append(r.Colours, Colour{ID: colourTag(0, i), Recipe: &Recipe{Parts: m}})
	}
	return []Region{r}
}

func cautionBy(cautions []Caution, key string) *Caution {
	if i := slices.IndexFunc(cautions, func(c Caution) bool { return c.Key == key }); i >= 0 {
		return &cautions[i]
	}
	return nil
}

func keysIn(cautions []Caution) (keys []string) {
	for _, c := range cautions {
		keys = append(keys, c.Key)
	}
	return keys
}

var everyTime = []string{"rags", "solvents", "dust", "hands", "disposal", "children", "label"}

// Only what is used is told of: the box's lead and cadmium stay in it.
func TestCautionsAreForWhatIsUsed(t *testing.T) {
	box := tubesNamed(t, "titanium-white", "cobalt-blue", "cadmium-red-light", "raw-umber", "lead-white", "cobalt-violet")
	regions := regionWith(partsOf("titanium-white", 3.0, "cobalt-blue", 1.0), partsOf("raw-umber", 1.0), partsOf("cobalt-violet", 1.0, "cobalt-blue", 1.0))
	list := cautionsOf(regions, Layers{}, box)
	assert.Equal(t, append([]string{"manganese", "cobalt"}, everyTime...), keysIn(list))
	cobalt := cautionBy(list, "cobalt")
	assert.Equal(t, []string{"Cobalt Blue", "Cobalt Violet"}, cobalt.Paints)
	assert.Equal(t, []string{"A1", "A3"}, cobalt.Colours)
	assert.Empty(t, cobalt.Coats)
	assert.Equal(t, []string{"A2"}, cautionBy(list, "manganese").Colours)
	for _, c := range list {
		assert.NotEmpty(t, c.Source, c.Key)
		assert.NotEmpty(t, c.Short, c.Key)
		assert.Contains(t, []string{"pigment", "medium", "studio", "lightfastness"}, c.Kind)
	}
}

// stack is three coats: a block-in thinned with solvent, a coat with oil, a glaze of the
// coat's own mix of a paint that no recipe and no box has.
func stack() Layers {
	return Layers{FilmUM: 100, Coats: []Coat{
		{ID: "A.1", Pass: PassBlockIn, Medium: "solvent 1:4", FilmUM: 100, Mixes: []CoatMix{{ID: "A1", Parts: partsOf("raw-umber", 1.0)}}},
		{ID: "A.2", Pass: PassNext, Medium: "linseed 1:10", FilmUM: 100, Mixes: []CoatMix{{ID: "A1", Parts: partsOf("raw-umber", 1.0)}, {ID: "A2", Parts: partsOf("titanium-white", 1.0)}}},
		{ID: "A.3", Pass: PassGlaze, Medium: "alkyd 1:1", FilmUM: 50, Mixes: []CoatMix{{Pile: "glaze 1", Parts: partsOf("cobalt-teal", 1.0)}}},
	}}
}

func TestCoatsAndSessionsAreMarked(t *testing.T) {
	box := tubesNamed(t, "titanium-white", "raw-umber")
	p := &Plan{Regions: regionWith(partsOf("raw-umber", 1.0), partsOf("titanium-white", 1.0)), Layers: stack()}
	p.Days.Sessions = []Session{{Coats: []string{"A.1"}}, {Coats: []string{"A.2", "A.3"}}}
	heed(p, box)
	assert.Equal(t, []string{"manganese", "cobalt", "nickel", "rags", "solvents", "alkyd", "dust", "hands", "disposal", "children", "label"}, keysIn(p.Cautions))
	assert.Equal(t, []string{"manganese", "solvents"}, p.Layers.Coats[0].Cautions)
	assert.Equal(t, []string{"manganese", "rags"}, p.Layers.Coats[1].Cautions)
	assert.Equal(t, []string{"cobalt", "nickel", "rags", "solvents", "alkyd"}, p.Layers.Coats[2].Cautions)
	assert.Equal(t, []string{"glaze 1"}, cautionBy(p.Cautions, "cobalt").Colours, "a mix of the coat's own goes by its pile")
	assert.Equal(t, []string{"A.2", "A.3"}, cautionBy(p.Cautions, "rags").Coats)
	assert.Equal(t, []string{"manganese", "solvents", "rags"}, p.Days.Sessions[0].Cautions, "every session leaves rags")
	assert.Equal(t, []string{"manganese", "cobalt", "nickel", "rags", "solvents", "alkyd"}, p.Days.Sessions[1].Cautions)
}

// Alizarin, PR83, is of class III: [PaintFacts], from a list (JP). It is told of wherever it
// is; the pale tint is named, and a paint of class I offered.
func TestAlizarinInATint(t *testing.T) {
	box := tubesNamed(t, "titanium-white", "alizarin-crimson", "quinacridone-rose", "cadmium-red-deep")
	regions := regionWith(partsOf("titanium-white", 11.0, "alizarin-crimson", 1.0), partsOf("alizarin-crimson", 2.0, "titanium-white", 1.0))
	c := cautionBy(cautionsOf(regions, Layers{}, box), "fades:alizarin-crimson")
	require.NotNil(t, c)
	assert.Equal(t, "lightfastness", c.Kind)
	assert.Equal(t, []string{"A1", "A2"}, c.Colours)
	assert.Contains(t, c.Text, "pale tint, with 10 or more parts of white to one, in A1.")
	assert.Contains(t, c.Text, "label")
	require.NotEmpty(t, c.Instead)
	for i, o := range c.Instead {
		p := tubesNamed(t, o.Paint)[0]
		assert.Equal(t, "I", p.Facts.Lightfastness, o.Paint)
		assert.Equal(t, i == 0, o.Owned, "the box's first")
		assert.Contains(t, c.Text, o.Name)
	}
	assert.Equal(t, "Alizarin Crimson fades: take "+c.Instead[0].Name, c.Short)
}

// In a glaze what is taken instead must be one: cadmium red deep is opaque.
func TestAlizarinInAGlaze(t *testing.T) {
	box := tubesNamed(t, "titanium-white", "alizarin-crimson", "quinacridone-rose", "cadmium-red-deep")
	l := Layers{FilmUM: 100, Coats: []Coat{{ID: "A.2", Pass: PassGlaze, Medium: "linseed 1:2", FilmUM: 50, Mixes: []CoatMix{{Parts: partsOf("alizarin-crimson", 1.0)}}}}}
	c := cautionBy(cautionsOf(nil, l, box), "fades:alizarin-crimson")
	require.NotNil(t, c)
	assert.Equal(t, []string{"A.2"}, c.Coats)
	assert.Contains(t, c.Text, "thin film in A.2.")
	assert.Equal(t, "quinacridone-rose", c.Instead[0].Paint)
}

// A paint of class II is told of only where it is paler than it was rated, or thin.
func TestClassIIOnlyWhereItIsWeak(t *testing.T) {
	box := tubesNamed(t, "titanium-white", "zinc-white", "naphthol-red")
	for _, row := range []struct {
		white, zinc float64
		film        float64
		medium      string
		told        bool
	}{
		{0, 0, 100, "none", false},
		{9, 0, 100, "none", false},
		{10, 0, 100, "none", true},
		{5, 5, 100, "none", true},         // whites together
		{0, 0, 50, "none", true},          // half as thick
		{0, 0, 100, "linseed 1:1", true},  // half of it is medium
		{0, 0, 100, "linseed 1:4", false}, // little of it is
	} {
		mix := partsOf("naphthol-red", 1.0, "titanium-white", row.white, "zinc-white", row.zinc)
		l := Layers{FilmUM: 100, Coats: []Coat{{ID: "A.1", Pass: PassNext, FilmUM: row.film, Medium: row.medium, Mixes: []CoatMix{{ID: "A1", Parts: mix}}}}}
		c := cautionBy(cautionsOf(regionWith(mix), l, box), "fades:naphthol-red")
		assert.Equal(t, row.told, c != nil, "%v", row)
		if c != nil {
			assert.Contains(t, c.Text, "lightfastness II")
			assert.False(t, c.Instead[0].Owned, "the box has none")
		}
	}
}

// A thin block-in is told of only where it stays in the light: common sense, no source.
func TestBlockInUnderACoat(t *testing.T) {
	box := tubesNamed(t, "titanium-white", "naphthol-red", "yellow-ochre")
	l := Layers{FilmUM: 100, Coats: []Coat{
		{ID: "A.1", Region: "A", Pass: PassBlockIn, FilmUM: 50, Medium: "none", Mixes: []CoatMix{{Pile: "block-in 1", Parts: partsOf("naphthol-red", 1.0)}}},
		{ID: "B.1", Region: "B", Pass: PassNext, FilmUM: 100, Medium: "none", Mixes: []CoatMix{{Pile: "own 1", Parts: partsOf("yellow-ochre", 1.0)}}},
	}}
	assert.NotNil(t, cautionBy(cautionsOf(nil, l, box), "fades:naphthol-red"), "another region's coat does not cover it")
	l.Coats[1].Region = "A"
	assert.Nil(t, cautionBy(cautionsOf(nil, l, box), "fades:naphthol-red"))
}

// A violet without a lasting likeness says what to do; the palest tints of a paint of
// class I say nothing.
func TestNothingToTakeInstead(t *testing.T) {
	box := tubesNamed(t, "titanium-white", "dioxazine-violet", "cobalt-violet")
	list := cautionsOf(regionWith(partsOf("titanium-white", 31.0, "dioxazine-violet", 1.0), partsOf("titanium-white", 31.0, "cobalt-violet", 1.0)), Layers{}, box)
	c := cautionBy(list, "fades:dioxazine-violet")
	require.NotNil(t, c)
	assert.Empty(t, c.Instead)
	assert.Contains(t, c.Short, "keep it strong and thick")
	assert.Nil(t, cautionBy(list, "fades:cobalt-violet"))
}

// The whole library at once: every weak paint and every hazard, no null, the same twice.
func TestCautionsOfTheWholeLibrary(t *testing.T) {
	var mixes [][]Part
	for _, p := range paint.Library() {
		mixes = append(mixes, partsOf(p.ID, 1.0, "titanium-white", 12.0))
	}
	list := cautionsOf(regionWith(mixes...), stack(), nil)
	first, err := json.Marshal(list)
	require.NoError(t, err)
	again, err := json.Marshal(cautionsOf(regionWith(mixes...), stack(), nil))
	require.NoError(t, err)
	assert.Equal(t, string(first), string(again))
	assert.NotContains(t, string(first), ":null")
	seen := map[string]bool{}
	for _, c := range list {
		assert.False(t, seen[c.Key], "%s twice", c.Key)
		seen[c.Key] = true
		assert.Contains(t, c.Text, "label", c.Key)
		if c.Kind != "lightfastness" {
			assert.Contains(t, c.Text, "safety data sheet", c.Key)
		}
	}
	for _, p := range paint.Library() {
		assert.Equal(t, p.Facts.Lightfastness != "I", seen["fades:"+p.ID], p.ID)
		for _, h := range p.Facts.Hazards {
			assert.True(t, seen[h], "%s: %s", p.ID, h)
		}
	}
}

// The box's table has the same, without where they are used.
func TestCautionsForABox(t *testing.T) {
	list := CautionsFor(tubesNamed(t, "naphthol-red", "lead-white", "alizarin-crimson"))
	assert.Equal(t, slices.Concat([]string{"lead"}, everyTime, []string{"fades", "fades-thin"}), keysIn(list))
	assert.Equal(t, "Alizarin Crimson", strings.Join(cautionBy(list, "fades").Paints, ", "))
}

// Every session leaves oily rags, with a medium or without.
func TestEverySessionIsToldOfRags(t *testing.T) {
	p := &Plan{Days: Days{Sessions: []Session{{Coats: []string{}}}}}
	heed(p, nil)
	assert.Equal(t, []string{paint.Rags}, p.Days.Sessions[0].Cautions)
}
