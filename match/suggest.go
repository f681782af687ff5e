// Palettes proposed for a region.

package match

import (
	"cmp"
	"math"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Scheme is how the paints of a palette stand to one another, or to another region.
type Scheme string

// The schemes a painter can wish for.
const (
	Monochrome Scheme = "monochrome" // one paint, and white
	Analogous  Scheme = "analogous"  // neighbours on the hue circle
	Complement Scheme = "complement" // opposite to another region
	Quiet      Scheme = "quiet"      // of low chroma and near its surroundings in value
)

// Asked is a wish for palettes: a scheme, a hue, or both, and the region it is for.
type Asked struct {
	Scheme Scheme  // "": the hue alone is wished for
	Hue    float64 // Munsell step wished for; with Complement, of what the palette is to be the complement
	Hued   bool    // whether there is a hue at all: a region near gray has none

	Aims         []colour.Lab // the region's colours, keyed to what paint reaches
	Shares       []float64    // of the region that each aim covers, in any unit; nil: all alike
	Around       []colour.Lab // the colours of its surroundings
	AroundShares []float64    // of each; nil: all alike

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
	Covered  float64  // share of the region whose value it reaches, 0-1
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
		all = append(all, t.suggestion(c))
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
		return cmp.Or(cmp.Compare(b.score, a.score), len(a.set)-len(b.set))
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
	for range mostSuggestions {
		if best, found := t.best(ranked, picked); found {
			picked = append(picked, best)
		}
	}
	return picked
}

// best returns the best candidate that is like none that was picked. Those that do not
// promise more than the best so far cannot be better: dulling only takes points.
func (t *table) best(ranked, picked []candidate) (best candidate, found bool) {
	for _, c := range ranked {
		if found && c.score <= best.score {
			break
		}
		like := func(p candidate) bool { return t.alike(c, p) }
		if c = t.dulled(c); c.fits && (!found || c.score > best.score) && !slices.ContainsFunc(picked, like) {
			best, found = c, true
		}
	}
	return best, found
}

// alike tells whether a palette is much the same as one picked before: it has all its
// paints, as alternatives to a recipe do not, or hardly looks different over the region.
func (t *table) alike(c, picked candidate) bool {
	return containsAll(c.set, picked.set) || t.apart(c, picked) < Near
}

func containsAll(set, of []int) bool {
	return !slices.ContainsFunc(of, func(i int) bool { return !slices.Contains(set, i) })
}

// apart returns the CIEDE2000 between two palettes over the region, on average.
func (t *table) apart(a, b candidate) (mean float64) {
	other := t.seen(b.set)
	for i, s := range t.seen(a.set) {
		mean += t.wanted[i].share * colour.DeltaE00(s.lab, other[i].lab)
	}
	return math.Round(10*mean) / 10
}
