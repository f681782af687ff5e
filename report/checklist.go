// The days as a list to tick off, on paper.

package report

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"tonewright/report/plan"
)

// box stands before what is to be ticked; boxIndent is where its further lines begin.
const box, boxIndent = "  [ ] ", len("  [ ] ")

// Checklist writes the plan's days as plain text with boxes to tick, at most 80 columns.
func Checklist(w io.Writer, p *plan.Plan) error {
	c := checklist{name: coatNamerOf(p), care: p.Cautions}
	c.say(2, "%s", p.Name)
	c.say(2, "%s on %s ground. %s.", p.Panel.Size, article(p.Panel.Ground), either(len(p.Days.Sessions) > 0, spanText(&p.Days), "There is nothing to paint"))
	c.gap()
	for _, r := range p.Regions {
		c.say(6, "  %s, %s", r.Tag, r.Name)
	}
	c.gap()
	c.say(0, "%s", p.Layers.Text)
	c.say(0, "%s", p.Days.Text)
	for _, s := range p.Days.Sessions {
		c.session(s)
	}
	c.after(p.Days.After)
	return c.to(w)
}

// checklist is the list while it is written.
type checklist struct {
	text
	name coatNamer
	care carer
	told []string // of the cautions, in full in an earlier session
}

// tick adds a box and what to tick.
func (c *checklist) tick(format string, args ...any) { c.say(boxIndent, box+format, args...) }

// more adds a line below what is ticked; nothing for "".
func (c *checklist) more(line string) {
	if line != "" {
		c.say(boxIndent+2, "%*s%s", boxIndent, "", line)
	}
}

// heading adds a line of its own, underlined.
func (c *checklist) heading(format string, args ...any) {
	c.gap()
	line := fmt.Sprintf(format, args...)
	c.line("%s\n%s", line, strings.Repeat("-", len(line)))
}

func (c *checklist) session(s plan.Session) {
	c.heading("Session %d, %s", s.Number, when(s.Date, s.Day))
	if s.Reason != "" {
		c.say(2, "  %s.", capital(strings.TrimSuffix(s.Reason, ".")))
	}
	if len(s.Dry) > 0 {
		c.tick("Touch dry, by the thumb: %s", c.name.placesText(s.Dry))
	}
	usual := usualPile(s.Piles)
	if usual != "" {
		c.say(2, "  Piles are %s where nothing else is said.", usual)
	}
	for _, pile := range s.Piles {
		c.tick("Pile %s: %s", pile.ID, partsText(pile.Parts))
		if size := pileText(pile); size != usual {
			c.more(size)
		}
		c.more(pile.Tubes)
	}
	for _, id := range s.Coats {
		c.tick("Paint %s, %s", id, c.name.coat(id)+c.name.with(id))
	}
	c.heed(c.care.keys(s.Cautions))
}

// heed tells cautions in full the first time, and later that they stand.
func (c *checklist) heed(care []string) {
	var words []string
	before := false
	for _, text := range care {
		if slices.Contains(c.told, text) {
			before = true
			continue
		}
		words, c.told = append(words, text), append(c.told, text)
	}
	if before {
		words = append(words, "else as before")
	}
	if before && len(words) == 1 {
		words[0] = "as before"
	}
	if len(words) > 0 {
		c.say(boxIndent, "  Care: %s.", strings.Join(words, "; "))
	}
}

// usualPile is the size that most piles of a session have, the first of equals; "" where
// none is that of three.
func usualPile(piles []plan.Pile) (usual string) {
	most := 2
	for _, p := range piles {
		size, n := pileText(p), 0
		for _, other := range piles {
			if pileText(other) == size {
				n++
			}
		}
		if n > most {
			usual, most = size, n
		}
	}
	return usual
}

func (c *checklist) after(events []plan.Event) {
	if len(events) == 0 {
		return
	}
	c.heading("Afterwards")
	for _, e := range events {
		c.tick("%s, %s. %s", capital(e.Name), whenSpan(e), e.Text)
	}
}
