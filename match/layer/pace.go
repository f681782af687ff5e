// How fast a mix of paints dries.

package layer

import (
	"math"
	"slices"

	"tonewright/match/paint"
)

// How much sooner a drier makes the rest dry is not known to better than this: at the early
// end its share counts so many times, at the late end so many. Ours. That little does much
// is told by [Gardner1911] chapter II, where driers are dosed by hundredths of the oil, and
// by [Uebele1913] on umber: it dries oil strongly without being heated with it.
const drierEarly, drierLate = 6, 2

// From which share on a slow paint begins to hold up the pile, and from which on it sets
// its pace alone. Ours: a touch (1/32) does not, one part in four does.
const slowFrom, slowWhole = 1. / 32, 1. / 4

// waitsFrom is the least share of a paint that the pile is said to wait for: one part of 12.
const waitsFrom = 1. / 12

// pace returns the days until a thin coat of the mix is touch dry indoors. The early end
// is the mean of its paints' early ends, by share and in logarithms, driers counting more;
// the late end that of their late ends, held up by the slowest that is not a speck.
func (c Coat) pace() Range {
	shares := c.shares()
	early, late := driersMore(c.Paints, shares, drierEarly), driersMore(c.Paints, shares, drierLate)
	var quick, long, held float64
	for i := range c.Paints {
		quick += early[i] * logDays(c.Paints[i], 0)
		long += late[i] * logDays(c.Paints[i], 1)
	}
	for i := range c.Paints {
		over := dried(c.Paints, late, i) - long
		held = max(held, over*min(max((shares[i]-slowFrom)/(slowWhole-slowFrom), 0), 1))
	}
	return Range{math.Exp(quick), math.Exp(long + held)}
}

// slowest returns the index of the paint that the mix waits for: the slowest of those that
// are not a speck, of equals the one with the larger share, then the first.
func (c Coat) slowest() int {
	shares := c.shares()
	least := min(waitsFrom, slices.Max(shares)) - 1e-9
	found := -1
	for i, p := range c.Paints {
		if shares[i] < least {
			continue
		}
		if found < 0 {
			found = i
			continue
		}
		a, b := p.Facts.TouchDry, c.Paints[found].Facts.TouchDry
		switch order := slices.Compare([]int{a[1], a[0]}, []int{b[1], b[0]}); {
		case order > 0, order == 0 && shares[i] > shares[found]+1e-9:
			found = i
		}
	}
	return found
}

// dried returns the logarithm of the late days of one paint as the driers of the pile
// speed it.
func dried(paints []paint.Paint, weights []float64, i int) float64 {
	days := logDays(paints[i], 1)
	for k, p := range paints {
		if drier(p) {
			days -= weights[k] * (logDays(paints[i], 1) - logDays(p, 1))
		}
	}
	return days
}

// driersMore returns the shares with those of driers counting so many times; they sum to 1.
func driersMore(paints []paint.Paint, shares []float64, times float64) []float64 {
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

// driers are the hazard keys of the pigments whose metal speeds the drying of oil: lead,
// cobalt, manganese, and the iron of Prussian blue.
// Source: [Wehlte1975] p. 65.
var driers = []string{"lead", "cobalt", "manganese", "cyanide"}

// drier tells whether a paint speeds the drying of those it is mixed with. Only a fast one
// does: in cerulean and cobalt green the metal is too firmly bound (ours, by their pace).
func drier(p paint.Paint) bool {
	return p.Facts.Drying == "fast" && slices.ContainsFunc(p.Facts.Hazards, func(key string) bool { return slices.Contains(driers, key) })
}

// logDays returns the logarithm of the days until a thin coat of one paint is touch dry:
// end 0 the early end, 1 the late one.
func logDays(p paint.Paint, end int) float64 { return math.Log(float64(p.Facts.TouchDry[end])) }
