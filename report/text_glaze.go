package report

import (
	"fmt"
	"io"
	"slices"

	"tonewright/report/answer"
)

// GlazeText writes what glazes do over an under-layer.
func GlazeText(w io.Writer, a *answer.Glaze) error {
	var t text
	t.item("Over:", "%s, %s%s", a.Over.Munsell, a.Over.Name, overText(a.Over))
	if a.Tube != nil {
		t.tried(a)
	} else {
		t.advice(a)
	}
	t.gap()
	t.fat(a)
	t.say(2, "Paint to medium by volume, in thin coats of a third of an ordinary one, each dry before the next. Paints from %s. Try it on a scrap first: a coat is as thin as the hand makes it.", a.Box)
	return t.to(w)
}

// overText says what stands for a colour.
func overText(o answer.UnderLayer) string {
	switch {
	case o.Guess:
		return "; no mix of the box is near, so its reflectance is a guess"
	case len(o.Mix) > 0:
		return ", as mixed from " + partsText(o.Mix)
	}
	return ""
}

// advice adds the glazes for an aim.
func (t *text) advice(a *answer.Glaze) {
	t.item("Aim:", "%s, %s; CIEDE2000 %.1f from what lies beneath", a.Aim.Munsell, a.Aim.Name, a.Bare)
	for _, warning := range a.Warnings {
		t.item("Note:", "%s", warning)
	}
	for i, g := range a.Best {
		t.gap()
		t.item(either(i == 0, "Best:", "Or:"), "%s, 1 to %d of medium, %s", g.Tube.Name, g.Medium, count(g.Coats, "coat"))
		t.item("", "Gives %s, %s: %s against what lies beneath. CIEDE2000 %.1f to the aim. %s", g.Munsell, g.Name, changeText(g.TriedGlaze), g.DeltaE, g.Note)
	}
}

// tried adds what one paint does at every thickness.
func (t *text) tried(a *answer.Glaze) {
	t.item("Try:", "%s", a.Tube.Name)
	if a.Scumbles {
		t.item("Note:", "This paint is too opaque for a glaze, or a white: thinned, it veils what lies beneath, which is a scumble.")
	}
	t.gap()
	rows := [][]string{{"Paint : medium", " Coats", "Munsell", "Name", " Value", " Chroma"}}
	milky := false
	for _, g := range a.Tried {
		rows = append(rows, []string{
			fmt.Sprintf("1 : %d", g.Medium), fmt.Sprint(g.Coats), g.Munsell, g.Name, signed(g.Lifts), signed(g.Gains),
		})
		milky = milky || g.Milky
	}
	t.table(rows)
	t.gap()
	t.say(2, "Value and chroma: the change from what lies beneath.%s", milkyText(milky && !a.Scumbles))
}

// fat cautions where a glaze told of is mostly medium. Common practice, no source.
func (t *text) fat(a *answer.Glaze) {
	fat := func(g answer.TriedGlaze) bool { return g.Fat }
	if slices.ContainsFunc(a.Tried, fat) || slices.ContainsFunc(a.Best, func(g answer.BestGlaze) bool { return fat(g.TriedGlaze) }) {
		t.say(2, "Fat over lean: so much medium makes a fat film that dries slowly. Rub it out thin, let it dry, lay nothing leaner over it, and go by the label of the medium.")
	}
}

func milkyText(milky bool) string {
	if !milky {
		return ""
	}
	return " Where the value rises, it turns milky: the paint scatters light and veils the dark beneath."
}

// changeText is "value -1.2, chroma +3.0".
func changeText(g answer.TriedGlaze) string {
	return fmt.Sprintf("value %s, chroma %s", signed(g.Lifts), signed(g.Gains))
}

// signed is a change to one decimal with its sign; none has none.
func signed(v float64) string {
	if v > -0.05 && v < 0.05 {
		return "0.0"
	}
	return fmt.Sprintf("%+.1f", v)
}
