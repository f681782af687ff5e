// A pile on the palette, as a painter would name it.

package match

import (
	"cmp"
	"fmt"
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

// ParsePile reads what a painter types: "yellow-ochre 3, titanium-white 1, 2 touches of
// phthalo-blue": paints by the names that paint.Find knows, each with its parts, or a
// number of touches or specks before or after the name. One paint alone needs no parts.
// A touch is 1/32 of the pile and a speck 1/128.
// The error is an UnknownPaint where only a name is at fault.
func ParsePile(owned []paint.Paint, text string) (Pile, error) {
	if n := 1 + strings.Count(text, ","); n > mostInPile {
		return Pile{}, fmt.Errorf("pile %q: has %d paints; at most %d can be told apart in one pile", text, n, mostInPile)
	}
	return readPile(owned, text, amountRange{leastOfOne, mostOfOne})
}

// mostRead is the most paints a written pile is read with: more than any box has.
const mostRead = 200

// ReadPile reads what String wrote, and all that ParsePile does, of up to 200 paints and
// 1e9 parts of each: round by round a pile grows past what anyone types.
// The error is an UnknownPaint where only a name is at fault.
func ReadPile(owned []paint.Paint, text string) (Pile, error) {
	if n := 1 + strings.Count(text, ","); n > mostRead {
		return Pile{}, fmt.Errorf("a pile of %d paints is longer than is read; at most %d", n, mostRead)
	}
	return readPile(owned, text, amountRange{1e-9, 1e9})
}

// UnknownPaint is an error in a pile that is written as it should be, about a name that
// no paint has.
type UnknownPaint struct{ error }

func readPile(owned []paint.Paint, text string, bounds amountRange) (Pile, error) {
	var p Pile
	var small []float64 // share of the whole pile; 0 where measured in parts
	var unknown error
	for _, field := range strings.Split(text, ",") {
		a, err := parseAmount(field, bounds)
		if err != nil {
			return Pile{}, fmt.Errorf("pile %q: %w", text, err)
		}
		found := paint.Paint{ID: a.name}
		if unknown == nil { // else only whether the others are written as they should be
			if found, err = paint.Find(owned, a.name); err != nil && amountWithin(a.name) {
				return Pile{}, fmt.Errorf("pile %q: %q is several paints; put commas between them, as in \"yellow-ochre 3, titanium-white 1\"", text, strings.TrimSpace(field))
			}
			if err != nil {
				unknown, found.ID = UnknownPaint{fmt.Errorf("pile %q: %w", text, err)}, a.name
			}
		}
		if indexOf(p.Paints, found.ID) >= 0 {
			return Pile{}, fmt.Errorf("pile %q: %s is in it twice; add its parts up", text, cmp.Or(found.Name, found.ID))
		}
		p.Paints, p.Parts, small = append(p.Paints, found), append(p.Parts, a.parts), append(small, a.share)
	}
	if err := p.turnIntoParts(small); err != nil {
		return Pile{}, fmt.Errorf("pile %q: %w", text, err)
	}
	if unknown != nil {
		return Pile{}, unknown
	}
	return p, nil
}

// turnIntoParts sets the parts of the paints that are measured as a share of the pile.
func (p Pile) turnIntoParts(small []float64) error {
	wholes, shares := sum(p.Parts), sum(small)
	if wholes == 0 {
		return fmt.Errorf("has only touches; give the parts of at least one paint")
	}
	if shares > mostTouched {
		return fmt.Errorf("its touches and specks are more than half of the pile; give parts instead")
	}
	for i, share := range small {
		if share > 0 {
			p.Parts[i] = wholes * share / (1 - shares)
		}
	}
	return nil
}

// Optics returns K and S of the pile.
func (p Pile) Optics() (k, s colour.Spectrum) { return paint.Mix(p.Paints, p.Parts) }

func sum(v []float64) (s float64) {
	for _, x := range v {
		s += x
	}
	return s
}

// String writes the pile as ReadPile reads it, to five digits of each part.
func (p Pile) String() string {
	words := make([]string, len(p.Paints))
	for i, of := range p.Paints {
		words[i] = of.ID + " " + strconv.FormatFloat(p.Parts[i], 'g', 5, 64)
	}
	return strings.Join(words, ", ")
}
