package colour

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Kelly 1958, J. Res. NBS 61(5), 427: every name's own central colour has that
// name. The table is in the order of the colour numbers, as the blocks are.
func TestCentroidsHaveTheirOwnName(t *testing.T) {
	centroids := testTable(t, "centroids.txt")
	blockLines := tableLines(t, nameBlocks)
	require.Len(t, centroids, 267)
	require.Len(t, blockLines, 267)
	used := map[string]bool{}
	for i, line := range centroids {
		want, _, _ := strings.Cut(blockLines[i], ";")
		assert.Equal(t, want, notation(t, line).Name(), line)
		used[want] = true
	}
	assert.Len(t, used, 267)
}

// NBS Special Publication 440: the blocks divide the solid, so that any colour
// is in one and only one.
func TestBlocksCoverEverythingOnce(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 50000 {
		m := Munsell{100 * r.Float64(), 10 * r.Float64(), 30 * r.Float64() * r.Float64()}
		if r.IntN(2) == 0 { // on the limits, which are at tenths and halves
			m = Munsell{math.Round(m.Hue), math.Round(2*m.Value) / 2, math.Round(10*m.Chroma) / 10}
		}
		in := 0
		for _, b := range blocks() {
			if b.holds(wrap(m.Hue-1, 100)+1, min(m.Value, math.Nextafter(10, 0)), m.Chroma) {
				in++
			}
		}
		require.Equal(t, 1, in, "%+v", m)
	}
}

// NBS Special Publication 440, section 13: a minimum belongs to the block, value
// 10 and 0 to the ends, and hue goes round at 1R. Values outside are clamped.
func TestNamesAtTheLimits(t *testing.T) {
	for _, c := range []struct {
		m    Munsell
		want string
	}{
		{Munsell{0, 10, 0}, "white"},
		{Munsell{0, 11, 0}, "white"},
		{Munsell{50, 0, 0}, "black"},
		{Munsell{50, -1, -1}, "black"},
		{Munsell{50, 2.5, 0.3}, "dark gray"},
		{Munsell{50, 2.4999, 0.3}, "black"},
		{Munsell{0.5, 5, 15}, Munsell{100.5, 5, 15}.Name()},
		{Munsell{5, 4, 500}, "vivid red"},
	} {
		assert.Equal(t, c.want, c.m.Name(), "%+v", c.m)
	}
	assert.Empty(t, Munsell{math.NaN(), 5, 5}.Name())
}

// The spelling is the standard's.
func TestNamesAreSpeltGray(t *testing.T) {
	for _, line := range tableLines(t, nameBlocks) {
		assert.NotContains(t, line, "grey")
	}
	assert.Equal(t, "grayish red", Munsell{5, 4.5, 4}.Name())
}

func BenchmarkName(b *testing.B) {
	m := Munsell{62, 5.5, 6}
	for b.Loop() {
		word = m.Name()
	}
}

var word string
