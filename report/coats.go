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
// pass at most so many regions are named, and the rest counted; one whose name has a
// comma goes by its tag.
func (n coatNamer) passes(ids []string, most int) string {
	var order []string
	of := map[string][]string{}
	for _, id := range ids {
		c := n.coats[id]
		if c == nil {
			continue
		}
		if of[c.Pass] == nil {
			order = append(order, c.Pass)
		}
		name := n.region(c)
		of[c.Pass] = append(of[c.Pass], either(strings.Contains(name, ","), c.Region, name))
	}
	for i, pass := range order {
		names := of[pass]
		if more := len(names) - most; more > 0 {
			names = append(names[:most:most], fmt.Sprintf("%d more", more))
		}
		order[i] = pass + " of " + strings.Join(names, ", ")
	}
	return strings.Join(order, "; ")
}

// each words coats one by one: "B.1, block-in of wall; C.1, block-in of shelf".
func (n coatNamer) each(ids []string) string {
	var words []string
	for _, id := range ids {
		words = append(words, id+", "+n.coat(id))
	}
	return strings.Join(words, "; ")
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
