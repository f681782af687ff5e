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
	kept := make([]paint.Paint, len(few.Kept))
	for i, n := range few.Kept {
		kept[i] = m.box[n]
	}
	m.box = kept
	return result
}

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
