package analyze

import (
	"math"
	"slices"

	"github.com/muesli/clusters"

	"tonewright/analyze/colour"
)

// settled is a clustering of cells in the even space.
type settled struct {
	cells   []cell
	centres []even
	of      []uint8 // of[i]: centre of cell i
	accent  []bool  // by centre: its cells are no longer moved
}

// Two colours nearer than this, in CIEDE2000, cannot be told apart side by side
// (common practice: about 1); only a fixed number of colours keeps them apart.
const alike = 1

// Ours: an error this much over what is asked for is tried to be mended before a
// colour is added.
const nearlyEnough = 1.1

// settle clusters the cells into the number opt fixes.
func settle(cells []cell, number int) *settled {
	s := start(cells)
	for len(s.centres) < number && s.split() {
		s.lloyd()
	}
	s.mend()
	return s
}

// settleFor clusters the cells into as few clusters, 3 to 8, as keep the error.
// Clusters that look alike are joined, which can leave fewer than 3.
func settleFor(cells []cell, limit float64) *settled {
	s := start(cells)
	for len(s.centres) < mostColours {
		if len(s.centres) >= fewestColours {
			e := meanError(s.sets())
			if e > limit && e <= limit*nearlyEnough && s.mend() {
				e = meanError(s.sets())
			}
			if e <= limit {
				break
			}
		}
		if !s.split() {
			break
		}
		s.lloyd()
	}
	s.mend()
	s.joinAlike()
	return s
}

// start returns the cells as one cluster.
func start(cells []cell) *settled {
	s := &settled{cells: cells, of: make([]uint8, len(cells)), accent: make([]bool, 1)}
	s.centres = []even{s.mean(0)}
	return s
}

// mend joins the two clusters it costs least to join and splits the worst, as long
// as that lowers the squared error; it reports whether it did.
func (s *settled) mend() bool {
	mended := false
	for len(s.centres) > 2 {
		try := &settled{s.cells, slices.Clone(s.centres), slices.Clone(s.of), slices.Clone(s.accent)}
		if !try.joinCheapest() || !try.split() {
			break
		}
		try.lloyd()
		if try.squaredError() >= s.squaredError()*(1-1e-6) {
			break
		}
		*s = *try
		mended = true
	}
	return mended
}

// squaredError returns the sum over the pixels of the squared distance to their centre.
func (s *settled) squaredError() float64 {
	sum := 0.0
	for i := range s.cells {
		sum += s.cells[i].even.squared(&s.centres[s.of[i]]) * s.cells[i].pixels
	}
	return sum
}

// joinCheapest joins the two clusters, neither an accent, whose joining adds least to
// the squared error [Ward1963]; it returns false if there are none.
func (s *settled) joinCheapest() bool {
	pixels := make([]float64, len(s.centres))
	for i, k := range s.of {
		pixels[k] += s.cells[i].pixels
	}
	from, to, least := -1, -1, math.MaxFloat64
	for a := range s.centres {
		for b := range a {
			if s.accent[a] || s.accent[b] {
				continue
			}
			ward := pixels[a] * pixels[b] / (pixels[a] + pixels[b]) * s.centres[a].squared(&s.centres[b])
			if ward < least {
				from, to, least = a, b, ward
			}
		}
	}
	if from < 0 {
		return false
	}
	s.join(from, to)
	return true
}

// join moves the cells of cluster from into cluster to; the last takes from's number.
func (s *settled) join(from, to int) {
	last := len(s.centres) - 1
	for i, k := range s.of {
		switch int(k) {
		case from:
			s.of[i] = uint8(to)
		case last:
			s.of[i] = uint8(from)
		}
	}
	s.centres[from], s.accent[from] = s.centres[last], s.accent[last]
	s.centres, s.accent = s.centres[:last], s.accent[:last]
	s.centres[to] = s.mean(uint8(to))
}

// joinAlike joins clusters whose centres cannot be told apart.
func (s *settled) joinAlike() {
	for a := 1; a < len(s.centres); a++ {
		for b := range a {
			sets := s.sets()
			if colour.DeltaE00(labOf(sets[a].Center), labOf(sets[b].Center)) < alike {
				s.join(a, b)
				a = 0
				break
			}
		}
	}
}

// mean returns the mean of centre k's cells.
func (s *settled) mean(k uint8) even {
	var sum even
	weight := 0.0
	for i := range s.cells {
		if s.of[i] == k {
			c := &s.cells[i]
			weight += c.pixels
			for j, v := range c.even {
				sum[j] += v * c.pixels
			}
		}
	}
	for j := range sum {
		sum[j] /= weight
	}
	return sum
}

