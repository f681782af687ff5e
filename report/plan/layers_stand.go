// Stand-ins: piles that dry fast and are lean, for coats that others go over.

package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
)

// stand is a pile that may stand in for a mix in a block-in.
type stand struct {
	pile  match.Pile
	lab   colour.Lab // thick
	value float64    // Munsell
	dull  bool       // so near to gray that it may lie under any hue
}

// standParts are the parts of a paint to white that stand-ins are mixed with. Ours: of an
// earth about a value step apart.
var standParts = [][]float64{{1}, {6, 1}, {2, 1}, {1, 1}, {1, 2}, {1, 4}, {1, 8}, {1, 12}}

// standDays is by when a thin coat of a stand-in's paint is dry to the touch at the
// latest: the fast and the medium ones of [PaintFacts].
const standDays = 6

// standsOf lists the stand-ins that a box has: each paint that dries so fast, alone and in
// the white that dries fastest. Zinc white is in none: it turns brittle beneath others;
// nor is a paint that tints strongly, which would tinge all that is brushed over it.
func standsOf(box []paint.Paint, finish paint.Finish) (stands []stand) {
	white := whiteBeneath(box)
	for _, p := range box {
		if p.Facts.TouchDry[1] > standDays || slices.Contains(p.CI, zincWhite) || p.Facts.Strong() && !p.White() {
			continue
		}
		for _, parts := range standParts {
			pile := match.Pile{Paints: []paint.Paint{p}, Parts: parts}
			if len(parts) > 1 {
				if white == nil || p.White() {
					continue
				}
				pile.Paints = append(pile.Paints, *white)
			}
			lab := thickOf(pile, finish)
			stands = append(stands, stand{pile, lab, colour.ValueOf(lab.L), lab.Munsell().Chroma <= dullStand})
		}
	}
	return stands
}

// zincWhite is the Colour Index name of zinc white.
const zincWhite = "PW4"

// whiteBeneath returns the white for coats that others go over: of the box's the one that
// dries fastest, but no zinc white; nil where there is none.
func whiteBeneath(box []paint.Paint) (white *paint.Paint) {
	for i, p := range box {
		if p.White() && !slices.Contains(p.CI, zincWhite) && (white == nil || p.Facts.TouchDry[1] < white.Facts.TouchDry[1]) {
			white = &box[i]
		}
	}
	return white
}

// thickOf returns how a pile looks where nothing shows through.
func thickOf(pile match.Pile, finish paint.Finish) colour.Lab {
	k, s := pile.Optics()
	r := paint.Thick(&k, &s, finish)
	return r.Lab()
}

// dullStand is the Munsell chroma up to which a stand-in may lie under any hue. Ours: umbers
// and their tints are, which have been laid under everything; ochre and blues are not.
const dullStand = 3

// near is how near a stand-in has to be to the mix that comes over it. It is tried tight
// first, and looser where that takes more piles than a session has. Ours: a block-in is
// broad, and shades half a value apart share a pile; its hue matters less than its value.
type near struct {
	value float64 // Munsell
	more  float64 // CIEDE2000 that a dull one may be farther off than the nearest
}

var nears = []near{{0.6, strongMore}, {0.7, 16}, {0.8, 30}, {0.9, 30}, {1, 40}}

// strongMore is the same for a stand-in that is not dull, always.
const strongMore = 8

// place is where a colour lies.
type place struct{ region, colour int }

// standIns returns the stand-in for each place that has one, as few piles as there may be
// over the whole painting: of those near enough again and again the one that serves most
// of the panel.
func (p *proposer) standIns() map[place]stand {
	var chosen map[place]stand
	for _, n := range nears {
		if chosen = p.cover(n); p.blockInPiles(chosen) <= p.opt.Work.Piles {
			break
		}
	}
	return chosen
}

