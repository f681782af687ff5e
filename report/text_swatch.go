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
	if a.Fresh != nil {
		t.item("", "Fresh: %s. Gives %s, %s; CIEDE2000 %.1f.", partsText(a.Fresh.Parts), a.Fresh.Munsell, a.Fresh.Name, a.Fresh.DeltaE)
		if len(a.Add) > 0 {
			t.item("", "With as much paint as is in it, the nearest is to add %s: CIEDE2000 %.1f.", addText(a.Add), a.Then.DeltaE)
		}
	}
	t.item("Is:", "%s.", a.Differs.Words)
	for _, warning := range a.Warnings {
		t.item("Note:", "%s", warning)
	}
	t.gap()
	t.table(looksTable(a))
	t.gap()
	t.say(2, "Measured less aim: value %s, chroma %s, hue %s.", signed(a.Differs.Value), signed(a.Differs.Chroma), turnText(a.Differs.Hue))
	if len(a.Pile) > 0 {
		t.say(2, "Pile: %s (%s).", amountsText(a.Pile), a.PileFrom)
	}
	if a.Then != nil && a.Fresh == nil {
		t.say(2, "Pile then: %s.", amountsText(a.Then.Pile))
		t.say(2, "%sStir in half of it, look, then the rest.", measuresText(a.Add))
	}
	t.gap()
	sayLearned(&t, a)
	t.say(2, "Round %d for this aim is in %s. Paints from %s.", a.Round, log, a.Box)
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
		rows = append(rows, row(either(a.Fresh == nil, "then, likely", "mended"), a.Then.Look, fmt.Sprintf("%.1f", a.Then.DeltaE)))
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

// How much a tube must differ to be worth a word.
const (
	shareWord = 0.05
	shiftWord = 1 // nm
)

// sayLearned tells which tubes of the pile are not as the library has them.
func sayLearned(t *text, a *answer.Swatch) {
	var words []string
	for _, l := range a.Learned {
		if !slices.ContainsFunc(a.Pile, func(p plan.Part) bool { return p.Paint == l.Paint }) {
			continue
		}
		var of []string
		if d := l.Strength - 1; math.Abs(d) >= shareWord {
			of = append(of, "takes in "+moreOrLess(d, "light"))
		}
		if d := l.Scatter - 1; math.Abs(d) >= shareWord {
			of = append(of, "throws back "+moreOrLess(d, ""))
		}
		if math.Abs(l.Shift) >= shiftWord {
			of = append(of, fmt.Sprintf("absorbs %.0f nm further towards %s", math.Abs(l.Shift), either(l.Shift > 0, "red", "violet")))
		}
		if len(of) > 0 {
			words = append(words, l.Name+" "+strings.Join(of, ", "))
		}
	}
	if len(words) > 0 {
		t.say(2, "Learned of your tubes from %s, against typical ones: %s.", count(a.Earlier+1, "round"), strings.Join(words, "; "))
	}
}

// moreOrLess says "30 % more light".
func moreOrLess(d float64, of string) string {
	return strings.TrimSpace(fmt.Sprintf("%.0f %% %s %s", 100*math.Abs(d), either(d > 0, "more", "less"), of))
}
