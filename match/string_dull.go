// Where a string dulls, and what it goes through.

package match

import (
	"cmp"
	"fmt"
	"strings"

	"tonewright/analyze/colour"
)

// When a step dulls, and when that makes mud. Ours: one chip of the Munsell book, whose
// chromas go by twos, is a dulling worth a word; the step is muddy where it has also
// lost three fifths of the straight path's chroma. By chips alone, viridian to cobalt
// blue (4.1 under) would be as muddy as cadmium red to viridian (7.5), since near black
// there is little chroma to have; by the share lost, neighbours on the hue circle stay
// under 0.58 and complements go over 0.66, see TestWhatDulls.
const (
	dull  = 2
	muddy = 0.6
)

// noteDulling fills in how far each step lies under the straight path: chroma that
// goes evenly from end to end, by the CIEDE2000 gone so far.
func (s *String) noteDulling() {
	first, last := s.Steps[0].Munsell.Chroma, s.Steps[len(s.Steps)-1].Munsell.Chroma
	whole, gone := 0.0, 0.0
	for _, step := range s.Steps {
		whole += step.ToNext
	}
	for i := range s.Steps {
		step := &s.Steps[i]
		straight := first + (last-first)*gone/whole
		step.Dulls = straight - step.Munsell.Chroma
		step.Muddy = step.Dulls >= dull && step.Dulls >= muddy*straight
		gone += step.ToNext
	}
}

// Dullest returns the step that falls the most under the straight path, by index; -1
// where none falls by as much as a chip of the Munsell book.
func (s *String) Dullest() int {
	at, most := -1, float64(dull)
	for i, step := range s.Steps {
		if step.Dulls >= most {
			at, most = i, step.Dulls
		}
	}
	return at
}

// Note says where the string dulls and whether to mud, what it goes through, and
// where it leaps.
func (s *String) Note() string {
	return s.dulling() + " " + s.passage() + s.leaps()
}

func (s *String) dulling() string {
	dullest := s.Dullest()
	if dullest < 0 {
		return fmt.Sprintf("Clean: no step falls as much as %d chroma under the straight path.", dull)
	}
	most := fmt.Sprintf("at most %.1f chroma under the straight path, at step %d", s.Steps[dullest].Dulls, dullest+1)
	if where := s.stepsThat(func(step StringStep) bool { return step.Muddy }); where != "" {
		return fmt.Sprintf("Muddy at %s: %s.", where, most)
	}
	where := s.stepsThat(func(step StringStep) bool { return step.Dulls >= dull })
	return fmt.Sprintf("Dulls at %s, but not to mud: %s.", where, most)
}

// stepsThat returns "step 3" or "steps 3 to 5", from the first step that is so to the
// last; "" where none is.
func (s *String) stepsThat(so func(StringStep) bool) string {
	first, last := 0, 0
	for i, step := range s.Steps {
		if so(step) {
			first, last = cmp.Or(first, i+1), i+1
		}
	}
	switch {
	case first == 0:
		return ""
	case first == last:
		return fmt.Sprintf("step %d", first)
	}
	return fmt.Sprintf("steps %d to %d", first, last)
}

func (s *String) passage() string {
	if len(s.Through) == 1 {
		return fmt.Sprintf("Hue: %s throughout.", s.Through[0])
	}
	return fmt.Sprintf("Hue: %s.", strings.Join(s.Through, " to "))
}

// leap is how many times the even gap a gap is that counts as a leap. Ours: of 447
// pairs of library paints 30 have one, each beside an end, where a speck is too much.
const leap = 1.5

// leaps says where less than a speck would be wanted, and how to have it.
func (s *String) leaps() (text string) {
	for i, step := range s.Steps {
		if step.ToNext > leap*s.Even {
			strong, in := s.To.Name, s.From.Name
			if i >= len(s.Steps)/2 {
				strong, in = in, strong
			}
			text += fmt.Sprintf(" From step %d to %d is a leap of %.0f where %.0f would be even: for a step between, let a speck of %s down in %s first, and take from that.",
				i+1, i+2, step.ToNext, s.Even, strong, in)
		}
	}
	return text
}

// through returns what a way goes through, in order: hue families by name, and gray,
// black and white where the colour's name is one of them. Between the ends a stretch
// shorter than matches CIEDE2000 is left out, since it is hardly seen.
func through(points []waypoint) (words []string) {
	type stretch struct {
		word   string
		length float64
	}
	var all []stretch
	for i, p := range points {
		word := familyOf(p.lab.Munsell())
		if len(all) == 0 || all[len(all)-1].word != word {
			all = append(all, stretch{word, 0})
		}
		if i > 0 {
			all[len(all)-1].length += colour.DeltaE00(points[i-1].lab, p.lab)
		}
	}
	for i, s := range all {
		seen := i == 0 || i == len(all)-1 || s.length >= matches
		if seen && (len(words) == 0 || words[len(words)-1] != s.word) {
			words = append(words, s.word)
		}
	}
	return words
}

// familyOf returns the hue family of a colour in a word, or gray, black or white where
// its ISCC-NBS name is one of these: "bluish gray" is a gray.
// Source: [KellyJudd1976] for which colours are.
func familyOf(m colour.Munsell) string {
	name := m.Name()
	last := name[strings.LastIndexByte(name, ' ')+1:]
	switch last {
	case "gray", "black", "white":
		return last
	}
	return hueName(m)
}
