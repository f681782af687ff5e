// Spectra in a plain table: by comma, semicolon or tab, a sample a row or a column.

package tube

import (
	"errors"
	"fmt"
	"strings"
)

// delimiters in the order they are tried: a comma may be a decimal one, so it is last.
var delimiters = []rune{'\t', ';', ','}

// readTable returns the samples of a table. Errors begin as after "file:", with the
// line and a colon, or with a blank where no one line is at fault.
func readTable(lines []string) ([]raw, error) {
	most := 0
	var disordered error // what would be headings, were they in order
	for _, delimiter := range delimiters {
		rows := make([][]string, len(lines))
		for i, line := range lines {
			rows[i] = cut(line, delimiter)
		}
		for i, row := range rows {
			h, wrong := headingsOf(row)
			if wrong != "" && disordered == nil {
				disordered = fmt.Errorf("%d: %s; export each wavelength once, in order", i+1, wrong)
			}
			if most = max(most, len(h.at)); len(h.at) >= fewest {
				return sampleRows(rows, i)
			}
		}
		from, count := wavelengthRun(rows)
		if most = max(most, count); count >= fewest {
			return sampleColumns(rows, from, count)
		}
		if disordered == nil {
			disordered = columnInDisorder(rows)
		}
	}
	if disordered != nil {
		return nil, disordered
	}
	if most > 1 {
		return nil, fmt.Errorf(" has %d wavelengths in a row; %d or more are needed, over 400 to 700 nm in steps of at most 20", most, fewest)
	}
	return nil, errors.New(" has no row or column of wavelengths; export the spectra with 400 to 700 nm as headings, a sample a row")
}

// cut splits a line into cells, trimmed; a delimiter within double quotes splits
// nothing, and two double quotes there are one.
func cut(line string, delimiter rune) (cells []string) {
	if !strings.Contains(line, `"`) {
		cells = strings.Split(line, string(delimiter))
		for i := range cells {
			cells[i] = strings.TrimSpace(cells[i])
		}
		return cells
	}
	var cell strings.Builder
	quoted, last := false, rune(0)
	for _, r := range line {
		switch {
		case r == '"' && !quoted && last == '"' && cell.Len() > 0:
			cell.WriteByte('"')
			quoted = true
		case r == '"':
			quoted = !quoted
		case r == delimiter && !quoted:
			cells = append(cells, strings.TrimSpace(cell.String()))
			cell.Reset()
		default:
			cell.WriteRune(r)
		}
		last = r
	}
	return append(cells, strings.TrimSpace(cell.String()))
}

// width returns the number of cells up to the last that holds something.
func width(row []string) int {
	n := len(row)
	for n > 0 && row[n-1] == "" {
		n--
	}
	return n
}

// tooWide is the error of a row that goes on past its headings.
func tooWide(row []string, headings int) error {
	return fmt.Errorf("%d columns under %d headings; are the decimals commas? export with semicolons between the columns", width(row), headings)
}
