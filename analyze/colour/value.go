package colour

import "math"

// quintic holds the factors of V, V², … V⁵ in the luminance factor Y (in
// percent of the perfect diffuser) of Munsell value V.
// Source: [ASTMD1535] eq. 2.
var quintic = [5]float64{1.1914, -0.22533, 0.23352, -0.020484, 0.00081939}

// LOf returns the L* of a Munsell value in 0-10; values outside are clamped.
// Source: [ASTMD1535], [CIE15] 8.2.1.
func LOf(value float64) float64 {
	return 116*labRoot(luminance(clampValue(value))/100) - 16
}

// ValueOf returns the Munsell value, 0-10, of L*; L* outside 0-100 is clamped.
// Source: [ASTMD1535], inverse.
func ValueOf(l float64) float64 {
	t := (l + 16) / 116
	if l <= 8 {
		return valueOfY(l * (2700.0 / 24389)) // 100 / κ, κ = 24389/27
	}
	return valueOfY(100 * t * t * t)
}

// luminance returns Y in percent of the Munsell value.
func luminance(value float64) float64 {
	y := 0.0
	for i := len(quintic) - 1; i >= 0; i-- {
		y = (y + quintic[i]) * value
	}
	return y
}

// valueOfY returns the Munsell value of Y in percent, 0-10, by Newton's steps
// on the quintic, which rises all the way.
func valueOfY(y float64) float64 {
	if !(y > 0) {
		return 0
	}
	if y >= 100 {
		return 10
	}
	v := math.Sqrt(y)
	for range 20 {
		step := (luminance(v) - y) / slope(v)
		v = clampValue(v - step)
		if math.Abs(step) < 1e-12 {
			break
		}
	}
	return v
}

// slope returns the rise of Y for each value.
func slope(value float64) float64 {
	s := 0.0
	for i := len(quintic) - 1; i >= 0; i-- {
		s = s*value + float64(i+1)*quintic[i]
	}
	return s
}

func clampValue(v float64) float64 { return min(max(v, 0), 10) }
