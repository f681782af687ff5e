// The fewest tubes, where they were asked for.

package report

import (
	"fmt"

	"tonewright/report/plan"
)

// fewTubes is the section; Kept is empty where few tubes were not asked for.
type fewTubes struct {
	Text, Error, Kept string
	Dropped           []droppedTube
}

type droppedTube struct {
	Name, Gain, Text string
	Colours          []string
}

func fewTubesOf(p *plan.Plan) fewTubes {
	few := fewTubes{Dropped: []droppedTube{}}
	if p.Tubes == nil {
		return few
	}
	t, name := p.Tubes, namerOf(p)
	few.Text, few.Kept = t.Text, listed(name.all(t.Kept))
	few.Error = fmt.Sprintf("With these the mixes are %.1f ΔE off their aims, in the mean over the panel; with the whole box %.1f.", t.MeanError, t.FullError)
	if !t.Proven {
		few.Error += " There may be a choice a little better than this: too many had to be tried for all of them."
	}
	for _, d := range t.Dropped {
		few.Dropped = append(few.Dropped, droppedTube{d.Name, fmt.Sprintf("%.2f", d.Gain), d.Text, append([]string{}, d.Colours...)})
	}
	return few
}
