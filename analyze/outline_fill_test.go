package analyze

import (
	"encoding/binary"
	"image"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// filled returns inside as a mask.
func filled(rings [][]Place, width, height int) []bool {
	in := make([]bool, width*height)
	for _, s := range inside(rings, width, height) {
		for x := s.from; x < s.to; x++ {
			in[s.y*width+x] = true
		}
	}
	return in
}

// By hand, on pictures of 4 × 4 pixels.
func TestInsideByHand(t *testing.T) {
	square := func(x0, y0, x1, y1 float64) []Place { return []Place{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}} }
	inf := math.Inf(1)
	for name, c := range map[string]struct {
		rings [][]Place
		want  string
	}{
		"whole pixels":        {[][]Place{square(1, 1, 3, 4)}, ".... .##. .##. .##."},
		"the other way round": {[][]Place{{{1, 4}, {3, 4}, {3, 1}, {1, 1}}}, ".... .##. .##. .##."},
		"centres on the left and upper border are in, on the right and lower out": {[][]Place{square(0.5, 0.5, 2.5, 2.5)}, "##.. ##.. .... ...."},
		"just short of the centres":    {[][]Place{square(0.51, 0.51, 2.51, 2.51)}, ".... .##. .##. ...."},
		"off the picture on all sides": {[][]Place{square(-9, -9, 99, 99)}, "#### #### #### ####"},
		"half off":                     {[][]Place{square(2, -5, 7, 2)}, "..## ..## .... ...."},
		"wholly off":                   {[][]Place{square(5, 5, 9, 9), square(-9, 0, -1, 4)}, ".... .... .... ...."},
		"a triangle; centres on the slope are on its right border": {[][]Place{{{0, 0}, {4, 0}, {0, 4}}}, "###. ##.. #... ...."},
		"a hole":                          {[][]Place{square(0, 0, 4, 4), square(1, 1, 3, 3)}, "#### #..# #..# ####"},
		"a ring twice is nothing":         {[][]Place{square(0, 0, 4, 4), square(0, 0, 4, 4)}, ".... .... .... ...."},
		"a bow tie crosses itself":        {[][]Place{{{0, 0}, {4, 4}, {4, 0}, {0, 4}}}, "...# #.## #.## ...#"},
		"ends closed by hand":             {[][]Place{append(square(1, 1, 3, 3), Place{1, 1})}, ".... .##. .##. ...."},
		"lines and places have no inside": {[][]Place{{{0, 0}, {4, 4}}, {{1, 1}}, {}}, ".... .... .... ...."},
		"as large as numbers go":          {[][]Place{square(-math.MaxFloat64, -math.MaxFloat64, math.MaxFloat64, math.MaxFloat64)}, "#### #### #### ####"},
		"a place nowhere":                 {[][]Place{{{0, 0}, {4, math.NaN()}, {0, 4}}, {{0, 0}, {inf, 0}, {0, 4}}}, ".... .... .... ...."},
	} {
		var got strings.Builder
		for i, in := range filled(c.rings, 4, 4) {
			if i > 0 && i%4 == 0 {
				got.WriteByte(' ')
			}
			got.WriteByte(".#"[map[bool]int{true: 1}[in]])
		}
		assert.Equal(t, c.want, got.String(), name)
	}
	assert.Empty(t, filled([][]Place{square(0, 0, 1, 1)}, 0, 0))
}

