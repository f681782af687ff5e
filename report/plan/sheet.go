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
	Values   []ValueStep      // dark to light
	Picture  *analyze.Picture // as large as was asked for and the photo allows; nil: none was
	Warnings []string         // of the photo
}

// SheetRegion is a region's tag and name.
type SheetRegion struct{ Tag, Name string }

// ValueStep is where a step of value lies on the panel.
type ValueStep struct {
	Value float64 // Munsell
	Rings [][]grid.Point
	Marks []ValueMark // where its number has room
}

// ValueMark is a place with room for a number: a disc on the panel that is all of one step.
type ValueMark struct {
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
	return p, nil
}

// trace fills in what is traced from the picture at working size.
func (p *SheetPlan) trace(picture *analyze.Picture, named []analyze.Area, opt Options, wish SheetWish) {
	layout := p.Grid.layout
	if wish.Steps > 0 {
		opt.Step("finding values")
		tones := tonesOf(picture, reachOf(opt.Box.Paints, opt.Mixing.Finish), opt.Literal)
		p.Values = valueSteps(tones.steps(wish.Steps), picture, layout)
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

// valueSteps traces the steps of a picture's values on the panel.
func valueSteps(v analyze.ValueMap, picture *analyze.Picture, g grid.Grid) []ValueStep {
	size := image.Pt(picture.Width, picture.Height)
	perPixel := g.Width / grid.Millimetres(size.X)
	steps := make([]ValueStep, len(v.Steps))
	slack := max(leastSlack, traceSlack*float64(max(size.X, size.Y)))
	for i, rings := range analyze.Outlines(analyze.Parting{Of: v.Of, Regions: make([]analyze.Region, len(v.Steps))}, size.X, size.Y, slack) {
		steps[i].Value = v.Steps[i]
		for _, ring := range rings {
			steps[i].Rings = append(steps[i].Rings, onPanel(ring, g, size))
		}
	}
	for _, m := range v.Marks {
		at := onPanel([]analyze.Place{{X: float64(m.X) + 0.5, Y: float64(m.Y) + 0.5}}, g, size)[0]
		steps[m.Step].Marks = append(steps[m.Step].Marks, ValueMark{at, perPixel * grid.Millimetres(m.Radius)})
	}
	return steps
}
