// What a region is mixed from, and the palettes proposed for it.

package report

import (
	"fmt"
	"math"
	"strings"

	"tonewright/report/plan"
)

// palette words a region's role, palette and shift; Proposed is for the wish. Text is
// "" where there is nothing to say: no role was given, and the whole box is used.
type palette struct {
	Role, Text, Note string
	Wish             string
	Proposed         []proposal
}

// proposal is a row of the palettes proposed.
type proposal struct {
	Why, Line string
	InUse     bool // the region's mixes are made of it
}

func paletteOf(r plan.Region, name namer, roles bool) palette {
	pal := palette{Note: r.Palette.Note, Wish: r.Scheme, Proposed: []proposal{}}
	if roles {
		pal.Role = capital(r.Role)
	}
	if roles || !wholeBox(r.Palette) || r.Palette.Aim == plan.AimValue || r.Shift != 0 {
		pal.Text = paletteText(r, name)
	}
	for i, s := range r.Suggestions {
		pal.Proposed = append(pal.Proposed, proposal{s.Why, s.Line, i == 0 && r.Palette.From == plan.Proposed})
	}
	return pal
}

// wholeBox tells whether a region has no palette of its own.
func wholeBox(p plan.Palette) bool { return p.From == plan.WholeBox || p.From == "" }

// paletteText says what the region is mixed from, what its mixes go after, and by how
// much it was shifted.
func paletteText(r plan.Region, name namer) string {
	p := r.Palette
	text := "Mixed from the whole box, after the photo's colours."
	if !wholeBox(p) {
		text = fmt.Sprintf("%s: %s%s. It follows %s, and reaches values %.1f to %.1f.",
			either(p.From == plan.Proposed, "Mixed from the first palette proposed", "Mixed from your palette"),
			withWhite(listed(name.all(p.Paints)), name.of(p.White)), familyText(p),
			either(p.Aim == plan.AimValue, "the photo's values only, in the palette's hues", "the photo's colours"), p.ValueMin, p.ValueMax)
	}
	if s := shiftText(r.Shift); s != "" {
		text += " " + capital(s) + "."
	}
	return text
}

// familyText says how the paints of a palette stand to one another, where that says
// more than their names.
func familyText(p plan.Palette) string {
	if len(p.Paints) < 2 || p.Family == "" || p.Family == "mixed" {
		return ""
	}
	return " (" + p.Family + ")"
}

func shiftText(steps float64) string {
	word := "lightened"
	if steps < 0 {
		word = "darkened"
	}
	switch size := math.Abs(steps); size {
	case 0:
		return ""
	case 1:
		return word + " by 1 value step"
	default:
		return fmt.Sprintf("%s by %g value steps", word, size)
	}
}

// withWhite adds the white, "" for none, to a list of paints.
func withWhite(paints, white string) string {
	if white == "" {
		return paints + ", without white"
	}
	return paints + ", with " + white
}

// namer knows paints' names by their ids.
type namer map[string]string

// namerOf gathers the names that the plan holds.
func namerOf(p *plan.Plan) namer {
	n := namer{}
	for i, name := range p.Box.Names {
		n[p.Box.Paints[i]] = name
	}
	for _, c := range p.Paints {
		n[c.ID] = c.Name
	}
	for _, r := range p.Regions {
		for _, s := range r.Suggestions {
			for i, id := range s.Paints {
				n[id] = s.Names[i]
			}
		}
	}
	return n
}

// of returns a paint's name, or where the plan has none its id with blanks in it.
func (n namer) of(id string) string {
	if name := n[id]; name != "" {
		return name
	}
	return strings.ReplaceAll(id, "-", " ")
}

// all returns the names of paints.
func (n namer) all(ids []string) []string {
	names := make([]string, len(ids))
	for i, id := range ids {
		names[i] = n.of(id)
	}
	return names
}

// listed joins names: "a", "a and b", "a, b and c".
func listed(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	last := len(names) - 1
	return strings.Join(names[:last], ", ") + " and " + names[last]
}
