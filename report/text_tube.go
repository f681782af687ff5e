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
		t.say(2, "Careful: %s", warning)
	}
	t.gap()
	t.say(2, "%s, a tube of %s: %s.", a.Name, a.LikeName, a.Source)
	t.say(2, "It %s (thick %.1f, in white %.1f CIEDE2000 apart): thick it is %s; in white %s; it tints %s.",
		apart(max(a.Masstone.Apart, a.Tint.Apart)), a.Masstone.Apart, a.Tint.Apart, a.Masstone.Words, a.Tint.Words, tints(a.Strength))
	t.gap()
	t.table([][]string{
		{"thick", "yours", a.Masstone.Own.Munsell, a.Masstone.Own.Name},
		{"", "typical", a.Masstone.Typical.Munsell, a.Masstone.Typical.Name},
		{"one in four of white", "yours", a.Tint.Own.Munsell, a.Tint.Own.Name},
		{"", "typical", a.Tint.Typical.Munsell, a.Tint.Typical.Name},
	})
	t.gap()
	t.say(2, "Fit: %.2f CIEDE2000 on average, %.2f at worst.", a.Error, a.Worst)
	for _, s := range a.Samples {
		t.line("  %-20s %5.2f", shorten(s.Sample, 20), s.DeltaE)
	}
	t.gap()
	for _, note := range a.Notes {
		t.say(2, "%s", note)
	}
	return t.to(w)
}

// apart says how far a tube is from the typical one. Ours: 2 is hard to tell across a
// palette, 5 is another colour to anyone.
func apart(deltaE float64) string {
	switch {
	case deltaE < 2:
		return "is near the typical tube"
	case deltaE < 5:
		return "differs from the typical tube"
	}
	return "differs much from the typical tube"
}

// tints words a strength beside the typical tube's.
func tints(strength float64) string {
	switch {
	case strength > 1.05:
		return fmt.Sprintf("%.2f times as strongly", strength)
	case strength < 0.95:
		return fmt.Sprintf("weaker, %.2f times as strongly", strength)
	}
	return "as strongly"
}
