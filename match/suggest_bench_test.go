package match

import (
	"testing"
	"time"
)

// BenchmarkSuggest24 asks for the complement of orange over a region of 80 colours.
// Beside the time it reports the ratio to the floor, match.Recipes for the same aims,
// taken by turns since a busy machine slows both.
func BenchmarkSuggest24(b *testing.B) {
	owned, ask := own(24), Asked{Scheme: Complement, Hue: 15, Hued: true, Aims: testAims(80, 1)}
	var suggest, floor []time.Duration
	for b.Loop() {
		b.StopTimer()
		start := time.Now()
		Recipes(owned, ask.Aims, Options{})
		floor = append(floor, time.Since(start))
		b.StartTimer()
		start = time.Now()
		Suggest(owned, ask)
		suggest = append(suggest, time.Since(start))
	}
	b.ReportMetric(float64(median(suggest))/float64(median(floor)), "x-floor")
}

// BenchmarkLadder makes a palette of three with white and reads 80 values off it.
func BenchmarkLadder(b *testing.B) {
	paints := own(24)
	for b.Loop() {
		ladder := LadderOf(paints[3:6], &paints[0], 0)
		for i := range 80 {
			_, _ = ladder.At(float64(10 + i))
		}
	}
}
