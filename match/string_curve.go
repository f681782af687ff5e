// The way from one paint to another: every mix of the two, and points on it that are
// equally far apart to the eye.

package match

import (
	"math"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// A waypoint is a mix of two paints: its share of the second, 0-1, and its colour.
type waypoint struct {
	share float64
	lab   colour.Lab
}

// Where the way is sampled: at the ends, and between them at even steps of the
// logarithm of second to first from leastOdds to its inverse. Ours: over all pairs of
// the library a millionth of one paint in another moves it by 0.09 CIEDE2000 at most,
// two samples lie at most 1.4 apart, and the corner cut between them is under 0.01.
const (
	leastOdds  = 1e-6
	waySamples = 511
)

// way returns the way from a to b, by rising share of b.
func way(a, b *paint.Paint, finish paint.Finish) []waypoint {
	return sampled(a, b, leastOdds, waySamples, finish)
}

// sampled returns the way from a to b sampled between its ends at even steps of the
// logarithm of the odds of b, from least to its inverse.
func sampled(a, b *paint.Paint, least float64, samples int, finish paint.Finish) []waypoint {
	points := []waypoint{pointAt(a, b, 0, finish)}
	for i := range samples {
		odds := math.Log(least) * (1 - 2*float64(i)/float64(samples-1))
		points = append(points, pointAt(a, b, 1/(1+math.Exp(-odds)), finish))
	}
	return append(points, pointAt(a, b, 1, finish))
}

// pointAt returns the mix of a share of b with a.
func pointAt(a, b *paint.Paint, share float64, finish paint.Finish) waypoint {
	return waypoint{share, labOf([]paint.Paint{*a, *b}, []float64{1 - share, share}, finish)}
}

// evenGap returns the CIEDE2000 between neighbours when count points lie on a way, its
// ends included, each as far from the next as the others. count ≥ 2.
// It is found by halving: too short a stride leaves some of the way over, too long a
// one does not fit count - 1 times.
func evenGap(points []waypoint, count int) float64 {
	short, long := 0.0, 0.0
	for i := 1; i < len(points); i++ {
		long += colour.DeltaE00(points[i-1].lab, points[i].lab)
	}
	for range 40 { // to under a millionth
		length := (short + long) / 2
		if len(strides(points, count, length)) < count {
			long = length
		} else {
			short = length
		}
	}
	return short
}

// strides goes along a way in strides of one length and returns where it stands, the
// start first: count points, or fewer where the way ends before.
func strides(points []waypoint, count int, length float64) []waypoint {
	at := []waypoint{points[0]}
	from := points[0]
	for i := 1; i < len(points) && len(at) < count; {
		last := at[len(at)-1]
		if colour.DeltaE00(last.lab, points[i].lab) < length {
			from, i = points[i], i+1
			continue
		}
		from = between(from, points[i], last.lab, length)
		at = append(at, from)
	}
	return at
}

// between returns the point between two neighbours that is so far from a colour.
func between(a, b waypoint, from colour.Lab, length float64) waypoint {
	low, high := 0.0, 1.0
	for range 30 {
		t := (low + high) / 2
		if colour.DeltaE00(from, towards(a, b, t).lab) < length {
			low = t
		} else {
			high = t
		}
	}
	return towards(a, b, high)
}

// towards returns the point a share t of the way from a to its neighbour b.
func towards(a, b waypoint, t float64) waypoint {
	mix := func(x, y float64) float64 { return x + t*(y-x) }
	return waypoint{mix(a.share, b.share), colour.Lab{L: mix(a.lab.L, b.lab.L), A: mix(a.lab.A, b.lab.A), B: mix(a.lab.B, b.lab.B)}}
}
