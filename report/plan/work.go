// How and when the painting is to be painted, as the painter sets it.

package plan

import (
	"tonewright/match"
	"tonewright/match/layer"
)

// Work says how and when it is painted; the zero value of each field is the usual.
type Work struct {
	Air       layer.Air    // zero: layer.Indoors
	Medium    layer.Medium // of ordinary coats; zero: none
	Absorbent bool         // the ground takes oil in, so that first coats set sooner
	Film      float64      // µm, wet, of an ordinary coat; 0: FilmUsual
	Waste     *float64     // laid out and not painted, as a share of what is painted, 0-2; nil: WasteUsual
	Start     string       // date of the first session, 2026-12-01; "": days are counted, not dated
	Sessions  int          // a week, 1-7; 0: SessionsUsual
	Piles     int          // the most laid out in a session, 1-40; 0: PilesUsual
	Coats     []CoatWish   // set by the painter, in the order of painting; a region without any has its coats proposed
}

// CoatWish is a coat as the painter sets it.
type CoatWish struct {
	Region string        // by its name
	Pass   string        // one of the passes
	Pile   *match.Pile   // nil: the region's own mixes
	Medium *layer.Medium // nil: as Work has it, but a block-in goes without
	Film   float64       // times an ordinary coat; 0: as usual for its pass
	Wet    bool          // painted into the region's coat before while that is wet
	After  int           // days after the region's coat before; 0: as soon as that may be gone over
}

// What is taken where the painter says nothing. Common practice, no source; see
// layers.go, days.go and amounts.go for what each rests on.
const (
	DetailUsual   = 5
	FilmUsual     = 100 // µm
	WasteUsual    = 0.3
	SessionsUsual = 3
	PilesUsual    = 10
)
