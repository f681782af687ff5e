package colour

import (
	"sync"

	"github.com/lucasb-eyer/go-colorful"
)

// rootSteps is the number of straight pieces that stand for labRoot on 0-1.
// Ours: the pieces are off most where the curve is bent most, at 216/24389, by
// (2/9)(216/24389)^(-5/3) / (8 × 8192²) = 1.1e-6, which is 5.4e-4 of a*.
const rootSteps = 8192

// roots holds labRoot at 0, 1/rootSteps, … and one step past 1.
var roots = sync.OnceValue(func() *[rootSteps + 2]float32 {
	var t [rootSteps + 2]float32
	for i := range t {
		t[i] = float32(labRoot(float64(i) / rootSteps))
	}
	return &t
})

// linearRatios turns linear-light sRGB into tristimulus values divided by those of
// the white.
var linearRatios = func() (m [3][3]float64) {
	for k := range 3 {
		var light [3]float64
		light[k] = 1
		x, y, z := colorful.LinearRgbToXyz(light[0], light[1], light[2])
		m[0][k], m[1][k], m[2][k] = x/white[0], y/white[1], z/white[2]
	}
	return m
}()

// FromLinear returns the Lab of a linear-light sRGB colour, r, g, b in 0-1, to
// within 1e-3 of L*, a* and b*. It is the quick way for a whole picture, about
// three times as fast as cube roots; values outside 0-1 come out right but slowly.
// Source: [IEC61966-2-1], [CIE15] 8.2.1.
func FromLinear(r, g, b float64) Lab {
	t, m := roots(), &linearRatios
	fx := quickRoot(t, m[0][0]*r+m[0][1]*g+m[0][2]*b)
	fy := quickRoot(t, m[1][0]*r+m[1][1]*g+m[1][2]*b)
	fz := quickRoot(t, m[2][0]*r+m[2][1]*g+m[2][2]*b)
	return Lab{116*fy - 16, 500 * (fx - fy), 200 * (fy - fz)}
}

// quickRoot returns labRoot(t) from the table of roots.
func quickRoot(table *[rootSteps + 2]float32, t float64) float64 {
	t *= rootSteps
	if !(t >= 0 && t < rootSteps+1) {
		return labRoot(t / rootSteps)
	}
	i := int(t)
	a, b := float64(table[i]), float64(table[i+1])
	return a + (t-float64(i))*(b-a)
}
