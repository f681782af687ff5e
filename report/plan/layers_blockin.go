// The block-in: what is laid first where one coat does not hide the ground.

package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/layer"
	"tonewright/match/paint"
)

// stand is a pile that may stand in for a mix in a block-in: it dries fast, is lean, and
// has about the value.
type stand struct {
	pile  match.Pile
	lab   colour.Lab // thick
	value float64    // Munsell
}

// standParts are the parts of a paint to white that stand-ins are mixed with. Ours: about
// a value step apart for an earth.
var standParts = [][2]float64{{1, 0}, {6, 1}, {2, 1}, {1, 1}, {1, 2}, {1, 4}, {1, 8}, {1, 12}}

// standDays is by when a thin coat of a stand-in's paint is dry to the touch at the
// latest: the fast and the medium ones of [PaintFacts].
const standDays = 6

// standsOf lists the stand-ins that a box has: each fast paint that is no zinc white,
// alone and in the box's white.
func standsOf(box []paint.Paint, finish paint.Finish) (stands []stand) {
	white := whiteBeneath(box)
	for _, p := range box {
		if p.Facts.TouchDry[1] > standDays || p.White() {
			continue
		}
		for _, parts := range standParts {
			pile := match.Pile{Paints: []paint.Paint{p}, Parts: []float64{parts[0]}}
			if parts[1] > 0 && white == nil {
				continue
			}
			if parts[1] > 0 {
				pile = match.Pile{Paints: []paint.Paint{p, *white}, Parts: parts[:]}
			}
			k, s := pile.Optics()
			r := paint.Thick(&k, &s, finish)
			lab := r.Lab()
			stands = append(stands, stand{pile, lab, colour.ValueOf(lab.L)})
		}
	}
	return stands
}

// whiteBeneath returns the white for coats that others go over: of the box's whites the
// one that dries fastest, zinc white never; nil where there is none.
func whiteBeneath(box []paint.Paint) (white *paint.Paint) {
	for i, p := range box {
		if p.White() && !slices.Contains(p.CI, zincWhite) && (white == nil || p.Facts.TouchDry[1] < white.Facts.TouchDry[1]) {
			white = &box[i]
		}
	}
	return white
}

// zincWhite is the Colour Index name of zinc white.
const zincWhite = "PW4"

// What a block-in is judged by. Ours: a block-in is broad, so that shades a value step
// apart share a pile, and it is a stand-in's where that dries by two days sooner or shows
// the ground by half a value step less than the region's own mixes, which show more than
// one.
const (
	broad     = 1.0 // Munsell value
	nearValue = 0.6 // Munsell value between a mix and what stands in for it
	likeStand = 8   // CIEDE2000 that a stand-in in use may be farther off than the nearest
	sooner    = 2   // days
	showsMuch = 1.0 // Munsell value
	showsLess = 0.5
)

// blockIn returns the block-in proposed for a region; false over white, where paint loses
// nothing by what shows through, and where nothing may lie beneath the region's mixes.
func (p *proposer) blockIn(r int) (coat, bool) {
	if p.opt.Mixing.Ground == nil {
		return coat{}, false
	}
	mediums := []layer.Medium{{}, p.opt.Work.Medium} // what dries fast above needs the like beneath
	for _, medium := range mediums {
		own, ownSound := p.broadOf(r, medium, p.ownPiles(r))
		other, otherSound := p.broadOf(r, medium, p.standIns(r))
		if !ownSound && !otherSound {
			continue
		}
		reason := p.whyStandIn(own, other)
		if ownSound && (!otherSound || reason == "") {
			own.why = fmt.Sprintf("Broad tones of the region's own mixes, scrubbed on thin: one coat over %s would let it show.", p.opt.Ground.Name)
			return own, true
		}
		if !ownSound {
			reason = "the region's own mixes may not lie beneath others"
		}
		p.tag(&other)
		other.why = fmt.Sprintf("A stand-in near in value, scrubbed on thin, since %s.", reason)
		return other, true
	}
	return coat{}, false
}

// pick finds a pile for a colour's place, given the piles in use.
type pick func(c coat, colour int) (pileOn, bool)

// broadOf returns a block-in in few piles: the colours by their share, each laid on a
// pile in use where one is near enough. false where a colour has none that is sound.
func (p *proposer) broadOf(r int, medium layer.Medium, pick pick) (coat, bool) {
	c := coat{region: r, pass: PassBlockIn, medium: medium, film: p.opt.Work.Film * blockInFilm}
	for _, j := range byShare(p.regions[r].Colours) {
		pile, found := pick(c, j)
		if !found {
			return c, false
		}
		i := slices.IndexFunc(c.piles, func(have pileOn) bool { return have.of.String() == pile.of.String() })
		if i < 0 {
			c.piles, i = append(c.piles, pile), len(c.piles)
		}
		c.piles[i].on = append(c.piles[i].on, j)
	}
	for i := range c.piles {
		slices.Sort(c.piles[i].on)
	}
	return c, true
}

// byShare returns the indices of colours, the largest first.
func byShare(colours []Colour) []int {
	order := make([]int, len(colours))
	for j := range order {
		order[j] = j
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(colours[b].Share, colours[a].Share) })
	return order
}

