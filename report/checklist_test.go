package report

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/report/plan"
)

func checklistOf(t *testing.T, p *plan.Plan) string {
	var b bytes.Buffer
	require.NoError(t, Checklist(&b, p))
	return b.String()
}

// The list fits the page and has a box for everything to be done.
func TestChecklist(t *testing.T) {
	for _, p := range []*plan.Plan{workedPlan(t), hardPlan(t)} {
		list := checklistOf(t, p)
		for _, line := range strings.Split(list, "\n") {
			assert.LessOrEqual(t, utf8.RuneCountInString(line), columns, line)
			assert.Equal(t, strings.TrimRight(line, " "), line, "no blanks at its end")
		}
		boxes := len(p.Days.After)
		for _, s := range p.Days.Sessions {
			boxes += len(s.Piles) + len(s.Coats) + min(1, len(s.Dry))
		}
		assert.Equal(t, boxes, strings.Count(list, "[ ]"))
	}
	list := checklistOf(t, workedPlan(t))
	for _, text := range []string{
		"Session 1, Mon 30 Nov 2026\n--------------------------\n", "  Piles are a hazelnut (1.2 ml) where nothing else is said.\n", "  [ ] Pile A1: 3 Titanium White + 3 Burnt Umber + 1 Viridian\n      Titanium White 3/8 in", "  Care: as before.\n", " 12 sessions from Mon 30 Nov 2026 to Fri 25 Dec\n  2026, 3 a week.\n",
		"  A, across the top, dark brown\n", "[ ] Touch dry, by the thumb: B and C\n", "  Care: cadmium: no dry sanding", "Afterwards\n----------\n",
		"  [ ] Varnish, 17 Jun 2027 to 17 Dec 2027. Once it is dry all through, six to\n      twelve months;", "with solvent 1:4",
	} {
		assert.Contains(t, list, text)
	}
}

// Days that are only counted are numbered.
func TestChecklistWithoutDates(t *testing.T) {
	p := workedPlan(t)
	p.Days.Start = ""
	for i := range p.Days.Sessions {
		p.Days.Sessions[i].Date = ""
	}
	for i := range p.Days.After {
		p.Days.After[i].From, p.Days.After[i].To = "", ""
	}
	list := checklistOf(t, p)
	for _, text := range []string{"Session 2, day 3\n", "12 sessions within 26 days, 3 a week.", "[ ] Varnish, days 200 to 383.", "[ ] Touch dry, day 33."} {
		assert.Contains(t, list, text)
	}
	assert.NotContains(t, list, "2026")
}

// A size that most piles have is said once, and another where it differs; a caution in full
// once, and after that only what is new.
func TestChecklistSaysItOnce(t *testing.T) {
	p := workedPlan(t)
	p.Days.Sessions = p.Days.Sessions[:2]
	pile := p.Days.Sessions[0].Piles[0]
	other := pile
	other.ID, other.Size = "other", "a cherry"
	p.Days.Sessions[0].Piles = []plan.Pile{pile, other, pile, pile}
	p.Days.Sessions[1].Piles = []plan.Pile{pile, other, pile}
	list := checklistOf(t, p)
	first, second, _ := strings.Cut(list, "Session 2")
	assert.Equal(t, 1, strings.Count(first, "a hazelnut"))
	assert.Equal(t, 1, strings.Count(first, "a cherry"))
	assert.Equal(t, 2, strings.Count(second, "a hazelnut"), "two of three are said")
	for _, c := range p.Cautions {
		assert.LessOrEqual(t, strings.Count(list, c.Short), 1, c.Short)
	}
}
