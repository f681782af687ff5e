// The fewest tubes, where they were asked for.

package report

import (
	"tonewright/report/plan"
)

// fewTubes is the section; Kept is "" where few tubes were not asked for.
type fewTubes struct {
	Text, Kept string
	Dropped    []string // what each tube left out would have bought
}

func fewTubesOf(p *plan.Plan) fewTubes {
	few := fewTubes{Dropped: []string{}}
	if p.Tubes == nil {
		return few
	}
	few.Text, few.Kept = p.Tubes.Text, listed(namerOf(p).all(p.Tubes.Kept))
	for _, d := range p.Tubes.Dropped {
		few.Dropped = append(few.Dropped, d.Text)
	}
	return few
}
