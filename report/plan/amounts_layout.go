// What is laid out for a session: which piles, how much, in which order.

package plan

import (
	"cmp"
	"slices"
)

// layOut returns the piles of a session in their order on the palette, and counts them.
func (c *count) layOut(s Session, all []Session) []Pile {
	var laid []load
	for _, l := range c.loads {
		if c.laidIn(s, l) {
			l.ml /= float64(c.times(l, all))
			laid = append(laid, l)
		}
	}
	return c.pilesOf(laid)
}

// layOutRest counts the coats that no session has, each as one laid out for itself.
func (c *count) layOutRest(all []Session) {
	for i := range c.coats {
		var laid []load
		for _, l := range c.loads {
			if l.coat == i && c.times(l, all) == 0 {
				laid = append(laid, l)
			}
		}
		c.pilesOf(laid)
	}
}

// laidIn tells whether a session lays out a mix of a coat: the coat is painted in it, and
// where its piles name some of the coat's mixes, this is one of those.
func (c *count) laidIn(s Session, l load) bool {
	if !slices.Contains(s.Coats, c.coats[l.coat].ID) {
		return false
	}
	named := func(l load) bool {
		return slices.ContainsFunc(s.Mixes, func(id string) bool { n, known := c.at[id]; return known && n == l.stock })
	}
	return named(l) || !slices.ContainsFunc(c.loads, func(k load) bool { return k.coat == l.coat && named(k) })
}

// times returns in how many sessions a mix of a coat is laid out, a part in each.
func (c *count) times(l load, all []Session) (n int) {
	for _, s := range all {
		if c.laidIn(s, l) {
			n++
		}
	}
	return n
}

// pilesOf returns the piles that some loads are laid out as, and counts them.
func (c *count) pilesOf(loads []load) []Pile {
	painted := make([]float64, len(c.stocks)) // ml
	order := []int{}
	for _, l := range loads {
		if painted[l.stock] == 0 {
			order = append(order, l.stock)
		}
		painted[l.stock] += l.ml
	}
	medium := make([]float64, len(c.stocks))
	for _, l := range loads {
		of := painted[l.stock]
		ml := l.ml / of * c.laid(of) * l.medium
		medium[l.stock] += ml
		c.addMedium(l.kind, ml)
	}
	c.sortOnPalette(order)
	piles := []Pile{}
	for _, n := range order {
		s, ml := &c.stocks[n], c.laid(painted[n])
		s.ml, s.medium = s.ml+ml, s.medium+medium[n]
		piles = append(piles, Pile{
			ID: s.id, ML: Round(ml, 2), MediumML: Round(medium[n], 2),
			Size: sizeOf(ml, c.unit), Tubes: c.squeezed(s, ml), Parts: s.parts,
		})
	}
	return piles
}

// laid returns what is laid out in ml where so much is painted.
func (c *count) laid(painted float64) float64 { return max(leastPile, painted*(1+c.waste)) }

// sortOnPalette puts piles that stand in the order they are painted in, in the order of
// the palette: a pile of nothing but white first, then region by region as they are
// painted, each from light to dark.
//
// Ours: white goes into most others and must stay clean, so it lies at the end where no
// knife comes from a dark pile. Within a region neighbours on the palette are neighbours
// in value, which are those blended into one another; a pile in the wrong place in the row
// shows by its value, to every sight.
func (c *count) sortOnPalette(order []int) {
	place := map[int]int{} // region → its place in the order of painting
	for _, n := range order {
		if _, known := place[c.stocks[n].region]; !known {
			place[c.stocks[n].region] = len(place)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		s, t := &c.stocks[a], &c.stocks[b]
		return cmp.Or(cmp.Compare(s.coloured(), t.coloured()), cmp.Compare(place[s.region], place[t.region]), cmp.Compare(t.light, s.light), cmp.Compare(a, b))
	})
}

// coloured returns 0 for a stock of nothing but white, else 1.
func (s *stock) coloured() (n int) {
	for _, p := range s.of.Paints {
		if !p.White() {
			n = 1
		}
	}
	return n
}
