// What the tubes that were left out would have bought.

package match

import (
	"cmp"
	"math"
	"slices"

	"tonewright/analyze/colour"
)

// dropped returns every paint not kept and what it would buy, the most first.
func (c *chooser) dropped(kept []int, misses []float64) (dropped []DroppedPaint) {
	for p := range c.paints {
		if !slices.Contains(kept, p) {
			dropped = append(dropped, c.bought(p, kept, misses))
		}
	}
	slices.SortStableFunc(dropped, func(x, y DroppedPaint) int { return cmp.Compare(ties(y.Gain), ties(x.Gain)) })
	return dropped
}

// bought returns what a paint would buy. Only the aims that its mixes come nearer to
// than any without it are mixed for again.
func (c *chooser) bought(p int, kept []int, misses []float64) DroppedPaint {
	d := DroppedPaint{Paint: p}
	with := slices.Sorted(slices.Values(append([]int{p}, kept...)))
	aims := c.thrift.served(kept, with)
	again := make([]colour.Lab, len(aims))
	for i, a := range aims {
		again[i] = c.aims[a]
	}
	gains := make([]float64, len(c.aims))
	for i, r := range c.recipes(with, again) {
		a := aims[i]
		gains[a] = max(0, misses[a]-r.DeltaE)
		d.UpTo = max(d.UpTo, gains[a])
		if ties(gains[a]) >= ties(nearerBy) {
			d.Nearer = append(d.Nearer, a)
		}
	}
	d.Gain = c.mean(gains)
	slices.SortStableFunc(d.Nearer, func(a, b int) int { return cmp.Compare(ties(gains[b]), ties(gains[a])) })
	return d
}

// ties returns a CIEDE2000 in hundredths, the unit of tie.
func ties(deltaE float64) int32 { return int32(math.Round(deltaE / tie)) }
