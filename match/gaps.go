// What a box of paints reaches, where it falls short, and what would widen it.

package match

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Reached is told for half families of Munsell hue, from 5R on, and whole values.
const (
	halfFamilies = 20
	LowestValue  = lowestPlane
	HighestValue = lowestPlane + (rimPlanes-1)/2
	wholeValues  = HighestValue - LowestValue + 1
)

// Gamut is what a box reaches, beside what all paints together do.
type Gamut struct {
	Darkest, Lightest       float64 // Munsell values that the box reaches
	AllDarkest, AllLightest float64 // that all paints reach
	AllPaints               int     // how many all paints are
	Share                   float64 // of the volume that all paints reach, 0-1
	Hues                    [halfFamilies]HueReach
	Gaps                    []Stretch  // the widest first
	Widening                []Widening // up to three paints, the one that adds most first
}

// HueReach is the most chroma of one hue, the middle of its half family, at values
// LowestValue, LowestValue + 1, … HighestValue; 0 where no mix has this hue.
type HueReach struct {
	Hue, Word string // "10PB", "violet-blue"
	Box, All  [wholeValues]float64
}

// Stretch is a row of neighbouring values of one hue, From to To, in which chroma
// differs. It differs most at Value: from Less to More.
type Stretch struct {
	Hue, Word       string
	From, To, Value int
	Less, More      float64
}

// Widening is what one more paint would do.
type Widening struct {
	Paint paint.Paint
	Share float64   // of the volume that all paints reach, with it
	Where []Stretch // where it adds a chip or more, the most first
}

// ShortBy is the Munsell chroma by which a box must fall short of all paints for a gap.
// Ours: two chips of the Munsell book; one, 3 to 4 CIEDE2000 in a strong colour, is no
// more than tubes of one name differ by, as [PaintOptics] cautions.
const ShortBy = 4

// Ours: a stretch is worth telling where a paint adds a chip of the Munsell book, and a
// paint is worth a place in the box where it adds a hundredth of what paints can do.
const (
	chip       = 2
	worthwhile = 0.01
	suggested  = 3
)

// GamutOf returns what the owned paints reach by mixes of up to three, thick and
// glossy, and which of the library's they lack most. All paints are both together;
// those of one ID are one. No owned paints: nothing is reached.
// Source: [Duncan1940] mixing; [ASTMD1535] hue, value and chroma; the solid is ours.
func GamutOf(owned, library []paint.Paint) Gamut {
	all := slices.Clone(owned)
	for _, p := range library {
		if !slices.ContainsFunc(owned, func(q paint.Paint) bool { return q.ID == p.ID }) {
			all = append(all, p)
		}
	}
	w, n := newWeb(all), len(owned)
	box, every := w.rimOf(n), w.rimOfAll()
	every.join(box)
	with := make([]*rim, len(all)-n)
	inParallel(len(with), func(i int) { with[i] = w.widened(box, n, n+i) })
	for _, r := range with {
		every.join(r)
	}
	solids := solidsOf(box, append(with, every))
	whole := solids[len(solids)-1]
	for _, s := range solids {
		whole.join(s)
	}
	g := gamutOf(solids[0], whole)
	g.AllPaints = len(all)
	g.setValues(owned, all)
	g.widen(all[n:], solids[:len(solids)-1], whole.volume())
	return g
}

func (g *Gamut) setValues(owned, all []paint.Paint) {
	value := func(paints []paint.Paint) (lo, hi float64) {
		lo, hi = Reach(paints, paint.Gloss)
		return colour.ValueOf(lo), colour.ValueOf(hi)
	}
	if len(owned) > 0 {
		g.Darkest, g.Lightest = value(owned)
	}
	g.AllDarkest, g.AllLightest = value(all)
}

// gamutOf tells what a box reaches against all paints.
func gamutOf(box, all *solid) (g Gamut) {
	if whole := all.volume(); whole > 0 {
		g.Share = box.volume() / whole
	}
	for h := range g.Hues {
		g.Hues[h].Hue, g.Hues[h].Word = hueOf(h)
		for v := range wholeValues {
			g.Hues[h].Box[v], g.Hues[h].All[v] = box[2*v][h], all[2*v][h]
		}
	}
	g.Gaps = stretches(box, all, ShortBy)
	return g
}

// widen fills in the paints that add most. solids[0] is the box's, solids[i+1] its
// with more[i].
func (g *Gamut) widen(more []paint.Paint, solids []*solid, whole float64) {
	var all []Widening
	for i, p := range more {
		added := solids[i+1].volume() - solids[0].volume()
		if added < worthwhile*whole {
			continue
		}
		share := solids[i+1].volume() / whole
		all = append(all, Widening{p, share, stretches(solids[0], solids[i+1], chip)})
	}
	slices.SortStableFunc(all, func(a, b Widening) int { return -cmp.Compare(roundTo(a.Share, 1000), roundTo(b.Share, 1000)) })
	g.Widening = all[:min(len(all), suggested)]
}

// hueOf returns a half family by its middle, "5R" first and "10RP" last, and in a word.
func hueOf(half int) (notation, word string) {
	m := colour.Munsell{Hue: middleOf(half), Value: 5, Chroma: 10}
	notation, _, _ = strings.Cut(m.Short(), " ")
	return notation, colour.HueName(m.Hue)
}

// stretches returns the rows of values in which more has so much more chroma than
// less, the widest difference first.
func stretches(less, more *solid, by float64) (all []Stretch) {
	for h := range halfFamilies {
		open := false
		for v := range wholeValues {
			a, b := less[2*v][h], more[2*v][h]
			if roundTo(b-a, 10) < by {
				open = false
				continue
			}
			if !open {
				s := Stretch{From: LowestValue + v, Less: a, More: b, Value: LowestValue + v}
				s.Hue, s.Word = hueOf(h)
				all, open = append(all, s), true
			}
			s := &all[len(all)-1]
			s.To = LowestValue + v
			if b-a > s.More-s.Less {
				s.Value, s.Less, s.More = s.To, a, b
			}
		}
	}
	slices.SortStableFunc(all, func(a, b Stretch) int { return cmp.Compare(b.More-b.Less, a.More-a.Less) })
	return all
}

func roundTo(x, parts float64) float64 { return math.Round(x*parts) / parts }
