package grid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ISO 216:2007: an A size has sides as 1 to √2, and each is half of the next larger one,
// cut across, all to whole millimetres; A0 is a square metre.
func TestISOPapers(t *testing.T) {
	larger, err := ParsePaper("A0")
	require.NoError(t, err)
	assert.InDelta(t, 1e6, float64(larger.Width*larger.Height), 1000)
	for _, name := range []string{"a1", "A2", "A3", "A4"} {
		p, err := ParsePaper(name)
		require.NoError(t, err)
		assert.Equal(t, larger.Width, p.Height, name)
		assert.Equal(t, math.Floor(float64(larger.Height)/2), float64(p.Width), name)
		assert.InDelta(t, math.Sqrt2, float64(p.Height/p.Width), 0.003, name)
		larger = p
	}
}

// ASME Y14.1: each size is twice the one before, from 8.5 × 11 in.
func TestInchPapers(t *testing.T) {
	small, err := ParsePaper("letter")
	require.NoError(t, err)
	assert.InDelta(t, 215.9, float64(small.Width), 1e-9)
	for _, name := range []string{"Tabloid", "ANSI-C", "ANSI-D", "ANSI-E"} {
		p, err := ParsePaper(name)
		require.NoError(t, err)
		assert.InDelta(t, float64(small.Height), float64(p.Width), 1e-9, name)
		assert.InDelta(t, 2*float64(small.Width), float64(p.Height), 1e-9, name)
		small = p
	}
}

func TestParsePaper(t *testing.T) {
	p, err := ParsePaper("")
	require.NoError(t, err)
	assert.Equal(t, Paper{"A4", 210, 297}, p)
	assert.Equal(t, Paper{"A4", 297, 210}, p.Turned())
	_, err = ParsePaper("foolscap")
	assert.ErrorContains(t, err, `paper "foolscap" is not known: write one of A4, Letter`)
	for _, p := range Papers() {
		assert.LessOrEqual(t, p.Width, p.Height, p.Name)
	}
}
