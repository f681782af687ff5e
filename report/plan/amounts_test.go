package plan

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/grid"
	"tonewright/match/paint"
)

// aColour is a colour of a made region, mixed from the parts told: "PW6", 3, "PBr7 …", 1.
func aColour(id string, share float64, parts ...Part) Colour {
	return Colour{ID: id, PanelShare: share, Recipe: &Recipe{Parts: parts}}
}

func part(id string, n float64) Part { return Part{Paint: id, Name: id, Parts: n} }

// squareMetre is a panel of 1 m².
func squareMetre(t testing.TB) grid.Grid {
	g, err := grid.New(1000, 1000, 100, grid.Centimetre)
	require.NoError(t, err)
	return g
}

func without(waste float64) Options { return Options{Work: Work{Waste: &waste}} }

// one region of one mix on a panel.
func oneMix(share float64) []Region {
	return []Region{{Tag: "A", Share: share, Colours: []Colour{aColour("A1", share, part("titanium-white", 1))}}}
}

func aCoat(id, region, pass, medium string, film float64, tags ...string) Coat {
	c := Coat{ID: id, Region: region, Pass: pass, Medium: medium, FilmUM: film}
	for _, tag := range tags {
		c.Mixes = append(c.Mixes, CoatMix{ID: tag, Pile: tag, On: []string{tag}})
	}
	return c
}

// once is a single session of all coats.
func once(l Layers) *Days {
	d := &Days{Sessions: []Session{{}}}
	for _, c := range l.Coats {
		d.Sessions[0].Coats = append(d.Sessions[0].Coats, c.ID)
	}
	return d
}

// Identity, the volume of a layer: a wet film of 100 µm takes 1 litre for 10 m², so 100 ml
// for 1 m²; the theoretical spreading rate of a coating without solvent is 1000 m² a litre
// over its film in µm (spreading rate = volume solids in percent × 10 / film in µm, common
// practice of the coatings trade).
func TestAmountsSpread(t *testing.T) {
	for _, film := range []float64{100, 50, 12.5} {
		l := Layers{FilmUM: film, Coats: []Coat{aCoat("A.1", "A", PassBlockIn, "none", film, "A1")}}
		a := amountsOf(oneMix(1), l, once(l), squareMetre(t), paint.StarterBox(), without(0))
		require.Len(t, a.Mixes, 1)
		assert.InDelta(t, 1e4, a.Mixes[0].CM2, 1e-9)
		assert.InDelta(t, film, a.Mixes[0].ML, 1e-9)
		assert.InDelta(t, 100*10/film, a.Spread, 1e-9)
		assert.InDelta(t, 1e3, a.Mixes[0].ML*a.Spread, 1e-6, "ml on 1 m² × m² on a litre is a litre on 1 m²")
	}
}

// In the coatings trade's other units: a US gallon without solvent covers 1604 square feet
// at 1 mil, 25.4 µm. Source: [SpreadingRate].
func TestAmountsSpreadOfAGallon(t *testing.T) {
	a := amountsOf(nil, Layers{FilmUM: 25.4}, &Days{}, squareMetre(t), paint.StarterBox(), Options{})
	const gallon, squareFoot = 3.785411784, 0.3048 * 0.3048 // litres, m²; by definition
	assert.InDelta(t, 1604, a.Spread*gallon/squareFoot, 0.5)
}

// Waste comes on top of what is painted; the usual where nothing is said.
func TestAmountsWaste(t *testing.T) {
	l := Layers{FilmUM: 100, Coats: []Coat{aCoat("A.1", "A", PassBlockIn, "none", 100, "A1")}}
	a := amountsOf(oneMix(1), l, once(l), squareMetre(t), paint.StarterBox(), without(0.5))
	assert.InDelta(t, 150, a.Mixes[0].ML, 1e-9)
	assert.Contains(t, a.Text, "50 % on top")
	a = amountsOf(oneMix(1), l, once(l), squareMetre(t), paint.StarterBox(), Options{})
	assert.InDelta(t, 130, a.Mixes[0].ML, 1e-9)
	assert.InDelta(t, WasteUsual, a.Waste, 1e-12)
}

