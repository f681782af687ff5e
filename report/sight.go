// What looks alike to the painter's sight and not to others.

package report

import (
	"fmt"

	"tonewright/report/plan"
)

// sightSection is the section; Sight is "" for full sight, which has none.
type sightSection struct {
	Sight, None string
	Lists       []alikeList
}

// alikeList is a table of look-alikes. Those past mostAlike are folded away.
type alikeList struct {
	ID, Title, Text, Head string // Head is of the column of words
	Rows, More            []alikeRow
	MoreLabel             string
}

// alikeRow is a pair; Boxed tags stand in boxes, and Names beside them.
type alikeRow struct {
	A, B, AName, BName string
	Boxed              bool
	Full, Seen         string
	Head, Tells        string
}

// mostAlike is how many pairs a table shows at once.
const mostAlike = 8

func sightOf(p *plan.Plan) sightSection {
	l := &p.LookAlikes
	s := sightSection{Lists: []alikeList{}}
	if p.Sight == "" || p.Sight == fullSight {
		return s
	}
	s.Sight = p.Sight
	colours, regions := colourNames(p), namesOf(p)
	const apart, todo = "How to tell them apart", "What to do"
	add := func(id, title, text, head string, pairs []plan.LookAlike, names map[string]string, boxed bool) {
		if len(pairs) > 0 {
			s.Lists = append(s.Lists, alikeListOf(alikeList{ID: id, Title: title, Text: text, Head: head}, pairs, names, boxed))
		}
	}
	add("alike-piles", "Piles", "Lay them out apart, and put the tag beside each.", apart, l.Piles, colours, true)
	add("alike-tubes", "Tubes", "Read the label, not the paint at the cap.", apart, l.Tubes, namerOf(p), false)
	add("alike-regions", "Neighbours on the panel", "Draw the line between them before you paint: you will not find it again by colour.", apart, l.Regions, regions, true)
	add("alike-reverse", "And the reverse: clear to you, hardly there for others", "A difference you see here does not carry: where the painting needs it, make it one of value.", todo, l.Reverse, colours, true)
	if len(s.Lists) == 0 {
		s.None = "No two piles, tubes or neighbours that others tell apart look alike to you here."
	}
	return s
}

// fullSight is what the plan says of a sight that misses nothing.
const fullSight = "full sight"

func alikeListOf(list alikeList, pairs []plan.LookAlike, names map[string]string, boxed bool) alikeList {
	rows := []alikeRow{}
	for _, l := range pairs {
		rows = append(rows, alikeRow{l.A, l.B, names[l.A], names[l.B], boxed, fmt.Sprintf("%.1f", l.Full), fmt.Sprintf("%.1f", l.Seen), list.Head, l.Tells})
	}
	list.Rows, list.More = rows[:min(mostAlike, len(rows))], rows[min(mostAlike, len(rows)):]
	if n := len(list.More); n > 0 {
		list.MoreLabel = count(n, "more pair")
	}
	return list
}

// colourNames returns by tag what each colour is in words.
func colourNames(p *plan.Plan) map[string]string {
	names := map[string]string{}
	for _, r := range p.Regions {
		for _, c := range r.Colours {
			names[c.ID] = c.AimName
		}
	}
	return names
}
