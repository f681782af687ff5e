// Which coats another lies on, and how long it rests on them.

package plan

import (
	"math"
	"slices"

	"tonewright/match/layer"
)

// rest is how a coat rests on one before it.
type rest struct {
	on   int     // index in Layers.Coats
	days float64 // since that was laid, from which on this may be laid
	wet  float64 // days up to which it may be too, since the two are blended where they meet; under 0: never
}

// beneath returns the coats that are on top where a coat is laid, as indices: of its own
// region, and of those it touches, which it overlaps by a brush's width.
func (in layersFrom) beneath(all []coat, i int) (coats []int) {
	for _, r := range in.behind {
		if r == all[i].region || in.touch(r, all[i].region) {
			coats = append(coats, in.onTop(all[:i], r)...)
		}
	}
	slices.Sort(coats)
	return coats
}

// onTop returns the coats of a region that are seen somewhere.
func (in layersFrom) onTop(all []coat, r int) (coats []int) {
	for j := range in.regions[r].Colours {
		for i := len(all) - 1; i >= 0; i-- {
			if all[i].region != r {
				continue
			}
			if _, there := all[i].at(j); there {
				if !slices.Contains(coats, i) {
					coats = append(coats, i)
				}
				break
			}
		}
	}
	return coats
}

// restsOf returns how a coat rests on its region's own before it, which have to bear it,
// and on what it touches, which has to be wet or dry.
func (in layersFrom) restsOf(all []coat, i int) (rests []rest) {
	air := in.opt.Work.Air
	next := in.before(all, i)
	for b := range i {
		if all[b].region == all[i].region {
			rests = append(rests, rest{b, waits(all[b], all[i], b == next, air), -1})
		}
	}
	for _, b := range in.beneath(all, i) {
		if all[b].region != all[i].region {
			rests = append(rests, rest{b, planned(days(touchDry(all[b], air))), wetFor(all[b], air)})
		}
	}
	return rests
}

// wetFor returns for how many whole days all piles of a coat can be blended, by the middle
// of the estimate, as days are planned.
func wetFor(c coat, air layer.Air) float64 {
	most := math.Inf(1)
	for _, p := range c.piles {
		wet := days(layer.Drying(c.laid(p), air).Wet)
		most = min(most, wet.From+likely*(wet.To-wet.From))
	}
	return math.Floor(most + 1e-9)
}
