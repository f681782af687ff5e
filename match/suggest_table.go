// What the palettes of a box are judged from: each string between its paints, made once.

package match

import (
	"cmp"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// look is a mix of two paints in both ways of telling its colour.
type look struct {
	waypoint
	munsell colour.Munsell
}

// want is a colour of the region and its share of it, 0-1.
type want struct {
	lab   colour.Lab
	share float64
}

// given is what a string gives for a colour of the region: its mix of that value.
type given struct {
	lab     colour.Lab
	munsell colour.Munsell
	covered float64 // how far the value is reached, 0-1, see covers
	turn    float64 // hue steps from the wished hue, -50 to 50; 0 where none is wished for
	points  float64 // for the wish, see rate
}

// leg is a string from one paint to a lighter one, or of one paint to white.
type leg struct {
	looks  []look
	lo, hi float64 // L* of its darkest mix, and of the lightest past that
	gives  []given // for each of the wanted colours, along what rises from lo to hi
}

// table holds the box's strings and tints for one region.
type table struct {
	ask    Asked
	paints []paint.Paint    // of the box without its whites, from dark to light
	colour []colour.Munsell // of each, see strongest
	white  *paint.Paint     // nil where the box has none
	legs   []leg            // from paint i to paint j, i < j, at i·len(paints) + j; to white at i = j
	dulls  []float64        // as legs, see dullsMost; negative: not found yet
	wanted []want           // by rising L*
	own    colour.Munsell   // the region's colour, on average
	around colour.Lab       // the surroundings' colour, on average
}

// How strings are sampled for judging. Ours: over 256 palettes of the benchmark's 24
// paints the colours lie 0.3 CIEDE2000 from the ladder's on average, far only where the
// ladder bridges a dip, which is passed by here. So the few that are picked are judged
// again by their ladders, and what is told of them is the ladder's. An odd number of
// samples, for dullsMost.
const (
	quickOdds    = 1e-3
	quickSamples = 17
)

func newTable(owned []paint.Paint, ask Asked) *table {
	t := &table{ask: ask, white: paint.OwnWhite(owned)}
	for _, p := range byValue(owned) {
		if !p.White() {
			t.paints = append(t.paints, p)
		}
	}
	t.wanted = wants(ask.Aims, ask.Shares)
	t.own = averageOf(t.wanted).Munsell()
	t.around = averageOf(wants(ask.Around, ask.AroundShares))
	t.lay()
	return t
}

// lay makes the strings.
func (t *table) lay() {
	n := len(t.paints)
	t.legs, t.dulls, t.colour = make([]leg, n*n), make([]float64, n*n), make([]colour.Munsell, n)
	inParallel(n, func(i int) {
		t.colour[i] = strongest(&t.paints[i])
		t.legs[i*n+i] = t.legOf(&t.paints[i], cmp.Or(t.white, &t.paints[i]))
		for j := i + 1; j < n; j++ {
			t.legs[i*n+j] = t.legOf(&t.paints[i], &t.paints[j])
			t.dulls[i*n+j] = -1
		}
	})
}

// legOf samples the string between two paints.
func (t *table) legOf(a, b *paint.Paint) (l leg) {
	for _, p := range sampled(a, b, quickOdds, quickSamples, t.ask.Finish) {
		l.looks = append(l.looks, look{p, p.lab.Munsell()})
	}
	row := rise(l.looks)
	l.lo, l.hi = row[0].lab.L, row[len(row)-1].lab.L
	at := 0
	for _, w := range t.wanted {
		for at < len(row)-1 && row[at].lab.L < w.lab.L {
			at++
		}
		g := givenAt(row, at, w.lab.L)
		t.rate(&g, w)
		l.gives = append(l.gives, g)
	}
	return l
}

// rise returns what rises of a row from its darkest mix on, each lighter than all before.
func rise(row []look) (rising []look) {
	dark := 0
	for i, l := range row {
		if l.lab.L < row[dark].lab.L {
			dark = i
		}
	}
	rising = append(rising, row[dark])
	for _, l := range row[dark+1:] {
		if l.lab.L > rising[len(rising)-1].lab.L {
			rising = append(rising, l)
		}
	}
	return rising
}

// wants returns colours with their shares of the whole, from dark to light; all shares
// are alike where there are none, or where they come to nothing.
func wants(colours []colour.Lab, shares []float64) (all []want) {
	whole := sum(shares)
	for i, c := range colours {
		w := want{c, 1}
		if whole > 0 {
			w.share = shares[i]
		}
		all = append(all, w)
	}
	if whole <= 0 {
		whole = float64(len(colours))
	}
	for i := range all {
		all[i].share /= whole
	}
	slices.SortStableFunc(all, func(a, b want) int { return cmp.Compare(a.lab.L, b.lab.L) })
	return all
}

// averageOf returns the average of colours by their shares.
func averageOf(all []want) (c colour.Lab) {
	for _, w := range all {
		c.L += w.share * w.lab.L
		c.A += w.share * w.lab.A
		c.B += w.share * w.lab.B
	}
	return c
}

// legsOf returns the strings of a palette from dark to light, from the one on that goes
// darkest: those before it have no value that it has not.
func (t *table) legsOf(set []int) []*leg {
	all := make([]*leg, 0, 3)
	dark := 0
	for i, p := range set {
		to := set[min(i+1, len(set)-1)]
		all = append(all, &t.legs[p*len(t.paints)+to])
		if all[i].lo < all[dark].lo {
			dark = i
		}
	}
	return all[dark:]
}

// eachGiven tells what a palette gives for each of the wanted colours, by its place
// among them. Dips are passed by without a bridge.
func (t *table) eachGiven(set []int, tell func(place int, g *given)) {
	legs := t.legsOf(set)
	for i, w := range t.wanted {
		for len(legs) > 1 && w.lab.L > legs[0].hi {
			legs = legs[1:]
		}
		tell(i, &legs[0].gives[i])
	}
}

// givenAt returns what a row gives for a lightness; at is its first that is as light.
func givenAt(row []look, at int, lightness float64) given {
	b := row[at]
	if at == 0 || lightness >= b.lab.L {
		return given{lab: b.lab, munsell: b.munsell, covered: covers(lightness, b.lab.L)}
	}
	a := row[at-1]
	share := (lightness - a.lab.L) / (b.lab.L - a.lab.L)
	between := func(x, y float64) float64 { return x + share*(y-x) }
	return given{lab: onWay(a.lab, b.lab, lightness), covered: 1, munsell: colour.Munsell{
		Hue:    a.munsell.Hue + share*turnTo(a.munsell.Hue, b.munsell.Hue),
		Value:  between(a.munsell.Value, b.munsell.Value),
		Chroma: between(a.munsell.Chroma, b.munsell.Chroma),
	}}
}
