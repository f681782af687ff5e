package analyze

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// digitParting returns a parting written as rows of digits.
func digitParting(rows ...string) (p Parting, width, height int) {
	for _, row := range rows {
		for _, digit := range row {
			p.Of = append(p.Of, uint8(digit-'0'))
		}
	}
	return countedParting(p.Of), len(rows[0]), len(rows)
}

// countedParting makes a parting of labels, its regions named by number.
func countedParting(of []uint8) Parting {
	p := Parting{Of: of}
	for _, r := range of {
		for len(p.Regions) <= int(r) {
			p.Regions = append(p.Regions, Region{Name: fmt.Sprint(len(p.Regions))})
		}
	}
	count(p.Regions, of)
	return p
}

// By hand: a pixel with a hole in nothing, a ring of pixels around one, two that touch
// by a corner.
func TestOutlinesByHand(t *testing.T) {
	p, w, h := digitParting("0")
	assert.Equal(t, [][][]Place{{{{0, 0}, {1, 0}, {1, 1}, {0, 1}}}}, shifted(Outlines(p, w, h, 0)))

	p, w, h = digitParting(
		"0000",
		"0110",
		"0110",
		"0000")
	inner := []Place{{1, 1}, {3, 1}, {3, 3}, {1, 3}}
	hole := []Place{{1, 1}, {1, 3}, {3, 3}, {3, 1}} // the region is on the right hand here too
	assert.Equal(t, [][][]Place{{{{0, 0}, {4, 0}, {4, 4}, {0, 4}}, hole}, {inner}}, shifted(Outlines(p, w, h, 0)))

	p, w, h = digitParting(
		"01",
		"10")
	got := shifted(Outlines(p, w, h, 0))
	assert.Equal(t, [][]Place{{{0, 0}, {1, 0}, {1, 1}, {0, 1}}, {{1, 1}, {2, 1}, {2, 2}, {1, 2}}}, got[0], "two rings, not one that crosses itself")
}

// shifted begins every ring at its first place row by row.
func shifted(all [][][]Place) [][][]Place {
	for _, rings := range all {
		for i, ring := range rings {
			first := 0
			for j, p := range ring {
				if q := ring[first]; p.Y < q.Y || p.Y == q.Y && p.X < q.X {
					first = j
				}
			}
			rings[i] = append(append([]Place{}, ring[first:]...), ring[:first]...)
		}
	}
	return all
}

// laid fills every region's rings in turn; covers counts the regions a pixel is in.
func laid(rings [][][]Place, width, height int) (of []uint8, covers []int) {
	of, covers = make([]uint8, width*height), make([]int, width*height)
	for r := range rings {
		for i, in := range filled(rings[r], width, height) {
			if in {
				of[i] = uint8(r)
				covers[i]++
			}
		}
	}
	return of, covers
}

// randomPartings are partings of every kind: noise, with as many corners touching as
// can be; blots, with islands and holes; stripes; discs that reach over the border.
func randomPartings(random *rand.Rand) (of []uint8, width, height int) {
	width, height = 1+random.IntN(24), 1+random.IntN(24)
	of = make([]uint8, width*height)
	labels := 1 + random.IntN(5)
	switch kind := random.IntN(4); kind {
	case 0:
		for i := range of {
			of[i] = uint8(random.IntN(labels))
		}
	case 1:
		for range 3 * labels {
			x0, y0 := random.IntN(width), random.IntN(height)
			x1, y1 := x0+1+random.IntN(width), y0+1+random.IntN(height)
			for y := y0; y < min(height, y1); y++ {
				for x := x0; x < min(width, x1); x++ {
					of[y*width+x] = uint8(x0 % labels)
				}
			}
		}
	case 2:
		for i := range of {
			of[i] = uint8((i%width + i/width*random.IntN(2)) % labels)
		}
	case 3:
		for n := range 2 * labels {
			x0, y0, r := random.IntN(width), random.IntN(height), 1+random.IntN(9)
			for i := range of {
				if dx, dy := i%width-x0, i/width-y0; dx*dx+dy*dy < r*r {
					of[i] = uint8(n % labels)
				}
			}
		}
	}
	return of, width, height
}

// With no tolerance the outlines are the parting, whatever it looks like.
func TestOutlinesAreExact(t *testing.T) {
	slow(t)
	random := rand.New(rand.NewPCG(1, 4))
	for range 3000 {
		of, w, h := randomPartings(random)
		rings := Outlines(countedParting(of), w, h, 0)
		got, covers := laid(rings, w, h)
		require.Equal(t, of, got, "%d × %d", w, h)
		for i, n := range covers {
			require.Equal(t, 1, n, "pixel %d of %v, %d wide", i, of, w)
		}
	}
}

// fromBorder returns how far the centre of each pixel is from the nearest crack of its
// region's border, by looking at them all.
func fromBorder(of []uint8, width, height int) []float64 {
	far := make([]float64, len(of))
	for i, r := range of {
		x, y := i%width, i/width
		best := math.Inf(1)
		for j, s := range of {
			if s != r {
				dx, dy := math.Abs(float64(j%width-x)), math.Abs(float64(j/width-y))
				best = min(best, math.Hypot(max(0, dx-0.5), max(0, dy-0.5)))
			}
		}
		far[i] = best
	}
	return far
}

