// Spectra in a plain table: by comma, semicolon or tab, a sample a row or a column.

package tube

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// delimiters in the order they are tried: a comma may be a decimal one, so it is last.
var delimiters = []rune{'\t', ';', ','}

// readTable returns the samples of a table. Errors begin as after "file:", with the
// line and a colon, or with a blank where no one line is at fault.
func readTable(lines []string) ([]raw, error) {
	most := 0
	for _, delimiter := range delimiters {
		rows := make([][]string, len(lines))
		for i, line := range lines {
			rows[i] = cut(line, delimiter)
		}
		for i, row := range rows {
			columns, _ := wavelengthColumns(row)
			if most = max(most, len(columns)); len(columns) >= fewest {
				return sampleRows(rows, i)
			}
		}
		from, count := wavelengthRun(rows)
		if most = max(most, count); count >= fewest {
			return sampleColumns(rows, from, count)
		}
	}
	if most > 1 {
		return nil, fmt.Errorf(" has %d wavelengths in a row; %d or more are needed, over 400 to 700 nm in steps of at most 20", most, fewest)
	}
	return nil, fmt.Errorf(" has no row or column of wavelengths; export the spectra with 400 to 700 nm as headings, a sample a row")
}

// cut splits a line into cells, trimmed; a delimiter within double quotes splits
// nothing, and two double quotes there are one.
func cut(line string, delimiter rune) (cells []string) {
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

// wavelengthColumns returns the columns whose headings are wavelengths, and those in
// nm; none unless they run up or down all the way, as figures that only look like
// wavelengths do not.
func wavelengthColumns(headings []string) (columns []int, nm []float64) {
	for i, heading := range headings {
		if n, ok := wavelengthOf(heading); ok {
			columns, nm = append(columns, i), append(nm, n)
		}
	}
	if !monotone(nm) {
		return nil, nil
	}
	return columns, nm
}

// monotone tells whether numbers run only up or only down.
func monotone(v []float64) bool {
	for i := 2; i < len(v); i++ {
		if (v[1] > v[0]) != (v[i] > v[i-1]) || v[i] == v[i-1] {
			return false
		}
	}
	return len(v) < 2 || v[0] != v[1]
}

// sampleRows reads a sample a row below the headings; a further row of headings
// begins another table.
func sampleRows(rows [][]string, at int) (found []raw, err error) {
	headings := rows[at]
	for i := at + 1; i < len(rows); i++ {
		if columns, _ := wavelengthColumns(rows[i]); len(columns) >= fewest {
			headings = rows[i]
			continue
		}
		if blank(headings, rows[i]) {
			continue
		}
		r, err := rowOf(headings, rows[i], i+1)
		if err != nil {
			return nil, fmt.Errorf("%d: %w", i+1, err)
		}
		if r.name == "" {
			r.name = fmt.Sprintf("sample %d", len(found)+1)
		}
		found = append(found, r)
	}
	return found, nil
}

// blank tells whether a row has nothing under any wavelength.
func blank(headings, row []string) bool {
	columns, _ := wavelengthColumns(headings)
	return !slices.ContainsFunc(columns, func(c int) bool { return c < len(row) && row[c] != "" })
}

// rowOf reads one sample from a row under headings.
func rowOf(headings, row []string, line int) (raw, error) {
	columns, nm := wavelengthColumns(headings)
	s := raw{name: nameOf(headings, row), line: line}
	for i, c := range columns {
		if c >= len(row) || row[c] == "" {
			return raw{}, fmt.Errorf("column %d (%s) is empty; measure the sample again or take the row out", c+1, headings[c])
		}
		r, ok := numberOf(row[c])
		if !ok {
			return raw{}, fmt.Errorf("column %d (%s) is %q, where a number is wanted", c+1, headings[c], row[c])
		}
		s.nm, s.r = append(s.nm, nm[i]), append(s.r, r)
		s.percent = s.percent || strings.Contains(headings[c]+row[c], "%")
	}
	s.upwards()
	return s, nil
}

// upwards turns a sample that runs down.
func (s *raw) upwards() {
	if len(s.nm) > 1 && s.nm[0] > s.nm[1] {
		slices.Reverse(s.nm)
		slices.Reverse(s.r)
	}
}

// nameOf returns the sample's name: under a heading that says name, else sample or id,
// else under the first that is no wavelength.
func nameOf(headings, row []string) string {
	best, rank := "", math.MaxInt
	for i, heading := range headings {
		if _, ok := wavelengthOf(heading); ok || i >= len(row) || row[i] == "" {
			continue
		}
		h := strings.ToLower(heading)
		r := 3
		switch {
		case strings.Contains(h, "name"):
			r = 0
		case strings.Contains(h, "sample"):
			r = 1
		case strings.HasSuffix(h, "id"):
			r = 2
		}
		if r < rank {
			best, rank = row[i], r
		}
	}
	return best
}

// wavelengthRun returns the longest run of rows whose first cells are wavelengths, in
// one direction, with a figure beside each.
func wavelengthRun(rows [][]string) (from, count int) {
	var nm []float64
	for i, row := range rows {
		n, ok := wavelengthOf(row[0])
		if !ok || len(row) < 2 {
			nm = nil
			continue
		}
		if nm = append(nm, n); !monotone(nm) {
			nm = []float64{n}
		}
		if len(nm) > count {
			from, count = i+1-len(nm), len(nm)
		}
	}
	return from, count
}

// sampleColumns reads a sample a column beside a run of wavelengths.
func sampleColumns(rows [][]string, from, count int) ([]raw, error) {
	for i := from + count; i < len(rows); i++ {
		if _, more := wavelengthOf(rows[i][0]); more && len(rows[i]) > 1 {
			return nil, fmt.Errorf("%d: the first column should go on from %s, but the wavelengths break off; put each sample in one unbroken column", from+count+1, rows[from+count-1][0])
		}
	}
	var headings []string
	if from > 0 {
		headings = rows[from-1]
	}
	var found []raw
	for c := 1; c < len(rows[from]); c++ {
		name := ""
		if c < len(headings) {
			name = headings[c]
		}
		if name == "" && empty(rows[from:from+count], c) {
			continue // the delimiter at the end of each line
		}
		if name == "" {
			name = fmt.Sprintf("sample %d", c)
		}
		s, err := columnOf(rows, from, count, c, name)
		if err != nil {
			return nil, err
		}
		found = append(found, s)
	}
	return found, nil
}

// columnOf reads one sample from a column beside the wavelengths.
func columnOf(rows [][]string, from, count, column int, name string) (raw, error) {
	s := raw{name: name, line: from + 1, percent: strings.Contains(name, "%")}
	for i, row := range rows[from : from+count] {
		if column >= len(row) || row[column] == "" {
			return raw{}, fmt.Errorf("%d: column %d (%s) is empty; measure the sample again or take the column out", from+i+1, column+1, name)
		}
		r, ok := numberOf(row[column])
		if !ok {
			return raw{}, fmt.Errorf("%d: column %d (%s) is %q, where a number is wanted", from+i+1, column+1, name, row[column])
		}
		nm, _ := wavelengthOf(row[0])
		s.nm, s.r = append(s.nm, nm), append(s.r, r)
		s.percent = s.percent || strings.Contains(row[column], "%")
	}
	s.upwards()
	return s, nil
}

func empty(rows [][]string, column int) bool {
	return !slices.ContainsFunc(rows, func(row []string) bool { return column < len(row) && row[column] != "" })
}
