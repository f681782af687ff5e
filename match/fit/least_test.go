package fit

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

const exact = 1e-9

// Source: [Rosenbrock1960], whose valley has its floor at (1, 1); from (-1.2, 1).
func TestFitFindsTheFloorOfAValley(t *testing.T) {
	x := Least([]float64{-1.2, 1}, 3, func(x []float64) []float64 {
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
	x := Least([]float64{0, 0}, 5, line)
	assert.InDelta(t, 2, x[0], 1e-6)
	assert.InDelta(t, -0.5, x[1], 1e-6)
	x = Least([]float64{0, 0}, 1.5, line)
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
