// The drawing: the contours of the picture on the panel, and where they cross the grid.

package plan

import "tonewright/grid"

// Drawing is what a painter draws before painting: contours on the panel, in order of
// weight, the one that matters most first.
type Drawing struct {
	Detail   int       `json:"detail"` // asked for, 1 (the main contours) to 10 (all that was found)
	Contours []Contour `json:"contours"`
	Note     string    `json:"note,omitempty"` // where it has so many lines that a lower detail serves better
}

// Contour is one line of the drawing.
type Contour struct {
	ID        int        `json:"id"`        // from 1, as printed on the sheets
	Beside    []string   `json:"beside"`    // tags of the regions it runs along or through, most of its length first
	Strength  float64    `json:"strength"`  // of the strongest, 0-1
	LengthMM  float64    `json:"length_mm"` // on the panel
	Closed    bool       `json:"closed"`    // it ends where it begins
	Main      bool       `json:"main"`      // long and strong enough for the table of crossings
	Start     Spot       `json:"start"`     // where the table begins to follow it; of an open one, an end of it
	End       Spot       `json:"end"`       // where it ends; the start of a closed one
	Crossings []Crossing `json:"crossings"` // in order along the line; only of a main contour

	points []grid.Point
}

// Points returns the contour on the panel, to be drawn; it closes where Closed says so.
func (c Contour) Points() []grid.Point { return c.points }

// Spot is a place inside a cell.
type Spot struct {
	Cell  string  `json:"cell"`
	Right float64 `json:"right"` // from the cell's left side, of a whole cell's side, 0-1
	Down  float64 `json:"down"`  // from the cell's top, the same
}

// Crossing is a place where a contour crosses a line of the grid.
type Crossing struct {
	Line string  `json:"line"` // "B|C" between two columns, "3|4" between two rows
	Cell string  `json:"cell"` // that the contour comes from, beside the line
	At   float64 `json:"at"`   // along the line within that cell, from its top or its left, of a whole cell's side, 0-1
	MM   float64 `json:"mm"`   // the same in millimetres
	Text string  `json:"text"` // the same from the panel's edge, in the painter's unit, to a mark of a ruler: "2 7/16 in down"
}
