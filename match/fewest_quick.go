// A quick choice of few tubes, for the search to start from.

package match

import "slices"

// toll is what a choice costs: first by how much it exceeds the regions' limits, then
// in all.
type toll struct{ excess, cost int64 }

func (t toll) under(other toll) bool {
	return t.excess < other.excess || t.excess == other.excess && t.cost < other.cost
}

// quick leaves out the paint that is missed least, again and again, and then
// exchanges one paint for another while that helps.
func (t *thrift) quick(count int) (held, toll) {
	s := t.newState()
	for t.weigh(s, t.fixed); s.held.count() > count; t.weigh(s, t.fixed) {
		t.leaveOut(s)
	}
	best := toll{t.excess(s.costs), s.cost}
	for t.exchange(s.held, &best) {
	}
	return s.held, best
}

// leaveOut leaves out the paint that is missed least, and returns it.
func (t *thrift) leaveOut(s *state) int {
	least := -1
	for p, there := range s.held[1:] {
		if there && !t.fixed[p] && (least < 0 || s.loss[p] < s.loss[least]) {
			least = p
		}
	}
	s.held[least+1] = false
	return least
}

// enough returns a number of paints, no more than most, that surely keep the limits
// if any so few do: to how many the box comes down by leaving out.
func (t *thrift) enough(most int) int {
	s, enough := t.newState(), most
	for t.weigh(s, t.fixed); t.excess(s.costs) == 0; t.weigh(s, t.fixed) {
		enough = min(enough, s.held.count())
		if s.held.count() == t.least() {
			break
		}
		t.leaveOut(s)
	}
	return enough
}

// leastMissed returns some paints in the order in which they would be left out; those
// fixed are none of them, nor is the last.
func (t *thrift) leastMissed(kept []int) (order []int) {
	s := t.newState()
	for p := range t.paints {
		s.held[p+1] = slices.Contains(kept, p)
	}
	for t.weigh(s, t.fixed); s.held.count() > t.least(); t.weigh(s, t.fixed) {
		order = append(order, t.leaveOut(s))
	}
	return order
}

// served returns the aims that some paints' mixes come nearer to than those of others.
func (t *thrift) served(others, some []int) (aims []int) {
	before, after := t.newState(), t.newState()
	for p := range t.paints {
		before.held[p+1], after.held[p+1] = slices.Contains(others, p), slices.Contains(some, p)
	}
	for a, list := range t.offers {
		if list[t.next(after.held, a, 0)].miss < list[t.next(before.held, a, 0)].miss {
			aims = append(aims, a)
		}
	}
	return aims
}

// exchange makes every exchange that helps, once through, and tells whether any did.
func (t *thrift) exchange(h held, best *toll) (any bool) {
	costs := make([]int64, t.regionCount())
	for out := range t.paints {
		for in := range t.paints {
			if !h[out+1] || t.fixed[out] || h[in+1] {
				continue
			}
			if t.scans > t.most { // search will say that nothing is proven
				return false
			}
			h[out+1], h[in+1] = false, true
			if now := t.tollOf(h, costs, *best); now.under(*best) {
				*best, any = now, true
				continue
			}
			h[out+1], h[in+1] = true, false
		}
	}
	return any
}

// tollOf returns what a choice costs, or where there are no limits any toll not
// under the one to beat. It writes to costs.
func (t *thrift) tollOf(h held, costs []int64, beat toll) (now toll) {
	clear(costs)
	for a, list := range t.offers {
		c := t.weights[a] * int64(list[t.next(h, a, 0)].miss)
		now.cost += c
		costs[t.regions[a]] += c
		if t.limits == nil && now.cost >= beat.cost {
			return now
		}
	}
	now.excess = t.excess(costs)
	return now
}

// excess returns by how much regions exceed their limits, in all.
func (t *thrift) excess(costs []int64) (sum int64) {
	for r := range t.limits {
		sum += max(0, costs[r]-t.limits[r])
	}
	return sum
}
