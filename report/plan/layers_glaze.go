// Glazes, where they earn their wait.

package plan

import (
	"fmt"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/layer"
	"tonewright/match/paint"
)

// When a glaze is proposed. Ours: the mix misses its aim, in chroma by half a chip of the
// Munsell book or by being half a value too light; and the glaze brings it by two
// CIEDE2000 nearer, which is what two can tell apart side by side.
const (
	glazeDull  = 1.0 // Munsell chroma short
	glazeLight = 0.5 // Munsell value too light
	glazeGains = 2.0 // CIEDE2000
)

// weakLight is the lightfastness class from which a paint is not proposed for a glaze:
// in a thin film it fades first.
const weakLight = "III"

// glazes returns the glazes that a region earns, a coat for each strength of medium.
func (p *proposer) glazes(r int) (coats []coat) {
	for j := range p.regions[r].Colours {
		g, earned := p.glazeFor(r, j)
		if !earned {
			continue
		}
		c := p.glazeOf(r, j, g)
		i := slices.IndexFunc(coats, func(have coat) bool { return have.medium == c.medium })
		if i < 0 {
			coats = append(coats, c)
			continue
		}
		coats[i].piles, coats[i].why = withPile(coats[i].piles, c.piles[0]), coats[i].why+" "+c.why
	}
	return coats
}

// glazeFor returns the glaze that a colour earns over its own mix, if any.
func (p *proposer) glazeFor(r, j int) (thinned, bool) {
	c, own := p.regions[r].Colours[j], p.mixOf(r, j)
	rec := c.Recipe
	if !c.Missed() || rec.ChromaShift > -glazeDull && rec.ValueShift < glazeLight || len(own.of.Paints) == 0 {
		return thinned{}, false
	}
	k, s := own.of.Optics()
	under := paint.Thick(&k, &s, p.opt.Mixing.Finish)
	aim := colour.Lab{L: c.AimLab[0], A: c.AimLab[1], B: c.AimLab[2]}
	for _, g := range match.AdviseGlaze(p.glazing(r), &under, aim, p.opt.Mixing.Finish).Best {
		t := p.thinned(g.Paint, &under, aim)
		if !g.Milky() && Round(rec.DeltaE-t.off, 2) >= glazeGains {
			return t, true
		}
	}
	return thinned{}, false
}

// thinned is a paint in a glaze of the usual film.
type thinned struct {
	paint  paint.Paint
	medium float64 // parts to one of paint
	off    float64 // CIEDE2000 from the aim, over the mix it is for
}

// glazeMedia are the parts of medium to one of paint that a glaze is mixed with. Ours.
var glazeMedia = []float64{1, 2, 3, 4, 6, 8, 12, 16}

// thinned returns how much medium brings one coat of a paint nearest to an aim; of equals
// the least.
func (p *proposer) thinned(of paint.Paint, under *colour.Spectrum, aim colour.Lab) (best thinned) {
	for i, m := range glazeMedia {
		seen := paint.Film(&of.K, &of.S, glazeFilm*paint.Coat/(1+m), under, p.opt.Mixing.Finish)
		if off := Round(colour.DeltaE00(aim, seen.Lab()), 2); i == 0 || off < best.off {
			best = thinned{of, m, off}
		}
	}
	return best
}

// glazing returns the paints that a region may be glazed with.
func (p *proposer) glazing(r int) (paints []paint.Paint) {
	for _, of := range p.box {
		if of.Facts.Lightfastness < weakLight && p.regions[r].Palette.allows(of.ID) {
			paints = append(paints, of)
		}
	}
	return paints
}

// allows tells whether a palette has a paint.
func (p Palette) allows(id string) bool { return p.From == WholeBox || slices.Contains(p.Paints, id) }

// glazeOf is a glaze on one colour.
func (p *proposer) glazeOf(r, j int, g thinned) coat {
	pile, c := match.Pile{Paints: []paint.Paint{g.paint}, Parts: []float64{1}}, p.regions[r].Colours[j]
	glaze := p.blank(r, PassGlaze)
	glaze.medium = layer.Medium{Kind: layer.Linseed, Parts: g.medium}
	glaze.piles = []pileOn{{tag: p.tagged(PassGlaze, pile, glaze.medium), parts: PartsOf(pile), of: pile, on: []int{j}}}
	glaze.why = fmt.Sprintf("%s over the dry %s brings it from %.1f to %.1f CIEDE2000 of its aim, nearer than any mix came.", g.paint.Name, c.ID, c.Recipe.DeltaE, g.off)
	return glaze
}
