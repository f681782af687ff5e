package report

import (
	"fmt"
	"html/template"
	"strings"

	"tonewright/grid"
	"tonewright/report/plan"
)

// page is what the template prints: text already worded, slices never nil.
type page struct {
	Name, Version, Lead, GridText, Unused, BasisKey, Foot string
	CSS                                                   template.CSS
	Facts                                                 []fact
	Questions                                             []question
	Warnings                                              []string
	Groups                                                []viewGroup
	Sheet                                                 sheet
	StandOut                                              standOut
	Harmony                                               harmony
	Sight                                                 sightSection
	FewTubes                                              fewTubes
	Regions                                               []region
	SettingOut                                            settingOut
	Layers                                                layers
	Days                                                  days
	Amounts                                               amounts
	Care                                                  careSection
	CareShort                                             []string
	Paints                                                []paintRow
	ThumbWidth, ThumbHeight                               int // as shown, CSS pixels
}

type fact struct{ Label, Text string }

type region struct {
	Tag, Name, Share, Where string
	Coats                   string // "A.1 block-in, A.2 glaze"; "" for none
	Short                   bool   // few enough colours to keep on one printed page
	Palette                 palette
	Thumb                   template.HTMLAttr
	Colours                 []colourRow
}

type paintRow struct {
	Name, CI, Opacity, Drying, Light, Basis string
	Used                                    []string
}

func newPage(p *plan.Plan, a *art) page {
	groups, name, roles, care := viewGroups(p, a), namerOf(p), anyRole(p), carer(p.Cautions)
	pg := page{
		Name: p.Name, Version: p.Version, CSS: template.CSS(pageCSS + viewCSS(groups) + printCSS),
		Lead: lead(p), GridText: gridText(p), Unused: unused(p, name), BasisKey: basisKey, Foot: foot,
		Facts: facts(p, name), Questions: questions(p), Warnings: warnings(p),
		Groups: groups, Sheet: newSheet(p, a),
		StandOut: standOutOf(p), Harmony: newHarmony(p), Sight: sightOf(p), FewTubes: fewTubesOf(p),
		SettingOut: settingOutOf(p), Layers: layersOf(p, care), Days: daysOf(p, care), Amounts: amountsOf(p),
		Care: careOf(p.Cautions), CareShort: care.short(),
		ThumbWidth: a.thumbW * 2 / 3, ThumbHeight: a.thumbH * 2 / 3,
	}
	n := 0
	for i, r := range p.Regions {
		row := region{Tag: r.Tag, Name: r.Name, Share: percent(r.Share), Where: allCells(r), Coats: coatsOf(p, r.Tag), Short: len(r.Colours) <= 6, Palette: paletteOf(r, name, roles), Thumb: a.image("src", a.regions[i]), Colours: []colourRow{}}
		for _, c := range r.Colours {
			row.Colours = append(row.Colours, colourOf(c, a.image("src", a.colours[n]), care.colour(c.ID)))
			n++
		}
		pg.Regions = append(pg.Regions, row)
	}
	for _, c := range p.Paints {
		pg.Paints = append(pg.Paints, paintRow{c.Name, strings.Join(c.CI, " + "), c.Opacity, c.Drying, c.Light, c.Basis, c.Used})
	}
	return pg
}

func lead(p *plan.Plan) string {
	colours := 0
	for _, r := range p.Regions {
		colours += len(r.Colours)
	}
	return fmt.Sprintf("%s on %s ground; %s and %s, mixed from %s.",
		p.Panel.Size, article(p.Panel.Ground), count(len(p.Regions), "region"), count(colours, "colour"), count(len(p.Paints), "tube"))
}

func facts(p *plan.Plan, name namer) []fact {
	return []fact{
		{"Photo", fmt.Sprintf("%s, %d × %d pixels upright; colour: %s.", p.Photo.File, p.Photo.Width, p.Photo.Height, p.Photo.Profile)},
		{"Crop", fmt.Sprintf("%d × %d pixels from %d, %d; %s is cut off.", p.Panel.Crop.Width, p.Panel.Crop.Height, p.Panel.Crop.X, p.Panel.Crop.Y, p.Panel.CutOff)},
		{"Panel", fmt.Sprintf("%s, %s ground; a %s pencil shows on it.", p.Panel.Size, p.Panel.Ground, p.Panel.Pencil)},
		{"Grid", gridFact(p)},
		{"Values", p.ValueKey.Text},
		{"Mixes", mixingText(p)},
		{"Box", fmt.Sprintf("%s, %s: %s.", p.Box.Name, count(len(p.Box.Paints), "paint"), strings.Join(name.all(p.Box.Paints), ", "))},
	}
}

