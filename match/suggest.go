// Palettes proposed for a region.

package match

import (
	"cmp"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Scheme is how the paints of a palette stand to one another, or to another region.
type Scheme string

// The schemes a painter can wish for.
const (
	Monochrome Scheme = "monochrome" // one paint, and white
	Analogous  Scheme = "analogous"  // neighbours on the hue circle, and of the region's own hue where none is wished for
	Complement Scheme = "complement" // opposite to another region
	Quiet      Scheme = "quiet"      // of low chroma and near its surroundings in value
)

// Asked is a wish for palettes: a scheme, a hue, or both, and the region it is for.
type Asked struct {
	Scheme Scheme  // "": the hue alone is wished for
	Hue    float64 // Munsell step wished for; with Complement, of what the palette is to be the complement
	Hued   bool    // whether there is a hue at all: a region near gray has none

	Aims         []colour.Lab // the region's colours, keyed to what paint reaches
	Shares       []float64    // of the region, of each aim, in any unit; nil: all alike
	Around       []colour.Lab // the colours of its surroundings
	AroundShares []float64    // of each; nil: all alike

	Quiet bool // the region is to be quiet whatever is wished for: strong colour counts against a palette

	InUse  map[string][]string // by id of a paint, the tags of the other regions that use it
	Finish paint.Finish
}

// Suggestion is a palette of one to three owned paints that fits a wish. Its figures
// are those of its ladder at the region's values.
type Suggestion struct {
	Paints   []paint.Paint // from dark to light, the white aside
	White    *paint.Paint  // of the box, to tint with; nil where it has none
	ValueMin float64       // Munsell values that it reaches
	ValueMax float64
	Covered  float64  // share of the region whose value it reaches, 0-1; up to a quarter of a value step beyond its ends all counts, from there to half a step evenly less
	Chroma   float64  // Munsell, the strongest at the region's values
	Dulls    float64  // Munsell chroma lost between its paints, see dullsMost; 0 for one
	TieIns   []string // tags of regions that use one of its paints, sorted
	Why      string   // what speaks for it and against it, in a sentence or more
}

// mostSuggestions is how many palettes are proposed. Ours: a painter compares three.
const mostSuggestions = 3

// Suggest returns up to three palettes of owned paints that fit a wish, the best first
// and no two of them nearly alike, see alike. Each is of one to three paints, and of
// the box's white. It is empty where nothing fits: WhyNone says why; and where nothing
// is wished for or the region has no colours. The order of owned does not matter.
func Suggest(owned []paint.Paint, ask Asked) (all []Suggestion) {
	if ask.nothing() {
		return nil
	}
	t := newTable(owned, ask)
	for _, c := range t.differing(t.candidates()) {
		all = append(all, t.suggestion(&c))
	}
	return all
}

// nothing tells whether a wish can be met by no box.
func (a *Asked) nothing() bool {
	return len(a.Aims) == 0 || !a.Hued && (a.Scheme == "" || a.Scheme == Complement)
}

// wanted returns the hue that is wished for.
func (a *Asked) wanted() float64 {
	if a.Scheme == Complement {
		return a.Hue + 50
	}
	return a.Hue
}

// candidates returns every palette that may fit the wish, the most promising first; of
// two as good the one of fewer paints, then of those that come first by value.
func (t *table) candidates() (all []candidate) {
	var sets [][]int
	for size := 1; size <= 3; size++ {
		sets = append(sets, subsets(len(t.paints), size)...)
	}
	judged := make([]candidate, len(sets))
	inParallel(len(sets), func(i int) { judged[i] = t.judge(sets[i]) })
	for _, c := range judged {
		if c.fits {
			all = append(all, c)
		}
	}
	slices.SortStableFunc(all, func(a, b candidate) int {
		return cmp.Or(cmp.Compare(b.promise, a.promise), len(a.set)-len(b.set))
	})
	return all
}

// subsets returns the subsets of so many of the first n numbers, each rising, in order.
func subsets(n, size int) (all [][]int) {
	if size == 0 {
		return [][]int{nil}
	}
	for _, rest := range subsets(n, size-1) {
		from := 0
		if len(rest) > 0 {
			from = rest[len(rest)-1] + 1
		}
		for i := from; i < n; i++ {
			all = append(all, append(slices.Clone(rest), i))
		}
	}
	return all
}

// differing returns the best candidates of which no two are nearly alike.
func (t *table) differing(ranked []candidate) (picked []candidate) {
	for len(picked) < mostSuggestions {
		best := t.best(ranked, picked)
		switch {
		case best == nil:
			return picked
		case t.stands(best):
			picked = append(picked, *best)
		default:
			best.fits = false
		}
	}
	return picked
}

// best returns the best candidate that is like none that was picked; nil where there is
// none. Those that do not promise more than the best so far cannot be better: dulling
// only takes points.
func (t *table) best(ranked, picked []candidate) (best *candidate) {
	for i := range ranked {
		c := &ranked[i]
		if best != nil && c.promise <= best.score {
			break
		}
		if c.fits && !t.like(c, picked) && t.weigh(c) && (best == nil || c.score > best.score) {
			best = c
		}
	}
	return best
}

// like tells whether a candidate is nearly one that was picked, and remembers it.
func (t *table) like(c *candidate, picked []candidate) bool {
	for ; c.fits && c.against < len(picked); c.against++ {
		c.fits = !t.alike(c, &picked[c.against])
	}
	return !c.fits
}

// alike tells whether a palette is much the same as one picked before: it has all its
// paints, as alternatives to a recipe do not, or hardly looks different over the region.
func (t *table) alike(c, picked *candidate) bool {
	return containsAll(c.set, picked.set) || t.apart(t.seen(c.set), picked.seen) < Near
}

func containsAll(set, of []int) bool {
	return !slices.ContainsFunc(of, func(i int) bool { return !slices.Contains(set, i) })
}

// seen returns what a palette gives for each of the wanted colours.
func (t *table) seen(set []int) []colour.Lab {
	labs := make([]colour.Lab, len(t.wanted))
	t.eachGiven(set, func(i int, g *given) { labs[i] = g.lab })
	return labs
}

// apart returns the CIEDE2000 between what two palettes give over the region, on average.
func (t *table) apart(a, b []colour.Lab) (mean float64) {
	for i, w := range t.wanted {
		mean += w.share * colour.DeltaE00(a[i], b[i])
	}
	return tenth(mean)
}
