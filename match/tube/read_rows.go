// A sample a row, under headings that are wavelengths.

package tube

import (
	"fmt"
	"slices"
	"strings"
)

// header is a row of headings, looked through once for all rows below it.
type header struct {
	cells []string
	at    []int     // the columns that are wavelengths
	nm    []float64 // those
	names []int     // the columns that may hold a sample's name, best first
}

// headingsOf looks for wavelengths among headings. They are none unless they run up or
// down all the way, as figures that only look like wavelengths do not: wrong then says
// what is out of order, where they would be enough.
func headingsOf(row []string) (h header, wrong string) {
	h.cells = row
	for i, heading := range row {
		if n, ok := wavelengthOf(heading); ok {
			h.at, h.nm = append(h.at, i), append(h.nm, n)
		}
	}
	if len(h.at) >= fewest {
		wrong = disorder(h.nm)
	}
	if !monotone(h.nm) {
		h.at, h.nm = nil, nil
	}
	return h, wrong
}

// ready checks what stands beside the wavelengths, and finds the columns of names:
// under a heading that says name, else sample or id, else the first that is no
// wavelength.
func (h *header) ready() error {
	var byRank [4][]int
	for i, heading := range h.cells {
		if slices.Contains(h.at, i) {
			continue
		}
		if noWavelength(heading, h.cells[h.at[0]]) {
			return fmt.Errorf("column %d is headed %q, which is no wavelength; export the spectra with 400 to 700 nm as headings", i+1, plainName(heading))
		}
		lower := strings.ToLower(heading)
		rank := 3
		switch {
		case strings.Contains(lower, "name"):
			rank = 0
		case strings.Contains(lower, "sample"):
			rank = 1
		case strings.HasSuffix(lower, "id"):
			rank = 2
		}
		byRank[rank] = append(byRank[rank], i)
	}
	h.names = slices.Concat(byRank[:]...)
	return nil
}

// sampleRows reads a sample a row below the headings; a further row of headings
// begins another table.
func sampleRows(rows [][]string, at int) (found []raw, err error) {
	var h header
	for i, row := range rows[at:] {
		line := at + i + 1
		if further, _ := headingsOf(row); len(further.at) >= fewest {
			h = further
			if err := h.ready(); err != nil {
				return nil, fmt.Errorf("%d: %w", line, err)
			}
			continue
		}
		if h.blank(row) {
			continue
		}
		r, err := h.sample(row, line)
		if err != nil {
			return nil, fmt.Errorf("%d: %w", line, err)
		}
		if r.name == "" {
			r.name = fmt.Sprintf("sample %d", len(found)+1)
		}
		found = append(found, r)
	}
	return found, nil
}

// blank tells whether a row has nothing under any wavelength.
func (h *header) blank(row []string) bool {
	return !slices.ContainsFunc(h.at, func(c int) bool { return c < len(row) && row[c] != "" })
}

// sample reads one sample from a row.
func (h *header) sample(row []string, line int) (raw, error) {
	if width(row) > len(h.cells) {
		return raw{}, tooWide(row, len(h.cells))
	}
	s := raw{name: h.name(row), line: line, nm: slices.Clone(h.nm)}
	for _, c := range h.at {
		if c >= len(row) || row[c] == "" {
			return raw{}, fmt.Errorf("column %d (%s) is empty; measure the sample again or take the row out", c+1, h.cells[c])
		}
		r, ok := numberOf(row[c])
		if !ok {
			return raw{}, fmt.Errorf("column %d (%s) is %q, where a number is wanted", c+1, h.cells[c], plainName(row[c]))
		}
		s.r = append(s.r, r)
		s.percent = s.percent || strings.Contains(h.cells[c], "%") || strings.Contains(row[c], "%")
	}
	s.upwards()
	return s, nil
}

// name returns the sample's name in a row, "" if it has none.
func (h *header) name(row []string) string {
	for _, c := range h.names {
		if c < len(row) && row[c] != "" {
			return row[c]
		}
	}
	return ""
}

// upwards turns a sample that runs down.
func (s *raw) upwards() {
	if len(s.nm) > 1 && s.nm[0] > s.nm[1] {
		slices.Reverse(s.nm)
		slices.Reverse(s.r)
	}
}
