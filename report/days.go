// The days in words, and their section of the page.

package report

import (
	"fmt"
	"strings"
	"time"

	"tonewright/report/plan"
)

// when is "Tue 1 Dec 2026", or "day 4" where days are only counted.
func when(date string, day int) string {
	if d, err := time.Parse(time.DateOnly, date); err == nil {
		return d.Format("Mon 2 Jan 2006")
	}
	return fmt.Sprintf("day %d", day)
}

// whenSpan is when something may be done: "1 Jun 2027 to 28 Nov 2027", or in days.
func whenSpan(e plan.Event) string {
	from, err := time.Parse(time.DateOnly, e.From)
	to, wrong := time.Parse(time.DateOnly, e.To)
	switch {
	case err != nil:
		return either(e.Day.From == e.Day.To, "day ", "days ") + strings.Replace(span(e.Day.From, e.Day.To), "-", " to ", 1)
	case wrong != nil || to.Equal(from):
		return from.Format("2 Jan 2006")
	}
	return from.Format("2 Jan 2006") + " to " + to.Format("2 Jan 2006")
}

// pileText is "a pea (0.8 ml)".
func pileText(p plan.Pile) string {
	ml := fmt.Sprintf("%.1f ml", p.ML)
	if p.Size == "" {
		return ml
	}
	return p.Size + " (" + ml + ")"
}
