// Judging a palette for a region.

package match

import (
	"math"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// candidate is a palette and how well it serves.
type candidate struct {
	set   []int // the places of its paints in the table, rising
	fits  bool
	score float64 // in points, to a tenth
}

// What speaks for a palette and against it, in points, of which the whole region's
// values within reach are worth 10. Ours, each set by what a painter would give for it:
const (
	pointsCovered = 10  // for the share of the region whose value it reaches
	pointsTube    = 0.3 // against each tube: fewer are easier to keep in tune
	pointsNew     = 0.6 // against each that no other region uses: shared tubes tie a picture together
	pointsDull    = 0.2 // against each Munsell chroma lost between its paints
	pointsDrying  = 1   // against very slow and fast driers worked wet into wet
	pointsFading  = 2   // against each paint that fades
	pointsAway    = 0.1 // against each CIEDE2000, roughly, in hue and chroma from where it should be
	pointsHue     = 0.2 // against each step from the wished hue
	pointsChroma  = 0.2 // for each chroma in the wished hue, up to enoughChroma; against each where quiet is wished for
)

// Where the schemes draw their lines. Ours.
const (
	// enoughChroma is the Munsell chroma past which more is no better: cadmiums would win every
	// wish, and a region seldom wants more.
	enoughChroma = 8
	// quietMost is the strongest chroma of a quiet palette: two chips of the book. Burnt
	// umber and white stay under it, burnt sienna does over half of its values.
	quietMost = 4
	// strong is the chroma over which a tube has no place in a quiet palette but beside
	// its complement, which grays it.
	strong = 8
	// oneHue is how many steps two tubes lie apart to be two neighbours: half a family.
	oneHue = 5
	// holds is the share of a region over which a wished hue must hold, and half of it
	// must show it.
	holds = 0.8
)

// judge tells whether a palette fits the wish and scores it, its dulling left out.
func (t *table) judge(set []int) candidate {
	c := candidate{set: set}
	if !t.inScheme(set) {
		return c
	}
	seen := t.seen(set)
	if t.ask.Hued && !t.inHue(seen) || t.ask.Scheme == Quiet && strongestOf(seen) > quietMost {
		return c
	}
	for i, g := range seen {
		share := t.wanted[i].share
		if g.within {
			c.score += pointsCovered * share
		}
		c.score += share * t.wish(g, t.wanted[i].lab)
	}
	c.fits, c.score = true, tenth(c.score-t.against(set))
	return c
}

// dulled returns the candidate with what its paints dull one another held against it.
// In a quiet palette that is no fault; one of neighbours has to stay clean.
func (t *table) dulled(c candidate) candidate {
	if t.ask.Scheme != Quiet {
		dulls := t.dullsOf(c.set)
		c.fits = t.ask.Scheme != Analogous || dulls < dull
		c.score = tenth(c.score - pointsDull*dulls)
	}
	return c
}

// wish returns the points that a colour has for the wish; wanted is the region's own.
// Where no hue is wished for the region's own is as good a guide as any.
func (t *table) wish(g given, wanted colour.Lab) float64 {
	switch {
	case t.ask.Scheme == Quiet:
		return -pointsChroma*g.munsell.Chroma - pointsAway*offHue(g.lab, t.around[0], t.around[1])
	case t.ask.Hued:
		off := 0.0
		if g.munsell.Chroma >= neutral {
			off = colour.HuesApart(g.munsell.Hue, t.ask.wanted())
		}
		return pointsChroma*min(g.munsell.Chroma, enoughChroma) - pointsHue*off
	}
	return -pointsAway * offHue(g.lab, wanted.A, wanted.B)
}

// offHue returns how far a colour lies from an a* and b*, its lightness aside, roughly
// in CIEDE2000.
// Source: [Sharma2005] S_C.
func offHue(c colour.Lab, a, b float64) float64 {
	middle := (c.Chroma() + math.Hypot(a, b)) / 2
	return math.Hypot(c.A-a, c.B-b) / (1 + 0.045*middle)
}

// against returns the points against a palette whatever it is wished for, its dulling
// left out.
func (t *table) against(set []int) (points float64) {
	paints := t.paintsOf(set)
	for _, p := range paints {
		points += pointsTube
		if len(t.ask.InUse[p.ID]) == 0 {
			points += pointsNew
		}
		if fades(&p) {
			points += pointsFading
		}
	}
	if _, _, clash := dryingClash(paints); clash {
		points += pointsDrying
	}
	return points
}

// inScheme tells whether the paints of a palette stand to one another as is wished.
func (t *table) inScheme(set []int) bool {
	switch t.ask.Scheme {
	case Monochrome:
		return len(set) == 1
	case Analogous:
		return t.areNeighbours(set)
	case Quiet:
		return t.isTamed(set)
	}
	return true
}

// huesOf returns the hues of the paints that have one.
func (t *table) huesOf(set []int) (hues []float64) {
	for _, i := range set {
		if t.colour[i].Chroma >= hueless {
			hues = append(hues, t.colour[i].Hue)
		}
	}
	return hues
}

// areNeighbours tells whether a palette has two hues or three within a quarter of the
// circle, and none of them twice.
func (t *table) areNeighbours(set []int) bool {
	hues := t.huesOf(set)
	for i, a := range hues {
		for _, b := range hues[:i] {
			if colour.HuesApart(a, b) < oneHue {
				return false
			}
		}
	}
	return len(hues) > 1 && analogous(hues)
}

// isTamed tells whether a palette has no strong tube but beside its complement.
func (t *table) isTamed(set []int) bool {
	for _, i := range set {
		if t.colour[i].Chroma > strong && !complementary(t.huesOf(set)) {
			return false
		}
	}
	return true
}

// inHue tells whether a palette holds the wished hue over the region: it is there, or
// there is too little chroma to tell, over holds of it; and half of that shows it.
func (t *table) inHue(seen []given) bool {
	holding, showing := 0.0, 0.0
	for i, g := range seen {
		met := colour.HuesApart(g.munsell.Hue, t.ask.wanted()) <= meets
		if met || g.munsell.Chroma < hueless {
			holding += t.wanted[i].share
		}
		if met && g.munsell.Chroma >= neutral {
			showing += t.wanted[i].share
		}
	}
	return tenth(10*holding) >= 10*holds && tenth(10*showing) >= 10*holds/2
}

// strongestOf returns the highest chroma of some colours.
func strongestOf(seen []given) (most float64) {
	for _, g := range seen {
		most = max(most, g.munsell.Chroma)
	}
	return most
}

// paintsOf returns the paints of a palette.
func (t *table) paintsOf(set []int) (paints []paint.Paint) {
	for _, i := range set {
		paints = append(paints, t.paints[i])
	}
	return paints
}

// dullsOf returns the most that any two paints of a palette dull one another.
func (t *table) dullsOf(set []int) (most float64) {
	for i, a := range set {
		for _, b := range set[i+1:] {
			at := a*len(t.paints) + b
			if t.dulls[at] < 0 {
				t.dulls[at] = t.dullsMost(a, b)
			}
			most = max(most, t.dulls[at])
		}
	}
	return most
}

// dullsMost returns the Munsell chroma that the string between two paints falls under
// the straight path where it falls most, at least 0: of steps nearly black, that of
// their tints, as StringOf judges mud.
func (t *table) dullsMost(a, b int) (most float64) {
	s := String{From: t.paints[a], To: t.paints[b]}
	for i, p := range sampled(&s.From, &s.To, quickOdds, quickSamples, t.ask.Finish) {
		s.Steps = append(s.Steps, StringStep{First: Portion{Parts: 1 - p.share}, Second: Portion{Parts: p.share}, Lab: p.lab, Munsell: t.legs[a*len(t.paints)+b][i].munsell})
	}
	thick, tints := s.falls(StringOptions{Finish: t.ask.Finish})
	for i, step := range s.Steps {
		fall := thick[i]
		if step.nearlyBlack() {
			fall = tints[i]
		}
		most = max(most, fall.by)
	}
	return most
}

// fades tells whether a paint's lightfastness is under the two classes of [ASTMD4302]
// for lasting work.
func fades(p *paint.Paint) bool {
	return !slices.Contains([]string{"I", "II"}, p.Facts.Lightfastness)
}

// dryingClash returns a fast drier and a very slow one where a palette has both: worked
// wet into wet, the one skins over while the other moves beneath. Common practice, no
// source.
func dryingClash(paints []paint.Paint) (fast, slow paint.Paint, clash bool) {
	for _, a := range paints {
		for _, b := range paints {
			if a.Facts.Drying == "fast" && b.Facts.Drying == "very slow" {
				return a, b, true
			}
		}
	}
	return fast, slow, false
}
