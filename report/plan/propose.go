// What palettes are asked for, and what is proposed.

package plan

import (
	"fmt"
	"math"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
)

// suggest proposes palettes for a region's wish, given what is mixed so far.
func (m *mixer) suggest(r int, wish Wish, result []mixed) (list []match.Suggestion, lacks string) {
	ask := m.asked(r, wish)
	switch {
	case wish.Scheme == match.Complement:
		of := m.named(wish.Of)
		if len(m.colours[of]) == 0 {
			return nil, fmt.Sprintf("%s has nothing to paint and so no complement; wish for a hue instead.", m.wishes[of].Name)
		}
		hue, ok := hueOf(result[of], m.colours[of])
		if !ok {
			return nil, fmt.Sprintf("%s is too gray to have a complement; wish for a hue instead.", m.wishes[of].Name)
		}
		ask.Hue, ask.Hued = hue, true
	case wish.Hue != "":
		hue, err := colour.ParseHue(wish.Hue)
		if err != nil {
			panic("plan: " + err.Error()) // checkWishes refuses it
		}
		ask.Hue, ask.Hued = hue, true
	}
	box := m.box
	if m.wishes[r].NoWhite {
		box = slices.DeleteFunc(slices.Clone(box), paint.Paint.White)
	}
	list = match.Suggest(box, ask)
	if len(list) == 0 {
		lacks = match.WhyNone(box, ask)
	}
	if wish.Scheme == match.Quiet {
		for i := range list {
			list[i].Why += besides(ask)
		}
	}
	return list, lacks
}

// farValue is how many Munsell value steps from its surroundings keep a region from being
// quiet whatever it is painted in. Ours.
const farValue = 1

// besides says how far a region lies in value from what is around it, and what brings it
// near; "" where it is near, or nothing is around it.
func besides(ask match.Asked) string {
	by := meanValue(ask.Aims, ask.Shares) - meanValue(ask.Around, ask.AroundShares)
	if len(ask.Around) == 0 || math.Abs(by) < farValue {
		return ""
	}
	return fmt.Sprintf(" In value it stays %.1f %s than what is around it; value_shift = %g brings it near.", math.Abs(by), lighter(by), Round(-by*2, 0)/2)
}

// meanValue returns the mean Munsell value of colours by their shares.
func meanValue(colours []colour.Lab, shares []float64) float64 {
	sum, of := 0.0, 0.0
	for i, c := range colours {
		sum, of = sum+shares[i]*colour.ValueOf(c.L), of+shares[i]
	}
	return sum / of
}

// asked returns what palettes are for: the region's colours, those of what is around
// it, and the tubes that other regions use. The hue is not filled in.
func (m *mixer) asked(r int, wish Wish) match.Asked {
	ask := match.Asked{
		Scheme: wish.Scheme, Quiet: m.wishes[r].role() == RoleQuiet, Finish: m.mixing.Finish, InUse: map[string][]string{},
		Aims: m.bases(r, m.wishes[r].Shift), Shares: m.shares(r),
	}
	for id, tags := range m.inUse {
		others := slices.DeleteFunc(slices.Clone(tags), func(tag string) bool { return tag == tagOf(r) })
		if len(others) > 0 {
			ask.InUse[id] = others
		}
	}
	for other, share := range m.ring(r) {
		if share > 0 {
			ask.Around = append(ask.Around, m.bases(other, m.wishes[other].Shift)...)
			for _, part := range m.shares(other) {
				ask.AroundShares = append(ask.AroundShares, share*part)
			}
		}
	}
	return ask
}

// named returns the region of that name, in any case; -1 where there is none.
func (m *mixer) named(name string) int {
	return slices.IndexFunc(m.wishes, func(w RegionWish) bool { return sameName(w.Name, name) })
}

// complementOf returns the region that r is to be the complement of, or -1.
func (m *mixer) complementOf(r int) int {
	if m.wishes[r].Wish.Scheme != match.Complement {
		return -1
	}
	return m.named(m.wishes[r].Wish.Of)
}

// hueOf returns the Munsell hue step of a region's heaviest hue, by share and chroma;
// not ok where the region is too gray to have one.
func hueOf(x mixed, colours []tone) (step float64, ok bool) {
	var stains []stain
	share := 0.0
	for j, t := range colours {
		share += t.share
		if s := stainOf(x.look(j), t.share); s.Chroma >= Hued {
			stains = append(stains, s)
		}
	}
	hues := huesOf(stains)
	if len(hues) == 0 || Round(hues[0].sum(stain.weight), 6) < Round(hueless*share, 6) {
		return 0, false
	}
	return hues[0].mean().Hue, true
}

// hueless is the Munsell chroma, of a region's heaviest hue as a mean over all of the
// region, under which it has no hue to speak of. Ours: a red speck on a gray wall is
// nothing to be the complement of.
const hueless = 1
