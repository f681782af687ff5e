// Which sheets are wanted.

package sheet

import (
	"fmt"
	"slices"
	"strings"

	"tonewright/grid"
	"tonewright/report/plan"
)

// Kind is a kind of sheet.
type Kind string

// The kinds of sheets.
const (
	Whole Kind = "whole" // the whole picture on one page
	Panel Kind = "panel" // at the panel's size, on as many sheets as that takes
	Cards Kind = "cards" // cells by themselves
	Table Kind = "table" // where the main contours cross the grid
)

// As is how the picture is shown.
type As string

// The ways to show the picture.
const (
	Drawing As = "drawing"
	Photo   As = "photo"
	GrayAs  As = "gray"
	Values  As = "values"
)

// Options says which sheets are wanted. The zero value of each field is the usual.
type Options struct {
	Kinds   []Kind           // none: whole, panel and table, or cards where there are Cells
	As      As               // "": drawing
	Steps   int              // of the values, 5 or 9; 0: 5
	Paper   grid.Paper       // zero: A4
	Overlap grid.Millimetres // of neighbouring sheets of the panel; 0: 10 mm
	Cells   string           // of the cards: "C3:F7,G4"; "": none
	Enlarge float64          // of the cards, 1 to MostEnlarged; 0: 1
	Finer   int              // parts of a cell's side on the cards, 1 to MostFiner; 0: 4
	Mirror  bool             // the picture is turned left for right, to be traced through from the back
}

// usualOverlap is wide enough for glue and for a cut that strays.
const usualOverlap grid.Millimetres = 10

// What can be asked for.
const (
	UsualFiner   = 4
	MostEnlarged = 20
	MostFiner    = 20
)

// mostSheets is the most that a panel or its cards may take. Ours: every join strays by
// about the width of a line, so that ten sheets in a row are a millimetre or two off by
// the end, and ten by ten are an evening with the scissors.
const mostSheets = 100

func (o Options) withDefaults() Options {
	switch {
	case len(o.Kinds) == 0 && o.Cells == "":
		o.Kinds = []Kind{Whole, Panel, Table}
	case o.Cells != "" && !slices.Contains(o.Kinds, Cards):
		o.Kinds = append(slices.Clip(o.Kinds), Cards)
	}
	if o.As == "" {
		o.As = Drawing
	}
	if o.Steps == 0 {
		o.Steps = 5
	}
	if o.Paper.Name == "" {
		o.Paper, _ = grid.ParsePaper("") // never fails
	}
	if o.Overlap == 0 {
		o.Overlap = usualOverlap
	}
	if o.Enlarge == 0 {
		o.Enlarge = 1
	}
	if o.Finer == 0 {
		o.Finer = UsualFiner
	}
	return o
}

// ParseKinds reads "whole,panel,cards,table", any of them, each once.
func ParseKinds(text string) ([]Kind, error) {
	var kinds []Kind
	for word := range strings.SplitSeq(text, ",") {
		k := Kind(strings.ToLower(strings.TrimSpace(word)))
		if !slices.Contains([]Kind{Whole, Panel, Cards, Table}, k) {
			return nil, fmt.Errorf("%q is no kind of sheet: write whole, panel, cards or table, with commas between", word)
		}
		if !slices.Contains(kinds, k) {
			kinds = append(kinds, k)
		}
	}
	return kinds, nil
}

// ParseAs reads a way to show the picture.
func ParseAs(text string) (As, error) {
	switch as := As(strings.ToLower(strings.TrimSpace(text))); as {
	case Drawing, Photo, GrayAs, Values:
		return as, nil
	case "grey":
		return GrayAs, nil
	}
	return "", fmt.Errorf("%q is not known: write drawing, photo, gray or values", text)
}

// Wish returns what the sheets need to know of the picture.
func (o Options) Wish() plan.SheetWish {
	o = o.withDefaults()
	pictured := slices.ContainsFunc(o.Kinds, func(k Kind) bool { return k != Table })
	w := plan.SheetWish{Drawing: slices.Contains(o.Kinds, Table) || pictured && o.As == Drawing, Size: o.pixels}
	if pictured && o.As == Values {
		w.Steps = o.Steps
	}
	return w
}
