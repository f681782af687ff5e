// Damped least squares for a few dozen unknowns.

package tube

import "math"

const (
	mostSteps  = 60   // ours: the tests' fits end within 25
	stillMoves = 1e-7 // the largest move of an unknown that no longer counts
	nudge      = 1e-6 // for slopes, in the unknowns' own unit, a logarithm
)

// leastSquares returns the unknowns, from x on, at which the sum of the squared
// residuals is least, as far as the way downhill leads. len of the residuals is fixed.
// Source: [Marquardt1963]: (JᵀJ + λ·diag JᵀJ) step = -Jᵀr, λ up when a step fails.
func leastSquares(x []float64, residuals func([]float64) []float64) []float64 {
	left := residuals(x)
	cost := squares(0, left)
	damping := 1e-3
	for range mostSteps {
		normal, downhill := normalEquations(x, left, residuals)
		moved := false
		for !moved && damping < 1e8 {
			step := solve(normal, downhill, damping)
			next := make([]float64, len(x))
			size := 0.0
			for i := range x {
				next[i] = x[i] + step[i]
				size = max(size, math.Abs(step[i]))
			}
			if size < stillMoves {
				return x
			}
			nextLeft := residuals(next)
			if nextCost := squares(0, nextLeft); nextCost < cost {
				x, left, cost, moved = next, nextLeft, nextCost, true
				damping = max(damping/10, 1e-12)
			} else {
				damping *= 10
			}
		}
		if !moved {
			return x
		}
	}
	return x
}

// normalEquations returns JᵀJ and -Jᵀr with slopes taken by small moves.
func normalEquations(x, left []float64, residuals func([]float64) []float64) ([][]float64, []float64) {
	columns := make([][]float64, len(x))
	moved := append([]float64(nil), x...)
	for i := range x {
		moved[i] = x[i] + nudge
		columns[i] = residuals(moved)
		for j := range left {
			columns[i][j] = (columns[i][j] - left[j]) / nudge
		}
		moved[i] = x[i]
	}
	normal, downhill := make([][]float64, len(x)), make([]float64, len(x))
	for i := range x {
		normal[i] = make([]float64, len(x))
		for j := range i + 1 {
			normal[i][j] = dot(columns[i], columns[j])
			normal[j][i] = normal[i][j]
		}
		downhill[i] = -dot(columns[i], left)
	}
	return normal, downhill
}

func dot(a, b []float64) (sum float64) {
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}

// solve returns the step of (normal + damping·diagonal) step = downhill; normal is
// symmetric and not negative. Cholesky's way: a lower triangle times its mirror.
func solve(normal [][]float64, downhill []float64, damping float64) []float64 {
	n := len(downhill)
	low := make([][]float64, n)
	for i := range n {
		low[i] = make([]float64, i+1)
		for j := range i + 1 {
			v := normal[i][j] - dot(low[i][:j], low[j][:j])
			if i == j {
				v += damping*normal[i][i] + 1e-12 // keeps an unknown nothing depends on in its place
				low[i][i] = math.Sqrt(max(v, 1e-12))
			} else {
				low[i][j] = v / low[j][j]
			}
		}
	}
	step := make([]float64, n)
	for i := range n {
		step[i] = (downhill[i] - dot(low[i][:i], step[:i])) / low[i][i]
	}
	for i := n - 1; i >= 0; i-- {
		step[i] /= low[i][i]
		for j := range i {
			step[j] -= low[i][j] * step[i]
		}
	}
	return step
}
