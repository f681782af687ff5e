// Seeking a mix that does something more than come near.

package match

import (
	"math"

	"tonewright/analyze/colour"
)

// How much is looked through for a mix that also carries or holds. Ours: more sets
// found none better on the demo, and each costs as much as a choice of one.
const (
	soughtSets     = 40
	soughtMeasures = 12 // of each set, the nearest
)

// seek returns the mix of least cost among those within a distance of the aim, and
// whether there is one under the bound. Of equal costs the one found first, in the
// order of the finds, is taken.
func (c *choice) seek(within, under float64, cost func(mix) float64) (best mix, found bool) {
	for i, f := range c.finds {
		if i == soughtSets || float64(f.deltaE)/gain-rest > within {
			break
		}
		if c.looked[i] == nil {
			c.looked[i] = c.refine(f)
		}
		for j, rough := range c.looked[i].rough {
			if j == soughtMeasures || rough.deltaE > within+screenError {
				break
			}
			m := c.full(c.looked[i].best.set, rough.measure)
			if m.deltaE > within {
				continue
			}
			if v := cost(m); v < under-tie {
				best, found, under = m, true, v
			}
		}
	}
	return best, found
}

// carrier returns the mix whose one coat over the ground comes nearest to the aim, of
// those that hide it in one coat and are not much worse than the first; none where
// that gains less over one coat of the first than is worth another mix.
func (c *choice) carrier(first mix) (mix, bool) {
	thin := colour.DeltaE00(c.cover(first).OneCoat, c.aim)
	return c.seek(first.deltaE+worseBy, thin-worthAMix, func(m mix) float64 {
		cover := c.cover(m)
		if !cover.Carries() {
			return math.Inf(1)
		}
		return colour.DeltaE00(cover.OneCoat, c.aim)
	})
}

// worthAMix is the CIEDE2000 that another mix has to gain. Ours: half of what is hardly seen.
const worthAMix = 0.5

// unheld is by how much of its worst shift under the lamps a mix counts as farther from
// its aim, where mixes that hold are asked for. Ours: half, so that a mix is never
// taken for its steadiness alone.
const unheld = 0.5

// steadyInLamplight returns the mix that loses least by its distance and by the lamps,
// among those about as near as the first.
func (c *choice) steadyInLamplight(first mix) mix {
	cost := func(m mix) float64 { return m.deltaE + unheld*c.worstShift(m) }
	if m, found := c.seek(first.deltaE+fewerWithin, cost(first), cost); found {
		return m
	}
	return first
}

func (s *search) cover(m mix) Cover {
	k, r := s.optics(m.set, m.measure)
	return CoverOf(&k, &r, s.ground, s.finish, s.coat)
}