// ownPiles picks among a region's own mixes.
func (p *proposer) ownPiles(r int) pick {
	return func(c coat, j int) (pileOn, bool) {
		wanted := p.valueOf(r, j)
		best, off := -1, broad+1e-9
		for i, have := range c.piles {
			if d := math.Abs(p.valueOf(r, have.on[0]) - wanted); d < off && p.bears(c, have, r, j) {
				best, off = i, d
			}
		}
		if best >= 0 {
			return c.piles[best], true
		}
		own := p.mixOf(r, j)
		own.on = nil
		return own, len(own.of.Paints) > 0 && p.bears(c, own, r, j)
	}
}

// standIns picks among the stand-ins.
func (p *proposer) standIns(r int) pick {
	stands := p.allowed(r)
	return func(c coat, j int) (pileOn, bool) {
		wanted, lab := p.valueOf(r, j), p.labOf(r, j)
		best, nearest, used, usedBy := -1, math.Inf(1), -1, math.Inf(1)
		for i, s := range stands {
			pile := pileOn{of: s.pile}
			if math.Abs(s.value-wanted) > nearValue || !p.bears(c, pile, r, j) {
				continue
			}
			d := Round(colour.DeltaE00(lab, s.lab), 1)
			if d < nearest {
				best, nearest = i, d
			}
			if d < usedBy && p.inUse(c, s.pile) {
				used, usedBy = i, d
			}
		}
		if used >= 0 && usedBy <= nearest+likeStand {
			best = used
		}
		if best < 0 {
			return pileOn{}, false
		}
		return pileOn{parts: PartsOf(stands[best].pile), of: stands[best].pile}, true
	}
}

// allowed returns the stand-ins that a region's palette allows.
func (p *proposer) allowed(r int) (stands []stand) {
	for _, s := range p.stands {
		if !slices.ContainsFunc(s.pile.Paints, func(of paint.Paint) bool { return !p.regions[r].Palette.allows(of.ID) }) {
			stands = append(stands, s)
		}
	}
	return stands
}

// allows tells whether a palette has a paint.
func (p Palette) allows(id string) bool {
	return p.From == WholeBox || p.From == "" || id == p.White || slices.Contains(p.Paints, id)
}

// inUse tells whether a pile is laid out already for a block-in, this one or an earlier.
func (p *proposer) inUse(c coat, pile match.Pile) bool {
	return slices.ContainsFunc(c.piles, func(have pileOn) bool { return have.of.String() == pile.String() }) ||
		p.named[PassBlockIn+pile.String()+c.medium.String()] != ""
}

// bears tells whether a pile of a block-in may lie beneath a colour's mix.
func (p *proposer) bears(c coat, pile pileOn, r, j int) bool {
	own := p.mixOf(r, j)
	if len(own.of.Paints) == 0 {
		return false
	}
	c.piles = []pileOn{{of: pile.of, on: []int{j}}}
	next := coat{region: r, pass: PassNext, medium: p.opt.Work.Medium, film: p.opt.Work.Film * p.usualFilm(PassNext), piles: []pileOn{own}}
	return p.sound([]coat{c, next})
}

// whyStandIn says why stand-ins are better than a region's own mixes; "" where they are not.
func (p *proposer) whyStandIn(own, other coat) string {
	if len(own.piles) == 0 || len(other.piles) == 0 {
		return ""
	}
	air := p.opt.Work.Air
	mine, its := days(touchDry(own, air)), days(touchDry(other, air))
	if mine.To-its.To >= sooner {
		return fmt.Sprintf("it is dry to the touch in %s days, the region's own mixes laid as thin in %s", its.words(), mine.words())
	}
	if shows, less := p.shows(own), p.shows(other); shows > showsMuch && shows-less >= showsLess {
		return fmt.Sprintf("it lets %s show by %.1f value at most, the region's own mixes laid as thin by %.1f", p.opt.Ground.Name, less, shows)
	}
	return ""
}

// shows returns by how much Munsell value the ground changes a block-in, at most.
func (p *proposer) shows(c coat) (most float64) {
	for _, pile := range c.piles {
		seen := p.over(c.laid(pile))
		k, s := pile.of.Optics()
		thick := paint.Thick(&k, &s, p.opt.Mixing.Finish)
		most = max(most, math.Abs(colour.ValueOf(seen.Lab().L)-colour.ValueOf(thick.Lab().L)))
	}
	return most
}

// valueOf and labOf return how a colour's mix looks, thick.
func (p *proposer) valueOf(r, j int) float64 { return colour.ValueOf(p.labOf(r, j).L) }

func (p *proposer) labOf(r, j int) colour.Lab {
	lab := p.regions[r].Colours[j].Recipe.Lab
	return colour.Lab{L: lab[0], A: lab[1], B: lab[2]}
}

// tag gives the piles of a block-in of stand-ins their tags.
func (p *proposer) tag(c *coat) {
	for i := range c.piles {
		c.piles[i].tag = p.tagged(PassBlockIn, c.piles[i].of, c.medium)
	}
}

// words writes an estimate: "2 to 5", or "3" where both ends are.
func (s Span) words() string {
	from, to := trimmed(s.From), trimmed(s.To)
	if from == to {
		return from
	}
	return from + " to " + to
}

// trimmed writes whole days from three on, and half ones before.
func trimmed(days float64) string {
	if days < 3 {
		return strings.TrimSuffix(fmt.Sprintf("%.1f", math.Round(days*2)/2), ".0")
	}
	return fmt.Sprintf("%.0f", days)
}
