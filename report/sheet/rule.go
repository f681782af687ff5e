// The rule that every page is measured by.

package sheet

import (
	"fmt"

	"tonewright/grid"
)

// ruleLength is 4 in; 100 mm of it are marked as well.
const ruleLength grid.Millimetres = 4 * 25.4

// printing is said beside every check rule; numbers keep to their units.
const printing = "Print at 100\u00a0%, not “fit to page”. Then lay a ruler on this rule: it must read 100\u00a0mm and 4\u00a0in. If it does not, nothing here is true to size."

// checkRule draws a rule of 100 mm and 4 in from x, with its letters ending at bottom:
// millimetres above the line, inches below.
func checkRule(x, bottom grid.Millimetres) []Mark {
	pen := Pen{Width: 0.2, Gray: ink}
	y := bottom - 5.5
	marks := []Mark{line(pen, x, y, x+ruleLength, y)}
	for i := 0; i <= 100; i += 5 {
		at, long := x+grid.Millimetres(i), grid.Millimetres(1.2)
		if i%10 == 0 {
			long = 2
		}
		if i%50 == 0 {
			long = 3
			marks = append(marks, ruleText(at, y-3.8, i, 100, "mm"))
		}
		marks = append(marks, line(pen, at, y, at, y-long))
	}
	for i := range 17 { // quarters of an inch
		at, long := x+grid.Millimetres(i)*25.4/4, grid.Millimetres(1.2)
		if i%4 == 0 {
			long = 3
			marks = append(marks, ruleText(at, y+3.2+smallSize, i/4, 4, "in"))
		}
		marks = append(marks, line(pen, at, y, at, y+long))
	}
	return marks
}

// ruleText is the number at a place of the rule; the last has its unit.
func ruleText(x, y grid.Millimetres, n, last int, unit string) Text {
	t := Text{At: grid.Point{X: x, Y: y}, Words: fmt.Sprint(n), Size: smallSize, Gray: ink, Align: Centre}
	switch n {
	case 0:
		t.Align = Left
	case last:
		t.Words += " " + unit
		t.Align = Right
	}
	return t
}
