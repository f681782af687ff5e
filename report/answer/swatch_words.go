package answer

import (
	"fmt"
	"strings"

	"tonewright/match"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// adviceText says what to do; useless is why the photo is not to be gone by, the
// rest of which is for the warnings.
func (a *Swatch) adviceText(c match.Correction, useless []string) string {
	switch c.Verdict {
	case match.Again:
		if len(useless) > 0 {
			return useless[0]
		}
		return fmt.Sprintf("Photograph it again, and check what is in the pile: it reads %.1f CIEDE2000 from what these paints and parts give, farther than any tubes differ. If something else is in it, say so with --pile.", c.Surprise)
	case match.Leave:
		return "It is right: leave it as it is."
	case match.Off:
		return "Say with --pile what is in it, to be told what to add."
	case match.Add:
		return fmt.Sprintf("Add %s.", match.ListAdditions(c.Additions))
	case match.Anew:
		return anewText(c)
	}
	return shortText(c)
}

// anewText says why to start again.
func anewText(c match.Correction) string {
	text := "Start again: nothing that you own mends it. "
	if len(c.Additions) > 0 {
		text = fmt.Sprintf("Start again: mended with as much paint as is in it, it would still be %.1f CIEDE2000 off. ", c.Remaining)
	}
	if plan.Round(c.Fresh.DeltaE, 1) > match.Right {
		text += fmt.Sprintf("A fresh pile misses too, by %.1f: these paints come no nearer. ", c.Fresh.DeltaE)
	}
	return text + keepText(c.Keep)
}

// shortText says what to do with a pile that adding does not bring near enough.
func shortText(c match.Correction) string {
	switch add := match.ListAdditions(c.Additions); {
	case len(c.Additions) == 0 && plan.Round(c.Remaining, 1) <= match.Right:
		return "Leave it: what adding would win is less than a camera can tell."
	case len(c.Additions) == 0 && c.Fresh != nil:
		return fmt.Sprintf("Leave it, or start again: nothing that you own brings it clearly nearer, and a fresh pile would be %.1f CIEDE2000 off. %s", c.Fresh.DeltaE, keepText(c.Keep))
	case len(c.Additions) == 0:
		return "Nothing that you own brings it clearly nearer."
	case c.Fresh != nil:
		return fmt.Sprintf("Add %s: near, %.1f CIEDE2000 off. If that is not near enough, a fresh pile would be %.1f off. %s", add, c.Remaining, c.Fresh.DeltaE, keepText(c.Keep))
	default:
		return fmt.Sprintf("These paints do not get it within %d CIEDE2000. Nearest: add %s.", match.Right, add)
	}
}

// keepText says how much of the old pile a fresh one bears.
func keepText(keep float64) string {
	for _, share := range []struct {
		of   float64
		word string
	}{{0.5, "half"}, {0.25, "a quarter"}, {0.125, "an eighth"}, {0.0625, "a sixteenth"}} {
		if keep == share.of {
			return fmt.Sprintf("Of the old pile, up to %s as much as there is fresh paint may be stirred in.", share.word)
		}
	}
	return "Keep the old pile for something else."
}

// doubt says that the pile may not be what it is said to be; "" where nothing speaks
// for it.
func (a *Swatch) doubt(c match.Correction) string {
	var signs []string
	if c.Verdict != match.Again && c.Surprise > match.Surprising {
		signs = append(signs, fmt.Sprintf("it reads %.1f CIEDE2000 from what these paints and parts should give, farther than 95 piles in 100", c.Surprise))
	}
	for _, l := range a.Learned {
		if l.Far && a.has(l.Paint) {
			signs = append(signs, l.Name+" would have to be farther from the typical tube than tubes differ")
		}
	}
	if len(signs) == 0 {
		return ""
	}
	return fmt.Sprintf("Check what is in the pile: %s. If it is not as told, take this round out with tonewright swatch --forget --aim %q, since later ones learn from it.", strings.Join(signs, ", and "), a.Aim.From)
}

// has tells whether a paint is in the pile.
func (a *Swatch) has(id string) bool {
	for _, p := range a.Pile {
		if p.Paint == id {
			return true
		}
	}
	return false
}

// learned fills in what rounds told of the tubes.
func (a *Swatch) learned(tubes match.Tubes, rounds []match.Round) {
	paints := map[string]paint.Paint{}
	for _, r := range rounds {
		for _, p := range r.Pile.Paints {
			paints[p.ID] = p
		}
	}
	for _, t := range tubes {
		a.Learned = append(a.Learned, Learned{
			Paint: t.ID, Name: paints[t.ID].Name, Strength: plan.Round(t.Strength, 2), Scatter: plan.Round(t.Scatter, 2),
			Shift: plan.Round(t.Shift, 1), Hue: t.Turn(paints[t.ID]), Far: t.Far,
		})
	}
}
