package analyze

// cones are what the eye's three kinds of cones get of a light, sharpened: of long,
// middle and short waves.
//
// The card scales these and not the photo's own red, green and blue. Ours, measured on
// 241 reflectances (paints, a chart, published chips): from what they are in daylight,
// median and 90th percentile in CIEDE2000, by channels and by cones, are 1.9, 6.6
// and 1.0, 3.8 over nine lights and an ideal camera; 2.8, 8.1 and 2.0, 7.6 over eighteen
// lights and settings of a plain one. By channels is better only where a plain camera is
// set to a lamp much warmer than the light, by 1.7 at most at the 90th percentile.
// Four sensors with other curves, in eight lights and set to daylight: 3.0 to 3.7
// and 7.6 to 10 by channels, 1.7 to 2.6 and 5.2 to 7.8 by cones.
type cones [3]float64

// toCones takes linear sRGB to sharpened cone responses, fromCones back. All three
// are positive for any light that sRGB can hold, black apart.
var (
	toCones   = bradford.times(srgbToXYZ)
	fromCones = toCones.inverse()
)

func (c rgb) cones() cones { return toCones.apply(c) }

// over divides response by response; what is divided by is kept off zero.
func (c cones) over(d cones) (r cones) {
	for k := range r {
		r[k] = c[k] / max(d[k], 1e-6)
	}
	return r
}

// matrix returns the map of linear sRGB that multiplies the cone responses by gains.
// Source: [ICC] annex E, linear Bradford.
func (gains cones) matrix() (m matrix) {
	for k, by := range gains {
		for j := range 3 {
			m[k][j] = by * toCones[k][j]
		}
	}
	return fromCones.times(m)
}

// relight takes the light of pixels through m.
func relight(pixels []pixel, m matrix) {
	for i := range pixels {
		pixels[i].light = m.apply(pixels[i].light)
	}
}
