// Rules that the painter's own coats break, and what mends them.

package plan

import "tonewright/match/layer"

// brokenOf returns the rules that the coats break: first those that the settings for all
// coats break, then the others by region, from what lies behind on.
func (in layersFrom) brokenOf(all []coat) []Broken {
	others := []Broken{}
	var set settingFaults
	for _, r := range in.behind {
		coats := coatsOn(all, r)
		for _, f := range in.faults(coats) {
			if ofSettings(coats, f) {
				set = set.with(in, coats[f.Above], f)
				continue
			}
			others = append(others, in.broken(coats, f))
		}
	}
	return append(set.broken(in), others...)
}

// coatsOn returns a region's coats, the lowest first.
func coatsOn(all []coat, r int) (coats []coat) {
	for _, c := range all {
		if c.region == r {
			coats = append(coats, c)
		}
	}
	return coats
}

// faults returns the rules that a region's coats break.
func (in layersFrom) faults(coats []coat) []layer.Fault {
	if len(coats) == 0 {
		return nil
	}
	return faultsOf(coats, len(in.regions[coats[0].region].Colours), in.opt.Work.Air, in.id)
}

// broken writes a fault as data, with the mend that was tried, or else the words for one.
func (in layersFrom) broken(coats []coat, f layer.Fault) Broken {
	b := Broken{Rule: f.Rule, Coats: []string{in.id(coats[f.Below])}, Reason: f.Reason, Mend: f.Mend, Source: f.Source}
	if f.Above != f.Below {
		b.Coats = append(b.Coats, in.id(coats[f.Above]))
	}
	if m, found := in.mend(coats, f); found {
		b.Mend, b.Line = m.words, m.line
		if m.line != "" {
			b.Coat = in.id(coats[m.at])
		}
	}
	return b
}
