package report

import (
	"fmt"
	"strings"

	"tonewright/report/answer"
)

// gamut says what a box does not reach and what would widen it.
func (t *text) gamut(g *answer.Gamut) {
	t.gap()
	t.say(2, "Reach: %.0f %% of the colours that all %d paints do, by volume of Munsell's solid; values %.1f to %.1f, all paints %.1f to %.1f.",
		100*g.Share, g.AllPaints, g.Darkest, g.Lightest, g.AllDarkest, g.AllLightest)
	t.gap()
	t.shortfalls(g)
	t.gap()
	t.widening(g)
	t.gap()
	t.reach(g)
}

// told is how many gaps, and how many places of a widening, are put into words.
const told, toldOfOne = 8, 3

// shortfalls names the gaps.
func (t *text) shortfalls(g *answer.Gamut) {
	if len(g.Gaps) == 0 {
		t.say(2, "Gaps: none; nowhere does the box fall short of all paints by %.1f chroma.", g.ShortBy)
		return
	}
	t.say(2, "Gaps: where the box falls short by %.1f chroma, two chips, or more", g.ShortBy)
	for _, s := range g.Gaps[:min(len(g.Gaps), told)] {
		t.say(4, "  %s, %s: %s.", hueText(s), valuesText(s), shortText(s))
	}
	if more := len(g.Gaps) - told; more > 0 {
		t.say(4, "  And %s more, in the table.", count(more, "gap"))
	}
}

func hueText(s answer.Stretch) string { return fmt.Sprintf("%s %s", s.Hue, s.Word) }

func valuesText(s answer.Stretch) string {
	if s.From == s.To {
		return fmt.Sprintf("value %d", s.From)
	}
	return fmt.Sprintf("values %d to %d", s.From, s.To)
}

// shortText says where a stretch is short most.
func shortText(s answer.Stretch) string {
	if s.Less == 0 {
		return fmt.Sprintf("no mix at value %d, all paints %.1f", s.Value, s.More)
	}
	return fmt.Sprintf("chroma %.1f at value %d, all paints %.1f", s.Less, s.Value, s.More)
}

// widening names the paints that would add most.
func (t *text) widening(g *answer.Gamut) {
	if len(g.Widening) == 0 {
		t.say(2, "No one paint would widen it by a hundredth.")
		return
	}
	t.line("What one more paint would do")
	for _, w := range g.Widening {
		var places []string
		for _, s := range w.Where[:min(len(w.Where), toldOfOne)] {
			places = append(places, fmt.Sprintf("%s at value %d from chroma %.1f to %.1f", hueText(s), s.Value, s.Less, s.More))
		}
		most := ""
		if len(places) > 0 {
			most = "; most in " + strings.Join(places, ", ")
		}
		t.say(4, "  %s (%s, lightfastness %s): %.0f %% in place of %.0f %%%s.", w.Name, strings.Join(w.CI, " "), w.Lightfastness, 100*w.Share, 100*g.Share, most)
	}
}

// reach draws the table of hues and values; a gap shows both figures.
func (t *text) reach(g *answer.Gamut) {
	key := ""
	if len(g.Gaps) > 0 {
		key = "; 3<14 is a gap: 3 of the 14 that all paints reach"
	}
	t.say(2, "Most chroma by hue and value, to a whole step%s", key)
	rows := [][]string{{"Hue"}}
	for _, v := range g.Values {
		rows[0] = append(rows[0], fmt.Sprintf(" %d", v))
	}
	for _, h := range g.Hues {
		row := []string{h.Hue + " " + h.Word}
		for i := range g.Values {
			cell := fmt.Sprintf("%.0f", h.Box[i])
			if h.Short[i] {
				cell = fmt.Sprintf("%.0f<%.0f", h.Box[i], h.All[i])
			}
			row = append(row, cell)
		}
		rows = append(rows, row)
	}
	t.table(rows)
}
