// How fat a coat is.

package layer

import "tonewright/match/paint"

// Tubes hold from so many to so many times the oil that the facts give for the pigment,
// since makers, grades and grinding differ, and fillers and wax stand in for oil. The
// early figures for siennas are far over later ones: the low end is never taken over
// lowOil, the high one not raised over highOil, g of oil for 100 g of pigment.
// Ours: the narrowest that hold what [Church1901], [Uebele1913] and [Massey1967] print,
// but for four lines of Massey's, see TestOilOfHandbooks.
const (
	tubeLeast, tubeMost = 0.55, 1.65
	lowOil, highOil     = 55, 160
)

// Oil returns the share of oil in the dry film, its own and that stirred in, by volume,
// 0-1: a range, since tubes differ. Solvent leaves. An alkyd counts as lean, by the trade's
// rule that it goes under oil and not over.
func Oil(c Coat) Range {
	if len(c.Paints) == 0 {
		return Range{}
	}
	var film Range
	for i, share := range c.shares() {
		own := oilOf(c.Paints[i])
		film.From += share * own.From
		film.To += share * own.To
	}
	binder := c.binder()
	oil := c.oilAdded()
	return Range{(film.From + oil) / (1 + binder), (film.To + oil) / (1 + binder)}
}

// leanerBy returns by how much of its film's volume one coat surely holds less oil than
// another: whatever tubes the painter has, each of them the same in both coats. Under 0
// where it may hold more.
func leanerBy(a, b Coat) float64 {
	most := a.oilAdded()/(1+a.binder()) - b.oilAdded()/(1+b.binder()) // of a's share over b's
	paints, parts := slotsOf(a, b)
	for i, p := range paints {
		own := oilOf(p)
		most += max(parts[i]*own.From, parts[i]*own.To)
	}
	return -most
}

// slotsOf returns the paints of both coats, each once, and how much more of the dry film
// they are in the first than in the second.
func slotsOf(a, b Coat) (paints []paint.Paint, more []float64) {
	at := map[string]int{}
	add := func(c Coat, sign float64) {
		for i, share := range c.shares() {
			p := c.Paints[i]
			slot, known := at[p.ID]
			if !known {
				slot = len(paints)
				at[p.ID] = slot
				paints, more = append(paints, p), append(more, 0)
			}
			more[slot] += sign * share / (1 + c.binder())
		}
	}
	add(a, 1)
	add(b, -1)
	return paints, more
}

// oilOf returns the share of oil in a tube, by volume, 0-1.
func oilOf(p paint.Paint) Range {
	low, high := p.Facts.Oil[0], p.Facts.Oil[1]
	share := func(grams float64) float64 {
		oil, pigment := grams/paint.LinseedDensity, 100/p.Facts.Density
		return oil / (oil + pigment)
	}
	return Range{share(min(low*tubeLeast, lowOil)), share(max(high, min(high*tubeMost, highOil)))}
}

// shares returns the share of each paint in the mix, by volume; they sum to 1.
func (c Coat) shares() []float64 {
	whole := 0.0
	for _, parts := range c.Parts {
		whole += parts
	}
	shares := make([]float64, len(c.Parts))
	for i, parts := range c.Parts {
		shares[i] = parts / whole
	}
	return shares
}

// binder returns what of the medium stays in the film, by volume to one of paint.
func (c Coat) binder() float64 {
	if c.Medium.none() || c.Medium.Kind == Solvent {
		return 0
	}
	return c.Medium.Parts
}

// oilAdded returns how much oil is stirred in, by volume to one of paint.
func (c Coat) oilAdded() float64 {
	if c.Medium.Kind == Alkyd {
		return 0
	}
	return c.binder()
}

// left returns the film once its solvent has left, µm.
func (c Coat) left() float64 {
	if c.Medium.Kind == Solvent && !c.Medium.none() {
		return c.Film / (1 + c.Medium.Parts)
	}
	return c.Film
}