// Neighbours with the same places along their border share no pixel and leave none out:
// a net of triangles with knots anywhere, on centres and corners of pixels too, each
// triangle's ring begun anywhere and run either way. A fifth of a side to all sides is as
// far as a knot can go with every triangle still the right way round.
func TestNeighboursFit(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		const n, size = 5, 23
		var knots [n + 1][n + 1]Place
		for j := range knots {
			for i := range knots[j] {
				at := func(k int) float64 {
					if k == 0 || k == n {
						return float64(k) / n * size
					}
					return math.Round((float64(k)+0.4*random.Float64()-0.2)/n*size*64) / 64
				}
				knots[j][i] = Place{at(i), at(j)}
			}
		}
		covers := make([]int, size*size)
		for j := range n {
			for i := range n {
				a, b, c, d := knots[j][i], knots[j][i+1], knots[j+1][i+1], knots[j+1][i]
				for _, ring := range [][]Place{{a, b, c}, {a, c, d}} {
					if k := random.IntN(3); random.IntN(2) == 0 {
						ring = []Place{ring[k], ring[(k+1)%3], ring[(k+2)%3]}
					} else {
						ring = []Place{ring[k], ring[(k+2)%3], ring[(k+1)%3]}
					}
					for i, in := range filled([][]Place{ring}, size, size) {
						if in {
							covers[i]++
						}
					}
				}
			}
		}
		for i, times := range covers {
			require.Equal(t, 1, times, "pixel %d is in %d triangles", i, times)
		}
	}
}

// An area may have all three; a later one lies over an earlier one.
func TestAreasOfEveryKind(t *testing.T) {
	p := hexPicture(t, "000000 000000 000000", "000000 000000 000000")
	got := Regions(p, []Area{
		{Name: "all", Rects: []image.Rectangle{image.Rect(0, 0, 1, 1)}, Outline: [][]Place{{{1, 0}, {2, 0}, {2, 1}, {1, 1}}}, Mask: []bool{false, false, true, false, false, false}},
		{Name: "over", Outline: [][]Place{{{1, 0}, {3, 0}, {3, 2}, {1, 2}}}},
	})
	assert.Equal(t, []uint8{0, 1, 1, 2, 1, 1}, got.Of)
	assert.Equal(t, []Region{{"all", 1}, {"over", 4}, {TheRest, 1}}, got.Regions)
	assert.PanicsWithValue(t, "analyze: a mask of 2 pixels on a picture of 6", func() {
		Regions(p, []Area{{Name: "short", Mask: make([]bool, 2)}})
	})
}

// oneIn counts the borders of a ring to the left of a place: the rule itself, one pixel
// at a time.
func oneIn(ring []Place, x, y float64) bool {
	in := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if a.Y > b.Y {
			a, b = b, a
		}
		if a.Y <= y && y < b.Y && crossing(a, b, y) <= x {
			in = !in
		}
	}
	return in
}

// FuzzInside fills whatever outline there may be: no panic, and what the rule says for
// every pixel by itself.
func FuzzInside(f *testing.F) {
	bytesOf := func(values ...float64) (b []byte) {
		for _, v := range values {
			b = binary.LittleEndian.AppendUint64(b, math.Float64bits(v))
		}
		return b
	}
	f.Add(bytesOf(0, 0, 4, 4, 4, 0, 0, 4), uint8(4), uint8(4))
	f.Add(bytesOf(0.5, 0.5, 2.5, 0.5, 2.5, 2.5), uint8(3), uint8(9))
	f.Add(bytesOf(-1e300, 1, 1e300, 2, math.MaxFloat64, -math.MaxFloat64), uint8(7), uint8(1))
	f.Add(bytesOf(math.NaN(), 1, math.Inf(-1), 2, 0, 0), uint8(7), uint8(7))
	f.Add(bytesOf(1e-320, math.Copysign(0, -1), 3, 1e-320, 5, 5, 5, 0.49999999999999994), uint8(6), uint8(0))
	f.Fuzz(func(t *testing.T, data []byte, w, h uint8) {
		width, height := int(w%40), int(h%40)
		var ring []Place
		for ; len(data) >= 16 && len(ring) < 60; data = data[16:] {
			ring = append(ring, Place{math.Float64frombits(binary.LittleEndian.Uint64(data)), math.Float64frombits(binary.LittleEndian.Uint64(data[8:]))})
		}
		got := filled([][]Place{ring}, width, height)
		require.Len(t, got, width*height)
		for i, in := range got {
			require.Equal(t, finite(ring) && oneIn(ring, float64(i%width)+0.5, float64(i/width)+0.5), in, "pixel %d of %v", i, ring)
		}
	})
}
