// The fewest tubes that keep every region near enough.

package match

import "math"

// eased is by how much a region may fall short of what the whole box does there,
// where that is more than Within. Ours: half of what is hardly seen; with nothing
// eased nearly the whole box would be kept for nothing.
const eased = 0.5

// mostDraws is how often the limits are drawn in. Ours: TODO.
const mostDraws = 12

// fewestWithin returns the fewest paints whose recipes keep every region's limit. The
// nearest mixes tell how few can; recipes miss a little more, since they take fewer
// paints or easier parts where that costs little: by as much as they exceed a limit,
// that limit is drawn in for the next round.
func (c *chooser) fewestWithin() (kept []int, proven bool) {
	wanted := c.limits()
	t := c.thrift
	t.limits = t.limitsOf(wanted)
	atLeast, sure := 0, true
	for range mostDraws {
		kept, proven = t.fewest(c.most())
		if kept == nil {
			break
		}
		if atLeast == 0 {
			atLeast, sure = len(kept), proven
		}
		means, ok := c.means(c.misses(kept)), true
		for r, m := range means {
			if exceeds(m, wanted[r]) {
				ok = false
				t.limits[r] -= t.wholes()[r] * max(1, int64(math.Ceil((m-wanted[r])/tie)))
			}
		}
		if ok {
			if len(kept) > atLeast {
				kept = c.trim(kept, wanted)
			}
			return kept, sure && len(kept) <= atLeast
		}
	}
	t.limits = nil
	if c.most() < len(c.paints) {
		return t.search(c.most())
	}
	kept = c.trim(c.all(), wanted)
	return kept, sure && len(kept) <= atLeast
}

// limits returns the mean that each region may miss by.
func (c *chooser) limits() []float64 {
	limits := c.means(c.full)
	for r, full := range limits {
		limits[r] = c.opt.Within
		if exceeds(full, c.opt.Within) {
			limits[r] = full + eased
		}
	}
	return limits
}

// trim leaves out paints as long as the recipes of the rest keep the limits, the
// least missed first.
func (c *chooser) trim(kept []int, limits []float64) []int {
	for _, p := range c.thrift.leastMissed(kept) {
		var rest []int
		for _, q := range kept {
			if q != p {
				rest = append(rest, q)
			}
		}
		ok := true
		for r, m := range c.means(c.misses(rest)) {
			ok = ok && !exceeds(m, limits[r])
		}
		if ok {
			kept = rest
		}
	}
	return kept
}
