// Analogous hues.

package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match"
)

// analogousArc is how many hue steps analogous hues cover at the most: about three
// neighbouring families, from the middle of the first to that of the last.
// Common practice, no source.
const analogousArc = 25

// nearly is the part of the picture's weight that an arc has to hold for most of the
// picture to be analogous. Ours.
const nearly = 0.9

// analogousText says where hues are neighbours: in the picture, within regions, and
// in the palettes chosen; "" where nowhere. all is every mix that has a hue.
func analogousText(all hue, regions []Region, hues []HueShare) string {
	texts := []string{}
	if text := all.arcText(hues); text != "" {
		texts = append(texts, text)
	}
	var within, palettes []string
	for _, r := range regions {
		if stains, _ := stainsOf(r); neighbouring(stains) {
			within = append(within, r.Tag)
		}
		if r.Palette.Family == "analogous" {
			palettes = append(palettes, r.Tag)
		}
	}
	if len(within) > 0 {
		texts = append(texts, "Analogous within themselves: "+match.Listed(within)+".")
	}
	if len(palettes) > 0 {
		texts = append(texts, "Palettes of neighbouring paints: "+match.Listed(palettes)+".")
	}
	return strings.Join(texts, " ")
}

// otherHue is from how many hue steps apart two mixes are of two hues. Ours: half of one of
// Munsell's ten families. The lights and darks of a red bowl are 2.5 apart and those of a
// violet handle 4.4, the red and the yellow of a fig's rind 14.
const otherHue = 5

// neighbouring tells whether mixes are of two hues or more, and these are neighbours: a
// single hue is in harmony with nothing.
func neighbouring(stains []stain) bool {
	return hue(stains).widest(stains) >= otherHue && len(huesOf(stains)) == 1
}

// arcText says whether the picture as a whole is analogous, and which hues lie outside
// with the most of their weight.
func (h hue) arcText(hues []HueShare) string {
	if len(hues) < 2 {
		return ""
	}
	from, width, held := h.arc()
	if width > analogousArc {
		return ""
	}
	ends := fmt.Sprintf("within %.0f of the 100 steps, %s to %s", width, hueName(from), hueName(from+width))
	if held == 1 {
		return "The picture is analogous: all its hues lie " + ends + "."
	}
	var outside []string
	for _, s := range hues {
		if 2*s.mixes.within(from, width) < s.mixes.sum(stain.weight) {
			outside = append(outside, fmt.Sprintf("%s (%s)", s.Region, s.Word))
		}
	}
	text := fmt.Sprintf("Most of the picture is analogous: %.0f in 100 of its colour, by area × chroma, lie %s", 100*held, ends)
	if len(outside) > 0 {
		text += "; outside: " + match.Listed(outside)
	}
	return text + "."
}

// within returns the weight of the mixes on an arc.
func (h hue) within(from, width float64) (weight float64) {
	for _, s := range h {
		if Round(math.Mod(s.Hue-from+100, 100), 2) <= width {
			weight += s.weight()
		}
	}
	return weight
}

// hueName says a hue in notation and word.
func hueName(step float64) string {
	return fmt.Sprintf("%s (%s)", hueText(step), colour.HueName(step))
}

// arc returns where the shortest arc begins that holds nearly all the weight, its
// steps, and what part it holds: 1 where the shortest that holds all is analogous too.
func (h hue) arc() (from, width, held float64) {
	if from, width, held = h.shortest(1); width <= analogousArc {
		return from, width, held
	}
	return h.shortest(nearly)
}

// shortest returns the shortest arc that holds a part of the weight; of some as
// short, the first from 5R on.
func (h hue) shortest(part float64) (from, width, held float64) {
	round := slices.Clone(h)
	slices.SortStableFunc(round, func(a, b stain) int { return cmp.Compare(a.Hue, b.Hue) })
	total := Round(h.sum(stain.weight), 6)
	width = 100
	for i, first := range round {
		sum := 0.0
		for j := range round {
			last := round[(i+j)%len(round)]
			sum += last.weight()
			if Round(sum, 6) < Round(part*total, 6) {
				continue
			}
			steps := last.Hue - first.Hue
			if i+j >= len(round) {
				steps += 100
			}
			if steps = Round(steps, 2); steps < width {
				from, width, held = first.Hue, steps, Round(sum/total, 4)
			}
			break
		}
	}
	return from, width, held
}
