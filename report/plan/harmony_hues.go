// The hues of a region's mixes.

package plan

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"tonewright/analyze/colour"
)

// Hued is the Munsell chroma from which a mix counts as having a hue.
// Source: [KellyJudd1976]: the names with "gray" and "white" end at it, but for some
// browns and yellows, where they end at 1.2.
const Hued = 1.5

// oneHue is how many of the 100 hue steps a hue's mixes may lie apart. Ours: two of
// Munsell's ten families, as from red to yellow; a mean of hues further apart names a
// colour that is not there. A limit on all pairs, not on neighbours, since a row of
// near neighbours runs from red to green.
const oneHue = 20

// most is the part of a hue's weight that its spread holds. Ours.
const most = 0.8

// stain is what one mix brings onto the panel.
type stain struct {
	colour.Munsell
	share float64 // of the panel
}

// weight is what a mix counts for in a mean of hues: a strong colour more than a
// dull one, a large one more than a small one.
func (s stain) weight() float64 { return s.share * s.Chroma }

// area is a mix's share of the panel.
func (s stain) area() float64 { return s.share }

// stainOf returns what a mix of that colour brings onto a share of the panel. Figures are
// rounded here, so that no choice below rests on a last bit.
func stainOf(mix colour.Lab, share float64) stain {
	m := mix.Munsell()
	return stain{colour.Munsell{Hue: Round(m.Hue, 2), Value: Round(m.Value, 2), Chroma: Round(m.Chroma, 2)}, share}
}

// stainsOf returns a region's mixes that have a hue, in its order, and the share of
// the panel of those that have none. A mix whose share rounds to nothing counts by
// leastShare: means by area are over no area else.
func stainsOf(r Region) (stains []stain, neutral float64) {
	for _, c := range r.Colours {
		s := stainOf(colour.Lab{L: c.Recipe.Lab[0], A: c.Recipe.Lab[1], B: c.Recipe.Lab[2]}, max(c.PanelShare, leastShare))
		if s.Chroma < Hued {
			neutral += c.PanelShare
			continue
		}
		stains = append(stains, s)
	}
	return stains, neutral
}

// hue is a group of mixes of nearly one hue.
type hue []stain

// huesOf parts mixes into as few hues as oneHue allows, the heaviest first: the two
// nearest groups are joined as long as any can be.
func huesOf(stains []stain) []hue {
	var hues []hue
	for _, s := range stains {
		hues = append(hues, hue{s})
	}
	for {
		least, into, from := oneHue+1.0, 0, 0
		for i := range hues {
			for j := i + 1; j < len(hues); j++ {
				if d := hues[i].widest(hues[j]); d <= oneHue && d < least {
					least, into, from = d, i, j
				}
			}
		}
		if from == 0 {
			break
		}
		hues[into] = append(hues[into], hues[from]...)
		hues = slices.Delete(hues, from, from+1)
	}
	slices.SortStableFunc(hues, func(a, b hue) int {
		return cmp.Compare(Round(b.sum(stain.weight), 4), Round(a.sum(stain.weight), 4))
	})
	return hues
}

// A hue of a region is slight, and not listed, where it has less than ofPicture of all
// weight, and less than ofRegion of its region's heaviest hue or of its region's area.
// Ours: on the demo and eight photographs this leaves out 12 of 20 further hues, specks
// and rims, and keeps the yellow of daisies that has a fiftieth of their violet's weight.
const (
	ofRegion  = 0.1
	ofPicture = 0.01
)

func (h hue) slight(r Region, heaviest, all hue) bool {
	weight, area := Round(h.sum(stain.weight), 6), Round(h.sum(stain.area), 6)
	few := weight < Round(ofRegion*heaviest.sum(stain.weight), 6) || area < Round(ofRegion*r.Share, 6)
	return few && weight < Round(ofPicture*all.sum(stain.weight), 6)
}

// widest returns the most steps between a mix of one group and one of another.
func (h hue) widest(other hue) (steps float64) {
	for _, a := range h {
		for _, b := range other {
			steps = max(steps, Round(colour.HuesApart(a.Hue, b.Hue), 2))
		}
	}
	return steps
}

func (h hue) sum(of func(stain) float64) (total float64) {
	for _, s := range h {
		total += of(s)
	}
	return total
}

// mean returns the hue as the direction in which the mixes pull together, each by
// its weight, and their value and chroma by area.
func (h hue) mean() colour.Munsell {
	turn := 2 * math.Pi / 100
	x := h.sum(func(s stain) float64 { return s.weight() * math.Cos(turn*s.Hue) })
	y := h.sum(func(s stain) float64 { return s.weight() * math.Sin(turn*s.Hue) })
	step := math.Atan2(y, x) / turn
	share := h.sum(stain.area)
	return colour.Munsell{
		Hue:    Round(math.Mod(Round(step+100, 2), 100), 2), // the remainder has digits of its own
		Value:  Round(h.sum(func(s stain) float64 { return s.share * s.Value })/share, 2),
		Chroma: Round(h.sum(stain.weight)/share, 2),
	}
}

// spread returns how many steps to either side of a hue hold most of the weight.
func (h hue) spread(step float64) float64 {
	near := slices.Clone(h)
	apart := func(s stain) float64 { return Round(colour.HuesApart(s.Hue, step), 1) }
	slices.SortStableFunc(near, func(a, b stain) int { return cmp.Compare(apart(a), apart(b)) })
	held := 0.0
	for _, s := range near {
		held += s.weight()
		if Round(held, 6) >= Round(most*h.sum(stain.weight), 6) {
			return apart(s)
		}
	}
	return 0
}

// hueShare writes a region's hue as data. Weight is summed mix by mix.
// Source: [Munsell1915] chart G: colours balance where their areas are inversely as
// the product of value and chroma.
func (h hue) hueShare(r Region) HueShare {
	m := h.mean()
	spread := h.spread(m.Hue)
	m.Hue = math.Mod(Round(m.Hue, 1), 100)
	return HueShare{
		Region: r.Tag, Name: r.Name, Hue: hueText(m.Hue), Step: m.Hue, Word: colour.HueName(m.Hue),
		Spread: spread, Share: Round(h.sum(stain.area), 4),
		Value: Round(m.Value, 1), Chroma: Round(m.Chroma, 1), SRGB: m.Lab().Hex(),
		Weight: Round(100*h.sum(func(s stain) float64 { return s.weight() * s.Value }), 1),
		mixes:  h,
	}
}

// hueText returns a hue in Munsell's notation, "7.5YR".
func hueText(step float64) string {
	text, _, _ := strings.Cut(colour.Munsell{Hue: step, Value: 5, Chroma: 10}.String(), " ")
	return text
}
