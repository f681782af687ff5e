package plan

import (
	"fmt"
	"image"

	"tonewright/analyze"
	"tonewright/analyze/colour"
)

// middlePart is the part of a cell's side that its middle is: a third. Ours: large
// enough that grain and brush marks even out, small enough to stay on one thing.
const middlePart = 1.0 / 3

// Cell returns the colour in the middle of a cell of the photo's grid, "C3": as
// photographed, and as the plan would aim at it. The colour is the median of each of
// L*, a*, b*, so that a bright speck or a line across it does not pull it.
// A UsageError is a mistake in opt or in the cell; any other error is the photo's.
func Cell(opt Options, cell string) (seen, aim colour.Lab, err error) {
	opt = opt.withDefaults()
	photo, layout, crop, err := open(opt)
	if err != nil {
		return seen, aim, err
	}
	cells, err := layout.Cells(cell)
	if err == nil && len(cells) != 1 {
		err = fmt.Errorf("%q names %d cells; name one, such as C3", cell, len(cells))
	}
	if err != nil {
		return seen, aim, Misused(err)
	}
	reach := aside(func() [2]float64 { return reachOf(opt.Box.Paints, opt.Mixing.Finish) })
	picture, err := photo.Picture(crop, 0, opt.Ground.Lab)
	if err != nil {
		return seen, aim, err
	}
	dark, light := lightness(picture)
	seen = middleOf(picture, pixels(layout, cells[0], picture.Width, picture.Height))
	return seen, keyValues(dark, light, reach(), opt.Literal).aim(seen), nil
}

// middleOf returns the median colour of the middle of a part of a picture, which has
// at least a pixel: a cell that is finer than that takes the pixel at its corner.
func middleOf(p *analyze.Picture, r image.Rectangle) colour.Lab {
	inset := func(n int) int { return int(float64(n) * (1 - middlePart) / 2) } // rounded down: some of it stays
	r = image.Rect(r.Min.X+inset(r.Dx()), r.Min.Y+inset(r.Dy()), r.Max.X-inset(r.Dx()), r.Max.Y-inset(r.Dy()))
	r.Min = image.Pt(min(r.Min.X, p.Width-1), min(r.Min.Y, p.Height-1))
	r.Max = image.Pt(max(r.Max.X, r.Min.X+1), max(r.Max.Y, r.Min.Y+1))
	return p.Median(r)
}
