// Package match finds mixes of owned paints for wanted colours. It sees colours,
// never pictures.
package match

import (
	"math"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Part is one paint of a recipe. Its share of the pile is Parts over the sum of
// all Parts. The Parts of a touch or a speck are the fraction that gives its share.
type Part struct {
	Paint   int     // index in the box
	Parts   float64 // by volume
	Measure Measure
	Count   int // of whole parts, touches or specks
}

// Recipe is a mix that a hand can measure, and what it misses of its aim.
type Recipe struct {
	Parts       []Part     // in the order of the box
	Lab         colour.Lab // predicted, thick, in the finish asked for
	DeltaE      float64    // CIEDE2000 to the aim
	ValueShift  float64    // Munsell value steps; positive is lighter than the aim
	ChromaShift float64    // Munsell chroma; negative is duller than the aim
	Note        string     // what to know of it, in a sentence or two
	Basis       string     // of the prediction: the least sure among its paints
	Lamps       []Shift    // what the lamps of colour.Lamps do to it
	Cover       *Cover     // over the ground asked about; nil where none was
	ThinDeltaE  float64    // CIEDE2000 from one coat over that ground to the aim; 0 without Cover
	Carrier     *Recipe    // of a first recipe that one coat does not carry: the nearest that does; nil where none is near
}

// Options says how to mix; the zero value of each field is the good default.
type Options struct {
	MaxPaints    int // in one mix, 1-3; 0 means 3
	MaxParts     int // in one mix, touches and specks aside, 2-30; 0 means 12
	Alternatives int // beside the best; 0 means 2, negative none

	Finish paint.Finish // of the dry paint; zero: glossy
	With   []int        // paints that every mix must have, up to 3 by index in the box; nil: any

	Ground *colour.Spectrum // what a thin coat shows, as seen bare; nil: nobody asks
	Coat   float64          // how thick a coat is, in ordinary brushed ones, 0.05-20; 0 means 1
	Holds  bool             // of mixes about as near, take one that holds its colour under lamps
}

// The bounds of Options.Coat: from what a rag leaves to what a knife lays on (ours).
const thinnest, thickest = 0.05, 20

// defaulted returns the options with defaults filled in and bounds kept.
func (o Options) defaulted() Options {
	if o.MaxPaints == 0 {
		o.MaxPaints = 3
	}
	if o.MaxParts == 0 {
		o.MaxParts = mostParts
	}
	if o.Alternatives == 0 {
		o.Alternatives = 2
	}
	o.MaxPaints = min(max(o.MaxPaints, len(o.With), 1), 3)
	o.MaxParts = min(max(o.MaxParts, 2), 30)
	o.Alternatives = max(o.Alternatives, 0)
	if o.Coat == 0 {
		o.Coat = 1
	}
	o.Coat = min(max(o.Coat, thinnest), thickest)
	return o
}

// Recipes returns, for each aim, the recipe to take and then up to two
// alternatives by rising CIEDE2000, of one to three paints each. len(result) == len(aims).
// The first has the fewest paints that come within 1 CIEDE2000 of the best. An
// alternative does without at least one paint of every recipe before it; where
// the box has none that is not much worse, there is none.
// No paints: a nil list for each aim. It panics if an aim is not a number, or if
// With has more than 3 paints or one that is not in the box.
// Source: two-constant mixing as [Duncan1940], see paint.Mix; [Sharma2005].
func Recipes(paints []paint.Paint, aims []colour.Lab, opt Options) [][]Recipe {
	recipes := make([][]Recipe, len(aims))
	if len(paints) == 0 || len(aims) == 0 {
		return recipes
	}
	for _, aim := range aims {
		if sum := aim.L + aim.A + aim.B; math.IsNaN(sum) || math.IsInf(sum, 0) {
			panic("match: an aim is not a number")
		}
	}
	opt = opt.defaulted()
	checkWith(opt.With, len(paints))
	s := newSearch(paints, aims, opt)
	lo, hi := s.reach()
	s.lowest, s.highest = colour.ValueOf(lo), colour.ValueOf(hi)
	found := s.finds(opt.MaxPaints)
	inParallel(len(aims), func(a int) {
		recipes[a] = s.choose(aims[a], found[a], opt)
	})
	return recipes
}

func checkWith(with []int, paints int) {
	for i, p := range with {
		if p < 0 || p >= paints || i >= 3 {
			panic("match: With has more than 3 paints, or one that is not in the box")
		}
	}
}
