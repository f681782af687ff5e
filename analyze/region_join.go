package analyze

import (
	"math"
	"slices"
)

// patch is an area as it grows out of superpixels.
type patch struct {
	colour  even // mean
	pixels  float64
	borders []border // with the patches it touches; none once it is joined to another
	into    int      // the patch it was joined to, itself before
	cost    float64  // least cost of joining it to a neighbour
	best    int      // that neighbour
}

// border is what two patches share.
type border struct {
	to    int
	sides float64 // length in pixel sides
	step  float64 // sum of the colour distance across them
}

// Ours: an area under this share of the picture is hardly one to plan for; the
// smaller it is, the less it costs to join it to a neighbour.
const smallAreaShare = 0.006

// Ours: two areas whose means are nearer than this look the same; about a CIEDE2000.
const sameArea = 3

// Ours: areas are worth keeping apart if joining two would add this much to the mean
// squared distance of the pixels from their area's colour ...
const worthApart = 5.8

// ... or, in a picture of little contrast, this share of what its pixels are from the
// colour of the whole. Both were set by eye on eleven photos of flowers, still life and
// landscape.
const worthApartShare = 1.0 / 60

// Ours: this much of what a join adds counts where there is no edge at all. With more,
// light that falls off cuts a wall in two, and its dim end goes to a dark thing beside
// it: of the demo and 35 parts of it, lighter and darker too, 93 pixels in 100 lie in
// a region that is mostly of their thing with 0.25, 96 with 0.1. With less, the bright
// sky of a photo of dandelions goes to a bright flower.
const edgeless = 0.1

// joined returns the areas of the sketch: the connected superpixels, joined two at a
// time at the least cost until the areas that are left differ.
func joined(s *sketch, of []uint16) []uint8 {
	step := len(of) / superpixelCount
	q := partsOf(of, s.width, s.height)
	q.absorb(of, q.under(step/4), step/4)
	q = partsOf(of, s.width, s.height)
	patches := patchesOf(s, q)
	history := joinAll(patches, float64(len(of)))
	return areasOf(q, patches, history)
}

// patchesOf returns the connected superpixels with their borders.
func patchesOf(s *sketch, q *parts[uint16]) []patch {
	part := make([]int32, s.width*s.height)
	patches := make([]patch, len(q.pixels))
	for _, r := range q.runs {
		to := &patches[r.part]
		for x := int(r.y)*s.width + int(r.from); x < int(r.y)*s.width+int(r.to); x++ {
			part[x] = r.part
			for k, v := range s.colours[x] {
				to.colour[k] += v
			}
		}
	}
	for n := range patches {
		patches[n].into = n
		patches[n].pixels = float64(q.pixels[n])
		for k := range patches[n].colour {
			patches[n].colour[k] /= patches[n].pixels
		}
	}
	meet := func(i, j int) {
		a, b := int(part[i]), int(part[j])
		if a == b {
			return
		}
		d := math.Sqrt(s.colours[i].squared(&s.colours[j]))
		patches[a].meet(border{b, 1, d})
		patches[b].meet(border{a, 1, d})
	}
	for y := range s.height {
		for x := range s.width {
			i := y*s.width + x
			if x+1 < s.width {
				meet(i, i+1)
			}
			if y+1 < s.height {
				meet(i, i+s.width)
			}
		}
	}
	return patches
}

// meet adds to the border with a patch.
func (p *patch) meet(b border) {
	for k := range p.borders {
		if p.borders[k].to == b.to {
			p.borders[k].sides += b.sides
			p.borders[k].step += b.step
			return
		}
	}
	p.borders = append(p.borders, b)
}

// ward returns the squared error that joining two patches adds. Source: [Ward1963].
func ward(a, b *patch) float64 {
	return a.pixels * b.pixels / (a.pixels + b.pixels) * a.colour.squared(&b.colour)
}

