// The fewest tubes that do for the whole picture.

package plan

// TubeWish asks for few tubes; zero asks for nothing.
type TubeWish struct {
	Most   int     // so many tubes at most, those of the painter's palettes among them; 0: as few as Within allows
	Within float64 // mean CIEDE2000 that no region may exceed; 0: not asked
}

// Tubes is which paints of the box were chosen, and what the others would have bought.
type Tubes struct {
	Kept      []string  `json:"kept"`       // ids, in the box's order
	MeanError float64   `json:"mean_error"` // CIEDE2000 of the recipes, over the regions without a palette of their own
	FullError float64   `json:"full_error"` // the same with the whole box
	Proven    bool      `json:"proven"`     // no other choice of as many is better or, where as few as keep a limit were asked for, no fewer do: by the nearest mixes
	Dropped   []Dropped `json:"dropped"`    // what would have helped most first
	Text      string    `json:"text"`
}

// Dropped is a paint left out and what it alone would have bought if added again.
type Dropped struct {
	Paint   string   `json:"paint"`
	Name    string   `json:"name"`
	Gain    float64  `json:"gain"`    // CIEDE2000 off the mean over the panel
	Colours []string `json:"colours"` // tags of colours it brings nearer by 1 CIEDE2000 or more, the most first
	Text    string   `json:"text"`
}
