// Where a string dulls, and what it goes through.

package match

import (
	"cmp"
	"fmt"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// When a step dulls, and when that makes mud. Ours: one chip of the Munsell book, whose
// chromas go by twos, is a dulling worth a word; the step is muddy where it has also
// lost three fifths of the straight path's chroma. By chips alone, viridian to cobalt
// blue (4.1 under) would be as muddy as cadmium red to viridian (7.5), since near black
// there is little chroma to have; by the share lost, neighbours on the hue circle stay
// under 0.58 and complements go over 0.66, see TestWhatDulls.
//
// Under nearBlack a step's own chroma tells little, and its tints are judged in its
// place, at tintJudged or its own value if that is lighter: alizarin crimson to
// ultramarine blue falls from 11 to 2 thick, at value 0.5, and its tints are a clear
// violet (0.51 lost), while burnt sienna to ultramarine is gray in white too (0.88).
const (
	dull       = 2
	muddy      = 0.6
	nearBlack  = 2
	tintJudged = 6
)

// noteDulling fills in how far each step lies under the straight path, and what is mud.
func (s *String) noteDulling(opt StringOptions) {
	thick, tints := s.thickFalls(), s.tintFalls(opt)
	for i := range s.Steps {
		step := &s.Steps[i]
		step.Dulls, step.Muddy = thick[i].by, thick[i].muddy()
		if step.nearlyBlack() {
			step.Muddy = tints[i].muddy()
		}
		step.tintMuddy = opt.White != nil && tints[i].muddy()
	}
}

// thickFalls returns how far each step lies under the straight path as it is.
func (s *String) thickFalls() []shortfall {
	labs := make([]colour.Lab, len(s.Steps))
	for i, step := range s.Steps {
		labs[i] = step.Lab
	}
	return underStraight(labs)
}

// tintFalls returns how far each step's tint does, see tintJudged. Where white is an
// end of the string, the string itself is all the tints there are.
func (s *String) tintFalls(opt StringOptions) []shortfall {
	if s.From.White() || s.To.White() {
		return s.thickFalls()
	}
	return underStraight(s.tintsJudged(opt))
}

func (s *StringStep) nearlyBlack() bool { return s.Munsell.Value < nearBlack }

// shortfall is how far a chroma lies under the straight path, and the path's there.
type shortfall struct{ by, straight float64 }

func (f shortfall) muddy() bool { return f.by >= dull && f.by >= muddy*f.straight }

// underStraight returns how far each of a row of colours lies under the straight path:
// chroma that goes evenly from end to end, by the CIEDE2000 gone so far.
func underStraight(labs []colour.Lab) (falls []shortfall) {
	gone := make([]float64, len(labs))
	for i := range labs[1:] {
		gone[i+1] = gone[i] + colour.DeltaE00(labs[i], labs[i+1])
	}
	first, last := labs[0].Munsell().Chroma, labs[len(labs)-1].Munsell().Chroma
	for i, lab := range labs {
		straight := first + (last-first)*gone[i]/gone[len(gone)-1]
		falls = append(falls, shortfall{straight - lab.Munsell().Chroma, straight})
	}
	return falls
}

// tintsJudged returns each step with as much white as brings it to tintJudged: the
// white to tint with, or titanium white.
func (s *String) tintsJudged(opt StringOptions) (labs []colour.Lab) {
	white := paint.TintingWhite(nil)
	if opt.White != nil {
		white = *opt.White
	}
	for _, step := range s.Steps {
		pile := s.pile(&step)
		none, all := 0.0, 1.0
		for range 24 { // to under a ten-millionth
			share := (none + all) / 2
			if colour.ValueOf(pointAt(&pile, &white, share, opt.Finish).lab.L) < tintJudged {
				none = share
			} else {
				all = share
			}
		}
		labs = append(labs, pointAt(&pile, &white, none, opt.Finish).lab)
	}
	return labs
}

// dullest returns the step that falls the most under the straight path, by index; -1
// where none falls by as much as a chip of the Munsell book.
func (s *String) dullest() int {
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
	return s.dulling() + s.inWhite() + " " + s.passage() + s.leaps()
}

func (s *String) dulling() string {
	dullest := s.dullest()
	mud := s.stepsThat(func(step StringStep) bool { return step.Muddy })
	switch {
	case dullest < 0 && mud == "":
		return s.evenly()
	case dullest < 0:
		return fmt.Sprintf("Muddy in tints at %s.", mud)
	}
	most := fmt.Sprintf("by up to %.1f chroma under the straight path, at step %d", s.Steps[dullest].Dulls, dullest+1)
	where := s.stepsThat(func(step StringStep) bool { return step.Dulls >= dull })
	switch {
	case mud != "":
		return fmt.Sprintf("Muddy at %s: %s.", mud, most)
	case s.Steps[dullest].nearlyBlack():
		return fmt.Sprintf("Dark and dull thick at %s, %s; clear in tints, so no mud.", where, most)
	}
	return fmt.Sprintf("Dulls at %s, but not to mud: %s.", where, most)
}

// evenly says how a string goes that nowhere falls under the straight path.
func (s *String) evenly() string {
	switch {
	case s.From.Black() != s.To.Black() && !s.From.White() && !s.To.White():
		return "Dulls evenly towards black, no mud between."
	case s.From.White() != s.To.White() && !s.From.Black() && !s.To.Black():
		return "Pales evenly towards white, no mud between."
	}
	return fmt.Sprintf("Clean: no step falls as much as %d chroma under the straight path.", dull)
}

// inWhite says where the tints are muddy and the steps are not.
func (s *String) inWhite() string {
	where := s.stepsThat(func(step StringStep) bool { return step.tintMuddy && !step.Muddy })
	if where == "" {
		return ""
	}
	return fmt.Sprintf(" In tints muddy at %s too.", where)
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
	return colour.HueName(m.Hue)
}
