// Coats in words: what the page, the calendar, the checklist and the terminal call them
// alike.

package report

import (
	"fmt"
	"math"
	"strings"

	"tonewright/report/plan"
)

// coatNamer knows the coats by their ids and the regions by their tags.
type coatNamer struct {
	coats map[string]*plan.Coat
	names map[string]string
}

func coatNamerOf(p *plan.Plan) coatNamer {
	n := coatNamer{map[string]*plan.Coat{}, namesOf(p)}
	for i := range p.Layers.Coats {
		n.coats[p.Layers.Coats[i].ID] = &p.Layers.Coats[i]
	}
	return n
}

// region returns the name of a coat's region; its tag where that has none.
func (n coatNamer) region(c *plan.Coat) string {
	if name := n.names[c.Region]; name != "" {
		return name
	}
	return c.Region
}

// coat is "block-in of wall", or the id of a coat that the plan has not.
func (n coatNamer) coat(id string) string {
	c := n.coats[id]
	if c == nil {
		return id
	}
	return c.Pass + " of " + n.region(c)
}

// passes words coats by their pass: "block-in of wall, shelf; glaze of kettle". Of each
// pass at most so many regions are named, and the rest counted.
func (n coatNamer) passes(ids []string, most int) string {
	var order []string
	of := map[string][]string{}
	for _, id := range ids {
		pass, name := id, ""
		if c := n.coats[id]; c != nil {
			pass, name = c.Pass, n.region(c)
		}
		if _, met := of[pass]; !met {
			order = append(order, pass)
		}
		of[pass] = append(of[pass], name)
	}
	for i, pass := range order {
		names := of[pass]
		if more := len(names) - most; more > 0 {
			names = append(names[:most:most], fmt.Sprintf("%d more", more))
		}
		order[i] = strings.TrimSuffix(pass+" of "+strings.Join(names, ", "), " of ")
	}
	return strings.Join(order, "; ")
}

// how says how a coat is laid: its medium and what it goes into, "" for neither.
func (n coatNamer) how(c *plan.Coat) string {
	var how []string
	if m := mediumText(c.Medium); m != "" {
		how = append(how, m)
	}
	if c.Into != "" {
		how = append(how, "into "+c.Into+" while that is wet")
	}
	return strings.Join(how, ", ")
}

// with says what a coat is painted with: ": A1, A2; with linseed 1:10".
func (n coatNamer) with(id string) string {
	c := n.coats[id]
	if c == nil {
		return ""
	}
	var piles []string
	for _, m := range c.Mixes {
		piles = append(piles, either(onItself(m), m.Pile, m.Pile+" for "+listed(m.On)))
	}
	text := ": " + strings.Join(piles, ", ")
	if how := n.how(c); how != "" {
		text += "; " + how
	}
	return text
}

// onItself tells whether a pile is laid in the places of the colour it is named after,
// and in no others.
func onItself(m plan.CoatMix) bool { return len(m.On) == 0 || len(m.On) == 1 && m.On[0] == m.Pile }

// mediumText words a medium of a coat: "with linseed 1:10", "" for none.
func mediumText(medium string) string {
	if medium == "" || medium == "none" {
		return ""
	}
	return "with " + medium
}

// Lengths of time in days, for words.
const (
	week  = 7
	month = 365.25 / 12
)

// timeText words an estimate in days, in the unit that suits its end: hours, days,
// weeks or months.
func timeText(s plan.Span) string {
	unit, of := 1.0/24, "hour"
	switch {
	case s.To >= 4*month:
		unit, of = month, "month"
	case s.To >= 4*week:
		unit, of = week, "week"
	case s.To >= 3:
		unit, of = 1, "day"
	}
	from, to := math.Round(s.From/unit), math.Round(s.To/unit)
	if from == to {
		return count(int(to), of)
	}
	return fmt.Sprintf("%.0f to %.0f %ss", from, to, of)
}