// blockInPiles counts the piles that all block-ins take with these stand-ins, the painter's
// own among them.
func (p *proposer) blockInPiles(chosen map[place]stand) int {
	piles := map[string]bool{}
	for _, r := range p.behind {
		for i, c := range p.wished[r] {
			for _, pile := range c.piles {
				if c.pass == PassBlockIn {
					piles[cmp.Or(pile.tag, fmt.Sprint("own ", r, i))] = true
				}
			}
		}
	}
	for _, at := range p.places() {
		if s, stood := chosen[at]; stood {
			piles[s.pile.String()] = true
		} else if own := p.mixOf(at.region, at.colour); p.bears(own.of, at.region, at.colour) {
			piles[own.tag] = true
		}
	}
	return len(piles)
}

// places lists the places of the regions that coats are proposed for.
func (p *proposer) places() (places []place) {
	for _, r := range p.behind {
		if len(p.wished[r]) > 0 {
			continue
		}
		for j := range p.regions[r].Colours {
			places = append(places, place{r, j})
		}
	}
	return places
}

// cover chooses among the stand-ins that are near enough.
func (p *proposer) cover(n near) map[place]stand {
	places := p.places()
	var off [][]float64 // by place and stand-in, CIEDE2000; NaN where it will not do
	for _, at := range places {
		off = append(off, p.offsOf(at.region, at.colour, n))
	}
	used := make([]bool, len(p.stands))
	served := make([]bool, len(places))
	for {
		best, most := -1, 0.0
		for s := range p.stands {
			gain := 0.0
			for i, at := range places {
				if !served[i] && !math.IsNaN(off[i][s]) {
					gain += p.regions[at.region].Colours[at.colour].PanelShare + leastGain
				}
			}
			if gain = Round(gain, 5); gain > most {
				best, most = s, gain
			}
		}
		if best < 0 {
			break
		}
		used[best] = true
		for i := range places {
			served[i] = served[i] || !math.IsNaN(off[i][best])
		}
	}
	return p.nearestOf(places, off, used)
}

// leastGain is what serving a place counts for beside its share of the panel, so that one
// without any is served too.
const leastGain = 1e-4

// nearestOf gives each place the nearest of the stand-ins in use.
func (p *proposer) nearestOf(places []place, off [][]float64, used []bool) map[place]stand {
	chosen := map[place]stand{}
	for i, at := range places {
		best := -1
		for s, is := range used {
			if is && !math.IsNaN(off[i][s]) && (best < 0 || off[i][s] < off[i][best]) {
				best = s
			}
		}
		if best >= 0 {
			chosen[at] = p.stands[best]
		}
	}
	return chosen
}

// offsOf returns how far each stand-in is from a colour's mix, NaN where it is not near
// enough, or may not lie beneath it. A region's palette does not bind it: it is covered.
func (p *proposer) offsOf(r, j int, n near) []float64 {
	off, nearest := make([]float64, len(p.stands)), math.Inf(1)
	lab := p.labOf(r, j)
	value := colour.ValueOf(lab.L)
	for s, of := range p.stands {
		off[s] = math.NaN()
		if math.Abs(of.value-value) <= n.value && p.bears(of.pile, r, j) {
			off[s] = Round(colour.DeltaE00(lab, of.lab), 1)
			nearest = min(nearest, off[s])
		}
	}
	for s := range off {
		more := n.more
		if !p.stands[s].dull {
			more = strongMore
		}
		if off[s] > nearest+more {
			off[s] = math.NaN()
		}
	}
	return off
}

// labOf returns how a colour's mix looks where nothing shows through.
func (p *proposer) labOf(r, j int) colour.Lab {
	lab := p.regions[r].Colours[j].Recipe.Lab
	return colour.Lab{L: lab[0], A: lab[1], B: lab[2]}
}

// bears tells whether a pile may lie beneath a colour's mix in a block-in, and bears it as
// soon as it is dry to the touch: one that dries slower than the mix would have to be dry
// through.
func (p *proposer) bears(pile match.Pile, r, j int) bool {
	own := p.mixOf(r, j)
	if len(own.of.Paints) == 0 {
		return false
	}
	block := p.blank(r, PassBlockIn)
	block.piles = []pileOn{{of: pile, on: []int{j}}}
	next := p.blank(r, PassNext)
	next.piles = []pileOn{own}
	air := p.opt.Work.Air
	return p.sound([]coat{block, next}) && goOver(block, next, air) == touchDry(block, air)
}
