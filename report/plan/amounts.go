// Amounts: how much of each mix and tube the painting takes.

package plan

// Amounts is how much paint to lay out, from areas, film and waste.
type Amounts struct {
	FilmUM float64      `json:"film_um"` // wet, of an ordinary coat
	Waste  float64      `json:"waste"`   // what is laid out and not painted, as a share of what is
	Spread float64      `json:"spread_m2_per_litre"`
	Mixes  []MixAmount  `json:"mixes"`
	Tubes  []TubeAmount `json:"tubes"`
	Text   string       `json:"text"`
}

// MixAmount is what one mix takes over all its coats.
type MixAmount struct {
	ID    string  `json:"id"` // the colour's tag, or the coat's id for a mix of its own
	CM2   float64 `json:"area_cm2"`
	Coats int     `json:"coats"`
	ML    float64 `json:"ml"`
	Grams float64 `json:"grams"`
}

// TubeAmount is what the painting takes of one tube.
type TubeAmount struct {
	Paint   string   `json:"paint"`
	Name    string   `json:"name"`
	ML      float64  `json:"ml"`
	Grams   float64  `json:"grams"`
	Density float64  `json:"density_g_per_ml"` // of the paint in its tube, pigment and oil
	LeftML  *float64 `json:"left_ml"`          // what the box says is left; null where it does not say
	BuyML   float64  `json:"buy_ml"`           // what is lacking; 0 where enough is left or nothing is said
	Text    string   `json:"text"`
}

// Pile is paint laid out for one session.
type Pile struct {
	ID    string  `json:"id"` // the mix's tag
	ML    float64 `json:"ml"`
	Size  string  `json:"size"` // in words a hand knows: "a pea", "a 5 cm ribbon from the tube"
	Parts []Part  `json:"parts"`
}
