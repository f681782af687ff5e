package match

import (
	"math"
	"math/rand/v2"
	"testing"

	"tonewright/analyze/colour"

	"github.com/stretchr/testify/assert"
)

// Every gauge is held against CIEDE2000 itself, over all columns and near to the
// jump: the search's slack covers what it errs by, but not more.
func TestGaugesAgainstCIEDE2000(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 1))
	for _, aim := range []colour.Lab{
		{L: 57, A: 87, B: -29}, {L: 40, A: 8, B: -49}, {L: 63, A: 67, B: -34}, // violets and blues
		{L: 50, A: 60, B: 40}, {L: 80, A: 5, B: 85}, {L: 45, A: -45, B: 20}, {L: 50, A: 3, B: 2}, {L: 30, A: -10, B: -12},
	} {
		l := newLens(aim, &looks{})
		over := 0
		const count = 2000
		for range count {
			a, b := random.Float64()*120-60, random.Float64()*120-60
			p := pointOf(colour.Lab{L: aim.L, A: a, B: b})
			exact := colour.DeltaE00(aim, p.lab())
			rough := float64(sqrt32(l.form(columnOf(p)).form(p.a, p.b)))
			if math.Max(rough, exact) > slack*math.Min(rough, exact)+0.5 {
				over++
			}
		}
		assert.Less(t, over, count/50, "aim %v: %d of %d beyond the slack", aim, over, count)
	}
}

// On either side of the jump, a hair from it, a violet's grain has that side's value.
func TestGrainKnowsBothSidesOfTheJump(t *testing.T) {
	aim := colour.Lab{L: 57, A: 80, B: -50}
	l := newLens(aim, &looks{})
	jumps := 0
	for chroma := 4.0; chroma < 20; chroma++ {
		a, b := -aim.A/aim.Chroma()*chroma, -aim.B/aim.Chroma()*chroma
		var seen, want [2]float64
		for side, off := range []float64{0.3, -0.3} {
			p := pointOf(colour.Lab{L: aim.L, A: a - off*aim.B/aim.Chroma(), B: b + off*aim.A/aim.Chroma()})
			want[side] = colour.DeltaE00(aim, p.lab())
			seen[side] = float64(sqrt32(l.form(columnOf(p)).form(p.a, p.b)))
			assert.InEpsilon(t, want[side], seen[side], 0.1, "chroma %v, %v off the jump", chroma, off)
		}
		if math.Abs(want[0]-want[1]) > 3 {
			jumps++
		}
	}
	assert.Positive(t, jumps, "CIEDE2000 jumps there")
}
