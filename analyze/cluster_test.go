package analyze

import (
	"image"
	"math"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// Hand-sized: three colours, counted by hand.
func TestClustersOfFewColours(t *testing.T) {
	p := hexPicture(t,
		"000000 ffffff 808080 808080",
		"000000 808080 ffffff 808080")
	for _, opt := range []ClusterOptions{{}, {Colours: 3}, {Colours: 8}} {
		got := Clusters(p, oneRegion(p), opt)
		require.Len(t, got.Clusters, 1)
		require.Len(t, got.Clusters[0], 3, "%v: no more clusters than colours", opt)
		for k, want := range []struct {
			hex    string
			pixels int
		}{{"#ffffff", 2}, {"#808080", 4}, {"#000000", 2}} {
			assert.Equal(t, want.hex, got.Clusters[0][k].Lab.Hex())
			assert.Equal(t, want.pixels, got.Clusters[0][k].Pixels)
		}
		assert.Equal(t, []uint8{2, 0, 1, 1, 2, 1, 0, 1}, got.Of, "light to dark")
	}
}

func TestClusterIsTheMeanOfItsPixels(t *testing.T) {
	p := hexPicture(t, "101010 202020 e0e0e0")
	got := Clusters(p, oneRegion(p), ClusterOptions{Colours: 2})
	require.Len(t, got.Clusters[0], 2)
	assert.Equal(t, []uint8{1, 1, 0}, got.Of)
	assert.InDelta(t, (p.At(0).L+p.At(1).L)/2, got.Clusters[0][1].Lab.L, 1e-9)
}

func TestRegionsAreClusteredApart(t *testing.T) {
	p := hexPicture(t, "ff0000 00ff00 0000ff ffffff")
	parting := Parting{Regions: []Region{{"a", 2}, {"none", 0}, {"b", 2}}, Of: []uint8{2, 0, 2, 0}}
	got := Clusters(p, parting, ClusterOptions{})
	require.Len(t, got.Clusters, 3)
	assert.Len(t, got.Clusters[0], 2)
	assert.NotNil(t, got.Clusters[1])
	assert.Empty(t, got.Clusters[1], "a region without pixels has no colours")
	assert.Equal(t, []uint8{0, 1, 1, 0}, got.Of, "#ff0000 is lighter than #0000ff, #ffffff than #00ff00")
}

func TestColoursThatLookAlikeAreOne(t *testing.T) {
	p := hexPicture(t, "808080 818181 828282 ff0000") // the grays are 0.3 to 0.8 CIEDE2000 apart
	assert.Len(t, Clusters(p, oneRegion(p), ClusterOptions{}).Clusters[0], 2)
	assert.Len(t, Clusters(p, oneRegion(p), ClusterOptions{Colours: 4}).Clusters[0], 4, "a fixed number keeps them apart")
}

// By hand, of 40 pixels: 18 white, 18 yellow, 2 near black and 2 orange are within a
// mean of 4 CIEDE2000 of white, yellow and a brown that is nowhere in the picture.
func TestUnlikeColoursStayApart(t *testing.T) {
	p := hexPicture(t,
		strings.TrimSpace(strings.Repeat("ffffff ", 18))+" 2c1e18 b86030",
		strings.TrimSpace(strings.Repeat("d8b028 ", 18))+" 2c1e18 b86030")
	got := Clusters(p, oneRegion(p), ClusterOptions{})
	require.Len(t, got.Clusters[0], 4)
	assert.Equal(t, "#b86030", got.Clusters[0][2].Lab.Hex())
}

// stripes is a picture of n colours with grain, far apart: 25 or more of hue or L*.
func stripes(n int) *Picture {
	g := &grain{3}
	return paintedPicture(400, 300, func(x, _ int) colour.Lab {
		k := x * n / 400
		h := 2 * math.Pi * float64(k) / float64(n)
		return g.on(colour.Lab{L: 40 + 20*float64(k%2), A: 40 * math.Cos(h), B: 40 * math.Sin(h)}, 1)
	})
}

func TestAsFewColoursAsKeepTheError(t *testing.T) {
	for n := fewestColours; n <= mostColours; n++ {
		p := stripes(n)
		got := Clusters(p, oneRegion(p), ClusterOptions{Error: 2}) // grain alone is 0.9
		assert.Len(t, got.Clusters[0], n, "%d colours", n)
		assert.Less(t, regionErrors(p, oneRegion(p), got)[0], 2.0)
	}
	p := stripes(12)
	assert.Len(t, Clusters(p, oneRegion(p), ClusterOptions{}).Clusters[0], mostColours)
	assert.Len(t, Clusters(p, oneRegion(p), ClusterOptions{Error: 60}).Clusters[0], fewestColours)
	for _, n := range []int{1, 2, 5, 12, 40, 120} {
		assert.Len(t, Clusters(p, oneRegion(p), ClusterOptions{Colours: n}).Clusters[0], n, "fixed")
	}
}

// On real photos every region keeps the error, or has all the colours it may have;
// the clusters are counted, not empty, and light to dark.
func TestPhotosKeepTheError(t *testing.T) {
	for _, name := range []string{"02_dahlia_orange.jpg", "05_fig_red_bowl.jpg", "17_coffee_still_life.png"} {
		p := workingPicture(t, name, 600)
		parting := Regions(p, nil)
		got := Clusters(p, parting, ClusterOptions{})
		for r, e := range regionErrors(p, parting, got) {
			if len(got.Clusters[r]) < mostColours {
				assert.LessOrEqual(t, e, enoughError*1.02, "%s, %s", name, parting.Regions[r].Name)
			}
			requireCounted(t, parting, got, r)
		}
	}
}

func requireCounted(t *testing.T, parting Parting, got Clustering, r int) {
	t.Helper()
	pixels := make([]int, len(got.Clusters[r]))
	for i, k := range got.Of {
		if int(parting.Of[i]) == r {
			pixels[k]++
		}
	}
	for k, c := range got.Clusters[r] {
		assert.Equal(t, c.Pixels, pixels[k])
		require.Positive(t, c.Pixels)
		if k > 0 {
			assert.LessOrEqual(t, c.Lab.L, got.Clusters[r][k-1].Lab.L)
		}
	}
}

// foliage is green in soft bands, with something red of a number of pixels on it.
func foliage(red func(x, y int) bool) *Picture {
	g := &grain{4}
	return paintedPicture(400, 300, func(x, y int) colour.Lab {
		if red(x, y) {
			return g.on(colour.Lab{L: 45, A: 60, B: 40}, 2)
		}
		wave := math.Sin(float64(x)/30) + math.Sin(float64(y)/23)
		return g.on(colour.Lab{L: 40 + 14*wave, A: -25, B: 25 + 8*wave}, 4)
	})
}

func berry(x, y int) bool { return (x-100)*(x-100)+(y-200)*(y-200) < 8*8 } // 193 pixels, 0.16 %

func TestAccentIsKept(t *testing.T) {
	p := foliage(berry)
	for _, opt := range []ClusterOptions{{}, {Error: 12}, {Colours: 5}} {
		got := Clusters(p, oneRegion(p), opt)
		accents := 0
		for _, c := range got.Clusters[0] {
			if c.Accent {
				accents++
				assert.Equal(t, 193, c.Pixels, "%v", opt)
				assert.Less(t, colour.DeltaE00(c.Lab, colour.Lab{L: 45, A: 60, B: 40}), 1.0, "%v", opt)
			}
		}
		assert.Equal(t, 1, accents, "%v", opt)
		if opt.Colours > 0 {
			assert.Len(t, got.Clusters[0], opt.Colours)
		}
	}
}

// As many red pixels as the berry has, but strewn, or along the edge of another
// region, are no accent.
func TestWhatIsNoAccent(t *testing.T) {
	strewn := foliage(func(x, y int) bool { return (x*31+y*17)%620 == 0 })
	for _, c := range Clusters(strewn, oneRegion(strewn), ClusterOptions{}).Clusters[0] {
		assert.False(t, c.Accent, "strewn")
	}
	fringed := foliage(func(x, _ int) bool { return x >= 198 })
	parting := Regions(fringed, []Area{{Name: "left", Rects: []image.Rectangle{image.Rect(0, 0, 200, 300)}}})
	for _, c := range Clusters(fringed, parting, ClusterOptions{}).Clusters[0] {
		assert.False(t, c.Accent, "fringe")
	}
	plain := foliage(func(int, int) bool { return false })
	for _, c := range Clusters(plain, oneRegion(plain), ClusterOptions{}).Clusters[0] {
		assert.False(t, c.Accent, "nothing red")
	}
}

// No worse than plain k-means: every pixel, in Lab, from evenly spaced seeds, run until
// nothing moves. The benchmarks beside it have the times.
func TestNoWorseThanPlainKMeans(t *testing.T) {
	slow(t)
	for _, name := range []string{"01_tulips_pink.png", "05_fig_red_bowl.jpg", "16_brushes_multicolour.jpg", "17_coffee_still_life.png"} {
		p := workingPicture(t, name, 400)
		got := regionErrors(p, oneRegion(p), Clusters(p, oneRegion(p), ClusterOptions{Colours: benchColours}))[0]
		of, centres := plainKMeans(p, benchColours)
		sum := 0.0
		for i, k := range of {
			sum += colour.DeltaE00(p.At(i), centres[k])
		}
		assert.LessOrEqual(t, got, sum/float64(len(of)), name)
	}
}

func TestClusteringIsTheSameEveryTime(t *testing.T) {
	p := workingPicture(t, "17_coffee_still_life.png", 600)
	parting := Regions(p, nil)
	want := Clusters(p, parting, ClusterOptions{})
	for _, n := range []int{1, 2, 5} {
		before := runtime.GOMAXPROCS(n)
		got := Clusters(p, parting, ClusterOptions{})
		runtime.GOMAXPROCS(before)
		assert.Equal(t, want, got, "%d at once", n)
	}
}

// Small differences in the even space are CIEDE2000 within a quarter on average: pairs
// about 4 apart, from all over the colours that surfaces have.
func TestEvenSpaceIsNearCIEDE2000(t *testing.T) {
	g := &grain{5}
	sum, n := 0.0, 0.0
	for range 5000 {
		c := g.on(colour.Lab{L: 50}, 45)
		d := g.on(c, 4)
		e, f := evenly(c), evenly(d)
		sum += math.Abs(math.Log(math.Sqrt(e.squared(&f)) / colour.DeltaE00(c, d)))
		n++
	}
	assert.Less(t, math.Exp(sum/n), 1.25)
}

// A centre that has lost its cells takes up another place, so that no cluster is empty.
func TestNoEmptyCluster(t *testing.T) {
	cells := make([]cell, 4)
	for i := range cells {
		cells[i] = cell{even: even{float64(10 * i)}, pixels: 1}
	}
	s := &settled{cells: cells, centres: []even{{0}, {500}, {600}}, of: make([]uint8, 4), accent: make([]bool, 3)}
	s.lloyd(mostRounds)
	held := make([]int, 3)
	for _, k := range s.of {
		held[k]++
	}
	assert.NotContains(t, held, 0)
	p := stripes(12)
	requireCounted(t, oneRegion(p), Clusters(p, oneRegion(p), ClusterOptions{Colours: 255}), 0)
}
