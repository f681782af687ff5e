// Harmony in numbers: where the regions' hues lie, which balance, and what ties
// them together.

package plan

import "slices"

// harmonyOf says how the hues of the regions' first recipes stand to one another, and
// which of paints tie them together. touching tells whether regions a and b lie side
// by side on the panel.
// A region whose mixes are of unlike hues has one entry in Hues for each of them, the
// heaviest first: a mean of a red and a green would be a yellow that nobody sees, and
// the lesser of two hues is often the accent that a pair is about.
// Shares of Hues, Slight and Neutral add up to the regions'.
func harmonyOf(regions []Region, paints []Paint, touching func(a, b int) bool) Harmony {
	h := Harmony{Hues: []HueShare{}}
	var all hue
	found := make([][]hue, len(regions))
	for i, r := range regions {
		stains, neutral := stainsOf(r)
		found[i] = huesOf(stains)
		all = slices.Concat(all, stains)
		h.Neutral += neutral
	}
	var of []int // the region of each of Hues
	for i, hues := range found {
		for _, one := range hues {
			if one.slight(regions[i], hues[0], all) {
				h.Slight += one.sum(stain.area)
				continue
			}
			h.Hues = append(h.Hues, one.hueShare(regions[i]))
			of = append(of, i)
		}
	}
	h.Neutral, h.Slight = Round(h.Neutral, 4), Round(h.Slight, 4)
	h.Complements = complementsOf(h.Hues, func(a, b int) bool { return of[a] == of[b] || touching(of[a], of[b]) })
	h.Analogous = analogousText(all, regions, h.Hues)
	h.Ties, h.Once = tiesOf(regions, paints)
	return h
}

// Harmony is how the regions' colours stand to one another.
type Harmony struct {
	Hues        []HueShare   `json:"hues"`        // by tag
	Neutral     float64      `json:"neutral"`     // share of the panel too gray to have a hue
	Slight      float64      `json:"slight"`      // share of the panel in hues too slight to be listed
	Complements []Complement `json:"complements"` // near complements
	Analogous   string       `json:"analogous"`   // in words: the picture if all or most of it is, then regions and palettes that are; "" for none
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
	Weight float64 `json:"weight"`   // percent of the panel × value × chroma
	SRGB   string  `json:"srgb"`     // of that hue, value and chroma
	mixes  hue
}

// Complement is a pair of regions whose hues lie nearly opposite.
type Complement struct {
	A       string  `json:"a"` // tags
	B       string  `json:"b"`
	HueA    string  `json:"hue_a"` // Munsell, one of Hues: a region may have several
	HueB    string  `json:"hue_b"`
	Apart   float64 `json:"apart"`   // hue steps; 50 is opposite
	Touch   bool    `json:"touch"`   // side by side on the panel
	Balance float64 `json:"balance"` // A's weight by B's, of area × value × chroma
	Text    string  `json:"text"`
	lesser  float64 // the weight of the lighter side
}

// Tie is a tube and the regions it is in.
type Tie struct {
	Paint   string   `json:"paint"` // id
	Name    string   `json:"name"`
	Regions []string `json:"regions"` // tags
	Colours []string `json:"colours"` // tags
	Plain   bool     `json:"-"`       // a white or a black
}
