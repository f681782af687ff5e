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

// inYear is "Tue 1 Dec", or "day 4": when, where the year goes without saying.
func inYear(date string, day int) string {
	if d, err := time.Parse(time.DateOnly, date); err == nil {
		return d.Format("Mon 2 Jan")
	}
	return when(date, day)
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

// pileText is "a pea (0.8 ml)", with the medium that is stirred in.
func pileText(p plan.Pile) string {
	if p.Size == "" {
		return mlText(p)
	}
	return p.Size + " (" + mlText(p) + ")"
}

// mlText is "0.8 ml and 0.2 of medium".
func mlText(p plan.Pile) string {
	ml := small(p.ML) + " ml"
	if p.MediumML > 0 {
		ml += fmt.Sprintf(" and %s of medium", small(p.MediumML))
	}
	return ml
}

// days is the section of the page; Sessions is empty where the plan has no days.
type days struct {
	Span     string
	Text     string // what they rest on
	Sessions []sessionCard
	After    []eventRow
}

// sessionCard is a day at the easel in words.
type sessionCard struct {
	Number, When, Reason string
	Dry                  []string // tags of the regions to try
	Coats                []sessionCoat
	Piles                []sessionPile
	Care                 []string
}

// sessionCoat is a coat to paint that day.
type sessionCoat struct{ ID, Text, How string }

// sessionPile is paint to lay out; Parts is "" of a pile that has a row of its own with
// its region, which Anchor names. Tubes is what to squeeze out for it.
type sessionPile struct{ Tag, Size, Tubes, Parts, Anchor string }

// eventRow is something to do once the paint is dry.
type eventRow struct{ Name, When, Text string }

func daysOf(p *plan.Plan, care carer) days {
	d := days{Span: spanText(&p.Days), Text: p.Days.Text, Sessions: []sessionCard{}, After: []eventRow{}}
	name, rows := coatNamerOf(p), rowsOf(p)
	for _, s := range p.Days.Sessions {
		d.Sessions = append(d.Sessions, sessionCardOf(s, name, rows, care))
	}
	for _, e := range p.Days.After {
		d.After = append(d.After, eventRow{capital(e.Name), capital(whenSpan(e)), e.Text})
	}
	return d
}

// spanText is "12 sessions from Mon 30 Nov 2026 to Fri 25 Dec 2026, 3 a week."; "" for
// no sessions.
func spanText(d *plan.Days) string {
	if len(d.Sessions) == 0 {
		return ""
	}
	first, last := d.Sessions[0], d.Sessions[len(d.Sessions)-1]
	text := count(len(d.Sessions), "session")
	switch {
	case len(d.Sessions) == 1:
		text += " on " + when(first.Date, first.Day)
	case d.Start == "":
		text += fmt.Sprintf(" within %d days", last.Day)
	default:
		text += " from " + when(first.Date, first.Day) + " to " + when(last.Date, last.Day)
	}
	return fmt.Sprintf("%s, %d a week", text, d.AWeek)
}

// rowsOf are the tags of the colours that have a row with their region.
func rowsOf(p *plan.Plan) map[string]bool {
	rows := map[string]bool{}
	for _, r := range p.Regions {
		for _, c := range r.Colours {
			rows[c.ID] = true
		}
	}
	return rows
}

func sessionCardOf(s plan.Session, name coatNamer, rows map[string]bool, care carer) sessionCard {
	card := sessionCard{
		Number: fmt.Sprint(s.Number), When: capital(when(s.Date, s.Day)), Reason: capital(s.Reason),
		Dry: []string{}, Coats: []sessionCoat{}, Piles: []sessionPile{}, Care: care.keys(s.Cautions),
	}
	for _, r := range name.places(s.Dry) {
		card.Dry = append(card.Dry, r.Tag)
	}
	for _, id := range s.Coats {
		how := ""
		if c := name.coats[id]; c != nil {
			how = name.how(c)
		}
		card.Coats = append(card.Coats, sessionCoat{id, name.coat(id), how})
	}
	for _, pile := range s.Piles {
		row := sessionPile{Tag: pile.ID, Size: pileText(pile), Tubes: pile.Tubes, Anchor: pile.ID}
		if !rows[pile.ID] {
			row.Parts, row.Anchor = partsText(pile.Parts), ""
		}
		card.Piles = append(card.Piles, row)
	}
	return card
}
