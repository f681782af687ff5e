package match

import (
	"math/rand/v2"
	"testing"

	"tonewright/analyze/colour"
	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
)

// The fast optics are held against the full ones, on as many mixes as the comment
// at screenBands speaks of.
func TestScreenAgainstFullOptics(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	library := paint.Library()
	sum, worst := 0.0, 0.0
	const count = 3000
	for range count {
		paints := []paint.Paint{library[random.IntN(len(library))], library[random.IntN(len(library))], library[random.IntN(len(library))]}
		parts := []float64{float64(1 + random.IntN(6)), float64(1 + random.IntN(6)), float64(1 + random.IntN(6))}
		k, s := paint.Mix(paints, parts)
		full := paint.Thick(&k, &s, paint.Gloss)
		a, b, c := opticsOf(&paints[0], parts[0]), opticsOf(&paints[1], parts[1]), opticsOf(&paints[2], parts[2])
		a = a.add(&b)
		d := colour.DeltaE00(full.Lab(), glossGlow.screen(&a, &c).lab())
		sum, worst = sum+d, max(worst, d)
	}
	t.Logf("mean %.3f, worst %.3f CIEDE2000", sum/count, worst)
	assert.Less(t, sum/count, 0.05)
	assert.Less(t, worst, screenError)
}

// Paints at the ends of what the tables hold: clear, white and black to the limit.
func TestScreenOfExtremes(t *testing.T) {
	for _, c := range []struct{ k, s, want float64 }{{0, 1, 99}, {100, 1e-9, 0}, {100, 0, 0}} {
		var p paint.Paint
		for b := range p.K {
			p.K[b], p.S[b] = c.k, c.s
		}
		o := opticsOf(&p, 1)
		l := glossGlow.screen(&o, &optics{}).l
		assert.InDelta(t, c.want, l, 1, "K %v, S %v", c.k, c.s)
	}
}