// split cuts the cluster with the largest squared error at its mean, across the axis
// it is longest on. It returns false if every cluster is one colour.
// Source: [Su2007], Var-Part.
func (s *settled) split() bool {
	spread := make([]even, len(s.centres))
	for i := range s.cells {
		c, k := &s.cells[i], s.of[i]
		for j, v := range c.even {
			d := v - s.centres[k][j]
			spread[k][j] += d * d * c.pixels
		}
	}
	worst, most := 0, 0.0
	for k, e := range spread {
		if sum := e[0] + e[1] + e[2]; sum > most && !s.accent[k] {
			worst, most = k, sum
		}
	}
	if most == 0 {
		return false
	}
	axis := 0
	for j, v := range spread[worst] {
		if v > spread[worst][axis] {
			axis = j
		}
	}
	added := uint8(len(s.centres))
	for i := range s.cells {
		if int(s.of[i]) == worst && s.cells[i].even[axis] > s.centres[worst][axis] {
			s.of[i] = added
		}
	}
	s.centres[worst] = s.mean(uint8(worst))
	s.centres = append(s.centres, s.mean(added))
	s.accent = append(s.accent, false)
	return true
}

// mostRounds bounds Lloyd's iteration, which ends by itself when no cell moves.
const mostRounds = 200

// lloyd moves cells to the nearest centre and centres to the mean of their cells
// until nothing moves. Ties go to the lower index. Accents are left alone.
// Source: [Lloyd1982].
func (s *settled) lloyd() {
	for range mostRounds {
		moved := false
		for i := range s.cells {
			if s.accent[s.of[i]] {
				continue
			}
			if k := s.nearest(&s.cells[i].even); k != s.of[i] {
				s.of[i] = k
				moved = true
			}
		}
		s.recentre()
		if !moved {
			return
		}
	}
}

// nearest returns the centre nearest to e that is not an accent.
func (s *settled) nearest(e *even) uint8 {
	best, least := 0, math.MaxFloat64
	for k := range s.centres {
		if d := e.squared(&s.centres[k]); d < least && !s.accent[k] {
			best, least = k, d
		}
	}
	return uint8(best)
}

// recentre moves every centre to the mean of its cells. One that has lost all its
// cells takes the cell that is farthest, by its pixels, from its own.
func (s *settled) recentre() {
	sums := make([][4]float64, len(s.centres))
	for i := range s.cells {
		c, sum := &s.cells[i], &sums[s.of[i]]
		sum[0] += c.even[0] * c.pixels
		sum[1] += c.even[1] * c.pixels
		sum[2] += c.even[2] * c.pixels
		sum[3] += c.pixels
	}
	for k, sum := range sums {
		if sum[3] > 0 {
			s.centres[k] = even{sum[0] / sum[3], sum[1] / sum[3], sum[2] / sum[3]}
		} else {
			s.centres[k] = s.cells[s.farthest()].even
		}
	}
}

// farthest returns the cell with the largest squared error.
func (s *settled) farthest() int {
	best, most := 0, -1.0
	for i := range s.cells {
		if d := s.cells[i].even.squared(&s.centres[s.of[i]]) * s.cells[i].pixels; d > most {
			best, most = i, d
		}
	}
	return best
}

// sets returns the clusters that hold cells, centred on the mean Lab of their pixels.
func (s *settled) sets() clusters.Clusters {
	sets := make(clusters.Clusters, len(s.centres))
	for i := range s.cells {
		sets[s.of[i]].Append(&s.cells[i])
	}
	for k := range sets {
		sets[k].Center = centre(sets[k].Observations)
	}
	return sets
}

// centre returns the mean Lab of the cells' pixels. The library's own Center takes
// every observation as one; a cell stands for many pixels.
func centre(cells clusters.Observations) clusters.Coordinates {
	var sum cell
	for _, o := range cells {
		c := o.(*cell)
		sum.add(c.lab.L*c.pixels, c.lab.A*c.pixels, c.lab.B*c.pixels, c.pixels)
	}
	return clusters.Coordinates{sum.lab.L / sum.pixels, sum.lab.A / sum.pixels, sum.lab.B / sum.pixels}
}

// meanError returns the mean CIEDE2000 from the pixels to their cluster's centre,
// each pixel taken as the mean of its cell.
func meanError(sets clusters.Clusters) float64 {
	sum, pixels := 0.0, 0.0
	for _, set := range sets {
		for _, o := range set.Observations {
			c := o.(*cell)
			sum += c.pixels * c.Distance(set.Center)
			pixels += c.pixels
		}
	}
	return sum / pixels
}
