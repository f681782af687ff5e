// The fewest tubes that do for a whole picture.

package match

import (
	"math"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// FewestOptions says what few tubes are wanted for; the zero value of each field is
// the good default.
type FewestOptions struct {
	Shares  []float64 // of the panel, by aim, 0 or more; nil: all alike
	Regions []int     // region of each aim, from 0; nil: all in one
	Fixed   []int     // paints that stay, by index in the box; the paints of Mixing.With stay too
	Most    int       // so many paints at most, or as many as stay; 0: any number
	Within  float64   // mean CIEDE2000 that no region's recipes may exceed; 0: not asked
	Mixing  Options   // of the recipes
}

// Fewest is the paints chosen from a box, and what the others would buy. Its errors are
// means over the panel of what match.Recipes' first recipes miss, in CIEDE2000.
type Fewest struct {
	Kept      []int // by index in the box, rising
	MeanError float64
	FullError float64 // with the whole box
	// Proven tells, by the nearest mixes that the search found, that no other choice of as
	// many is better; with Within, where it or what stands for it is kept, that no fewer
	// keep it. Recipes miss a little more than the nearest mixes, see Recipes.
	Proven  bool
	Over    []RegionError  // regions that exceed Within, rising
	Dropped []DroppedPaint // that buys most first, then by index
}

// RegionError is a region's mean CIEDE2000, by the shares of its aims.
type RegionError struct {
	Region int
	Error  float64
}

// DroppedPaint is a paint left out and what it would buy, added to those kept: by
// its recipes, each taken where it is nearer than the one without.
type DroppedPaint struct {
	Paint  int     // index in the box
	Gain   float64 // CIEDE2000 off the mean over the panel
	Nearer []int   // aims it brings nearer by 1 CIEDE2000 or more, the most first
	UpTo   float64 // CIEDE2000 by which it brings an aim nearer at most
}

// nearerBy is the CIEDE2000 from which a paint is said to bring an aim nearer.
// Ours: what recipes give away for fewer paints.
const nearerBy = fewerWithin

// FewestTubes chooses from a box the best opt.Most paints for all aims together; or
// with opt.Within the fewest that keep it in every region, if so many as opt.Most can,
// else the best opt.Most. Where the whole box does not keep it in a region, what the
// whole box does, eased, is kept there in its place.
// No paint is kept that no recipe needs, but for those fixed. It panics where Recipes
// does, if Shares or Regions are not one an aim, or if a fixed paint is not in the box.
func FewestTubes(paints []paint.Paint, aims []colour.Lab, opt FewestOptions) Fewest {
	opt = opt.defaulted(len(aims))
	if len(paints) == 0 || len(aims) == 0 {
		return fewestOfNothing(len(paints), opt.Fixed)
	}
	c := &chooser{paints: paints, aims: aims, opt: opt, thrift: newThrift(paints, aims, opt)}
	c.full = c.misses(c.all())
	var f Fewest
	if opt.Within > 0 {
		f.Kept, f.Proven = c.fewestWithin()
	} else {
		f.Kept, f.Proven = c.thrift.search(c.most())
	}
	misses := c.misses(f.Kept)
	if needed := c.needed(f.Kept); len(needed) < len(f.Kept) {
		f.Kept, misses = needed, c.misses(needed)
	}
	f.MeanError, f.FullError = c.mean(misses), c.mean(c.full)
	f.Over = c.over(misses)
	f.Dropped = c.dropped(f.Kept, misses)
	return f
}

// fewestOfNothing returns what to keep where nothing is mixed: what is fixed, or if
// nothing is, the whole box.
func fewestOfNothing(paints int, fixed []int) Fewest {
	f := Fewest{Proven: true}
	for p := range paints {
		if len(fixed) == 0 || slices.Contains(fixed, p) {
			f.Kept = append(f.Kept, p)
		} else {
			f.Dropped = append(f.Dropped, DroppedPaint{Paint: p})
		}
	}
	return f
}

func (o FewestOptions) defaulted(aims int) FewestOptions {
	if o.Shares == nil {
		o.Shares = slices.Repeat([]float64{1}, aims)
	}
	if o.Regions == nil {
		o.Regions = make([]int, aims)
	}
	if len(o.Shares) != aims || len(o.Regions) != aims {
		panic("match: Shares or Regions are not one an aim")
	}
	o.Fixed = append(slices.Clone(o.Fixed), o.Mixing.With...)
	o.Mixing.Alternatives, o.Mixing.Ground = -1, nil // neither moves a first recipe
	o.Mixing = o.Mixing.defaulted()
	return o
}

// chooser is the work of choosing few tubes.
type chooser struct {
	paints []paint.Paint
	aims   []colour.Lab
	opt    FewestOptions
	thrift *thrift
	full   []float64 // what the recipes of the whole box miss, by aim
}

func newThrift(paints []paint.Paint, aims []colour.Lab, opt FewestOptions) *thrift {
	s := newSearch(paints, aims, opt.Mixing)
	t := &thrift{
		paints: len(paints), offers: s.offers(opt.Mixing.MaxPaints), weights: weightsOf(opt.Shares),
		regions: opt.Regions, fixed: make([]bool, len(paints)), most: mostScans,
	}
	for _, p := range opt.Fixed {
		if p < 0 || p >= len(paints) {
			panic("match: a fixed paint is not in the box")
		}
		t.fixed[p] = true
	}
	return t
}

// weightsOf brings shares to millionths of their sum; all alike where that is 0.
func weightsOf(shares []float64) []int64 {
	sum := 0.0
	for _, s := range shares {
		sum += s
	}
	weights := make([]int64, len(shares))
	for i, s := range shares {
		weights[i] = 1
		if sum > 0 {
			weights[i] = int64(math.Round(s / sum * 1e6))
		}
	}
	return weights
}

func (c *chooser) all() (all []int) {
	for p := range c.paints {
		all = append(all, p)
	}
	return all
}

// most is how many paints may be kept.
func (c *chooser) most() int {
	most := c.opt.Most
	if most <= 0 {
		most = len(c.paints)
	}
	return min(max(most, c.thrift.least()), len(c.paints))
}

// recipes returns the first recipe of some paints for each of some aims, with the
// paints by their place in the list of those kept.
func (c *chooser) recipes(kept []int, aims []colour.Lab) []Recipe {
	some, opt := make([]paint.Paint, len(kept)), c.opt.Mixing
	for i, p := range kept {
		some[i] = c.paints[p]
	}
	opt.With = nil
	for _, p := range c.opt.Mixing.With {
		opt.With = append(opt.With, slices.Index(kept, p))
	}
	first := make([]Recipe, len(aims))
	for a, list := range Recipes(some, aims, opt) {
		first[a] = list[0]
	}
	return first
}

// misses returns what the recipes of some paints miss, by aim.
func (c *chooser) misses(kept []int) []float64 {
	misses := make([]float64, len(c.aims))
	for a, r := range c.recipes(kept, c.aims) {
		misses[a] = r.DeltaE
	}
	return misses
}

// needed returns those of the paints kept that some recipe takes, and those fixed.
func (c *chooser) needed(kept []int) (needed []int) {
	taken := make([]bool, len(kept))
	for _, r := range c.recipes(kept, c.aims) {
		for _, part := range r.Parts {
			taken[part.Paint] = true
		}
	}
	for i, p := range kept {
		if taken[i] || c.thrift.fixed[p] {
			needed = append(needed, p)
		}
	}
	return needed
}

// mean returns the mean of misses over the panel.
func (c *chooser) mean(misses []float64) float64 {
	var sum, whole float64
	for a, m := range misses {
		weight := float64(c.thrift.weights[a])
		sum += weight * m
		whole += weight
	}
	return sum / whole
}

// means returns the mean of misses over each region; 0 for one without weight.
func (c *chooser) means(misses []float64) []float64 {
	means, wholes := make([]float64, c.thrift.regionCount()), c.thrift.wholes()
	for a, m := range misses {
		if r := c.thrift.regions[a]; wholes[r] > 0 {
			means[r] += float64(c.thrift.weights[a]) / float64(wholes[r]) * m
		}
	}
	return means
}

// over returns the regions that exceed Within.
func (c *chooser) over(misses []float64) (over []RegionError) {
	if c.opt.Within <= 0 {
		return nil
	}
	for r, m := range c.means(misses) {
		if exceeds(m, c.opt.Within) {
			over = append(over, RegionError{r, m})
		}
	}
	return over
}

// exceeds compares errors to the hundredth, so that it comes out the same everywhere.
func exceeds(miss, limit float64) bool { return ties(miss) > ties(limit) }
