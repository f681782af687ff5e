// What is laid out for a session: which piles, how much, in which order.

package plan

import (
	"cmp"
	"slices"
)

// A heap is a stock as a session needs it.
type heap struct {
	*stock
	region        int     // that first needs it
	painted       float64 // ml, without waste
	laid, stirred float64 // ml of paint and of medium laid out
}

// layOut returns the piles of a session in their order on the palette, and counts them.
func (c *count) layOut(s Session) []Pile {
	heaps := c.heapsOf(s)
	for i := range heaps {
		h := &heaps[i]
		h.stock.ml, h.stock.medium = h.stock.ml+h.laid, h.stock.medium+h.stirred
	}
	sortOnPalette(heaps)
	piles := []Pile{}
	for _, h := range heaps {
		piles = append(piles, Pile{
			ID: h.id, ML: Round(h.laid, 2), MediumML: Round(h.stirred, 2),
			Size: sizeOf(h.laid, c.unit), Tubes: c.squeezed(h.stock, h.laid), Parts: h.parts,
		})
	}
	return piles
}

// heapsOf returns what a session needs, in the order it is painted.
func (c *count) heapsOf(s Session) (heaps []heap) {
	at := make([]int, len(c.stocks)) // 1 more than the place among heaps
	var loads []load
	for _, l := range c.loads {
		if !slices.Contains(s.Coats, l.coat) {
			continue
		}
		if at[l.stock] == 0 {
			heaps = append(heaps, heap{stock: &c.stocks[l.stock], region: l.region})
			at[l.stock] = len(heaps)
		}
		heaps[at[l.stock]-1].painted += l.ml
		loads = append(loads, l)
	}
	for i := range heaps {
		heaps[i].laid = max(leastPile, heaps[i].painted*(1+c.waste))
	}
	for _, l := range loads {
		h := &heaps[at[l.stock]-1]
		ml := l.ml / h.painted * h.laid * l.medium
		h.stirred += ml
		c.addMedium(l.kind, ml)
	}
	return heaps
}

// sortOnPalette puts heaps that stand in the order they are painted in, in the order of
// the palette: one of nothing but white first, then region by region as they are painted,
// each from light to dark.
//
// Ours: white goes into most others and must stay clean, so it lies at the end where no
// knife comes from a dark pile. Within a region neighbours on the palette are neighbours
// in value, which are those blended into one another; a pile in the wrong place in the row
// shows by its value, to every sight.
func sortOnPalette(heaps []heap) {
	place := map[int]int{} // region → its place in the order of painting
	for _, h := range heaps {
		if _, known := place[h.region]; !known {
			place[h.region] = len(place)
		}
	}
	slices.SortStableFunc(heaps, func(a, b heap) int {
		return cmp.Or(cmp.Compare(a.coloured(), b.coloured()), cmp.Compare(place[a.region], place[b.region]), cmp.Compare(b.light, a.light))
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
