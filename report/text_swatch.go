package report

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"tonewright/report/answer"
	"tonewright/report/plan"
)

// SwatchText writes whether a pile is right and what to add; the round is in a file log.
func SwatchText(w io.Writer, a *answer.Swatch, log string) error {
	var t text
	t.item("Do:", "%s", a.Advice)
	sayFresh(&t, a)
	if a.Logged {
		t.item("Is:", "%s.", a.Differs.Words)
	}
	for _, warning := range a.Warnings {
		t.item("Note:", "%s", warning)
	}
	t.gap()
	if !a.Logged { // what was read is not to be gone by, so it is not shown
		t.say(2, "Nothing was learned, and %s is as it was.", log)
		return t.to(w)
	}
	t.table(looksTable(a))
	t.gap()
	t.say(2, "Measured less aim: value %s, chroma %s, hue %s.", signed(a.Differs.Value), signed(a.Differs.Chroma), turnText(a.Differs.Hue))
	if len(a.Pile) > 0 {
		t.say(2, "Pile: %s (%s).", amountsText(a.Pile), a.PileFrom)
	}
	if a.Then != nil {
		t.say(2, "Pile then: %s.", amountsText(a.Then.Pile))
		t.say(2, "%sStir in half of it, look, then the rest.", measuresText(a.Add))
	}
	t.gap()
	sayLearned(&t, a)
	t.say(2, "Round %d for this aim is in %s. Paints from %s.", a.Round, log, a.Box)
	return t.to(w)
}

// sayFresh says what a new pile would be, and where that is advised what mending
// would come to.
func sayFresh(t *text, a *answer.Swatch) {
	if a.Fresh == nil {
		return
	}
	t.item("", "Fresh: %s. Gives %s, %s; CIEDE2000 %.1f.", partsText(a.Fresh.Parts), a.Fresh.Munsell, a.Fresh.Name, a.Fresh.DeltaE)
	if a.Mended != nil {
		t.item("", "Mending comes nearest by adding %s: CIEDE2000 %.1f.", addText(a.Mended.Add), a.Mended.Then.DeltaE)
	}
}

// ForgottenText writes which round was taken out of a file log.
func ForgottenText(w io.Writer, f *answer.Forgotten, log string) error {
	var t text
	pile := ", pile " + f.Pile
	if f.Pile == "-" {
		pile = ""
	}
	t.say(2, "Forgotten: the round of %s for %s, photo %s%s. In %s %s left.", f.Date, f.Aim, f.Photo, pile, log, either(f.Left == 1, "1 round is", fmt.Sprintf("%d rounds are", f.Left)))
	return t.to(w)
}

// looksTable puts aim, measurement and what is hoped for under each other.
func looksTable(a *answer.Swatch) [][]string {
	row := func(name string, l answer.Look, off string) []string {
		return []string{name, l.Munsell, off, l.Name}
	}
	rows := [][]string{{"", "Munsell", " CIEDE2000", ""}, row("aim", a.Aim.Look, "")}
	rows = append(rows, row("measured", a.Measured, fmt.Sprintf("%.1f", a.DeltaE)))
	if a.Then != nil {
		rows = append(rows, row("then, likely", a.Then.Look, fmt.Sprintf("%.1f", a.Then.DeltaE)))
	}
	if a.Mended != nil {
		rows = append(rows, row("mended", a.Mended.Then.Look, fmt.Sprintf("%.1f", a.Mended.Then.DeltaE)))
	}
	return rows
}

// measuresText says what the small measures are, where one is used.
func measuresText(additions []answer.Addition) string {
	for _, add := range additions {
		if add.Measure != "" {
			return "A touch is 1/32 of the pile as it lies, a speck 1/128. "
		}
	}
	return ""
}

func addText(additions []answer.Addition) string {
	words := make([]string, len(additions))
	for i, add := range additions {
		words[i] = add.Words
	}
	return strings.Join(words, " and ")
}

// turnText words a turn of the hue; 0 is no turn, or none that a gray could make.
func turnText(steps float64) string {
	if steps == 0 {
		return "not turned"
	}
	return fmt.Sprintf("%+.0f steps of 100", steps)
}

// amountsText lists a pile: "3 Yellow Ochre + 0.13 Titanium White".
func amountsText(parts []plan.Part) string {
	words := make([]string, len(parts))
	for i, p := range parts {
		words[i] = strconv.FormatFloat(math.Round(p.Parts*100)/100, 'f', -1, 64) + " " + p.Name
	}
	return strings.Join(words, " + ")
}

// shareWord is how much a tube must differ to be worth a word.
const shareWord = 0.05

// sayLearned tells which tubes of the pile are not as the library has them.
func sayLearned(t *text, a *answer.Swatch) {
	var words []string
	for _, l := range a.Learned {
		if !slices.ContainsFunc(a.Pile, func(p plan.Part) bool { return p.Paint == l.Paint }) {
			continue
		}
		if of := tubeWords(l); len(of) > 0 {
			words = append(words, l.Name+" "+strings.Join(of, ", "))
		}
	}
	if len(words) > 0 {
		t.say(2, "Learned of your tubes from %s, against typical ones: %s. Parts that were misjudged look the same as a tube that differs.", count(a.Earlier+1, "round"), strings.Join(words, "; "))
	}
}

// tubeWords says how a tube differs from a typical one: "tints 29 % stronger", "covers 34 %
// less", "its hue a little towards green".
func tubeWords(l answer.Learned) (of []string) {
	if d := l.Strength - 1; math.Abs(d) >= shareWord {
		of = append(of, fmt.Sprintf("tints %.0f %% %s", 100*math.Abs(d), either(d > 0, "stronger", "weaker")))
	}
	if d := l.Scatter - 1; math.Abs(d) >= shareWord {
		of = append(of, fmt.Sprintf("covers %.0f %% %s", 100*math.Abs(d), either(d > 0, "more", "less")))
	}
	if l.Hue != "" {
		of = append(of, "its hue "+l.Hue)
	}
	return of
}
