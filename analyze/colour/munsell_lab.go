package colour

import (
	"math"

	"github.com/lucasb-eyer/go-colorful"
)

// met is the distance, in chroma, under which a notation counts as met; finding
// one is itself sure to 3e-8.
const met = 1e-7

// mends is the most times that a guess is mended, halvings the most times that
// one mending is taken back by half, and nudge the move, in chroma, by which the
// effect of moves is measured.
// Ours: over 100,000 notations at random, to chroma 50, the most taken were 10 mends
// and 2 halvings; moving by what is missed, without slopes, failed on some near where
// two of the tables' straight pieces meet.
const (
	mends    = 20
	halvings = 5
	nudge    = 1e-4
)

// Lab returns the colour of m, seen under D65: the inverse of Lab.Munsell.
// Value is clamped to 0-10; a chroma under 0 is neutral, and so is a notation
// with a hue or chroma that is not a finite number. For chroma 0-50 the notation
// of the result is m again to within 1e-6 of value, of chroma, and of chroma × hue
// angle in radians.
//
// Below value 1 and above 9 the colour is read straight off the one plane.
// Between two planes, what Lab.Munsell mixes are the hues and chromas that both
// have at one chromaticity; so that is first guessed and then mended by what the
// notation of the guess misses.
// Source: [ASTMD1535] for value; the rest is that of Lab.Munsell.
func (m Munsell) Lab() Lab {
	m.Value = clampValue(m.Value)
	if !(m.Chroma > 0) || math.IsInf(m.Chroma, 0) || math.IsNaN(m.Hue-m.Hue) {
		return Lab{L: LOf(m.Value)}
	}
	try, miss := m, m.missed(m)
	for range mends {
		if math.Hypot(miss[0], miss[1]) < met {
			break
		}
		step := m.step(try, miss)
		for range halvings {
			next := try.moved(step[0], step[1])
			left := m.missed(next)
			if math.Hypot(left[0], left[1]) < math.Hypot(miss[0], miss[1]) {
				try, miss = next, left
				break
			}
			step[0], step[1] = step[0]/2, step[1]/2
		}
	}
	return try.guess()
}

// missed returns by how much the guess of try misses the point of m.
func (m Munsell) missed(try Munsell) [2]float64 {
	want, got := m.point(), try.guess().Munsell().point()
	return [2]float64{want[0] - got[0], want[1] - got[1]}
}

// step returns how far to move try so that it no longer misses m, by what small
// moves to either side do (Newton's way, with measured slopes).
func (m Munsell) step(try Munsell, miss [2]float64) [2]float64 {
	x, y := m.missed(try.moved(nudge, 0)), m.missed(try.moved(0, nudge))
	a, b := (miss[0]-x[0])/nudge, (miss[0]-y[0])/nudge
	c, d := (miss[1]-x[1])/nudge, (miss[1]-y[1])/nudge
	det := a*d - b*c
	if !(math.Abs(det) > 0.01) { // about 1 where planes are alike
		return miss
	}
	return [2]float64{(d*miss[0] - b*miss[1]) / det, (a*miss[1] - c*miss[0]) / det}
}

// point returns hue and chroma of m as a point in the plane of its value.
func (m Munsell) point() [2]float64 {
	sin, cos := math.Sincos(m.Hue * (math.Pi / 50))
	return [2]float64{m.Chroma * cos, m.Chroma * sin}
}

// moved returns m with its point shifted.
func (m Munsell) moved(dx, dy float64) Munsell {
	p := m.point()
	x, y := p[0]+dx, p[1]+dy
	return Munsell{wrap(math.Atan2(y, x)*(50/math.Pi), 100), m.Value, math.Hypot(x, y)}
}

// guess returns a colour of the value of m near its hue and chroma: exactly it
// where one plane serves alone.
func (m Munsell) guess() Lab {
	lum := luminance(m.Value) / 100
	if m.Value < 1 {
		c := planes()[0].colour(m.Hue, m.Chroma)
		c.L = 116*labRoot(lum) - 16
		return underD65(underC(c))
	}
	low := min(int(m.Value), tableValues)
	seen := m.onPlane(low, lum)
	if low < tableValues {
		t, high := m.Value-float64(low), m.onPlane(low+1, lum)
		for i := range seen {
			seen[i] += t * (high[i] - seen[i])
		}
	}
	return underD65(seen)
}

// onPlane returns the tristimulus values under C, white Y = 1, that have the hue
// and chroma of m on the plane of a whole value and luminance lum at the same
// chromaticity.
func (m Munsell) onPlane(value int, lum float64) [3]float64 {
	c := planes()[value-1].colour(m.Hue, m.Chroma)
	own := luminance(float64(value)) / 100
	c.L = 116*labRoot(own) - 16
	seen := underC(c)
	for i := range seen {
		seen[i] *= lum / own
	}
	return seen
}

// colour returns a* and b* under C of hue and chroma on p, leaving out L*: what
// find undoes.
func (p *plane) colour(hue, chroma float64) Lab {
	ring := chroma/2 - 1
	k := int(min(max(ring, 0), tableChromas-2))
	share := min(max(ring-float64(k), 0), 1)
	step := wrap(hue, 100) / (100.0 / tableHues)
	i := min(int(step), tableHues-1)
	a, b := p.point(k, i, share), p.point(k, (i+1)%tableHues, share)
	if i == tableHues-1 {
		b.angle += 360
	}
	t := step - float64(i)
	radius := a.radius + t*(b.radius-a.radius)
	switch last := float64(tableChromas - 1); {
	case ring < 0:
		radius *= chroma / 2
	case ring > last:
		radius *= chroma / (2 * tableChromas)
	}
	sin, cos := math.Sincos((a.angle + t*(b.angle-a.angle)) * (math.Pi / 180))
	return Lab{A: radius * cos, B: radius * sin}
}

// underC returns the tristimulus values, white Y = 1, of a Lab under illuminant C.
func underC(c Lab) [3]float64 {
	x, y, z := colorful.LabToXyzWhiteRef(c.L/100, c.A/100, c.B/100, illuminantC)
	return [3]float64{x, y, z}
}

// fromC is the way back from illuminant C.
var fromC = toC.inverse()

// underD65 returns the Lab under D65 of tristimulus values under C, white Y = 1.
func underD65(seen [3]float64) Lab {
	d65 := fromC.times(seen)
	return XYZ{100 * d65[0], 100 * d65[1], 100 * d65[2]}.Lab()
}
