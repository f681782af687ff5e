// The colours of each region: as photographed, or its values only.

package plan

import (
	"slices"

	"tonewright/analyze"
	"tonewright/analyze/colour"
)

// clustersOf finds the colours of each region. A region that is painted for its values
// is parted by them alone, whatever colours it has; each part then has the mean colour
// of its place in the photo.
func clustersOf(p *analyze.Picture, parting analyze.Parting, opt Options) analyze.Clustering {
	byValue := make([]bool, len(parting.Regions))
	for r, w := range opt.Regions[:min(len(opt.Regions), len(byValue))] {
		byValue[r] = w.aim() == AimValue
	}
	return clustersBy(byValue, p, parting, opt)
}

// clustersBy parts each region by its colours or by its values alone.
func clustersBy(byValue []bool, p *analyze.Picture, parting analyze.Parting, opt Options) analyze.Clustering {
	options := analyze.ClusterOptions{Colours: opt.Colours}
	if !slices.Contains(byValue, true) {
		return analyze.Clusters(p, parting, options)
	}
	gray := *p
	gray.Lab = slices.Clone(p.Lab)
	for i, r := range parting.Of {
		if byValue[r] {
			gray.Lab[3*i+1], gray.Lab[3*i+2] = 0, 0
		}
	}
	c := analyze.Clusters(&gray, parting, options)
	for r, means := range meansOf(p, parting, c) {
		for j := range c.Clusters[r] {
			if byValue[r] {
				c.Clusters[r][j].Lab = means[j]
			}
		}
	}
	return c
}

// everywhere is true for each region.
func everywhere(parting analyze.Parting) []bool {
	return slices.Repeat([]bool{true}, len(parting.Regions))
}

// meansOf returns the mean colour of each region's clusters.
func meansOf(p *analyze.Picture, parting analyze.Parting, c analyze.Clustering) [][]colour.Lab {
	sums := make([][]colour.Lab, len(c.Clusters))
	for r := range sums {
		sums[r] = make([]colour.Lab, len(c.Clusters[r]))
	}
	for i, r := range parting.Of {
		at, sum := p.At(i), &sums[r][c.Of[i]]
		sum.L, sum.A, sum.B = sum.L+at.L, sum.A+at.A, sum.B+at.B
	}
	for r := range sums {
		for j, cluster := range c.Clusters[r] {
			n, sum := float64(cluster.Pixels), &sums[r][j]
			sum.L, sum.A, sum.B = sum.L/n, sum.A/n, sum.B/n
		}
	}
	return sums
}
