// Rules that only other stuff mends: medium, film, paint.

package layer

import (
	"fmt"
	"slices"
)

const (
	thickest   = 400 // µm
	mostFat    = 25  // µm of medium in a coat
	mostThin   = 1.0
	zincAtMost = 0.1
)

// tooThick: a thick film skins over and wrinkles.
func tooThick(s pile, above int) (Fault, bool) {
	c := s.stack[above]
	if c.Film <= thickest {
		return Fault{}, false
	}
	return Fault{
		Rule: TooThick, Below: above, Above: above,
		Reason: fmt.Sprintf("%s is so thick that it skins over and wrinkles.", c.Name),
		Mend:   fmt.Sprintf("lay it in coats of at most %d µm", thickest),
		Source: "common practice, no source",
		Change: Change{Coat: above, Film: thickest},
	}, true
}

// tooMuchMedium: a film of little pigment.
func tooMuchMedium(s pile, above int) (Fault, bool) {
	c := s.stack[above]
	if c.Medium.none() || c.Medium.Parts <= mostParts(c.Coat) {
		return Fault{}, false
	}
	most := Medium{c.Medium.Kind, mostParts(c.Coat)}
	return Fault{
		Rule: TooMuchMedium, Below: above, Above: above,
		Reason: fmt.Sprintf("%s holds more medium than a sound film bears.", c.Name),
		Mend:   fmt.Sprintf("take at most %s in %s", most, c.Name),
		Source: "common practice, no source",
		Change: Change{Coat: above, Medium: &most},
	}, true
}

// mostParts returns the most medium to one of paint that a coat bears.
func mostParts(c Coat) float64 {
	if c.Medium.Kind == Solvent {
		return mostThin
	}
	if c.Film <= mostFat {
		return mostMedium
	}
	return mostFat / (c.Film - mostFat)
}

// fatOverLean: what lies above should not be leaner.
func fatOverLean(s pile, above int) (Fault, bool) {
	worst := -1
	for below := range s.film(above) {
		if s.oils[above].To < s.oils[below].From && (worst < 0 || s.oils[below].From > s.oils[worst].From) {
			worst = below
		}
	}
	if worst < 0 {
		return Fault{}, false
	}
	f := Fault{
		Rule: FatOverLean, Below: worst, Above: above,
		Reason: fmt.Sprintf("%s is leaner than %s beneath: it stiffens first and cracks over what still moves.", s.stack[above].Name, s.stack[worst].Name),
		Source: "common practice, no source",
	}
	fattest := 0
	for i, p := range s.stack[worst].Paints {
		if oilOf(p).From > oilOf(s.stack[worst].Paints[fattest]).From {
			fattest = i
		}
	}
	from := s.stack[worst].Paints[fattest]
	f.Mend = fmt.Sprintf("take a leaner paint in place of %s in %s", from.Name, s.stack[worst].Name)
	f.Change = Change{Coat: worst, Swap: Swap{From: from.ID}}
	return f, true
}

// zincBeneath: zinc white turns brittle.
func zincBeneath(s pile, above int) (Fault, bool) {
	if above == len(s.stack)-1 {
		return Fault{}, false
	}
	c := s.stack[above]
	for i, share := range sharesOf(c.Coat) {
		if p := c.Paints[i]; slices.Contains(p.CI, "PW4") && share > zincAtMost {
			return Fault{
				Rule: ZincBeneath, Below: above, Above: above + 1,
				Reason: "Zinc white turns brittle within years, and what lies over it cracks and comes off with it.",
				Mend:   fmt.Sprintf("take titanium white in place of %s in %s", p.Name, c.Name),
				Source: "[PaintFacts] PW4",
				Change: Change{Coat: above, Swap: Swap{p.ID, "titanium-white"}},
			}, true
		}
	}
	return Fault{}, false
}
