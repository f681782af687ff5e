package answer

import (
	"fmt"
	"slices"
	"strings"

	"tonewright/match/paint"
	"tonewright/report/plan"
)

// SwatchBox returns the paints to correct a pile with: those of the box that was given,
// or else of the plan that the pile is mixed for, or else the starter box's where there is
// no such plan. given: nil is none. note, if not "", is to be told the painter.
// A plan.UsageError says that the plan's own tubes are not known without its box file.
func SwatchBox(given *paint.Box, planFile string) (box paint.Box, note string, err error) {
	read, err := readPlan(planFile, "its box")
	if err != nil || len(read.Box.Paints) == 0 { // an aim that wants a plan says so itself
		if given == nil {
			return paint.StarterBox(), "", nil
		}
		return *given, "", nil
	}
	if given == nil {
		box, err = read.box(planFile)
		return box, "", err
	}
	if !sameIDs(given.Paints, read.Box.Paints) {
		note = fmt.Sprintf("%s was made with other paints (%s) than are in %s: what is to be added comes of the latter.", planFile, read.Box.Name, given.Name)
	}
	return *given, note, nil
}

// box returns the plan's paints from the library.
func (p planRead) box(file string) (paint.Box, error) {
	box := paint.Box{Name: p.Box.Name}
	var own []string
	for _, used := range p.Paints {
		if used.Basis == paint.Own {
			own = append(own, used.ID)
		}
	}
	for _, id := range p.Box.Paints {
		of, err := paint.Find(nil, id)
		if err != nil && !slices.Contains(own, id) {
			own = append(own, id)
		}
		box.Paints = append(box.Paints, of)
	}
	if len(own) > 0 {
		return box, plan.Misused(fmt.Errorf("%s: was made with own tubes (%s), which only its box file knows: give that with --box", file, strings.Join(own, ", ")))
	}
	return box, nil
}

// sameIDs tells whether paints are those of the ids, in any order.
func sameIDs(paints []paint.Paint, ids []string) bool {
	var of []string
	for _, p := range paints {
		of = append(of, p.ID)
	}
	return slices.Equal(slices.Sorted(slices.Values(of)), slices.Sorted(slices.Values(ids)))
}
