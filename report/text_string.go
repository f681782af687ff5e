package report

import (
	"fmt"
	"io"
	"strings"

	"tonewright/report/answer"
)

// StringText writes a string as a table to lay out on the palette.
func StringText(w io.Writer, a *answer.String) error {
	var t text
	t.say(2, "A string of %d steps: A is %s, B is %s.", len(a.Steps), a.From.Name, a.To.Name)
	t.say(2, "%s", a.Note)
	t.say(2, "Values %.1f to %.1f.", a.Values[0], a.Values[1])
	t.gap()
	rows := [][]string{{" ", "A : B", "Munsell", "Name", " Gap", " Dulls"}}
	for i, s := range a.Steps {
		rows = append(rows, []string{fmt.Sprint(i + 1), splitText(s.First, s.Second), s.Munsell, s.Name, figure(s.ToNext), figure(s.Dulls)})
	}
	t.table(rows)
	if a.White != nil {
		t.gap()
		t.say(2, "Tints: the pile of each step with %s.", a.White.Name)
		t.table(tintRows(a))
	}
	t.gap()
	t.say(2, "Parts by volume; a touch is 1/32 of the pile, a speck 1/128. Gap: CIEDE2000 to the next step, %.1f if even. Dulls: chroma under the straight path from end to end. Muddy: 2 chroma under it or more, with three fifths of it lost; a step under value 2, nearly black, is judged by its tints.", a.Even)
	t.say(2, "Paints from %s; %s.%s Mix a little and look: tubes differ.", a.Box, a.Finish, notOwned(a))
	return t.to(w)
}

// tintRows is a row for each tint; a step without any says so.
func tintRows(a *answer.String) [][]string {
	rows := [][]string{{" Step", " Value", "Pile : white", "Munsell", "Name"}}
	for i, s := range a.Steps {
		step := fmt.Sprint(i + 1)
		if len(s.Tints) == 0 {
			rows = append(rows, []string{step, "", "none", "", "lighter than the tints go"})
		}
		for _, tint := range s.Tints {
			rows = append(rows, []string{step, fmt.Sprint(tint.Value), splitText(tint.Pile, tint.White), tint.Munsell, tint.Name})
			step = ""
		}
	}
	return rows
}

// splitText is "5 : 1", "1 part : 2 touches", "A alone" or "B alone".
func splitText(a, b answer.Amount) string {
	switch {
	case b.Count == 0:
		return "A alone"
	case a.Count == 0:
		return "B alone"
	}
	if a.Measure == "" && b.Measure == "" {
		return fmt.Sprintf("%d : %d", a.Count, b.Count)
	}
	return amountText(a) + " : " + amountText(b)
}

// amountText is "1 part", "1 touch" or "3 specks".
func amountText(a answer.Amount) string {
	return count(a.Count, either(a.Measure == "", "part", a.Measure))
}

// figure is a number to one decimal, or nothing where that is 0 or less.
func figure(v float64) string {
	if v < 0.05 {
		return ""
	}
	return fmt.Sprintf("%.1f", v)
}

// notOwned names the paints that are not in the box.
func notOwned(a *answer.String) string {
	tubes := []answer.Named{a.From, a.To}
	if a.White != nil {
		tubes = append(tubes, *a.White)
	}
	var names []string
	for _, tube := range tubes {
		if !tube.Owned {
			names = append(names, tube.Name)
		}
	}
	if len(names) == 0 {
		return ""
	}
	return " Not in the box: " + strings.Join(names, ", ") + "."
}
