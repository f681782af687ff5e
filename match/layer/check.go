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
	Reason       string // what happens otherwise, in a sentence
	Mend         string // what to do, in a sentence
	Source       string // for the painter to read; says so where there is none
	Change       Change // the mend, as data
}

// Change is what mends a fault: one of WaitDays, Medium, Film and Swap, the others zero.
type Change struct {
	WaitDays float64 // whole days by which Above, and all that is laid after it, is laid later
	Coat     int     // index of the coat that what follows is for
	Medium   *Medium // in place of its own
	Film     float64 // µm, wet, in place of its own; what is lacking goes on as a further coat
	Swap     Swap    // of paints, all of one for another
}

// Swap is one paint in place of another, by ids.
type Swap struct {
	From string // "": no swap
	To   string // "": the painter has to choose another
}

// practice is the source of what painters hand on.
const practice = "common practice, no source"

// Check returns the rules that coats at one place break, the lowest coat first: at most
// one fault of a rule for each coat above, against the coat below it that is worst, so that
// its mend serves for all below.
// Days are judged by the early end of the estimates: what is called too early is so by
// all that is known; between the ends a painter tries with a finger. Only over a carbon
// black, where a finger is deceived, by the late end.
func Check(stack []Laid, air Air) []Fault {
	s := judged{stack: stack}
	for _, c := range stack {
		s.dries = append(s.dries, dryingOf(c.Coat, air))
	}
	var faults []Fault
	for above := range stack {
		tried := rulesOfOne
		if !s.intoWet(above) { // else it is one film with the coat beneath, which is judged
			tried = append(tried[:len(tried):len(tried)], rulesOfTwo...)
		}
		for _, rule := range tried {
			if f, broken := rule(s, above); broken {
				f.Above = above
				faults = append(faults, f)
			}
		}
	}
	return faults
}

// Rules of a coat by itself and over what lies beneath it. Each finds at most one fault;
// Check fills in Above.
var (
	rulesOfOne = []func(s judged, above int) (Fault, bool){tooThick, tooMuchMedium}
	rulesOfTwo = []func(s judged, above int) (Fault, bool){overWet, tooSoon, fastOverSlow, fatOverLean, zincBeneath}
)

// judged is a stack with how each coat dries.
type judged struct {
	stack []Laid
	dries []drying
}

// bottom returns the lowest coat of those that lie wet into wet up to this one, and so dry
// with it as one film.
func (s judged) bottom(of int) int {
	for s.intoWet(of) {
		of--
	}
	return of
}

// intoWet tells whether a coat is laid into the one before it while that can be blended.
func (s judged) intoWet(above int) bool {
	return above > 0 && s.stack[above].Wet && s.age(above-1, above) <= s.dries[above-1].Wet.To
}

// age returns how many days one coat has lain when another is laid.
func (s judged) age(below, above int) float64 { return s.stack[above].Day - s.stack[below].Day }

// dayTie is less than any wait that matters, days: what is due on the day is not late.
const dayTie = 1e-6

// keptBy returns the coat that keeps one above waiting longest, when each below has to
// have lain the days due; days is how many whole ones are lacking. -1 where none does.
func (s judged) keptBy(above int, due func(below int) float64) (below int, days float64) {
	below = -1
	for i := range above {
		if lacks := math.Ceil(due(i) - s.age(i, above) - dayTie); lacks > days {
			below, days = i, lacks
		}
	}
	return below, days
}
