// Choosing: from the sets that come near to an aim to the recipes handed out.

package match

import (
	"cmp"
	"math"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// All in CIEDE2000.
const (
	fewerWithin  = 1    // fewer paints are taken at this cost
	easierWithin = 0.25 // fewer parts are taken at this cost
	worseBy      = 3    // an alternative is not listed when it is this much worse. Ours: it would be another colour
	tie          = 0.01 // mixes this near to each other count as equal
	screenError  = 0.4  // of the fast optics at worst, see screenBands
)

// How many sets of one, two and three paints are looked at again for the first
// choice and for each alternative. Ours: see TestNeverFarFromDense.
var (
	refinedSets = [4]int{0, 2, 3, 6}
	refinedMore = [4]int{0, 1, 2, 2}
)

// gain and rest are by how much a set may turn out nearer, looked at again, than it
// was found: deltaE/gain - rest. Ours: see TestNeverFarFromDense.
const (
	gain = 1.25
	rest = 0.15
)

// refinedMixes is how many mixes of a set are made in full.
const refinedMixes = 4

// mix is a measure of a set of paints and its colour, in full.
type mix struct {
	set     set
	measure measure
	lab     colour.Lab
	deltaE  float64
}

// compareMixes puts the nearer first; of equals the one of fewer paints, then of
// lower indices, then of easier parts.
func (s *search) compareMixes(a, b mix) int {
	return cmp.Or(
		cmp.Compare(math.Round(a.deltaE/tie), math.Round(b.deltaE/tie)),
		cmp.Compare(a.set.size(), b.set.size()),
		slices.Compare(a.set[:], b.set[:]),
		cmp.Compare(s.levels.effort(a.measure), s.levels.effort(b.measure)),
		slices.Compare(a.measure[:], b.measure[:]))
}

// choice is the work of choosing for one aim.
type choice struct {
	*search
	aim    colour.Lab
	finds  []find     // nearest first
	looked []*refined // beside finds; nil until looked at again
}

// refined is a set looked at again: every measure's rough distance, nearest
// first, and the best mix in full.
type refined struct {
	rough []rough
	best  mix
}

type rough struct {
	measure measure
	deltaE  float64
}

// choose returns the recipe to take and the alternatives.
func (s *search) choose(aim colour.Lab, finds []find, opt Options) []Recipe {
	c := &choice{s, aim, finds, make([]*refined, len(finds))}
	first := c.pick(nil)
	if opt.Holds {
		first = c.steadyInLamplight(first)
	}
	picked := []mix{first}
	for len(picked) <= opt.Alternatives {
		next := c.pick(picked)
		if next.deltaE > first.deltaE+worseBy {
			break
		}
		picked = append(picked, next)
	}
	slices.SortStableFunc(picked[1:], s.compareMixes)
	recipes := make([]Recipe, len(picked))
	munsell := aim.Munsell()
	for i, m := range picked {
		recipes[i] = s.recipe(m)
		s.describe(&recipes[i], aim, munsell, i == 0)
	}
	if cover := recipes[0].Cover; cover != nil && !cover.Carries() {
		if m, found := c.carrier(first); found {
			r := s.recipe(m)
			s.describe(&r, aim, munsell, false)
			recipes[0].Carrier = &r
		}
	}
	return recipes
}

// pick returns the best mix whose set does without some paint of each one picked
// already: the fewest paints within fewerWithin of the nearest, then the easiest
// parts within easierWithin. Its deltaE is infinite if there is no such set.
func (c *choice) pick(picked []mix) mix {
	var bySize [4]*refined
	nearest := math.Inf(1)
	for size := 3; size >= 1; size-- {
		if r := c.bestOfSize(size, nearest+fewerWithin, picked); r != nil {
			bySize[size] = r
			nearest = min(nearest, r.best.deltaE)
		}
	}
	for _, r := range bySize {
		if r == nil || r.best.deltaE > nearest+fewerWithin {
			continue
		}
		if len(picked) == 0 && nearest <= Near {
			r = c.steadiest(r, nearest+fewerWithin)
		}
		return c.easiest(r, min(r.best.deltaE+easierWithin, nearest+fewerWithin))
	}
	return mix{deltaE: math.Inf(1)}
}

// bestOfSize returns the nearest set of so many paints, or nil where none can be
// within the distance.
func (c *choice) bestOfSize(size int, within float64, picked []mix) (best *refined) {
	left := refinedSets[size]
	if len(picked) > 0 {
		left = refinedMore[size]
	}
	for i, f := range c.finds {
		if f.set.size() != size || containsAny(f.set, picked) {
			continue
		}
		if left == 0 || float64(f.deltaE)/gain-rest > within {
			break
		}
		left--
		if c.looked[i] == nil {
			c.looked[i] = c.refine(f)
		}
		if r := c.looked[i]; best == nil || c.compareMixes(r.best, best.best) < 0 {
			best = r
			within = min(within, r.best.deltaE)
		}
	}
	return best
}

// containsAny tells whether a set has all the paints of a mix picked already: it
// would be the same mix, or that mix with a speck of something else.
func containsAny(s set, picked []mix) bool {
	for _, p := range picked {
		all := true
		for _, paint := range p.set[:p.set.size()] {
			all = all && slices.Contains(s[:], paint)
		}
		if all {
			return true
		}
	}
	return false
}

// refine looks at every measure of a set again.
func (c *choice) refine(f find) *refined {
	square := c.squareNear(f)
	measures := c.menu(f.set)
	squares, points := make([]float32, len(measures)), make([]point, len(measures))
	least := float32(math.MaxFloat32)
	for i, m := range measures {
		points[i] = c.screen(f.set, m)
		squares[i] = square(points[i])
		least = min(least, squares[i])
	}
	limit := gain*math.Sqrt(float64(least)) + screenError + easierWithin
	r := &refined{}
	for i, m := range measures {
		if squares[i] <= float32(limit*limit) {
			r.rough = append(r.rough, rough{m, colour.DeltaE00(c.aim, points[i].lab())})
		}
	}
	slices.SortStableFunc(r.rough, func(a, b rough) int { return cmp.Compare(a.deltaE, b.deltaE) })
	for i := range min(refinedMixes, len(r.rough)) {
		if m := c.full(f.set, r.rough[i].measure); i == 0 || c.compareMixes(m, r.best) < 0 {
			r.best = m
		}
	}
	return r
}

// squareNear returns a quick square of CIEDE2000 for colours around a find. Far
// from the aim it is the true one, since no gauge is good for all mixes of a set.
func (c *choice) squareNear(f find) func(point) float32 {
	if f.deltaE > farFind {
		return func(p point) float32 {
			d := float32(colour.DeltaE00(c.aim, p.lab()))
			return d * d
		}
	}
	g := nearGauge(c.aim, f.at.lab())
	g.ll = lightness(c.aim, float64(f.at.l))
	return g.square
}

// farFind is the CIEDE2000 from which a find counts as far.
const farFind = 8

// easiest returns the mix of a set that is easiest to measure within a distance.
func (c *choice) easiest(r *refined, within float64) mix {
	best := r.best
	for _, rough := range r.rough {
		if rough.deltaE > within+screenError {
			break
		}
		if c.levels.effort(rough.measure) >= c.levels.effort(best.measure) {
			continue
		}
		if m := c.full(best.set, rough.measure); m.deltaE <= within {
			best = m
		}
	}
	return best
}

// menu returns the measures that a set of paints allows.
func (s *search) menu(of set) []measure {
	switch of.size() {
	case 1:
		return []measure{{1}}
	case 2:
		return s.twos[s.kindOf(of)]
	}
	return s.threes[s.kindOf(of)].all
}

// screen returns the colour of a mix in fast optics.
func (s *search) screen(of set, m measure) point {
	base := s.amounts[of[0]][m[0]]
	switch of.size() {
	case 1:
		return s.glow.screen(&base, &optics{})
	case 2:
		return s.glow.screen(&base, &s.amounts[of[1]][m[1]])
	}
	base = base.add(&s.amounts[of[1]][m[1]])
	return s.glow.screen(&base, &s.amounts[of[2]][m[2]])
}

// full returns a mix with its colour over all bands.
func (c *choice) full(of set, m measure) mix {
	lab := c.lab(of, m)
	return mix{of, m, lab, colour.DeltaE00(c.aim, lab)}
}

// lab returns the colour of a thick mix, over all bands.
func (s *search) lab(of set, m measure) colour.Lab {
	k, r := s.optics(of, m)
	r = paint.Thick(&k, &r, s.finish)
	return r.Lab()
}

// optics returns K and S of a mix.
func (s *search) optics(of set, m measure) (k, r colour.Spectrum) {
	paints, parts := s.amountsOf(of, m)
	n := of.size()
	return paint.Mix(paints[:n], parts[:n])
}

func (s *search) amountsOf(of set, m measure) (paints [3]paint.Paint, parts [3]float64) {
	for i := range of.size() {
		paints[i], parts[i] = s.paints[of[i]], s.levels.parts(m[i])
	}
	return paints, parts
}

// labOf returns the colour of thick paints mixed, over all bands.
func labOf(paints []paint.Paint, parts []float64, f paint.Finish) colour.Lab {
	k, r := paint.Mix(paints, parts)
	r = paint.Thick(&k, &r, f)
	return r.Lab()
}

// recipe returns a mix as it is handed out, but for what it misses.
func (s *search) recipe(m mix) Recipe {
	r := Recipe{Lab: m.lab, DeltaE: m.deltaE}
	leastSure := 0
	for i, p := range m.set[:m.set.size()] {
		v := m.measure[i]
		measure, count := s.levels.measure(v)
		r.Parts = append(r.Parts, Part{int(p), s.levels.parts(v), measure, count})
		leastSure = max(leastSure, slices.Index(paint.Bases(), s.paints[p].Basis))
	}
	r.Basis = paint.Bases()[leastSure]
	seen := s.thick(m)
	r.Lamps = shiftsOf(&seen)
	if s.ground != nil {
		cover := s.cover(m)
		r.Cover = &cover
	}
	return r
}
