// The coats of the painting, and which rules of the trade they break.

package report

import (
	"fmt"
	"slices"
	"strings"

	"tonewright/report/plan"
)

// layers is the section; Passes is empty where the plan has no coats.
type layers struct {
	Text, Air string
	Broken    []brokenRule
	Passes    []pass
}

// brokenRule is what one change mends, of one or more rules that coats break; Line is ""
// where no one line does.
type brokenRule struct {
	Where, Mend, Line, Under, Source string
	Rules                            []ruleReason
}

// lineUnder says where in the painting file the line stands that mends.
func lineUnder(b plan.Broken) string {
	if b.Coat == "" {
		return "above the regions"
	}
	return "under " + b.Coat + "'s [[layer]]"
}

// ruleReason is a rule and what comes of breaking it.
type ruleReason struct{ Rule, Reason string }

// pass is coats of one kind that follow one another; Why is what was said of several.
type pass struct {
	Name, Why string
	Coats     []coatRow
}

// coatRow is a coat in words.
type coatRow struct {
	ID, Tag, Name             string
	Piles                     []coatPile
	Medium, Film, Oil         string
	Wet, Touch, Slowest       string
	Painted, Earliest, GoOver string // "" where the plan has no day for it
	Into, Why                 string
	Care                      []string
}

// coatPile is a pile of a coat; On are the colours in whose places it is laid, none
// where that is the one it is named after.
type coatPile struct {
	Tag string
	On  []string
}

func layersOf(p *plan.Plan, care carer) layers {
	name := coatNamerOf(p)
	l := layers{Text: p.Layers.Text, Broken: brokenRules(p.Layers.Broken, name), Passes: []pass{}}
	l.Air = fmt.Sprintf("Reckoned for %.0f °C and %.0f %% humidity; an ordinary coat is %.0f µm, %s.",
		p.Layers.Air.Celsius, p.Layers.Air.Humidity, p.Layers.FilmUM, mediumWords(p.Layers.Medium))
	if p.Layers.Absorbent {
		l.Air += " The ground takes oil in, so that first coats may set sooner."
	}
	for i := range p.Layers.Coats {
		c := &p.Layers.Coats[i]
		if n := len(l.Passes); n == 0 || l.Passes[n-1].Name != capital(c.Pass) {
			l.Passes = append(l.Passes, pass{Name: capital(c.Pass)})
		}
		last := &l.Passes[len(l.Passes)-1]
		last.Coats = append(last.Coats, coatRowOf(c, name, care))
	}
	for i := range l.Passes {
		l.Passes[i].gather()
	}
	return l
}

// brokenRules puts rules together that the same coats break and the same change mends.
func brokenRules(broken []plan.Broken, name coatNamer) []brokenRule {
	list := []brokenRule{}
	for i, b := range broken {
		if i == 0 || !slices.Equal(b.Coats, broken[i-1].Coats) || b.Mend != broken[i-1].Mend || b.Line != broken[i-1].Line {
			list = append(list, brokenRule{Where: name.each(b.Coats), Mend: b.Mend, Line: b.Line, Under: lineUnder(b), Source: b.Source})
		}
		last := &list[len(list)-1]
		last.Rules = append(last.Rules, ruleReason{capital(b.Rule), b.Reason})
		if !strings.Contains(last.Source, b.Source) {
			last.Source += "; " + b.Source
		}
	}
	return list
}

// gather says once above the coats what was said of most of them.
func (p *pass) gather() {
	said := map[string]int{}
	for _, c := range p.Coats {
		if said[c.Why]++; 2*said[c.Why] > len(p.Coats) && len(p.Coats) > 1 {
			p.Why = c.Why
		}
	}
	for i := range p.Coats {
		if p.Coats[i].Why == p.Why {
			p.Coats[i].Why = ""
		}
	}
}

// coatsOf lists the coats of a region: "A.1 block-in, A.2 glaze"; "" for none.
func coatsOf(p *plan.Plan, tag string) string {
	var words []string
	for _, c := range p.Layers.Coats {
		if c.Region == tag {
			words = append(words, c.ID+" "+c.Pass)
		}
	}
	return strings.Join(words, ", ")
}

func coatRowOf(c *plan.Coat, name coatNamer, care carer) coatRow {
	row := coatRow{
		ID: c.ID, Tag: c.Region, Name: name.region(c), Piles: []coatPile{},
		Medium: either(c.Medium == "", "none", c.Medium), Film: fmt.Sprintf("%.0f µm", c.FilmUM), Oil: percents(c.Oil),
		Wet: timeText(c.WetFor), Touch: timeText(c.TouchDry), Slowest: slowest(c), GoOver: timeText(c.GoOver),
		Into: c.Into, Why: c.Why, Care: care.coat(c),
	}
	if c.Day > 0 {
		row.Painted, row.Earliest = capital(inYear(c.Date, c.Day)), capital(inYear(c.OverDate, c.OverDay))
	}
	for _, m := range c.Mixes {
		row.Piles = append(row.Piles, coatPile{m.Pile, name.others(c, m)})
	}
	return row
}

// slowest says which mix a coat waits for, and which paint in it.
func slowest(c *plan.Coat) string {
	for _, m := range c.Mixes {
		if m.Slowest != "" && m.TouchDry.To == c.TouchDry.To {
			return fmt.Sprintf("%s in %s", m.Slowest, m.Pile)
		}
	}
	return ""
}

// percents words an estimate of a share: "44 to 52 %".
func percents(s plan.Span) string {
	return strings.Replace(span(100*s.From, 100*s.To), "-", " to ", 1) + " %"
}
