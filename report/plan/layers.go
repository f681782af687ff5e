// Layers: in which coats each region is painted, when each can be gone over, and what of
// it breaks the rules of the trade.

package plan

// Passes, in the order they are painted.
const (
	PassBlockIn = "block-in"
	PassNext    = "next pass"
	PassGlaze   = "glaze"
)

// Layers is every coat of the painting in the order of painting: what lies behind comes
// before what lies before it, within each pass.
type Layers struct {
	Air       Air      `json:"air"`
	Medium    string   `json:"medium"`           // of an ordinary coat, "none" or like "linseed 1:10"
	FilmUM    float64  `json:"film_um"`          // wet, of an ordinary coat
	Absorbent bool     `json:"absorbent_ground"` // first coats set sooner
	Order     []string `json:"order"`            // tags of the regions, what lies behind first
	Coats     []Coat   `json:"coats"`
	Broken    []Broken `json:"broken"`
	Text      string   `json:"text"` // that drying times are estimates, and what they rest on
}

// Air is what the painting dries in.
type Air struct {
	Celsius  float64 `json:"celsius"`
	Humidity float64 `json:"humidity_percent"` // relative
}

// Span is an estimate: from, to.
type Span struct {
	From float64 `json:"from"`
	To   float64 `json:"to"`
}

// Coat is one layer of paint on one region.
type Coat struct {
	ID       string    `json:"id"`     // region's tag and the coat's number in it: "A.1"
	Region   string    `json:"region"` // tag
	Pass     string    `json:"pass"`
	Own      bool      `json:"own"` // set in the painting file, not proposed
	Mixes    []CoatMix `json:"mixes"`
	Medium   string    `json:"medium"` // "none", "solvent 1:4", "linseed 1:10"
	FilmUM   float64   `json:"film_um"`
	TouchDry Span      `json:"touch_dry_days"`       // after it is laid: of its slowest mix
	GoOver   Span      `json:"go_over_days"`         // after it is laid, until the next coat may go over it; From is the earliest
	WetFor   Span      `json:"wet_for_days"`         // how long its mixes can be blended wet into wet
	Into     string    `json:"into,omitempty"`       // id of the coat it is painted into while that is wet; "": over dry
	Oil      Span      `json:"oil_share"`            // of the dry film, by volume, 0-1
	After    int       `json:"after_days,omitempty"` // set in the painting file: days after the region's coat before; 0: as soon as that may be gone over
	Over     []string  `json:"over"`                 // ids of the coats that are on top where it is laid: of its own region and, a brush's width at its borders, of those it touches
	Why      string    `json:"why"`                  // in a sentence, for the painter
	Day      int       `json:"day"`                  // that it is painted on, as Session.Day
	Date     string    `json:"date,omitempty"`
	OverDay  int       `json:"go_over_day"` // the first day on which GoOver.From is over
	OverDate string    `json:"go_over_date,omitempty"`
	Cautions []string  `json:"cautions"` // keys of those its paints and medium call for

	rests []rest // on the coats before it that it has to wait for
}

// CoatMix is a mix as it is used in a coat.
type CoatMix struct {
	ID       string   `json:"id,omitempty"` // the colour's tag; "" for a mix of the coat's own
	Pile     string   `json:"pile"`         // tag of its pile on the palette: of the first colour that is mixed so, or "block-in 1", "glaze 1", which may serve several coats, or the id of a coat that the painter set a mix for
	On       []string `json:"on"`           // tags of the colours in whose places it is laid, of its region
	Parts    []Part   `json:"parts"`
	TouchDry Span     `json:"touch_dry_days"`
	Slowest  string   `json:"slowest"` // name of the paint it waits for
	Oil      Span     `json:"oil_share"`
}

// Broken is a rule of the trade that a plan breaks.
type Broken struct {
	Rule   string   `json:"rule"`           // "fat over lean", "fast over slow", "over wet", "zinc white beneath", …
	Coats  []string `json:"coats"`          // ids, the one below first
	Reason string   `json:"reason"`         // what happens otherwise
	Mend   string   `json:"mend"`           // what to do, in a sentence
	Line   string   `json:"line,omitempty"` // the change to a block of the painting file that mends it, or is the first step; \n between lines
	Coat   string   `json:"coat,omitempty"` // id of the coat under whose [[layer]] the line stands; "" where it stands above the regions
	Source string   `json:"source"`
}
