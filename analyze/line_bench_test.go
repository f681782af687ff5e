package analyze

import (
	"testing"
	"time"
)

// BenchmarkLines finds the lines of a picture of 1.1 megapixels, beside a floor measured
// in the same turns: a plain Gaussian of 5 × 5 pixels over its three planes.
func BenchmarkLines(b *testing.B) {
	p := workingPicture(b, benchPhoto, 1200)
	parting := Regions(p, nil)
	planes := [3][]float32{}
	for k := range planes {
		planes[k] = make([]float32, p.Width*p.Height)
		for i := range planes[k] {
			planes[k][i] = p.Lab[3*i+k]
		}
	}
	var floor, job time.Duration
	for b.Loop() {
		start := time.Now()
		for _, plane := range planes {
			plainGauss(plane, p.Width, p.Height)
		}
		floor += time.Since(start)
		start = time.Now()
		Lines(p, parting, usualDetail)
		job += time.Since(start)
	}
	b.ReportMetric(float64(p.Width*p.Height)/1e6, "megapixels")
	b.ReportMetric(float64(floor.Microseconds())/1e3/float64(b.N), "ms-floor")
	b.ReportMetric(float64(job.Microseconds())/1e3/float64(b.N), "ms-lines")
	b.ReportMetric(float64(job)/float64(floor), "x-floor")
}

// plainGauss smooths a plane by the binomial 1 4 6 4 1 both ways, inside its frame.
func plainGauss(plane []float32, width, height int) []float32 {
	rows, result := make([]float32, len(plane)), make([]float32, len(plane))
	for y := range height {
		in, out := plane[y*width:(y+1)*width], rows[y*width:(y+1)*width]
		for x := 2; x < width-2; x++ {
			out[x] = (in[x-2] + in[x+2] + 4*(in[x-1]+in[x+1]) + 6*in[x]) / 16
		}
	}
	for y := 2; y < height-2; y++ {
		out := result[y*width : (y+1)*width]
		for x := range out {
			i := y*width + x
			out[x] = (rows[i-2*width] + rows[i+2*width] + 4*(rows[i-width]+rows[i+width]) + 6*rows[i]) / 16
		}
	}
	return result
}
