// The rows of a region's table: each colour, its recipe and what else there is to it.

package report

import (
	"fmt"
	"html/template"
	"strings"

	"tonewright/report/plan"
)

type colourRow struct {
	ID, Name, Munsell, Value, MixValue string
	Aim, Mix, AimInk, MixInk           string // #rrggbb
	Accent                             bool
	Share, Where                       string
	Recipe                             recipe
	SameAs                             string
	Alternatives                       []recipe
	Lamps, MoreLabel                   string
	Care                               []string // short cautions
	Thumb                              template.HTMLAttr
}

type recipe struct {
	Parts       []part
	Gives, Note string
	Notes       []string // of the ground and the lamps
}

type part struct{ Count, Paint string }

// colourOf words one colour and its mixes. Value, name and hue are those of the
// aim: the colour the pile should have.
func colourOf(c plan.Colour, thumb template.HTMLAttr, care []string) colourRow {
	row := colourRow{
		ID: c.ID, Name: c.AimName, Munsell: c.AimMunsell, Value: fmt.Sprintf("%.1f", c.AimValue),
		MixValue: fmt.Sprintf("%.1f", c.AimValue+c.Recipe.ValueShift),
		Aim:      c.AimSRGB, Mix: c.Recipe.SRGB, AimInk: ink(c.AimLab), MixInk: ink(c.Recipe.Lab),
		Accent: c.Accent, Share: fmt.Sprintf("%s of the region, %s of the panel", percent(c.Share), percent(c.PanelShare)), Where: capital(cellWords(c.Where(), len(c.Cells))),
		Recipe: recipeOf(*c.Recipe), SameAs: c.SameAs, Alternatives: []recipe{}, Thumb: thumb, Care: care,
	}
	for _, r := range c.Alternatives {
		row.Alternatives = append(row.Alternatives, recipeOf(r))
	}
	row.MoreLabel = "Under lamps"
	if n := len(row.Alternatives); n > 0 {
		row.MoreLabel = count(n, "other mix") + ", and lamps"
	}
	row.Lamps = lampText(c.Recipe.Lamps)
	return row
}

// recipeOf lists whole parts first and then what is added last, each in the box's order.
func recipeOf(r plan.Recipe) recipe {
	out := recipe{Gives: gives(r), Note: r.Note, Parts: []part{}, Notes: notesOf(r, "ΔE")}
	var last []part
	for _, p := range r.Parts {
		if p.Measure != "" {
			last = append(last, smallPart(p))
		} else {
			out.Parts = append(out.Parts, part{fmt.Sprintf("%.0f", p.Parts), p.Name})
		}
	}
	out.Parts = append(out.Parts, last...)
	return out
}

// lampText says what each lamp does to a mix.
func lampText(lamps []plan.LampShift) string {
	var texts []string
	for _, l := range lamps {
		texts = append(texts, fmt.Sprintf("under a %s %s (ΔE %.1f)", l.Name, l.Words, l.DeltaE))
	}
	return "Against daylight: " + strings.Join(texts, "; ") + "."
}

// gives says what a mix comes to.
func gives(r plan.Recipe) string {
	return fmt.Sprintf("Gives %s, %s; ΔE %.1f.", r.Name, r.Munsell, r.DeltaE)
}

// ink returns black or white, whichever reads on the colour: at L* 49.5 both have a
// contrast of 4.6. Source: [WCAG22] 1.4.3.
func ink(c plan.Triple) string {
	if c[0] > 49.5 {
		return "#000000"
	}
	return "#ffffff"
}

// smallPart words touches and specks so that "touch" stands where parts have their
// number; several have their number there.
func smallPart(p plan.Part) part {
	if p.Count == 1 {
		return part{p.Measure, p.Name}
	}
	number, word, _ := strings.Cut(smallWord(p), " ")
	return part{number, word + " of " + p.Name}
}
