// Coats in words: what the page, the calendar, the checklist and the terminal call them
// alike.

package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"tonewright/report/plan"
)

// coatNamer knows the coats by their ids and the regions by their tags.
type coatNamer struct {
	coats   map[string]*plan.Coat
	names   map[string]string
	regions []plan.Region
}

func coatNamerOf(p *plan.Plan) coatNamer {
	n := coatNamer{map[string]*plan.Coat{}, namesOf(p), p.Regions}
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
		of[c.Pass] = append(of[c.Pass], shortName(c.Region, n.region(c)))
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

// places returns the regions of coats, each once, in the order of the plan's: what there
// is to touch, since a thumb reaches the uppermost coat only.
func (n coatNamer) places(ids []string) (regions []plan.Region) {
	for _, r := range n.regions {
		if slices.ContainsFunc(ids, func(id string) bool { return n.coats[id] != nil && n.coats[id].Region == r.Tag }) {
			regions = append(regions, r)
		}
	}
	return regions
}

// placesText names the regions of coats: "wall, C and E".
func (n coatNamer) placesText(ids []string) string {
	var names []string
	for _, r := range n.places(ids) {
		names = append(names, shortName(r.Tag, r.Name))
	}
	return listed(names)
}

// shortName is a region's name in a list; one that has a comma in it goes by its tag.
func shortName(tag, name string) string {
	return either(name == "" || strings.Contains(name, ","), tag, name)
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
		on := n.others(c, m)
		piles = append(piles, m.Pile+either(len(on) > 0, " for "+listed(on), ""))
	}
	text := ": " + strings.Join(piles, ", ")
	if how := n.how(c); how != "" {
		text += "; " + how
	}
	return text
}

// others returns the colours in whose places a pile of a coat is laid; none where that
// is the one it is named after, or all of the region.
func (n coatNamer) others(c *plan.Coat, m plan.CoatMix) []string {
	if len(m.On) == 1 && m.On[0] == m.Pile {
		return nil
	}
	for _, r := range n.regions {
		if r.Tag == c.Region && len(r.Colours) == len(m.On) {
			return nil
		}
	}
	return m.On
}

// mediumText words a medium of a coat: "with linseed 1:10", "" for none.
func mediumText(medium string) string {
	if medium == "" || medium == "none" {
		return ""
	}
	return "with " + medium
}

// mediumWords is mediumText, or words for none.
func mediumWords(medium string) string {
	return either(mediumText(medium) == "", "no medium", mediumText(medium))
}

// timeText words an estimate in days, each end in the unit that suits it: "6 hours to 2
// days". It says no more than an estimate can: hours past 6 go by sixes.
func timeText(s plan.Span) string {
	from, unit := timeIn(s.From)
	to, last := timeIn(s.To)
	switch {
	case unit != last:
		return count(from, unit) + " to " + count(to, last)
	case from == to:
		return count(to, last)
	}
	return fmt.Sprintf("%d to %s", from, count(to, last))
}

// timeIn returns a length of time, given in days, in hours, days, weeks or months.
func timeIn(days float64) (n int, unit string) {
	round := func(per float64) int { return int(math.Round(days * per)) }
	switch {
	case days < 0.25:
		return max(1, round(24)), "hour"
	case days < 1:
		return 6 * round(4), "hour"
	case days < 28:
		return round(1), "day"
	case days < 120:
		return round(1.0 / 7), "week"
	}
	return round(12 / 365.25), "month"
}
