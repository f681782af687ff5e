package analyze

import (
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"github.com/muesli/clusters"

	"tonewright/analyze/colour"
)

// The number of colours a region is painted with when no number is asked for.
const (
	fewestColours = 3
	mostColours   = 8
)

// enoughError is the mean error a region may have, in CIEDE2000, when none is asked for.
const enoughError = 4

// Cluster is the pixels of a region that are painted with one mix.
type Cluster struct {
	Lab    colour.Lab // mean of the pixels
	Pixels int        // at least 1
	Accent bool       // small but telling, such as a highlight: see accents
}

// Clustering is the colours of every region.
// Of[i] is the index, in its region's clusters, of pixel i.
// Clusters[r] is light to dark; it is empty only for a region without pixels.
type Clustering struct {
	Of       []uint8
	Clusters [][]Cluster
}

// ClusterOptions is how many colours a region gets.
type ClusterOptions struct {
	Colours int     // a fixed number, at most 255; 0 means as few of 3 to 8 as keep Error
	Error   float64 // mean CIEDE2000 over the region's pixels; 0 means 4
}

// Clusters returns the colours of each region: a clustering in a space where a
// straight distance is near CIEDE2000 (see evenly), on a histogram of the region.
// A region with fewer distinct colours than asked for gets that many; in a large one,
// colours about 1 CIEDE2000 apart can count as one.
// Regions are worked on side by side; the outcome does not depend on how many at once.
func Clusters(p *Picture, parting Parting, opt ClusterOptions) Clustering {
	if opt.Error == 0 {
		opt.Error = enoughError
	}
	opt.Colours = min(opt.Colours, 255) // what Clustering.Of can count
	found := Clustering{Of: make([]uint8, len(parting.Of)), Clusters: make([][]Cluster, len(parting.Regions))}
	pixels := pixelsOf(parting)
	each(bySize(pixels), func(r int) {
		found.Clusters[r] = clusterRegion(p, pixels[r], parting.Of, opt, found.Of)
	})
	return found
}

// pixelsOf returns the pixels of each region in rising order.
func pixelsOf(parting Parting) [][]int32 {
	pixels := make([][]int32, len(parting.Regions))
	all := make([]int32, len(parting.Of))
	next := 0
	for r, region := range parting.Regions {
		pixels[r] = all[next : next : next+region.Pixels]
		next += region.Pixels
	}
	for i, r := range parting.Of {
		pixels[r] = append(pixels[r], int32(i))
	}
	return pixels
}

// bySize returns the regions with the most pixels first, so that none starts late.
func bySize(pixels [][]int32) []int {
	order := make([]int, len(pixels))
	for r := range order {
		order[r] = r
	}
	slices.SortStableFunc(order, func(a, b int) int { return len(pixels[b]) - len(pixels[a]) })
	return order
}

// each calls work for every number of order, as many at once as there are processors.
func each(order []int, work func(int)) {
	var next atomic.Int64
	var wait sync.WaitGroup
	for range min(len(order), runtime.GOMAXPROCS(0)) {
		wait.Go(func() {
			for n := next.Add(1) - 1; int(n) < len(order); n = next.Add(1) - 1 {
				work(order[n])
			}
		})
	}
	wait.Wait()
}

// clusterRegion returns the clusters of one region, light to dark, and writes the
// number of each of its pixels to of. region is the parting's Of.
func clusterRegion(p *Picture, pixels []int32, region []uint8, opt ClusterOptions, of []uint8) []Cluster {
	if len(pixels) == 0 {
		return []Cluster{}
	}
	cells, cellOf := cellsOf(p, pixels)
	blur := blurOf(p, pixels, cells, cellOf)
	in := &clump{pixels: pixels, cellOf: cellOf, region: region, width: p.Width}
	var s *settled
	if opt.Colours > 0 {
		s = settle(cells, blur, opt.Colours)
		s.keepAccents(in, opt.Colours, accentCostFixed)
	} else {
		s = settleFor(cells, blur, opt.Error)
		s.keepAccents(in, mostColours, accentCost)
	}
	s.polish()
	found := make([]Cluster, 0, len(s.centres))
	sets := s.sets()
	order := lightToDark(sets)
	rank := make([]uint8, len(sets))
	for n, k := range order {
		rank[k] = uint8(n)
		found = append(found, Cluster{Lab: labOf(sets[k].Center), Pixels: weigh(sets[k].Observations), Accent: s.accent[k]})
	}
	for j, i := range pixels {
		of[i] = rank[s.of[cellOf[j]]]
	}
	return found
}

// lightToDark returns the order of the clusters by falling L*, ties by index.
func lightToDark(sets clusters.Clusters) []int {
	order := make([]int, len(sets))
	for k := range order {
		order[k] = k
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch la, lb := sets[a].Center[0], sets[b].Center[0]; {
		case la > lb:
			return -1
		case la < lb:
			return 1
		}
		return 0
	})
	return order
}

// weigh returns how many pixels the cells hold.
func weigh(cells clusters.Observations) int {
	pixels := 0.0
	for _, c := range cells {
		pixels += c.(*cell).pixels
	}
	return int(pixels)
}
