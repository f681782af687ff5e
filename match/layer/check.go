// Which rules of the trade a stack of coats breaks.

package layer

import "math"

// The rules.
const (
	OverWet       = "over wet"
	TooSoon       = "glaze too soon"
	FastOverSlow  = "fast over slow"
	FatOverLean   = "fat over lean"
	ZincBeneath   = "zinc white beneath"
	TooThick      = "too thick"
	TooMuchMedium = "too much medium"
)

// Laid is a coat as it lies in a stack.
type Laid struct {
	Coat
	Name string  // as the painter knows it
	Day  float64 // on which it is laid
	Wet  bool    // into the coat before while that is wet
}

// Fault is a rule that a stack breaks.
type Fault struct {
	Rule         string
	Below, Above int    // indices in the stack; the same where it lies in one coat alone
	Reason       string // what happens otherwise
	Mend         string // what to do
	Source       string
	Change       Change // the mend, as data
}

// Change is what mends a fault: the first of its fields that is not zero.
type Change struct {
	WaitDays float64 // Above, and all that is laid after it, so many days later
	Coat     int     // index of the coat that what follows is for
	Medium   *Medium // in place of its own
	Film     float64 // µm, wet, in place of its own; what is lacking goes on as a further coat
	Swap     Swap    // of paints, all of one for another
}

// Swap is one paint in place of another, by ids.
type Swap struct {
	From string // "": none
	To   string // "": there is none to name; the painter chooses another
}

// Check returns the rules that coats at one place break, the lowest coat first; none: none.
// A coat is called too early where it comes before the early end of the estimate: between
// the ends, a painter tries with a finger.
func Check(stack []Laid, air Air) []Fault {
	dries, oils := make([]Dries, len(stack)), make([]Range, len(stack))
	for i, c := range stack {
		dries[i], oils[i] = Drying(c.Coat, air), Oil(c.Coat)
	}
	s := pile{stack, dries, oils}
	var faults []Fault
	for above := range stack {
		for _, rule := range rules {
			if f, broken := rule(s, above); broken {
				faults = append(faults, f)
			}
		}
	}
	return faults
}

// pile is a stack with what is worked out of each coat.
type pile struct {
	stack []Laid
	dries []Dries
	oils  []Range
}

// rules are tried for each coat, the lowest first; each finds at most one fault.
var rules = []func(pile, int) (Fault, bool){
	tooThick, tooMuchMedium, overWet, tooSoon, fastOverSlow, fatOverLean, zincBeneath,
}

// film returns the first coat of those that lie wet into wet with this one and so dry
// with it as one film.
func (s pile) film(of int) int {
	for of > 0 && s.intoWet(of) {
		of--
	}
	return of
}

// intoWet tells whether a coat is laid into the one before it while that can be blended.
func (s pile) intoWet(above int) bool {
	return above > 0 && s.stack[above].Wet && s.age(above-1, above) <= s.dries[above-1].Wet.To
}

// age returns how many days one coat has lain when another is laid.
func (s pile) age(below, above int) float64 { return s.stack[above].Day - s.stack[below].Day }

// longest returns the coat below which keeps another waiting longest, by the day it has
// to have lain, and how many whole days are lacking; below -1 where none does.
func (s pile) longest(above int, due func(below int) float64) (worst int, lacks float64) {
	worst = -1
	for below := range s.film(above) {
		if lack := math.Ceil(due(below) - s.age(below, above) - 1e-9); lack > lacks {
			worst, lacks = below, lack
		}
	}
	return worst, lacks
}
