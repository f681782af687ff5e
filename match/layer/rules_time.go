// Rules that waiting mends.

package layer

import (
	"fmt"
	"math"
)

// overWet: a coat needs a dry one beneath, or one wet enough to blend into.
func overWet(s judged, above int) (Fault, bool) {
	below, days := s.keptBy(above, func(i int) float64 { return s.dries[i].Touch.From })
	if below < 0 {
		return Fault{}, false
	}
	upper, lower := s.stack[above], s.stack[below]
	f := s.wait(OverWet, below, above, days)
	f.Reason = fmt.Sprintf("%s is not dry to the touch: the brush drags it up, and a skin over soft paint wrinkles and cracks.", lower.Name)
	if upper.Wet {
		f.Reason = fmt.Sprintf("%s has set too far to blend with and is not dry to the touch: the brush tears it.", lower.Name)
	}
	return f, true
}

// tooSoon: a glaze needs what lies beneath dry through.
func tooSoon(s judged, above int) (Fault, bool) {
	if !s.stack[above].glaze() {
		return Fault{}, false
	}
	below, days := s.keptBy(above, func(i int) float64 { return s.dries[i].Through.From })
	if below < 0 {
		return Fault{}, false
	}
	f := s.wait(TooSoon, below, above, days)
	f.Reason = fmt.Sprintf("%s is not dry through: so much medium or solvent softens and lifts it, or sinks into it and leaves dull patches.", s.stack[below].Name)
	return f, true
}

// fastOverSlow: a coat that dries clearly faster needs what lies beneath dry through.
func fastOverSlow(s judged, above int) (Fault, bool) {
	below, days := s.keptBy(above, func(i int) float64 { return s.dries[i].rest(s.dries[above]).From })
	if below < 0 {
		return Fault{}, false
	}
	upper, lower := s.stack[above], s.stack[below]
	f := s.wait(FastOverSlow, below, above, days)
	f.Source = "Saitzyk 1987, Art Hardware, on drying rates" // [Saitzyk1987]
	f.Reason = fmt.Sprintf("%s dries faster than %s, which goes on moving under it: the stiff paint above cracks.", upper.Name, lower.Name)
	if slow := lower.Paints[s.dries[below].Slowest]; s.dries[below].black {
		f.Reason = fmt.Sprintf("%s is slow with %s: it skins over while it is soft beneath, and the faster %s over it cracks.", lower.Name, slow.Name, upper.Name)
		f.Mend += fmt.Sprintf(" Or take Mars Black, which dries sooner, in place of %s beneath.", slow.Name)
	}
	return f, true
}

// wait is a fault that so many days mend.
func (s judged) wait(rule string, below, above int, days float64) Fault {
	upper := s.stack[above]
	return Fault{
		Rule: rule, Below: below, Source: practice,
		Mend:   fmt.Sprintf("Wait until day %g with %s, and try the paint beneath with a finger first.", math.Ceil(upper.Day+days), upper.Name),
		Change: Change{WaitDays: days},
	}
}

// glazeFrom is how much medium or solvent to one of paint makes a coat a glaze or a wash.
// Common practice, no source: at 1 to 2 paint stops standing as the brush leaves it.
const glazeFrom = 0.5

// glaze tells whether a coat is so thin a paint that it can soften what lies beneath.
func (c Coat) glaze() bool { return !c.Medium.none() && c.Medium.Parts >= glazeFrom }
