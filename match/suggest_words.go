// Why a palette is proposed, and why none is.

package match

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// suggestion returns a picked palette with its figures and words.
func (t *table) suggestion(c *candidate) Suggestion {
	lo, hi := c.ladder.Reach()
	s := Suggestion{
		Paints: t.paintsOf(c.set), White: t.white,
		ValueMin: colour.ValueOf(lo), ValueMax: colour.ValueOf(hi),
		Covered: c.exact.covered, Chroma: c.exact.chroma, Dulls: t.dullsOf(c.set),
	}
	for _, p := range s.Paints {
		s.TieIns = append(s.TieIns, t.ask.InUse[p.ID]...)
	}
	slices.Sort(s.TieIns)
	s.TieIns = slices.Compact(s.TieIns)
	s.Why = s.reach()
	if t.ask.Quiet && tenth(s.Chroma) > quietMost {
		s.Why += fmt.Sprintf("strong for a quiet region, which keeps to %d; ", quietMost)
	}
	switch {
	case t.ask.Hued:
		s.Why += t.hue(c.exact.turn / c.exact.coloured)
	case s.Covered > 0:
		s.Why += c.exact.ownHue()
	}
	s.Why += s.mixing() + s.ties() + s.drying()
	return s
}

// hue says which hue a palette has, in the middle, where it turns so far from the wish.
func (t *table) hue(turn float64) string {
	name := colour.HueName(t.ask.wanted() + turn)
	if math.Abs(turn) < hueWord {
		return fmt.Sprintf("hue %s as wished; ", name)
	}
	return fmt.Sprintf("hue %s, %.0f hue steps from the wish; ", name, math.Abs(turn))
}

// ownHue says which hue a palette has over the region, in the middle, where none was
// wished for: a green palette can be proposed for an orange thing, and its paints' names
// tell a painter less than the word. "" where it is too near gray to have one.
func (s *tally) ownHue() string {
	m := s.middle.Munsell()
	if m.Chroma < neutral {
		return ""
	}
	return fmt.Sprintf("hue %s; ", colour.HueName(m.Hue))
}

// reach says what the palette is and how much of the region it reaches.
func (s *Suggestion) reach() string {
	names := namesOf(s.Paints)
	if s.White != nil {
		names = append(names, s.White.Name)
	}
	share := fmt.Sprintf("%.0f%% of it", 100*s.Covered)
	switch {
	case s.Covered > 0.995:
		share = "all of it"
	case s.Covered < 0.005:
		share = "none of it"
	}
	text := fmt.Sprintf("%s: values %.1f to %.1f cover %s; ", Listed(names), s.ValueMin, s.ValueMax, share)
	if s.Covered > 0 {
		text += fmt.Sprintf("chroma up to %.0f; ", s.Chroma)
	}
	return text
}

// mixing says what becomes of the paints in one another.
func (s *Suggestion) mixing() string {
	switch {
	case len(s.Paints) == 1:
		return "one paint, nothing to muddy"
	case s.Dulls < dull:
		return "stays clean however mixed"
	}
	return fmt.Sprintf("mixed with one another they lose up to %.0f chroma", s.Dulls)
}

// ties says which regions have its paints already.
func (s *Suggestion) ties() string {
	if len(s.TieIns) == 0 {
		return ". "
	}
	return fmt.Sprintf("; already used in %s. ", Listed(s.TieIns))
}

// drying says how fast the paints dry, what that forbids, and which of them fade.
func (s *Suggestion) drying() string {
	text := dries(s.Paints)
	if fast, slow, clash := dryingClash(s.Paints); clash {
		text += fmt.Sprintf(" Do not work %s and %s wet into wet: the one dries fast, the other very slow.", fast.Name, slow.Name)
	}
	for _, p := range s.Paints {
		if fades(&p) {
			text += fmt.Sprintf(" %s fades: lightfastness %s.", p.Name, p.Facts.Lightfastness)
		}
	}
	return text
}

// dries says how fast paints dry, each where they differ.
func dries(paints []paint.Paint) string {
	var each []string
	same := true
	for _, p := range paints {
		each = append(each, fmt.Sprintf("%s %s", p.Name, p.Facts.Drying))
		same = same && p.Facts.Drying == paints[0].Facts.Drying
	}
	if same {
		return fmt.Sprintf("Dries %s.", paints[0].Facts.Drying)
	}
	return fmt.Sprintf("Drying: %s.", strings.Join(each, ", "))
}

func namesOf(paints []paint.Paint) (names []string) {
	for _, p := range paints {
		names = append(names, p.Name)
	}
	return names
}

// Listed joins words as "a, b and c".
func Listed(words []string) string {
	last := len(words) - 1
	if last < 1 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:last], ", ") + " and " + words[last]
}

// WhyNone says in a sentence why Suggest finds no palette; "" where nothing is wished for, or the
// region has no colours.
func WhyNone(owned []paint.Paint, ask Asked) string {
	switch {
	case ask.Scheme == Complement && !ask.Hued:
		return "That region is near gray, and gray has no complement: wish for a hue instead."
	case ask.nothing():
		return ""
	case !slices.ContainsFunc(owned, func(p paint.Paint) bool { return !p.White() }):
		return "The box has no paint but white."
	case ask.Hued && ask.Scheme != "" && ask.Scheme != Complement:
		return fmt.Sprintf("No palette of the box is %s and stays %s at the region's values: wish for one of the two alone.", ask.Scheme, colour.HueName(ask.wanted()))
	case ask.Hued:
		return fmt.Sprintf("No palette of the box stays %s at the region's values; a tube of that hue would make one.", colour.HueName(ask.wanted()))
	case ask.Scheme == Analogous:
		return "No two paints of the box lie a quarter of the hue circle or less apart, stay clean however mixed and are as near to the region's own hue."
	}
	return fmt.Sprintf("Every palette of the box goes over chroma %d at the region's values.", quietMost)
}
