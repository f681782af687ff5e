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

	Lamps    []LampShift `json:"lamps"`
	Holds    bool        `json:"holds"`               // its colour, under all of them
	LampNote string      `json:"lamp_note,omitempty"` // what the worst of them does, where it does not hold
	Cover    *Cover      `json:"cover,omitempty"`     // over a ground that is not white
	Carrier  *Recipe     `json:"one_coat_recipe,omitempty"`
}

// LampShift is what a lamp does to a mix against daylight, in Munsell steps.
type LampShift struct {
	Illuminant  string  `json:"illuminant"` // CIE
	Name        string  `json:"name"`
	ValueShift  float64 `json:"value_shift"`
	ChromaShift float64 `json:"chroma_shift"`
	HueShift    float64 `json:"hue_shift"` // of 100 steps
	DeltaE      float64 `json:"delta_e"`   // CIEDE2000
	Words       string  `json:"words"`
}

// Cover is what one coat does over the ground.
type Cover struct {
	Ground      string  `json:"ground"`
	OneCoatLab  Triple  `json:"one_coat_lab"`
	ValueShift  float64 `json:"value_shift"` // Munsell, of one coat against full hiding
	ChromaShift float64 `json:"chroma_shift"`
	DeltaE      float64 `json:"delta_e"`     // CIEDE2000, the same
	AimDeltaE   float64 `json:"aim_delta_e"` // CIEDE2000, of one coat against the aim
	Coats       int     `json:"coats"`       // that hide the ground; 0 is never
	Note        string  `json:"note"`        // "" where one coat carries
}

// Part is one paint of a recipe; its share is Parts over the sum of all Parts.
type Part struct {
	Paint   string  `json:"paint"`
	Name    string  `json:"name"`
	Parts   float64 `json:"parts"`
	Measure string  `json:"measure,omitempty"` // "touch" or "speck" where it is no whole number
	Count   int     `json:"count"`             // of whole parts, touches or specks
}

// RecipeOf writes a recipe from paints, over a ground of this name, as data.
func RecipeOf(r match.Recipe, paints []paint.Paint, ground string) Recipe {
	m := r.Lab.Munsell()
	e := Recipe{
		Lab: TripleOf(r.Lab), Munsell: m.String(), Name: m.Name(), SRGB: r.Lab.Hex(),
		DeltaE: Round(r.DeltaE, 2), ValueShift: Round(r.ValueShift, 2), ChromaShift: Round(r.ChromaShift, 1),
		Basis: r.Basis, Note: r.Note, Holds: r.Holds(), LampNote: r.LampNote(), Cover: coverOf(r, ground),
	}
	for _, part := range r.Parts {
		from := paints[part.Paint]
		e.Parts = append(e.Parts, Part{from.ID, from.Name, Round(part.Parts, 6), string(part.Measure), part.Count})
	}
	for _, s := range r.Lamps {
		e.Lamps = append(e.Lamps, LampShift{
			s.Lamp.Key, s.Lamp.Name, Round(s.Value, 2), Round(s.Chroma, 1), Round(s.Hue, 1), Round(s.DeltaE, 2), s.Words(),
		})
	}
	if r.Carrier != nil {
		carrier := RecipeOf(*r.Carrier, paints, ground)
		e.Carrier = &carrier
	}
	return e
}

// PartsOf returns a pile's parts as data; those that are no whole number have no count.
func PartsOf(p match.Pile) []Part {
	parts := []Part{}
	for i, of := range p.Paints {
		part := Part{Paint: of.ID, Name: of.Name, Parts: Round(p.Parts[i], 4)}
		if part.Parts == math.Trunc(part.Parts) {
			part.Count = int(part.Parts)
		}
		parts = append(parts, part)
	}
	return parts
}

func coverOf(r match.Recipe, ground string) *Cover {
	c := r.Cover
	if c == nil {
		return nil
	}
	return &Cover{
		Ground: ground, OneCoatLab: TripleOf(c.OneCoat), ValueShift: Round(c.ValueShift, 2), ChromaShift: Round(c.ChromaShift, 1),
		DeltaE: Round(c.DeltaE, 2), AimDeltaE: Round(r.ThinDeltaE, 2), Coats: c.Coats, Note: c.Note(ground),
	}
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
