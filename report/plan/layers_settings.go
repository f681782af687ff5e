// Rules that the painter's settings for all coats break in the coats that are proposed.

package plan

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"tonewright/match/layer"
)

// ofSettings tells whether a fault lies in what the painter set for all coats: the medium,
// the film, how thick a coat is. A glaze has its own.
func ofSettings(coats []coat, f layer.Fault) bool {
	c := coats[f.Above]
	return (f.Rule == layer.TooThick || f.Rule == layer.TooMuchMedium) && !c.own && c.pass != PassGlaze
}

// settingFaults are such faults, one for each rule, with the strictest mend.
type settingFaults []settingFault

type settingFault struct {
	layer.Fault
	coats []string // ids
	times float64  // how thick an ordinary coat may be, times what it is
}

// with adds a fault of a coat.
func (all settingFaults) with(in layersFrom, c coat, f layer.Fault) settingFaults {
	times := 1.0
	if f.Change.Film > 0 {
		times = f.Change.Film / c.film
	}
	i := slices.IndexFunc(all, func(have settingFault) bool { return have.Rule == f.Rule })
	if i < 0 {
		return append(all, settingFault{f, []string{in.id(c)}, times})
	}
	all[i].coats = withWord(all[i].coats, in.id(c))
	all[i].times = min(all[i].times, times)
	if m := f.Change.Medium; m != nil && m.Parts < all[i].Change.Medium.Parts {
		all[i].Change.Medium = m
	}
	return all
}

// broken writes the faults as data; the list is not nil.
func (all settingFaults) broken(in layersFrom) []Broken {
	broken := []Broken{}
	for _, f := range all {
		b := Broken{Rule: f.Rule, Coats: f.coats, Reason: f.Reason, Source: f.Source}
		b.Line, b.Mend = f.line(in.opt)
		broken = append(broken, b)
	}
	return broken
}

// line returns the line at the top of the painting file that mends a fault, and the same
// in a sentence.
func (f settingFault) line(opt Options) (line, words string) {
	if m := f.Change.Medium; m != nil {
		return fmt.Sprintf("medium = %q", m), fmt.Sprintf("Take %s in all ordinary coats.", m)
	}
	if opt.Mixing.Coat > 1 {
		coat := strconv.FormatFloat(math.Floor(opt.Mixing.Coat*f.times*100)/100, 'g', -1, 64)
		return "coat = " + coat, fmt.Sprintf("Lay coats of %s times an ordinary one, and more of them.", coat)
	}
	film := strconv.FormatFloat(math.Floor(opt.Work.Film*f.times), 'g', -1, 64)
	return "film = " + film, fmt.Sprintf("Take %s µm for an ordinary coat.", film)
}
