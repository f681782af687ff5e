// Tubes of one name that differ.

package paint

import (
	"math"

	"tonewright/analyze/colour"
)

// Vary returns the paint as another tube of its name might be: K times strength, S
// times scatter, and its absorption moved by shift nm towards longer wavelengths.
// strength and scatter > 0, |shift| at most a few bands. Past 400 and 700 nm K goes on
// as its last two bands do, on a scale of its logarithm, on which the edges of the
// band model are straight.
func (p Paint) Vary(strength, scatter, shift float64) Paint {
	var log colour.Spectrum
	for b, k := range p.K {
		log[b] = math.Log(max(k, leastK))
	}
	varied := p
	for b := range varied.K {
		at := float64(b) - shift/10
		i := min(max(int(math.Floor(at)), 0), colour.Bands-2)
		varied.K[b] = strength * math.Exp(log[i]+(at-float64(i))*(log[i+1]-log[i]))
		varied.S[b] = scatter * p.S[b]
	}
	return varied
}

// leastK stands for no absorption at all, where a logarithm is taken. Ours: a
// twentieth of the library's least, 2.0e-4.
const leastK = 1e-5
