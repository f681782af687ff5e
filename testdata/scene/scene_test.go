package main

import (
	"bytes"
	"image"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// small is one quick picture that several tests look at. The committed one is 5 times as wide,
// so the centre of each small pixel is the centre of a large one.
const smallWidth = 320

var small = sync.OnceValue(func() rendered { return render(smallWidth, 2) })

func TestEveryObjectIsSeen(t *testing.T) {
	r := small()
	for _, o := range r.still.tell(r.film).Objects {
		// Ours: the smallest, the kettle's wooden grip and knob, covers 0.8 % of the picture.
		assert.Greater(t, o.Share, 0.005, o.Name)
		assert.Greater(t, o.LightShare, 0.05, o.Name)
	}
}

// The window is D65, so what an object scatters on its light side has the hue of its pigments;
// light thrown by its neighbours moves it a little.
func TestLightSideHasThePigmentsHue(t *testing.T) {
	const degrees, nearGray = 8, 8
	r := small()
	for _, o := range r.still.tell(r.film).Objects {
		own, seen := lab(o.PigmentLab), lab(o.DiffuseLab)
		if own.Chroma() < nearGray {
			assert.InDelta(t, own.A*seen.L/own.L, seen.A, 3, "%s: a*", o.Name)
			assert.InDelta(t, own.B*seen.L/own.L, seen.B, 3, "%s: b*", o.Name)
			continue
		}
		off := math.Remainder(seen.Hue()-own.Hue(), 360)
		assert.InDelta(t, 0, off, degrees, "%s: hue %.1f, its pigments %.1f", o.Name, seen.Hue(), own.Hue())
	}
}

// The picture as a whole, mirrored light and all, must still say which object is which.
func TestPictureTellsTheColours(t *testing.T) {
	const degrees = 15
	r := small()
	for _, o := range r.still.tell(r.film).Objects {
		own, seen := lab(o.FlatLab), lab(o.MeanLab)
		off := math.Remainder(seen.Hue()-own.Hue(), 360)
		assert.InDelta(t, 0, off, degrees, "%s: hue %.1f, its own %.1f", o.Name, seen.Hue(), own.Hue())
	}
}

func lab(v [3]float64) colour.Lab { return colour.Lab{L: v[0], A: v[1], B: v[2]} }

// Bare copper under an even white light: reflectance at 700 nm far above that at 450 nm, and
// the hue between red and yellow. Source: [Hagemann1974] table 3; at 652.5 nm n = 0.214 and
// k = 3.67 give (0.786² + 3.67²) / (1.214² + 3.67²) = 0.943.
func TestCopper(t *testing.T) {
	r := copper()
	assert.InDelta(t, 0.943, mix(r[25], r[26], 0.25), 0.002)
	assert.Less(t, r[5], 0.6)
	c := r.Lab()
	assert.InDelta(t, 50, c.Hue(), 20)
}

func TestCommittedMaskIsThisScene(t *testing.T) {
	const least = 0.95 // intersection over union
	data, err := os.ReadFile(filepath.Join("..", maskFile))
	require.NoError(t, err, "run: go run ./testdata/scene -out testdata -width 1600")
	m, err := png.Decode(bytes.NewReader(data))
	require.NoError(t, err)
	large, ok := m.(*image.Paletted)
	require.True(t, ok, "%s: not a paletted PNG", maskFile)
	r := small()
	require.Equal(t, image.Pt(5*r.film.width, 5*r.film.height), large.Bounds().Size())
	for index, o := range r.still.objects {
		both, either := 0, 0
		for i, fresh := range r.film.object {
			kept := large.ColorIndexAt(i%r.film.width*5+2, i/r.film.width*5+2)
			if int(kept) == index && int(fresh) == index {
				both++
			}
			if int(kept) == index || int(fresh) == index {
				either++
			}
		}
		assert.GreaterOrEqual(t, float64(both)/float64(either), least, o.name)
	}
}

func TestSameBytesOnAnyNumberOfCores(t *testing.T) {
	files := func(cores int) map[string][]byte {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(cores))
		folder := t.TempDir()
		require.NoError(t, write(folder, render(64, 2)))
		got := map[string][]byte{}
		for _, name := range []string{pictureFile, maskFile, truthFile} {
			data, err := os.ReadFile(filepath.Join(folder, name))
			require.NoError(t, err)
			got[name] = data
		}
		return got
	}
	assert.Equal(t, files(1), files(4))
}

// The exposure's unit: a white card square to the window, its shutter open, has a light of 1
// but for the window's size. By hand: cos⁴ over 42 × 62 cm at 124 cm averages to about
// 1 - 2(21² + 31²)/(3·124²) + 3·(second order, 0.0013) = 0.943.
func TestWhiteCardIsTheUnit(t *testing.T) {
	const byHand, slack = 0.943, 0.01
	light := newDaylight(evenSpectrum())
	light.shutter = math.Inf(-1)
	tr := &tracer{&still{}, light}
	var sum xyz
	const n = 1024
	path := evenSpectrum()
	for i := range uint32(n) {
		s := sampler{pixel: 5, index: i}
		x, y := s.next()
		sum.add(tr.direct(vec{0, 6, 0}, light.axes.w.times(-1), &path, x, y), 1.0/n)
	}
	for _, v := range sum {
		assert.InDelta(t, byHand, v, slack)
	}
}

// White light keeps all its parts: response(white) is gray at every level.
func TestResponseKeepsGray(t *testing.T) {
	for _, level := range []float64{0.01, 0.2, 0.5, 0.9, 3, 20} {
		r, g, b := response(xyz{level, level, level})
		// The sRGB matrix is printed to 4 decimals: IEC 61966-2-1.
		assert.InDelta(t, r, g, 1e-3)
		assert.InDelta(t, g, b, 1e-3)
		assert.LessOrEqual(t, max(r, g, b), 1.0)
	}
}

// Identity: the density of mirrored directions is that of the directions drawn. It sums to 1
// over the sphere, and gives the same mean direction as drawing does.
func TestDensityIsOfTheDirectionsDrawn(t *testing.T) {
	const n, width, slack = 1 << 16, 0.3, 0.02
	eye := vec{0.8, 0, 0.6}
	var whole float64
	var counted, drawn vec
	for i := range uint32(n) {
		s := sampler{pixel: 7, index: i}
		x, y := s.next()
		drawn = drawn.along(eye.times(-1).mirrored(visibleNormal(eye, width, x, y)), 1.0/n)
		x, y = s.next()
		sin, cos := math.Sincos(2 * math.Pi * y)
		z := 2*x - 1
		out := vec{cos * math.Sqrt(1-z*z), sin * math.Sqrt(1-z*z), z}
		facet := eye.add(out).unit()
		if facet.z <= 0 {
			continue
		}
		d := density(eye, facet, width) * 4 * math.Pi / n
		whole += d
		counted = counted.along(out, d)
	}
	assert.InDelta(t, 1, whole, slack)
	assert.InDelta(t, 0, counted.sub(drawn).length(), slack)
}

// The two coordinates of n = 2^k samples fall one into each of n equal strips: a (0,2)-sequence.
func TestSamplesFillTheStrips(t *testing.T) {
	const n = 64
	var across, up [n]bool
	for i := range uint32(n) {
		s := sampler{pixel: 99, index: i}
		x, y := s.next()
		across[int(x*n)], up[int(y*n)] = true, true
	}
	for i := range n {
		assert.True(t, across[i], "strip %d across", i)
		assert.True(t, up[i], "strip %d up", i)
	}
}
