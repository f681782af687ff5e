// Glazes: a paint thinned with medium, over a layer that is dry.

package match

import (
	"cmp"
	"math"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// glazeCoat is the thickness of one coat of a glaze, in the units of K and S, medium
// and all. Ours: a third of a brushed coat, as a glaze is drawn out or wiped thin. What
// it stands for in medium goes with it: rubbed out to half of this, 1:3 looks as 1:7.
const glazeCoat = paint.Coat / 3.0

// media are the parts of medium to one of paint that glazes are tried with, and
// mostGlazes the coats. Ours: each halves, about, the paint in the film, from the
// strongest that still flows as a glaze to a bare tinge.
var media = []int{1, 2, 3, 5, 8, 12, 20, 40}

const mostGlazes = 2

// Glaze is a paint thinned with medium over an under-layer.
type Glaze struct {
	Paint  paint.Paint
	Medium int // parts by volume to one part of paint
	Coats  int // each dry before the next
	Lab    colour.Lab
	Lifts  float64 // Munsell value against the under-layer: negative is darker
	Gains  float64 // Munsell chroma against the under-layer: negative is duller
}

// Milky tells whether the glaze reads lighter than what it lies on: the paint scatters
// so much light that the dark beneath looks veiled.
func (g Glaze) Milky() bool { return g.Lifts >= valueWord/2 }

// fatFrom is the parts of medium to one of paint from which a glaze is called fat. Ours:
// a ninth of the film or less is paint then, and what binds it dries as the medium does.
const fatFrom = 8

// Fat tells whether the glaze is so much medium that it makes a fat, slow film.
func (g Glaze) Fat() bool { return g.Medium >= fatFrom }

// TryGlaze returns what a paint does over an under-layer, one coat after two of each
// part of medium, the strongest glaze first. The under-layer is its reflectance as seen
// dry, with the same finish.
// Source: [Kubelka1948], see paint.Film. Medium neither absorbs nor scatters, so that K
// and S of the glaze are those of the paint by its share of the volume [Duncan1940].
func TryGlaze(p paint.Paint, under *colour.Spectrum, finish paint.Finish) (all []Glaze) {
	bare := under.Lab().Munsell()
	for _, medium := range media {
		for coats := 1; coats <= mostGlazes; coats++ {
			thickness := glazeCoat * float64(coats) / float64(1+medium)
			film := paint.Film(&p.K, &p.S, thickness, under, finish)
			lab := film.Lab()
			m := lab.Munsell()
			all = append(all, Glaze{p, medium, coats, lab, m.Value - bare.Value, m.Chroma - bare.Chroma})
		}
	}
	return all
}

// Glazes tells whether a paint is offered as a glaze: a transparent or semi-transparent
// one that is no white. Thinned, the others veil what lies beneath: that is a scumble.
func Glazes(p paint.Paint) bool {
	return (p.Opacity == "transparent" || p.Opacity == "semi-transparent") && !p.White()
}

// GlazeFor is a glaze for an aim.
type GlazeFor struct {
	Glaze
	DeltaE      float64 // CIEDE2000 to the aim
	ValueShift  float64 // Munsell value against the aim: negative is darker
	ChromaShift float64 // Munsell chroma against the aim: negative is duller
	Note        string  // how it differs from the aim, and whether it turns milky
}

// GlazeAdvice is what glazes do for an aim over an under-layer.
type GlazeAdvice struct {
	Bare     float64    // CIEDE2000 of the under-layer alone to the aim
	Best     []GlazeFor // nearest first, one of each paint, up to mostPaintsTold; only such as are nearer than Bare
	Warnings []string   // what no glaze can do here, and what to do instead
}

// mostPaintsTold is how many paints are told of, none that is worseBy off the nearest.
// Ours: as many as a recipe and its alternatives.
const mostPaintsTold = 3

// AdviseGlaze returns the glazes that bring an under-layer nearest to an aim, of the
// owned paints that glaze, see Glazes, and what a glaze cannot do for it. The
// under-layer is its reflectance as seen dry, with the same finish.
func AdviseGlaze(owned []paint.Paint, under *colour.Spectrum, aim colour.Lab, finish paint.Finish) GlazeAdvice {
	bare := under.Lab()
	advice := GlazeAdvice{Bare: colour.DeltaE00(aim, bare)}
	wanted := aim.Munsell()
	var nearest []GlazeFor
	for _, p := range owned {
		if !Glazes(p) {
			continue
		}
		g := nearestGlaze(TryGlaze(p, under, finish), aim)
		g.differ(aim, wanted)
		nearest = append(nearest, g)
	}
	slices.SortStableFunc(nearest, func(a, b GlazeFor) int { return cmp.Compare(steps(a.DeltaE), steps(b.DeltaE)) })
	for _, g := range nearest[:min(len(nearest), mostPaintsTold)] {
		if steps(g.DeltaE) < steps(advice.Bare) && steps(g.DeltaE) <= steps(nearest[0].DeltaE+worseBy) {
			advice.Best = append(advice.Best, g)
		}
	}
	advice.Warnings = glazeWarnings(bare, aim, advice, len(nearest) > 0)
	return advice
}

// differ fills in how a glaze differs from the aim.
func (g *GlazeFor) differ(aim colour.Lab, wanted colour.Munsell) {
	m := missOf(aim, g.Lab, wanted)
	g.ValueShift, g.ChromaShift = m.valueShift(), m.chromaShift()
	g.Note = m.note(g.DeltaE, false, 0, 0)
	if g.Milky() {
		g.Note += " It turns milky: the paint scatters light and veils the dark beneath."
	}
}

// nearestGlaze returns the glaze nearest to an aim; of equals the fewer coats, then
// the first.
func nearestGlaze(all []Glaze, aim colour.Lab) (best GlazeFor) {
	for i, g := range all {
		d := colour.DeltaE00(aim, g.Lab)
		if by := cmp.Or(cmp.Compare(steps(d), steps(best.DeltaE)), cmp.Compare(g.Coats, best.Coats)); i == 0 || by < 0 {
			best = GlazeFor{Glaze: g, DeltaE: d}
		}
	}
	return best
}

// steps counts a distance in ties, so that no last bit decides.
func steps(deltaE float64) float64 { return math.Round(deltaE / tie) }
