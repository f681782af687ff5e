// What the palettes of a box are judged from: each string between its paints, made once.

package match

import (
	"cmp"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// look is a colour in both ways of telling it.
type look struct {
	lab     colour.Lab
	munsell colour.Munsell
}

// want is a colour of the region and its share of it, 0-1.
type want struct {
	lab   colour.Lab
	share float64
}

// table holds the box's strings and tints for one region.
type table struct {
	ask    Asked
	paints []paint.Paint    // of the box without its whites, from dark to light
	colour []colour.Munsell // of each, see strongest
	white  *paint.Paint     // nil where the box has none
	legs   [][]look         // from paint i to paint j, i < j, at i·len(paints) + j
	tints  [][]look         // from each paint to white, or the paint alone
	dulls  []float64        // as legs, see dullsMost; negative: not found yet
	wanted []want           // by rising L*
	around [2]float64       // a* and b* of the surroundings, on average
}

// How strings are sampled for judging. Ours: over the starter box's palettes the
// covered share then differs from the ladder's by SHARE at most, the chroma by CHROMA;
// what is told of a palette in the end is its ladder's.
const (
	quickOdds    = 1e-3
	quickSamples = 17
)

func newTable(owned []paint.Paint, ask Asked) *table {
	t := &table{ask: ask, white: ownWhite(owned)}
	for _, p := range byValue(owned) {
		if !p.White() {
			t.paints = append(t.paints, p)
		}
	}
	n := len(t.paints)
	t.legs, t.tints, t.dulls = make([][]look, n*n), make([][]look, n), make([]float64, n*n)
	t.colour = make([]colour.Munsell, n)
	inParallel(n, func(i int) {
		t.colour[i] = strongest(&t.paints[i])
		for j := i + 1; j < n; j++ {
			t.dulls[i*n+j] = -1
			t.legs[i*n+j] = t.looks(&t.paints[i], &t.paints[j])
		}
		t.tints[i] = t.looks(&t.paints[i], cmp.Or(t.white, &t.paints[i]))
	})
	t.wanted = wants(ask.Aims, ask.Shares)
	for _, w := range wants(ask.Around, ask.AroundShares) {
		t.around[0] += w.share * w.lab.A
		t.around[1] += w.share * w.lab.B
	}
	return t
}

// ownWhite returns the lightest white of the box; nil where it has none that is white.
func ownWhite(owned []paint.Paint) *paint.Paint {
	white := paint.TintingWhite(owned)
	if indexOf(owned, white.ID) < 0 {
		return nil
	}
	return &white
}

// looks samples the string between two paints.
func (t *table) looks(a, b *paint.Paint) (all []look) {
	for _, p := range sampled(a, b, quickOdds, quickSamples, t.ask.Finish) {
		all = append(all, look{p.lab, p.lab.Munsell()})
	}
	return all
}

// wants returns colours with their shares of the whole, from dark to light.
func wants(colours []colour.Lab, shares []float64) (all []want) {
	whole := 0.0
	for i, c := range colours {
		w := want{c, 1}
		if shares != nil {
			w.share = shares[i]
		}
		whole += w.share
		all = append(all, w)
	}
	for i := range all {
		all[i].share /= whole
	}
	slices.SortStableFunc(all, func(a, b want) int { return cmp.Compare(a.lab.L, b.lab.L) })
	return all
}

// row returns what a palette gives from dark to light, each lighter than the one
// before; dips are passed by without a bridge.
func (t *table) row(set []int) []look {
	var row []look
	for i, p := range set[1:] {
		row = append(row, t.legs[set[i]*len(t.paints)+p]...)
	}
	row = append(row, t.tints[set[len(set)-1]]...)
	dark := 0
	for i, l := range row {
		if l.lab.L < row[dark].lab.L {
			dark = i
		}
	}
	rising := row[:1]
	rising[0] = row[dark]
	for _, l := range row[dark+1:] {
		if l.lab.L > rising[len(rising)-1].lab.L {
			rising = append(rising, l)
		}
	}
	return rising
}

// given is what a palette gives for one of the wanted colours.
type given struct {
	look
	within bool // its value is reached
}

// seen returns what a palette gives for each of the wanted colours.
func (t *table) seen(set []int) (all []given) {
	row, at := t.row(set), 0
	for _, w := range t.wanted {
		for at < len(row)-1 && row[at].lab.L < w.lab.L {
			at++
		}
		all = append(all, seenAt(row, at, w.lab.L))
	}
	return all
}

// seenAt returns the look of a lightness on a row of which at is the first as light.
func seenAt(row []look, at int, lightness float64) given {
	b := row[at]
	if at == 0 || lightness >= b.lab.L {
		return given{b, near(lightness, b.lab.L)}
	}
	a := row[at-1]
	share := (lightness - a.lab.L) / (b.lab.L - a.lab.L)
	between := func(x, y float64) float64 { return x + share*(y-x) }
	return given{look{onWay(a.lab, b.lab, lightness), colour.Munsell{
		Hue:    a.munsell.Hue + share*turnTo(a.munsell.Hue, b.munsell.Hue),
		Value:  between(a.munsell.Value, b.munsell.Value),
		Chroma: between(a.munsell.Chroma, b.munsell.Chroma),
	}}, true}
}
