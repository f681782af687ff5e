// Strokes joined over gaps and at corners.

package analyze

import (
	"cmp"
	"slices"
)

// Which ends of strokes are joined; lengths are in pixels of the sketch. Ours.
const (
	joinReach    = 14  // a straight gap, 8 mm on a 12-inch panel
	joinStraight = 0.9 // cosine between an end's way and the way to the other end
	cornerReach  = 5   // a gap at a corner
	cornerTurn   = 0.5 // cosine of the ways of two ends that are no corner but a hairpin
	endLength    = 6   // places at an end that tell its way
	leastStroke  = 5   // places of a stroke that is joined
	leastCorner  = 8   // places of a stroke that is joined at a corner
)

// end is an end of a stroke: 2 × the stroke's index, and 1 more for its last place.
type end int

// joining is two ends to be joined, and how good that is; less is better.
type joining struct {
	a, b end
	cost int
}

// joinStrokes joins strokes whose ends lie opposite each other over a gap, or meet at a
// corner, the best first, each end once. Both must be of about one height.
func joinStrokes(strokes []stroke) []stroke {
	var ends []end
	for i, s := range strokes {
		if !s.closed && len(s.places) >= leastStroke {
			ends = append(ends, end(2*i), end(2*i+1))
		}
	}
	partner := make([]end, 2*len(strokes))
	for i := range partner {
		partner[i] = -1
	}
	for _, j := range joinings(strokes, ends) {
		if partner[j.a] < 0 && partner[j.b] < 0 {
			partner[j.a], partner[j.b] = j.b, j.a
		}
	}
	return chained(strokes, partner)
}

// joinings returns the ends that may be joined, the best first. Ends are looked for in
// squares of the reach, so that few are compared.
func joinings(strokes []stroke, ends []end) []joining {
	type square struct{ x, y int }
	squares := map[square][]end{}
	of := func(p Place) square { return square{int(p.X) / joinReach, int(p.Y) / joinReach} }
	for _, e := range ends {
		at, _ := e.look(strokes)
		squares[of(at)] = append(squares[of(at)], e)
	}
	var found []joining
	for _, a := range ends {
		at, _ := a.look(strokes)
		s := of(at)
		for k := range 9 {
			for _, b := range squares[square{s.x + k%3 - 1, s.y + k/3 - 1}] {
				if a < b {
					if cost, may := joinEnds(strokes, a, b); may {
						found = append(found, joining{a, b, cost})
					}
				}
			}
		}
	}
	slices.SortFunc(found, func(a, b joining) int { return cmp.Or(a.cost-b.cost, int(a.a-b.a), int(a.b-b.b)) })
	return found
}

// look returns an end's place and the way out of it, of length 1.
func (e end) look(strokes []stroke) (at, way Place) {
	p := strokes[e/2].places
	n := min(endLength, len(p)-1)
	from := p[n]
	at = p[0]
	if e%2 == 1 {
		at, from = p[len(p)-1], p[len(p)-1-n]
	}
	return at, from.towards(at)
}

// joinEnds tells whether two ends may be joined, and the cost in 64ths of a pixel: the
// gap, more as the ways turn.
func joinEnds(strokes []stroke, a, b end) (cost int, may bool) {
	p, out := a.look(strokes)
	q, in := b.look(strokes)
	gap := p.to(q)
	if gap > joinReach || a/2 == b/2 && float64(len(strokes[a/2].places)) < max(ringAtLeast, 4*gap) {
		return 0, false
	}
	if x, y := strokes[a/2].mean(), strokes[b/2].mean(); min(x, y) < goesOn*max(x, y) {
		return 0, false
	}
	turn := out.dot(in) // -1 straight on
	way := p.towards(q)
	straight := min(out.dot(way), -in.dot(way), -turn)
	if gap < longestStep {
		straight = -turn
	}
	if long := min(len(strokes[a/2].places), len(strokes[b/2].places)); straight < joinStraight && (gap > cornerReach || turn > cornerTurn || long < leastCorner) {
		return 0, false
	}
	return grade(float32(gap + joinReach*(1-straight))), true
}

// mean returns the mean height of a stroke.
func (s stroke) mean() float32 {
	sum := float32(0)
	for _, h := range s.heights {
		sum += h
	}
	return sum / float32(len(s.heights))
}

// chained returns the strokes with those joined whose ends are partners; what begins at
// a free end first, then rings.
func chained(strokes []stroke, partner []end) []stroke {
	var result []stroke
	done := make([]bool, len(strokes))
	for _, ring := range [2]bool{false, true} {
		for e := range end(len(partner)) {
			if !done[e/2] && (ring || partner[e] < 0) {
				result = append(result, chain(strokes, partner, e, done))
			}
		}
	}
	return result
}

// chain joins the strokes from an end on.
func chain(strokes []stroke, partner []end, first end, done []bool) stroke {
	whole := stroke{closed: strokes[first/2].closed}
	for e := first; ; {
		s := strokes[e/2]
		done[e/2] = true
		for i := range s.places {
			if e%2 == 1 {
				i = len(s.places) - 1 - i
			}
			whole.add(s.places[i], s.heights[i])
		}
		next := partner[e^1]
		if next < 0 {
			return whole
		}
		if e = next; e == first {
			whole.close()
			return whole
		}
	}
}
