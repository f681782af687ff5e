package analyze

import (
	"fmt"
	"image"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// Hand-sized: a 4 × 3 picture, counted by hand.
func TestNamedAreas(t *testing.T) {
	p := hexPicture(t,
		"000000 000000 000000 000000",
		"000000 000000 000000 000000",
		"000000 000000 000000 000000")
	got := Regions(p, []Area{
		{Name: "kettle", Rects: []image.Rectangle{image.Rect(0, 0, 3, 2)}},
		{Name: "lemons", Rects: []image.Rectangle{image.Rect(2, 0, 3, 1), image.Rect(2, 1, 9, 9)}},
	})
	assert.Equal(t, []Region{{"kettle", 4}, {"lemons", 5}, {TheRest, 3}}, got.Regions)
	assert.Equal(t, []uint8{
		0, 0, 1, 2,
		0, 0, 1, 1,
		2, 2, 1, 1}, got.Of, "the later area wins; what lies off the picture is cut off")
}

func TestNoRestWhereAllIsCovered(t *testing.T) {
	p := hexPicture(t, "ffffff ffffff")
	all := image.Rect(-5, -5, 5, 5)
	got := Regions(p, []Area{{Name: "under", Rects: []image.Rectangle{all}}, {Name: "over", Rects: []image.Rectangle{all}}})
	assert.Equal(t, []Region{{"under", 0}, {"over", 2}}, got.Regions, "an area that later ones cover keeps its place")
	assert.Equal(t, []uint8{1, 1}, got.Of)
}

func TestTooManyAreas(t *testing.T) {
	assert.PanicsWithValue(t, "analyze: 256 areas, at most 255 can be told apart", func() {
		Regions(hexPicture(t, "000000"), make([]Area, 256))
	})
	assert.NotPanics(t, func() { Regions(hexPicture(t, "000000"), make([]Area, 255)) })
}

// scene is five flat shapes with grain on them, as a made picture whose truth is known.
func scene(width, height int) (*Picture, []uint8) {
	colours := []colour.Lab{{L: 80, A: 0, B: -8}, {L: 45, A: 40, B: 30}, {L: 75, A: 2, B: 65}, {L: 35, A: -25, B: 15}, {L: 20, A: 3, B: -4}}
	truth := make([]uint8, 0, width*height)
	g := &grain{1}
	p := paintedPicture(width, height, func(x, y int) colour.Lab {
		u, v := float64(x)/float64(width), float64(y)/float64(height)
		shape := uint8(0) // sky
		switch {
		case (u-0.3)*(u-0.3)+(v-0.45)*(v-0.45) < 0.03:
			shape = 1 // disc
		case (u-0.75)*(u-0.75)/2+(v-0.6)*(v-0.6) < 0.008:
			shape = 2 // ellipse
		case v > 0.75:
			shape = 4 // shelf
		case u > 0.5 && u < 0.58 && v > 0.15:
			shape = 3 // bar
		}
		truth = append(truth, shape)
		return g.on(colours[shape], 5)
	})
	return p, truth
}

// Each shape is found again: of the area that covers it best, the intersection over
// the union is at least 0.9 (the scene is made here, so its truth is exact).
func TestShapesAreFound(t *testing.T) {
	for _, size := range []image.Point{{900, 700}, {300, 240}, {401, 799}} {
		p, truth := scene(size.X, size.Y)
		got := Regions(p, nil)
		requireParting(t, p, got)
		for shape := range uint8(5) {
			assert.GreaterOrEqual(t, overlap(truth, got, shape), 0.9, "%v shape %d", size, shape)
		}
	}
}

// A wall whose light falls off stays one area, dim end and all, though that end is
// nearer to the dark pot beside it than to the bright end (a scene made here, so its
// truth is exact).
func TestSoftLightIsNoBorder(t *testing.T) {
	const width, height = 500, 400
	var truth []uint8
	g := &grain{3}
	p := paintedPicture(width, height, func(x, y int) colour.Lab {
		u, v := float64(x)/width, float64(y)/height
		shape, c := uint8(0), colour.Lab{L: 48 - 30*u, A: 4, B: 12} // wall
		switch {
		case (u-0.65)*(u-0.65)+(v-0.6)*(v-0.6)*0.6 < 0.02:
			shape, c = 1, colour.Lab{L: 17, A: 16, B: 14} // pot
		case v > 0.75:
			shape, c = 2, colour.Lab{L: 45, A: -2, B: -10} // shelf
		case (u-0.2)*(u-0.2)+(v-0.5)*(v-0.5) < 0.015:
			shape, c = 3, colour.Lab{L: 30, A: -30, B: 20} // bottle
		}
		truth = append(truth, shape)
		return g.on(c, 1)
	})
	got := Regions(p, nil)
	requireParting(t, p, got)
	for shape := range uint8(4) {
		assert.GreaterOrEqual(t, overlap(truth, got, shape), 0.9, "shape %d", shape)
	}
}

// overlap returns the best intersection over union of a shape with any region.
func overlap(truth []uint8, got Parting, shape uint8) float64 {
	best := 0.0
	for r := range got.Regions {
		both, either := 0, 0
		for i, n := range got.Of {
			in, found := truth[i] == shape, int(n) == r
			if in && found {
				both++
			}
			if in || found {
				either++
			}
		}
		best = max(best, float64(both)/float64(either))
	}
	return best
}

// requireParting checks what every parting must be: whole, counted, each region
// connected, no two names the same.
func requireParting(t *testing.T, p *Picture, got Parting) {
	t.Helper()
	require.Len(t, got.Of, p.Width*p.Height)
	pixels := make([]int, len(got.Regions))
	for _, r := range got.Of {
		pixels[r]++
	}
	names := map[string]bool{}
	for r, region := range got.Regions {
		assert.Equal(t, region.Pixels, pixels[r])
		assert.Positive(t, region.Pixels)
		assert.False(t, names[region.Name], "two regions are %q", region.Name)
		names[region.Name] = true
		assert.Equal(t, region.Pixels, flood(p.Width, got.Of, uint8(r)), "%q is connected", region.Name)
	}
}

// flood returns the pixels that can be reached from the first of a region within it.
func flood(width int, of []uint8, region uint8) int {
	seen := make([]bool, len(of))
	var stack []int
	push := func(i int) {
		if i >= 0 && i < len(of) && of[i] == region && !seen[i] {
			seen[i] = true
			stack = append(stack, i)
		}
	}
	for i, r := range of {
		if r == region {
			push(i)
			break
		}
	}
	reached := 0
	for ; len(stack) > 0; reached++ {
		i := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		push(i - width)
		push(i + width)
		if i%width > 0 {
			push(i - 1)
		}
		if i%width < width-1 {
			push(i + 1)
		}
	}
	return reached
}

func TestPhotosAreParted(t *testing.T) {
	for _, name := range []string{"01_tulips_pink.png", "05_fig_red_bowl.jpg", "16_brushes_multicolour.jpg", "17_coffee_still_life.png", "19_cliff_grayscale.png"} {
		p := workingPicture(t, name, 600)
		got := Regions(p, nil)
		requireParting(t, p, got)
		assert.GreaterOrEqual(t, len(got.Regions), fewestAreas, name)
		assert.LessOrEqual(t, len(got.Regions), mostAreas, name)
	}
}

// Four quarters of a picture are named by where they lie and what they look like.
func TestNames(t *testing.T) {
	p := paintedPicture(300, 300, func(x, y int) colour.Lab {
		return []colour.Lab{{L: 25}, {L: 65, A: 25, B: 60}, {L: 90}, {L: 35, A: -35, B: 20}}[y/150*2+x/150]
	})
	var names []string
	for _, r := range Regions(p, nil).Regions {
		names = append(names, r.Name)
	}
	assert.Equal(t, []string{"upper left, dark", "upper right, light orange", "lower left, near white", "lower right, dark green"}, names)
}

func TestNamesAreToldApart(t *testing.T) {
	looks := []look{{x: 0.8, pixels: 5}, {x: 0.2, pixels: 9}, {x: 0.5, pixels: 7}}
	three := []Region{{Name: "a"}, {Name: "a"}, {Name: "a"}}
	tellApart(three, looks)
	assert.Equal(t, []Region{{Name: "a (third from the left)"}, {Name: "a (first from the left)"}, {Name: "a (second from the left)"}}, three)
	two := []Region{{Name: "a"}, {Name: "a"}, {Name: "b"}}
	tellApart(two, looks)
	assert.Equal(t, []Region{{Name: "a (smaller)"}, {Name: "a (larger)"}, {Name: "b"}}, two)
	looks[0].lab.L = 30
	two = []Region{{Name: "a"}, {Name: "a"}, {Name: "b"}}
	tellApart(two, looks)
	assert.Equal(t, []Region{{Name: "a (lighter)"}, {Name: "a (darker)"}, {Name: "b"}}, two)
}

func TestPicturesWithLittleInThem(t *testing.T) {
	flat := paintedPicture(200, 100, func(int, int) colour.Lab { return colour.Lab{L: 50} })
	assert.Equal(t, []Region{{"all over, mid gray", 20000}}, Regions(flat, nil).Regions, "one colour is one area")
	g := &grain{2}
	grainy := paintedPicture(200, 100, func(int, int) colour.Lab { return g.on(colour.Lab{L: 50}, 4) })
	assert.Len(t, Regions(grainy, nil).Regions, 1, "grain is no area")
	assert.Equal(t, []Region{{"all over, very dark", 1}}, Regions(hexPicture(t, "000000"), nil).Regions)
	assert.Empty(t, Regions(&Picture{}, nil).Regions)
	two := Regions(hexPicture(t, "000000 ffffff"), nil)
	requireParting(t, &Picture{Width: 2, Height: 1}, two)
	assert.Len(t, two.Regions, 2)
	line := paintedPicture(3000, 1, func(x, _ int) colour.Lab { return colour.Lab{L: float64(x) / 30} })
	requireParting(t, line, Regions(line, nil))
}

func TestFoundAreasAreTheSameEveryTime(t *testing.T) {
	p, _ := scene(500, 400)
	want := Regions(p, nil)
	for _, n := range []int{1, 2, 7} {
		before := runtime.GOMAXPROCS(n)
		got := Regions(p, nil)
		runtime.GOMAXPROCS(before)
		assert.Equal(t, want, got, fmt.Sprint(n))
	}
}

func BenchmarkRegions(b *testing.B) {
	p := workingPicture(b, benchPhoto, 1200)
	for b.Loop() {
		Regions(p, nil)
	}
}
