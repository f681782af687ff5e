package match

import (
	"fmt"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"tonewright/analyze/colour"
	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// few is one small box with aims of some weight, for trying every subset.
type few struct {
	name   string
	paints []paint.Paint
	aims   []colour.Lab
	shares []float64
}

// fews are small boxes: the scene's things with a box of earths and one of brights,
// a colour chart, mixes of paints and colours anywhere in sRGB.
func fews() []few {
	starter := paint.StarterBox().Paints
	random := rand.New(rand.NewPCG(41, 7))
	box := func(n int) (paints []paint.Paint) {
		for _, i := range random.Perm(40)[:n] {
			paints = append(paints, own(40)[i])
		}
		return paints
	}
	list := []few{
		{name: "scene, starter box", paints: starter[:min(10, len(starter))], aims: still},
		{name: "scene, 9 paints", paints: box(9), aims: still},
		{name: "chart, 8 paints", paints: box(8), aims: checker},
		{name: "mixes and sRGB, 10 paints", paints: box(10), aims: testAims(12, 3)},
		{name: "mixes and sRGB, 8 paints", paints: box(8), aims: testAims(16, 4)},
	}
	for i := range list {
		sum := 0.0
		for range list[i].aims {
			share := random.Float64()
			list[i].shares = append(list[i].shares, share)
			sum += share
		}
		for j := range list[i].shares {
			list[i].shares[j] /= sum
		}
	}
	return list
}

func (f few) thrift() *thrift {
	return newThrift(f.paints, f.aims, FewestOptions{Shares: f.shares}.defaulted(len(f.aims)))
}

// costOf is what a choice costs, straight from the definition.
func (t *thrift) costOf(kept []int) (cost int64) {
	for a, list := range t.offers {
		least := nothing.miss
		for _, o := range list {
			all := true
			for _, p := range o.of[:o.of.size()] {
				all = all && slices.Contains(kept, int(p))
			}
			if all {
				least = min(least, o.miss)
			}
		}
		cost += t.weights[a] * int64(least)
	}
	return cost
}

// Every choice of so many paints is tried: the search's costs as little as the best, to
// the last whole number, and says so; and one more tube never costs more.
func TestSearchIsExact(t *testing.T) {
	for _, f := range fews() {
		thrift := f.thrift()
		before := int64(math.MaxInt64)
		for count := 2; count <= 6; count++ {
			t.Run(fmt.Sprintf("%s, %d kept", f.name, count), func(t *testing.T) {
				least := int64(math.MaxInt64)
				for _, kept := range choicesOf(len(f.paints), count) {
					least = min(least, thrift.costOf(kept))
				}
				kept, proven := thrift.search(count)
				require.Len(t, kept, count)
				assert.True(t, proven)
				assert.Equal(t, least, thrift.costOf(kept))
				assert.Equal(t, least, thrift.fromNothing(count))
				assert.LessOrEqual(t, least, before)
				before = least
			})
		}
	}
}

// Of 24 paints for 80 aims the quick choice of 8 is not the best (3.09 CIEDE2000, where
// 3.02 can be); the search finds that, whether it starts from there or from nothing.
func TestSearchBetterThanQuick(t *testing.T) {
	thrift := few{paints: own(24), aims: testAims(80, 1)}.thrift()
	_, quick := thrift.quick(8)
	kept, proven := thrift.search(8)
	assert.True(t, proven)
	assert.Less(t, thrift.costOf(kept), quick.cost)
	assert.Equal(t, thrift.costOf(kept), thrift.fromNothing(8))
}

// fromNothing is the cost that branch and bound finds without a start.
func (t *thrift) fromNothing(count int) int64 {
	b := &branching{thrift: t, count: count, cost: math.MaxInt64}
	b.visit(0, t.newState(), slices.Clone(t.fixed))
	return b.cost
}

// fullOffers is the oracle: what every set of the paints offers an aim, each mix made
// in full over all bands and weighed by CIEDE2000, with no gauge and no bound.
func fullOffers(s *search) (all [][]offer) {
	all = make([][]offer, len(s.aims))
	try := func(of set) {
		least := make([]float64, len(s.aims))
		for a := range least {
			least[a] = math.Inf(1)
		}
		for _, m := range s.menu(of) {
			lab := s.lab(of, m)
			for a, aim := range s.aims {
				least[a] = min(least[a], colour.DeltaE00(aim, lab))
			}
		}
		for a := range least {
			all[a] = append(all[a], offer{of, ties(least[a])})
		}
	}
	n := int32(len(s.paints))
	for i := range n {
		try(set{i, -1, -1})
		for j := i + 1; j < n; j++ {
			try(set{i, j, -1})
			for k := j + 1; k < n; k++ {
				try(set{i, j, k})
			}
		}
	}
	return all
}

// meanStrays is by how much the mean over the panel of what the kept paints miss may
// exceed the least of any choice, in CIEDE2000: the fast optics and the gauges err.
const meanStrays = 0.03

// The choice is held against the best by mixes made in full, and against the best by
// match.Recipes of every choice of as many.
func TestChoiceAgainstFullMixes(t *testing.T) {
	slow(t)
	for _, f := range fews() {
		s := newSearch(f.paints, f.aims, Options{}.defaulted())
		oracle := f.thrift()
		oracle.offers = fullOffers(s)
		for _, count := range []int{3, 5} {
			got := FewestTubes(f.paints, f.aims, FewestOptions{Shares: f.shares, Most: count})
			least := int64(math.MaxInt64)
			for _, kept := range choicesOf(len(f.paints), count) {
				least = min(least, oracle.costOf(kept))
			}
			over := float64(oracle.costOf(got.Kept)-least) / 1e6 * tie
			t.Logf("%s, %d kept: %.3f over the least of %.2f", f.name, count, over, float64(least)/1e6*tie)
			assert.LessOrEqual(t, over, meanStrays)
		}
	}
}

// recipeMean is the mean over the panel of what the recipes of some paints miss, and
// the mean of each region.
func recipeMean(f few, kept, regions []int) (mean float64, means []float64) {
	var some []paint.Paint
	for _, p := range kept {
		some = append(some, f.paints[p])
	}
	wholes := []float64{}
	for a, list := range Recipes(some, f.aims, Options{}) {
		mean += f.shares[a] * list[0].DeltaE
		r := 0
		if regions != nil {
			r = regions[a]
		}
		for r >= len(means) {
			means, wholes = append(means, 0), append(wholes, 0)
		}
		means[r] += f.shares[a] * list[0].DeltaE
		wholes[r] += f.shares[a]
	}
	for r := range means {
		means[r] /= wholes[r]
	}
	return mean, means
}

// By match.Recipes, which takes fewer paints at a cost of up to 1, the choice is
// hardly worse than the best of all choices of as many: over six boxes of 9 paints and
// 3, 5 and 7 kept it was at worst 0.04 CIEDE2000.
func TestChoiceAgainstRecipes(t *testing.T) {
	slow(t)
	for _, f := range fews()[:3] {
		got := FewestTubes(f.paints, f.aims, FewestOptions{Shares: f.shares, Most: 4})
		least := math.Inf(1)
		for _, kept := range choicesOf(len(f.paints), 4) {
			mean, _ := recipeMean(f, kept, nil)
			least = min(least, mean)
		}
		mean, _ := recipeMean(f, got.Kept, nil)
		assert.InDelta(t, mean, got.MeanError, 1e-4, "shares are kept to millionths")
		full, _ := recipeMean(f, everyPaint(f), nil)
		assert.InDelta(t, full, got.FullError, 1e-4)
		t.Logf("%s: %.3f, best %.3f, all %.3f", f.name, mean, least, full)
		assert.LessOrEqual(t, mean, least+0.1)
	}
}

func everyPaint(f few) (all []int) {
	for p := range f.paints {
		all = append(all, p)
	}
	return all
}

// Within is kept by the recipes, region by region, and no fewer paints would have
// kept it: every smaller choice is tried with match.Recipes.
func TestWithinIsKept(t *testing.T) {
	slow(t)
	for _, f := range fews()[:4] {
		regions := make([]int, len(f.aims))
		for a := range regions {
			regions[a] = a * 3 / len(regions)
		}
		_, full := recipeMean(f, everyPaint(f), regions)
		within := slices.Max(full) + 0.6
		got := FewestTubes(f.paints, f.aims, FewestOptions{Shares: f.shares, Regions: regions, Within: within})
		_, means := recipeMean(f, got.Kept, regions)
		for _, m := range means {
			assert.LessOrEqual(t, m, within+tie)
		}
		assert.Empty(t, got.Over)
		t.Logf("%s: within %.2f with %d of %d paints, proven %v", f.name, within, len(got.Kept), len(f.paints), got.Proven)
		for _, kept := range choicesOf(len(f.paints), len(got.Kept)-1) {
			_, means := recipeMean(f, kept, regions)
			assert.Greater(t, slices.Max(means), within-tie, "%v would do", kept)
		}
		assert.Less(t, len(got.Kept), len(f.paints))
	}
}

// With both wishes no more than Most are kept, and the regions over Within are said
// with their true means; with a Within that no box keeps, likewise.
func TestWithinThatIsNotKept(t *testing.T) {
	f := fews()[1]
	regions := []int{0, 0, 0, 1, 1, 1}
	for _, opt := range []FewestOptions{{Most: 2, Within: 1}, {Within: 0.01}} {
		opt.Shares, opt.Regions = f.shares, regions
		got := FewestTubes(f.paints, f.aims, opt)
		_, means := recipeMean(f, got.Kept, regions)
		require.NotEmpty(t, got.Over)
		for _, o := range got.Over {
			assert.InDelta(t, means[o.Region], o.Error, 1e-4)
			assert.Greater(t, o.Error, opt.Within)
		}
		if opt.Most > 0 {
			assert.LessOrEqual(t, len(got.Kept), opt.Most)
			continue
		}
		_, full := recipeMean(f, everyPaint(f), regions)
		for r, m := range means {
			assert.LessOrEqual(t, m, full[r]+eased+2*tie)
		}
	}
}

// Aims that are mixes of three tubes by the knife need those three, whatever else is in
// the box, and miss by no more than the fast optics do.
func TestThreeTubesAreFound(t *testing.T) {
	box := own(12)
	want := []int{2, 5, 9}
	var aims []colour.Lab
	for _, parts := range [][]float64{{3, 1, 1}, {1, 3, 1}, {1, 1, 3}, {5, 2, 1}, {1, 2, 5}, {2, 5, 2}} {
		aims = append(aims, labOf([]paint.Paint{box[2], box[5], box[9]}, parts, paint.Gloss))
	}
	for _, opt := range []FewestOptions{{Most: 3}, {Most: 6}, {Within: 0.5}} {
		got := FewestTubes(box, aims, opt)
		if opt.Most != 6 { // with more, other mixes may be as near and steadier
			assert.Equal(t, want, got.Kept)
		}
		assert.LessOrEqual(t, got.MeanError, 1.0)
		assert.True(t, got.Proven)
	}
	kept, _ := newThrift(box, aims, FewestOptions{}.defaulted(len(aims))).search(3)
	assert.Equal(t, want, kept)
}

// The paints that stay do, though others would do better, and the best of what is left
// is taken beside them.
func TestFixedPaintsStay(t *testing.T) {
	f := fews()[3]
	free := FewestTubes(f.paints, f.aims, FewestOptions{Shares: f.shares, Most: 4})
	var fixed []int
	for p := range f.paints {
		if !slices.Contains(free.Kept, p) && len(fixed) < 2 {
			fixed = append(fixed, p)
		}
	}
	opt := FewestOptions{Shares: f.shares, Fixed: fixed, Most: 4}
	got := FewestTubes(f.paints, f.aims, opt)
	assert.Subset(t, got.Kept, fixed)
	assert.Len(t, got.Kept, 4)
	thrift, least := f.thrift(), int64(math.MaxInt64)
	for _, kept := range choicesOf(len(f.paints), 4) {
		if slices.Contains(kept, fixed[0]) && slices.Contains(kept, fixed[1]) {
			least = min(least, thrift.costOf(kept))
		}
	}
	assert.Equal(t, least, thrift.costOf(got.Kept))

	opt.Most = 1 // fewer than stay
	assert.Equal(t, fixed, FewestTubes(f.paints, f.aims, opt).Kept)
	opt = FewestOptions{Shares: f.shares, Most: 3, Mixing: Options{With: fixed[:1]}}
	assert.Contains(t, FewestTubes(f.paints, f.aims, opt).Kept, fixed[0])
}

// The box in another order gives the same tubes, and so do other numbers of cores.
func TestChoiceKnowsNoOrder(t *testing.T) {
	names := func(paints []paint.Paint, kept []int) (ids []string) {
		for _, p := range kept {
			ids = append(ids, paints[p].ID)
		}
		slices.Sort(ids)
		return ids
	}
	for _, f := range fews()[1:4] {
		opt := FewestOptions{Shares: f.shares, Most: 4}
		want := FewestTubes(f.paints, f.aims, opt)
		random := rand.New(rand.NewPCG(5, 5))
		for range 3 {
			shuffled := slices.Clone(f.paints)
			random.Shuffle(len(shuffled), func(i, j int) { shuffled[i], shuffled[j] = shuffled[j], shuffled[i] })
			got := FewestTubes(shuffled, f.aims, opt)
			assert.Equal(t, names(f.paints, want.Kept), names(shuffled, got.Kept), f.name)
		}
		cores := runtime.GOMAXPROCS(1)
		assert.Equal(t, want, FewestTubes(f.paints, f.aims, opt))
		runtime.GOMAXPROCS(cores)
	}
}

// What a dropped paint would buy is what match.Recipes does with it added, aim by aim
// where that is nearer; a paint that no mix asks for buys nothing.
func TestDroppedWouldBuy(t *testing.T) {
	f := fews()[2]
	got := FewestTubes(f.paints, f.aims, FewestOptions{Shares: f.shares, Most: 4})
	require.Len(t, got.Dropped, 4)
	misses := func(kept []int) (misses []float64) {
		var some []paint.Paint
		for _, p := range kept {
			some = append(some, f.paints[p])
		}
		for _, list := range Recipes(some, f.aims, Options{}) {
			misses = append(misses, list[0].DeltaE)
		}
		return misses
	}
	before, most := misses(got.Kept), math.Inf(1)
	for _, d := range got.Dropped {
		after := misses(slices.Sorted(slices.Values(append([]int{d.Paint}, got.Kept...))))
		var gain, upTo float64
		var nearer []int
		for a := range after {
			by := max(0, before[a]-after[a])
			gain += f.shares[a] * by
			upTo = max(upTo, by)
			if by >= nearerBy {
				nearer = append(nearer, a)
			}
		}
		assert.InDelta(t, gain, d.Gain, 0.01)
		assert.InDelta(t, upTo, d.UpTo, 0.01)
		assert.ElementsMatch(t, nearer, d.Nearer)
		assert.LessOrEqual(t, d.Gain, most+tie)
		most = d.Gain
	}
	assert.NotEmpty(t, got.Dropped[0].Nearer)
}

// A white is kept for a picture with lights, and a dark for one with darks, by their
// costs alone (common practice, no source: no box is without them).
func TestLightsAndDarksAreKept(t *testing.T) {
	box := paint.StarterBox().Paints
	got := FewestTubes(box, checker, FewestOptions{Most: 5})
	white, darkest := false, 100.0
	for _, p := range got.Kept {
		white = white || box[p].White()
		darkest = min(darkest, labOf(box[p:p+1], []float64{1}, paint.Gloss).L)
	}
	assert.True(t, white)
	assert.Less(t, darkest, 20.0)
}

// Without paints or aims there is nothing to choose, and slips are the caller's.
func TestFewestOfNothing(t *testing.T) {
	assert.Empty(t, FewestTubes(nil, still, FewestOptions{Most: 3}).Kept)
	fixed := FewestTubes(own(3), nil, FewestOptions{Most: 3, Fixed: []int{1, 1}})
	assert.Equal(t, []int{1}, fixed.Kept)
	assert.Equal(t, []DroppedPaint{{Paint: 0}, {Paint: 2}}, fixed.Dropped)
	assert.Equal(t, []int{0, 1, 2}, FewestTubes(own(3), nil, FewestOptions{Most: 1}).Kept)
	assert.Equal(t, []int{0}, FewestTubes(own(1), still, FewestOptions{Most: 3}).Kept)
	assert.Panics(t, func() { FewestTubes(own(3), still, FewestOptions{Shares: []float64{1}}) })
	assert.Panics(t, func() { FewestTubes(own(3), still, FewestOptions{Fixed: []int{3}}) })
}

// A search that may not look far says that nothing is proven, and is as good as the
// quick choice.
func TestSearchGivesUp(t *testing.T) {
	thrift := few{paints: own(16), aims: testAims(14, 1)}.thrift()
	thrift.most = 1
	_, quick := thrift.quick(4)
	kept, proven := thrift.search(4)
	assert.False(t, proven)
	assert.Equal(t, quick.cost, thrift.costOf(kept))
}
