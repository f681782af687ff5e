package report

import (
	"fmt"
	"io"
	"strings"

	"tonewright/report/answer"
	"tonewright/report/plan"
)

// MixText writes the recipes for a colour.
func MixText(w io.Writer, a *answer.Mix) error {
	var t text
	if a.Aim.Seen != nil {
		t.item("Seen:", "%s, %s", a.Aim.Seen.Munsell, a.Aim.Seen.Name)
	}
	t.item("Aim:", "%s, %s", a.Aim.Munsell, a.Aim.Name)
	for i, r := range a.Recipes {
		t.gap()
		t.item(either(i == 0, "Mix:", "Or:"), "%s", partsText(r.Parts))
		t.item("", "Gives %s, %s; CIEDE2000 %.1f. %s", r.Munsell, r.Name, r.DeltaE, r.Note)
		if r.Cover != nil && r.Cover.Note == "" {
			t.item("", "One coat carries over %s.", r.Cover.Ground)
		}
		for _, note := range notesOf(r, "CIEDE2000") {
			t.item("", "%s", note)
		}
	}
	if len(a.Recipes) > 0 {
		t.gap()
		t.say(2, "The first of them against daylight; a hue step of + is from red towards yellow and green:")
		t.table(lampRows(a.Recipes[0].Lamps))
	}
	t.gap()
	t.say(2, "Paints from %s; %s. Mix a little and look: tubes differ.", a.Box, a.Finish)
	return t.to(w)
}

// lampRows lists what each lamp does to a recipe.
func lampRows(lamps []plan.LampShift) [][]string {
	rows := [][]string{{"", " value", " chroma", " hue steps", " CIEDE2000"}}
	for _, l := range lamps {
		rows = append(rows, []string{
			"under a " + l.Name, signed(l.ValueShift), signed(l.ChromaShift),
			fmt.Sprintf("%+.0f", plan.Round(l.HueShift, 0)), fmt.Sprintf("%.1f", l.DeltaE),
		})
	}
	return rows
}

// notesOf says what the ground and the lamps do to a recipe, a sentence or two each.
// difference is what the reader calls CIEDE2000.
func notesOf(r plan.Recipe, difference string) (notes []string) {
	if r.Cover != nil && r.Cover.Note != "" {
		note := r.Cover.Note
		if r.Carrier != nil {
			note += fmt.Sprintf(" In one coat %s comes nearer: %s %.1f to the aim there, against %.1f.",
				partsText(r.Carrier.Parts), difference, r.Carrier.Cover.AimDeltaE, r.Cover.AimDeltaE)
		}
		notes = append(notes, note)
	}
	if r.LampNote != "" {
		notes = append(notes, r.LampNote)
	}
	return notes
}

func either(yes bool, a, b string) string {
	if yes {
		return a
	}
	return b
}

// smallWord words touches and specks: "touch", "2 specks".
func smallWord(p plan.Part) string {
	if p.Count == 1 {
		return p.Measure
	}
	return count(p.Count, p.Measure)
}

// partsText lists whole parts first and then what is added last: "3 Yellow Ochre + 1
// Titanium White + a touch of Pyrrole Red".
func partsText(parts []plan.Part) string {
	var first, last []string
	for _, p := range parts {
		if p.Measure != "" {
			last = append(last, fmt.Sprintf("%s of %s", either(p.Count == 1, "a "+p.Measure, smallWord(p)), p.Name))
		} else {
			first = append(first, fmt.Sprintf("%.0f %s", p.Parts, p.Name))
		}
	}
	return strings.Join(append(first, last...), " + ")
}
