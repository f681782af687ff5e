package analyze

// Layer is a region's outer border, to be laid over others.
type Layer struct {
	Region int // index in Parting.Regions
	Rings  [][]Place
}

// Layers returns the outer borders of a parting whose regions are each in one piece, as
// found ones are, in the order in which laying them one over the other gives the parting
// back: the largest region first, but none before one that it lies inside of. Borders of
// holes are thus not needed, nor any of the first region's: it is the whole picture.
// Regions without pixels have no layer; of regions that lie inside each other, which
// takes one in pieces, those that lie inside the fewest come first. tolerance is that of Outlines; a region so thin
// that it would vanish keeps its border as it is.
func Layers(parting Parting, width, height int, tolerance float64) []Layer {
	exact, simple := Outlines(parting, width, height, 0), Outlines(parting, width, height, tolerance)
	for r := range exact {
		exact[r], simple[r] = outer(exact[r]), outer(simple[r])
		if len(simple[r]) == 0 {
			simple[r] = exact[r]
		}
	}
	var layers []Layer
	for _, r := range outsideFirst(parting, insides(parting, exact, width, height)) {
		layers = append(layers, Layer{r, simple[r]})
	}
	if len(layers) > 0 {
		w, h := float64(width), float64(height)
		layers[0].Rings = [][]Place{{{0, 0}, {w, 0}, {w, h}, {0, h}}}
	}
	return layers
}

// Behind returns the regions that have pixels in the order of Layers: what lies behind, or
// may, comes before what lies before it.
func Behind(parting Parting, width, height int) []int {
	exact := Outlines(parting, width, height, 0)
	for r := range exact {
		exact[r] = outer(exact[r])
	}
	return outsideFirst(parting, insides(parting, exact, width, height))
}

// insides lists for each region those that lie inside of its outer borders.
func insides(parting Parting, outer [][][]Place, width, height int) [][]int {
	in := make([][]int, len(outer))
	for r := range outer {
		in[r] = others(parting, width, inside(outer[r], width, height), r)
	}
	return in
}

// outer returns the rings that run clockwise, as a region's outer borders do and those
// of its holes do not.
func outer(rings [][]Place) [][]Place {
	var result [][]Place
	for _, ring := range rings {
		twice := 0.0 // the area; of whole numbers
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			twice += p.X*q.Y - q.X*p.Y
		}
		if twice > 0 {
			result = append(result, ring)
		}
	}
	return result
}

// others lists the regions other than r that have pixels in the stretches.
func others(parting Parting, width int, in []dash, r int) []int {
	has := make([]bool, len(parting.Regions))
	for _, s := range in {
		for _, other := range parting.Of[s.y*width+s.from : s.y*width+s.to] {
			has[other] = true
		}
	}
	var list []int
	for other, is := range has {
		if is && other != r {
			list = append(list, other)
		}
	}
	return list
}

// outsideFirst orders the regions that have pixels by size, each after those it lies
// inside of; ties by index.
func outsideFirst(parting Parting, around [][]int) []int {
	waits := make([]int, len(around)) // for so many regions that are not yet listed
	for _, inside := range around {
		for _, r := range inside {
			waits[r]++
		}
	}
	sooner := func(r, than int) bool {
		if waits[r] != waits[than] {
			return waits[r] < waits[than]
		}
		return parting.Regions[r].Pixels > parting.Regions[than].Pixels
	}
	var order []int
	for listed := make([]bool, len(around)); ; {
		next := -1
		for r, region := range parting.Regions {
			if !listed[r] && region.Pixels > 0 && (next < 0 || sooner(r, next)) {
				next = r
			}
		}
		if next < 0 {
			return order
		}
		listed[next] = true
		order = append(order, next)
		for _, r := range around[next] {
			waits[r]--
		}
	}
}
