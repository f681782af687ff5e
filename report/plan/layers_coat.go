// A coat while it is being planned, and stacks of them.

package plan

import (
	"cmp"
	"math"

	"tonewright/match"
	"tonewright/match/layer"
)

// coat is a coat on one region.
type coat struct {
	region int
	number int // in its region, from 1
	pass   string
	own    bool // set by the painter
	wish   int  // of an own one, its index in Work.Coats
	piles  []pileOn
	medium layer.Medium
	film   float64 // µm, wet
	soaks  bool    // straight on an absorbent ground
	wet    bool    // into the one before
	after  int     // days after the one before, as the painter set it
	why    string
}

// pileOn is a pile and where it is laid.
type pileOn struct {
	id    string // the colour's tag; "" for a pile of the coat's own
	tag   string // on the palette
	parts []Part
	of    match.Pile
	on    []int // colours of the region in whose places it lies
}

// laid returns a pile as it lies in the coat.
func (c coat) laid(p pileOn) layer.Coat {
	return layer.Coat{Paints: p.of.Paints, Parts: p.of.Parts, Film: c.film, Medium: c.medium, Soaks: c.soaks}
}

// at returns the coat as it lies in the place of a colour; false where it has nothing there.
func (c coat) at(colour int) (layer.Coat, bool) {
	for _, p := range c.piles {
		for _, j := range p.on {
			if j == colour {
				return c.laid(p), true
			}
		}
	}
	return layer.Coat{}, false
}

// goOver returns the days after one coat until another of its region may go over it: of
// the places where both lie the one that waits longest, and all of the lower, which the
// brush touches beside them, dry to the touch.
func goOver(below, above coat, air layer.Air) layer.Range {
	wait := touchDry(below, air)
	for _, p := range below.piles {
		for _, j := range p.on {
			if over, both := above.at(j); both {
				w := layer.GoOver(below.laid(p), over, air)
				wait = layer.Range{From: max(wait.From, w.From), To: max(wait.To, w.To)}
			}
		}
	}
	return wait
}

// touchDry returns until when the slowest pile of a coat is dry to the touch.
func touchDry(c coat, air layer.Air) (dry layer.Range) {
	for _, p := range c.piles {
		touch := layer.Drying(c.laid(p), air).Touch
		dry = layer.Range{From: max(dry.From, touch.From), To: max(dry.To, touch.To)}
	}
	return dry
}

// likely is the place in an estimate's range, 0 its early end and 1 its late one, on which
// coats are planned. Ours.
const likely = 0.5

// planned returns the whole day of an estimate that coats are planned for.
func planned(wait Span) float64 {
	return math.Ceil(wait.From + likely*(wait.To-wait.From) - 1e-9)
}

// waits returns the days that a coat is laid after one of its region's coats below it at
// the least. What the painter sets counts from the coat before; next tells whether below
// is that.
func waits(below, above coat, next bool, air layer.Air) float64 {
	switch {
	case above.own && !next:
		return 0
	case above.after > 0:
		return float64(above.after)
	case above.wet:
		return 0
	}
	return planned(days(pause(below, above, air)))
}

// laidOn returns the days on which a region's coats are laid, each as early as planned,
// the first on day 0.
func laidOn(coats []coat, air layer.Air) []float64 {
	on := make([]float64, len(coats))
	for i := range coats {
		for b := range i {
			on[i] = max(on[i], on[b]+waits(coats[b], coats[i], b == i-1, air))
		}
	}
	return on
}

// pause is how long a coat waits for its region's coat before: until it may be gone over.
// A coat of the painter's is kept waiting until what lies beneath is dry to the touch, or
// through under a glaze; that it is a fast one over a slow one is told instead, since
// other paints are a better mend than weeks.
func pause(below, above coat, air layer.Air) layer.Range {
	if above.own && above.pass != PassGlaze {
		return touchDry(below, air)
	}
	return goOver(below, above, air)
}

