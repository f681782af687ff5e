package match

import (
	"testing"
	"time"
)

// Ten of own(24) for testAims(80, 1) in seven regions, and fewer for a limit; ten of
// own(40) for 200 aims is where the search is cut short.

func BenchmarkFewest24(b *testing.B) { benchmarkFewest(b, 24, 80, FewestOptions{Most: 10}) }

func BenchmarkFewestWithin24(b *testing.B) { benchmarkFewest(b, 24, 80, FewestOptions{Within: 4}) }

func BenchmarkFewest40(b *testing.B) { benchmarkFewest(b, 40, 200, FewestOptions{Most: 10}) }

// benchmarkFewest reports beside the time the ratio to the floor, the recipes of the
// whole box for the same aims, taken by turns since a busy machine slows both.
func benchmarkFewest(b *testing.B, paints, count int, opt FewestOptions) {
	box, aims := own(paints), testAims(count, 1)
	for a := range aims {
		opt.Regions = append(opt.Regions, a*7/count)
	}
	var few, floor []time.Duration
	for b.Loop() {
		b.StopTimer()
		start := time.Now()
		Recipes(box, aims, Options{})
		floor = append(floor, time.Since(start))
		b.StartTimer()
		start = time.Now()
		FewestTubes(box, aims, opt)
		few = append(few, time.Since(start))
	}
	b.ReportMetric(float64(median(few))/float64(median(floor)), "x-floor")
}
