// When a coat can be gone over.

package layer

import "math"

// GoOver returns the days after a coat is laid until another may go over it, dry: by the
// early end of the estimates, as Check judges, and by the late end.
func GoOver(below, above Coat, air Air) Range {
	lower, upper := Drying(below, air), Drying(above, air)
	if glaze(above) || faster(upper, lower) {
		return lower.Through
	}
	return lower.Touch
}

// WaitingMends tells whether another coat may ever go over one, be it late: not where it
// is leaner, nor over zinc white.
func WaitingMends(below, above Coat, air Air) bool {
	day := math.Ceil(GoOver(below, above, air).To)
	return len(Check([]Laid{{Coat: below}, {Coat: above, Day: day}}, air)) == 0
}