// Medium fills its part of the film: 1 to 10 of paint is a part in eleven of it, and
// solvent is laid out too, though it leaves.
func TestAmountsMedium(t *testing.T) {
	l := Layers{FilmUM: 100, Coats: []Coat{
		aCoat("A.1", "A", PassBlockIn, "solvent 1:4", 100, "A1"), aCoat("A.2", "A", PassNext, "linseed 1:10", 110, "A1"),
	}}
	d := &Days{Sessions: []Session{{Coats: []string{"A.1"}}, {Coats: []string{"A.2"}}}}
	a := amountsOf(oneMix(1), l, d, squareMetre(t), paint.StarterBox(), without(0.1))
	assert.Equal(t, []MediumAmount{{"solvent", 22}, {"linseed", 11}}, a.Mediums)
	assert.InDelta(t, 88+110, a.Mixes[0].ML, 1e-9)
	assert.InDelta(t, 33, a.Mixes[0].MediumML, 1e-9)
	assert.Equal(t, 2, a.Mixes[0].Coats)
	assert.InDelta(t, 22, d.Sessions[0].Piles[0].MediumML, 1e-9)
	assert.InDelta(t, 88, d.Sessions[0].Piles[0].ML, 1e-9)
}

// Colours with the same parts are one pile under the first's tag, and its area is that of
// both.
func TestAmountsSharePiles(t *testing.T) {
	regions := []Region{
		{Tag: "A", Share: 0.5, Colours: []Colour{aColour("A1", 0.5, part("viridian", 1))}},
		{Tag: "B", Share: 0.5, Colours: []Colour{aColour("B1", 0.2, part("viridian", 1)), aColour("B2", 0.3, part("ivory-black", 1))}},
	}
	regions[1].Colours[0].SameAs = "A1"
	l := Layers{FilmUM: 100, Coats: []Coat{aCoat("A.1", "A", PassNext, "none", 100, "A1"), aCoat("B.1", "B", PassNext, "none", 100, "B1", "B2")}}
	l.Coats[1].Mixes[0].Pile = "A1"
	d := &Days{Sessions: []Session{{Coats: []string{"A.1", "B.1"}}}}
	a := amountsOf(regions, l, d, squareMetre(t), paint.StarterBox(), without(0))
	require.Len(t, a.Mixes, 2)
	assert.Equal(t, "A1", a.Mixes[0].ID)
	assert.InDelta(t, 7000, a.Mixes[0].CM2, 1e-9)
	assert.InDelta(t, 70, a.Mixes[0].ML, 1e-9)
	assert.Equal(t, 2, a.Mixes[0].Coats)
	assert.InDelta(t, 30, a.Mixes[1].ML, 1e-9)
	require.Len(t, d.Sessions[0].Piles, 2)
	assert.InDelta(t, 70, d.Sessions[0].Piles[0].ML, 1e-9)
}

// A pile covers the places it is laid in: of other colours too, and of one coat after
// another; the area told is that of its own colour, or each place once of a pile that is
// for no colour.
func TestAmountsOfCoats(t *testing.T) {
	regions := []Region{{Tag: "A", Share: 0.8, Colours: []Colour{
		aColour("A1", 0.3, part("titanium-white", 1)), aColour("A2", 0.1, part("burnt-umber", 1)), aColour("A3", 0.4, part("viridian", 1)),
	}}}
	blockIn := aCoat("A.1", "A", PassBlockIn, "none", 50, "A1", "A2")
	blockIn.Mixes[0].On = []string{"A1", "A3"}
	glaze := aCoat("A.3", "A", PassGlaze, "linseed 1:1", 40)
	glaze.Mixes = []CoatMix{{Pile: "glaze 1", On: []string{"A2", "A3"}, Parts: []Part{part("quinacridone-rose", 1)}}}
	again := aCoat("A.4", "A", PassGlaze, "none", 40)
	again.Mixes = []CoatMix{{Pile: "glaze 1", On: []string{"A1", "A2"}, Parts: []Part{part("quinacridone-rose", 1)}}}
	l := Layers{FilmUM: 100, Coats: []Coat{blockIn, aCoat("A.2", "A", PassNext, "none", 100, "A3"), glaze, again}}
	a := amountsOf(regions, l, once(l), squareMetre(t), paint.StarterBox(), without(0))
	got := map[string]float64{}
	for _, m := range a.Mixes {
		got[m.ID] = m.ML
	}
	assert.Equal(t, map[string]float64{"A1": 35, "A2": 5, "A3": 40, "glaze 1": 10 + 16}, got)
	assert.Equal(t, 35+5+40+26., a.ML, "of all tubes")
	assert.Equal(t, 3000., a.Mixes[0].CM2)
	assert.Equal(t, MixAmount{"glaze 1", 8000, 2, 26, Round(26*known(t, "quinacridone-rose").TubeDensity(), 2), 10}, a.Mixes[3])
}

