// Steadiness: how far a mix strays when a hand measures it a little wrong.

package match

import "tonewright/analyze/colour"

// A mix of paints that pull in opposite directions, such as a gray from red and
// green, strays far when one part comes out a little large, in just the direction
// that some eyes cannot see. Ours: of the sets of one size within fewerWithin of the
// nearest, the one is taken that is least in deltaE plus a third of how far it strays.
// Where the aim is out of reach, nearness comes first.
const (
	unsteady    = 1.0 / 3
	slip        = 0.2 // by how much of itself a part may come out large or small
	steadyLooks = 3   // sets that are looked at for this; each costs as much as the choice before it
)

// steadiest returns the set to take among those of as many paints as best has, all
// within the distance.
func (c *choice) steadiest(best *refined, within float64) *refined {
	size, left := best.best.set.size(), steadyLooks
	if size == 1 {
		return best
	}
	cost := func(m mix) float64 { return m.deltaE + unsteady*c.strays(m) }
	least := cost(best.best)
	for i, f := range c.finds {
		if f.set.size() != size {
			continue
		}
		if left == 0 || float64(f.deltaE) > within {
			break
		}
		left--
		if c.looked[i] == nil {
			c.looked[i] = c.refine(f)
		}
		if r := c.looked[i]; r.best.deltaE <= within && cost(r.best) < least-tie {
			best, least = r, cost(r.best)
		}
	}
	return best
}

// strays returns the most CIEDE2000 that a mix changes by when one part slips.
func (s *search) strays(m mix) (most float64) {
	n := m.set.size()
	paints, parts := s.amountsOf(m.set, m.measure)
	for i := range n {
		right := parts[i]
		for _, part := range [2]float64{right * (1 - slip), right * (1 + slip)} {
			parts[i] = part
			most = max(most, colour.DeltaE00(m.lab, labOf(paints[:n], parts[:n], s.finish)))
		}
		parts[i] = right
	}
	return most
}
