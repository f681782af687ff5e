// Amounts of paint to add to a pile that a palette knife can do.

package match

import (
	"fmt"
	"math"
	"strings"

	"tonewright/match/paint"
)

// Addition is an amount of one paint to add to a pile.
type Addition struct {
	Paint   paint.Paint // as the library or the box has it
	Count   float64     // of whole parts, touches or specks
	Measure Measure
	Parts   float64 // in the parts of the pile: a touch is 1/32 of the pile as it lies
}

// String says it as a painter would: "2 touches of Yellow Ochre".
func (a Addition) String() string { return a.Amount() + " of " + a.Paint.Name }

// Amount says how much: "a speck", "2 touches", "half a part", "1½ parts".
func (a Addition) Amount() string {
	if a.Measure != Knife {
		name := string(a.Measure)
		if a.Count == 1 {
			return "a " + name
		}
		return fmt.Sprintf("%.0f %s", a.Count, either(a.Measure == Touch, "touches", "specks"))
	}
	whole, part := math.Modf(a.Count)
	quarters := int(math.Round(4 * part))
	if whole == 0 {
		return [...]string{"", "a quarter part", "half a part", "three quarters of a part"}[quarters]
	}
	text := fmt.Sprintf("%.0f", whole) + [...]string{"", "¼", "½", "¾"}[quarters]
	return text + either(text == "1", " part", " parts")
}

// ListAdditions says several: "a touch of Yellow Ochre and half a part of Titanium White".
func ListAdditions(additions []Addition) string {
	words := make([]string, len(additions))
	for i, a := range additions {
		words[i] = a.String()
	}
	return strings.Join(words, " and ")
}

// tinyShare is the rounding that a sum of amounts may have, as a share of it.
const tinyShare = 1e-9

// amounts returns what may be added of one paint to a pile of so many parts, from a
// speck up to as much as the pile itself, each larger than the one before: specks and
// touches while they are finer than parts, then quarters of a part up to one, halves
// up to three, and whole parts.
func amounts(pile float64) (all []Addition) {
	for _, small := range []struct {
		measure Measure
		share   float64
		most    int
	}{{Speck, speckShare, 3}, {Touch, touchShare, 4}} {
		for n := 1; n <= small.most; n++ {
			all = append(all, Addition{Count: float64(n), Measure: small.measure, Parts: float64(n) * small.share * pile})
		}
	}
	finest := all[len(all)-1].Parts
	for parts := 0.25; parts <= pile*(1+tinyShare); parts += stepFrom(parts) {
		if parts > finest*(1+tinyShare) {
			all = append(all, Addition{Count: parts, Parts: parts})
		}
	}
	return all
}

// stepFrom returns the step from an amount in parts to the next.
func stepFrom(parts float64) float64 {
	switch {
	case parts < 1:
		return 0.25
	case parts < 3:
		return 0.5
	}
	return math.Max(1, math.Floor(parts/8)) // a pile of hundreds is not measured by ones
}

// with returns the pile with additions stirred in.
func (p Pile) with(additions []Addition) Pile {
	sum := Pile{append([]paint.Paint(nil), p.Paints...), append([]float64(nil), p.Parts...)}
	for _, a := range additions {
		i := indexOf(sum.Paints, a.Paint.ID)
		if i < 0 {
			sum.Paints, sum.Parts = append(sum.Paints, a.Paint), append(sum.Parts, a.Parts)
			continue
		}
		sum.Parts[i] += a.Parts
	}
	return sum
}

func indexOf(paints []paint.Paint, id string) int {
	for i, p := range paints {
		if p.ID == id {
			return i
		}
	}
	return -1
}
