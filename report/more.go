// What else the painter may ask about this plan, with the words to type.

package report

import (
	"fmt"
	"strings"

	"tonewright/report/plan"
)

// question is what a painter may want to know and how to ask it.
type question struct{ Text, Command string }

// questions fills in this plan's own tags and paints, so that each can be typed as it
// stands but for the file names and places, which are in capitals.
func questions(p *plan.Plan) []question {
	list := []question{}
	add := func(text, format string, args ...any) {
		list = append(list, question{text, "tonewright " + fmt.Sprintf(format, args...)})
	}
	if tag := firstTag(p, func(plan.Colour) bool { return true }); tag != "" {
		add("Is the pile for "+tag+" right, and what to add to it: photograph it beside a gray card",
			"swatch PHOTO --card X,Y,W,H --swatch X,Y,W,H --aim %s --plan PLAN.json", tag)
	}
	if tag := firstTag(p, plan.Colour.Missed); tag != "" {
		add("What this box cannot reach, as for "+tag+", and which one tube would widen it most", "box --gaps")
	}
	if a, b := mostUsed(p.Paints); b != "" {
		add("What lies between two tubes of this plan, and where it turns dull", "string %s %s --white", a, b)
		add("What a thin transparent layer over a dry one does", "glaze --over %q --try %s", a, b)
	}
	add("Mixes for the middle of one cell", "mix %s@%s", photoWord(p.Photo.File), "C3")
	return list
}

// photoWord returns the photo's name as it is typed, in quotes where it needs them.
func photoWord(file string) string {
	if strings.ContainsAny(file, " \t'\"\\$&;|<>()*?#!~`") {
		return "PHOTO"
	}
	return file
}

// firstTag returns the tag of the first colour that is so; "" for none.
func firstTag(p *plan.Plan, is func(plan.Colour) bool) string {
	for _, r := range p.Regions {
		for _, c := range r.Colours {
			if is(c) {
				return c.ID
			}
		}
	}
	return ""
}

// mostUsed returns the two paints of the plan, whites and blacks aside, that are in
// most mixes; of equals the first.
func mostUsed(paints []plan.Paint) (first, second string) {
	most, next := 0, 0
	for _, p := range paints {
		if len(p.CI) > 0 && (strings.HasPrefix(p.CI[0], "PW") || strings.HasPrefix(p.CI[0], "PBk")) {
			continue
		}
		switch n := len(p.Used); {
		case n > most:
			first, second, most, next = p.ID, first, n, most
		case n > next:
			second, next = p.ID, n
		}
	}
	return first, second
}
