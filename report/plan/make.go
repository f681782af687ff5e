package plan

import (
	"cmp"
	"fmt"
	"image"
	"path/filepath"
	"strings"
	"sync"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/grid"
	"tonewright/match"
	"tonewright/match/paint"
)

// longSide is the panel's long side when none is given, and cellSide the grid's
// cell: the usual small panel and the usual grid (common practice, no source).
const (
	longSide = 12 * 25.4
	cellSide = 25.4
)

// Make makes the whole plan: photo → picture → regions → colours → recipes → plan.
// A UsageError is a mistake in opt; any other error is the photo's or a mask's.
// The same options on the same file give the same plan, on any number of cores.
func Make(opt Options) (*Plan, error) {
	opt = opt.withDefaults()
	opt.Step("reading the photo")
	photo, layout, crop, err := open(opt)
	if err != nil {
		return nil, err
	}
	named, err := areas(opt, photo, layout, crop) // before the photo is decoded: a slip in them is said at once
	if err != nil {
		return nil, err
	}
	if err := checkWishes(opt); err != nil {
		return nil, Misused(err)
	}
	if err := checkWork(opt); err != nil {
		return nil, Misused(err)
	}
	reach := aside(func() [2]float64 { return reachOf(opt.Box.Paints, opt.Mixing.Finish) })
	picture, err := photo.Picture(crop, 0, opt.Ground.Lab)
	if err != nil {
		return nil, err
	}

	opt.Step("finding regions and values")
	tones := aside(func() tones { return tonesOf(picture, reach(), opt.Literal) })
	parting := analyze.Regions(picture, named)
	lies := aside(func() *analyze.Composition { return analyze.Composed(parting, picture.Width, picture.Height) })
	drawing := aside(func() Drawing { return drawingOf(picture, parting, layout, opt.Detail) })
	clustering := clustersOf(picture, parting, opt)
	of := colourOf(parting, clustering)
	places := aside(func() places { return placesOf(picture, layout, parting, clustering, of) })

	opt.Step("mixing")
	light := tones()
	m := newMixer(opt, clustering, light.key, lies().Ring)
	m.values = sync.OnceValue(func() [][]tone { return m.tonesIn(clustersBy(everywhere(parting), picture, parting, opt)) })
	few := m.keepFew(opt.Tubes)
	mixes := m.all()

	opt.Step("painting the study")
	study, coat := studyOf(picture, of, mixes, clustering.Clusters, m)
	seen := aside(func() seen { return seenOf(picture, study, of, opt.Sight) })

	place := places()
	p := &Plan{Tool: "tonewright", Version: opt.Version, Name: opt.Name, ValueKey: light.key, Sight: opt.Sight.String(), Tubes: few}
	p.Photo = Photo{clean(filepath.Base(opt.Photo)), photo.Width, photo.Height, photo.Profile, photo.Orientation}
	p.Panel = panelOf(opt, layout, photo, crop)
	p.Grid = gridOf(layout, crop, opt.Cell.Unit)
	p.Mixing = Mixing{opt.Mixing.Finish.String(), opt.Mixing.Coat, opt.Mixing.Holds}
	p.Box = boxOf(opt.Box)
	p.Regions = regionsOf(parting, clustering, place, m, mixes, opt.Ground.Name)
	p.Paints = paintsOf(p.Regions, opt.Box.Paints)
	p.StandOut = standOutOf(newScene(m, lies(), mixes), p.Regions)
	p.StandOut.LostEdges = lostEdgesOf(study, parting, layout, p.Regions)
	p.Harmony = harmonyOf(p.Regions, p.Paints, lies().Touch)
	p.LookAlikes = lookAlikesOf(p.Regions, lies().Touch, opt.Box.Paints, opt.Sight)

	opt.Step("laying out coats and days")
	behind := behindOf(parting, len(named) > 0, picture.Width, picture.Height)
	p.Layers = layersOf(layersFrom{p.Regions, behind, lies().Touch, m.box, opt})
	p.Days = daysOf(p.Layers, p.Regions, opt.Work)
	p.Days.onto(p.Layers.Coats)
	p.Amounts = amountsOf(p.Regions, p.Layers, &p.Days, layout, opt.Box, opt)
	heed(p, opt.Box.Paints)
	p.Drawing = drawing()
	p.Warnings = warningsOf(p, photo.Warnings, mixes)
	p.Pictures = Pictures{
		Photo: picture, Parting: parting, ColourOf: of, Colours: swatches(p.Regions, mixes),
		Values5: light.five, Values9: light.nine, Regions: place.regionMarks, Mixes: place.colourMarks,
		Study: study, OneCoat: coat,
	}
	s := seen()
	p.Pictures.PhotoSeen, p.Pictures.StudySeen, p.Pictures.Missed = s.photo, s.study, s.missed
	p.Pictures.LostBorders = s.borders
	return p, nil
}

// aside does f beside what follows and returns how to wait for its result.
func aside[T any](f func() T) (wait func() T) {
	var result T
	done := make(chan struct{})
	go func() { result = f(); close(done) }()
	return func() T { <-done; return result }
}

