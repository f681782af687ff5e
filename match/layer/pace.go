// How fast a pile of paints dries.

package layer

import (
	"math"
	"slices"

	"tonewright/match/paint"
)

// paceOf returns the days until a thin coat of the mix is touch dry indoors, and the index
// of the paint it waits for.
func paceOf(c Coat) (days Range, slowest int) {
	shares := sharesOf(c)
	quick := mean(c.Paints, driersFirst(c.Paints, shares, 6), 0)
	long := mean(c.Paints, driersFirst(c.Paints, shares, 2), 1)
	slow, best := 0.0, -1.0
	for i, p := range c.Paints {
		own := math.Log(float64(p.Facts.TouchDry[1]))
		if over := counts(shares[i]) * max(own-long, 0); over > slow {
			slow = over
		}
		if by := counts(shares[i]) * (own + 3); by > best+1e-9 {
			best, slowest = by, i
		}
	}
	return Range{math.Exp(quick), math.Exp(long + slow)}, slowest
}

// counts returns how much of a paint's own pace a share of it imposes on the pile, 0-1.
func counts(share float64) float64 {
	return min(max((share-1./32)/(1./4-1./32), 0), 1)
}

// sharesOf returns the share of each paint, by volume; they sum to 1.
func sharesOf(c Coat) []float64 {
	whole := 0.0
	for _, p := range c.Parts {
		whole += p
	}
	shares := make([]float64, len(c.Parts))
	for i, p := range c.Parts {
		shares[i] = p / whole
	}
	return shares
}

// mean returns the mean logarithm of days by weights that sum to 1.
func mean(paints []paint.Paint, weights []float64, end int) (sum float64) {
	for i, p := range paints {
		sum += weights[i] * math.Log(float64(p.Facts.TouchDry[end]))
	}
	return sum
}

// driersFirst returns the shares with those of driers counting so many times, summing to 1.
func driersFirst(paints []paint.Paint, shares []float64, times float64) []float64 {
	weights, whole := slices.Clone(shares), 0.0
	for i, p := range paints {
		if drier(p) {
			weights[i] *= times
		}
		whole += weights[i]
	}
	for i := range weights {
		weights[i] /= whole
	}
	return weights
}

// drier tells whether a paint speeds the drying of those it is mixed with: a fast one with
// manganese, cobalt or lead.
func drier(p paint.Paint) bool {
	return p.Facts.Drying == "fast" && slices.ContainsFunc(p.Facts.Hazards, func(metal string) bool {
		return metal == "manganese" || metal == "cobalt" || metal == "lead"
	})
}
