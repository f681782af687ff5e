// Harmony in numbers: where the regions' hues lie, which balance, and what ties
// them together.

package plan

// Harmony is how the regions' colours stand to one another.
type Harmony struct {
	Hues        []HueShare   `json:"hues"`        // by tag
	Neutral     float64      `json:"neutral"`     // share of the panel too gray to have a hue
	Complements []Complement `json:"complements"` // near complements
	Analogous   string       `json:"analogous"`   // in words, where all or most of the picture is; "" where not
	Ties        []Tie        `json:"ties"`        // tubes in two or more regions, the most first
	Once        []Tie        `json:"once"`        // tubes in one region only
}

// HueShare is the hue of a region's mixes that are strong enough to have one.
type HueShare struct {
	Region string  `json:"region"` // tag
	Name   string  `json:"name"`
	Hue    string  `json:"hue"`      // Munsell, "7.5YR"
	Step   float64 `json:"hue_step"` // 0-100 around Munsell's circle
	Word   string  `json:"word"`     // "orange"
	Spread float64 `json:"spread"`   // hue steps to either side that hold most of it
	Share  float64 `json:"share"`    // of the panel, 0-1
	Value  float64 `json:"value"`    // Munsell, mean
	Chroma float64 `json:"chroma"`   // Munsell, mean
}

// Complement is a pair of regions whose hues lie nearly opposite.
type Complement struct {
	A       string  `json:"a"` // tags
	B       string  `json:"b"`
	Apart   float64 `json:"apart"`   // hue steps; 50 is opposite
	Touch   bool    `json:"touch"`   // side by side on the panel
	Balance float64 `json:"balance"` // A's weight by B's, of area × value × chroma
	Text    string  `json:"text"`
}

// Tie is a tube and the regions it is in.
type Tie struct {
	Paint   string   `json:"paint"` // id
	Name    string   `json:"name"`
	Regions []string `json:"regions"` // tags
	Colours []string `json:"colours"` // tags
}
