package analyze

import (
	"math"

	"tonewright/analyze/colour"
)

// thing is a shape of the made scene: where it is, its colour, how its light falls off
// from left to right, and what is on its surface.
type thing struct {
	in      func(x, y float64) bool
	lab     colour.Lab
	shade   float64 // L* from the left of the picture to its right
	surface func(x, y float64) float64
}

// The scene is 1000 × 750 pixels, a panel of 12 × 9 in then has 3.3 of them a millimetre.
const sceneWidth, sceneHeight = 1000, 750

// madeThings are hand-drawn shapes from the back to the front, each with a texture that
// is not to be drawn: grain, checks, stripes, blotches.
func madeThings() []thing {
	plain := func(x, y float64) float64 { return 0 }
	check := func(period, deep float64) func(x, y float64) float64 {
		return func(x, y float64) float64 {
			return deep * math.Copysign(1, math.Sin(2*math.Pi*x/period)*math.Sin(2*math.Pi*y/period))
		}
	}
	wood := func(x, y float64) float64 { return 5 * math.Sin(y/2.2+2*math.Sin(x/60)+math.Sin(x/23)) }
	blots := blotches(7, 12)
	ellipse := func(cx, cy, a, b float64) func(x, y float64) bool {
		return func(x, y float64) bool { u, v := (x-cx)/a, (y-cy)/b; return u*u+v*v < 1 }
	}
	return []thing{
		{func(x, y float64) bool { return true }, colour.Lab{L: 62, A: 2, B: 12}, -22, blotches(9, 5)},
		{func(x, y float64) bool { return y > 470+12*math.Sin(x/130) }, colour.Lab{L: 40, A: 12, B: 24}, 8, wood},
		{func(x, y float64) bool { // a pear
			r := math.Hypot(x-300, y-430)
			return r < 130 || math.Abs(x-300) < 58+40*(y-240)/160*math.Abs(y-240)/160 && y > 215 && y < 430 || ellipse(300, 225, 57, 40)(x, y)
		}, colour.Lab{L: 66, A: -8, B: 52}, -10, blots},
		{func(x, y float64) bool { // a beaker with a checked band
			return x > 520+0.1*(y-250) && x < 700-0.1*(y-250) && y > 250 && y < 590
		}, colour.Lab{L: 78, A: 0, B: 4}, -20, check(9, 12)},
		{func(x, y float64) bool { // its handle
			r := math.Hypot(x-710, (y-380)*0.8)
			return r > 50 && r < 72 && x > 682-0.1*(y-250)
		}, colour.Lab{L: 70, A: 0, B: 4}, -20, plain},
		{func(x, y float64) bool { // a star
			r, a := math.Hypot(x-850, y-250), math.Atan2(y-250, x-850)
			return r < 95/(1+0.5*math.Abs(math.Remainder(a*5/(2*math.Pi)+0.25, 1))*2)
		}, colour.Lab{L: 44, A: 48, B: 22}, 0, blotches(11, 8)},
		{func(x, y float64) bool { // a leaf, close to the table in value
			return math.Hypot(x-620, y-470) < 210 && math.Hypot(x-600, y-810) < 200 || math.Hypot(x-880, y-600) < 60
		}, colour.Lab{L: 36, A: -4, B: 22}, 6, check(5, 8)},
		{ellipse(180, 620, 110, 60), colour.Lab{L: 30, A: 20, B: -30}, 0, plain},
		{ellipse(165, 605, 60, 26), colour.Lab{L: 52, A: 14, B: -26}, 0, plain},
	}
}

// blotches returns a texture of soft spots about so many pixels wide, as deep as deep.
func blotches(wide, deep float64) func(x, y float64) float64 {
	g := &grain{uint32(wide)}
	const n = 64
	var knots [n][n]float64
	for i := range knots {
		for j := range knots[i] {
			knots[i][j] = g.on(colour.Lab{}, deep).L
		}
	}
	return func(x, y float64) float64 {
		x, y = x/wide, y/wide
		i, j := int(math.Floor(x)), int(math.Floor(y))
		u, v := x-float64(i), y-float64(j)
		at := func(a, b int) float64 { return knots[b%n][a%n] }
		return (at(i, j)*(1-u)+at(i+1, j)*u)*(1-v) + (at(i, j+1)*(1-u)+at(i+1, j+1)*u)*v
	}
}

// madeScene returns the scene as photographed, soft by about a pixel and with grain, and
// which thing is at each pixel.
func madeScene() (*Picture, []uint8) {
	things := madeThings()
	at := func(x, y float64) uint8 {
		n := len(things) - 1
		for !things[n].in(x, y) {
			n--
		}
		return uint8(n)
	}
	g := &grain{5}
	var truth []uint8
	p := paintedPicture(sceneWidth, sceneHeight, func(x, y int) colour.Lab {
		truth = append(truth, at(float64(x)+0.5, float64(y)+0.5))
		var sum colour.Lab
		for k := range 9 { // over a pixel and a half
			u, v := float64(x)+0.5+0.5*float64(k%3-1), float64(y)+0.5+0.5*float64(k/3-1)
			c := things[at(u, v)]
			sum.L += c.lab.L + c.shade*(u/sceneWidth-0.5) + c.surface(u, v)
			sum.A += c.lab.A
			sum.B += c.lab.B
		}
		return g.on(colour.Lab{L: sum.L / 9, A: sum.A / 9, B: sum.B / 9}, 4)
	})
	return p, truth
}
