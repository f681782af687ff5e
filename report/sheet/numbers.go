// Where the numbers of contours and values stand.

package sheet

import (
	"fmt"

	"tonewright/grid"
)

// Ours: a contour shorter than this on the page has no room for its number.
const leastNumbered grid.Millimetres = 12

// contourNumbers writes the contours' numbers onto them, the strongest first, where no
// other number is near.
func (b *book) contourNumbers(v view) []Mark {
	var marks []Mark
	var taken []grid.Box
	inside := v.box()
	for _, c := range b.plan.Drawing.Contours {
		if !v.sees(c.Points()) {
			continue
		}
		words := fmt.Sprint(c.ID)
		w, h := widthOf(words, smallSize, false)+0.8, smallSize*0.9
		for _, at := range stops(v.points(c.Points()), inside) {
			label := grid.Box{X: at.X - w/2, Y: at.Y - h/2, Width: w, Height: h}
			if !within(label, inside) || meets(label, taken) {
				continue
			}
			taken = append(taken, label)
			white := Gray(255)
			marks = append(marks, frame(Pen{}, label, &white),
				Text{At: grid.Point{X: at.X, Y: at.Y + smallSize*0.36}, Words: words, Size: smallSize, Gray: ink, Align: Centre})
			break
		}
	}
	return marks
}

// stops returns where along a line its number may go: the middle of the longest piece of
// it in the box first, then its quarters; none where that piece is short.
func stops(line []grid.Point, in grid.Box) []grid.Point {
	var best, now []grid.Point
	var longest, length grid.Millimetres
	for i, p := range line {
		if p.X < in.X || p.Y < in.Y || p.X > in.X+in.Width || p.Y > in.Y+in.Height {
			now, length = nil, 0
			continue
		}
		if len(now) > 0 {
			length += line[i-1].To(p)
		}
		if now = append(now, p); length > longest {
			best, longest = now, length
		}
	}
	if longest < leastNumbered {
		return nil
	}
	var at []grid.Point
	for _, part := range []grid.Millimetres{0.5, 0.3, 0.7, 0.15, 0.85} {
		at = append(at, along(best, part*longest))
	}
	return at
}

// along returns the place that lies so far along a line.
func along(line []grid.Point, far grid.Millimetres) grid.Point {
	for i := 1; i < len(line); i++ {
		step := line[i-1].To(line[i])
		if far <= step && step > 0 {
			t := far / step
			return grid.Point{X: line[i-1].X + t*(line[i].X-line[i-1].X), Y: line[i-1].Y + t*(line[i].Y-line[i-1].Y)}
		}
		far -= step
	}
	return line[len(line)-1]
}

func within(b, in grid.Box) bool {
	return b.X >= in.X && b.Y >= in.Y && b.X+b.Width <= in.X+in.Width && b.Y+b.Height <= in.Y+in.Height
}

// meets tells whether a box comes nearer to one of others than a letter's width.
func meets(b grid.Box, others []grid.Box) bool {
	for _, o := range others {
		if b.X < o.X+o.Width+1 && o.X < b.X+b.Width+1 && b.Y < o.Y+o.Height+1 && o.Y < b.Y+b.Height+1 {
			return true
		}
	}
	return false
}
