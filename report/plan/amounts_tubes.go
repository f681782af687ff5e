// What is taken of each tube, what is left in it and what to buy.

package plan

import (
	"fmt"
	"math"

	"tonewright/match/paint"
)

// tubes returns what is taken of each paint: those of the box in its order, then others.
func (c *count) tubes(box paint.Box) []TubeAmount {
	ml := make([]float64, len(c.known))
	for _, s := range c.stocks {
		for i, p := range s.of.Paints {
			ml[indexOf(c.known, p.ID)] += s.ml * s.of.Parts[i]
		}
	}
	list := []TubeAmount{}
	for i, p := range c.known {
		if ml[i] > 0 {
			list = append(list, tubeAmount(p, ml[i], box, i < len(box.Paints)))
		}
	}
	return list
}

func tubeAmount(p paint.Paint, ml float64, box paint.Box, owned bool) TubeAmount {
	density := p.TubeDensity()
	t := TubeAmount{Paint: p.ID, Name: p.Name, ML: Round(ml, 2), Grams: Round(ml*density, 2), Density: Round(density, 2)}
	ml = t.ML // what is said is said of what is printed
	takes := "takes " + about(ml)
	left, told := box.Left[p.ID]
	switch {
	case !owned:
		t.BuyML, t.Text = ml, fmt.Sprintf("%s; it is not in the box: %s", takes, toBuy(ml))
	case !told:
		t.Text = takes
	default:
		left = Round(left, 2)
		t.LeftML, t.BuyML = &left, Round(max(0, ml-left), 2)
		t.Text = takes + ", " + ofLeft(ml, left)
	}
	return t
}

// about words an amount as surely as it is known: to the millilitre, or to the half of
// one where it is less than three.
func about(ml float64) string {
	switch ml = Round(ml, 2); {
	case ml < 0.25:
		return "a dab"
	case ml < 3:
		return fmt.Sprintf("about %g ml", math.Round(2*ml)/2)
	}
	return fmt.Sprintf("about %.0f ml", math.Round(ml))
}

// nearlyAll is the share of what is left past which it may not last. Ours: a hand that
// lays on a quarter more than another is an even one.
const nearlyAll = 0.8

// ofLeft says how much of what is left is taken.
func ofLeft(ml, left float64) string {
	share, told := ml/left, Round(left, 1)
	switch {
	case left == 0:
		return "and none is left: " + toBuy(ml)
	case share > 1:
		return fmt.Sprintf("more than the %g ml left: %s", told, toBuy(ml-left))
	case share > nearlyAll:
		return fmt.Sprintf("nearly all of the %g ml left: have another tube at hand", told)
	case share > 0.6:
		return fmt.Sprintf("most of the %g ml left", told)
	}
	for parts, word := range []string{"", "", "half", "a third", "a quarter", "a fifth"} {
		if parts > 1 && share > 1/(float64(parts)+0.5) {
			return fmt.Sprintf("%s of the %g ml left", word, told)
		}
	}
	return fmt.Sprintf("little of the %g ml left", told)
}

// usualTube is what a tube holds, in ml. Common practice, no source: 37 or 40.
const usualTube = 37

// toBuy says what to buy of a paint.
func toBuy(ml float64) string {
	if n := math.Ceil(ml / usualTube); n > 1 {
		return fmt.Sprintf("buy %s, %.0f tubes of %d ml", about(ml), n, usualTube)
	}
	return fmt.Sprintf("buy %s, a tube of %d ml", about(ml), usualTube)
}