// Nobody lays out less than 0.5 ml: of a colour so small that its share rounds to nothing,
// and once a session.
func TestAmountsLeastPile(t *testing.T) {
	regions := []Region{{Tag: "A", Share: 0.1, Colours: []Colour{aColour("A1", 0, part("viridian", 1), part("titanium-white", 3))}}}
	l := Layers{FilmUM: 100, Coats: []Coat{aCoat("A.1", "A", PassNext, "linseed 1:5", 100, "A1"), aCoat("A.2", "A", PassNext, "linseed 1:5", 100, "A1")}}
	d := &Days{Sessions: []Session{{Coats: []string{"A.1"}}, {Coats: []string{"A.2"}}}}
	small, err := grid.New(100, 100, 20, grid.Centimetre)
	require.NoError(t, err)
	a := amountsOf(regions, l, d, small, paint.StarterBox(), Options{})
	assert.InDelta(t, 1, a.Mixes[0].ML, 1e-9)
	assert.InDelta(t, 0.2, a.Mixes[0].MediumML, 1e-9)
	assert.InDelta(t, 0.5, d.Sessions[1].Piles[0].ML, 1e-9)
	assert.InDelta(t, 0.75, a.Tubes[0].ML, 1e-9)
}

// Each session lays out what its own coats take, and one with no coats nothing.
func TestAmountsBySession(t *testing.T) {
	regions := []Region{{Tag: "A", Share: 1, Colours: []Colour{aColour("A1", 0.5, part("viridian", 1)), aColour("A2", 0.5, part("burnt-umber", 1))}}}
	l := Layers{FilmUM: 100, Coats: []Coat{aCoat("A.1", "A", PassBlockIn, "none", 50, "A1"), aCoat("A.2", "A", PassNext, "none", 100, "A1", "A2"), aCoat("A.3", "A", PassNext, "none", 20, "A2")}}
	d := &Days{Sessions: []Session{{Coats: []string{"A.1"}}, {Coats: []string{"A.3", "A.2"}}, {Coats: []string{}}}}
	a := amountsOf(regions, l, d, squareMetre(t), paint.StarterBox(), without(0))
	require.Len(t, d.Sessions[0].Piles, 1)
	require.Len(t, d.Sessions[1].Piles, 2)
	assert.Equal(t, []Pile{}, d.Sessions[2].Piles)
	assert.InDelta(t, 25, d.Sessions[0].Piles[0].ML, 1e-9)
	assert.InDelta(t, 60, d.Sessions[1].Piles[1].ML, 1e-9)
	assert.InDelta(t, 75, a.Mixes[0].ML, 1e-9)
	assert.InDelta(t, 60, a.Mixes[1].ML, 1e-9)
}

