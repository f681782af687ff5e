package plan

import (
	"fmt"
	"image"
	"strings"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/grid"
	"tonewright/match/paint"
)

func panelOf(opt Options, g grid.Grid, photo *analyze.Photo, crop image.Rectangle) Panel {
	return Panel{
		WidthMM: Round(float64(g.Width), 2), HeightMM: Round(float64(g.Height), 2), Size: g.Unit.Size(g.Width, g.Height),
		Ground: opt.Ground.Name, Pencil: opt.Ground.Pencil(),
		Crop:   Crop{crop.Min.X, crop.Min.Y, crop.Dx(), crop.Dy()},
		CutOff: grid.CutOff(crop, photo.Width, photo.Height),
	}
}

func gridOf(g grid.Grid, crop image.Rectangle, unit grid.Unit) Grid {
	if unit == "" {
		unit = grid.Inch
	}
	scale := float64(g.Width) / float64(crop.Dx())
	e := Grid{
		CellMM: Round(float64(g.Cell), 3), Columns: g.Columns, Rows: g.Rows,
		Scale: Round(scale, 5), Cell: unit.Format(g.Cell),
		PixelsACell: Round(float64(g.Cell)/scale, 1), layout: g,
	}
	if part := g.PartColumn(); part > 0 {
		e.PartColumn = unit.Format(part)
	}
	if part := g.PartRow(); part > 0 {
		e.PartRow = unit.Format(part)
	}
	return e
}

func boxOf(b paint.Box) Box {
	e := Box{Name: b.Name}
	for _, p := range b.Paints {
		e.Paints, e.Names = append(e.Paints, p.ID), append(e.Names, p.Name)
	}
	return e
}

// paintsOf lists the paints the first recipes use, in the box's order, with the
// tags they are used in.
func paintsOf(regions []Region, box []paint.Paint) []Paint {
	used := map[string][]string{}
	for _, r := range regions {
		for _, c := range r.Colours {
			for _, part := range c.Recipe.Parts {
				used[part.Paint] = append(used[part.Paint], c.ID)
			}
		}
	}
	paints := []Paint{}
	for _, p := range box {
		tags := used[p.ID]
		if len(tags) == 0 {
			continue
		}
		paints = append(paints, Paint{
			ID: p.ID, Name: p.Name, CI: p.CI, Opacity: p.Opacity, Drying: p.Facts.Drying,
			Light: p.Facts.Lightfastness, Basis: p.Basis, Used: tags, Plain: p.White() || p.Black(),
		})
	}
	return paints
}

// Kinds of warnings.
const (
	AboutPhoto   = "photo"
	AboutCrop    = "crop"
	AboutBox     = "box"
	AboutRegion  = "region"
	AboutPalette = "palette" // values that a region's palette lacks, or a wish that no paint fits
	OutOfReach   = "reach"   // a colour that no mix of the box comes near
	AboutGround  = "ground"  // mixes that let it show through
	AboutLight   = "light"   // mixes that change under lamps
	AboutBasis   = "basis"
)

// narrow is the least range of Munsell values a box should reach. Ours: with less no
// picture keeps its lights and darks apart.
const narrow = 4

