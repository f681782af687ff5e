// What a page shows of the picture: drawing, photo, gray or values.

package sheet

import (
	"fmt"
	"math"

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

// content draws what a view shows of the picture, with the grid over it, each cell parted
// into finer × finer.
func (b *book) content(v view, finer int) ([]Mark, error) {
	var marks []Mark
	switch b.As {
	case Drawing:
		marks = append(b.lines(v, finer, 255), b.contours(v)...)
	case Values:
		marks = append(append(b.steps(v), b.lines(v, finer, 255)...), b.stepNumbers(v)...)
	default:
		image, err := b.shown.part(v)
		if err != nil {
			return nil, err
		}
		marks = append([]Mark{image}, b.lines(v, finer, 0)...)
	}
	return []Mark{Clip{Box: v.box(), Marks: marks}}, nil
}

// lightSide goes under dark lines that may run over a dark photo.
var lightSide = Pen{Width: 0.45, Gray: 255}

// lines draws the grid and, lighter, what parts its cells. Over a photo, under which
// the paper is not seen, each line is dark with light sides, so that it shows on anything.
func (b *book) lines(v view, finer int, under Gray) []Mark {
	fine, whole := Pen{Width: 0.1, Gray: 190}, Pen{Width: 0.15, Gray: faint}
	if under == 255 {
		return append(finerLines(b.grid, v, finer, fine), gridLines(b.grid, v, whole)...)
	}
	fine, whole = Pen{Width: 0.1, Gray: faint}, Pen{Width: 0.15, Gray: 40}
	marks := finerLines(b.grid, v, finer, fine)
	return append(marks, gridLines(b.grid, v, lightSide, whole)...)
}

// Weights of the drawing's lines, in millimetres: the strongest and the weakest.
const (
	heaviest = 0.55
	lightest = 0.2
)

// strayMost is how far a contour is drawn from the straight between its places, as a share
// of the panel's long side: about the quarter of a millimetre on a 12-inch panel by which
// those places were let stand for what was found.
const strayMost = 1. / 1000

// contours draws the lines of the drawing, the strong ones heavier, and their numbers
// where there is room.
func (b *book) contours(v view) []Mark {
	var marks []Mark
	lines := b.plan.Drawing.Contours
	most := v.length(max(b.grid.Width, b.grid.Height)) * strayMost
	for i := len(lines) - 1; i >= 0; i-- { // the strongest over the others
		c := lines[i]
		if !v.sees(c.Points()) {
			continue
		}
		weight := lightest + (heaviest-lightest)*math.Sqrt(c.Strength) // evenly: most are weak by far
		marks = append(marks, Path{Runs: [][]grid.Point{curved(v.points(c.Points()), c.Closed, most)}, Closed: c.Closed, Pen: Pen{Width: grid.Millimetres(weight), Gray: ink}})
	}
	return append(marks, b.contourNumbers(v)...)
}

// steps fills the steps of value with light grays and draws their borders.
func (b *book) steps(v view) []Mark {
	var marks []Mark
	pen := Pen{Width: 0.2, Gray: quiet}
	for i, s := range b.plan.Values.Steps {
		fill := stepGray(i, len(b.plan.Values.Steps))
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
	const darkest, white = 196, 255
	return Gray(darkest + (white-darkest)*i/max(1, n-1))
}

// stepNumbers writes the value into every step that has room for it.
func (b *book) stepNumbers(v view) []Mark {
	var marks []Mark
	for _, m := range b.plan.Values.Marks(v.part) {
		size := min(titleSize, v.length(m.Radius)*1.4)
		if size < smallSize*0.75 {
			continue
		}
		at := v.point(m.At)
		marks = append(marks, Text{At: grid.Point{X: at.X, Y: at.Y + size*0.36}, Words: fmt.Sprintf("%.0f", b.plan.Values.Steps[m.Step].Value), Size: size, Gray: ink, Align: Centre})
	}
	return marks
}
