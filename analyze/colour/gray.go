// The gray of a lightness, for pictures in gray.

package colour

// Gray returns the sRGB level, 0-255, of the gray with lightness l, 0-100.
func Gray(l float64) uint8 {
	r, _, _ := Lab{L: l}.SRGB()
	return uint8(min(1, max(0, r))*255 + 0.5)
}
