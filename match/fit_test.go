package match

import (
	"math"
	"math/rand/v2"
	"testing"

	"tonewright/analyze/colour"

	"github.com/stretchr/testify/assert"
)

// Source: [Rosenbrock1960], whose valley has its floor at (1, 1); from (-1.2, 1).
func TestFitFindsTheFloorOfAValley(t *testing.T) {
	x := fit([]float64{-1.2, 1}, 3, func(x []float64) []float64 {
		return []float64{10 * (x[1] - x[0]*x[0]), 1 - x[0]}
	})
	assert.InDelta(t, 1, x[0], 1e-4)
	assert.InDelta(t, 1, x[1], 1e-4)
}

// A straight line through five points, worked by hand: y = 2 - x/2 and a bound that
// the slope may not pass.
func TestFitKeepsTheBound(t *testing.T) {
	line := func(x []float64) (r []float64) {
		for _, at := range []float64{0, 1, 2, 3, 4} {
			r = append(r, x[0]+x[1]*at-(2-at/2))
		}
		return r
	}
	x := fit([]float64{0, 0}, 5, line)
	assert.InDelta(t, 2, x[0], 1e-6)
	assert.InDelta(t, -0.5, x[1], 1e-6)
	x = fit([]float64{0, 0}, 1.5, line)
	assert.Equal(t, 1.5, x[0])
}

// Identity: a·solve(a, b) = b.
func TestSolve(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	const n = 7
	var half, a, kept [n][n]float64
	for i := range half {
		for j := range half {
			half[i][j] = random.NormFloat64()
		}
	}
	rows, b, want := make([][]float64, n), make([]float64, n), make([]float64, n)
	for i := range a {
		for j := range a {
			for k := range n {
				a[i][j] += half[i][k] * half[j][k]
			}
		}
		a[i][i]++
		kept[i] = a[i]
		rows[i] = a[i][:]
		b[i] = random.NormFloat64()
		want[i] = b[i]
	}
	x := solve(rows, b)
	for i := range kept {
		assert.InDelta(t, want[i], dot(kept[i][:], x), exact)
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
		worst = max(worst, math.Abs(math.Sqrt(squares(d[:]))-colour.DeltaE00(a, b)))
	}
	t.Logf("worst %.2f CIEDE2000", worst)
	assert.Less(t, worst, 1.5)
}
