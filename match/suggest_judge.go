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
	set     []int // the places of its paints in the table, rising
	fits    bool
	promise float64 // its points before its dulling is counted, to a tenth
	score   float64 // its points, to a tenth; found by weigh
	against int     // how many of the picked it was held against

	ladder *Ladder      // of the picked alone, as what follows
	exact  tally        // what it gives by its ladder
	seen   []colour.Lab // for each of the wanted colours
}

// tally is what a palette gives over the region.
type tally struct {
	points   float64 // for the wish, and for what is covered
	covered  float64 // share of the region whose value is reached, see covers
	chroma   float64 // the strongest, where it is at all
	holding  float64 // share that is in the wished hue, or has too little chroma to tell
	showing  float64 // share that shows the wished hue
	turn     float64 // hue steps from the wished hue, of all that shows a hue
	coloured float64 // share that shows a hue

	middle colour.Lab // of all it gives, on average
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
	pointsBare    = 5   // against what is painted without hue where one is wished for, evenly less up to hueless: half of what its value is worth
	pointsChroma  = 0.2 // for each chroma in the wished hue, up to enough; against each where quiet is wished for, and past quietMost in a quiet region
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
	// toned is the Munsell chroma that a region must have in the middle for its own hue to
	// be one to keep: under it the names of colours are grays.
	toned = 1
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
	var sum tally
	t.eachGiven(set, func(i int, g *given) { sum.add(g, t.wanted[i].share) })
	c.fits = t.serves(set, &sum)
	c.promise = tenth(sum.points - t.against(set))
	return c
}

// add counts what a palette gives for a share of the region.
func (s *tally) add(g *given, share float64) {
	s.points += share * g.points
	s.middle.L += share * g.lab.L
	s.middle.A += share * g.lab.A
	s.middle.B += share * g.lab.B
	if g.covered > 0 {
		s.points += pointsCovered * share * g.covered
		s.covered += share * g.covered
		s.chroma = max(s.chroma, g.munsell.Chroma)
	}
	met := math.Abs(g.turn) <= meets
	if met || g.munsell.Chroma < hueless {
		s.holding += share
	}
	if g.munsell.Chroma >= neutral {
		s.turn += share * g.turn
		s.coloured += share
		if met {
			s.showing += share
		}
	}
}

// serves tells whether a palette's hue holds over the region and shows, where one is
// wished for, and whether it is quiet where that is, and of neighbours, the region's
// own where no hue is wished for.
func (t *table) serves(set []int, s *tally) bool {
	inHue := tenth(10*s.holding) >= 10*holds && tenth(10*s.showing) >= 10*holds/2
	switch {
	case t.ask.Hued && !inHue:
		return false
	case t.ask.Scheme == Quiet:
		return tenth(s.chroma) <= quietMost
	case t.ask.Scheme == Analogous && !t.ask.Hued:
		return t.nearOwn(set, s)
	}
	return true
}

// stands tells whether a candidate serves by its ladder too, which its strings' few
// samples tell nearly, and fills in what the ladder gives.
func (t *table) stands(c *candidate) bool {
	c.ladder = LadderOf(t.paintsOf(c.set), t.white, t.ask.Finish)
	for _, w := range t.wanted {
		lab, _ := c.ladder.At(w.lab.L)
		g := given{lab: lab, munsell: lab.Munsell(), covered: c.ladder.covers(w.lab.L)}
		t.rate(&g, w)
		c.exact.add(&g, w.share)
		c.seen = append(c.seen, lab)
	}
	return t.serves(c.set, &c.exact)
}

// weigh counts what a candidate's paints dull one another, and tells whether it still
// fits. In a quiet palette dulling is no fault; one of neighbours has to stay clean.
func (t *table) weigh(c *candidate) bool {
	c.score = c.promise
	if t.ask.Scheme != Quiet {
		dulls := t.dullsOf(c.set)
		c.fits = t.ask.Scheme != Analogous || dulls < dull
		c.score = tenth(c.promise - pointsDull*dulls)
	}
	return c.fits
}

// rate fills in how far what is given lies from the wished hue, and its points for the
// wish. Where no hue is wished for, the region's own is as good a guide as any.
func (t *table) rate(g *given, w want) {
	if t.ask.Hued {
		g.turn = turnTo(t.ask.wanted(), g.munsell.Hue)
	}
	switch {
	case t.ask.Scheme == Quiet:
		g.points = -pointsChroma*g.munsell.Chroma - pointsAway*offHue(g.lab, t.around.A, t.around.B)
	case t.ask.Hued:
		g.points = pointsChroma*min(g.munsell.Chroma, t.enough()) - pointsBare*max(0, 1-g.munsell.Chroma/hueless)
		if g.munsell.Chroma >= neutral {
			g.points -= pointsHue * math.Abs(g.turn)
		}
	default:
		g.points = -pointsAway * offHue(g.lab, w.lab.A, w.lab.B)
	}
	if t.ask.Quiet && t.ask.Scheme != Quiet {
		g.points -= pointsChroma * max(0, g.munsell.Chroma-quietMost)
	}
}

// enough returns the chroma past which more is no better in a wished hue.
func (t *table) enough() float64 {
	if t.ask.Quiet {
		return quietMost
	}
	return enoughChroma
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
// their tints, as StringOf judges mud. Every other sample is a step.
func (t *table) dullsMost(a, b int) (most float64) {
	s := String{From: t.paints[a], To: t.paints[b]}
	looks := t.legs[a*len(t.paints)+b].looks
	for i := 0; i < len(looks); i += 2 {
		share := looks[i].share
		s.Steps = append(s.Steps, StringStep{First: Portion{Parts: 1 - share}, Second: Portion{Parts: share}, Lab: looks[i].lab, Munsell: looks[i].munsell})
	}
	falls := s.thickFalls()
	if slices.ContainsFunc(s.Steps, func(step StringStep) bool { return step.nearlyBlack() }) {
		tints := s.tintFalls(StringOptions{Finish: t.ask.Finish})
		for i := range falls {
			if s.Steps[i].nearlyBlack() {
				falls[i] = tints[i]
			}
		}
	}
	for _, fall := range falls {
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
