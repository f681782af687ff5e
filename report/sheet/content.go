package sheet

import (
	"fmt"

	"tonewright/grid"
	"tonewright/report/plan"
)

// book is everything that pages are composed from.
type book struct {
	Options
	plan  *plan.SheetPlan
	grid  grid.Grid
	shown *shown // the photo to be printed; nil where none is
}

// content draws what a view shows of the picture, with the grid over it.
func (b *book) content(v view) ([]Mark, error) {
	var marks []Mark
	pens := []Pen{{Width: 0.15, Gray: faint}}
	switch b.As {
	case Drawing:
		marks = append(gridLines(b.grid, v, pens...), b.contours(v)...)
	case Values:
		marks = append(b.steps(v), gridLines(b.grid, v, pens...)...)
		marks = append(marks, b.stepNumbers(v)...)
	default:
		image, err := b.shown.part(v)
		if err != nil {
			return nil, err
		}
		pens = []Pen{{Width: 0.4, Gray: 255}, {Width: 0.15, Gray: 40}} // one of them shows on any picture
		marks = append(marks, image)
		marks = append(marks, gridLines(b.grid, v, pens...)...)
	}
	return []Mark{Clip{Box: v.box(), Marks: marks}}, nil
}

// Weights of the drawing's lines, in millimetres: the strongest and the weakest.
const (
	heaviest = 0.55
	lightest = 0.2
)

// contours draws the lines of the drawing, the strong ones heavier, and their numbers
// where there is room.
func (b *book) contours(v view) []Mark {
	var marks []Mark
	lines := b.plan.Drawing.Contours
	for i := len(lines) - 1; i >= 0; i-- { // the strongest over the others
		c := lines[i]
		if !v.sees(c.Points()) {
			continue
		}
		weight := lightest + (heaviest-lightest)*c.Strength
		marks = append(marks, Path{Runs: [][]grid.Point{v.points(c.Points())}, Closed: c.Closed, Pen: Pen{Width: grid.Millimetres(weight), Gray: ink}})
	}
	return append(marks, b.contourNumbers(v)...)
}

// steps fills the steps of value with light grays and draws their borders.
func (b *book) steps(v view) []Mark {
	var marks []Mark
	pen := Pen{Width: 0.2, Gray: quiet}
	for i, s := range b.plan.Values {
		fill := stepGray(i, len(b.plan.Values))
		p := Path{Closed: true, Fill: &fill, Pen: pen}
		for _, ring := range s.Rings {
			if v.sees(ring) {
				p.Runs = append(p.Runs, v.points(ring))
			}
		}
		if len(p.Runs) > 0 {
			marks = append(marks, p)
		}
	}
	return marks
}

// stepGray returns the fill of step i of n, dark to light: a light gray of the same
// order, so that pencil shows on all of them.
func stepGray(i, n int) Gray {
	const darkest, white = 175, 255
	return Gray(darkest + (white-darkest)*i/max(1, n-1))
}

// stepNumbers writes the value into every step that has room for it.
func (b *book) stepNumbers(v view) []Mark {
	var marks []Mark
	for _, s := range b.plan.Values {
		words := fmt.Sprintf("%.0f", s.Value)
		for _, m := range s.Marks {
			size := min(titleSize, v.length(m.Radius)*1.4)
			if size < smallSize*0.75 {
				continue
			}
			at := v.point(m.At)
			marks = append(marks, Text{At: grid.Point{X: at.X, Y: at.Y + size*0.36}, Words: words, Size: size, Gray: ink, Align: Centre})
		}
	}
	return marks
}
