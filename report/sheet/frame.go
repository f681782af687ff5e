// The parts of every page: head, foot and room between.

package sheet

import (
	"fmt"

	"tonewright/grid"
)

// The parts of every page, in millimetres. Ours: 10 mm is within what common printers
// reach on all sides; the band is for names of cells beside the picture.
const (
	margin grid.Millimetres = 10
	head   grid.Millimetres = 8
	foot   grid.Millimetres = 19
	band   grid.Millimetres = 5
)

// Sizes of letters, in millimetres: 10, 7.5 and 6.5 points.
const (
	titleSize grid.Millimetres = 10 * 25.4 / 72
	textSize  grid.Millimetres = 7.5 * 25.4 / 72
	smallSize grid.Millimetres = 6.5 * 25.4 / 72
)

// The grays of the pages: ink for what is measured and drawn, two quieter ones, and one
// that is hardly there.
const (
	ink   Gray = 0
	quiet Gray = 85
	faint Gray = 150
	tint  Gray = 238
)

// room returns the part of a paper that pictures may take, names of cells around it left out.
func room(p grid.Paper) grid.Box {
	return grid.Box{X: margin + band, Y: margin + head + band, Width: p.Width - 2*(margin+band), Height: p.Height - 2*(margin+band) - head - foot}
}

// keyWidth is the room for the key map at the foot, at the right.
const keyWidth grid.Millimetres = 28

// framed returns a page with all that every page has: title and what is on it at the top,
// at the bottom the check rule, what to do with the page and how to print it. number
// counts from 1.
func framed(d draft, title string, number, of int) Page {
	p := d.paper
	page := Page{Width: p.Width, Height: p.Height, Kind: d.kind, About: d.about}
	base := margin + titleSize
	right := p.Width - margin
	count := fmt.Sprintf("page %d of %d", number, of)
	page.add(Text{At: grid.Point{X: right, Y: base}, Words: count, Size: textSize, Gray: quiet, Align: Right})
	left := right - widthOf(count, textSize, false) - 4 - margin
	title = shorten(title, left-widthOf(d.about, textSize, false)-3, titleSize, true)
	page.add(Text{At: grid.Point{X: margin, Y: base}, Words: title, Size: titleSize, Bold: true, Gray: ink})
	page.add(Text{At: grid.Point{X: margin + widthOf(title, titleSize, true) + 3, Y: base}, Words: d.about, Size: textSize, Gray: quiet})
	page.add(line(Pen{Width: 0.15, Gray: faint}, margin, base+1.8, right, base+1.8))
	page.add(checkRule(margin, p.Height-margin)...)
	words := grid.Box{X: margin + ruleLength + 6, Y: p.Height - margin - foot + 3}
	words.Width = min(90, right-words.X-keyWidth-3)
	words.Y = page.paragraph(d.next, words, ink) + 0.8
	page.paragraph(printing, words, quiet)
	return page
}

// add puts marks on the page, over what is there.
func (p *Page) add(marks ...Mark) { p.Marks = append(p.Marks, marks...) }

// paragraph sets small words into the width of a box, from its top, and returns where
// they end.
func (p *Page) paragraph(words string, b grid.Box, gray Gray) grid.Millimetres {
	y := b.Y + smallSize
	for _, l := range wrap(words, b.Width, smallSize, false) {
		p.add(Text{At: grid.Point{X: b.X, Y: y}, Words: l, Size: smallSize, Gray: gray})
		y += smallSize * 1.25
	}
	return y - smallSize
}
