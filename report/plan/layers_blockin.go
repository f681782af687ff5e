// The block-in: what is laid first on a ground that shows through.

package plan

import (
	"fmt"
	"math"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/layer"
)

// blockIn returns the block-in proposed for a region: in the place of each colour its
// stand-in, or where there is none its own mix. It has no piles over white, where paint
// loses nothing by what shows through, nor where nothing may lie beneath the region's
// mixes.
func (p *proposer) blockIn(r int) coat {
	c := p.blank(r, PassBlockIn)
	if p.opt.Mixing.Ground == nil {
		return c
	}
	var off float64
	var stands, own []string
	for j, col := range p.regions[r].Colours {
		s, stood := p.standFor[place{r, j}]
		if stood {
			off = max(off, math.Abs(s.value-colour.ValueOf(p.labOf(r, j).L)))
			for _, of := range s.pile.Paints {
				stands = withWord(stands, of.Name)
			}
			pile := pileOn{tag: p.tagged(PassBlockIn, s.pile, c.medium), parts: PartsOf(s.pile), of: s.pile, on: []int{j}}
			c.piles = withPile(c.piles, pile)
			continue
		}
		if mix := p.mixOf(r, j); p.bears(mix.of, r, j) {
			own = append(own, col.ID)
			c.piles = withPile(c.piles, mix)
		}
	}
	c.why = p.whyBlockIn(c, stands, own, off)
	return c
}

// withPile adds a pile, or where it lies if it is there already.
func withPile(piles []pileOn, p pileOn) []pileOn {
	for i := range piles {
		if piles[i].tag == p.tag {
			piles[i].on = append(piles[i].on, p.on...)
			return piles
		}
	}
	return append(piles, p)
}

// whyBlockIn says why a region is blocked in so: stands are the paints of its stand-ins,
// own the colours that have none, and off is how far in value a stand-in is at most from
// what comes over it.
func (p *proposer) whyBlockIn(c coat, stands, own []string, off float64) string {
	ground := p.opt.Ground.Name
	if len(stands) == 0 {
		return fmt.Sprintf("Thin, so that the next pass does not lie on bare %s; of its own mixes, since none of the fast paints is near in value.", ground)
	}
	verb := "stand in for its own mixes"
	if len(stands) == 1 {
		verb = "stands in for its own mixes"
	}
	why := fmt.Sprintf("Thin and lean, so that the next pass does not lie on bare %s: %s %s, within %.1f value of what comes over", ground, match.Listed(stands), verb, max(0.1, off))
	mine, its := p.ownThin(c.region), days(touchDry(c, p.opt.Work.Air))
	if mine.To-its.To >= sooner || mine.From-its.From >= sooner {
		why += fmt.Sprintf("; dry to the touch in %s days, where its own mixes as thin take %s", its.words(), mine.words())
	}
	if len(own) > 0 {
		why += fmt.Sprintf("; in the places of %s the mix itself, since no stand-in is near", match.Listed(own))
	}
	return why + "."
}

// sooner is by how many days a stand-in has to dry sooner for it to be said. Ours.
const sooner = 1

// ownThin returns when a region's own mixes would be dry to the touch, laid as a block-in.
func (p *proposer) ownThin(r int) Span {
	c := p.blank(r, PassBlockIn)
	c.piles = p.mixesOf(r, func(int) bool { return true })
	return days(touchDry(c, p.opt.Work.Air))
}

// blank returns a coat of a pass with nothing in it yet, as thick as usual and with the
// medium of ordinary coats. A block-in goes without, unless that dries fast: then what is
// beneath has to as well.
func (p *proposer) blank(r int, pass string) coat {
	c := coat{region: r, pass: pass, medium: p.opt.Work.Medium, film: p.opt.Work.Film * p.usualFilm(pass)}
	if pass == PassBlockIn && c.medium.Kind != layer.Alkyd {
		c.medium = layer.Medium{}
	}
	return c
}
