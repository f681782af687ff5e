// How fat a coat is, and what paint weighs.

package layer

import "tonewright/match/paint"

// linseedDensity is of linseed oil, g/ml. Source: [Gardner1911] p. 17 has 0.934 at 15 °C;
// stand oil and the others lie within 4 % of it (from memory).
const linseedDensity = 0.93

// tubes is by how much the oil of a tube may differ from what its pigment was found to
// take up. Ours, rough: ...
var tubes = Range{0.6, 1.3}

// Oil returns the share of oil, and of fat medium, in the dry film, by volume, 0-1:
// a range, since pigments and makers differ. Solvent leaves.
func Oil(c Coat) Range {
	if len(c.Paints) == 0 {
		return Range{}
	}
	var oil Range
	var whole float64
	for i, p := range c.Paints {
		own := oilOf(p)
		oil.From += c.Parts[i] * own.From
		oil.To += c.Parts[i] * own.To
		whole += c.Parts[i]
	}
	more := 0.0
	if c.Medium.fat() {
		more = c.Medium.Parts
	}
	return Range{(oil.From/whole + more) / (1 + more), (oil.To/whole + more) / (1 + more)}
}

// oilOf returns the share of oil in a tube, by volume, 0-1.
func oilOf(p paint.Paint) Range {
	share := func(grams float64) float64 {
		oil, pigment := grams/linseedDensity, 100/p.Facts.Density
		return oil / (oil + pigment)
	}
	return Range{share(p.Facts.Oil[0] * tubes.From), share(p.Facts.Oil[1] * tubes.To)}
}

// Weight returns g/ml of the paint in its tube, pigment and oil, by the middle of what its
// pigment takes up.
func Weight(p paint.Paint) float64 {
	oil := (p.Facts.Oil[0] + p.Facts.Oil[1]) / 2
	return (100 + oil) / (100/p.Facts.Density + oil/linseedDensity)
}
