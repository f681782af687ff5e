// A pile on the palette, as a painter would name it.

package match

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Pile is an amount of mixed paint: Parts[i] by volume of Paints[i], all over 0.
type Pile struct {
	Paints []paint.Paint
	Parts  []float64
}

// mostInPile is the most paints a pile is read with: more than anyone mixes, and
// few enough that what each one did can still be told.
const mostInPile = 6

// ParsePile reads "yellow-ochre 3, titanium-white 1, phthalo-blue touch": paints by
// the names that paint.Find knows, each with its parts, a touch or a speck. One paint
// alone needs no parts. A touch is 1/32 of the pile and a speck 1/128.
func ParsePile(owned []paint.Paint, text string) (Pile, error) {
	var p Pile
	var small []float64 // share of the whole pile; 0 where measured in parts
	for _, field := range strings.Split(text, ",") {
		name, parts, share, err := parseAmount(field)
		if err != nil {
			return Pile{}, fmt.Errorf("pile %q: %w", text, err)
		}
		found, err := paint.Find(owned, name)
		if err != nil && amountWithin(name) {
			err = fmt.Errorf("%q is several paints; put commas between them, as in \"yellow-ochre 3, titanium-white 1\"", strings.TrimSpace(field))
		}
		if err != nil {
			return Pile{}, fmt.Errorf("pile %q: %w", text, err)
		}
		if slices.ContainsFunc(p.Paints, func(q paint.Paint) bool { return q.ID == found.ID }) {
			return Pile{}, fmt.Errorf("pile %q: %s is in it twice; add its parts up", text, found.Name)
		}
		p.Paints, p.Parts, small = append(p.Paints, found), append(p.Parts, parts), append(small, share)
	}
	if len(p.Paints) > mostInPile {
		return Pile{}, fmt.Errorf("pile %q: has %d paints; at most %d can be told apart in one pile", text, len(p.Paints), mostInPile)
	}
	wholes, shares := sum(p.Parts), sum(small)
	if wholes == 0 {
		return Pile{}, fmt.Errorf("pile %q: has only touches; give the parts of at least one paint", text)
	}
	for i, share := range small {
		if share > 0 {
			p.Parts[i] = wholes * share / (1 - shares)
		}
	}
	return p, nil
}

// mostOfOne bounds a part that is read, so that no slip of a key passes for one.
const mostOfOne = 1000

// parseAmount reads "yellow ochre 3", "3 yellow ochre", "phthalo-blue touch" or a
// name alone. A number that is part of a name, as in "PB29", is none.
func parseAmount(field string) (name string, parts, share float64, err error) {
	words := strings.Fields(field)
	if len(words) == 0 {
		return "", 0, 0, fmt.Errorf("a paint is missing between the commas; write it as \"yellow-ochre 3, titanium-white 1\"")
	}
	if len(words) == 1 {
		return words[0], 1, 0, nil
	}
	last := len(words) - 1
	switch strings.ToLower(words[last]) {
	case string(Touch):
		return strings.Join(words[:last], " "), 0, touchShare, nil
	case string(Speck):
		return strings.Join(words[:last], " "), 0, speckShare, nil
	}
	for _, at := range []int{last, 0} {
		n, bad := strconv.ParseFloat(words[at], 64)
		if bad != nil {
			continue
		}
		if !(n > 0) || n > mostOfOne || math.IsInf(n, 0) {
			return "", 0, 0, fmt.Errorf("%s parts is out of range: more than 0 and at most %d", words[at], mostOfOne)
		}
		return strings.Join(slices.Delete(slices.Clone(words), at, at+1), " "), n, 0, nil
	}
	return strings.Join(words, " "), 1, 0, nil
}

// amountWithin tells whether an unknown name has an amount among its words, as where
// the comma between two paints is left out.
func amountWithin(name string) bool {
	return slices.ContainsFunc(strings.Fields(name), func(word string) bool {
		_, bad := strconv.ParseFloat(word, 64)
		return bad == nil || strings.EqualFold(word, string(Touch)) || strings.EqualFold(word, string(Speck))
	})
}

// Optics returns K and S of the pile.
func (p Pile) Optics() (k, s colour.Spectrum) { return paint.Mix(p.Paints, p.Parts) }

func sum(v []float64) (s float64) {
	for _, x := range v {
		s += x
	}
	return s
}

// String writes the pile as ParsePile reads it, to five digits of each part.
func (p Pile) String() string {
	words := make([]string, len(p.Paints))
	for i, of := range p.Paints {
		words[i] = of.ID + " " + strconv.FormatFloat(p.Parts[i], 'g', 5, 64)
	}
	return strings.Join(words, ", ")
}
