// What the terminal says of coats, days, paint and cautions.

package report

import (
	"strings"

	"tonewright/report/plan"
)

// mostBroken is how many faults of the coats the terminal is told of.
const mostBroken = 3

// working says what the painting comes to: rules that its coats break, and what mends
// them; days; paint; cautions.
func (t *text) working(p *plan.Plan) {
	broken := brokenRules(p.Layers.Broken, coatNamerOf(p))
	for i, b := range broken {
		if i == mostBroken {
			t.say(6, "  and %s in the coats, in the report", count(len(broken)-i, "more fault"))
			break
		}
		t.broken(b)
	}
	if text := spanText(&p.Days); text != "" {
		t.say(6, "Painted: %s%s", text, varnishText(p.Days.After))
	}
	if n := len(p.Amounts.Tubes); n > 0 {
		t.say(6, "Paint: %s ml in all, from %s%s", small(p.Amounts.ML), count(n, "tube"), toBuy(&p.Amounts))
	}
	if marks := carer(p.Cautions).marks(func(c plan.Caution) bool { return c.Kind != "studio" }); len(marks) > 0 {
		t.say(6, "Care: %s; the report says how", strings.Join(marks, ", "))
	}
}

// broken says what one change mends and, unbroken, the line that does: it is copied.
func (t *text) broken(b brokenRule) {
	t.say(6, "Not sound: %s", b.Where)
	for _, r := range b.Rules {
		t.say(6, "      %s: %s", r.Rule, r.Reason)
	}
	if b.Line == "" {
		t.say(6, "      To mend it: %s", b.Mend)
		return
	}
	t.say(6, "      To mend it: %s In the painting file, %s:", b.Mend, b.Under)
	t.line("        %s", strings.ReplaceAll(b.Line, "\n", "\n        "))
}

// varnishText is "; varnish 7 Jul 2027 to 5 Jan 2028", "" for none.
func varnishText(after []plan.Event) string {
	for _, e := range after {
		if e.Name == "varnish" {
			return "; varnish " + whenSpan(e)
		}
	}
	return ""
}

// toBuy is "; to buy: 2.8 ml of Viridian", "" for nothing.
func toBuy(a *plan.Amounts) string {
	if buy := buyText(a); buy != "" {
		return "; to buy: " + buy
	}
	return ""
}
