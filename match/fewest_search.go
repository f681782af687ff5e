// The search for the best few tubes: branch and bound over which paints to leave out.
// What the paints left cost bounds what any fewer of them do, since one paint more never
// makes the nearest mix farther. Source: [LandDoig1960] for the method.

package match

import (
	"cmp"
	"math"
	"slices"
)

// mostScans is how many offers the search looks at before it gives up proving. Ours:
// under a second of one core. 24 paints for 80 aims took at most 8 million, whether 2
// or 16 were kept; 40 paints for 100 aims were not done after 400 million, nor had
// they found anything better than the quick choice.
const mostScans = 100_000_000

// A thrift is what a search for few tubes goes by. Costs are misses in hundredths
// times weights, whole numbers, so that sums are the same everywhere.
type thrift struct {
	paints  int
	offers  [][]offer // by aim
	weights []int64   // by aim, of the panel, in millionths
	regions []int     // by aim
	fixed   []bool    // by paint
	limits  []int64   // cost that a region may not exceed, by region; nil: any
	scans   int64     // offers looked at so far
	most    int64     // and at most
}

// held is the paints that are there, by index in the box and one on, so that the -1
// of an unused place is always there.
type held []bool

func (h held) has(of set) bool { return h[of[0]+1] && h[of[1]+1] && h[of[2]+1] }

func (h held) count() (n int) {
	for _, there := range h[1:] {
		if there {
			n++
		}
	}
	return n
}

// indices returns the paints that are there, rising.
func (h held) indices() (all []int) {
	for i, there := range h[1:] {
		if there {
			all = append(all, i)
		}
	}
	return all
}

// state is what is known of the paints left at one point of the search.
type state struct {
	held  held    // not left out so far
	first []int32 // by aim, its nearest offer of these paints
	cost  int64
	costs []int64 // by region

	loss  []int64   // by paint that may be left out: what that alone would cost
	parts [][]int64 // by region and paint: parts of such losses that add up, see weigh
}

func (t *thrift) newState() *state {
	s := &state{
		held: make(held, t.paints+1), first: make([]int32, len(t.offers)),
		loss: make([]int64, t.paints), costs: make([]int64, t.regionCount()),
	}
	for i := range s.held {
		s.held[i] = true
	}
	s.parts = make([][]int64, len(s.costs))
	for r := range s.parts {
		s.parts[r] = make([]int64, t.paints)
	}
	return s
}

func (s *state) copyOf(from *state) {
	copy(s.held, from.held)
	copy(s.first, from.first)
}

// next returns the first offer from one on that these paints can make.
func (t *thrift) next(h held, aim int, from int32) int32 {
	list, i := t.offers[aim], from
	for !h.has(list[i].of) {
		i++
	}
	t.scans += int64(i-from) + 1
	return i
}

// weigh finds the cost of the paints left, and what leaving out each that may go would
// cost. If an aim's nearest offer needs some of them, its miss rises by at least the
// least loss of those that go, and so by at least their losses' sum over how many of
// them may go: these parts of losses add up to a bound however many paints go.
func (t *thrift) weigh(s *state, stays []bool) {
	s.cost = 0
	clear(s.costs)
	clear(s.loss)
	for r := range s.parts {
		clear(s.parts[r])
	}
	for a, list := range t.offers {
		s.first[a] = t.next(s.held, a, s.first[a])
		cost := t.weights[a] * int64(list[s.first[a]].miss)
		s.costs[t.regions[a]] += cost
		s.cost += cost
		t.weighAim(s, a, stays)
	}
}

func (t *thrift) weighAim(s *state, aim int, stays []bool) {
	list, best := t.offers[aim], t.offers[aim][s.first[aim]]
	open := int64(0)
	for _, p := range best.of {
		if p >= 0 && !stays[p] {
			open++
		}
	}
	for _, p := range best.of {
		if p < 0 || stays[p] {
			continue
		}
		s.held[p+1] = false
		loss := t.weights[aim] * int64(list[t.next(s.held, aim, s.first[aim]+1)].miss-best.miss)
		s.held[p+1] = true
		s.loss[p] += loss
		s.parts[t.regions[aim]][p] += loss / open
	}
}

// branching is one branch and bound.
type branching struct {
	*thrift
	count  int // of paints to keep
	best   held
	cost   int64 // of best; the search is for less
	pool   []*state
	failed bool // gave up proving
}

