// Mixing the picture from few tubes.

package plan

import (
	"fmt"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
)

// keepFew chooses the few tubes to mix from where that was asked for; nil where not.
// The painter's own palettes keep their paints and the white they are mixed with.
func (m *mixer) keepFew(wish TubeWish) *Tubes {
	if wish == (TubeWish{}) {
		return nil
	}
	opt := match.FewestOptions{Most: wish.Most, Within: wish.Within, Mixing: m.mixing, Fixed: fixedTubes(m.wishes, m.box)}
	var aims []colour.Lab
	var tags []string
	for r, w := range m.wishes {
		if len(w.Palette) > 0 {
			continue
		}
		for j, aim := range m.bases(r, w.Shift) {
			aims, tags = append(aims, aim), append(tags, colourTag(r, j))
			opt.Shares, opt.Regions = append(opt.Shares, m.colours[r][j].share), append(opt.Regions, r)
		}
	}
	few := match.FewestTubes(m.box, aims, opt)
	result := tubesOf(few, wish, m.box, tags)
	kept, all := make([]paint.Paint, len(few.Kept)), len(m.box)
	for i, n := range few.Kept {
		kept[i] = m.box[n]
	}
	m.box, m.reach = kept, reachOf(kept, m.mixing.Finish)
	if len(aims) == 0 {
		result.Text = fmt.Sprintf("%d of %d tubes: those of the regions' palettes.", len(kept), all)
	} else {
		result.Text += m.measuredOver(opt.Shares) + m.keyedTo()
	}
	return result
}

// measuredOver says what the errors of few tubes are over, where it is not the panel.
func (m *mixer) measuredOver(shares []float64) string {
	sum := 0.0
	for _, s := range shares {
		sum += s
	}
	if sum > 0.995 {
		return ""
	}
	return fmt.Sprintf(" The errors are over the %.0f %% of the panel without a palette of its own, against the photo's colours.", 100*sum)
}

// keyedTo says where few tubes reach less than the box that the values are keyed to.
func (m *mixer) keyedTo() string {
	lo, hi := colour.ValueOf(m.reach[0]), colour.ValueOf(m.reach[1])
	if lo-colour.ValueOf(m.key.PaintMin) < keyedApart && colour.ValueOf(m.key.PaintMax)-hi < keyedApart {
		return ""
	}
	return fmt.Sprintf(" They reach values %.1f to %.1f; values are fitted to what the whole box reaches.", lo, hi)
}

// keyedApart is how many values less the few may reach before it is said. Ours: under it
// nothing is seen.
const keyedApart = 0.2

// fixedTubes lists, by index in the box, the paints of the painter's own palettes and
// the whites they are mixed with.
func fixedTubes(regions []RegionWish, box []paint.Paint) (fixed []int) {
	keep := map[string]bool{}
	for _, w := range regions {
		if len(w.Palette) > 0 {
			for _, p := range paletteOf(w, box).all() {
				keep[p.ID] = true
			}
		}
	}
	for i, p := range box {
		if keep[p.ID] {
			fixed = append(fixed, i)
		}
	}
	return fixed
}

// check finds what is wrong with a wish for few tubes.
func (w TubeWish) check(opt Options) error {
	fixed := fixedTubes(opt.Regions, opt.Box.Paints)
	switch {
	case w.Most < 0:
		return fmt.Errorf("%d tubes are too few: ask for 1 or more", w.Most)
	case w.Most > 0 && len(fixed) > w.Most:
		return fmt.Errorf("%d tubes are fewer than the %d that the regions' palettes need: ask for more, or shorten the palettes", w.Most, len(fixed))
	case w.Within != 0 && !(w.Within >= LeastWithin && w.Within <= MostWithin):
		return fmt.Errorf("within %g is out of range: %g to %d, in CIEDE2000", w.Within, LeastWithin, MostWithin)
	}
	return nil
}
