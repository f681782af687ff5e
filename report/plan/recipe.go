package plan

import (
	"math"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
)

// Recipe is a mix a hand can measure, for one aim.
type Recipe struct {
	Parts       []Part  `json:"parts"`
	Lab         Triple  `json:"lab"`
	Munsell     string  `json:"munsell"`
	Name        string  `json:"colour_name"`
	SRGB        string  `json:"srgb"`
	DeltaE      float64 `json:"delta_e"`      // CIEDE2000 to the aim
	ValueShift  float64 `json:"value_shift"`  // Munsell value steps, positive is lighter than the aim
	ChromaShift float64 `json:"chroma_shift"` // Munsell chroma, negative is duller than the aim
	Basis       string  `json:"basis"`
	Note        string  `json:"note"`
}

// Part is one paint of a recipe; its share is Parts over the sum of all Parts.
type Part struct {
	Paint   string  `json:"paint"`
	Name    string  `json:"name"`
	Parts   float64 `json:"parts"`
	Measure string  `json:"measure,omitempty"` // "touch" or "speck" where it is no whole number
}

// RecipeOf writes a recipe from paints as data.
func RecipeOf(r match.Recipe, paints []paint.Paint) Recipe {
	m := r.Lab.Munsell()
	e := Recipe{
		Lab: TripleOf(r.Lab), Munsell: m.String(), Name: m.Name(), SRGB: r.Lab.Hex(),
		DeltaE: Round(r.DeltaE, 2), ValueShift: Round(r.ValueShift, 2), ChromaShift: Round(r.ChromaShift, 1),
		Basis: r.Basis, Note: r.Note,
	}
	for _, part := range r.Parts {
		from := paints[part.Paint]
		e.Parts = append(e.Parts, Part{from.ID, from.Name, Round(part.Parts, 6), string(part.Measure)})
	}
	return e
}

// Triple is an L*, a*, b* colour in JSON, to three decimals.
type Triple [3]float64

// TripleOf writes a colour as data.
func TripleOf(c colour.Lab) Triple { return Triple{Round(c.L, 3), Round(c.A, 3), Round(c.B, 3)} }

// Round keeps figures at the precision that is printed, so that a last bit that
// differs between machines does not show. Minus zero becomes zero.
func Round(v float64, digits int) float64 {
	p := math.Pow10(digits)
	return math.Round(v*p)/p + 0
}
