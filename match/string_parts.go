// Steps of a string in amounts that a knife can do.

package match

import (
	"cmp"
	"math"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// A split is how a pile is measured out of two things, and the share of the second.
type split struct {
	first, second Portion
	share         float64
	effort        int // of measuring, see levels.effort
}

// mostSmall is how many touches or specks are counted out for one pile.
//
// Ours: on 469 pairs of library paints at 7 steps, the largest gap of a string, over
// the even one, has the median and the 90th percentile of
//
//	1.66 and 3.04 with whole parts up to 12 in all,
//	1.12 and 1.38 with one touch or speck of either paint beside them,
//	1.08 and 1.28 with up to three touches or specks, as here,
//	1.02 and 1.37 with whole parts up to 30, one touch or speck.
//
// More whole parts do nothing for the strong tinters, which is where strings break.
const mostSmall = 3

// splits returns every split by rising share, no two of one share. Any paint may come
// as touches and specks: a strong tinter needs them beside all others, and which is
// the strong one of two hangs on both.
func splits() (all []split) {
	add := func(a, b Portion, effort int) {
		all = append(all, split{a, b, b.Parts / (a.Parts + b.Parts), effort})
	}
	whole := func(n int) Portion { return Portion{n, Knife, float64(n)} }
	for a := 1; a < mostParts; a++ {
		for b := 1; a+b <= mostParts; b++ {
			if coprime(level(a), level(b)) {
				add(whole(a), whole(b), a+b)
			}
		}
	}
	for n := 1; n <= mostSmall; n++ {
		for _, small := range []Portion{smallPortion(n, Touch, touchShare), smallPortion(n, Speck, speckShare)} {
			add(small, whole(1), 1+n*touchEffort)
			add(whole(1), small, 1+n*touchEffort)
		}
	}
	slices.SortFunc(all, func(a, b split) int { return cmp.Compare(a.share, b.share) })
	return all
}

// smallPortion returns n touches or specks beside one whole part.
func smallPortion(n int, m Measure, each float64) Portion {
	share := float64(n) * each
	return Portion{n, m, share / (1 - share)}
}

// Costs of a string, in millionths: of a gap, the square of how far it is off over the
// even one; of a part more to measure, effortCost. Ours: five parts saved are worth
// one gap that is 4 % off.
const (
	costScale  = 1e6
	effortCost = 300
	unreached  = math.MaxInt64 / 2
)

// gapCost returns the cost of a gap between two steps.
func gapCost(a, b colour.Lab, even float64) int64 {
	off := colour.DeltaE00(a, b)/even - 1
	return int64(math.Round(costScale * off * off))
}

// layOut returns the steps of a string: the ends, and between them the splits, of
// rising share, whose gaps are together nearest to the even one by least squares,
// easy parts before hard ones where it hardly matters. len(result) == count.
// Ours: on the same pairs, taking the split nearest to each even point instead left a
// largest gap of 1.10 in the median and of 1.32 at the 90th percentile.
func layOut(from, to *paint.Paint, count int, even float64, finish paint.Finish) (steps []StringStep) {
	alone := Portion{1, Knife, 1}
	all := slices.Concat([]split{{first: alone}}, splits(), []split{{second: alone, share: 1}})
	labs := make([]colour.Lab, len(all))
	for i, s := range all {
		labs[i] = pointAt(from, to, s.share, finish).lab
	}
	for _, i := range evenest(all, labs, count, even) {
		steps = append(steps, StringStep{First: all[i].first, Second: all[i].second, Lab: labs[i], Munsell: labs[i].Munsell()})
	}
	for i := range steps[1:] {
		steps[i].ToNext = colour.DeltaE00(steps[i].Lab, steps[i+1].Lab)
	}
	return steps
}

// evenest returns the indices of count splits, rising, the first and the last of all
// at its ends, of least cost. Costs are whole numbers, so that no machine's last bit
// decides; of equals the lower index is taken.
// Source: the shortest path by stages, dynamic programming.
func evenest(all []split, labs []colour.Lab, count int, even float64) []int {
	costs, before := make([]int64, len(all)), make([][]int, count) // to end a stage at a split
	for j := range costs[1:] {
		costs[j+1] = unreached
	}
	for stage := 1; stage < count; stage++ {
		next := make([]int64, len(all))
		before[stage] = make([]int, len(all))
		for j := range next {
			next[j] = unreached
			for k := range j {
				c := costs[k] + gapCost(labs[k], labs[j], even) + effortCost*int64(all[j].effort)
				if costs[k] < unreached && c < next[j] {
					next[j], before[stage][j] = c, k
				}
			}
		}
		costs = next
	}
	chosen := make([]int, count)
	chosen[count-1] = len(all) - 1
	for stage := count - 1; stage > 0; stage-- {
		chosen[stage-1] = before[stage][chosen[stage]]
	}
	return chosen
}
