package colour

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Second implementation: libDaltonLens (N. Burrus, public domain) prints, of Brettel,
// Viénot, Mollon 1997 with the fundamentals of Smith, Pokorny 1975 and D65 for neutral,
// for each kind what the lacking cone is made to catch of what the others do, on
// either side. Five decimals, from an sRGB matrix of four: 5e-4 of the largest.
var slides = map[string][2][3]float64{
	"protan": {{0, 2.18394, -5.65554}, {0, 2.16614, -5.30455}},
	"deutan": {{0.46165, 0, 2.44885}, {0.45789, 0, 2.58960}},
	"tritan": {{-0.00213, 0.05477, 0}, {-0.06195, 0.16826, 0}},
}

func TestSlidesAgainstAnotherImplementation(t *testing.T) {
	for kind, want := range slides {
		d := dichromats[kind]
		for k, m := range []matrix{d.first, d.second} {
			row := cones.after(m).after(fromCones)[d.lacks]
			for j := range row {
				assert.InDelta(t, want[k][j], row[j], 6e-4, "%s side %d", kind, k)
			}
		}
	}
}

// mended holds what a later version of libDaltonLens prints: linear-light sRGB to
// itself, on either side, with the observer as Judd and Vos mended it ([Vienot1999]'s
// matrix), which See does without.
var mended = map[string][2]matrix{
	"protan": {
		{{0.14980, 1.19548, -0.34528}, {0.10764, 0.84864, 0.04372}, {0.00384, -0.00540, 1.00156}},
		{{0.14570, 1.16172, -0.30742}, {0.10816, 0.85291, 0.03892}, {0.00386, -0.00524, 1.00139}},
	},
	"deutan": {
		{{0.36477, 0.86381, -0.22858}, {0.26294, 0.64245, 0.09462}, {-0.02006, 0.02728, 0.99278}},
		{{0.37298, 0.88166, -0.25464}, {0.25954, 0.63506, 0.10540}, {-0.01980, 0.02784, 0.99196}},
	},
	"tritan": {
		{{1.01277, 0.13548, -0.14826}, {-0.01243, 0.86812, 0.14431}, {0.07589, 0.80500, 0.11911}},
		{{0.93678, 0.18979, -0.12657}, {0.06154, 0.81526, 0.12320}, {-0.37562, 1.12767, 0.24796}},
	},
}

// grid is 9 × 9 × 9 colours of sRGB.
func grid() (all []Lab) {
	for i := range 9 * 9 * 9 {
		all = append(all, FromSRGB(float64(i%9)/8, float64(i/9%9)/8, float64(i/81)/8))
	}
	return all
}

// What is seen by the observer of 1931 and by the mended one is near over all of
// sRGB; most apart where Lab is steepest, out of sRGB. The figures of the comment of
// cones are these.
func TestTheMendedObserverChangesLittle(t *testing.T) {
	for kind, sides := range mended {
		d, sum, most := dichromats[kind], 0.0, 0.0
		for _, c := range grid() {
			xyz := c.XYZ()
			ratios := [3]float64{xyz.X / 100, xyz.Y / 100, xyz.Z / 100}
			m := sides[1]
			if d.side[0]*ratios[0]+d.side[1]*ratios[1]+d.side[2]*ratios[2] > 0 {
				m = sides[0]
			}
			other := xyzOf.after(m).times(rgbOf.times(ratios))
			e := DeltaE00(Sight{kind, 1}.See(c), XYZ{100 * other[0], 100 * other[1], 100 * other[2]}.Lab())
			sum, most = sum+e, max(most, e)
		}
		t.Logf("%s: mean %.2f, most %.2f", kind, sum/729, most)
		assert.Less(t, sum/729, 0.8, kind)
	}
}

