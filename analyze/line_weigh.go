// What a line weighs: by its slope and by how its two sides differ.

package analyze

import (
	"math"

	"tonewright/analyze/colour"
)

// How a line's two sides are looked at. Ours: from beside the edge's own slope to 3 mm
// away on a 12-inch panel, and about a centimetre along it to each hand.
// Over that grain, checks and the fibres of wood are alike on both sides, or change
// sides along the line, and cancel.
const (
	sideFrom  = 1.5 // pixels of the sketch
	sideSteps = 5   // of a pixel each
	sideAlong = 10  // places, a pixel or two apart
)

// contrasts returns how far the colours on the two sides of a line are apart at each of
// its places, in the even space of the planes. Differences are summed along the line
// with their signs before their length is taken.
// Source: the difference of two half-discs along a boundary, [Martin2004], by means
// instead of histograms and along lines only.
func contrasts(planes [3][]float32, width, height int, places []Place, closed bool) []float64 {
	n := len(places)
	at := func(i int) Place {
		if closed {
			return places[(i+n)%n]
		}
		return places[min(max(0, i), n-1)]
	}
	apart := newSums(n)
	for i, p := range places {
		way := at(i - 2).towards(at(i + 2))
		left, leftSteps := bandMean(planes, width, height, p, Place{way.Y, -way.X})
		right, rightSteps := bandMean(planes, width, height, p, Place{-way.Y, way.X})
		share := float64(min(leftSteps, rightSteps)) / sideSteps // at the frame little is seen of one side
		apart.put(i, colour.Lab{L: (left.L - right.L) * share, A: (left.A - right.A) * share, B: (left.B - right.B) * share})
	}
	result := make([]float64, n)
	for i := range result {
		from, to := max(0, i-sideAlong), min(n, i+sideAlong+1)
		if closed {
			along := min(sideAlong, n/4)
			from, to = i-along, i+along+1
		}
		m := apart.mean(from, to)
		result[i] = math.Sqrt(float64(m.L*m.L) + float64(m.A*m.A) + float64(m.B*m.B))
	}
	return result
}

// bandMean returns the mean colour on one side of a place, and over how many steps it
// was taken before the picture ended.
func bandMean(planes [3][]float32, width, height int, at, way Place) (mean colour.Lab, steps int) {
	for ; steps < sideSteps; steps++ {
		beside := at.plus(way, sideFrom+float64(steps))
		x, y := int(math.Floor(beside.X)), int(math.Floor(beside.Y))
		if x < 0 || y < 0 || x >= width || y >= height {
			break
		}
		i := y*width + x
		mean.L, mean.A, mean.B = mean.L+float64(planes[0][i]), mean.A+float64(planes[1][i]), mean.B+float64(planes[2][i])
	}
	n := float64(max(1, steps))
	return colour.Lab{L: mean.L / n, A: mean.A / n, B: mean.B / n}, steps
}

// What a place of a line weighs, in colour a pixel. Ours.
const (
	mostWeight    = 6 // a strong edge is one; that another is stronger makes it no longer
	contrastShare = 1.0 / 3
	noWeight      = 0.3 // what grain weighs
)

// weights returns what each place of a stroke adds to its strength: how steep the edge
// is, or how far its sides are apart, whichever says less.
func weights(s *stroke, planes [3][]float32, width, height int) []float64 {
	weight := contrasts(planes, width, height, s.places, s.closed)
	for i, c := range weight {
		weight[i] = max(0, min(mostWeight, float64(s.heights[i]), contrastShare*c)-noWeight)
	}
	return weight
}

// onBorder returns the share of a line along which its two sides are of two regions.
func onBorder(parting Parting, p *Picture, places []Place) float64 {
	on := 0.0
	for i, at := range places {
		way := places[max(0, i-1)].towards(places[min(i+1, len(places)-1)])
		a := pixelAt(at.plus(Place{way.Y, -way.X}, borderReach), p.Width, p.Height)
		b := pixelAt(at.plus(Place{-way.Y, way.X}, borderReach), p.Width, p.Height)
		if parting.Of[a] != parting.Of[b] {
			on++
		}
	}
	return on / float64(len(places))
}

// A contour on the border of two regions weighs more by this share. Ours.
const (
	borderReach  = 4 // pixels that the border may be off
	borderWeight = 1
)
