package match

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// palettes returns seeded palettes of one to four library paints, every other one
// with white.
func palettes(count int) (all [][]paint.Paint, whites []*paint.Paint) {
	random := rand.New(rand.NewPCG(3, 5))
	library := paint.Library()
	for i := range count {
		var paints []paint.Paint
		for _, p := range random.Perm(len(library))[:1+random.IntN(4)] {
			paints = append(paints, library[p])
		}
		white := &library[0]
		if i%2 == 0 {
			white = nil
		}
		all, whites = append(all, paints), append(whites, white)
	}
	return all, whites
}

// A ladder has one mix for a value, lighter for a lighter one, and its colour does not
// leap: 6 CIEDE2000 over a tenth of L* is the steepest that is allowed here, at a
// string's turn, where lightness hardly changes while colour does.
func TestLadderRises(t *testing.T) {
	all, whites := palettes(200)
	for i, paints := range all {
		l := LadderOf(paints, whites[i], paint.Gloss)
		lo, hi := l.Reach()
		last, within := l.At(lo)
		assert.True(t, within)
		for at := lo + 0.1; at < hi; at += 0.1 {
			c, within := l.At(at)
			require.True(t, within)
			require.InDelta(t, at, c.L, exact)
			if at > 9 {
				require.Less(t, colour.DeltaE00(last, c), 6.0, "%v at %.1f", ids(paints), at)
			}
			last = c
		}
	}
}

// The ladder goes as far as its strings do, and no farther: each is sampled here anew,
// evenly by shares.
func TestLadderReachesAsFarAsItsStrings(t *testing.T) {
	all, whites := palettes(60)
	for i, paints := range all {
		if whites[i] != nil {
			paints = append(paints, *whites[i])
		}
		row := byValue(paints)
		l := LadderOf(paints, nil, paint.Matt)
		lo, hi := l.Reach()
		least, most := math.Inf(1), math.Inf(-1)
		for p := range row {
			next := min(p+1, len(row)-1)
			for s := range 2001 {
				at := labOf([]paint.Paint{row[p], row[next]}, []float64{1 - float64(s)/2000, float64(s) / 2000}, paint.Matt).L
				least, most = min(least, at), max(most, at)
			}
		}
		assert.InDelta(t, least, lo, 0.1, "%v", ids(paints))
		assert.InDelta(t, most, hi, 0.1, "%v", ids(paints))
		assert.LessOrEqual(t, lo, least+0.001)
	}
}

func ids(paints []paint.Paint) (all []string) {
	for _, p := range paints {
		all = append(all, p.ID)
	}
	return all
}