// warningsOf says what the painter should know before trusting the plan: of the
// photo, then of colours that are missed, then of the predictions.
func warningsOf(p *Plan, photo []string, mixes []mixed) []Warning {
	warnings := []Warning{}
	for _, text := range photo {
		warnings = append(warnings, Warning{AboutPhoto, text, p.Photo.File})
	}
	if p.Panel.CutOff != "nothing" {
		warnings = append(warnings, Warning{AboutCrop, "Cut off, and not on the panel: " + p.Panel.CutOff + ".", p.Photo.File})
	}
	if lo, hi := colour.ValueOf(p.ValueKey.PaintMin), colour.ValueOf(p.ValueKey.PaintMax); hi-lo < narrow {
		text := fmt.Sprintf("This box reaches only from value %.1f to %.1f; add a %s.", lo, hi, lacks(lo))
		warnings = append(warnings, Warning{AboutBox, text, p.Box.Name})
	}
	for _, r := range p.Regions {
		if len(r.Colours) == 0 {
			text := fmt.Sprintf("Region %s, %s, has nothing to paint: regions named after it cover it, or it is smaller than a pixel.", r.Tag, r.Name)
			warnings = append(warnings, Warning{AboutRegion, text, r.Tag})
		}
	}
	warnings = append(warnings, short(p.Regions, mixes)...)
	warnings = append(warnings, misses(p.Regions)...)
	warnings = append(warnings, thin(p)...)
	warnings = append(warnings, unlit(p)...)
	return append(warnings, Warning{AboutBasis, basisText(p.Paints), "every recipe"})
}

// lacks says what would widen a narrow box.
func lacks(darkest float64) string {
	if darkest > 5 {
		return "dark paint"
	}
	return "white"
}

// short tells of palettes that lack values, and of wishes that no palette fits.
func short(regions []Region, mixes []mixed) (out []Warning) {
	for i, r := range regions {
		for _, text := range []string{mixes[i].lacks, r.Palette.Note} {
			if text != "" {
				out = append(out, Warning{AboutPalette, fmt.Sprintf("Region %s, %s: %s", r.Tag, r.Name, text), r.Tag})
			}
		}
	}
	return out
}

func misses(regions []Region) []Warning {
	var out []Warning
	for _, r := range regions {
		for _, c := range r.Colours {
			if c.Missed() {
				text := fmt.Sprintf("%s is missed by %.1f CIEDE2000. %s", c.ID, c.Recipe.DeltaE, c.Recipe.Note)
				out = append(out, Warning{OutOfReach, text, c.ID})
			}
		}
	}
	return out
}

// thin tells of the mixes that one coat does not carry over the ground.
func thin(p *Plan) []Warning {
	tags := tagsOf(p.Regions, func(r *Recipe) bool { return r.Cover != nil && r.Cover.Coats != 1 })
	if len(tags) == 0 {
		return nil
	}
	text := fmt.Sprintf("The %s ground shows through one coat of %s; each row says by how much, how many coats hide it, and a mix that carries where one is near.", p.Panel.Ground, strings.Join(tags, ", "))
	return []Warning{{AboutGround, text, strings.Join(tags, ", ")}}
}

// unlit tells of the mixes that change under some lamp.
func unlit(p *Plan) []Warning {
	tags := tagsOf(p.Regions, func(r *Recipe) bool { return !r.Holds })
	if len(tags) == 0 {
		return nil
	}
	text := fmt.Sprintf("Away from daylight %s will not look as planned; each row says under which lamp.", strings.Join(tags, ", "))
	if !p.Mixing.Holds {
		text += " Plan with --holds to prefer mixes that hold."
	}
	return []Warning{{AboutLight, text, strings.Join(tags, ", ")}}
}

// tagsOf lists the colours whose recipe is so.
func tagsOf(regions []Region, is func(*Recipe) bool) (tags []string) {
	for _, r := range regions {
		for _, c := range r.Colours {
			if is(c.Recipe) {
				tags = append(tags, c.ID)
			}
		}
	}
	return tags
}

// basisText says where the predicted colours come from and that tubes differ.
func basisText(paints []Paint) string {
	count := map[string]int{}
	for _, p := range paints {
		count[p.Basis]++
	}
	text := "Mixes are predicted from typical tubes"
	if count[paint.Own] > 0 {
		text += " and from your own"
	}
	sep := ": "
	for _, basis := range paint.Bases() {
		if n := count[basis]; n > 0 {
			text += fmt.Sprintf("%s%d %s", sep, n, basis)
			sep = ", "
		}
	}
	return text + ". Tubes of one name differ between makers by several CIEDE2000: mix a little first and look, then trust the parts."
}
