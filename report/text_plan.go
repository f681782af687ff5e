package report

import (
	"fmt"
	"io"
	"strings"

	"tonewright/report/plan"
)

// PlanText says, in a few lines, what was planned and where it is: the report in the
// file html; the data in the file json, the colour study in the files study and the days
// in the files days, unless they are "".
func PlanText(w io.Writer, p *plan.Plan, html, json, study, days string) error {
	var t text
	t.line("%s: %s, %s ground, %d × %d cells of %s", p.Name, p.Panel.Size, p.Panel.Ground, p.Grid.Columns, p.Grid.Rows, p.Grid.Cell)
	for _, r := range p.Regions {
		t.line("%s", regionLine(r))
	}
	for _, warning := range p.Warnings {
		if warning.Kind == plan.AboutPhoto || warning.Kind == plan.AboutRegion || warning.Kind == plan.AboutBox {
			t.say(6, "Note: %s", warning.Text)
		}
	}
	var tubes []string
	for _, c := range p.Paints {
		tubes = append(tubes, c.Name)
	}
	t.say(6, "Tubes: %s", strings.Join(tubes, ", "))
	t.composing(p)
	t.working(p)
	t.line("Report: %s", html)
	if json != "" {
		t.line("Data:   %s", json)
	}
	if study != "" {
		t.line("Study:  %s", study)
	}
	if days != "" {
		t.line("Days:   %s", days)
	}
	return t.to(w)
}

func regionLine(r plan.Region) string {
	far := 0
	for _, c := range r.Colours {
		if c.Missed() {
			far++
		}
	}
	line := fmt.Sprintf("  %-2s %-36s %5.1f %%  %s", r.Tag, shorten(r.Name, 36), 100*r.Share, count(len(r.Colours), "mix"))
	if far > 0 {
		line += fmt.Sprintf(", %d off the aim", far)
	}
	return line
}
