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
	MoreLabel, Rest       string // Rest tells of the pairs that the plan does not list
}

// alikeRow is a pair. ATag and BTag are "" for tubes, which have their names only.
type alikeRow struct {
	ATag, AName, BTag, BName string
	Full, Seen               string
	Head, Tells              string
	Bare                     bool // without the figures: they tell of colour, and the words of value
}

const reverseList = "alike-reverse"

// mostAlike is how many pairs a table shows at once.
const mostAlike = 8

// fullSight is what the plan says of a sight that misses nothing.
const fullSight = "full sight"

func sightOf(p *plan.Plan) sightSection {
	l := &p.LookAlikes
	s := sightSection{Lists: []alikeList{}}
	if p.Sight == "" || p.Sight == fullSight {
		return s
	}
	s.Sight = p.Sight
	const apart, todo = "How to tell them apart", "What to do"
	for _, list := range []struct {
		alikeList
		pairs []plan.LookAlike
		rest  int
	}{
		{alikeList{ID: "alike-piles", Title: "Piles", Text: "Lay them out apart, and put the tag beside each.", Head: apart}, l.Piles, l.More.Piles},
		{alikeList{ID: "alike-tubes", Title: "Tubes", Text: "Read the label, not the paint at the cap.", Head: apart}, l.Tubes, l.More.Tubes},
		{alikeList{ID: "alike-regions", Title: "Neighbours on the panel", Text: "Draw the line between them before you paint: you will not find it again by colour.", Head: apart}, l.Regions, l.More.Regions},
		{alikeList{ID: reverseList, Title: "And the reverse: light against dark that only you see", Text: "Others tell these apart by hue, not by value.", Head: todo}, l.Reverse, l.More.Reverse},
	} {
		if len(list.pairs) > 0 {
			list.fill(list.pairs, tagNames(p), namerOf(p))
			if list.rest > 0 {
				list.Rest = fmt.Sprintf("And %s that weigh less.", count(list.rest, "more pair"))
			}
			s.Lists = append(s.Lists, list.alikeList)
		}
	}
	if len(s.Lists) == 0 {
		s.None = "No two piles, tubes or neighbours that others tell apart look alike to you here."
	}
	return s
}

// fill words the pairs, of colours or regions by their tags, or of tubes by their ids.
func (l *alikeList) fill(pairs []plan.LookAlike, tags map[string]string, tubes namer) {
	who := func(id string) (tag, name string) {
		if name, ok := tags[id]; ok {
			return id, name
		}
		return "", tubes.of(id)
	}
	rows := []alikeRow{}
	for _, pair := range pairs {
		row := alikeRow{Full: fmt.Sprintf("%.1f", pair.Full), Seen: fmt.Sprintf("%.1f", pair.Seen), Head: l.Head, Tells: pair.Tells, Bare: l.ID == reverseList}
		row.ATag, row.AName = who(pair.A)
		row.BTag, row.BName = who(pair.B)
		rows = append(rows, row)
	}
	l.Rows, l.More = rows[:min(mostAlike, len(rows))], rows[min(mostAlike, len(rows)):]
	if n := len(l.More); n > 0 {
		l.MoreLabel = count(n, "more pair")
	}
}

// tagNames returns in words what each tag stands for: a region's name, a colour's.
func tagNames(p *plan.Plan) map[string]string {
	names := namesOf(p)
	for _, r := range p.Regions {
		for _, c := range r.Colours {
			names[c.ID] = c.AimName
		}
	}
	return names
}
