package plan

import (
	"encoding/json"
	"image"
	"image/png"
	"math"
	"os"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// The demo photo is rendered from spectral reflectances (testdata/scene), so what
// is in it is known: testdata/kettle.json and kettle-mask.png hold, for every
// object, its pixels, its pigments and its mean colour before grain and JPEG.
// The tests here hold the plan against that.
type truth struct {
	Objects []struct {
		Name    string    `json:"name"`
		Mask    int       `json:"mask"`
		Share   float64   `json:"share"`
		Mean    Triple    `json:"mean_lab"`
		Diffuse Triple    `json:"light_diffuse_lab"`
		Box     []float64 `json:"box"`
	} `json:"objects"`
}

const demo = "../../testdata/kettle.jpg"

var makeDemo = sync.OnceValues(func() (*Plan, error) { return Make(Options{Photo: demo}) })

func demoTruth(t *testing.T) (truth, *image.Paletted) {
	data, err := os.ReadFile("../../testdata/kettle.json")
	require.NoError(t, err)
	var known truth
	require.NoError(t, json.Unmarshal(data, &known))
	require.NotEmpty(t, known.Objects)
	f, err := os.Open("../../testdata/kettle-mask.png")
	require.NoError(t, err)
	defer f.Close()
	m, err := png.Decode(f)
	require.NoError(t, err)
	return known, m.(*image.Paletted)
}

// objectOf returns, for every pixel of a picture of w × h, the object it shows.
func objectOf(m *image.Paletted, w, h int) []uint8 {
	of := make([]uint8, 0, w*h)
	for y := range h {
		for x := range w {
			of = append(of, m.ColorIndexAt((2*x+1)*m.Rect.Dx()/(2*w), (2*y+1)*m.Rect.Dy()/(2*h)))
		}
	}
	return of
}

func (t Triple) lab() colour.Lab { return colour.Lab{L: t[0], A: t[1], B: t[2]} }

func hueBetween(a, b colour.Lab) float64 {
	return math.Abs(math.Remainder(a.Hue()-b.Hue(), 360))
}

// Each pixel's colour of the plan, averaged over an object, is the object's true
// mean: the plan's colours stray from the picture by a mean of 4 CIEDE2000 at the
// most, and their errors cancel. The hue is held where there is one: chroma over 8.
func TestDemoColours(t *testing.T) {
	p, err := makeDemo()
	require.NoError(t, err)
	known, mask := demoTruth(t)
	w, h := p.Pictures.Photo.Width, p.Pictures.Photo.Height
	object := objectOf(mask, w, h)
	var colours []colour.Lab
	for _, r := range p.Regions {
		for _, c := range r.Colours {
			colours = append(colours, c.Lab.lab())
		}
	}
	for _, o := range known.Objects {
		var sum colour.Lab
		n := 0.0
		for i, at := range object {
			if int(at) == o.Mask {
				c := colours[p.Pictures.ColourOf[i]]
				sum.L, sum.A, sum.B, n = sum.L+c.L, sum.A+c.A, sum.B+c.B, n+1
			}
		}
		require.InDelta(t, o.Share, n/float64(w*h), 0.005, o.Name)
		mean := colour.Lab{L: sum.L / n, A: sum.A / n, B: sum.B / n}
		assert.Less(t, colour.DeltaE00(mean, o.Mean.lab()), 4.0, "%s: %v, true %v", o.Name, mean, o.Mean)
		if o.Mean.lab().Chroma() > 8 {
			assert.Less(t, hueBetween(mean, o.Mean.lab()), 12.0, "%s", o.Name)
		}
	}
}

// The regions found keep the things apart: 97 pixels in 100 lie in a region that shows
// mostly the thing they belong to, nine in ten of every region's. Wood and kettle count
// as one thing.
func TestDemoRegions(t *testing.T) {
	p, err := makeDemo()
	require.NoError(t, err)
	known, mask := demoTruth(t)
	object := objectOf(mask, p.Pictures.Photo.Width, p.Pictures.Photo.Height)
	assert.GreaterOrEqual(t, len(p.Regions), 4)
	assert.LessOrEqual(t, len(p.Regions), 10)
	count := make([][]int, len(p.Regions))
	for r := range count {
		count[r] = make([]int, len(known.Objects))
	}
	things := make([]int, len(known.Objects))
	wood, kettle := 3, 2
	for i, at := range object {
		if int(at) == wood {
			at = uint8(kettle)
		}
		count[p.Pictures.Parting.Of[i]][at]++
		things[at]++
	}
	together, main := 0, make([]int, len(p.Regions))
	for r := range count {
		for o, n := range count[r] {
			if n > count[r][main[r]] {
				main[r] = o
			}
		}
		together += count[r][main[r]]
		region := p.Pictures.Parting.Regions[r]
		assert.Greater(t, float64(count[r][main[r]])/float64(region.Pixels), 0.9, region.Name)
	}
	assert.Greater(t, float64(together)/float64(len(object)), 0.97)
	for o, n := range things {
		if n == 0 {
			continue
		}
		in := 0
		for r := range count {
			if main[r] == o {
				in += count[r][o]
			}
		}
		assert.Greater(t, float64(in)/float64(n), 0.95, "%s: the part of it that lies in regions of its own", known.Objects[o].Name)
	}
}

// A lemon by its cells: yellow in the book of colours and yellow in the tubes.
func TestDemoLemon(t *testing.T) {
	p, err := Make(Options{Photo: demo, Regions: []RegionWish{{Name: "lemon", Cells: "J7"}}})
	require.NoError(t, err)
	known, _ := demoTruth(t)
	lemon := p.Regions[0]
	assert.Equal(t, "lemon", lemon.Name)
	assert.Equal(t, []string{"J7"}, lemon.Cells)
	assert.InDelta(t, 1.0/108, lemon.Share, 0.0005)
	want := known.Objects[6]
	require.Equal(t, "lemon apart", want.Name)
	best := lemon.Colours[0]
	for _, c := range lemon.Colours {
		if c.Lab.lab().Chroma() > best.Lab.lab().Chroma() {
			best = c
		}
	}
	assert.Less(t, hueBetween(best.Lab.lab(), want.Diffuse.lab()), 12.0)
	assert.Contains(t, best.Name, "yellow")
	yellow := false
	for _, part := range best.Recipe.Parts {
		yellow = yellow || part.Paint == "cadmium-yellow-lemon" || part.Paint == "cadmium-yellow-deep" || part.Paint == "yellow-ochre"
	}
	assert.True(t, yellow, "%v", best.Recipe.Parts)
}

// Shares add up: colours to their region, regions to the panel; tags are in order
// and the colours of a region run from light to dark.
func TestDemoAddsUp(t *testing.T) {
	p, err := makeDemo()
	require.NoError(t, err)
	panel := 0.0
	for i, r := range p.Regions {
		assert.Equal(t, string(rune('A'+i)), r.Tag)
		sum := 0.0
		for j, c := range r.Colours {
			sum += c.Share
			if j > 0 {
				assert.GreaterOrEqual(t, r.Colours[j-1].Lab[0], c.Lab[0], c.ID)
			}
			assert.NotEmpty(t, c.Recipe.Parts)
			assert.LessOrEqual(t, len(c.Alternatives), 2)
			assert.InDelta(t, colour.DeltaE00(c.Recipe.Lab.lab(), c.AimLab.lab()), c.Recipe.DeltaE, 0.006, c.ID)
		}
		assert.InDelta(t, 1, sum, 0.001, r.Name)
		assert.NotEmpty(t, r.Cells)
		panel += r.Share
	}
	assert.InDelta(t, 1, panel, 0.001)
}

// The plan is the same every time and on any number of cores: its JSON is compared
// in package report, its rasters here.
func TestDemoSamePixels(t *testing.T) {
	p, err := makeDemo()
	require.NoError(t, err)
	again, err := Make(Options{Photo: demo})
	require.NoError(t, err)
	assert.Equal(t, p.Pictures, again.Pictures)
	assert.Equal(t, p.Regions, again.Regions)
}

// A black ground that paint cannot be darker than does not change the aims, the
// pencil does; a literal key keeps the photo's numbers.
func TestDemoOptions(t *testing.T) {
	ground, err := ParseGround("black")
	require.NoError(t, err)
	p, err := Make(Options{Photo: demo, Ground: ground, Literal: true, Colours: 4, Name: "study"})
	require.NoError(t, err)
	assert.Equal(t, "light", p.Panel.Pencil)
	assert.Equal(t, "study", p.Name)
	assert.Equal(t, "literal", p.ValueKey.Mode)
	for _, r := range p.Regions {
		assert.LessOrEqual(t, len(r.Colours), 4)
		for _, c := range r.Colours {
			assert.Equal(t, c.Lab, c.AimLab, c.ID)
		}
	}
}
