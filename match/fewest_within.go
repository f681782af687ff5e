// The fewest tubes that keep every region near enough.

package match

import "slices"

// eased is by how much a region may fall short of what the whole box does there,
// where that is more than Within. Ours: half of what is hardly seen; with nothing
// eased nearly the whole box would be kept for nothing.
const eased = 0.5

// mostDraws is how often the limits are drawn in. Ours: after that, paints are left
// out of the whole box one at a time instead, by the recipes alone.
const mostDraws = 12

// fewestWithin returns the fewest paints whose recipes keep every region's limit. The
// nearest mixes tell how few can; recipes miss a little more, since they take fewer
// paints or easier parts where that costs little: by as much as they exceed a limit,
// that limit is drawn in for the next round.
func (c *chooser) fewestWithin() (kept []int, proven bool) {
	wanted, t := c.limits(), c.thrift
	t.limits = t.limitsOf(wanted)
	least, sure := t.least(), true // so few at least, by the first round
	for round := range mostDraws {
		if kept, proven = t.fewest(least, c.most()); kept == nil {
			break
		}
		if round == 0 {
			least, sure = len(kept), proven
		}
		if !c.draw(kept, wanted) {
			return c.settle(kept, wanted, least, sure)
		}
	}
	t.limits = nil
	if c.most() < len(c.paints) {
		return t.search(c.most())
	}
	return c.settle(c.all(), wanted, least, sure)
}

// settle leaves out what the recipes do not need after limits were drawn in.
func (c *chooser) settle(kept []int, limits []float64, least int, sure bool) ([]int, bool) {
	if len(kept) > least {
		kept = c.trim(kept, limits)
	}
	return kept, sure && len(kept) <= least
}

// draw draws in the limits that the recipes of some paints exceed, and tells whether
// there are any.
func (c *chooser) draw(kept []int, limits []float64) (any bool) {
	wholes := c.thrift.wholes()
	for r, m := range c.means(c.misses(kept)) {
		if exceeds(m, limits[r]) {
			any = true
			c.thrift.limits[r] -= wholes[r] * int64(ties(m)-ties(limits[r]))
		}
	}
	return any
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
		rest := slices.DeleteFunc(slices.Clone(kept), func(q int) bool { return q == p })
		if c.keeps(rest, limits) {
			kept = rest
		}
	}
	return kept
}

// keeps tells whether the recipes of some paints keep every limit.
func (c *chooser) keeps(kept []int, limits []float64) bool {
	for r, m := range c.means(c.misses(kept)) {
		if exceeds(m, limits[r]) {
			return false
		}
	}
	return true
}
