// The table of where contours cross the grid.

package sheet

import (
	"fmt"
	"strings"

	"tonewright/grid"
	"tonewright/report/plan"
)

// row is a line of the table.
type row struct {
	words [5]string // at the tabs
	tail  string    // in place of what comes after the second
	gray  Gray
	bold  bool
}

// The table is set in columns of text, in millimetres.
const (
	rowHeight   grid.Millimetres = 3.6
	columnWidth grid.Millimetres = 58
	columnGap   grid.Millimetres = 8
)

// tab is where a part of a row stands in its column.
type tab struct {
	at    grid.Millimetres
	align Align
}

var tabs = [5]tab{{0, Left}, {14, Left}, {31, Right}, {46, Right}, {47, Left}}

const tailTab grid.Millimetres = 25

// tableHead names the parts.
var tableHead = row{words: [5]string{"crosses", "in cell", "at", "from edge"}, gray: quiet}

// table lists where the main contours cross the grid.
func (b *book) table() ([]draft, error) {
	area := grid.Box{X: margin, Y: margin + head + 2, Width: b.Paper.Width - 2*margin, Height: b.Paper.Height - 2*margin - head - foot - 4}
	across := max(1, int((area.Width+columnGap)/(columnWidth+columnGap)))
	var drafts []draft
	for i, column := range columns(b.blocks(), int(area.Height/rowHeight)) {
		if i%across == 0 {
			drafts = append(drafts, draft{paper: b.Paper, about: "where the main contours cross the grid", next: tableNext})
		}
		d := &drafts[len(drafts)-1]
		x := area.X + grid.Millimetres(i%across)*(columnWidth+columnGap)
		for j, r := range column {
			d.marks = append(d.marks, r.marks(x, area.Y+grid.Millimetres(j+1)*rowHeight)...)
		}
	}
	return drafts, nil
}

// columns puts blocks of rows one under the other into columns of at most fit rows. A
// block that runs over has its heading again.
func columns(blocks [][]row, fit int) [][]row {
	list := [][]row{nil}
	for _, block := range blocks {
		head := block[0]
		for {
			last := &list[len(list)-1]
			left := fit - len(*last)
			if len(block)-1 <= left { // the last row is the space to the next block
				*last = append(*last, block[:min(len(block), left)]...)
				break
			}
			if left >= leastTogether {
				*last = append(*last, block[:left]...)
				block = append([]row{head, tableHead}, block[left:]...)
			}
			list = append(list, nil)
		}
	}
	return list
}

// leastTogether is how few rows of a contour may stand at the foot of a column.
const leastTogether = 5

const tableNext = "Mark every crossing on the panel's grid, in order, then join the marks. “at” is along the cell's side, 0 to 1, from its top or left."

// blocks returns the rows of each main contour.
func (b *book) blocks() [][]row {
	names := map[string]string{}
	for _, r := range b.plan.Regions {
		names[r.Tag] = r.Name
	}
	var blocks [][]row
	for _, c := range b.plan.Drawing.Contours {
		if !c.Main {
			continue
		}
		var beside []string
		for _, tag := range c.Beside {
			beside = append(beside, tag+" "+names[tag])
		}
		block := []row{heading(fmt.Sprintf("%d  %s", c.ID, strings.Join(beside, " | "))), tableHead, spotRow("begins", c.Start)}
		for _, x := range c.Crossings {
			from, way := x.Text, ""
			if at := strings.LastIndexByte(from, ' '); at > 0 {
				from, way = from[:at], from[at+1:]
			}
			block = append(block, row{words: [5]string{x.Line, x.Cell, fmt.Sprintf("%.2f", x.At), from, way}})
		}
		end := "ends"
		if c.Closed {
			end = "closes"
		}
		blocks = append(blocks, append(block, spotRow(end, c.End), row{}))
	}
	if len(blocks) == 0 {
		blocks = [][]row{{heading("The drawing has no main contour.")}}
	}
	return blocks
}

func heading(words string) row {
	return row{words: [5]string{shorten(words, columnWidth, textSize, true)}, bold: true}
}

// spotRow is where a contour begins or ends.
func spotRow(word string, s plan.Spot) row {
	return row{words: [5]string{word, s.Cell}, tail: fmt.Sprintf("%.2f across, %.2f down", s.Right, s.Down), gray: quiet}
}

// marks sets a row at x on a base line.
func (r row) marks(x, base grid.Millimetres) []Mark {
	var marks []Mark
	if r.tail != "" {
		marks = append(marks, Text{At: grid.Point{X: x + tailTab, Y: base}, Words: r.tail, Size: textSize, Gray: r.gray})
	}
	for i, w := range r.words {
		if w != "" {
			marks = append(marks, Text{At: grid.Point{X: x + tabs[i].at, Y: base}, Words: w, Size: textSize, Bold: r.bold, Gray: r.gray, Align: tabs[i].align})
		}
	}
	return marks
}
