// The days as a calendar file, which any calendar program reads.

package report

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"
	"unicode"

	ics "github.com/arran4/golang-ical"

	"tonewright/report/plan"
)

// mostNamed is how many regions of one pass a summary names; the rest are counted. Ours:
// a calendar shows one line of it.
const mostNamed = 4

// Calendar writes the plan's days as an iCalendar file: an event for each session and
// for each thing to do afterwards, on whole days. What may be done within a range of
// days stands on its first and says the range in words. A plan made anew with the same name and
// start has the same events, by their UIDs. It is an error where the days have no dates.
// Source: [RFC5545], [RFC7986] 5.1 for the calendar's name.
func Calendar(w io.Writer, p *plan.Plan) error {
	if p.Days.Start == "" {
		return errors.New("a calendar needs a date to begin with: give the first session's, like 2026-12-01")
	}
	start, err := time.Parse(time.DateOnly, p.Days.Start)
	if err != nil {
		return fmt.Errorf("report: the days start on %q, which is no date like 2026-12-01", p.Days.Start)
	}
	c := almanac{ics.NewCalendar(), p, coatNamerOf(p), p.Cautions, start}
	c.cal.SetProductId("-//tonewright//plan " + calendarText(p.Version) + "//EN")
	c.cal.SetCalscale("GREGORIAN")
	c.cal.SetName(calendarText(p.Name))
	for _, s := range p.Days.Sessions {
		if err := c.session(s); err != nil {
			return err
		}
	}
	for i, e := range p.Days.After {
		if err := c.event(i, e); err != nil {
			return err
		}
	}
	// The library's own line end is that of the machine; [RFC5545] 3.1 wants CRLF on all.
	return c.cal.SerializeTo(w, ics.WithNewLineWindows)
}

// almanac is a calendar while it is written.
type almanac struct {
	cal   *ics.Calendar
	p     *plan.Plan
	name  coatNamer
	care  carer
	start time.Time
}

func (c almanac) session(s plan.Session) error {
	summary := c.p.Name + ": " + c.name.passes(s.Coats, mostNamed)
	return c.add(fmt.Sprintf("session %d", s.Number), s.Date, summary, c.sessionText(s))
}

func (c almanac) event(i int, e plan.Event) error {
	summary := c.p.Name + ": " + e.Name
	if e.To != "" && e.To != e.From {
		summary += ", " + whenSpan(e)
	}
	return c.add(fmt.Sprintf("after %d", i+1), e.From, summary, e.Text)
}

// add adds an event on a whole day. It does not make the day busy: an hour at the easel
// is no reason to refuse a meeting.
func (c almanac) add(what, date, summary, text string) error {
	day, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return fmt.Errorf("report: %s is on %q, which is no date like 2026-12-01", what, date)
	}
	e := c.cal.AddEvent(c.uid(what))
	e.SetDtStampTime(c.start) // [RFC5545] 3.6.1 requires one; the clock would make each file another
	e.SetAllDayStartAt(day)
	e.SetAllDayEndAt(day.AddDate(0, 0, 1)) // the first day that it is not: readers of the old RFC 2445 take none for no time at all
	e.SetSummary(calendarText(summary))
	if text != "" {
		e.SetDescription(calendarText(text))
	}
	e.SetTimeTransparency(ics.TransparencyTransparent)
	return nil
}

// uid names an event for good, by the painting, its start and what the event is.
func (c almanac) uid(what string) string {
	sum := sha256.Sum256([]byte(c.p.Name + "\x00" + c.p.Days.Start + "\x00" + what))
	return fmt.Sprintf("%x@tonewright", sum[:16])
}

// sessionText says what to do in a session, under heads in the order of doing it, a blank
// line between them. How large a pile looks is left to the checklist.
func (c almanac) sessionText(s plan.Session) string {
	var parts []string
	say := func(head string, lines ...string) {
		if len(lines) > 0 {
			parts = append(parts, head+"\n"+strings.Join(lines, "\n"))
		}
	}
	if len(s.Dry) > 0 {
		say("Check", fmt.Sprintf("Try with a thumb that these are dry: %s.", c.name.placesText(s.Dry)))
	}
	var piles, coats []string
	for _, pile := range s.Piles {
		piles = append(piles, fmt.Sprintf("%s: %s; %s", pile.ID, partsText(pile.Parts), mlText(pile)))
	}
	for _, id := range s.Coats {
		coats = append(coats, fmt.Sprintf("%s %s", id, c.name.coat(id)+c.name.with(id)))
	}
	say("Lay out", piles...)
	say("Paint", coats...)
	if care := c.care.keys(s.Cautions); len(care) > 0 {
		say("Care", strings.Join(care, "; ")+".")
	}
	if s.Reason != "" {
		say("Why this day", capital(strings.TrimSuffix(s.Reason, "."))+".")
	}
	return strings.Join(parts, "\n\n")
}

// calendarText leaves out what a text may not hold, of which the library lets all
// through: broken UTF-8, which its folding cannot count, and control characters other
// than line feeds. Source: [RFC5545] 3.3.11, TSAFE-CHAR.
func calendarText(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) && r != '\n' {
			return -1
		}
		return r
	}, strings.ToValidUTF8(s, ""))
}
