// What else the painter may ask about this plan, with the words to type.

package report

import (
	"fmt"
	"strings"

	"tonewright/grid"
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
	}
	if over, glaze := glazing(p.Paints); glaze != "" {
		add("What a thin transparent layer over a dry one does", "glaze --over %s --try %s", over, glaze)
	}
	add("Mixes for the middle of one cell", "mix %s@%s%s", photoWord(p.Photo.File), middleCell(p.Grid), layoutFlags(p))
	return list
}

// middleCell returns the name of the cell nearest to the middle of the grid.
func middleCell(g plan.Grid) string {
	return grid.ColumnName((g.Columns-1)/2) + fmt.Sprint((g.Rows+1)/2)
}

// layoutFlags returns the flags that lay this plan's own grid on the photo again:
// mix has other cells under the same names without them.
func layoutFlags(p *plan.Plan) string {
	c, percent := p.Panel.Crop, func(part, whole int) float64 { return 100 * float64(part) / float64(whole) }
	text := fmt.Sprintf(" --panel %gx%gmm --cell %gmm", p.Panel.WidthMM, p.Panel.HeightMM, p.Grid.CellMM)
	if c.Width < p.Photo.Width || c.Height < p.Photo.Height {
		text += fmt.Sprintf(" --crop %.4g,%.4g,%.4g,%.4g", percent(c.X, p.Photo.Width), percent(c.Y, p.Photo.Height), percent(c.Width, p.Photo.Width), percent(c.Height, p.Photo.Height))
	}
	if p.ValueKey.Mode == "literal" {
		text += " --key literal"
	}
	return text
}

// photoWord returns the photo's name as it is typed, or PHOTO where it would need quotes.
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

// glazing returns a paint of the plan to lie beneath a glaze and a transparent one to
// glaze it with, the first of each in the box's order that is neither white nor black;
// "" where the plan has not both.
func glazing(paints []plan.Paint) (over, glaze string) {
	for _, p := range paints {
		switch {
		case p.Plain:
		case p.Opacity == "transparent" && glaze == "":
			glaze = p.ID
		case p.Opacity != "transparent" && over == "":
			over = p.ID
		}
	}
	if over == "" {
		return "", ""
	}
	return over, glaze
}

// mostUsed returns the two paints of the plan, whites and blacks aside, that are in
// most mixes; of equals the first.
func mostUsed(paints []plan.Paint) (first, second string) {
	most, next := 0, 0
	for _, p := range paints {
		if p.Plain {
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
