// A sample a column, beside a column of wavelengths.

package tube

import (
	"fmt"
	"slices"
	"strings"
)

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

// columnInDisorder says what is out of order where the first column has enough
// wavelengths, but no run of them; nil otherwise.
func columnInDisorder(rows [][]string) error {
	var nm []float64
	line := 0
	for i, row := range rows {
		if n, ok := wavelengthOf(row[0]); ok && len(row) > 1 {
			if nm = append(nm, n); len(nm) == 1 {
				line = i + 1
			}
		}
	}
	if wrong := disorder(nm); len(nm) >= fewest && wrong != "" {
		return fmt.Errorf("%d: in the column that begins here, %s; export each wavelength once, in order", line, wrong)
	}
	return nil
}

// sampleColumns reads a sample a column beside a run of wavelengths.
func sampleColumns(rows [][]string, from, count int) ([]raw, error) {
	if err := goesOn(rows, from, count); err != nil {
		return nil, err
	}
	headings, err := columnHeadings(rows, from)
	if err != nil {
		return nil, err
	}
	wide := 0
	for i, row := range rows[from : from+count] {
		wide = max(wide, width(row))
		if len(headings) > 1 && wide > len(headings) {
			return nil, fmt.Errorf("%d: %w", from+i+1, tooWide(row, len(headings)))
		}
	}
	var found []raw
	for c := 1; c < wide; c++ {
		name := ""
		if c < len(headings) {
			name = plainName(headings[c])
		}
		if name == "" && empty(rows[from:from+count], c) {
			continue // a delimiter too many on each line
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

// goesOn refuses wavelengths after a run of them.
func goesOn(rows [][]string, from, count int) error {
	end := from + count
	for i := end; i < len(rows); i++ {
		if _, more := wavelengthOf(rows[i][0]); !more || len(rows[i]) < 2 {
			continue
		}
		if i == end {
			return outOfOrder(rows[end-2:end+1], end+1)
		}
		return fmt.Errorf("%d: the first column should go on from %s, but the wavelengths break off; put each sample in one unbroken column", end+1, rows[end-1][0])
	}
	if end < len(rows) && len(rows[end]) > 1 && noWavelength(rows[end][0], rows[from][0]) {
		return notOne(rows[end][0], end+1)
	}
	return nil
}

// columnHeadings returns the row above a run of wavelengths and above those in its
// first column that are too short or too long to be read; nil if there is none.
func columnHeadings(rows [][]string, from int) ([]string, error) {
	for i := from - 1; i >= 0; i-- {
		first := rows[i][0]
		if len(rows[i]) < 2 {
			return rows[i], nil
		}
		if _, ok := wavelengthOf(first); ok {
			return nil, outOfOrder(rows[i:from+2], from+1)
		}
		if noWavelength(first, rows[from][0]) {
			return nil, notOne(first, i+1)
		}
		if _, outside := figureLike(first, rows[from][0]); !outside {
			return rows[i], nil
		}
	}
	return nil, nil
}

func notOne(first string, line int) error {
	return fmt.Errorf("%d: the first column holds %q, which is no wavelength; export the spectra at 400 to 700 nm", line, first)
}

// outOfOrder says what is wrong with the wavelengths that some rows begin with.
func outOfOrder(rows [][]string, line int) error {
	var nm []float64
	for _, row := range rows {
		if n, ok := wavelengthOf(row[0]); ok {
			nm = append(nm, n)
		}
	}
	return fmt.Errorf("%d: %s; export each wavelength once, in order", line, disorder(nm))
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
			return raw{}, fmt.Errorf("%d: column %d (%s) is %q, where a number is wanted", from+i+1, column+1, name, plainName(row[column]))
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
