// Package layer knows how a coat of oil paint dries and how fat it is, and which rules of
// the trade a stack of coats breaks. It knows coats only, no pictures.
package layer

import "tonewright/match/paint"

// Coat is a mix as it is laid.
type Coat struct {
	Paints []paint.Paint
	Parts  []float64 // by volume, each over 0; len(Parts) == len(Paints)
	Film   float64   // µm, wet
	Medium Medium
	Soaks  bool // it lies straight on a ground that takes oil in, as chalk and glue do
}

// Medium is what is stirred into the paint.
type Medium struct {
	Kind  string  // one of Kinds; "" is none
	Parts float64 // by volume, to one of paint; over 0 unless Kind is none
}

// Air is what a coat dries in.
type Air struct {
	Celsius  float64
	Humidity float64 // relative, percent
}

// Range is an estimate.
type Range struct{ From, To float64 }
