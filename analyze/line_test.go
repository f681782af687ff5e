package analyze

import (
	"fmt"
	"image"
	"image/png"
	"math"
	"os"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// mostDetail draws all that was found.
const mostDetail = 10

// near2mm returns 2 mm on a panel of 12 × 9 in, in pixels of a picture that fills it.
func near2mm(p *Picture) float64 { return 2 / 304.8 * float64(p.Width) }

// outline returns places along the true outlines: the middles of the sides between
// pixels of two things.
func outline(p *Picture, of []uint8) (places []Place) {
	for y := range p.Height {
		for x := range p.Width {
			i := y*p.Width + x
			if x+1 < p.Width && of[i] != of[i+1] {
				places = append(places, Place{float64(x) + 1, float64(y) + 0.5})
			}
			if y+1 < p.Height && of[i] != of[i+p.Width] {
				places = append(places, Place{float64(x) + 0.5, float64(y) + 1})
			}
		}
	}
	return places
}

// along returns places along lines, a pixel apart.
func along(lines []Line) (places []Place) {
	for _, l := range lines {
		for i, a := range l.Places {
			b := l.Places[(i+1)%len(l.Places)]
			if long := a.to(b); l.Closed || i+1 < len(l.Places) {
				for d := 0.0; d < long; d++ {
					places = append(places, Place{a.X + d/long*(b.X-a.X), a.Y + d/long*(b.Y-a.Y)})
				}
			}
		}
	}
	return places
}

// shareNear returns the share of places that others lie within reach of.
func shareNear(places, others []Place, reach float64) float64 {
	squares := map[image.Point][]Place{}
	square := func(p Place) image.Point { return image.Pt(int(p.X/reach), int(p.Y/reach)) }
	for _, p := range others {
		squares[square(p)] = append(squares[square(p)], p)
	}
	near := 0
	for _, p := range places {
		if anyNear(squares, square(p), p, reach) {
			near++
		}
	}
	return float64(near) / float64(max(1, len(places)))
}

func anyNear(squares map[image.Point][]Place, at image.Point, p Place, reach float64) bool {
	for k := range 9 {
		for _, q := range squares[at.Add(image.Pt(k%3-1, k/3-1))] {
			if p.to(q) <= reach {
				return true
			}
		}
	}
	return false
}

// demoScene returns the demo photo at working size and the true thing at each pixel.
func demoScene(t testing.TB) (*Picture, []uint8) {
	photo, err := Open("../testdata/kettle.jpg", Limits{})
	require.NoError(t, err)
	p, err := photo.Picture(image.Rectangle{}, 0, colour.Lab{})
	require.NoError(t, err)
	f, err := os.Open("../testdata/kettle-mask.png")
	require.NoError(t, err)
	defer f.Close()
	mask, err := png.Decode(f)
	require.NoError(t, err)
	m := mask.(*image.Paletted)
	var of []uint8
	for y := range p.Height {
		for x := range p.Width {
			of = append(of, m.ColorIndexAt((2*x+1)*m.Rect.Dx()/(2*p.Width), (2*y+1)*m.Rect.Dy()/(2*p.Height)))
		}
	}
	return p, of
}

// At the usual detail at least nine tenths of the true outlines are drawn, to 2 mm on a
// panel of 12 × 9 in, and less than three tenths of what is drawn is no outline; at the
// least detail hardly any of it. The demo is rendered (testdata/scene), so its truth is
// its mask; the made scene's is how it is made.
func TestTrueOutlinesAreDrawn(t *testing.T) {
	slow(t)
	for name, scene := range map[string]func() (*Picture, []uint8){
		"demo": func() (*Picture, []uint8) { return demoScene(t) },
		"made": madeScene,
	} {
		p, of := scene()
		truth, parting := outline(p, of), Regions(p, nil)
		for _, detail := range []int{leastDetail, usualDetail} {
			lines := Lines(p, parting, detail)
			drawn := along(lines)
			found, untrue := shareNear(truth, drawn, near2mm(p)), 1-shareNear(drawn, truth, near2mm(p))
			t.Logf("%s, detail %2d: %3d lines, %.1f %% of the outlines found, %.1f %% of the lines no outline", name, detail, len(lines), 100*found, 100*untrue)
			if detail == usualDetail {
				assert.GreaterOrEqual(t, found, 0.9, name)
				assert.Less(t, untrue, 0.3, name)
			}
			if detail == leastDetail {
				assert.GreaterOrEqual(t, found, 0.8, "%s: the outlines come first", name)
				assert.Less(t, untrue, 0.1, "%s: the outlines come first", name)
			}
		}
	}
}

// What lies on the things alone draws nothing: grain, spots, light falling off, and
// checks whose squares are up to 8 pixels, 2.4 mm on a 12-inch panel.
func TestTextureDrawsNothing(t *testing.T) {
	slow(t)
	base := colour.Lab{L: 55, A: 5, B: 10}
	spots := blotches(6, 10)
	textures := map[string]func(g *grain, x, y int) colour.Lab{
		"grain": func(g *grain, _, _ int) colour.Lab { return g.on(base, 25) },
		"spots": func(g *grain, x, y int) colour.Lab {
			return g.on(colour.Lab{L: base.L + spots(float64(x), float64(y)), A: base.A, B: base.B}, 3)
		},
		"light": func(g *grain, x, _ int) colour.Lab {
			return g.on(colour.Lab{L: base.L + float64(x-400)/10, A: base.A, B: base.B}, 3)
		},
	}
	for _, side := range []int{1, 2, 3, 5, 8} {
		textures[fmt.Sprint("check of ", side)] = func(g *grain, x, y int) colour.Lab {
			return g.on(colour.Lab{L: base.L + 30*float64((x/side+y/side)%2) - 15, A: base.A, B: base.B}, 2)
		}
	}
	for name, paint := range textures {
		g := &grain{3}
		p := paintedPicture(1000, 600, func(x, y int) colour.Lab { return paint(g, x, y) })
		assert.Empty(t, Lines(p, oneRegion(p), usualDetail), name)
	}
}

// A disc is one closed line, clockwise from its top, on its edge to half a pixel. By hand:
// its edge is the circle it is made by.
func TestLineAroundADisc(t *testing.T) {
	const cx, cy, r = 260, 210, 120
	p := paintedPicture(500, 400, func(x, y int) colour.Lab {
		in := 0.0
		for k := range 16 {
			if math.Hypot(float64(x)+(float64(k%4)+0.5)/4-cx, float64(y)+(float64(k/4)+0.5)/4-cy) < r {
				in += 1.0 / 16
			}
		}
		return colour.Lab{L: 30 + 40*in, A: 20 * in, B: 5}
	})
	lines := Lines(p, oneRegion(p), leastDetail)
	require.Len(t, lines, 1)
	l := lines[0]
	assert.True(t, l.Closed)
	assert.True(t, l.Main)
	assert.InDelta(t, 1, l.Strength, exact)
	area := 0.0
	for i, a := range l.Places {
		b := l.Places[(i+1)%len(l.Places)]
		area += (a.X*b.Y - a.Y*b.X) / 2
		assert.InDelta(t, r, math.Hypot(a.X-cx, a.Y-cy), 0.5)
		assert.LessOrEqual(t, l.Places[0].Y, a.Y)
	}
	assert.InEpsilon(t, math.Pi*r*r, area, 0.02, "clockwise, and round")
}

// An edge is an edge by hue alone: red and green of one lightness.
func TestLineByHueAlone(t *testing.T) {
	p := paintedPicture(400, 300, func(x, _ int) colour.Lab {
		return colour.Lab{L: 50, A: 40 * math.Copysign(1, float64(x)-199.5)}
	})
	lines := Lines(p, oneRegion(p), leastDetail)
	require.Len(t, lines, 1)
	for _, at := range lines[0].Places {
		assert.InDelta(t, 200, at.X, 0.5)
	}
	assert.Equal(t, []float64{0, 300}, []float64{lines[0].Places[0].Y, lines[0].Places[len(lines[0].Places)-1].Y}, "from frame to frame")
}

// A border of named cells is no contour where the picture has no edge.
func TestCellsAreNoContours(t *testing.T) {
	g := &grain{9}
	p := paintedPicture(600, 450, func(x, _ int) colour.Lab { return g.on(colour.Lab{L: 50, A: 10, B: float64(x) / 40}, 4) })
	parting := Regions(p, []Area{{Name: "cells", Rects: []image.Rectangle{image.Rect(100, 100, 300, 300)}}})
	assert.Empty(t, Lines(p, parting, usualDetail))
}

// A contour along a border of regions comes before one as strong that is not.
func TestBordersCountMore(t *testing.T) {
	p := paintedPicture(600, 400, func(x, _ int) colour.Lab { return colour.Lab{L: 20 + 30*float64(x/200)} })
	for border := range 2 {
		parting := Regions(p, []Area{{Name: "left", Rects: []image.Rectangle{image.Rect(0, 0, 200*(border+1), 400)}}})
		lines := Lines(p, parting, leastDetail)
		require.Len(t, lines, 2)
		assert.InDelta(t, 200*float64(border+1), lines[0].Places[0].X, 1)
		assert.Less(t, lines[1].Strength, 0.7)
	}
}

// What is drawn at a detail is drawn at the next, in the same places and order, and the
// main ones stay main; detail 1 has no others, and some even where all edges are faint.
func TestDetailsAddLines(t *testing.T) {
	slow(t)
	demo, _ := demoScene(t)
	faint := paintedPicture(1000, 750, func(x, y int) colour.Lab {
		if disc := x / 200; math.Hypot(float64(x%200)-100, float64(y)-375) < 50 {
			return colour.Lab{L: 54 + float64(disc)}
		}
		return colour.Lab{L: 50}
	})
	for name, p := range map[string]*Picture{"demo": demo, "faint": faint} {
		parting := Regions(p, nil)
		before := Lines(p, parting, leastDetail)
		require.NotEmpty(t, before, name)
		for _, l := range before {
			assert.True(t, l.Main, name)
		}
		for detail := leastDetail + 1; detail <= mostDetail; detail++ {
			lines := Lines(p, parting, detail)
			n := 0
			for _, l := range lines {
				if n < len(before) && assert.ObjectsAreEqual(before[n], l) {
					n++
				}
			}
			assert.Equal(t, len(before), n, "%s, detail %d", name, detail)
			before = lines
		}
	}
}

// Real photos have some main contours, never hundreds.
func TestMainLinesOfPhotos(t *testing.T) {
	slow(t)
	for _, name := range []string{"01_tulips_pink.png", "03_daisies_violet.jpg", "05_fig_red_bowl.jpg", "17_coffee_still_life.png", "19_cliff_grayscale.png"} {
		p := workingPicture(t, name, 0)
		main := 0
		for _, l := range Lines(p, Regions(p, nil), usualDetail) {
			if l.Main {
				main++
			}
		}
		assert.GreaterOrEqual(t, main, fewestMain, name)
		assert.LessOrEqual(t, main, mostMain, name)
	}
}

// Of sixty discs alike forty are main, and detail 1 draws no others.
func TestAtMostFortyMain(t *testing.T) {
	p := paintedPicture(1000, 600, func(x, y int) colour.Lab {
		if math.Hypot(float64(x%100)-50, float64(y%100)-50) < 30 {
			return colour.Lab{L: 80}
		}
		return colour.Lab{L: 30}
	})
	assert.Len(t, Lines(p, oneRegion(p), leastDetail), mostMain)
	assert.Len(t, Lines(p, oneRegion(p), usualDetail), 60)
}

func TestLinesAreTheSameEveryTime(t *testing.T) {
	p, _ := demoScene(t)
	parting := Regions(p, nil)
	want := Lines(p, parting, mostDetail)
	for _, n := range []int{1, 2, 7} {
		before := runtime.GOMAXPROCS(n)
		got := Lines(p, parting, mostDetail)
		runtime.GOMAXPROCS(before)
		assert.Equal(t, want, got, fmt.Sprint(n))
	}
}

func TestPicturesTooSmallForLines(t *testing.T) {
	for _, size := range []image.Point{{0, 0}, {1, 1}, {2, 1}, {1, 50}, {3, 3}, {3000, 1}, {5, 4}} {
		p := paintedPicture(size.X, size.Y, func(x, y int) colour.Lab { return colour.Lab{L: 90 * float64((x+y)%2)} })
		assert.NotNil(t, Lines(p, oneRegion(p), mostDetail), "%v", size)
	}
	assert.PanicsWithValue(t, "analyze: the parting is not of that picture", func() {
		Lines(hexPicture(t, "000000 ffffff"), Parting{Of: make([]uint8, 5)}, 5)
	})
}
