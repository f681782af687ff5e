// Package sheet lays a painter's transfer sheets out: the drawing, the photo or its
// values, carried from photo to panel on paper that is true to the millimetre. A page is
// a list of marks, which are written as PDF or as SVG alike.
package sheet

import "tonewright/grid"

// Book is pages under a title.
type Book struct {
	Title, Program string // the program is the one that made it
	Pages          []Page
}

// Page is one side of paper, all lengths from its top left corner.
type Page struct {
	Width, Height grid.Millimetres
	Kind          Kind
	About         string // what is on it, as its head says
	Marks         []Mark // the ones further on lie over those before
}

// Mark is something on a page: a Path, a Text, an Image or a Clip.
type Mark interface{ on(canvas) }

// canvas is what a page is written on.
type canvas interface {
	path(Path)
	text(Text)
	image(Image)
	clip(Clip)
}

// Path is lines, or areas with a border. With a Fill, what lies inside an odd number of
// its runs is filled.
type Path struct {
	Runs   [][]grid.Point
	Closed bool // every run returns to where it begins
	Pen    Pen
	Fill   *Gray // nil: none
}

// Gray is a lightness in sRGB: 0 is black, 255 is white paper.
type Gray uint8

// Pen is how a line is drawn; of width 0 it draws nothing.
type Pen struct {
	Width grid.Millimetres
	Gray  Gray
	Dash  grid.Millimetres // length of dashes and gaps; 0: drawn through
}

// Text is one line of words, At the start, the middle or the end of its base line.
type Text struct {
	At    grid.Point
	Words string
	Size  grid.Millimetres // of the letters, from line to line when set solid
	Bold  bool
	Gray  Gray
	Align Align
}

// Align says which part of a text lies at its place.
type Align int

// The parts of a text that can lie at its place.
const (
	Left Align = iota
	Centre
	Right
)

// Image is a picture, stretched over a box.
type Image struct {
	Box  grid.Box
	JPEG []byte
}

// Clip is marks of which only what lies in the box is seen.
type Clip struct {
	Box   grid.Box
	Marks []Mark
}

func (p Path) on(c canvas)  { c.path(p) }
func (t Text) on(c canvas)  { c.text(t) }
func (i Image) on(c canvas) { c.image(i) }
func (k Clip) on(c canvas)  { c.clip(k) }

// line is a straight line.
func line(pen Pen, x0, y0, x1, y1 grid.Millimetres) Path {
	return Path{Runs: [][]grid.Point{{{X: x0, Y: y0}, {X: x1, Y: y1}}}, Pen: pen}
}

// frame is a rectangle with a border and, unless it is nil, a fill.
func frame(pen Pen, b grid.Box, fill *Gray) Path {
	return Path{Runs: [][]grid.Point{{{X: b.X, Y: b.Y}, {X: b.X + b.Width, Y: b.Y}, {X: b.X + b.Width, Y: b.Y + b.Height}, {X: b.X, Y: b.Y + b.Height}}},
		Closed: true, Pen: pen, Fill: fill}
}