// mixingText says how the recipes were chosen.
func mixingText(p *plan.Plan) string {
	text := "For a " + p.Mixing.Finish + " surface."
	if p.Mixing.Coat != 1 {
		text += fmt.Sprintf(" One coat here is %g times an ordinary brushed one.", p.Mixing.Coat)
	}
	if p.Mixing.Holds {
		text += " Of mixes about as near, those that hold their colour under lamps are preferred."
	}
	return text
}

func gridFact(p *plan.Plan) string {
	g := p.Grid
	text := fmt.Sprintf("Cells of %s, %s (A–%s) and %s (1–%d). A photo pixel is %.3f mm on the panel, a cell is %.1f pixels of the photo.",
		g.Cell, count(g.Columns, "column"), grid.ColumnName(g.Columns-1), count(g.Rows, "row"), g.Rows, g.Scale, g.PixelsACell)
	if g.PartColumn != "" {
		text += fmt.Sprintf(" Column %s is only %s wide.", grid.ColumnName(g.Columns-1), g.PartColumn)
	}
	if g.PartRow != "" {
		text += fmt.Sprintf(" Row %d is only %s high.", g.Rows, g.PartRow)
	}
	return text
}

func gridText(p *plan.Plan) string {
	return fmt.Sprintf("Rule the panel into cells of %s with a %s pencil and letter them as here. To work from a print of this crop, rule it into the same %d columns and %d rows.",
		p.Grid.Cell, p.Panel.Pencil, p.Grid.Columns, p.Grid.Rows)
}

// warnings lists the plan's warnings, the colours that are missed in one sentence:
// each of them says what is missing in its own row.
func warnings(p *plan.Plan) []string {
	list, missed := []string{}, []string{}
	for _, w := range p.Warnings {
		if w.Kind == plan.OutOfReach {
			missed = append(missed, w.Where)
		}
	}
	for _, w := range p.Warnings {
		switch {
		case w.Kind != plan.OutOfReach:
			list = append(list, w.Text)
		case len(missed) == 1:
			list = append(list, w.Text)
		case w.Where == missed[0]:
			list = append(list, fmt.Sprintf("%d colours are missed by more than %d CIEDE2000; each row says how: %s.", len(missed), plan.OffAim, strings.Join(missed, ", ")))
		}
	}
	if n := len(p.Layers.Broken); n > 0 {
		list = append(list, fmt.Sprintf("The coats break %s of the trade: “Layers” says which, and what mends %s.", count(n, "rule"), either(n == 1, "it", "each")))
	}
	return list
}

func unused(p *plan.Plan, name namer) string {
	used := map[string]bool{}
	for _, c := range p.Paints {
		used[c.ID] = true
	}
	var idle []string
	for _, id := range p.Box.Paints {
		if !used[id] {
			idle = append(idle, name.of(id))
		}
	}
	if len(idle) == 0 {
		return "Every paint of the box is used."
	}
	return "Not needed for this picture: " + strings.Join(idle, ", ") + "."
}

const basisKey = "Prediction: “own tube” was fitted to your own measurements or swatches; “fitted” follows measurements published for one paint of this pigment; “scaled” moves such a paint to this variety by judgement; “typical” is set from general knowledge of the pigment; “blend” is a mixture of other paints in the library. Drying and lightfastness are common practice or from memory, where no source is named in the library; your tube's label knows better."

const foot = "Colours are predicted for daylight (D65) and the 2° observer, by two-constant Kubelka-Munk mixing with a surface correction; a screen shows them only roughly. Go by the numbers and by a test swatch."

// allCells names every cell of a region.
func allCells(r plan.Region) string {
	switch len(r.Cells) {
	case 0:
		return ""
	case 1:
		return "cell " + r.Where()
	}
	return "cells " + r.Where()
}

// cellWords words a list of cells, kept to a line or two; n is how many there are.
func cellWords(where string, n int) string {
	const most = 5
	if where == "" {
		return ""
	}
	if n == 1 {
		return "cell " + where
	}
	pieces := strings.Split(where, ", ")
	if len(pieces) <= most+1 {
		return "cells " + where
	}
	return fmt.Sprintf("cells %s and %d more places", strings.Join(pieces[:most], ", "), len(pieces)-most)
}

func percent(share float64) string {
	switch p := share * 100; {
	case p < 0.1:
		return "under 0.1 %"
	case p < 10:
		return fmt.Sprintf("%.1f %%", p)
	default:
		return fmt.Sprintf("%.0f %%", p)
	}
}

func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	if strings.HasSuffix(noun, "x") || strings.HasSuffix(noun, "ch") {
		return fmt.Sprintf("%d %ses", n, noun)
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// article puts "a" or "an" before a word.
func article(word string) string {
	return either(word != "" && strings.Contains("aeiou", word[:1]), "an ", "a ") + word
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
