// A part of the panel as it lies on a page.

package sheet

import "tonewright/grid"

// view is a part of the panel as it lies on a page.
type view struct {
	part     grid.Box   // of the panel
	at       grid.Point // of its top left corner, on the page
	scale    float64    // of the page to the panel
	mirrored bool       // left for right
}

// point returns where a place of the panel lies on the page.
func (v view) point(p grid.Point) grid.Point {
	right := p.X - v.part.X
	if v.mirrored {
		right = v.part.X + v.part.Width - p.X
	}
	return grid.Point{X: v.at.X + v.length(right), Y: v.at.Y + v.length(p.Y-v.part.Y)}
}

func (v view) length(m grid.Millimetres) grid.Millimetres { return m * grid.Millimetres(v.scale) }

// points returns where the places of a line lie.
func (v view) points(line []grid.Point) []grid.Point {
	moved := make([]grid.Point, len(line))
	for i, p := range line {
		moved[i] = v.point(p)
	}
	return moved
}

// box returns the part on the page.
func (v view) box() grid.Box {
	return grid.Box{X: v.at.X, Y: v.at.Y, Width: v.length(v.part.Width), Height: v.length(v.part.Height)}
}

// boxOf returns where a rectangle of the panel lies on the page.
func (v view) boxOf(b grid.Box) grid.Box {
	corner := grid.Point{X: b.X, Y: b.Y}
	if v.mirrored {
		corner.X += b.Width
	}
	at := v.point(corner)
	return grid.Box{X: at.X, Y: at.Y, Width: v.length(b.Width), Height: v.length(b.Height)}
}

// sees tells whether a line of the panel comes into the part.
func (v view) sees(line []grid.Point) bool {
	if len(line) == 0 {
		return false
	}
	low, high := line[0], line[0]
	for _, p := range line {
		low, high = grid.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}, grid.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	return low.X < v.part.X+v.part.Width && high.X > v.part.X && low.Y < v.part.Y+v.part.Height && high.Y > v.part.Y
}
