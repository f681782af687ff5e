package analyze

import (
	"math"

	"github.com/muesli/clusters"
)

// settled is a clustering of cells in the even space.
type settled struct {
	cells   []cell
	centres []even
	of      []uint8 // of[i]: centre of cell i
}

// settle clusters the cells: the number opt fixes, or as few as keep its error.
func settle(cells []cell, opt ClusterOptions) *settled {
	s := &settled{cells: cells, of: make([]uint8, len(cells))}
	s.centres = []even{s.mean(0)}
	fewest, most := fewestColours, mostColours
	if opt.Colours > 0 {
		fewest, most = opt.Colours, opt.Colours
	}
	for len(s.centres) < most && len(s.centres) < len(cells) {
		if len(s.centres) >= fewest && meanError(s.sets()) <= opt.Error {
			break
		}
		if !s.split() {
			break
		}
		s.lloyd()
	}
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
		if sum := e[0] + e[1] + e[2]; sum > most {
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
	return true
}

// mostRounds bounds Lloyd's iteration, which ends by itself when no cell moves.
const mostRounds = 200

// lloyd moves cells to the nearest centre and centres to the mean of their cells
// until nothing moves. Ties go to the lower index. Source: [Lloyd1982].
func (s *settled) lloyd() {
	sums := make([][4]float64, len(s.centres))
	for range mostRounds {
		clear(sums)
		moved := false
		for i := range s.cells {
			c := &s.cells[i]
			best, least := 0, math.MaxFloat64
			for k := range s.centres {
				if d := c.even.squared(&s.centres[k]); d < least {
					best, least = k, d
				}
			}
			if int(s.of[i]) != best {
				s.of[i] = uint8(best)
				moved = true
			}
			sum := &sums[best]
			sum[0] += c.even[0] * c.pixels
			sum[1] += c.even[1] * c.pixels
			sum[2] += c.even[2] * c.pixels
			sum[3] += c.pixels
		}
		for k := range s.centres {
			if sums[k][3] > 0 {
				s.centres[k] = even{sums[k][0] / sums[k][3], sums[k][1] / sums[k][3], sums[k][2] / sums[k][3]}
			}
		}
		if !moved {
			return
		}
	}
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