// visit searches all ways to go on from what is held, where the paints that stay do.
// Whether the paint missed most stays or goes is tried in turn.
func (b *branching) visit(depth int, s *state, stays []bool) {
	for {
		open, on := b.narrow(s, stays)
		if !on {
			return
		}
		child := b.state(depth)
		child.copyOf(s)
		with := slices.Clone(stays)
		with[open[0]] = true
		b.visit(depth+1, child, with)
		s.held[open[0]+1] = false
	}
}

// narrow settles what need not be tried, and returns the paints that may go, the most
// missed first; on is false where nothing is left to try.
func (b *branching) narrow(s *state, stays []bool) (open []int, on bool) {
	for {
		if b.scans > b.most {
			b.failed = true
			return nil, false
		}
		b.weigh(s, stays)
		if s.cost >= b.cost || b.excess(s.costs) > 0 {
			return nil, false
		}
		left := s.held.count() - b.count
		if left == 0 {
			b.best, b.cost = slices.Clone(s.held), s.cost
			return nil, false
		}
		open = b.open(s, stays)
		switch {
		case len(open) < left || b.bound(s, open, left):
			return nil, false
		case len(open) == left:
			for _, p := range open {
				s.held[p+1] = false
			}
		case !b.force(s, open, stays):
			return open, true
		}
	}
}

// open lists the paints that may go, the most missed first.
func (b *branching) open(s *state, stays []bool) (open []int) {
	for p, there := range s.held[1:] {
		if there && !stays[p] {
			open = append(open, p)
		}
	}
	slices.SortStableFunc(open, func(p, q int) int { return cmp.Compare(s.loss[q], s.loss[p]) })
	return open
}

// bound tells whether nothing under the best comes of leaving out so many of the open.
func (b *branching) bound(s *state, open []int, left int) bool {
	// One of those that go is at least the left-th least missed.
	if s.cost+s.loss[open[len(open)-left]] >= b.cost {
		return true
	}
	all := make([]int64, len(open))
	some := make([]int64, len(open))
	for r, parts := range s.parts {
		for i, p := range open {
			some[i] = parts[p]
			all[i] += parts[p]
		}
		if b.limits != nil && s.costs[r]+sumOfLeast(some, left) > b.limits[r] {
			return true
		}
	}
	return s.cost+sumOfLeast(all, left) >= b.cost
}

func sumOfLeast(list []int64, count int) (sum int64) {
	slices.Sort(list)
	for _, v := range list[:count] {
		sum += v
	}
	return sum
}

// force marks the paints that cannot go, and tells whether there are any.
func (b *branching) force(s *state, open []int, stays []bool) (any bool) {
	for _, p := range open {
		if s.cost+s.loss[p] < b.cost {
			break
		}
		stays[p], any = true, true
	}
	return any
}

func (b *branching) state(depth int) *state {
	if depth == len(b.pool) {
		b.pool = append(b.pool, b.newState())
	}
	return b.pool[depth]
}

// search returns the best so many paints, rising; nil where none keep the limits.
// proven is whether that was searched to the end.
func (t *thrift) search(count int) (best []int, proven bool) {
	b := &branching{thrift: t, count: count, cost: math.MaxInt64}
	if h, toll := t.quick(count); toll.excess == 0 {
		b.best, b.cost = h, toll.cost
	}
	b.visit(0, t.newState(), slices.Clone(t.fixed))
	if b.best == nil {
		return nil, !b.failed
	}
	return b.best.indices(), !b.failed
}

// fewest returns the best of the fewest paints that keep the limits, no fewer than
// least and no more than most; nil where there are none. proven is whether fewer, but
// no fewer than least, were searched to the end.
func (t *thrift) fewest(least, most int) (best []int, proven bool) {
	for count := t.enough(most); count >= least; count-- {
		if count > least { // where the quick choice finds fewer, this many need no search
			if _, toll := t.quick(count - 1); toll.excess == 0 {
				continue
			}
		}
		kept, sure := t.search(count)
		if kept == nil {
			return best, sure
		}
		best = kept
	}
	return best, true
}

// least is how few paints can be kept.
func (t *thrift) least() (least int) {
	for _, stays := range t.fixed {
		if stays {
			least++
		}
	}
	return max(1, least)
}

// regionCount is how many regions there are, those without an aim among them.
func (t *thrift) regionCount() int { return slices.Max(t.regions) + 1 }

// wholes returns the weight of each region.
func (t *thrift) wholes() []int64 {
	wholes := make([]int64, t.regionCount())
	for a, r := range t.regions {
		wholes[r] += t.weights[a]
	}
	return wholes
}

// limitsOf returns the costs of regions whose means are so.
func (t *thrift) limitsOf(means []float64) []int64 {
	limits := t.wholes()
	for r := range limits {
		limits[r] *= int64(ties(means[r]))
	}
	return limits
}
