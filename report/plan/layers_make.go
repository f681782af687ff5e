// The straight line of the layers: regions in order → coats of each → the coats of the
// painting, with when each can be gone over, and the rules they break.

package plan

import (
	"cmp"
	"fmt"
	"slices"

	"tonewright/match/layer"
	"tonewright/match/paint"
)

// layersFrom is what the layers are worked out from.
type layersFrom struct {
	regions []Region
	behind  []int               // the regions, what lies behind first; see behindOf
	touch   func(a, b int) bool // whether two regions have a border in common
	box     []paint.Paint       // what stand-ins and glazes are made of; the recipes are of opt.Box
	opt     Options             // with its defaults
}

// layersOf returns every coat of the painting in the order of painting. Coats that the
// painter set are taken as they are, and what is wrong with them is said; the others are
// proposed, and break no rule. None of its lists is nil.
func layersOf(in layersFrom) Layers {
	in.opt.Work = in.opt.Work.usual()
	w := in.opt.Work
	p := newProposer(in)
	var all []coat
	for _, r := range in.behind {
		coats := p.coats(r)
		if len(coats) > 0 {
			coats[0].soaks = w.Absorbent
		}
		all = append(all, coats...)
	}
	all = inPasses(all)
	l := Layers{
		Air: Air{Round(w.Air.Celsius, 1), Round(w.Air.Humidity, 0)}, Medium: w.Medium.String(), FilmUM: Round(w.Film, 1), Absorbent: w.Absorbent,
		Order: []string{}, Coats: []Coat{}, Broken: []Broken{}, Text: layersText,
	}
	for _, r := range in.behind {
		l.Order = append(l.Order, in.regions[r].Tag)
	}
	for i := range all {
		l.Coats = append(l.Coats, in.entry(all, i))
	}
	l.Broken = in.brokenOf(all)
	return l
}

// layersText says what the figures rest on.
const layersText = "Drying times are estimates, in days from early to late: they rest on the slowest paint of each mix by its share, on the film, the medium, the ground and the air, each a rough factor, and tubes of one name differ. " +
	"A thumb decides: press lightly at the thickest place, and wait where it sticks or leaves a mark. " +
	"Neighbours are taken to overlap by a brush's width, so that a coat also waits for those it touches at its borders; fat over lean and fast over slow are judged within a region only."

// usual fills in what the painter did not say.
func (w Work) usual() Work {
	if w.Air == (layer.Air{}) {
		w.Air = layer.Indoors
	}
	w.Film, w.Sessions, w.Piles = cmp.Or(w.Film, FilmUsual), cmp.Or(w.Sessions, SessionsUsual), cmp.Or(w.Piles, PilesUsual)
	return w
}

// passRank orders the passes of the whole painting.
func passRank(pass string) int { return slices.Index([]string{PassBlockIn, PassNext, PassGlaze}, pass) }

// inPasses orders coats, which stand by region, by their passes: all that are blocked in,
// then the first of the next passes, and so on; within each as they stand. Of one region
// no coat overtakes another, and what is painted into a wet coat follows it at once. It
// numbers them.
func inPasses(all []coat) []coat {
	type key struct{ rank, round int }
	keys := make([]key, len(all))
	order := make([]int, len(all))
	for i, c := range all {
		k := key{rank: passRank(c.pass)}
		all[i].number = 1
		if i > 0 && all[i-1].region == c.region {
			switch before := keys[i-1]; {
			case c.wet && c.after == 0:
				k = before
			case k.rank <= before.rank:
				k = key{before.rank, before.round + 1}
			}
			all[i].number = all[i-1].number + 1
		}
		keys[i], order[i] = k, i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(keys[a].rank, keys[b].rank), cmp.Compare(keys[a].round, keys[b].round))
	})
	sorted := make([]coat, len(all))
	for i, o := range order {
		sorted[i] = all[o]
	}
	return sorted
}

// id is a coat's name: its region's tag and its number in it.
func (in layersFrom) id(c coat) string { return fmt.Sprint(in.regions[c.region].Tag, ".", c.number) }

// entry writes a coat as data.
func (in layersFrom) entry(all []coat, i int) Coat {
	c := all[i]
	air := in.opt.Work.Air
	e := Coat{
		ID: in.id(c), Region: in.regions[c.region].Tag, Pass: c.pass, Own: c.own, Mixes: []CoatMix{}, After: c.after,
		Medium: c.medium.String(), FilmUM: Round(c.film, 1), Over: []string{}, Why: c.why, Cautions: []string{},
	}
	for j, p := range c.piles {
		laid := c.laid(p)
		dries := layer.Drying(laid, air)
		mix := CoatMix{
			ID: p.id, Pile: cmp.Or(p.tag, e.ID), On: in.onTags(c.region, p.on), Parts: p.parts,
			TouchDry: days(dries.Touch), Slowest: laid.Paints[dries.Slowest].Name, Oil: shares(layer.Oil(laid)),
		}
		e.Mixes = append(e.Mixes, mix)
		wet := days(dries.Wet)
		if j == 0 {
			e.WetFor, e.Oil = wet, mix.Oil
		}
		e.TouchDry = Span{max(e.TouchDry.From, mix.TouchDry.From), max(e.TouchDry.To, mix.TouchDry.To)}
		e.WetFor = Span{min(e.WetFor.From, wet.From), min(e.WetFor.To, wet.To)}
		e.Oil = Span{min(e.Oil.From, mix.Oil.From), max(e.Oil.To, mix.Oil.To)}
	}
	e.GoOver = e.TouchDry
	if next := in.after(all, i); next >= 0 {
		e.GoOver = days(pause(c, all[next], air))
	}
	e.rests = in.restsOf(all, i)
	for _, b := range in.beneath(all, i) {
		e.Over = append(e.Over, in.id(all[b]))
	}
	if before := in.before(all, i); c.wet && before >= 0 {
		e.Into = in.id(all[before])
	}
	return e
}

// before and after return the index of the same region's coat before and after one, -1
// where there is none.
func (in layersFrom) before(all []coat, i int) int {
	for b := i - 1; b >= 0; b-- {
		if all[b].region == all[i].region {
			return b
		}
	}
	return -1
}

func (in layersFrom) after(all []coat, i int) int {
	for a := i + 1; a < len(all); a++ {
		if all[a].region == all[i].region {
			return a
		}
	}
	return -1
}

// onTags names a region's colours.
func (in layersFrom) onTags(region int, colours []int) []string {
	tags := []string{}
	for _, j := range colours {
		tags = append(tags, in.regions[region].Colours[j].ID)
	}
	return tags
}

// days and shares write an estimate as data.
func days(r layer.Range) Span   { return Span{Round(r.From, 1), Round(r.To, 1)} }
func shares(r layer.Range) Span { return Span{Round(r.From, 2), Round(r.To, 2)} }
