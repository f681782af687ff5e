package analyze

import (
	"math"

	"github.com/muesli/clusters"

	"tonewright/analyze/colour"
)

// An accent is a small but telling colour, such as a highlight or a red berry on
// green: it is far from the other colours of its region, lies together, and is small.
// All of these are ours; common practice is only that accents are kept.
const (
	accentFar     = 15     // CIEDE2000 from the colour it would be averaged into, and ...
	accentFarMean = 3      // ... this many times the region's mean error
	accentLeast   = 0.0005 // its least share of the region
	accentPixels  = 12     // and its fewest pixels
	accentMost    = 0.03   // its greatest share of the region
	accentClump   = 2.5    // how many of a pixel's four neighbours are of it too, on average
	accentWithin  = 10     // CIEDE2000 from its first cell to the others
	accentFringe  = 0.5    // the share of it that may lie along another region: a fringe is no accent
)

// fringe is how near to another region a pixel lies along it, in pixels.
const fringe = 3

// Where there is no cluster to spare, two others are joined for an accent as long as
// the mean error is at most this many times what it was. Where the number is fixed, an
// accent that is not glaring gets no leeway, so that the outcome is still no worse than
// plain k-means.
const (
	accentCost      = 1.15
	accentCostFixed = 1.01
	accentGlaring   = 30 // CIEDE2000 from the colour it would be averaged into
)

// accentTries bounds how many colours are tried for an accent in a region.
const accentTries = 6

// clump is what is needed to see whether cells lie together.
type clump struct {
	is     []bool   // scratch: whether a pixel of the picture is of the cells looked at
	pixels []int32  // of the region, rising
	cellOf []uint16 // of each
	region []uint8  // of every pixel of the picture
	width  int
}

// keepAccents marks the clusters that are accents, and gives accents that were
// averaged away a cluster of their own: at most a third of most clusters in all.
// Where there are most clusters already it joins two, at a cost of at most cost.
func (s *settled) keepAccents(in *clump, most int, cost float64) {
	sets := s.sets()
	mean := s.meanError()
	far := math.Max(accentFar, accentFarMean*mean)
	accents := s.markAccents(sets, in, far)
	out := s.farCells(sets, far)
	for tries := 0; len(out) > 0 && tries < accentTries && accents < most/3; tries++ {
		var group []int
		if group, out = s.lead(out); !s.telling(group, in) {
			continue
		}
		limit := mean * cost
		if s.glaring(group) {
			limit = mean * accentCost
		}
		if s.makeAccent(group, most, limit) {
			accents++
			out = s.farCells(s.sets(), far)
		}
	}
}

// makeAccent makes an accent of the cells. With most clusters already, it does so only
// if the mean error stays within limit.
func (s *settled) makeAccent(group []int, most int, limit float64) bool {
	if len(s.centres) < most {
		s.addAccent(group)
		return true
	}
	try := s.clone()
	if !try.joinCheapest() {
		return false
	}
	try.addAccent(group)
	if try.mend(); try.meanError() > limit {
		return false
	}
	*s = *try
	return true
}

// markAccents marks the clusters that are accents as they are, and counts them.
func (s *settled) markAccents(sets clusters.Clusters, in *clump, far float64) int {
	accents := 0
	for k := range sets {
		if nearestOther(sets, k) < far {
			continue
		}
		var group []int
		for i, of := range s.of {
			if int(of) == k {
				group = append(group, i)
			}
		}
		if s.accent[k] = s.telling(group, in); s.accent[k] {
			accents++
		}
	}
	return accents
}

// nearestOther returns CIEDE2000 from cluster k to the nearest other.
func nearestOther(sets clusters.Clusters, k int) float64 {
	least := math.MaxFloat64
	for j := range sets {
		if j != k {
			least = math.Min(least, colour.DeltaE00(labOf(sets[j].Center), labOf(sets[k].Center)))
		}
	}
	return least
}

// farCells returns the cells that are far from the centre of their cluster, accents
// aside.
func (s *settled) farCells(sets clusters.Clusters, far float64) []int {
	var out []int
	for i := range s.cells {
		if k := s.of[i]; !s.accent[k] && s.cells[i].Distance(sets[k].Center) >= far {
			out = append(out, i)
		}
	}
	return out
}

// lead parts cells into those of about the colour of the one with the most pixels,
// and the others.
func (s *settled) lead(cells []int) (group, others []int) {
	lead := cells[0]
	for _, i := range cells {
		if s.cells[i].pixels > s.cells[lead].pixels {
			lead = i
		}
	}
	for _, i := range cells {
		if colour.DeltaE00(s.cells[i].lab, s.cells[lead].lab) <= accentWithin {
			group = append(group, i)
		} else {
			others = append(others, i)
		}
	}
	return group, others
}

// glaring reports whether the cells are on average very far from the mean of the
// clusters they are in.
func (s *settled) glaring(group []int) bool {
	means := s.means()
	sum, pixels := 0.0, 0.0
	for _, i := range group {
		sum += colour.DeltaE00(s.cells[i].lab, means[s.of[i]].lab) * s.cells[i].pixels
		pixels += s.cells[i].pixels
	}
	return sum >= accentGlaring*pixels
}

// telling reports whether the pixels of the cells are neither too few nor too many
// for an accent, and lie together.
func (s *settled) telling(group []int, in *clump) bool {
	pixels := 0.0
	for _, i := range group {
		pixels += s.cells[i].pixels
	}
	all := float64(len(in.pixels))
	if pixels < accentPixels || pixels < accentLeast*all || pixels > accentMost*all {
		return false
	}
	member := make([]bool, len(s.cells))
	for _, i := range group {
		member[i] = true
	}
	sides, along := in.look(member)
	return float64(sides) >= accentClump*pixels && float64(along) <= accentFringe*pixels
}

// look returns how many sides the pixels of member cells have to each other, counted
// from both, and how many of them lie along another region.
func (c *clump) look(member []bool) (sides, along int) {
	if c.is == nil {
		c.is = make([]bool, len(c.region))
	}
	var of []int // the pixels of the cells
	for j, i := range c.pixels {
		if member[c.cellOf[j]] {
			of = append(of, int(i))
			c.is[i] = true
		}
	}
	for _, i := range of {
		beside := false
		for _, step := range [4]int{-1, 1, -c.width, c.width} {
			if c.inside(i, step) && c.is[i+step] {
				sides++
			}
			beside = beside || c.inside(i, fringe*step) && c.region[i+fringe*step] != c.region[i]
		}
		if beside {
			along++
		}
	}
	for _, i := range of {
		c.is[i] = false
	}
	return sides, along
}

// inside reports whether a step along a row or a column stays in the picture.
func (c *clump) inside(i, step int) bool {
	if step%c.width == 0 {
		return i+step >= 0 && i+step < len(c.region)
	}
	return i%c.width+step >= 0 && i%c.width+step < c.width
}

// addAccent makes a cluster of the cells and of what is nearer to them than to its
// own centre, then lets the others settle without it.
func (s *settled) addAccent(group []int) {
	added := uint8(len(s.centres))
	s.centres = append(s.centres, even{})
	s.accent = append(s.accent, true)
	for _, i := range group {
		s.of[i] = added
	}
	s.centres[added] = s.mean(added)
	for i := range s.cells {
		e := &s.cells[i].even
		if k := s.of[i]; !s.accent[k] && e.squared(&s.centres[added]) < e.squared(&s.centres[k]) {
			s.of[i] = added
		}
	}
	s.centres[added] = s.mean(added)
	s.lloyd(mostRounds)
}