// A tube gives its part of each pile; a gram is a millilitre times the density of the
// tube's paint, lead white's over titanium white's over phthalo blue's.
func TestAmountsTubes(t *testing.T) {
	box := boxOfNames(t, "lead-white", "titanium-white", "phthalo-blue-gs")
	box.Left = map[string]float64{"lead-white": 100, "titanium-white": 20}
	regions := []Region{{Tag: "A", Share: 1, Colours: []Colour{
		aColour("A1", 0.5, part("titanium-white", 3), part("lead-white", 1)), aColour("A2", 0.5, part("phthalo-blue-gs", 1), part("viridian", 1)),
	}}}
	l := Layers{FilmUM: 100, Coats: []Coat{aCoat("A.1", "A", PassBlockIn, "none", 100, "A1", "A2")}}
	a := amountsOf(regions, l, once(l), squareMetre(t), box, without(0))
	require.Len(t, a.Tubes, 4)
	sum := 0.0
	for i, want := range []struct {
		ml, buy float64
		text    string
	}{
		{12.5, 0, "takes about 13 ml, little of the 100 ml left"},
		{37.5, 17.5, "takes about 38 ml, more than the 20 ml left: buy about 18 ml, a tube of 37 ml"},
		{25, 0, "takes about 25 ml"},
		{25, 25, "takes about 25 ml; it is not in the box: buy about 25 ml, a tube of 37 ml"},
	} {
		tube := a.Tubes[i]
		assert.InDelta(t, want.ml, tube.ML, 1e-9, tube.Paint)
		assert.InDelta(t, want.buy, tube.BuyML, 1e-9, tube.Paint)
		assert.Equal(t, want.text, tube.Text)
		assert.InDelta(t, tube.ML*known(t, tube.Paint).TubeDensity(), tube.Grams, 0.005, tube.Paint)
		sum += tube.Grams
	}
	assert.InDelta(t, a.Mixes[0].Grams+a.Mixes[1].Grams, sum, 0.02)
	assert.Greater(t, a.Tubes[0].Density, a.Tubes[1].Density)
	assert.Greater(t, a.Tubes[1].Density, a.Tubes[2].Density)
	assert.InDelta(t, 100, *a.Tubes[0].LeftML, 1e-9)
	assert.Nil(t, a.Tubes[2].LeftML)
}

func boxOfNames(t testing.TB, ids ...string) (box paint.Box) {
	for _, id := range ids {
		box.Paints = append(box.Paints, known(t, id))
	}
	return box
}

func known(t testing.TB, id string) paint.Paint {
	p, err := paint.Find(nil, id)
	require.NoError(t, err)
	return p
}

// What is left is told in words, and what is lacking is to be bought.
func TestAmountsAgainstWhatIsLeft(t *testing.T) {
	for _, c := range []struct {
		takes, left, buy float64
		text             string
	}{
		{6, 12, 0, "takes about 6 ml, half of the 12 ml left"},
		{6, 18, 0, "takes about 6 ml, a third of the 18 ml left"},
		{6, 30, 0, "takes about 6 ml, a fifth of the 30 ml left"},
		{6, 60, 0, "takes about 6 ml, little of the 60 ml left"},
		{6, 9, 0, "takes about 6 ml, most of the 9 ml left"},
		{6, 6, 0, "takes about 6 ml, nearly all of the 6 ml left: have another tube at hand"},
		{2.5, 3.07, 0, "takes about 2.5 ml, nearly all of the 3.1 ml left: have another tube at hand"},
		{6, 7, 0, "takes about 6 ml, nearly all of the 7 ml left: have another tube at hand"},
		{6, 4.5, 1.5, "takes about 6 ml, more than the 4.5 ml left: buy about 1.5 ml, a tube of 37 ml"},
		{0.1, 0, 0.1, "takes a dab, and none is left: buy a dab, a tube of 37 ml"},
		{75, 0, 75, "takes about 75 ml, and none is left: buy about 75 ml, 3 tubes of 37 ml"},
	} {
		p := known(t, "viridian")
		got := tubeAmount(p, c.takes, paint.Box{Left: map[string]float64{p.ID: c.left}}, true)
		assert.Equal(t, c.text, got.Text)
		assert.InDelta(t, c.buy, got.BuyML, 1e-9, c.text)
	}
}

