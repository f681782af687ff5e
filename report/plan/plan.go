// Package plan makes a paint plan from a photo: the straight line through the
// whole program is Make.
package plan

import (
	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/grid"
	"tonewright/match"
	"tonewright/match/paint"
)

// Plan is everything a painter needs to paint the picture, as data. Its JSON is
// read by other programs: keys are added, never renamed. Colours are D65 Lab.
type Plan struct {
	Tool     string    `json:"tool"`
	Version  string    `json:"version"`
	Name     string    `json:"name"`
	Photo    Photo     `json:"photo"`
	Panel    Panel     `json:"panel"`
	Grid     Grid      `json:"grid"`
	ValueKey ValueKey  `json:"value_key"`
	Mixing   Mixing    `json:"mixing"`
	Box      Box       `json:"box"`
	Regions  []Region  `json:"regions"`
	Paints   []Paint   `json:"paints"`
	Cautions []Caution `json:"cautions"`
	Warnings []Warning `json:"warnings"`

	Sight      string     `json:"sight"` // the painter's, "deutan 0.8" or "full sight"
	StandOut   StandOut   `json:"stand_out"`
	Harmony    Harmony    `json:"harmony"`
	LookAlikes LookAlikes `json:"look_alikes"`
	Tubes      *Tubes     `json:"tubes,omitempty"` // where few were asked for

	Drawing Drawing `json:"drawing"`
	Layers  Layers  `json:"layers"`
	Days    Days    `json:"days"`
	Amounts Amounts `json:"amounts"`

	// Pictures is what the report draws; it is no part of the JSON.
	Pictures Pictures `json:"-"`
}

// Photo is the file the plan was made from; width and height in pixels, upright.
type Photo struct {
	File        string `json:"file"`
	Width       int    `json:"width"`
	Height      int    `json:"height"`
	Profile     string `json:"profile"`
	Orientation int    `json:"orientation"` // EXIF, 1-8
}

// Panel is what is painted on, and the part of the photo that goes onto it.
type Panel struct {
	WidthMM  float64 `json:"width_mm"`
	HeightMM float64 `json:"height_mm"`
	Size     string  `json:"size"` // in the painter's unit
	Ground   string  `json:"ground"`
	Pencil   string  `json:"pencil"` // "light" or "dark": which one shows on the ground
	Crop     Crop    `json:"crop"`
	CutOff   string  `json:"cut_off"` // in words
}

// Crop is a rectangle in pixels of the upright photo.
type Crop struct {
	X      int `json:"x"`
	Y      int `json:"y"`
	Width  int `json:"width"`
	Height int `json:"height"`
}

// Grid is the transfer grid; Scale is millimetres on the panel per photo pixel.
type Grid struct {
	CellMM      float64 `json:"cell_mm"`
	Columns     int     `json:"columns"`
	Rows        int     `json:"rows"`
	Scale       float64 `json:"scale"`
	Cell        string  `json:"cell"`                  // in the painter's unit
	PartColumn  string  `json:"part_column,omitempty"` // width of the last column if not whole
	PartRow     string  `json:"part_row,omitempty"`    // height of the last row if not whole
	PixelsACell float64 `json:"pixels_a_cell"`         // photo pixels along a cell's side
	layout      grid.Grid
}

// Layout returns the grid itself, for drawing.
func (g Grid) Layout() grid.Grid { return g.layout }

// ValueKey says how the photo's lightness became the painter's; all in L*.
type ValueKey struct {
	Mode     string  `json:"mode"` // "fit" or "literal"
	PhotoMin float64 `json:"photo_min"`
	PhotoMax float64 `json:"photo_max"`
	PaintMin float64 `json:"paint_min"`
	PaintMax float64 `json:"paint_max"`
	Text     string  `json:"text"` // the same in words
}

// Mixing says how the recipes were chosen.
type Mixing struct {
	Finish string  `json:"finish"` // of the dry paint
	Coat   float64 `json:"coat"`   // thickness of one over the ground, in ordinary brushed coats
	Holds  bool    `json:"holds"`  // mixes that hold under lamps were preferred
}

