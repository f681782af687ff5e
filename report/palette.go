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
	Paints, Values, Chroma, Dulls, Why, Line string
	Ties                                     []string // regions' tags
}

func paletteOf(r plan.Region, name namer, roles bool) palette {
	pal := palette{Note: r.Palette.Note, Wish: r.Scheme, Proposed: []proposal{}}
	if roles {
		pal.Role = capital(r.Role)
	}
	if roles || !wholeBox(r.Palette) || r.Palette.Aim == "value" || r.Shift != 0 {
		pal.Text = capital(paletteText(r, name))
	}
	for _, s := range r.Suggestions {
		pal.Proposed = append(pal.Proposed, proposalOf(s, name))
	}
	return pal
}

// wholeBox tells whether a region has no palette of its own.
func wholeBox(p plan.Palette) bool { return p.From == "box" || p.From == "" }

// paletteText says what the region is mixed from, what its mixes go after, and by how
// much it was shifted.
func paletteText(r plan.Region, name namer) string {
	text := fromText(r.Palette, name) + ", " + aimText(r.Palette.Aim) + "."
	if !wholeBox(r.Palette) {
		text += fmt.Sprintf(" It reaches values %.1f to %.1f.", r.Palette.ValueMin, r.Palette.ValueMax)
	}
	if s := shiftText(r.Shift); s != "" {
		text += " " + capital(s) + "."
	}
	return text
}

func fromText(p plan.Palette, name namer) string {
	if wholeBox(p) {
		return "mixed from the whole box"
	}
	text := "mixed from " + withWhite(listed(name.all(p.Paints)), name.of(p.White))
	switch {
	case p.From == "proposed":
		text += ", the first palette proposed"
	case p.Family != "" && p.Family != "mixed" && len(p.Paints) > 1:
		return text + " (" + p.Family + ")"
	}
	return text
}

// aimText says what the mixes of a region go after.
func aimText(aim string) string {
	if aim == "value" {
		return "after the photo's values only, in the palette's own hues"
	}
	return "after the photo's colours"
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

func proposalOf(s plan.Suggestion, name namer) proposal {
	return proposal{
		Paints: withWhite(listed(s.Names), name.of(s.White)),
		Values: fmt.Sprintf("%.1f to %.1f: %s of the region", s.ValueMin, s.ValueMax, percent(s.Covered)),
		Chroma: fmt.Sprintf("%.0f", s.Chroma), Dulls: fmt.Sprintf("%.1f", s.Dulls),
		Ties: append([]string{}, s.TieIns...), Why: s.Why, Line: s.Line,
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