// On the palette white lies first, then region by region as they are painted, each from
// light to dark.
func TestAmountsOnThePalette(t *testing.T) {
	umber := func(white, umber float64) []Part {
		return []Part{part("titanium-white", white), part("burnt-umber", umber)}
	}
	regions := []Region{
		{Tag: "A", Share: 0.5, Colours: []Colour{aColour("A1", 0.2, umber(1, 3)...), aColour("A2", 0.2, umber(5, 1)...), aColour("A3", 0.1, part("titanium-white", 1))}},
		{Tag: "B", Share: 0.5, Colours: []Colour{aColour("B1", 0.1, part("ivory-black", 1)), aColour("B2", 0.2, umber(8, 1)...), aColour("B3", 0.2, umber(2, 1)...)}},
	}
	l := Layers{FilmUM: 100, Coats: []Coat{aCoat("B.1", "B", PassBlockIn, "none", 100, "B1", "B2", "B3"), aCoat("A.1", "A", PassBlockIn, "none", 100, "A1", "A2", "A3")}}
	d := &Days{Sessions: []Session{{Coats: []string{"B.1", "A.1"}}}}
	amountsOf(regions, l, d, squareMetre(t), paint.StarterBox(), Options{})
	var order []string
	for _, p := range d.Sessions[0].Piles {
		order = append(order, p.ID)
	}
	assert.Equal(t, []string{"A3", "B2", "B3", "B1", "A2", "A1"}, order)

	// A pile stands with the region that it is laid out for, not with that of its tag.
	regions[1].Colours[2].SameAs, l.Coats[0].Mixes[2].Pile = "A2", "A2"
	d = &Days{Sessions: []Session{{Coats: []string{"B.1"}}}}
	amountsOf(regions, l, d, squareMetre(t), paint.StarterBox(), Options{})
	require.Len(t, d.Sessions[0].Piles, 3)
	assert.Equal(t, "A2", d.Sessions[0].Piles[1].ID) // lighter than B1, darker than B2
}

// Things of known volume by the formula of a ball, π/6·d³; a cap's and a ribbon's volume
// worked back from the width and length told.
func TestSizes(t *testing.T) {
	for i, across := range []float64{8, 12.5, 20, 30} {
		assert.InEpsilon(t, math.Pi/6*across*across*across/1000, sizes[i].ml, 0.12, sizes[i].name)
	}
	for _, ml := range []float64{0.5, 1, 20} {
		r := heapWidth(ml) / 2
		h := 2 * r / 3
		assert.InDelta(t, 1000*ml, math.Pi*h*(3*r*r+h*h)/6, 1e-6, "a cap's volume")
		assert.InDelta(t, 1000*ml, ribbon(ml)*math.Pi*4*4, 1e-6, "a ribbon of 8 mm across")
	}
	for ml, want := range map[float64]string{
		0.3: "a pea, heaped 1.2 cm wide", 0.5: "two peas, heaped 1.4 cm wide", 1: "a hazelnut, heaped 1.8 cm wide",
		7: "two cherries, heaped 3.5 cm wide", 15: "a walnut, heaped 4.5 cm wide", 100: "heaped 8.5 cm wide",
	} {
		assert.Equal(t, want, sizeOf(ml, grid.Centimetre))
	}
	assert.Equal(t, "a hazelnut, heaped 3/4 in wide", sizeOf(1, grid.Inch))
	// 2 ml of 3 parts to 1 from a nozzle of 8 mm: 1.5 ml is 30 mm, 0.5 ml is 10 mm.
	box := paint.StarterBox()
	parts := []Part{part("titanium-white", 3), part("burnt-umber", 1)}
	c := count{unit: grid.Centimetre}
	assert.Equal(t, "Titanium White 3 cm, Burnt Umber 1 cm", c.squeezed(&stock{of: knifed(parts, box.Paints)}, 2))
	assert.Equal(t, "Titanium White 0.4 cm, Burnt Umber a dab", c.squeezed(&stock{of: knifed(parts, box.Paints)}, 0.25))
	c.unit = grid.Inch // 1.18 and 0.39 in
	assert.Equal(t, "Titanium White 1 1/4 in, Burnt Umber 3/8 in", c.squeezed(&stock{of: knifed(parts, box.Paints)}, 2))
}

// The text says that it is an estimate and what it rests on.
func TestAmountsSayWhatTheyRestOn(t *testing.T) {
	a := amountsOf(nil, Layers{FilmUM: 80}, &Days{}, squareMetre(t), paint.StarterBox(), Options{})
	for _, words := range []string{"An estimate", "80 µm", "12.5 m²", "30 % on top", "0.5 ml", "a hazelnut 1"} {
		assert.Contains(t, a.Text, words)
	}
	assert.NotNil(t, a.Mixes)
	assert.NotNil(t, a.Tubes)
	assert.NotNil(t, a.Mediums)
	assert.False(t, strings.Contains(a.Text, "NaN"))
}