// joinCost is what joining two patches costs: what it adds to the mean squared error
// of the picture, less where there is no edge between them, and less for a small
// patch. Edge and size are ours: without the edge, a soft background is cut into
// bands.
func joinCost(a, b *patch, with border, pixels float64) float64 {
	far := math.Sqrt(a.colour.squared(&b.colour))
	edge := math.Min(1, with.step/with.sides/(far+1e-9))
	size := math.Min(1, math.Min(a.pixels, b.pixels)/(smallAreaShare*pixels))
	return ward(a, b) / pixels * (edgeless + (1-edgeless)*edge) * size
}

// seek finds the neighbour it costs least to join, ties to the lower number.
func seek(patches []patch, n int, pixels float64) {
	p := &patches[n]
	p.cost, p.best = math.MaxFloat64, -1
	for _, b := range p.borders {
		c := joinCost(p, &patches[b.to], b, pixels)
		if c < p.cost || c == p.cost && b.to < p.best {
			p.cost, p.best = c, b.to
		}
	}
}

// join is one step of the joining: from goes into to.
type join struct {
	from, to int
	cost     float64
	added    float64 // to the mean squared error
	apart    float64 // distance of the two means
}

// joinAll joins patches until one is left, and returns the steps.
func joinAll(patches []patch, pixels float64) []join {
	for n := range patches {
		seek(patches, n, pixels)
	}
	var history []join
	for range len(patches) - 1 {
		from := -1
		for n := range patches {
			if patches[n].into == n && patches[n].best >= 0 && (from < 0 || patches[n].cost < patches[from].cost) {
				from = n
			}
		}
		to := patches[from].best
		from, to = max(from, to), min(from, to)
		a, b := &patches[from], &patches[to]
		history = append(history, join{from, to, a.cost, ward(a, b) / pixels, math.Sqrt(a.colour.squared(&b.colour))})
		unite(patches, from, to, pixels)
	}
	return history
}

// unite joins from into to and mends the borders around both.
func unite(patches []patch, from, to int, pixels float64) {
	a, b := &patches[from], &patches[to]
	sum := a.pixels + b.pixels
	for k := range b.colour {
		b.colour[k] = (a.colour[k]*a.pixels + b.colour[k]*b.pixels) / sum
	}
	b.pixels = sum
	a.into = to
	drop := func(p *patch, n int) {
		p.borders = slices.DeleteFunc(p.borders, func(d border) bool { return d.to == n })
	}
	drop(b, from)
	for _, d := range a.borders {
		if d.to == to {
			continue
		}
		b.meet(d)
		drop(&patches[d.to], from)
		patches[d.to].meet(border{to, d.sides, d.step})
	}
	a.borders = nil
	seek(patches, to, pixels)
	for _, d := range b.borders {
		seek(patches, d.to, pixels)
	}
}

// areasOf takes the joining as far as areas differ and returns the number of each
// pixel's area.
func areasOf(q *parts[uint16], patches []patch, history []join) []uint8 {
	left := areaCount(history)
	into := make([]int, len(patches))
	for n := range into {
		into[n] = n
	}
	for _, j := range history[:len(patches)-left] {
		into[j.from] = j.to
	}
	number := make([]uint8, len(patches))
	next := uint8(0)
	for n := range into {
		if into[n] == n {
			number[n] = next
			next++
		} else {
			number[n] = number[into[n]] // into[n] < n
		}
	}
	of := make([]uint8, q.width*q.height)
	for _, r := range q.runs {
		for x := int(r.y)*q.width + int(r.from); x < int(r.y)*q.width+int(r.to); x++ {
			of[x] = number[r.part]
		}
	}
	return of
}

// areaCount returns the number of areas, from 4 to 10, at which the next join would
// join areas worth keeping apart; under 4 only if what it joins looks the same.
func areaCount(history []join) int {
	whole := 0.0 // the costs add up to the mean squared error of one area
	for _, j := range history {
		whole += j.added
	}
	worth := math.Min(worthApart, worthApartShare*whole)
	for n, j := range history {
		areas := len(history) + 1 - n
		if areas <= mostAreas && j.apart >= sameArea && (j.cost >= worth || areas <= fewestAreas) {
			return areas
		}
	}
	return 1
}
