// What every set of a box's paints offers every aim: the ground that the search
// for few tubes stands on.

package match

import (
	"cmp"
	"slices"

	"tonewright/analyze/colour"
)

// An offer is how near the mixes of one set of paints come to an aim.
type offer struct {
	of   set
	miss int32 // CIEDE2000 of the nearest in hundredths, the unit of tie
}

// nothing is what an aim is offered without any paint.
var nothing = offer{set{-1, -1, -1}, ties(farthest)}

// offers returns, for each aim, what the sets of one to three paints offer it,
// nearest first and ending with nothing. A set is left out where some of its paints
// alone come as near: nobody needs it who has them.
func (s *search) offers(most int) [][]offer {
	o := &offering{search: s, nears: s.nears(most), most: most}
	o.lists = make([][]offer, len(s.aims))
	o.singles()
	if most > 1 {
		o.pairs()
	}
	if most > 2 {
		o.triples()
	}
	inParallel(len(s.aims), func(a int) {
		slices.SortFunc(o.lists[a], func(x, y offer) int {
			return cmp.Or(cmp.Compare(x.miss, y.miss), cmp.Compare(x.of.size(), y.of.size()), slices.Compare(x.of[:], y.of[:]))
		})
		o.lists[a] = append(o.lists[a], nothing)
	})
	return o.lists
}

// offering is the making of offers.
type offering struct {
	*search
	nears []*nears
	most  int
	lists [][]offer // by aim
	one   [][]int32 // miss by aim and paint
	two   [][]int32 // miss by aim and pair, the first paint's row by row, or of one of the two alone where that is less
}

func (o *offering) singles() {
	n := len(o.paints)
	o.one, o.two = make([][]int32, len(o.aims)), make([][]int32, len(o.aims))
	inParallel(len(o.aims), func(a int) {
		o.one[a], o.two[a] = make([]int32, n), make([]int32, n*n)
		for i := range o.paints {
			o.one[a][i] = nothing.miss
			of := set{int32(i), -1, -1}
			if !o.allows(of) {
				continue
			}
			p := o.screen(of, measure{1})
			o.one[a][i] = ties(colour.DeltaE00(o.aims[a], p.lab()))
			o.lists[a] = append(o.lists[a], offer{of, o.one[a][i]})
		}
	})
}

func (o *offering) pairs() {
	pairs := o.pairsOfPaints()
	found := make([][]int32, len(pairs)) // by pair and aim
	inParallel(len(pairs), func(n int) {
		of := pairs[n]
		var mixes cloud
		o.fill(&mixes, of)
		found[n] = make([]int32, len(o.aims))
		for a := range o.aims {
			found[n][a] = o.nears[a].nearest(&mixes, o.lessOf(a, of))
		}
	})
	inParallel(len(o.aims), func(a int) {
		for n, of := range pairs {
			less := o.lessOf(a, of)
			if found[n][a] < less {
				o.lists[a] = append(o.lists[a], offer{of, found[n][a]})
			}
			o.two[a][int(of[0])*len(o.paints)+int(of[1])] = min(less, found[n][a])
		}
	})
}

// lessOf returns the least miss of any of a set's paints, one short.
func (o *offering) lessOf(aim int, of set) int32 {
	if of.size() == 2 {
		return min(o.one[aim][of[0]], o.one[aim][of[1]])
	}
	n, two := int32(len(o.paints)), o.two[aim]
	return min(two[of[0]*n+of[1]], two[of[0]*n+of[2]], two[of[1]*n+of[2]])
}

func (o *offering) triples() {
	pairs := o.pairsOfPaints()
	parts := make([][][]offer, len(pairs)) // by pair and aim
	inParallel(len(pairs), func(n int) {
		parts[n] = make([][]offer, len(o.aims))
		var mixes cloud
		for k := int(pairs[n][1]) + 1; k < len(o.paints); k++ {
			of := set{pairs[n][0], pairs[n][1], int32(k)}
			o.fill(&mixes, of)
			for a := range o.aims {
				less := o.lessOf(a, of)
				if miss := o.nears[a].nearest(&mixes, less); miss < less {
					parts[n][a] = append(parts[n][a], offer{of, miss})
				}
			}
		}
	})
	inParallel(len(o.aims), func(a int) {
		for _, part := range parts {
			o.lists[a] = append(o.lists[a], part[a]...)
		}
	})
}

// cloud is every mix of a set, cell by cell.
type cloud struct {
	points []point
	runs   []run
	spots  []spot // the same, while they are sorted
}

// run is the mixes of a cloud in one cell; they begin where those before end.
type run struct{ cell, end int32 }

type spot struct {
	point
	cell int32
}

// fill makes a set's mixes, in the place of those of another.
func (o *offering) fill(c *cloud, of set) {
	c.points, c.runs, c.spots = c.points[:0], c.runs[:0], c.spots[:0]
	if !o.allows(of) {
		return
	}
	for _, m := range o.menu(of) {
		p := o.screen(of, m)
		c.spots = append(c.spots, spot{p, int32(cellOf(p))})
	}
	slices.SortStableFunc(c.spots, func(x, y spot) int { return cmp.Compare(x.cell, y.cell) })
	for i, s := range c.spots {
		c.points = append(c.points, s.point)
		if i == 0 || s.cell != c.spots[i-1].cell {
			c.runs = append(c.runs, run{cell: s.cell})
		}
		c.runs[len(c.runs)-1].end = int32(i + 1)
	}
}
