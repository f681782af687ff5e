// Lengths as a ruler has them.

package grid

import (
	"fmt"
	"math"
	"strconv"
)

// Ruled returns m in unit u to the nearest mark of a ruler: sixteenths of an inch,
// "4 5/8 in"; millimetres, "11.8 cm" and "118 mm".
func (u Unit) Ruled(m Millimetres) string {
	switch u {
	case Inch:
		return sixteenths(int(math.Round(float64(m) / 25.4 * 16)))
	case Centimetre:
		return strconv.FormatFloat(math.Round(float64(m))/10, 'f', 1, 64) + " cm"
	}
	return fmt.Sprintf("%.0f mm", math.Round(float64(m)))
}

// sixteenths writes n of them, n ≥ 0, in the fewest parts: "3 in", "1/8 in", "1 5/16 in".
func sixteenths(n int) string {
	whole, rest, of := n/16, n%16, 16
	for rest > 0 && rest%2 == 0 {
		rest, of = rest/2, of/2
	}
	switch {
	case rest == 0:
		return fmt.Sprintf("%d in", whole)
	case whole == 0:
		return fmt.Sprintf("%d/%d in", rest, of)
	}
	return fmt.Sprintf("%d %d/%d in", whole, rest, of)
}
