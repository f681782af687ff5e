// When a coat can be gone over.

package layer

// GoOver returns the days after a coat is laid until another may go over it dry: From by
// what Check judges by, To by the late end of the estimates. From that day on none of the
// rules that waiting mends is broken; of the others it tells nothing.
func GoOver(below, above Coat, air Air) Range {
	lower := dryingOf(below, air)
	wait := lower.Touch.longer(lower.rest(dryingOf(above, air)))
	if above.glaze() {
		wait = wait.longer(lower.Through)
	}
	return wait
}
