// Rules that waiting mends.

package layer

import (
	"fmt"
	"math"
)

// overWet: a coat needs a dry one beneath, or a wet one to blend into.
func overWet(s pile, above int) (Fault, bool) {
	below, days := s.longest(above, func(below int) float64 { return s.dries[below].Touch.From })
	if below < 0 {
		return Fault{}, false
	}
	return s.wait(OverWet, below, above, days,
		fmt.Sprintf("%s is not dry to the touch yet: the brush lifts it, and what dries above it first cracks and wrinkles.", s.stack[below].Name)), true
}

// tooSoon: a glaze needs what lies beneath dry through.
func tooSoon(s pile, above int) (Fault, bool) {
	if !glaze(s.stack[above].Coat) {
		return Fault{}, false
	}
	below, days := s.longest(above, func(below int) float64 { return s.dries[below].Through.From })
	if below < 0 {
		return Fault{}, false
	}
	return s.wait(TooSoon, below, above, days,
		fmt.Sprintf("%s is not dry through: a glaze lifts it or sinks into it, and cracks as it goes on drying.", s.stack[below].Name)), true
}

// fastOverSlow: a coat that dries clearly faster needs what lies beneath dry through.
func fastOverSlow(s pile, above int) (Fault, bool) {
	below, days := s.longest(above, func(below int) float64 {
		if faster(s.dries[above], s.dries[below]) {
			return s.dries[below].Through.From
		}
		return 0
	})
	if below < 0 {
		return Fault{}, false
	}
	return s.wait(FastOverSlow, below, above, days,
		fmt.Sprintf("%s dries faster than %s beneath, which still moves when the upper one is stiff: it cracks.", s.stack[above].Name, s.stack[below].Name)), true
}

// wait is a fault that so many days mend.
func (s pile) wait(rule string, below, above int, days float64, reason string) Fault {
	return Fault{
		Rule: rule, Below: below, Above: above, Reason: reason,
		Mend:   fmt.Sprintf("wait until day %g with %s", math.Ceil(s.stack[above].Day+days), s.stack[above].Name),
		Source: "common practice, no source",
		Change: Change{WaitDays: days},
	}
}

// glaze tells whether a coat is one: as much medium as paint, or half of it.
func glaze(c Coat) bool { return !c.Medium.none() && c.Medium.Parts >= 0.5 }

const clearly = 1.2

// faster tells whether one coat dries clearly faster than another.
func faster(a, b Dries) bool { return a.Touch.middle()*clearly < b.Touch.middle() }

func (r Range) middle() float64 { return math.Sqrt(r.From * r.To) }