// faultsOf returns the rules that a region's coats break, each of a pair of coats once.
// Below and Above of a fault are indices in coats.
func faultsOf(coats []coat, colours int, air layer.Air, name func(coat) string) (faults []layer.Fault) {
	day := laidOn(coats, air)
	type key struct {
		rule         string
		below, above int
	}
	seen := map[key]bool{}
	for j := range colours {
		var stack []layer.Laid
		var of []int
		for i, c := range coats {
			if laid, there := c.at(j); there {
				stack = append(stack, layer.Laid{Coat: laid, Name: name(c), Day: day[i], Wet: c.wet})
				of = append(of, i)
			}
		}
		for _, f := range layer.Check(stack, air) {
			f.Below, f.Above = of[f.Below], of[f.Above]
			if len(of) > 0 && f.Change.Coat < len(of) {
				f.Change.Coat = of[f.Change.Coat]
			}
			if k := (key{f.Rule, f.Below, f.Above}); !seen[k] {
				seen[k] = true
				faults = append(faults, f)
			}
		}
	}
	return faults
}

// wishedCoats returns the coats that the painter set for a region.
func (in layersFrom) wishedCoats(r int) (coats []coat) {
	w := in.opt.Work
	for i, wish := range w.Coats {
		if !sameName(wish.Region, in.regions[r].Name) || len(in.regions[r].Colours) == 0 {
			continue
		}
		coats = append(coats, in.wishedCoat(r, i, wish))
	}
	return coats
}

// wishedCoat returns one of them, the i-th wish.
func (in layersFrom) wishedCoat(r, i int, wish CoatWish) coat {
	w := in.opt.Work
	c := coat{region: r, pass: wish.Pass, own: true, wish: i, medium: w.Medium, wet: wish.Wet, after: wish.After, why: "As set in the painting file."}
	if wish.Pass == PassBlockIn {
		c.medium = layer.Medium{}
	}
	if wish.Medium != nil {
		c.medium = *wish.Medium
	}
	c.film = w.Film * cmp.Or(wish.Film, in.usualFilm(wish.Pass))
	if wish.Pile == nil {
		c.piles = in.mixesOf(r, func(int) bool { return true })
		return c
	}
	all := []int{}
	for j := range in.regions[r].Colours {
		all = append(all, j)
	}
	c.piles = []pileOn{{tag: "", parts: PartsOf(*wish.Pile), of: *wish.Pile, on: all}}
	return c
}

// How thick the coats of a pass are, times an ordinary one. Common practice, no source: a
// block-in is scrubbed out thin, and a glaze drawn out or wiped.
const (
	blockInFilm = 0.5
	glazeFilm   = 0.25
)

// usualFilm returns how thick a coat of a pass is, times an ordinary one.
func (in layersFrom) usualFilm(pass string) float64 {
	switch pass {
	case PassBlockIn:
		return blockInFilm
	case PassGlaze:
		return glazeFilm
	}
	return in.opt.Mixing.Coat
}

// mixesOf returns a region's own mixes of the colours that are wanted, each pile once.
func (in layersFrom) mixesOf(r int, wanted func(colour int) bool) (piles []pileOn) {
	for j, c := range in.regions[r].Colours {
		if !wanted(j) {
			continue
		}
		p := in.mixOf(r, j)
		same := false
		for i := range piles {
			if piles[i].tag == p.tag {
				piles[i].on, same = append(piles[i].on, j), true
			}
		}
		if !same && len(p.of.Paints) > 0 {
			p.id = c.ID
			piles = append(piles, p)
		}
	}
	return piles
}

// mixOf returns a colour's own mix, in its own place.
func (in layersFrom) mixOf(r, j int) pileOn {
	c := in.regions[r].Colours[j]
	return pileOn{id: c.ID, tag: cmp.Or(c.SameAs, c.ID), parts: c.Recipe.Parts, of: knifed(c.Recipe.Parts, in.opt.Box.Paints), on: []int{j}}
}
