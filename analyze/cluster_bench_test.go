package analyze

import (
	"math"
	"testing"

	"tonewright/analyze/colour"
)

// The same photo and number of colours for both.
const (
	benchPhoto   = "16_brushes_multicolour.jpg"
	benchColours = 12
)

func BenchmarkClusters(b *testing.B) {
	p := workingPicture(b, benchPhoto, 1200)
	whole := oneRegion(p)
	var c Clustering
	for b.Loop() {
		c = Clusters(p, whole, ClusterOptions{Colours: benchColours})
	}
	b.ReportMetric(regionErrors(p, whole, c)[0], "ΔE00")
}

func BenchmarkPlainKMeans(b *testing.B) {
	p := workingPicture(b, benchPhoto, 1200)
	var of []uint8
	var centres []colour.Lab
	for b.Loop() {
		of, centres = plainKMeans(p, benchColours)
	}
	sum := 0.0
	for i, k := range of {
		sum += colour.DeltaE00(p.At(i), centres[k])
	}
	b.ReportMetric(sum/float64(len(of)), "ΔE00")
}

// plainKMeans is Lloyd's algorithm on every pixel in Lab, run until no pixel moves,
// from centres at evenly spaced pixels in the order of lightness.
func plainKMeans(p *Picture, k int) ([]uint8, []colour.Lab) {
	n := p.Width * p.Height
	centres := make([]colour.Lab, k)
	for j := range centres {
		centres[j] = p.At((2*j + 1) * n / (2 * k))
	}
	of := make([]uint8, n)
	for moved := true; moved; {
		moved = false
		sums := make([]colour.Lab, k)
		counts := make([]float64, k)
		for i := range of {
			c := p.At(i)
			best, least := 0, math.MaxFloat64
			for j, m := range centres {
				if d := (c.L-m.L)*(c.L-m.L) + (c.A-m.A)*(c.A-m.A) + (c.B-m.B)*(c.B-m.B); d < least {
					best, least = j, d
				}
			}
			moved = moved || int(of[i]) != best
			of[i] = uint8(best)
			sums[best].L += c.L
			sums[best].A += c.A
			sums[best].B += c.B
			counts[best]++
		}
		for j := range centres {
			if counts[j] > 0 {
				centres[j] = colour.Lab{L: sums[j].L / counts[j], A: sums[j].A / counts[j], B: sums[j].B / counts[j]}
			}
		}
	}
	return of, centres
}
