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
	accentFar     = 12     // CIEDE2000 from the colour it would be averaged into, and ...
	accentFarMean = 3      // ... this many times the region's mean error
	accentLeast   = 0.0005 // its least share of the region
	accentPixels  = 12     // and its fewest pixels
	accentMost    = 0.03   // its greatest share of the region
	accentClump   = 2.5    // how many of a pixel's four neighbours are of it too, on average
	accentWithin  = 10     // CIEDE2000 from its first cell to the others
)

// accentTries bounds how many colours are tried for an accent in a region.
const accentTries = 6

// clump is the pixels of a region in rising order, with the cell of each, in a
// picture of a width: what is needed to see whether cells lie together.
type clump struct {
	pixels []int32
	cellOf []uint16
	width  int
}

// keepAccents marks the clusters that are accents, and gives accents that were
// averaged away a cluster of their own, at most a third of most clusters in all.
// Where there are most clusters already, the two it costs least to join make room.
func (s *settled) keepAccents(in clump, most int) {
	sets := s.sets()
	far := math.Max(accentFar, accentFarMean*meanError(sets))
	accents := s.markAccents(sets, in, far)
	tried := make([]bool, len(s.cells))
	for tries := 0; tries < accentTries && accents < most/3; tries++ {
		group := s.outlying(s.sets(), tried, far)
		if len(group) == 0 {
			return
		}
		if !s.telling(group, in) {
			continue
		}
		if len(s.centres) == most && !s.joinCheapest() {
			return
		}
		s.addAccent(group)
		accents++
	}
}

// markAccents marks the clusters that are accents as they are, and counts them.
func (s *settled) markAccents(sets clusters.Clusters, in clump, far float64) int {
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

// outlying returns cells of about one colour that are far from their cluster's
// centre: the one with the most pixels that was not tried, and those near it.
// It marks them as tried.
func (s *settled) outlying(sets clusters.Clusters, tried []bool, far float64) []int {
	lead := -1
	var out []int
	for i := range s.cells {
		if tried[i] || s.accent[s.of[i]] || s.cells[i].Distance(sets[s.of[i]].Center) < far {
			continue
		}
		out = append(out, i)
		if lead < 0 || s.cells[i].pixels > s.cells[lead].pixels {
			lead = i
		}
	}
	var group []int
	for _, i := range out {
		if colour.DeltaE00(s.cells[i].lab, s.cells[lead].lab) <= accentWithin {
			tried[i] = true
			group = append(group, i)
		}
	}
	return group
}

// telling reports whether the pixels of the cells are neither too few nor too many
// for an accent, and lie together.
func (s *settled) telling(group []int, in clump) bool {
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
	return 2*float64(in.sides(member)) >= accentClump*pixels
}

// sides returns how many pixel sides the pixels of member cells share.
func (c clump) sides(member []bool) int {
	sides, below := 0, 0
	for j, i := range c.pixels {
		for below < len(c.pixels) && c.pixels[below] < i+int32(c.width) {
			below++
		}
		if !member[c.cellOf[j]] {
			continue
		}
		if j+1 < len(c.pixels) && c.pixels[j+1] == i+1 && (i+1)%int32(c.width) != 0 && member[c.cellOf[j+1]] {
			sides++
		}
		if below < len(c.pixels) && c.pixels[below] == i+int32(c.width) && member[c.cellOf[below]] {
			sides++
		}
	}
	return sides
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
	s.lloyd()
}
