// What one cell of a table says: a wavelength, a figure, or neither.

package tube

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// longestCell is the most bytes of a cell that may be a wavelength; longer ones are not
// looked at. Ours: no heading that was met has half of it.
const longestCell = 40

// figures splits a cell about its first figure of three or four digits, which may have a
// part after a point or comma; false where a digit stands elsewhere, or a sign or point
// before it.
func figures(cell string) (before, figure, after string, ok bool) {
	if len(cell) > longestCell {
		return "", "", "", false
	}
	from := strings.IndexFunc(cell, digit)
	if from < 0 || from > 0 && strings.ContainsRune(".,+-", rune(cell[from-1])) {
		return "", "", "", false
	}
	to := past(cell, from)
	if to-from < 3 || to-from > 4 {
		return "", "", "", false
	}
	if to < len(cell) && (cell[to] == '.' || cell[to] == ',') && past(cell, to+1) > to+1 {
		to = past(cell, to+1)
	}
	return cell[:from], cell[from:to], cell[to:], !strings.ContainsFunc(cell[to:], digit)
}

func digit(r rune) bool { return r >= '0' && r <= '9' }

// past returns where the digits from a place on end.
func past(cell string, at int) int {
	for at < len(cell) && digit(rune(cell[at])) {
		at++
	}
	return at
}

// wavelengthOf reads a wavelength in nm from a heading, in whatever dressing: "400",
// "400.0 nm", "R400[%]", "SPECTRAL_NM400"; false if it is none.
func wavelengthOf(heading string) (float64, bool) {
	_, figure, _, ok := figures(heading)
	if !ok {
		return 0, false
	}
	nm, err := strconv.ParseFloat(strings.Replace(figure, ",", ".", 1), 64)
	return nm, err == nil && nm >= 200 && nm <= 2600
}

// Wavelengths in nm outside of those that are read: an instrument may well give them.
const (
	shortest = 100.0
	longest  = 50000.0
)

// figureLike reads a heading that is no wavelength as one is dressed: a figure, or NaN.
func figureLike(heading, wavelength string) (nm float64, ok bool) {
	if _, ok := wavelengthOf(heading); ok || len(heading) > longestCell {
		return 0, false
	}
	before, _, after, _ := figures(wavelength)
	figure, led := strings.CutPrefix(heading, before)
	figure, ended := strings.CutSuffix(figure, after)
	if !led || !ended {
		figure = heading
	}
	figure = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(figure), "nm"))
	nm, err := strconv.ParseFloat(strings.Replace(figure, ",", ".", 1), 64)
	return nm, err == nil || errors.Is(err, strconv.ErrRange)
}

// noWavelength tells whether a heading stands where a wavelength should, but is none
// that there can be: "-400", "1e9", "NaN", or the part after a decimal comma. Left out,
// its band would be made up.
func noWavelength(heading, wavelength string) bool {
	nm, ok := figureLike(heading, wavelength)
	return ok && !(nm >= shortest && nm <= longest)
}

// disorder says what keeps wavelengths from running only up or only down; "" if they do.
func disorder(nm []float64) string {
	if monotone(nm) {
		return ""
	}
	sorted := slices.Sorted(slices.Values(nm))
	for i := 1; i < len(sorted); i++ {
		if sorted[i] == sorted[i-1] {
			return fmt.Sprintf("%g nm stands twice", sorted[i])
		}
	}
	up := nm[0] < nm[len(nm)-1]
	for i := 1; i < len(nm); i++ {
		if (nm[i] > nm[i-1]) != up {
			return fmt.Sprintf("%g nm comes after %g nm", nm[i], nm[i-1])
		}
	}
	return ""
}

// monotone tells whether numbers run only up or only down.
func monotone(v []float64) bool {
	for i := 2; i < len(v); i++ {
		if (v[i] > v[i-1]) != (v[1] > v[0]) || v[i] == v[i-1] {
			return false
		}
	}
	return len(v) < 2 || v[0] != v[1]
}

// numberOf reads a figure of digits, a sign, a point or a comma, and an exponent, and
// maybe a percent sign after it.
func numberOf(cell string) (float64, bool) {
	cell = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(cell), "%"))
	if strings.Count(cell, ",") == 1 && !strings.Contains(cell, ".") {
		cell = strings.Replace(cell, ",", ".", 1)
	}
	if strings.Trim(cell, "0123456789+-.eE") != "" { // nor "0x1p-2", "1_0", "Inf"
		return 0, false
	}
	n, err := strconv.ParseFloat(cell, 64)
	return n, err == nil
}
