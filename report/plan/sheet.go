// What transfer sheets show: the drawing, the values and the picture on the panel,
// without any mixing.

package plan

import (
	"fmt"
	"image"
	"slices"

	"tonewright/analyze"
	"tonewright/grid"
)

// SheetWish says what sheets are to show.
type SheetWish struct {
	Drawing bool // the contours
	Steps   int  // the outlines of so many values, 5 or 9; 0: none
	// Size returns how many pixels the picture's longer side should have, given the grid;
	// 0 where it is not shown. It is asked before the photo is decoded, and its error,
	// which ends the job, is a mistake in what was asked for.
	Size func(grid.Grid) (int, error)
}

// SheetPlan is what transfer sheets show, on the panel.
type SheetPlan struct {
	Name     string
	Panel    Panel
	Grid     Grid
	Regions  []SheetRegion // of the drawing
	Drawing  Drawing
	Values   SheetValues
	Picture  *analyze.Picture // as large as was asked for and the photo allows; nil: none was
	Warnings []string         // of the photo, and of a drawing with too many lines
}

// SheetRegion is a region's tag and name.
type SheetRegion struct{ Tag, Name string }

// SheetValues is the picture in steps of value, on the panel.
type SheetValues struct {
	Steps []ValueStep // dark to light

	of   []uint8 // each pixel's step
	size image.Point
	grid grid.Grid
}

// ValueStep is where a step of value lies on the panel.
type ValueStep struct {
	Value float64 // Munsell
	Rings [][]grid.Point
}

// ValueMark is a place with room for a step's number: a disc that is all of that step.
type ValueMark struct {
	Step   int // index of SheetValues.Steps
	At     grid.Point
	Radius grid.Millimetres
}

// Sheets opens the photo, lays the grid on it and gives what the wish asks for: photo →
// picture → regions → drawing, and picture → values.
// A UsageError is a mistake in opt or wish; any other error is the photo's or a mask's.
// The same options on the same file give the same plan, on any number of cores.
func Sheets(opt Options, wish SheetWish) (*SheetPlan, error) {
	opt = opt.withDefaults()
	opt.Step("reading the photo")
	photo, layout, crop, err := open(opt)
	if err != nil {
		return nil, err
	}
	named, err := areas(opt, photo, layout, crop)
	if err != nil {
		return nil, err
	}
	size, err := wish.Size(layout)
	if err != nil {
		return nil, Misused(err)
	}
	p := &SheetPlan{Name: opt.Name, Panel: panelOf(opt, layout, photo, crop), Grid: gridOf(layout, crop, opt.Cell.Unit)}
	if size > 0 {
		if p.Picture, err = photo.Picture(crop, size, opt.Ground.Lab); err != nil {
			return nil, err
		}
	}
	if wish.Drawing || wish.Steps > 0 {
		picture, err := photo.Picture(crop, 0, opt.Ground.Lab)
		if err != nil {
			return nil, err
		}
		p.trace(picture, named, opt, wish)
	}
	p.Warnings = slices.Compact(photo.Warnings) // a picture read twice warns twice
	if p.Drawing.Note != "" {
		p.Warnings = append(p.Warnings, p.Drawing.Note)
	}
	return p, nil
}

// trace fills in what is traced from the picture at working size.
func (p *SheetPlan) trace(picture *analyze.Picture, named []analyze.Area, opt Options, wish SheetWish) {
	layout := p.Grid.layout
	if wish.Steps > 0 {
		opt.Step("finding values")
		tones := tonesOf(picture, reachOf(opt.Box.Paints, opt.Mixing.Finish), opt.Literal)
		p.Values = valuesOn(tones.steps(wish.Steps), picture, layout)
	}
	if wish.Drawing {
		opt.Step("drawing")
		parting := analyze.Regions(picture, named)
		for i, r := range parting.Regions {
			p.Regions = append(p.Regions, SheetRegion{tagOf(i), r.Name})
		}
		p.Drawing = drawingOf(picture, parting, layout, opt.Detail)
	}
}

// steps returns the picture in 5 or 9 steps of value.
func (t tones) steps(n int) analyze.ValueMap {
	switch n {
	case len(t.five.Steps):
		return t.five
	case len(t.nine.Steps):
		return t.nine
	}
	panic(fmt.Sprintf("plan: %d value steps, want 5 or 9", n))
}

// traceSlack is how far a traced border may stray, as a part of the picture's longer side:
// enough to lose the fraying of a step's edge; on a panel of 12 in it is half a millimetre,
// a pencil's line. Of a small photo it is leastSlack, in pixels, which loses their stairs.
// Ours: of 1 to 2.5 pixels at the working size the one that looked drawn and lost no
// highlight on the demo, the fig and the tulips.
const (
	traceSlack = 1.75 / analyze.DefaultLongSide
	leastSlack = 1.25
)

// valuesOn traces the steps of a picture's values on the panel.
func valuesOn(v analyze.ValueMap, picture *analyze.Picture, g grid.Grid) SheetValues {
	s := SheetValues{Steps: make([]ValueStep, len(v.Steps)), of: v.Of, size: image.Pt(picture.Width, picture.Height), grid: g}
	slack := max(leastSlack, traceSlack*float64(max(s.size.X, s.size.Y)))
	for i, rings := range analyze.Outlines(analyze.Parting{Of: v.Of, Regions: make([]analyze.Region, len(v.Steps))}, s.size.X, s.size.Y, slack) {
		s.Steps[i].Value = v.Steps[i]
		for _, ring := range rings {
			s.Steps[i].Rings = append(s.Steps[i].Rings, onPanel(ring, g, s.size))
		}
	}
	return s
}

// Marks returns where numbers have room in a part of the panel seen by itself, so that
// what is cut in two by its edge has a number on either side.
func (s SheetValues) Marks(part grid.Box) []ValueMark {
	perPixel := s.grid.Width / grid.Millimetres(s.size.X)
	corners := onPicture([]grid.Point{{X: part.X, Y: part.Y}, {X: part.X + part.Width, Y: part.Y + part.Height}}, s.grid, s.size)
	r := image.Rect(int(corners[0].X+0.5), int(corners[0].Y+0.5), int(corners[1].X+0.5), int(corners[1].Y+0.5)).Intersect(image.Rectangle{Max: s.size})
	var of []uint8
	for y := r.Min.Y; y < r.Max.Y; y++ {
		of = append(of, s.of[y*s.size.X+r.Min.X:y*s.size.X+r.Max.X]...)
	}
	var list []ValueMark
	for _, m := range analyze.Marks(&analyze.Picture{Width: r.Dx(), Height: r.Dy()}, of) {
		at := onPanel([]analyze.Place{{X: float64(r.Min.X+m.X) + 0.5, Y: float64(r.Min.Y+m.Y) + 0.5}}, s.grid, s.size)[0]
		list = append(list, ValueMark{m.Step, at, perPixel * grid.Millimetres(m.Radius)})
	}
	return list
}
