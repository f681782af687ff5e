package analyze

import (
	"image"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// parted returns a picture painted by paint and parted by part.
func parted(width, height int, part func(x, y int) uint8, paint func(x, y int) colour.Lab) (*Picture, Parting) {
	parting := Parting{Of: make([]uint8, 0, width*height)}
	regions := 0
	for y := range height {
		for x := range width {
			parting.Of = append(parting.Of, part(x, y))
			regions = max(regions, int(part(x, y))+1)
		}
	}
	parting.Regions = make([]Region, regions)
	count(parting.Regions, parting.Of)
	return paintedPicture(width, height, paint), parting
}

func halves(at int) func(x, y int) uint8 {
	return func(x, _ int) uint8 {
		if x < at {
			return 0
		}
		return 1
	}
}

// Red and green of one L*, side by side: the whole edge is lost, 200 pixels of it, along
// the last column of the red, and colour alone tells it, by hand ΔL* and ΔC* nothing.
func TestLostEdgeOfTwoHalves(t *testing.T) {
	red, green := colour.Lab{L: 50, A: 40}, colour.Lab{L: 50, A: -40}
	p, parting := parted(300, 200, halves(120), func(x, _ int) colour.Lab {
		if x < 120 {
			return red
		}
		return green
	})
	edges := LostEdges(p, parting)
	require.Len(t, edges, 1)
	e := edges[0]
	assert.Equal(t, []int{0, 1}, []int{e.A, e.B})
	assert.InDelta(t, 200, e.Length, exact)
	assert.InDelta(t, 1, e.Share, exact)
	assert.Zero(t, e.ValueApart)
	assert.InDelta(t, colour.DeltaE00(red, green), e.DeltaE, 1e-6)
	require.Len(t, e.Pixels, 200)
	for i, at := range e.Pixels {
		assert.Equal(t, image.Pt(119, 199-i), at)
	}
}

// Less than half a Munsell value apart is lost, more is firm: by [ASTMD1535], values 5
// and 4 are L* 51.0 and 40.7 (see luminance), so 5.0 of L* and 5.4 lie about the limit.
func TestHalfAValueApart(t *testing.T) {
	five := lightnessOf(luminance[4])
	tenth := (five - lightnessOf(luminance[3])) / 10
	for tenths, lost := range map[float64]int{0: 1, 3: 1, -3: 1, 4.7: 1, -4.7: 1, 5.3: 0, -5.3: 0, 20: 0} {
		p, parting := parted(200, 200, halves(100), func(x, _ int) colour.Lab {
			if x < 100 {
				return colour.Lab{L: five}
			}
			return colour.Lab{L: five - tenths*tenth, A: 30}
		})
		edges := LostEdges(p, parting)
		require.Len(t, edges, lost, "%v tenths", tenths)
		if lost == 1 {
			assert.InDelta(t, math.Abs(tenths)/10, edges[0].ValueApart, 0.01)
		}
	}
}

// A light that changes down the right half crosses the value of the left: the edge is
// lost as long as they are less than half a value apart, and nowhere else.
func TestEdgeLostWhereGradientCrosses(t *testing.T) {
	const height = 400
	low, high := colour.LOf(3), colour.LOf(7)
	right := func(y int) float64 { return low + (high-low)*(float64(y)+0.5)/height }
	p, parting := parted(300, height, halves(150), func(x, y int) colour.Lab {
		if x < 150 {
			return colour.Lab{L: colour.LOf(5)}
		}
		return colour.Lab{L: right(y)}
	})
	edges := LostEdges(p, parting)
	require.Len(t, edges, 1)
	lost := 0.0
	for y := range height {
		if l := right(y); l > colour.LOf(4.5) && l < colour.LOf(5.5) {
			lost++
		}
	}
	assert.InDelta(t, lost, edges[0].Length, 3)
	assert.InDelta(t, lost/height, edges[0].Share, 0.01)
	assert.InDelta(t, 0.25, edges[0].ValueApart, 0.02, "evenly from 0.5 to 0 and back")
	for _, at := range edges[0].Pixels {
		assert.InDelta(t, colour.LOf(5), right(at.Y), (high-low)/8+0.5)
	}
}

// The pixels at the seam are of both sides and do not count: neither a dark line along
// an edge that is lost, nor a blend that is alike on both sides of one that is firm.
func TestSeamDoesNotCount(t *testing.T) {
	seam := func(left, at, right float64) []Edge {
		p, parting := parted(300, 300, halves(150), func(x, _ int) colour.Lab {
			switch {
			case x == 149 || x == 150:
				return colour.Lab{L: at}
			case x < 150:
				return colour.Lab{L: left}
			}
			return colour.Lab{L: right}
		})
		return LostEdges(p, parting)
	}
	require.Len(t, seam(50, 20, 50), 1)
	assert.InDelta(t, 0, seam(50, 20, 52)[0].ValueApart, 0.21)
	assert.Empty(t, seam(42, 45, 48))
}

// A disc of radius 60 in a field whose upper part has its value: the stretch goes over
// the ring's first crack, at its top, and is one all the same. In a field of one value
// all of it is lost, and as long as a circle is.
func TestLostEdgeOfADisc(t *testing.T) {
	const r, side = 60.0, 300
	disc := func(x, y int) uint8 {
		if math.Hypot(float64(x)+0.5-side/2, float64(y)+0.5-side/2) < r {
			return 1
		}
		return 0
	}
	paint := func(below int) func(x, y int) colour.Lab {
		return func(x, y int) colour.Lab {
			switch {
			case disc(x, y) == 1:
				return colour.Lab{L: 50, A: 30}
			case y < below:
				return colour.Lab{L: 51}
			}
			return colour.Lab{L: 90}
		}
	}
	edges := LostEdges(parted(side, side, disc, paint(side)))
	require.Len(t, edges, 1)
	assert.InDelta(t, 2*math.Pi*r, edges[0].Length, 0.03*2*math.Pi*r)
	assert.InDelta(t, 1, edges[0].Share, exact)

	edges = LostEdges(parted(side, side, disc, paint(side/2)))
	require.Len(t, edges, 1)
	assert.InDelta(t, math.Pi*r, edges[0].Length, 0.05*math.Pi*r)
	for i, at := range edges[0].Pixels {
		assert.Less(t, at.Y, side/2+4)
		assert.EqualValues(t, 1, disc(at.X, at.Y), "in the smaller region")
		if i > 0 {
			step := at.Sub(edges[0].Pixels[i-1])
			assert.LessOrEqual(t, max(step.X, -step.X, step.Y, -step.Y), 1, "one stretch")
		}
	}
}

// Only what is long enough to be softened or saved: of three gaps in a firm edge those
// of 40 and 20 pixels are lost, of a short side of 400, one of 11 is not.
func TestShortStretchesDoNotCount(t *testing.T) {
	gaps := [][2]int{{50, 90}, {150, 161}, {300, 320}}
	p, parting := parted(500, 400, halves(200), func(x, y int) colour.Lab {
		for _, g := range gaps {
			if x >= 200 && y >= g[0] && y < g[1] {
				return colour.Lab{L: 50, B: 20}
			}
		}
		if x < 200 {
			return colour.Lab{L: 50}
		}
		return colour.Lab{L: 80}
	})
	edges := LostEdges(p, parting)
	require.Len(t, edges, 1)
	assert.InDelta(t, 60, edges[0].Length, 12, "the ends of a stretch, where the light jumps, are not sharp")
	for _, at := range edges[0].Pixels {
		assert.True(t, at.Y >= 45 && at.Y < 95 || at.Y >= 295 && at.Y < 325, "%v", at)
	}
}

// The frame is no edge; regions of a pixel or two are looked at as far as they go.
func TestEdgesOfOddPictures(t *testing.T) {
	gray := func(int, int) colour.Lab { return colour.Lab{L: 50} }
	assert.Empty(t, LostEdges(parted(40, 30, func(int, int) uint8 { return 0 }, gray)))
	assert.Empty(t, LostEdges(&Picture{}, Parting{}))
	edges := LostEdges(parted(40, 30, func(x, _ int) uint8 { return uint8(x % 3) }, gray))
	assert.Len(t, edges, 3)
	edges = LostEdges(parted(1, 2, func(_, y int) uint8 { return uint8(y) }, gray))
	require.Len(t, edges, 1)
	assert.Equal(t, []image.Point{{X: 0, Y: 0}}, edges[0].Pixels)
	assert.PanicsWithValue(t, "analyze: the parting is not of that picture", func() { LostEdges(&Picture{Width: 1, Height: 1}, Parting{}) })
}

// Every side between two regions is in one line, once, with the lower number on the left,
// and each goes on where the one before ends; a ring ends where it starts.
func TestLinesHoldEverySide(t *testing.T) {
	g := grain{state: 3}
	const w, h = 37, 29
	of := make([]uint8, w*h)
	for i := range of {
		of[i] = uint8(g.on(colour.Lab{L: 1.5}, 1.49).L)
	}
	sides := 0
	for i := range of {
		if i%w > 0 && of[i] != of[i-1] {
			sides++
		}
		if i >= w && of[i] != of[i-w] {
			sides++
		}
	}
	seen := map[[2]image.Point]bool{}
	rings := 0
	for _, l := range linesOf(of, w, h) {
		for i, c := range l.cracks {
			left, right := c.from.Add(leftOf[c.way]), c.from.Add(rightOf[c.way])
			assert.Equal(t, []uint8{of[left.Y*w+left.X], of[right.Y*w+right.X]}, []uint8{c.a, c.b})
			assert.Less(t, c.a, c.b)
			seen[[2]image.Point{left, right}] = true
			if i > 0 {
				assert.Equal(t, l.cracks[i-1].from.Add(stride[l.cracks[i-1].way]), c.from)
			}
		}
		end := l.cracks[len(l.cracks)-1]
		if l.ring {
			rings++
			assert.Equal(t, l.cracks[0].from, end.from.Add(stride[end.way]))
		}
	}
	assert.Len(t, seen, sides)
	assert.Positive(t, rings)
	assert.Greater(t, sides, 1000)
}

// Two pixels that meet in a corner are two rings: a line keeps to one.
func TestLinesPartInACorner(t *testing.T) {
	lines := linesOf([]uint8{
		1, 1, 1, 1,
		1, 0, 1, 1,
		1, 1, 0, 1,
		1, 1, 1, 1}, 4, 4)
	require.Len(t, lines, 2)
	for _, l := range lines {
		assert.True(t, l.ring)
		assert.Len(t, l.cracks, 4)
	}
}

// Along a ring of four, by hand: what is before the first is the last.
func TestMeansGoRound(t *testing.T) {
	s := newSums(4)
	for i, l := range []float64{1, 2, 4, 9} {
		s.put(i, colour.Lab{L: l})
	}
	assert.InDelta(t, 4, s.mean(-1, 2).L, exact)
	assert.InDelta(t, 14.0/3, s.mean(2, 5).L, exact)
	assert.InDelta(t, 3, s.mean(1, 3).L, exact)
}

// The demo painted flat, every thing in its true mean: of all that touch, kettle and
// shelf alone are less than half a value apart (L* 31.9 and 28.2 in kettle.json), and
// that all along.
func TestDemoLostEdge(t *testing.T) {
	parting, w, h, known := demoMask(t)
	p := paintedPicture(w, h, func(x, y int) colour.Lab {
		m := known[parting.Of[y*w+x]].Mean
		return colour.Lab{L: m[0], A: m[1], B: m[2]}
	})
	edges := LostEdges(p, parting)
	require.Len(t, edges, 1)
	e := edges[0]
	assert.Equal(t, []string{"shelf", "kettle"}, []string{known[e.A].Name, known[e.B].Name})
	assert.Greater(t, e.Share, 0.99, "but for a corner of the mask of a few pixels")
	assert.InDelta(t, colour.ValueOf(31.90)-colour.ValueOf(28.18), e.ValueApart, 0.01)
	assert.Greater(t, e.DeltaE, 10.0, "the copper is told from the slate by its colour")
}