// Of lines that wander and double back, every stop lies within the tolerance of a
// straight line between two stops kept after one another around it; the distance is
// found here by stepping along that line.
func TestDouglasPeuckerHoldsEveryStop(t *testing.T) {
	slow(t)
	random := rand.New(rand.NewPCG(5, 4))
	left := 0
	for range 2000 {
		line := make([]stop, 2+random.IntN(12))
		for i := range line {
			line[i].X, line[i].Y = random.IntN(12), random.IntN(12)
		}
		tolerance := 6 * random.Float64()
		kept := douglasPeucker(line, tolerance)
		at := 0
		for k := 1; k < len(kept); k++ {
			from := at
			for at++; line[at] != kept[k] || k == len(kept)-1 && at < len(line)-1; at++ {
			}
			for _, s := range line[from:at] {
				nearest := math.Inf(1)
				for step := range 2001 {
					w := float64(step) / 2000
					x, y := float64(line[from].X)*(1-w)+float64(line[at].X)*w, float64(line[from].Y)*(1-w)+float64(line[at].Y)*w
					nearest = min(nearest, math.Hypot(float64(s.X)-x, float64(s.Y)-y))
				}
				require.LessOrEqual(t, nearest, tolerance+0.01, "%v of %v, kept %v", s.Point, line, kept)
			}
		}
		left += len(line) - len(kept)
	}
	assert.Greater(t, left, 2000)
}

// No pixel farther from a border than the tolerance changes its region, none is left
// out, and simpler is simpler. Partings without specks: those go by design, see below.
func TestOutlinesStayWithinTolerance(t *testing.T) {
	slow(t)
	random := rand.New(rand.NewPCG(2, 4))
	before, after, changed := 0, 0, 0
	for range 1500 {
		of, w, h := randomPartings(random)
		tolerance := 2.5 * random.Float64()
		of = withoutSpecks(of, w, h, 4*tolerance*tolerance)
		p := countedParting(of)
		rings := Outlines(p, w, h, tolerance)
		got, covers := laid(rings, w, h)
		far := fromBorder(of, w, h)
		for i := range of {
			require.Equal(t, 1, covers[i]%2, "pixel %d is in %d regions", i, covers[i])
			if far[i] > tolerance {
				require.Equal(t, of[i], got[i], "pixel %d is %.2f from a border, tolerance %.2f", i, far[i], tolerance)
				require.Equal(t, 1, covers[i])
			}
			if of[i] != got[i] {
				changed++
			}
		}
		before, after = before+places(Outlines(p, w, h, 0)), after+places(rings)
	}
	assert.Less(t, after, before*9/10, "most places of noise are knots")
	assert.Positive(t, changed, "else nothing was tested")
}

func places(all [][][]Place) (n int) {
	for _, rings := range all {
		for _, ring := range rings {
			n += len(ring)
		}
	}
	return n
}

// By hand, tolerance 1: a speck of three pixels, less than a square of 2 × 2, goes to the
// region around it; the same three pixels stay where they are all there is of a region.
func TestSpecksAreLeftOut(t *testing.T) {
	rows := []string{
		"000000000",
		"011000000",
		"010000110",
		"000000110",
		"000000110",
		"000000000"}
	p, w, h := digitParting(rows...)
	got, _ := laid(Outlines(p, w, h, 1), w, h)
	assert.Equal(t, []uint8{0, 0, 0}, []uint8{got[w+1], got[w+2], got[2*w+1]})
	assert.Equal(t, uint8(1), got[3*w+6])
	of := append([]uint8{}, p.Of...)
	of[w+1], of[w+2], of[2*w+1] = 2, 2, 2
	assert.Len(t, Outlines(countedParting(of), w, h, 1)[2], 1)
}

// A disc of radius 100: by simple geometry a chord that strays by d from a circle of
// radius r is 2·√(2·r·d) long, so with a tolerance of 1 pixel, half a pixel of it
// taken by the stairs of pixels, a ring needs about 2π·100/(2·√(2·100·1)) = 22 places and
// at the most 2π·100/(2·√(2·100·0.25)) = 44.
func TestOutlineOfADisc(t *testing.T) {
	of := make([]uint8, 220*220)
	for i := range of {
		if x, y := float64(i%220)-110, float64(i/220)-110; x*x+y*y < 100*100 {
			of[i] = 1
		}
	}
	disc := Outlines(countedParting(of), 220, 220, 1)[1]
	require.Len(t, disc, 1)
	assert.InDelta(t, 33, len(disc[0]), 11)
}

func TestOutlinesOfLittle(t *testing.T) {
	assert.Empty(t, Outlines(Parting{}, 0, 0, 1))
	p, w, h := digitParting("00000", "00100", "00000")
	assert.Len(t, Outlines(p, w, h, math.Inf(1))[1], 1, "a region without a knot keeps an area")
	assert.Panics(t, func() { Outlines(p, w, h, -1) })
	assert.Panics(t, func() { Outlines(p, w, h, math.NaN()) })
}
