package analyze

import (
	"math"

	"github.com/muesli/clusters"

	"tonewright/analyze/colour"
)

// settled is a clustering of cells in the even space.
type settled struct {
	cells   []cell
	centres []even
	of      []uint8 // of[i]: centre of cell i
	accent  []bool  // by centre: its cells are no longer moved
	blur    float64 // see blurOf
}

// Two colours nearer than this, in CIEDE2000, cannot be told apart side by side
// (common practice: about 1); only a fixed number of colours keeps them apart.
const alike = 1

// Ours: an error this much over what is asked for is tried to be mended before a
// colour is added.
const nearlyEnough = 1.1

// Ours: a cluster whose own error is this many times what is asked for is a mean of
// colours that look nothing alike, such as a brown for dark and orange, and is cut
// however small it is.
const unlike = 2.5

// settle clusters the cells into the number opt fixes.
func settle(cells []cell, blur float64, number int) *settled {
	s := start(cells, blur)
	for len(s.centres) < number && s.split() {
		s.lloyd(fewRounds)
	}
	s.lloyd(mostRounds)
	s.mend()
	return s
}

// settleFor clusters the cells into as few clusters, 3 to 8, as keep the error.
// Clusters that look alike are joined, which can leave fewer than 3.
func settleFor(cells []cell, blur, limit float64) *settled {
	s := start(cells, blur)
	for len(s.centres) < mostColours {
		if len(s.centres) >= fewestColours {
			s.lloyd(mostRounds)
			e := s.meanError()
			if e > limit && e <= limit*nearlyEnough && s.mend() {
				e = s.meanError()
			}
			if e <= limit && s.worstError() <= unlike*limit {
				break
			}
		}
		if !s.split() {
			break
		}
		s.lloyd(fewRounds)
	}
	if len(s.centres) == mostColours {
		s.lloyd(mostRounds)
		s.mend()
	}
	s.joinAlike()
	return s
}

// start returns the cells as one cluster.
func start(cells []cell, blur float64) *settled {
	s := &settled{cells: cells, of: make([]uint8, len(cells)), accent: make([]bool, 1), blur: blur}
	s.centres = []even{s.mean(0)}
	return s
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

// oneColour is the squared error under which a cluster is one colour, but for rounding.
const oneColour = 1e-9

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
	worst, most := -1, oneColour
	for k, e := range spread {
		if sum := e[0] + e[1] + e[2]; sum > most && !s.accent[k] {
			worst, most = k, sum
		}
	}
	if worst < 0 {
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

// sets hands the clusters on with their cells, centred on the mean Lab of their
// pixels. The library's own Recenter takes every observation as one; a cell stands for
// many pixels.
func (s *settled) sets() clusters.Clusters {
	sets := make(clusters.Clusters, len(s.centres))
	for i := range s.cells {
		sets[s.of[i]].Append(&s.cells[i])
	}
	for k, m := range s.means() {
		sets[k].Center = m.Coordinates()
	}
	return sets
}

// meanError returns the mean CIEDE2000 from the pixels to the mean Lab of their
// cluster.
func (s *settled) meanError() float64 {
	sum, pixels := 0.0, 0.0
	for _, e := range s.errors() {
		sum += e.sum
		pixels += e.pixels
	}
	return sum / pixels
}

// worstError returns the largest mean error of a cluster.
func (s *settled) worstError() float64 {
	worst := 0.0
	for _, e := range s.errors() {
		worst = max(worst, e.sum/e.pixels)
	}
	return worst
}

// clusterError is the CIEDE2000 summed over a cluster's pixels.
type clusterError struct{ sum, pixels float64 }

// errors returns the error of each cluster: cell by cell, and for the pixels'
// distance from their cell, blur added in squares.
func (s *settled) errors() []clusterError {
	means := s.means()
	errors := make([]clusterError, len(means))
	for i := range s.cells {
		c, e := &s.cells[i], &errors[s.of[i]]
		d := colour.DeltaE00(c.lab, means[s.of[i]].lab)
		e.sum += c.pixels * math.Sqrt(d*d+s.blur)
		e.pixels += c.pixels
	}
	return errors
}

// means returns for each cluster its pixels and their mean Lab.
func (s *settled) means() []cell {
	means := make([]cell, len(s.centres))
	for i := range s.cells {
		c := &s.cells[i]
		means[s.of[i]].add(c.lab.L*c.pixels, c.lab.A*c.pixels, c.lab.B*c.pixels, c.pixels)
	}
	for k := range means {
		m := &means[k]
		m.lab = colour.Lab{L: m.lab.L / m.pixels, A: m.lab.A / m.pixels, B: m.lab.B / m.pixels}
	}
	return means
}
