package match

import (
	"math"
	"math/rand/v2"
	"testing"

	"tonewright/analyze/colour"
	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A tube with twice the prior's spread of strength, seen in tints without error,
// is found; its prediction of a mix that was held back becomes far better. The tube is
// made by scaling K here, not by paint.Vary.
func TestLearnFindsAStrongTube(t *testing.T) {
	paints := box(t, "titanium-white", "ultramarine-blue")
	true := append([]paint.Paint(nil), paints...)
	for b := range true[1].K {
		true[1].K[b] *= 1.4
	}
	look := func(parts ...float64) colour.Lab {
		return mixed(true, []Part{{Paint: 0, Parts: parts[0]}, {Paint: 1, Parts: parts[1]}})
	}
	var rounds []Round
	for _, parts := range [][]float64{{8, 1}, {4, 1}, {1, 1}} {
		rounds = append(rounds, Round{Pile: Pile{paints, parts}, Measured: look(parts...)})
	}
	tubes := Learn(rounds)
	require.Len(t, tubes, 2)
	ratio := tubes[1].Strength / tubes[0].Strength
	t.Logf("blue to white %.2f, scatter %.2f, shift %.1f nm", ratio, tubes[1].Scatter, tubes[1].Shift)
	assert.InDelta(t, 1.4, ratio, 0.2)
	held := look(2, 1)
	before := colour.DeltaE00(Pile{paints, []float64{2, 1}}.look(), held)
	after := colour.DeltaE00(tubes.pile(Pile{paints, []float64{2, 1}}).look(), held)
	t.Logf("held back: %.2f before, %.2f after", before, after)
	assert.Less(t, after, before/4)
}

// A tube that was fitted is believed more than one off the shelf, and a measurement
// that varies within the swatch less than an even one.
func TestLearnWeighsWhatIsSure(t *testing.T) {
	paints := box(t, "titanium-white", "yellow-ochre")
	pile := Pile{paints, []float64{3, 1}}
	seen := pile.look()
	seen.L -= 5
	moved := func(basis string, spread float64) float64 {
		known := Pile{append([]paint.Paint(nil), paints...), pile.Parts}
		for i := range known.Paints {
			known.Paints[i].Basis = basis
		}
		tubes := Learn([]Round{{Pile: known, Measured: seen, Spread: spread}})
		return math.Abs(math.Log(tubes[1].Strength))
	}
	shelf := moved(paint.Typical, 0)
	assert.Greater(t, shelf, 0.03)
	assert.Less(t, moved(paint.Own, 0), 0.6*shelf)
	assert.Less(t, moved(paint.Typical, 8), shelf)
}

// What fits already teaches nothing; nothing measured, nothing learned.
func TestLearnFromNothingNew(t *testing.T) {
	paints := box(t, "titanium-white", "yellow-ochre")
	pile := Pile{paints, []float64{3, 1}}
	for _, tube := range Learn([]Round{{Pile: pile, Measured: pile.look()}}) {
		assert.InDelta(t, 1, tube.Strength, 1e-3)
		assert.InDelta(t, 1, tube.Scatter, 1e-3)
		assert.InDelta(t, 0, tube.Shift, 1e-2)
	}
	assert.Empty(t, Learn(nil))
}

// With all of it taken for the pile's own, the corrected pile looks as it was measured.
func TestCorrectedPileLooksAsMeasured(t *testing.T) {
	for i, parts := range [][]float64{{8, 1, 1}, {1, 1, 1}, {0.2, 3, 1}} {
		pile := Pile{box(t, "titanium-white", "burnt-sienna", "ultramarine-blue"), parts}
		seen := pile.look()
		seen.L, seen.A, seen.B = seen.L+3, seen.A-2, seen.B+4
		whole := pile.corrected(seen, 1)
		assert.Less(t, colour.DeltaE00(whole.Masstone(), seen), 0.1, "pile %d", i)
		half := pile.corrected(seen, 0.5)
		all := colour.DeltaE00(pile.look(), seen)
		assert.InDelta(t, all/2, colour.DeltaE00(half.Masstone(), seen), 0.15*all, "pile %d", i)
	}
}

// Identity: the humps share out every band.
func TestHumpsSumToOne(t *testing.T) {
	for b := range colour.Bands {
		assert.InDelta(t, 1, humps[0][b]+humps[1][b]+humps[2][b], exact, "band %d", b)
	}
}

// The three numbers against CIEDE2000 itself, for the differences that piles have.
func TestPartedIsCIEDE2000(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	worst := 0.0
	for range 3000 {
		near := func(width float64) float64 { return width * (2*random.Float64() - 1) }
		a := colour.Lab{L: 15 + 75*random.Float64(), A: near(50), B: near(50)}
		b := colour.Lab{L: a.L + near(8), A: a.A + near(8), B: a.B + near(8)}
		d := parted(a, b)
		worst = max(worst, math.Abs(math.Sqrt(d[0]*d[0]+d[1]*d[1]+d[2]*d[2])-colour.DeltaE00(a, b)))
	}
	t.Logf("worst %.2f CIEDE2000", worst)
	assert.Less(t, worst, 1.5)
}
