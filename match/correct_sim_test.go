package match

import (
	"testing"

	"tonewright/analyze/colour"
	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// manners are how the painters work: how far off a part may be, what the first
// pile's part of one paint is multiplied by, and whether their light is a lamp's.
type manners struct {
	slip, rough float64
	lamp        bool
}

// correctedBy returns what so many painters' misses are before and after each round.
func correctedBy(t *testing.T, correct manner, painters int, c manners) (off [3][]float64) {
	box := paint.StarterBox().Paints
	aims, first := reachable(box)
	var photos []float64
	for n := range painters {
		p := newPainter(uint64(n), box)
		p.slip, p.lamp = c.slip, c.lamp
		start := pileOf(box, &first[n%len(aims)])
		start.Parts[n%len(start.Parts)] *= c.rough
		misses, _, errs := p.corrects(start, aims[n%len(aims)], correct, nil)
		for i, miss := range misses {
			off[i] = append(off[i], miss)
		}
		photos = append(photos, errs...)
	}
	mean := sum(photos) / float64(len(photos))
	t.Logf("%d aims; photos err by a median of %.2f, a mean of %.2f", len(aims), quantile(photos, 0.5), mean)
	if !c.lamp {
		require.InDelta(t, 1, mean, 0.2, "the photos of the painters err by about 1 CIEDE2000")
	}
	for i, v := range off {
		t.Logf("after %d: median %.2f, 90th %.2f, within 2.5 %.1f %%", i, quantile(v, 0.5), quantile(v, 0.9), 100*shareWithin(v, 2.5))
	}
	return off
}

// The loop as a whole: of 200 painters whose tubes differ from the library's (strength
// ±30 %, bands ±6 nm) and whose photos have a cast and noise, at least 90 in 100 have a
// pile truly within 2.5 CIEDE2000 of the aim after two rounds. Source: the project's own
// requirement; nothing published is known to us.
func TestTwoHundredPainters(t *testing.T) {
	slow(t)
	const painters = 200
	for _, c := range []struct {
		name string
		manners
		least float64
	}{
		{"measured out exactly", manners{0, 1, false}, 0.95},
		{"every part up to a tenth off", manners{0.1, 1, false}, 0.9},
		{"one paint of the first pile doubled", manners{0, 2, false}, 0.9},
	} {
		t.Run(c.name, func(t *testing.T) {
			learned := correctedBy(t, Correct, painters, c.manners)
			assert.GreaterOrEqual(t, shareWithin(learned[2], 2.5), c.least)
			assert.Less(t, quantile(learned[2], 0.9), quantile(learned[0], 0.9)/1.5)
			t.Log("without learning:")
			library := correctedBy(t, unlearned, painters, c.manners)
			assert.GreaterOrEqual(t, shareWithin(learned[2], 2.5), shareWithin(library[2], 2.5), "learning must not make it worse")
		})
	}
}

// A cast that is one factor a channel the card divides out; what hangs on the colour it
// does not. These painters all sit in a light of 4000 K, and no pile is surer than its
// photo: 85 in 100 are right after two rounds, and the bound is a bit under that.
func TestTwoHundredPaintersByALamp(t *testing.T) {
	slow(t)
	learned := correctedBy(t, Correct, 200, manners{0.1, 1, true})
	assert.GreaterOrEqual(t, shareWithin(learned[2], 2.5), 0.8)
	assert.Less(t, quantile(learned[2], 0.9), 3.0)
	var off []float64 // the light is as it was measured
	for n := range 400 {
		c := checker[n%len(checker)]
		off = append(off, colour.DeltaE00(c, newPainter(uint64(n), nil).underLamp()(c)))
	}
	assert.InDelta(t, lampMedian, quantile(off, 0.5), 0.15)
	assert.InDelta(t, lampNinetieth, quantile(off, 0.9), 0.5)
}

// What was learned on other piles makes the next one better from the start.
func TestLearnedTubesMakeBetterFirstMixes(t *testing.T) {
	slow(t)
	box := paint.StarterBox().Paints
	aims, first := reachable(box)
	var library, learned []float64
	for n := range 30 {
		p := newPainter(5000+uint64(n), box)
		var rounds []Round
		for i := range 5 {
			a := (n + 4*i) % len(aims)
			_, rounds, _ = p.corrects(pileOf(box, &first[a]), aims[a], Correct, rounds)
		}
		a := (n + 2) % len(aims)
		tubes := Learn(rounds)
		again := Recipes(tubes.All(box), aims[a:a+1], Options{})[0][0]
		_, before, _ := p.corrects(pileOf(box, &first[a]), aims[a], Correct, nil)
		library = append(library, colour.DeltaE00(p.look(before[0].Pile), aims[a]))
		learned = append(learned, colour.DeltaE00(p.look(pileOf(box, &again)), aims[a]))
	}
	t.Logf("first mixes: library median %.2f, 90th %.2f; learned on five other piles %.2f, %.2f",
		quantile(library, 0.5), quantile(library, 0.9), quantile(learned, 0.5), quantile(learned, 0.9))
	assert.Less(t, quantile(learned, 0.5), 0.75*quantile(library, 0.5))
	assert.Less(t, quantile(learned, 0.9), quantile(library, 0.9))
}
