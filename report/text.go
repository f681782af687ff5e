// Answers as text, for a terminal of 80 columns.

package report

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// columns is the width of the text; a word longer than it is broken.
const columns = 80

// text gathers lines to be written in one go.
type text struct{ b strings.Builder }

// say adds a line, broken at spaces; what follows its first line is indented by so
// many blanks.
func (t *text) say(indent int, format string, args ...any) {
	t.b.WriteString(wrap(fmt.Sprintf(format, args...), columns, indent))
	t.b.WriteByte('\n')
}

// labelWidth is the room that a label of item takes.
const labelWidth = 6

// item adds a text with a label before it, and its further lines below its first.
func (t *text) item(label, format string, args ...any) {
	rest := strings.Repeat(" ", labelWidth)
	words := wrap(fmt.Sprintf(format, args...), columns-labelWidth, 0)
	t.line("%-*s%s", labelWidth, label, strings.ReplaceAll(words, "\n", "\n"+rest))
}

// line adds a line as it stands.
func (t *text) line(format string, args ...any) { fmt.Fprintf(&t.b, format+"\n", args...) }

// gap adds an empty line.
func (t *text) gap() { t.b.WriteByte('\n') }

// table adds rows in columns two blanks apart, indented by two. A cell is set to
// the right where the name of its column, in the first row, begins with a blank.
func (t *text) table(rows [][]string) {
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], utf8.RuneCountInString(strings.TrimSpace(cell)))
		}
	}
	for _, row := range rows {
		line := ""
		for i, cell := range row {
			cell = strings.TrimSpace(cell)
			space := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell))
			if strings.HasPrefix(rows[0][i], " ") {
				line += "  " + space + cell
			} else {
				line += "  " + cell + space
			}
		}
		t.b.WriteString(strings.TrimRight(line, " "))
		t.b.WriteByte('\n')
	}
}

// to writes all that was gathered.
func (t *text) to(w io.Writer) error {
	_, err := io.WriteString(w, t.b.String())
	return err
}

// wrap breaks a text at spaces into lines of at most width characters where it can;
// blanks at its start are kept, lines after the first are indented.
func wrap(s string, width, indent int) string {
	start := s[:len(s)-len(strings.TrimLeft(s, " "))]
	var lines []string
	line, empty := start, true
	for _, word := range words(s, width-indent) {
		if !empty && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > width {
			lines = append(lines, line)
			line, empty = strings.Repeat(" ", indent), true
		}
		if !empty {
			line += " "
		}
		line, empty = line+word, false
	}
	return strings.Join(append(lines, line), "\n")
}

// words returns the words of a text, those over a width cut into pieces.
func words(s string, width int) (all []string) {
	for _, word := range strings.Fields(s) {
		for r := []rune(word); len(r) > width; r = []rune(word) {
			all, word = append(all, string(r[:width])), string(r[width:])
		}
		all = append(all, word)
	}
	return all
}

// shorten cuts a text to n characters.
func shorten(s string, n int) string {
	if r := []rune(s); len(r) > n {
		return string(r[:n-1]) + "…"
	}
	return s
}
