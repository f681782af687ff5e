// The palette of a region: which paints it is mixed from, and which were proposed.

package plan

import (
	"tonewright/match"
)

// Roles are what a region can do in the picture, the strongest first.
var Roles = []string{"focal", "support", "quiet"}

// Aims are what a region's mixes go after: the photo's colours, or its values only.
var Aims = []string{"photo", "value"}

// Wish is what palettes a painter wants proposed for a region; zero asks for none.
type Wish struct {
	Scheme match.Scheme // "": none, but for a Hue
	Of     string       // the region to be the complement of, with match.Complement
	Hue    string       // a wished hue as colour.ParseHue reads it; "": none
}

// none tells whether nothing is wished for.
func (w Wish) none() bool { return w == Wish{} }

// Palette is what a region is mixed from, and how.
type Palette struct {
	Paints []string `json:"paints"` // ids, the white aside
	White  string   `json:"white"`  // id; "": mixed without
	Aim    string   `json:"aim"`    // one of Aims
	From   string   `json:"from"`   // "box" (all of it), "painter", or "proposed"

	ValueMin float64 `json:"value_min"` // Munsell values that it reaches
	ValueMax float64 `json:"value_max"`
	Family   string  `json:"family"` // "one paint", "analogous", "near complements", "mixed"; "" for the whole box
	Note     string  `json:"note"`   // values that the region wants and it lacks, and what would reach them; "" where none
}

// Suggestion is a palette proposed for a region.
type Suggestion struct {
	Paints   []string `json:"paints"` // ids, the white aside
	Names    []string `json:"names"`
	White    string   `json:"white"`
	ValueMin float64  `json:"value_min"` // Munsell values that it reaches
	ValueMax float64  `json:"value_max"`
	Covered  float64  `json:"covered"` // share of the region whose value it reaches
	Chroma   float64  `json:"chroma"`  // Munsell, the strongest at the region's values
	Dulls    float64  `json:"dulls"`   // Munsell chroma lost inside it, as a string says; 0 for one paint
	TieIns   []string `json:"tie_ins"` // tags of regions that use one of its paints already
	Why      string   `json:"why"`
	Line     string   `json:"line"` // to put into the painting file
}
