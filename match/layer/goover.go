// When a coat can be gone over.

package layer

import "math"

// GoOver returns the days after a coat is laid until another may go over it dry: From by
// what Check judges by, To by the late end of the estimates. From that day on none of the rules that waiting mends is broken; see WaitingMends for the rest.
func GoOver(below, above Coat, air Air) Range {
	lower := dryingOf(below, air)
	wait := lower.Touch.longer(lower.rest(dryingOf(above, air)))
	if above.glaze() {
		wait = wait.longer(lower.Through)
	}
	return wait
}

// WaitingMends tells whether one coat may ever go over another, be it late: not where it is
// leaner, nor over zinc white.
func WaitingMends(below, above Coat, air Air) bool {
	day := math.Ceil(GoOver(below, above, air).To)
	for _, f := range Check([]Laid{{Coat: below}, {Coat: above, Day: day}}, air) {
		if f.Below < f.Above {
			return false
		}
	}
	return true
}
