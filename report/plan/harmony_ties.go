// Tubes that tie regions together.

package plan

import (
	"cmp"
	"slices"
)

// tiesOf parts the paints into those in two or more regions and those in one only;
// the most regions first, then the most colours. Whites and blacks come last: they
// are nearly everywhere, and tie hues together least.
func tiesOf(regions []Region, paints []Paint) (ties, once []Tie) {
	ties, once = []Tie{}, []Tie{}
	region := map[string]string{} // colour → region
	for _, r := range regions {
		for _, c := range r.Colours {
			region[c.ID] = r.Tag
		}
	}
	for _, p := range paints {
		t := Tie{Paint: p.ID, Name: p.Name, Colours: p.Used, Plain: p.Plain}
		for _, id := range p.Used {
			if tag := region[id]; !slices.Contains(t.Regions, tag) {
				t.Regions = append(t.Regions, tag)
			}
		}
		if len(t.Regions) > 1 {
			ties = append(ties, t)
		} else {
			once = append(once, t)
		}
	}
	slices.SortStableFunc(ties, strongerTie)
	slices.SortStableFunc(once, strongerTie)
	return ties, once
}

func strongerTie(a, b Tie) int {
	if a.Plain != b.Plain {
		if a.Plain {
			return 1
		}
		return -1
	}
	return cmp.Or(len(b.Regions)-len(a.Regions), len(b.Colours)-len(a.Colours))
}
