// What comes after the last coat.

package plan

import (
	"fmt"
	"time"
)

// When a painting is varnished, in days after its last coat: 6 to 12 months. Common
// practice, no source.
const (
	varnishFrom = 183
	varnishTo   = 365
)

// after lists what is to be done once the last coat is on.
func (s *schedule) after() []Event {
	if len(s.taken) == 0 {
		return []Event{}
	}
	last := s.taken[len(s.taken)-1]
	dry := Span{}
	for i, c := range s.coats {
		laid := float64(s.day[i])
		dry = Span{max(dry.From, laid+c.TouchDry.From), max(dry.To, laid+c.TouchDry.To)}
	}
	dry = Span{Round(dry.From, 0), Round(dry.To, 0)}
	varnish := Span{float64(last + varnishFrom), float64(last + varnishTo)}
	return []Event{
		{Name: "touch dry", Day: dry, Text: "All of it is dry to the touch; press lightly at the thickest and darkest places."},
		{Name: "oil out", Day: Span{dry.To, varnish.From}, Text: "Where passages have sunk in and look dull."},
		{Name: "varnish", Day: varnish, Text: "6 to 12 months after the last coat."},
	}
}

// date turns days into dates.
func (d *Days) date(start time.Time) {
	d.Start = start.Format(time.DateOnly)
	on := func(day float64) string { return start.AddDate(0, 0, int(day)-1).Format(time.DateOnly) }
	for i := range d.Sessions {
		d.Sessions[i].Date = on(float64(d.Sessions[i].Day))
	}
	for i := range d.After {
		d.After[i].From, d.After[i].To = on(d.After[i].Day.From), on(d.After[i].Day.To)
	}
}

// text says how long it takes.
func (d Days) text() string {
	if len(d.Sessions) == 0 {
		return "There is nothing to paint."
	}
	return fmt.Sprintf("%d sessions over %d days.", len(d.Sessions), d.Sessions[len(d.Sessions)-1].Day)
}
