// Near complements, and how they balance.

package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"tonewright/analyze/colour"
)

// Opposite hues lie 50 of the 100 steps apart: 5R and 5BG, 5Y and 5PB.
// Source: [ASTMD1535]. nearOpposite is how far off that still counts. Ours: an eighth
// of the circle to either side, as wide as match takes a wished hue, so that a palette
// proposed as a complement is found to be one.
const (
	opposite     = 50
	nearOpposite = 12.5
)

// tooSlight is the part of the picture's weight under which a hue is no side of a
// pair. Ours: an accent that anybody notices has more, and without it the dull edge
// of every region pairs with something.
const tooSlight = 0.01

// complementsOf lists the pairs of near complements, those of the most weight on
// their lighter side first. beside tells whether hues a and b lie side by side.
func complementsOf(hues []HueShare, beside func(a, b int) bool) []Complement {
	pairs := []Complement{}
	total := 0.0
	for _, h := range hues {
		total += h.Weight
	}
	lesser := func(c Complement) float64 { return c.lesser }
	for i, a := range hues {
		for j := i + 1; j < len(hues); j++ {
			b := hues[j]
			apart := Round(colour.HuesApart(a.Step, b.Step), 1)
			slight := min(a.Weight, b.Weight)
			if apart < opposite-nearOpposite || slight <= 0 || slight < Round(tooSlight*total, 6) {
				continue
			}
			pair := Complement{A: a.Region, B: b.Region, HueA: a.Hue, HueB: b.Hue, Apart: apart, Touch: beside(i, j), Balance: Round(a.Weight/b.Weight, 2), lesser: slight}
			pair.Text = pair.words(a, b)
			pairs = append(pairs, pair)
		}
	}
	slices.SortStableFunc(pairs, func(a, b Complement) int { return cmp.Compare(lesser(b), lesser(a)) })
	return pairs
}

// Two sides balance where neither has evens times the other's weight; where one has
// accents times it, the other is the accent. Ours: under the first no eye tells which
// leads, a word for the second.
const (
	evens   = 1.5
	accents = 2.5
)

// words says how the pair stands and balances.
func (c Complement) words(a, b HueShare) string {
	first, second := fmt.Sprintf("%s (%s)", c.A, a.Word), fmt.Sprintf("%s (%s)", c.B, b.Word)
	more, less := c.A, c.B
	where := "apart on the panel"
	switch {
	case c.A == c.B:
		first, second = "In "+c.A+" "+a.Word, b.Word
		more, less, where = "the "+a.Word, "the "+b.Word, "within one region"
	case c.Touch:
		where = "side by side"
	}
	times := c.Balance
	if times < 1 {
		more, less, times = less, more, b.Weight/a.Weight
	}
	text := fmt.Sprintf("%s and %s are near complements, %s; ", first, second, where)
	switch {
	case times < evens:
		return text + "they weigh about the same, so neither leads."
	case times < accents:
		return text + fmt.Sprintf("%s has %s the weight of %s and leads.", more, timesWord(times), less)
	}
	return text + fmt.Sprintf("%s has %s the weight of %s, which is the accent.", more, timesWord(times), less)
}

// timesWord says how many times as much, to a whole number, but for one and a half.
func timesWord(times float64) string {
	if times < 1.75 {
		return "one and a half times"
	}
	n := int(math.Round(times))
	if words := []string{"", "", "twice", "three times", "four times", "five times", "six times", "seven times", "eight times", "nine times", "ten times"}; n < len(words) {
		return words[n]
	}
	return fmt.Sprintf("%d times", n)
}