// clean makes a name fit to be printed: no control characters, no marks that turn the
// direction of writing, no broken UTF-8, nothing blank at its ends.
func clean(name string) string {
	return strings.TrimSpace(strings.Map(func(r rune) rune {
		if hidden(r) {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(name, "\ufffd")))
}

func (o Options) withDefaults() Options {
	if o.Name = clean(o.Name); o.Name == "" {
		base := filepath.Base(o.Photo)
		o.Name = base[:len(base)-len(filepath.Ext(base))]
	}
	if len(o.Box.Paints) == 0 {
		o.Box = paint.StarterBox()
	}
	if o.Ground.Name == "" {
		o.Ground = grounds[0]
	}
	if o.Mixing.Coat == 0 {
		o.Mixing.Coat = 1
	}
	if !o.Ground.white() && o.Mixing.Ground == nil {
		r := o.Ground.Lab.Reflectance()
		o.Mixing.Ground = &r
	}
	o.Name, o.Box.Name = cmp.Or(clean(o.Name), "painting"), clean(o.Box.Name)
	if o.Step == nil {
		o.Step = func(string) {}
	}
	return o
}

// open opens the photo and lays the panel's grid on it; crop is the part of the
// upright photo that goes onto the panel.
func open(opt Options) (photo *analyze.Photo, layout grid.Grid, crop image.Rectangle, err error) {
	photo, err = analyze.Open(opt.Photo, analyze.Limits{Megapixels: opt.Megapixels})
	if err != nil {
		return nil, layout, crop, err
	}
	layout, err = layOut(opt, photo.Width, photo.Height)
	if err != nil {
		return nil, layout, crop, Misused(KeyError{"cell", err})
	}
	return photo, layout, opt.Crop.Rect(photo.Width, photo.Height, float64(layout.Width/layout.Height)), nil
}

// layOut returns the grid on the panel asked for, or on one of the photo's own
// proportion.
func layOut(opt Options, width, height int) (grid.Grid, error) {
	cell := opt.Cell
	if cell.Length == 0 {
		cell = Length{cellSide, grid.Inch}
	}
	size := opt.Panel
	if size.Width == 0 {
		size = Size{longSide, longSide, cell.Unit}
		if p := opt.Crop.Proportion(width, height); p > 1 {
			size.Height = grid.Millimetres(longSide / p)
		} else {
			size.Width = grid.Millimetres(longSide * p)
		}
	}
	if opt.Cell.Length == 0 { // a panel narrower than an inch still gets a grid
		cell.Length = min(cell.Length, size.Width, size.Height)
	}
	return grid.New(size.Width, size.Height, cell.Length, size.Unit)
}

// colourOf numbers every pixel's colour over all regions, in their order.
func colourOf(parting analyze.Parting, c analyze.Clustering) []uint16 {
	first := make([]uint16, len(c.Clusters))
	for i := 1; i < len(first); i++ {
		first[i] = first[i-1] + uint16(len(c.Clusters[i-1]))
	}
	of := make([]uint16, len(parting.Of))
	for i, r := range parting.Of {
		of[i] = first[r] + uint16(c.Of[i])
	}
	return of
}

// regionsOf writes the regions with their colours and recipes.
func regionsOf(parting analyze.Parting, c analyze.Clustering, place places, m *mixer, mixes []mixed, ground string) []Region {
	panel := float64(len(parting.Of))
	regions := make([]Region, len(parting.Regions))
	n := 0
	pile := map[string]string{} // parts of a mix → the first colour they are for
	for i, r := range parting.Regions {
		w, x := m.wishes[i], mixes[i]
		regions[i] = Region{
			Tag: tagOf(i), Name: r.Name, Role: w.role(),
			Cells: names(place.regionCells[i]), where: grid.Spans(place.regionCells[i]),
			Share: Round(float64(r.Pixels)/panel, 4), Colours: []Colour{},
			Palette: x.palette, Shift: w.Shift, Scheme: w.Wish.words(), Suggestions: suggestionsOf(x.suggestions),
		}
		for j, cluster := range c.Clusters[i] {
			col := colourEntry(colourTag(i, j), cluster, x.aims[j], x.recipes[j], x.paints, ground)
			col.Share = Round(float64(cluster.Pixels)/float64(r.Pixels), 4)
			col.PanelShare = Round(float64(cluster.Pixels)/panel, 6) // areas are made from it
			col.Cells, col.where = names(place.colourCells[n]), grid.Spans(place.colourCells[n])
			parts := fmt.Sprint(col.Recipe.Parts)
			if col.SameAs = pile[parts]; col.SameAs == "" {
				pile[parts] = col.ID
			}
			regions[i].Colours = append(regions[i].Colours, col)
			n++
		}
	}
	return regions
}

// tagOf returns a region's letter, and colourTag the tag of one of its colours.
func tagOf(region int) string             { return grid.ColumnName(region) }
func colourTag(region, colour int) string { return fmt.Sprint(tagOf(region), colour+1) }

// swatches lists every colour's tag with how its mix would look, in order.
func swatches(regions []Region, mixes []mixed) (list []Swatch) {
	for i, r := range regions {
		for j, c := range r.Colours {
			list = append(list, Swatch{c.ID, mixes[i].recipes[j][0].Lab})
		}
	}
	return list
}

func colourEntry(id string, cluster analyze.Cluster, aim colour.Lab, recipes []match.Recipe, paints []paint.Paint, ground string) Colour {
	photo, wanted := cluster.Lab.Munsell(), aim.Munsell()
	best := RecipeOf(recipes[0], paints, ground)
	c := Colour{
		ID: id, Accent: cluster.Accent,
		Lab: TripleOf(cluster.Lab), AimLab: TripleOf(aim),
		Munsell: photo.String(), Name: photo.Name(), SRGB: cluster.Lab.Hex(),
		AimMunsell: wanted.String(), AimName: wanted.Name(), AimSRGB: aim.Hex(), AimValue: Round(wanted.Value, 1),
		Recipe: &best, Alternatives: []Recipe{},
	}
	for _, r := range recipes[1:] {
		c.Alternatives = append(c.Alternatives, RecipeOf(r, paints, ground))
	}
	return c
}
