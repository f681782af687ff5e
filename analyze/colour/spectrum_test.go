package colour

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestWhiteSpectrum(t *testing.T) {
	var full, dark Spectrum
	for i := range full {
		full[i] = 1
	}
	c := full.Lab()
	assert.InDelta(t, 100, c.L, exact)
	assert.InDelta(t, 0, c.Chroma(), exact)
	assert.Equal(t, Lab{}, dark.Lab())
}

// CIE 15:2018 table T.3 gives D65 as x = 0.31272, y = 0.32903 over 380-780 nm;
// our samples end at 400 and 700, which moves the fourth decimal.
func TestTablesGiveD65(t *testing.T) {
	var sum [3]float64
	for k := range sum {
		for i, v := range observer[k] {
			sum[k] += v * daylight[i]
		}
	}
	all := sum[0] + sum[1] + sum[2]
	assert.InDelta(t, 0.31272, sum[0]/all, 3e-4)
	assert.InDelta(t, 0.32903, sum[1]/all, 3e-4)
}

func TestWeights(t *testing.T) {
	s := Spectrum{}
	for i := range s {
		s[i] = float64(i*i%7) / 10
	}
	var x [3]float64
	for k, w := range Weights() {
		total := 0.0
		for i, v := range w {
			total += v
			x[k] += v * s[i]
		}
		assert.InDelta(t, 1, total, exact)
	}
	assert.Equal(t, s.Lab(), fromRatios(x[0], x[1], x[2]))
}

func BenchmarkSpectrumLab(b *testing.B) {
	s := Spectrum{0.1, 0.5, 15: 0.3, 30: 0.9}
	for b.Loop() {
		sink = s.Lab()
	}
}
