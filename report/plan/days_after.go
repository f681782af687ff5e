// What comes after the last coat.

package plan

import (
	"math"
	"slices"
	"time"
)

// When a painting is varnished, in days after its last coat: 6 to 12 months. Common
// practice, no source.
const (
	varnishFrom = 183
	varnishTo   = 365
)

// after lists what is to be done once the last coat is on, in order; no list for no coats.
// Source: that oil rubbed into a finished painting cannot be taken off it again as a
// varnish can, and that a varnish thinned well may go on before, [MITRA307]; the rest is
// common practice, no source.
func (s *schedule) after() []Event {
	if len(s.taken) == 0 {
		return []Event{}
	}
	var dry Span // of all of it
	for i, c := range s.coats {
		laid := float64(s.day[i])
		dry = Span{max(dry.From, laid+c.TouchDry.From), max(dry.To, laid+c.TouchDry.To)}
	}
	dry = Span{math.Ceil(dry.From), math.Ceil(dry.To)}
	last := float64(s.taken[len(s.taken)-1])
	varnish := Span{max(last+varnishFrom, dry.To), max(last+varnishTo, dry.To)}
	return []Event{
		{Name: "touch dry", Day: dry, Text: "All of it is dry to the touch. Try with a thumb where it is thickest and darkest."},
		{Name: "oil out", Day: Span{dry.To, varnish.From}, Text: "Only where paint has sunk in and looks dull, and only once it is dry to the touch: rub in the least linseed oil that does, thinned with as much solvent, and wipe off after some minutes all that comes off. " +
			"It yellows and cannot be taken off again, so leave to the varnish what can wait for it. Between sessions it helps to see a sunken colour right before it is painted on."},
		{Name: "thin varnish", Day: Span{dry.To, varnish.From}, Text: "If it has to be shown before it can be varnished: one thin coat of retouching varnish, well thinned, over paint that is dry to the touch."},
		{Name: "varnish", Day: varnish, Text: "6 to 12 months after the last coat, the later the thicker or fatter the paint, and only where a cloth with a little of the varnish's solvent takes no colour off. A varnish that can be taken off again is best."},
	}
}

// date turns days into dates.
func (d *Days) date(start time.Time) {
	on := func(day float64) string { return start.AddDate(0, 0, int(day)-1).Format(time.DateOnly) }
	d.Start = on(1)
	for i := range d.Sessions {
		d.Sessions[i].Date = on(float64(d.Sessions[i].Day))
	}
	for i := range d.After {
		d.After[i].From, d.After[i].To = on(d.After[i].Day.From), on(d.After[i].Day.To)
	}
}

// onto writes onto the coats when each is painted, and from when it may be gone over.
func (d Days) onto(coats []Coat) {
	start, err := time.Parse(time.DateOnly, d.Start)
	on := func(day int) string {
		if err != nil {
			return ""
		}
		return start.AddDate(0, 0, day-1).Format(time.DateOnly)
	}
	for _, s := range d.Sessions {
		for i := range coats {
			if c := &coats[i]; slices.Contains(s.Coats, c.ID) {
				c.Day, c.OverDay = s.Day, s.Day+int(math.Ceil(c.GoOver.From))
				c.Date, c.OverDate = on(c.Day), on(c.OverDay)
			}
		}
	}
}

// text says what the days are planned for, and that a thumb decides.
func (d Days) text() string {
	if len(d.Sessions) == 0 {
		return "There is nothing to paint."
	}
	return "Each day is planned for the middle of the drying estimates, and paint dries sooner or later than that: try with a thumb what has to be dry, go on sooner where it leaves no mark, and put the session off where it does."
}
