// Where CIEDE2000 bends and breaks too much for a form: around the blues and
// violets, and at the hue opposite to the aim's.

package match

import (
	"math"

	"tonewright/analyze/colour"
)

// Two colours of opposite hues have two mean hues, half a turn apart, and CIEDE2000
// jumps there from one to the other; for a vivid violet aim it falls by a quarter
// from one dull green to the next [Sharma2005, on discontinuities]. In a* and b* the
// jump is a straight line from neutral away from the aim, since both are stretched
// alike. And around the blues its ellipses turn fast with hue. No form follows
// either, so a column of blocks there has the square at single places instead.
const (
	grainAB  = 2                 // from place to place in a* and b*
	grains   = blockAB / grainAB // places along a side
	dullAim  = 20                // an aim under this chroma is near all that it matters for
	dullMix  = 40                // the jump matters for mixes up to this chroma
	beside   = 0.7 * 2 * grainAB // places as near as this to the jump have both sides
	blueFrom = 230               // hues of aims whose every far column has a grain, in degrees
	blueTo   = 350
)

// grain is the part of the square that hangs on a* and b*, in the places of one
// column, for the left and the right side of the jump.
type grain [2][grains * grains]float32

// at returns the place of a colour on its side of the jump of the aim.
func (g *grain) at(a, b float32, aim *point) float32 {
	i, j := uint(int((a+zeroAB)*(1.0/grainAB))), uint(int((b+zeroAB)*(1.0/grainAB)))
	side := 0
	if aim.a*b < aim.b*a {
		side = 1
	}
	return g[side][i%grains*grains+j%grains]
}

// newGrain returns the grain of an aim for the column around middle.
func newGrain(aim, middle colour.Lab) (g *grain) {
	g = &grain{}
	chroma := aim.Chroma()
	alongA, alongB := aim.A/chroma, aim.B/chroma
	for i := range grains * grains {
		a := middle.A - blockAB/2 + grainAB*(float64(i/grains)+0.5)
		b := middle.B - blockAB/2 + grainAB*(float64(i%grains)+0.5)
		off := alongA*b - alongB*a // from the jump's line; to the left of it 0 or more
		for side, sign := range []float64{1, -1} {
			move := 0.0
			if off*sign < 0 && math.Abs(off) < beside { // just over the line, to the wanted side
				move = -off + 0.2*sign
			}
			d := colour.DeltaE00(aim, colour.Lab{L: aim.L, A: a - alongB*move, B: b + alongA*move})
			g[side][i] = float32(d * d)
			if math.Abs(off) >= beside {
				g[1-side][i] = g[side][i]
				break
			}
		}
	}
	return g
}

// least returns the least square of the places of the cell around a and b.
func (g *grain) least(a, b float32) float32 {
	least := float32(math.MaxFloat32)
	first := uint(int((a + zeroAB - cellAB/2 + 0.5*grainAB) * (1.0 / grainAB)))
	second := uint(int((b + zeroAB - cellAB/2 + 0.5*grainAB) * (1.0 / grainAB)))
	for i := range uint(cellAB / grainAB) {
		for j := range uint(cellAB / grainAB) {
			place := (first+i)%grains*grains + (second+j)%grains
			least = min(least, g[0][place], g[1][place])
		}
	}
	return least
}

// grained returns the columns that a form would not do for.
func grained(aim colour.Lab) (at [columns]bool) {
	chroma, hue := aim.Chroma(), aim.Hue()
	if chroma < dullAim {
		return at
	}
	if hue > blueFrom && hue < blueTo {
		for column := range at {
			at[column] = true
		}
		return at
	}
	a, b := -aim.A/chroma, -aim.B/chroma
	for along := -grainAB; along <= dullMix; along += grainAB {
		for _, aside := range []float64{-2 * grainAB, 0, 2 * grainAB} {
			t := float64(along)
			at[columnOf(point{0, float32(a*t - b*aside), float32(b*t + a*aside)})] = true
		}
	}
	return at
}
