// What the painter's own sight makes of the plan.

package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// LookAlikes is what the painter's sight takes for one another and others do not, and
// the reverse. All lists are empty for full sight; each holds the pairs that matter
// most, those first.
type LookAlikes struct {
	Sight   string      `json:"sight"`   // "deutan 0.8"
	Piles   []LookAlike `json:"piles"`   // mixes of the plan; A and B are tags of colours
	Tubes   []LookAlike `json:"tubes"`   // paints the plan uses, as they come, or in white where Tells says so; A and B are ids
	Regions []LookAlike `json:"regions"` // neighbours on the panel; A and B are tags of regions
	Reverse []LookAlike `json:"reverse"` // mixes that the painter sees apart in value and others hardly do; A and B are tags of colours
	More    MoreAlike   `json:"more"`
}

// MoreAlike counts the pairs that were left off the end of each list.
type MoreAlike struct {
	Piles   int `json:"piles"`
	Tubes   int `json:"tubes"`
	Regions int `json:"regions"`
	Reverse int `json:"reverse"`
}

// LookAlike is two things that look alike to one sight and not to the other.
type LookAlike struct {
	A     string  `json:"a"`
	B     string  `json:"b"`
	Full  float64 `json:"full"`  // CIEDE2000 to full sight
	Seen  float64 `json:"seen"`  // CIEDE2000 to the painter's
	Tells string  `json:"tells"` // how to tell them apart without hue
	Kind  string  `json:"kind"`  // what tells: "value", "tint", "opacity", "tag"
}

// From clearlyApart on two colours side by side look different at a glance, up to
// nearlyAlike they look like one, in CIEDE2000. Ours: what lies between is hard to tell,
// and no pair is called lost for it.
const (
	clearlyApart = 10
	nearlyAlike  = 4
)

// mostAlike is how many pairs a list holds. Ours: a page. The demo and three photographs
// have 1 to 15 pairs of piles for each dichromat.
const mostAlike = 12

// lookAlikesOf lists what the sight takes for one another in a plan's regions and the
// paints they are mixed from, and how to tell it apart; paints are the box, touching
// tells which regions, by index, are neighbours on the panel.
func lookAlikesOf(regions []Region, touching func(a, b int) bool, paints []paint.Paint, sight colour.Sight) LookAlikes {
	l := LookAlikes{Sight: sight.String(), Piles: []LookAlike{}, Tubes: []LookAlike{}, Regions: []LookAlike{}, Reverse: []LookAlike{}}
	if sight.Full() {
		return l
	}
	e := eye{sight: sight, white: paint.OwnWhite(paints)}
	piles := e.dabsOf(regions, paints)
	l.Piles, l.More.Piles = e.alike(piles, nil, e.tellPiles)
	tubes := e.tubesIn(piles, paints)
	l.Tubes, l.More.Tubes = e.alike(tubes, e.tintsOf(tubes), e.tellTubes)
	l.Regions, l.More.Regions = e.neighbours(regions, touching)
	l.Reverse, l.More.Reverse = e.reverse(piles)
	return l
}

// pair is two piles by index and how far apart they are.
type pair struct {
	a, b       int
	tinted     bool // in white, not as they come
	full, seen float64
	weight     float64 // of the whole panel, what goes wrong if they are taken for one another
}

// alike returns the pairs of piles that are lost to the eye, as they come or, where
// there are tints of them, in white, with what tells them apart.
func (e *eye) alike(piles, tints []dab, tell func(a, b *dab, tinted bool) (kind, how string)) ([]LookAlike, int) {
	var lost []pair
	for a := range piles {
		for b := a + 1; b < len(piles); b++ {
			p := e.pairOf(a, b, &piles[a], &piles[b])
			if !p.lost() && tints != nil {
				p = e.pairOf(a, b, &tints[a], &tints[b])
				p.tinted = true
			}
			if p.lost() {
				lost = append(lost, p)
			}
		}
	}
	return weightiest(lost, func(p pair) LookAlike {
		kind, how := tell(&piles[p.a], &piles[p.b], p.tinted)
		return LookAlike{A: piles[p.a].tag, B: piles[p.b].tag, Full: p.full, Seen: p.seen, Tells: how, Kind: kind}
	})
}

// pairOf measures two piles, to a tenth, so that the last bit decides nothing. What
// goes wrong is both their areas, each by how far it is from what it is taken for.
func (e *eye) pairOf(a, b int, first, second *dab) pair {
	full := Round(colour.DeltaE00(first.lab, second.lab), 1)
	seen := min(full, Round(colour.DeltaE00(first.seen, second.seen), 1)) // see colour.Sight.Apart
	return pair{a: a, b: b, full: full, seen: seen, weight: Round(full*(first.share+second.share), 3)}
}

// lost tells whether others tell the two clearly apart and this eye hardly.
func (p pair) lost() bool { return p.full >= clearlyApart && p.seen <= nearlyAlike }

// weightiest writes the weightiest pairs, in that order, and counts those left off.
func weightiest(pairs []pair, write func(pair) LookAlike) ([]LookAlike, int) {
	slices.SortStableFunc(pairs, func(a, b pair) int { return cmp.Compare(b.weight, a.weight) })
	out := []LookAlike{}
	for _, p := range pairs[:min(len(pairs), mostAlike)] {
		out = append(out, write(p))
	}
	return out, len(pairs) - len(out)
}

// A difference in value is the eye's own where others see othersValue at most and it
// sees ownValue or more. Ours: 0.2 is twice what is just seen side by side, half a step
// is how finely values are judged. In the demo and three photographs a protan of
// severity 1 has up to 11 such pairs, a deutan up to 2 and a tritan none, since light is
// what the long and middle cones catch together.
const (
	othersValue = 0.2
	ownValue    = 0.5
)

// reverse returns the piles that others call equal in value and the eye does not. It is
// the one thing a sight with less can have more of: who has no long cones sees reds far
// darker. Others tell such piles apart by their hue; but a picture built on what this
// eye sees of light and dark has contrasts there that it has for nobody else.
func (e *eye) reverse(piles []dab) ([]LookAlike, int) {
	var found []pair
	for a := range piles {
		for b := a + 1; b < len(piles); b++ {
			own := Round(math.Abs(piles[a].seenValue()-piles[b].seenValue()), 1)
			others := Round(math.Abs(piles[a].value()-piles[b].value()), 1)
			if own >= ownValue && others <= othersValue {
				p := e.pairOf(a, b, &piles[a], &piles[b])
				p.weight = Round(own*(piles[a].share+piles[b].share), 3)
				found = append(found, p)
			}
		}
	}
	return weightiest(found, func(p pair) LookAlike {
		dark, light := &piles[p.a], &piles[p.b]
		if dark.seenValue() > light.seenValue() {
			dark, light = light, dark
		}
		how := fmt.Sprintf("To your eyes %s is darker than %s by %.1f value; to others they are %s. Trust the printed values here, not the look.",
			dark.tag, light.tag, light.seenValue()-dark.seenValue(), others(light.value()-dark.value()))
		return LookAlike{A: piles[p.a].tag, B: piles[p.b].tag, Full: p.full, Seen: p.seen, Tells: how, Kind: "value"}
	})
}

// others says how much lighter others find the pile that the eye finds lighter.
func others(lighter float64) string {
	switch d := Round(lighter, 1); {
	case d > 0:
		return fmt.Sprintf("%.1f apart", d)
	case d < 0:
		return fmt.Sprintf("%.1f apart, the other way", -d)
	}
	return "equal"
}
