// Package fit finds the few dozen numbers that meet what was measured best: damped
// least squares, and the small dense solver under it.
package fit

import "math"

const (
	mostSteps = 60   // at most
	settled   = 1e-5 // a step whose every number is smaller ends the fit
	nudge     = 1e-3 // by which a number is moved for its derivative
	firstDamp = 1e-3 // damping to start with, as a share of the diagonal
	giveUp    = 1e8  // damping past which nothing gets better
)

// Least returns the numbers x, each in -bound to bound (math.Inf(1): any), that make the
// sum of the squared residuals least, near from. The residuals are as many for every x,
// and are scaled so that a step of 1 in any x is of the size of what may be expected.
// Source: [Marquardt1963], Gauss-Newton steps damped by a share of the diagonal; the
// derivatives are differences.
func Least(from []float64, bound float64, residuals func(x []float64) []float64) []float64 {
	x := append([]float64(nil), from...)
	r := residuals(x)
	damp := firstDamp
	for range mostSteps {
		square, slope := normal(x, r, residuals)
		moved := false
		for !moved && damp < giveUp {
			next := stepped(x, square, slope, damp, bound)
			if at := residuals(next); squares(at) < squares(r) {
				moved = true
				damp /= 10
				still := farthestApart(x, next) < settled
				x, r = next, at
				if still {
					return x
				}
				break
			}
			damp *= 10
		}
		if !moved {
			return x
		}
	}
	return x
}

// normal returns JᵀJ and Jᵀr of the residuals at x.
func normal(x, r []float64, residuals func(x []float64) []float64) (square [][]float64, slope []float64) {
	n := len(x)
	columns := make([][]float64, n)
	for i := range x {
		right := x[i]
		x[i] = right + nudge
		up := residuals(x)
		x[i] = right - nudge
		down := residuals(x)
		x[i] = right
		columns[i] = make([]float64, len(r))
		for j := range r {
			columns[i][j] = (up[j] - down[j]) / (2 * nudge)
		}
	}
	square, slope = make([][]float64, n), make([]float64, n)
	for i := range columns {
		square[i] = make([]float64, n)
		for j := range columns {
			square[i][j] = dot(columns[i], columns[j])
		}
		slope[i] = dot(columns[i], r)
	}
	return square, slope
}

// stepped returns x after one damped step.
func stepped(x []float64, square [][]float64, slope []float64, damp, bound float64) []float64 {
	n := len(x)
	damped, down := make([][]float64, n), make([]float64, n)
	for i := range n {
		damped[i] = append([]float64(nil), square[i]...)
		damped[i][i] += damp * (square[i][i] + 1) // 1: a number that nothing hangs on stays where it is
		down[i] = -slope[i]
	}
	step := solve(damped, down)
	next := make([]float64, n)
	for i := range next {
		next[i] = min(max(x[i]+step[i], -bound), bound)
	}
	return next
}

// solve returns x of a·x = b for a symmetric positive a, both of which it overwrites.
// Source: Cholesky's a = l·lᵀ, as in any textbook; l takes the place of the lower half.
func solve(a [][]float64, b []float64) []float64 {
	n := len(b)
	for i := range n {
		for j := range i + 1 {
			left := a[i][j] - dot(a[i][:j], a[j][:j])
			if i == j {
				a[i][i] = math.Sqrt(max(left, math.SmallestNonzeroFloat32))
			} else {
				a[i][j] = left / a[j][j]
			}
		}
	}
	for i := range n {
		b[i] = (b[i] - dot(a[i][:i], b[:i])) / a[i][i]
	}
	for i := n - 1; i >= 0; i-- {
		for j := i + 1; j < n; j++ {
			b[i] -= a[j][i] * b[j]
		}
		b[i] /= a[i][i]
	}
	return b
}

func dot(a, b []float64) (sum float64) {
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}

func squares(v []float64) float64 { return dot(v, v) }

func farthestApart(a, b []float64) (most float64) {
	for i := range a {
		most = max(most, math.Abs(a[i]-b[i]))
	}
	return most
}
