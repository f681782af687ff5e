// Seeking the nearest mix that does something more than come near.

package match

// How much is looked through for a mix that also carries or holds. Ours: more sets
// found none nearer on the demo, and each costs as much as a choice of one.
const (
	soughtSets     = 40
	soughtMeasures = 12 // of each set, the nearest
)

// seek returns the nearest mix within a distance that is accepted, and whether there
// is one among those looked at.
func (c *choice) seek(within float64, accept func(mix) bool) (best mix, found bool) {
	for i, f := range c.finds {
		if i == soughtSets || float64(f.deltaE)/gain-rest > within {
			break
		}
		if c.looked[i] == nil {
			c.looked[i] = c.refine(f)
		}
		if m, ok := c.firstOf(c.looked[i], within, accept); ok && (!found || c.compareMixes(m, best) < 0) {
			best, found, within = m, true, m.deltaE
		}
	}
	return best, found
}

// firstOf returns the first mix of a set, by its rough distance, that is accepted.
func (c *choice) firstOf(r *refined, within float64, accept func(mix) bool) (mix, bool) {
	for i, rough := range r.rough {
		if i == soughtMeasures || rough.deltaE > within+screenError {
			break
		}
		if m := c.full(r.best.set, rough.measure); m.deltaE <= within && accept(m) {
			return m, true
		}
	}
	return mix{}, false
}

// carrier returns the nearest mix that hides the ground in one coat, not much worse
// than the first.
func (c *choice) carrier(first mix) (mix, bool) {
	return c.seek(first.deltaE+worseBy, func(m mix) bool { return c.cover(m).Carries() })
}

// steadyInLamplight returns a mix about as near as the first that holds its colour
// under the lamps, or the first where there is none.
func (c *choice) steadyInLamplight(first mix) mix {
	if c.holds(first) {
		return first
	}
	if m, found := c.seek(first.deltaE+fewerWithin, c.holds); found {
		return m
	}
	return first
}

func (s *search) cover(m mix) Cover {
	k, r := s.optics(m.set, m.measure)
	return CoverOf(&k, &r, s.ground, s.finish, s.coat)
}
