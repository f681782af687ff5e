package layer

import (
	"slices"
	"testing"

	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// coat returns a coat of 100 µm; mixes are "id", parts, "id", parts.
func coat(t testing.TB, mix ...any) Coat {
	c := Coat{Film: 100}
	for i := 0; i < len(mix); i += 2 {
		parts := 1.0
		if i+1 < len(mix) {
			switch n := mix[i+1].(type) {
			case int:
				parts = float64(n)
			case float64:
				parts = n
			}
		}
		c.Paints, c.Parts = append(c.Paints, tube(t, mix[i].(string))), append(c.Parts, parts)
	}
	return c
}

func tube(t testing.TB, id string) paint.Paint {
	all := paint.Library()
	i := slices.IndexFunc(all, func(p paint.Paint) bool { return p.ID == id })
	require.GreaterOrEqual(t, i, 0, id)
	return all[i]
}

// g of oil that 100 g of pigment took, in handbooks of which some are not those that the
// facts rest on: [Church1901] by two makers, [Uebele1913] (raw umber 35 to 65 and weight
// for weight; burnt umber 47 to 53 and 40 to 60), [Massey1967] (pigment to one of oil by
// weight: burnt sienna 1.66, burnt umber 1.33, raw sienna 1.77, raw umber 1.28, …).
var handbooks = map[string][]float64{
	"lead-white":           {16, 15, 100 / 7.5},
	"zinc-white":           {19, 23, 100 / 5.0},
	"cadmium-yellow-deep":  {37, 57, 100 / 3.5},
	"cadmium-orange":       {100 / 3.0},
	"cadmium-red-medium":   {100 / 3.0},
	"yellow-ochre":         {59, 63, 100 / 2.0},
	"raw-sienna":           {147, 240, 100 / 1.77},
	"burnt-sienna":         {138, 150, 100 / 1.66},
	"raw-umber":            {97, 95, 100, 100 * 35 / 65.0, 100 / 1.28},
	"burnt-umber":          {97, 87, 100 * 47 / 53.0, 100 * 40 / 60.0, 100 / 1.33},
	"alizarin-crimson":     {103, 55, 100 / 0.66},
	"terre-verte":          {49, 87, 100},
	"viridian":             {56, 52, 100 / 1.11},
	"chromium-oxide-green": {100 / 3.4},
	"prussian-blue":        {72, 78, 100 / 1.14},
	"cobalt-blue":          {50, 90, 100 / 1.66},
	"cerulean-blue":        {100 / 2.5},
	"ultramarine-blue":     {34, 43, 100 / 2.3},
	"indian-red":           {100 / 3.66},
	"mars-yellow":          {100 / 1.6},
	"naples-yellow":        {100 / 4.0},
	"ivory-black":          {88, 112, 100},
}

// third is what the third digit of the oil's density, 0.93, does to a share.
const third = 0.001

// Massey's titanium white (78 g, his line for raw umber), venetian red (56 g) and two
// phthalocyanines (250 g and 156 g) lie outside, and are left out above.
func TestOilOfHandbooks(t *testing.T) {
	for id, grams := range handbooks {
		p := tube(t, id)
		tubes := Oil(Coat{Paints: []paint.Paint{p}, Parts: []float64{1}, Film: 100})
		for _, g := range grams {
			oil, pigment := g/0.93, 100/p.Facts.Density // ml
			assert.LessOrEqual(t, tubes.From, oil/(oil+pigment)+third, "%s with %.0f g", id, g)
			assert.GreaterOrEqual(t, tubes.To, oil/(oil+pigment)-third, "%s with %.0f g", id, g)
		}
	}
}

// By [Church1901] earths and ivory black are far fatter than the whites; the sorts order
// so by volume too.
func TestOilOrder(t *testing.T) {
	middle := func(id string) float64 {
		r := Oil(coat(t, id))
		return (r.From + r.To) / 2
	}
	for _, fat := range []string{"raw-sienna", "burnt-sienna", "raw-umber", "burnt-umber", "yellow-ochre", "ivory-black", "prussian-blue"} {
		for _, lean := range []string{"lead-white", "zinc-white", "titanium-white", "ultramarine-blue"} {
			assert.Greater(t, middle(fat), middle(lean), "%s, %s", fat, lean)
		}
	}
}

func TestOilOfMixesAndMedium(t *testing.T) {
	lead := coat(t, "lead-white")
	// By hand: 9-16 g of oil at 0.934 times 0.55 and 1.65 to 100 g at 6.70 g/ml.
	plain := Oil(lead)
	assert.InDelta(t, 5.300/(5.300+14.925), plain.From, 1e-3)
	assert.InDelta(t, 28.266/(28.266+14.925), plain.To, 1e-3)

	// One of oil to four of paint: four fifths of the paint's own, and a fifth.
	fat := Oil(lead.with(Medium{Linseed, 0.25}))
	assert.InDelta(t, 0.8*plain.From+0.2, fat.From, 1e-12)
	assert.InDelta(t, 0.8*plain.To+0.2, fat.To, 1e-12)
	assert.Equal(t, plain, Oil(lead.with(Medium{Solvent, 1})), "solvent leaves")
	assert.Less(t, Oil(lead.with(Medium{Alkyd, 0.25})).To, plain.To, "an alkyd is lean")

	umber := Oil(coat(t, "burnt-umber"))
	mixed := Oil(coat(t, "lead-white", 3, "burnt-umber", 1))
	assert.InDelta(t, 0.75*plain.From+0.25*umber.From, mixed.From, 1e-12)
	for _, p := range paint.Library() {
		r := Oil(Coat{Paints: []paint.Paint{p}, Parts: []float64{1}})
		assert.True(t, 0.1 < r.From && r.From < r.To && r.To < 0.95, "%s: %v", p.ID, r)
	}
	assert.Equal(t, Range{}, Oil(Coat{}))
}

// Uncertain tubes do not hide what medium does, since they are the same in both coats.
func TestLeanerBySameTubes(t *testing.T) {
	white := coat(t, "titanium-white")
	fat := white.with(Medium{Linseed, 0.25})
	plain, rich := Oil(white), Oil(fat)
	assert.Greater(t, plain.To, rich.From, "the ranges alone cannot tell")
	// By hand: (1 - s)·0.2 for a tube of share s of oil, s at most plain.To.
	assert.InDelta(t, (1-plain.To)*0.2, leanerBy(white, fat), 1e-12)
	assert.InDelta(t, -(1-plain.From)*0.2, leanerBy(fat, white), 1e-12)
	assert.InDelta(t, 0, leanerBy(white, white), 1e-12)
}
