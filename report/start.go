// What was found in a photo, as text, when a painting file is begun.

package report

import (
	"io"

	"tonewright/report/plan"
)

// StartText says what was found, where the painting file is, what to look at first, and the command that plans it.
func StartText(w io.Writer, name, ground string, found plan.FoundPlan, file, command string) error {
	var t text
	t.line("%s: %s, %s ground, %d × %d cells of %s", name, found.Unit.Size(found.Width, found.Height), ground,
		found.Columns, found.Rows, found.CellUnit.Format(found.Cell))
	t.line("Found %s:", count(len(found.Regions), "region"))
	for _, r := range found.Regions {
		t.line("  %-38s %5.1f %%  %s", shorten(r.Name, 38), 100*r.Share, shorten(r.Where, 30))
	}
	for _, warning := range found.Warnings {
		t.say(6, "Note: %s", warning)
	}
	t.line("Painting file: %s", file)
	t.say(6, "First plan it as it is and look at Regions in the report: one may hold two things alike in colour, or half of one. Then name them.")
	t.line("Next: edit %s, then %s", file, command)
	return t.to(w)
}
