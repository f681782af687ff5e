// What coats a region is proposed to have.

package plan

import (
	"fmt"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/layer"
	"tonewright/match/paint"
)

// proposer proposes the coats of one region after the other; piles of its own are told
// apart over the whole painting, so that one may serve several regions.
type proposer struct {
	layersFrom
	wished   [][]coat          // the painter's own, by region
	stands   []stand           // what block-ins may be made of
	standFor map[place]stand   // what is taken
	named    map[string]string // a pile's parts and medium → its tag
	count    map[string]int    // of the piles of a pass so far
}

func newProposer(in layersFrom) *proposer {
	p := &proposer{layersFrom: in, stands: standsOf(in.box, in.opt.Mixing.Finish), named: map[string]string{}, count: map[string]int{}}
	for r := range in.regions {
		p.wished = append(p.wished, in.wishedCoats(r))
	}
	if in.opt.Mixing.Ground != nil {
		p.standFor = p.standIns()
	}
	return p
}

// mostNext is the most next passes that are proposed. Ours: each waits a week or two, and
// what three coats over a block-in do not hide is better mixed otherwise.
const mostNext = 3

// coats returns the coats of a region: the painter's own, or else those proposed, which
// break no rule of layer.Check on the days they are planned for; none for a region without
// colours.
func (p *proposer) coats(r int) (coats []coat) {
	if len(p.wished[r]) > 0 || len(p.regions[r].Colours) == 0 {
		return p.wished[r]
	}
	block := p.blockIn(r)
	for most := mostNext; most > 0; most-- {
		coats = p.nextPasses(r, block, most)
		if len(block.piles) > 0 {
			coats = append([]coat{block}, coats...)
		}
		if p.sound(coats) {
			break
		}
	}
	for _, g := range p.glazes(r) {
		if with := append(coats[:len(coats):len(coats)], g); p.sound(with) {
			coats = with
		}
	}
	return coats
}

// sound tells whether a region's coats break no rule, but for what the painter set.
func (p *proposer) sound(coats []coat) bool {
	return !slices.ContainsFunc(p.faults(coats), func(f layer.Fault) bool { return !ofSettings(coats, f) })
}

// nextPasses returns the ordinary coats of a region over its block-in, as many of each
// mix as hide what lies beneath, up to most.
func (p *proposer) nextPasses(r int, block coat, most int) (coats []coat) {
	colours := p.regions[r].Colours
	needs := make([]int, len(colours))
	passes := 1
	for j := range colours {
		needs[j] = p.needs(r, j, block, most)
		passes = max(passes, needs[j])
	}
	for n := 1; n <= passes; n++ {
		c := p.blank(r, PassNext)
		c.piles = p.mixesOf(r, func(j int) bool { return n <= max(1, needs[j]) })
		c.why = p.whyNext(c, n, passes, len(block.piles) > 0)
		coats = append(coats, c)
	}
	return coats
}

// needs returns how many ordinary coats of a colour's mix hide what lies beneath it, the
// ground with the block-in on it, up to most; 1 over white.
func (p *proposer) needs(r, j int, block coat, most int) int {
	if p.opt.Mixing.Ground == nil {
		return 1
	}
	under := *p.opt.Mixing.Ground
	if laid, there := block.at(j); there {
		under = p.over(laid)
	}
	k, s := p.mixOf(r, j).of.Optics()
	n := match.CoverOf(&k, &s, &under, p.opt.Mixing.Finish, p.opt.Mixing.Coat).Coats
	if n == 0 || n > most {
		return most
	}
	return n
}

// whyNext says why a next pass is there.
func (p *proposer) whyNext(c coat, n, passes int, blocked bool) string {
	switch {
	case n > 1:
		return fmt.Sprintf("Once more what still lets show through: %s.", match.Listed(p.tagsOn(c)))
	case blocked && passes > 1:
		return "The region's mixes over the dry block-in, its shades blended while they are wet; what lets show through comes once more."
	case blocked:
		return "The region's mixes over the dry block-in, its shades blended while they are wet; they hide it in one coat."
	case p.opt.Mixing.Ground == nil:
		return fmt.Sprintf("A single pass does over %s: the region's mixes, its shades blended while they are wet.", p.opt.Ground.Name)
	case passes > 1:
		return fmt.Sprintf("The region's mixes straight onto the %s ground, its shades blended while they are wet; what lets show through comes once more.", p.opt.Ground.Name)
	}
	return fmt.Sprintf("A single pass does: one coat of these mixes hides the %s ground. Its shades are blended while they are wet.", p.opt.Ground.Name)
}

// tagsOn lists the colours that a coat is laid on.
func (p *proposer) tagsOn(c coat) (tags []string) {
	for _, pile := range c.piles {
		tags = append(tags, p.onTags(c.region, pile.on)...)
	}
	return tags
}

// tagged gives a pile of a coat's own its tag: the one it has already, or the next.
func (p *proposer) tagged(pass string, pile match.Pile, medium layer.Medium) string {
	key := pass + pile.String() + medium.String()
	if p.named[key] == "" {
		p.count[pass]++
		p.named[key] = fmt.Sprint(pass, " ", p.count[pass])
	}
	return p.named[key]
}

// over returns what is seen of a coat on the ground. What is stirred in takes room and
// colours nothing; solvent leaves.
func (p *proposer) over(c layer.Coat) colour.Spectrum {
	k, s := paint.Mix(c.Paints, c.Parts)
	of := c.Film / p.opt.Work.Film / (1 + c.Medium.Parts)
	return paint.Film(&k, &s, of*paint.Coat, p.opt.Mixing.Ground, p.opt.Mixing.Finish)
}
