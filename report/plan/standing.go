// What stands out in the colour study, and where that is not what the painter meant.

package plan

// StandOut is the order in which regions catch the eye, and what is not as meant.
type StandOut struct {
	Measure       string         `json:"measure"`
	Order         []string       `json:"order"` // tags, the strongest first
	Disagreements []Disagreement `json:"disagreements"`
	LostEdges     []LostEdge     `json:"lost_edges"`
}

// Standing is how strongly a region differs from what is around it and from the
// whole picture, in the colour study. Shares say by what it differs.
type Standing struct {
	Rank    int     `json:"rank"`    // 1 stands out most
	Score   float64 `json:"score"`   // of the strongest region's, 0-1
	Around  float64 `json:"around"`  // mean difference from its surroundings, CIE 1976 L*a*b* units
	Overall float64 `json:"overall"` // mean difference from the other regions, weighted by size and nearness, the same units
	Value   float64 `json:"value"`   // shares of the difference, summing to 1
	Chroma  float64 `json:"chroma"`
	Hue     float64 `json:"hue"`
	Text    string  `json:"text"`
}

// Disagreement is a region whose rank does not fit its role.
type Disagreement struct {
	Region string `json:"region"` // tag
	Role   string `json:"role"`
	Rank   int    `json:"rank"`
	Text   string `json:"text"`
	Mend   *Mend  `json:"mend"` // nil where no single change mends it
}

// Mend is the smallest change found that brings rank and role together.
type Mend struct {
	Region string  `json:"region"` // tag of the region to change
	Name   string  `json:"name"`
	Line   string  `json:"line"`   // to put into the painting file, under that region
	Change float64 `json:"change"` // mean CIEDE2000 over the whole panel
	Text   string  `json:"text"`
}

// LostEdge is a border along which two regions have nearly the same value.
type LostEdge struct {
	A          string   `json:"a"` // tags
	B          string   `json:"b"`
	Cells      []string `json:"cells"`
	Where      string   `json:"where"`       // the same in short: "D4:F4"
	LengthMM   float64  `json:"length_mm"`   // on the panel
	Share      float64  `json:"share"`       // of the whole border of the two, 0-1
	ValueApart float64  `json:"value_apart"` // Munsell, the mean along it
	DeltaE     float64  `json:"delta_e"`     // CIEDE2000, the mean along it: what colour alone still tells
	Text       string   `json:"text"`
}