// Box names the paints the recipes were made from.
type Box struct {
	Name   string   `json:"name"`
	Paints []string `json:"paints"` // ids
	Names  []string `json:"names"`  // of each
}

// Region is a part of the picture; its tag is a letter, its colours' tags begin with it.
type Region struct {
	Tag     string   `json:"tag"`
	Name    string   `json:"name"`
	Cells   []string `json:"cells"`
	Share   float64  `json:"share"` // of the panel, 0-1
	Role    string   `json:"role"`
	Colours []Colour `json:"colours"`

	Palette     Palette      `json:"palette"`
	Shift       float64      `json:"value_shift"`      // Munsell steps it was lightened by
	Scheme      string       `json:"scheme,omitempty"` // what was wished for: "complement of lemon", "hue blue-green"
	Suggestions []Suggestion `json:"suggestions"`
	Standing    *Standing    `json:"standing,omitempty"` // of a region with something to paint

	where string // the cells as short text
}

// Where returns the region's cells as short text: "C3:F7, G4".
func (r Region) Where() string { return r.where }

// Colour is one colour of a region, as photographed and as aimed at.
// Munsell, Name and SRGB describe Lab, the photo's colour.
type Colour struct {
	ID           string   `json:"id"`
	Share        float64  `json:"share"`          // of the region, 0-1
	PanelShare   float64  `json:"share_of_panel"` // 0-1
	Accent       bool     `json:"accent"`
	Lab          Triple   `json:"lab"`
	AimLab       Triple   `json:"aim_lab"`
	Munsell      string   `json:"munsell"`
	Name         string   `json:"name"`
	SRGB         string   `json:"srgb"`
	AimMunsell   string   `json:"aim_munsell"`
	AimSRGB      string   `json:"aim_srgb"`
	AimValue     float64  `json:"aim_value"` // Munsell
	AimName      string   `json:"aim_name"`
	Cells        []string `json:"cells"` // where most of it lies
	Recipe       *Recipe  `json:"recipe"`
	SameAs       string   `json:"same_as,omitempty"` // an earlier colour mixed with the same parts
	Alternatives []Recipe `json:"alternatives"`

	where string // the cells as short text
}

// OffAim is the CIEDE2000 above which a recipe misses its aim.
const OffAim = match.Near

// Missed tells whether the recipe does not come near the aim.
func (c Colour) Missed() bool { return c.Recipe.DeltaE > OffAim }

// Where returns the cells most of the colour lies in, as short text.
func (c Colour) Where() string { return c.where }

// Paint is a paint the first recipes use, and the tags of the colours it is in.
type Paint struct {
	ID      string   `json:"paint"`
	Name    string   `json:"name"`
	CI      []string `json:"ci"`
	Opacity string   `json:"opacity"`
	Drying  string   `json:"drying"`
	Light   string   `json:"lightfastness"`
	Basis   string   `json:"basis"`
	Used    []string `json:"used_in"`
	Plain   bool     `json:"-"` // a white or a black
}

// Caution is a usual caution and what it is for. Where nothing that is used calls for it,
// as for the box's own table, Colours and Coats are empty.
type Caution struct {
	Text    string   `json:"text"`
	Paints  []string `json:"paints"`  // names
	Key     string   `json:"key"`     // stable, one of a kind in a plan; coats and sessions name it
	Short   string   `json:"short"`   // for the point of use, a few words
	Kind    string   `json:"kind"`    // "pigment", "medium", "studio" or "lightfastness"
	Colours []string `json:"colours"` // tags of the mixes it is for: of colours, and of piles for mixes of coats' own
	Coats   []string `json:"coats"`   // ids of the coats it is for
	Source  string   `json:"source"`  // "from memory" where so
	Instead []Other  `json:"instead"` // lasting paints like a weak one, in the box first, then any; else none
}

