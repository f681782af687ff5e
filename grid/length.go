// Package grid lays a painter's transfer grid over a panel: lengths, crops and
// cells. It knows no colours and no pixels' contents, only sizes.
package grid

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Millimetres is a length on the panel.
type Millimetres float64

// Unit is the unit a painter asked for; lengths are stored in millimetres and
// printed in it.
type Unit string

// The units a length can be written in.
const (
	Inch       Unit = "in"
	Centimetre Unit = "cm"
	Millimetre Unit = "mm"
)

// perUnit holds the millimetres in one unit; the inch is exact since 1959.
var perUnit = map[Unit]float64{Inch: 25.4, Centimetre: 10, Millimetre: 1}

// Largest is the longest panel side taken: ten metres, past any easel.
const Largest Millimetres = 10000

// Format returns m in unit u with at most two decimals, or two digits if it is small,
// and no trailing zeros: "12 in", "0.031 in".
func (u Unit) Format(m Millimetres) string { return u.number(m) + " " + string(u) }

// Size returns a width and a height in unit u: "12 × 16 in".
func (u Unit) Size(w, h Millimetres) string {
	return u.number(w) + " × " + u.number(h) + " " + string(u)
}

func (u Unit) number(m Millimetres) string {
	v := float64(m) / perUnit[u]
	if v < 0.1 {
		return strconv.FormatFloat(v, 'g', 2, 64)
	}
	return strconv.FormatFloat(math.Round(v*100)/100, 'f', -1, 64)
}

// Of returns the length of n units.
func (u Unit) Of(n float64) Millimetres { return Millimetres(n * perUnit[u]) }

// ParseLength reads a length with its unit, such as "1in", "2.5 cm" or "25mm".
// An error says what is wrong and shows a length that would do.
func ParseLength(text string) (Millimetres, Unit, error) {
	number, unit, err := splitUnit(text)
	if err != nil {
		return 0, "", err
	}
	m, err := toMillimetres(number, unit, text)
	return m, unit, err
}

// ParsePanel reads a panel's width and height, such as "12x16in" or "30 × 40 cm".
func ParsePanel(text string) (w, h Millimetres, unit Unit, err error) {
	numbers, unit, err := splitUnit(text)
	if err != nil {
		return 0, 0, "", err
	}
	numbers = strings.ReplaceAll(numbers, "×", "x")
	first, second, found := strings.Cut(numbers, "x")
	if !found {
		return 0, 0, "", fmt.Errorf("panel %q needs a width and a height: write it like 12x16in", text)
	}
	if w, err = toMillimetres(first, unit, text); err != nil {
		return 0, 0, "", err
	}
	if h, err = toMillimetres(second, unit, text); err != nil {
		return 0, 0, "", err
	}
	return w, h, unit, nil
}

func splitUnit(text string) (string, Unit, error) {
	lower := strings.ToLower(strings.TrimSpace(text))
	for _, u := range []Unit{Inch, Centimetre, Millimetre} {
		if rest, ok := strings.CutSuffix(lower, string(u)); ok {
			return rest, u, nil
		}
	}
	return "", "", fmt.Errorf("%q has no unit: end it with in, cm or mm", text)
}

func toMillimetres(number string, unit Unit, text string) (Millimetres, error) {
	v, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("%q is not a length: write a number and a unit, like 1in or 2.5cm", text)
	}
	m := Millimetres(v * perUnit[unit])
	if m <= 0 || m > Largest {
		return 0, fmt.Errorf("%q is out of range: a length is more than 0 and at most 10 m", text)
	}
	return m, nil
}
