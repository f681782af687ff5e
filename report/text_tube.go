package report

import (
	"fmt"
	"io"

	"tonewright/report/answer"
)

// TubeText writes what a tube was fitted to, what it is worth, and how it differs from
// the typical one.
func TubeText(w io.Writer, a *answer.OwnTube) error {
	var t text
	if a.KeptIn != "" {
		t.say(2, "Kept in %s as %q; mix and plan use it with --box %s.", a.KeptIn, a.ID, a.KeptIn)
	} else {
		t.say(2, "Not kept yet: add --box FILE, and plan and mix can use it.")
	}
	for _, warning := range a.Warnings {
		t.item("Note:", "%s", warning)
	}
	t.gap()
	t.say(2, "%s, a tube of %s: %s.", a.Name, a.LikeName, a.Source)
	beside := "differs from"
	if a.Close {
		beside = "is " + answer.HardToTell + " from"
	}
	t.say(2, "It %s the typical tube. It %s; thick it is %s; in white %s.", beside, a.Words, a.Masstone.Words, a.Tint.Words)
	tints := ""
	if a.Strength > 0 {
		tints = fmt.Sprintf("tints %.2f times as strongly and ", a.Strength)
	}
	t.say(2, "In figures: %.1f CIEDE2000 apart thick and %.1f in white; it %sscatters %.2f times as much; one coat's contrast, over black against over white, is %.2f, the typical tube's %.2f.",
		a.Masstone.Apart, a.Tint.Apart, tints, a.Scatter, a.Contrast[0], a.Contrast[1])
	t.gap()
	t.table([][]string{
		{"thick", "yours", a.Masstone.Own.Munsell, a.Masstone.Own.Name},
		{"", "typical", a.Masstone.Typical.Munsell, a.Masstone.Typical.Name},
		{"one in four of white", "yours", a.Tint.Own.Munsell, a.Tint.Own.Name},
		{"", "typical", a.Tint.Typical.Munsell, a.Tint.Typical.Name},
	})
	t.gap()
	t.fit(a)
	t.gap()
	for _, note := range a.Notes {
		t.say(2, "%s", note)
	}
	return t.to(w)
}

// fit says how near the samples are met, and where that means nothing.
func (t *text) fit(a *answer.OwnTube) {
	if !a.Checked {
		t.say(2, "Fit: nothing to check it by, since nearly any masstone and one tint can be met (here to %.2f CIEDE2000); measure a second tint, such as 1:10.", a.Worst)
		return
	}
	t.say(2, "Fit: %.2f CIEDE2000 on average, %.2f at worst.", a.Error, a.Worst)
	for _, s := range a.Samples {
		t.line("  %-20s %5.2f", shorten(s.Sample, 20), s.DeltaE)
	}
}