// Other is a lasting paint to take in place of a weak one.
type Other struct {
	Paint  string  `json:"paint"`
	Name   string  `json:"name"`
	Owned  bool    `json:"owned"`   // in the box
	DeltaE float64 `json:"delta_e"` // CIEDE2000 from the weak one: as it comes or as a tint, the farther
}

// Warning is something the painter should know before trusting the plan.
type Warning struct {
	Kind  string `json:"kind"`
	Text  string `json:"text"`
	Where string `json:"where"`
}

// Pictures is what the report draws. All rasters have the size of Photo.
type Pictures struct {
	Photo    *analyze.Picture
	Parting  analyze.Parting
	ColourOf []uint16 // pixel → index into Colours
	Colours  []Swatch // every colour of every region, in order
	Values5  analyze.ValueMap
	Values9  analyze.ValueMap
	Regions  []analyze.Mark // where a region's letter can be printed; Step is its index
	Mixes    []analyze.Mark // where a colour's tag can be printed; Step is its index in Colours

	Study     *analyze.Picture // the painting before it is painted: each pixel between the piles of its region, by its value
	OneCoat   *analyze.Picture // the same as one coat over the ground; nil over white
	PhotoSeen []uint8          // the photo as the painter's sight sees it, sRGB; nil for full sight
	StudySeen []uint8          // the study so
	Missed    []uint8          // how much of each pixel's colour that sight misses in the study: 0 little, 1 some, 2 much; nil for full sight

	LostBorders []bool // whether a border runs between a pixel and the next or the one below that others see in the study and that sight hardly does; nil for full sight
}

// Swatch is a colour's tag and how its mix would look.
type Swatch struct {
	ID  string
	Mix colour.Lab
}

// Options says what to plan; the zero value of each field is the good default.
type Options struct {
	Photo      string        // the file
	Name       string        // of the job; "" takes the photo's file name
	Panel      Size          // zero: 12 in on the long side, in the photo's proportion
	Cell       Length        // side of a grid cell; zero: 1 in
	Crop       grid.Crop     // which part of the photo goes onto the panel
	Regions    []RegionWish  // none: found in the picture
	Colours    int           // per region, 1-24; 0: as few of 3 to 8 as keep the error
	Box        paint.Box     // no paints: the starter box
	Ground     Ground        // zero: white
	Literal    bool          // take values as photographed, not keyed to the box
	Megapixels float64       // largest photo read; 0: 200
	Version    string        // of the program
	Mixing     match.Options // of the recipe search
	Sight      colour.Sight  // the painter's; zero: full
	Tubes      TubeWish      // zero: the whole box may be used
	Detail     int           // of the drawing, 1-10; 0: DetailUsual
	Work       Work          // how and when it is painted
	Step       func(string)  // told what is being done; nil: nobody
}

// Size is a panel's size in the painter's unit.
type Size struct {
	Width, Height grid.Millimetres
	Unit          grid.Unit
}

// Length is a length in the painter's unit.
type Length struct {
	Length grid.Millimetres
	Unit   grid.Unit
}

// UsageError is a mistake in what was asked for, not in the photo.
type UsageError struct{ err error }

func (e UsageError) Error() string { return e.err.Error() }

// Unwrap returns the error it holds.
func (e UsageError) Unwrap() error { return e.err }

// Misused wraps a mistake in what was asked for.
func Misused(err error) error { return UsageError{err} }

// What can be asked for.
const (
	MostColours    = 24    // of a region
	MostMegapixels = 10000 // of a photo
	LeastCoat      = 0.05  // times an ordinary coat
	MostCoat       = 20
	MostTubes      = 100
	LeastWithin    = 0.5 // CIEDE2000, of a region's mean error. Ours: parts by the knife come no nearer,
	MostWithin     = 20  // and past this any tube will do
	MostShift      = 4   // Munsell value steps, lighter or darker. Ours: past it light is dark, and nothing of the drawing's values is left
)
