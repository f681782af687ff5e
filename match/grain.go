// Where CIEDE2000 breaks: colours of the hue opposite to the aim's.

package match

import (
	"math"

	"tonewright/analyze/colour"
)

// Two colours of exactly opposite hues have two mean hues, half a turn apart, and
// CIEDE2000 jumps there from one to the other; for a vivid violet aim it falls by a
// quarter from one dull green to the next [Sharma2005, section on discontinuities].
// No form follows that, so a column of blocks that the jump runs through has the
// square at single places instead.
const (
	grainAB  = 2                 // from place to place in a* and b*
	grains   = blockAB / grainAB // places along a side
	jumpFrom = 20                // chroma of an aim from which it matters
	jumpTo   = 40                // chroma up to which the jump is followed; dull mixes only are affected
	jump     = 1.2               // squares of neighbours differ by more only across the jump
)

// grain is the part of the square that hangs on a* and b*, in the places of one column.
type grain [grains * grains]float32

func (g *grain) at(a, b float32) float32 {
	i, j := uint(int((a+zeroAB)*(1.0/grainAB))), uint(int((b+zeroAB)*(1.0/grainAB)))
	return g[i%grains*grains+j%grains]
}

// newGrain returns the grain of an aim for the column around middle. Places beside
// the jump have the larger square of the two sides: a mix there is not trusted.
func newGrain(aim, middle colour.Lab) *grain {
	var squares grain
	for i := range squares {
		d := colour.DeltaE00(aim, colour.Lab{
			L: aim.L,
			A: middle.A - blockAB/2 + grainAB*(float64(i/grains)+0.5),
			B: middle.B - blockAB/2 + grainAB*(float64(i%grains)+0.5),
		})
		squares[i] = float32(d * d)
	}
	careful := squares
	for i := range squares {
		for _, j := range []int{i - 1, i + 1, i - grains, i + grains} {
			sameRow := i/grains == j/grains || i%grains == j%grains
			if j >= 0 && j < len(squares) && sameRow && squares[j] > jump*squares[i] {
				careful[i] = max(careful[i], squares[j])
			}
		}
	}
	return &careful
}

// least returns the least square of the places from a cell's middle to its edges.
func (g *grain) least(a, b float32) float32 {
	least := float32(math.MaxFloat32)
	for i := range cellAB / grainAB {
		for j := range cellAB / grainAB {
			const edge = (cellAB - grainAB) / 2
			least = min(least, g.at(a-edge+float32(i)*grainAB, b-edge+float32(j)*grainAB))
		}
	}
	return least
}

// jumps returns the columns that the jump of an aim runs through: along the hue
// opposite to it, and all around neutral.
func jumps(aim colour.Lab) (at [columns]bool) {
	chroma := aim.Chroma()
	if chroma < jumpFrom {
		return at
	}
	a, b := -aim.A/chroma, -aim.B/chroma
	for along := -grainAB; along <= jumpTo; along += grainAB {
		for _, aside := range []float64{-2 * grainAB, 0, 2 * grainAB} {
			t := float64(along)
			at[columnOf(point{0, float32(a*t - b*aside), float32(b*t + a*aside)})] = true
		}
	}
	return at
}
