package report

import (
	"fmt"
	"strings"

	"tonewright/report/plan"
)

// mostEdges is how many lost edges the terminal is told of, the longest.
const mostEdges = 3

// composing says what composing comes to: what is not as meant and the line that mends
// it, the longest lost edges, the palettes proposed, few tubes, look-alikes.
func (t *text) composing(p *plan.Plan) {
	if order := p.StandOut.Order; len(order) > 1 {
		t.say(6, "Stands out, first to last: %s", strings.Join(order, ", "))
	}
	for _, d := range p.StandOut.Disagreements {
		t.disagreement(d)
	}
	for i, e := range p.StandOut.LostEdges {
		if i == mostEdges {
			t.say(6, "  and %s, in the report", count(len(p.StandOut.LostEdges)-i, "shorter lost edge"))
			break
		}
		t.say(6, "Lost edge: %s and %s along %s, %s", e.A, e.B, e.Where, lengthOf(p, e))
	}
	t.proposals(p)
	if p.Tubes != nil {
		t.say(6, "Few tubes: %s", p.Tubes.Text)
	}
	if l := alikeCounts(&p.LookAlikes); l != "" {
		t.say(6, "Alike to you, not to others: %s; the report says how to tell them apart", l)
	}
}

// disagreement says one, and beneath it the line, or two, that mend it, unbroken: they
// are copied.
func (t *text) disagreement(d plan.Disagreement) {
	t.say(6, "Not as meant: %s", d.Text)
	if d.Mend != nil {
		t.say(6, "      To mend it, in the painting file under %q:", d.Mend.Name)
		t.line("        %s", strings.ReplaceAll(d.Mend.Line, "\n", "\n        "))
	}
}

// proposals names the palette of each region that is mixed from one proposed for it, and
// the regions for whose wish there is none.
func (t *text) proposals(p *plan.Plan) {
	name := namerOf(p)
	for _, r := range p.Regions {
		if r.Scheme != "" && len(r.Suggestions) == 0 && wholeBox(r.Palette) {
			t.say(6, "No palette for %s (%s): it is mixed from the whole box; the report says why", r.Tag, r.Scheme)
		}
		if r.Palette.From == plan.Proposed && len(r.Suggestions) > 0 {
			s := r.Suggestions[0]
			t.say(6, "Palette for %s (%s): %s", r.Tag, r.Scheme, withWhite(listed(s.Names), name.of(s.White)))
		}
	}
}

// alikeCounts says how many pairs look alike to the painter only; "" for none.
func alikeCounts(l *plan.LookAlikes) string {
	var parts []string
	for _, list := range []struct {
		pairs []plan.LookAlike
		of    string
	}{{l.Piles, "piles"}, {l.Tubes, "tubes"}, {l.Regions, "neighbours on the panel"}} {
		if n := len(list.pairs); n > 0 {
			parts = append(parts, fmt.Sprintf("%s of %s", count(n, "pair"), list.of))
		}
	}
	return strings.Join(parts, ", ")
}
