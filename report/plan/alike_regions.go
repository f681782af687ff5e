// Neighbouring regions that run into one another to a painter's eye.

package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"tonewright/analyze/colour"
)

// A region's main colours are its largest, until they cover mainShare of it. A border
// is lost where of all pairs of main colours across it, weighed by their shares, lostShare
// are. Ours: half of a region is what it is called by, and a border of which a quarter
// melts away has a hole that the eye follows; where the colours lie along it is not known.
const (
	mainShare = 0.5
	lostShare = 0.25
)

// neighbours returns the regions whose border is lost to the eye. The figures are those
// of the weightiest pair of their main colours that is.
func (e *eye) neighbours(regions []Region, touching func(a, b int) bool) ([]LookAlike, int) {
	mains := make([][]dab, len(regions))
	for i, r := range regions {
		mains[i] = e.mainOf(r)
	}
	var lost []pair
	worst := map[[2]int][2]*dab{}
	for a := range regions {
		for b := a + 1; b < len(regions); b++ {
			if !touching(a, b) {
				continue
			}
			if p, of, found := e.border(mains[a], mains[b]); found {
				p.a, p.b = a, b
				p.weight = Round(p.full*min(regions[a].Share, regions[b].Share), 3)
				lost, worst[[2]int{a, b}] = append(lost, p), of
			}
		}
	}
	return weightiest(lost, func(p pair) LookAlike {
		of := worst[[2]int{p.a, p.b}]
		kind, how := tellBorder(of[0], of[1])
		return LookAlike{A: regions[p.a].Tag, B: regions[p.b].Tag, Full: p.full, Seen: p.seen, Tells: how, Kind: kind}
	})
}

// mainOf returns the main colours of a region, the largest first; share is of the region.
func (e *eye) mainOf(r Region) (main []dab) {
	covered := 0.0
	bySize := slices.Clone(r.Colours)
	slices.SortStableFunc(bySize, func(a, b Colour) int { return cmp.Compare(b.Share, a.Share) })
	for _, c := range bySize {
		if covered >= mainShare {
			break
		}
		lab := colour.Lab{L: c.Recipe.Lab[0], A: c.Recipe.Lab[1], B: c.Recipe.Lab[2]}
		main = append(main, dab{tag: c.ID, name: c.ID, share: c.Share, lab: lab, seen: e.sight.See(lab)})
		covered += c.Share
	}
	return main
}

// border returns the weightiest pair of colours that is lost across a border, and
// whether the border is.
func (e *eye) border(first, second []dab) (worst pair, of [2]*dab, found bool) {
	var all, lost, most float64
	for i := range first {
		for j := range second {
			share := first[i].share * second[j].share
			all += share
			p := e.pairOf(i, j, &first[i], &second[j])
			if !p.lost() {
				continue
			}
			if lost += share; Round(share, 6) > most {
				most, worst, of = Round(share, 6), p, [2]*dab{&first[i], &second[j]}
			}
		}
	}
	return worst, of, most > 0 && Round(lost, 6) >= Round(lostShare*all, 6)
}

// tellBorder says how to keep two neighbours apart.
func tellBorder(a, b *dab) (kind, how string) {
	if d := Round(a.seenValue()-b.seenValue(), 1); math.Abs(d) >= sideBySide {
		dark, light := order(a, b, d)
		return "value", "Along the border " + byEye(dark, light, math.Abs(d))
	}
	return "tag", fmt.Sprintf("Keep the drawn line between them open until both are laid in, %s on one side and %s on the other.", a.name, b.name)
}