// The lights that both see alike stay as they are, and black and white; a colour on
// the border of the two sides is seen the same from both.
// Source: Brettel, Viénot, Mollon 1997, section 2.
func TestDichromatsKeepTheirLights(t *testing.T) {
	lights := map[string][2][3]float64{"protan": {yellow575, blue475}, "deutan": {yellow575, blue475}, "tritan": {red660, blueGreen485}}
	for kind, pair := range lights {
		d := dichromats[kind]
		for _, light := range append(pair[:], white, [3]float64{}) {
			seen := d.see(light)
			for i := range seen {
				assert.InDelta(t, light[i], seen[i], exact, "%s of %v", kind, light)
			}
		}
		lone := [3]float64{}
		lone[d.lacks] = 0.3 // catches of the lacking cone alone: on the border with any white
		border := fromCones.times([3]float64{0.5*cones.times(white)[0] + lone[0], 0.5*cones.times(white)[1] + lone[1], 0.5*cones.times(white)[2] + lone[2]})
		a, b := d.first.times(border), d.second.times(border)
		for i := range a {
			assert.InDelta(t, 0.5*white[i], a[i], exact, kind)
			assert.InDelta(t, a[i], b[i], exact, kind)
		}
	}
}

// What the other two cones catch is what a dichromat sees by, so it stays; and who
// has once been shown what they see sees that as it is.
func TestDichromatsKeepTheOtherCones(t *testing.T) {
	for kind, d := range dichromats {
		s := Sight{kind, 1}
		for _, c := range []Lab{FromSRGB(1, 0, 0), FromSRGB(0, 1, 0), FromSRGB(0.2, 0.1, 0.6), {60, 30, 40}, {85, 3, 103}} {
			seen := s.See(c)
			a, b := caught(kind, c)
			p, q := caught(kind, seen)
			assert.InDelta(t, a, p, 1e-6, "%s of %v", kind, c)
			assert.InDelta(t, b, q, 1e-6, "%s of %v", kind, c)
			assert.Less(t, DeltaE00(seen, s.See(seen)), 1e-6, "%s of %v", kind, c)
		}
		assert.Contains(t, []int{0, 1, 2}, d.lacks)
	}
}

// A little more severity never leaps: over a grid of sRGB no hundredth from 0.85 to 1
// moves a colour by more than 6 CIEDE2000, which blues do to a tritan.
func TestSeverityIsContinuous(t *testing.T) {
	for kind := range dichromats {
		for _, c := range grid() {
			before := Sight{kind, 0.85}.See(c)
			for k := 86; k <= 100; k++ {
				after := Sight{kind, float64(k) / 100}.See(c)
				assert.Less(t, DeltaE00(before, after), 6.0, "%s %d hundredths of %v", kind, k, c)
				before = after
			}
		}
	}
}

// That the authors' own severity 1 and the two half-planes nearly agree is what
// Machado, Oliveira, Fernandes 2009, section 5, say of red-green dichromats.
func TestHalfPlanesNearMachadosDichromats(t *testing.T) {
	tables := machado(t)
	for _, kind := range []string{"protan", "deutan"} {
		sum, like := 0.0, [11]float64{}
		for _, c := range grid() {
			xyz := c.XYZ()
			rgb := rgbOf.times([3]float64{xyz.X / 100, xyz.Y / 100, xyz.Z / 100})
			m := xyzOf.after(tables[kind][10]).times(rgb)
			theirs := XYZ{100 * m[0], 100 * m[1], 100 * m[2]}.Lab()
			sum += DeltaE00(Sight{kind, 1}.See(c), theirs)
			for i := range like {
				like[i] += DeltaE00(Sight{kind, 0.9 + float64(i)/100}.See(c), theirs)
			}
		}
		t.Logf("%s: mean %.2f; at 0.90 to 1.00 %.0f", kind, sum/729, like)
		assert.Less(t, sum/729, 4.0, kind)
	}
}

// On light and on Lab are one sight.
func TestLightsAreSee(t *testing.T) {
	for kind := range dichromats {
		for _, severity := range []float64{0, 0.35, 0.9, 0.97, 1} {
			s := Sight{kind, severity}
			lights := s.Lights()
			for _, c := range grid() {
				xyz := c.XYZ()
				rgb := rgbOf.times([3]float64{xyz.X / 100, xyz.Y / 100, xyz.Z / 100})
				r, g, b := lights.See(rgb[0], rgb[1], rgb[2])
				seen := xyzOf.times([3]float64{r, g, b})
				assert.Less(t, DeltaE00(s.See(c), XYZ{100 * seen[0], 100 * seen[1], 100 * seen[2]}.Lab()), 1e-4, "%v of %v", s, c)
			}
		}
	}
}
