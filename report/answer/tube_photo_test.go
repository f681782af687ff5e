package answer

import (
	"errors"
	"image"
	"image/color"
	"image/png"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
	"tonewright/report/plan"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tubePhoto writes a photo with a gray card at 5,10,20,30 percent, one swatch at
// 40,10,20,30 and another at 70,10,20,30, in the light of a glowing body (6504 K is
// daylight), with grain; it returns the file's name.
func tubePhoto(t *testing.T, kelvin float64, first, second colour.Lab) string {
	const width, height = 400, 300
	random := rand.New(rand.NewPCG(31, 32))
	photo := image.NewNRGBA(image.Rect(0, 0, width, height))
	all := []colour.Lab{{L: 49.5}, first, second, {L: 40, A: 8, B: 14}} // the last is the table
	for i, c := range all {
		all[i] = underGlow(kelvin, c)
	}
	for y := range height {
		for x := range width {
			at := all[3]
			for i, c := range all[:3] {
				left := []int{5, 40, 70}[i] * width / 100
				if x >= left && x < left+width/5 && y >= height/10 && y < height*4/10 {
					at = c
				}
			}
			r, g, b := at.SRGB()
			var pixel [3]uint8
			for i, v := range []float64{r, g, b} {
				linear := 0.8 * linearLight(v) * (1 + 0.01*random.NormFloat64())
				pixel[i] = uint8(255*min(max(encoded(linear), 0), 1) + 0.5)
			}
			photo.SetNRGBA(x, y, color.NRGBA{pixel[0], pixel[1], pixel[2], 255})
		}
	}
	name := filepath.Join(t.TempDir(), "swatches.png")
	f, err := os.Create(name)
	require.NoError(t, err)
	require.NoError(t, png.Encode(f, photo))
	require.NoError(t, f.Close())
	return name
}

// underGlow is what a camera with the observer's eyes, set to daylight, has of the smoothest
// reflectance of a colour under a glowing body, daylight being taken as one of 6504 K
// on which its own spectrum lies. Source: Planck's law, c2 = 0.014388 m K.
func underGlow(kelvin float64, c colour.Lab) colour.Lab {
	power := func(band int, kelvin float64) float64 {
		return 1 / math.Expm1(0.014388/((400+10*float64(band))*1e-9*kelvin))
	}
	r, white := c.Reflectance(), colour.Lab{L: 100}.XYZ()
	var xyz, brightness [3]float64
	for k, weights := range colour.Weights() {
		for i, w := range weights {
			light := w * power(i, kelvin) / power(i, 6504)
			xyz[k] += light * r[i]
			brightness[k] += light
		}
	}
	y := brightness[1]
	return colour.XYZ{X: white.X * xyz[0] / y, Y: white.Y * xyz[1] / y, Z: white.Z * xyz[2] / y}.Lab()
}

// linearLight and encoded are the transfer curve of [IEC61966-2-1], written out here
// apart from the program's.
func linearLight(v float64) float64 {
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

func encoded(v float64) float64 {
	if v <= 0.0031308 {
		return 12.92 * v
	}
	return 1.055*math.Pow(v, 1/2.4) - 0.055
}

func photoOptions(file string) TubeOptions {
	return TubeOptions{File: file, Paint: "yellow-ochre", Card: "5,10,20,30", Masstone: "40,10,20,30", Tints: []string{"70,10,20,30"}}
}

// An ochre that is stronger and redder than the typical one, photographed by day and
// by a yellowish light: what it is in truth is what comes back.
func TestTubeFromAPhoto(t *testing.T) {
	like, err := paint.Find(nil, "yellow-ochre")
	require.NoError(t, err)
	white, err := paint.Find(nil, "titanium-white")
	require.NoError(t, err)
	real := like.Vary(1.3, 0.9, 6)
	for _, kelvin := range []float64{6504, 5000} {
		a, err := TubeFor(photoOptions(tubePhoto(t, kelvin, real.Masstone(), real.Tint(white))))
		require.NoError(t, err)
		assert.Equal(t, "photographed swatches: masstone, tint 1:4", a.Source)
		assert.Equal(t, "yellow-ochre", a.ID)
		assert.Less(t, a.Error, 1.0)
		assert.Less(t, colour.DeltaE00(real.Masstone(), a.Paint.Masstone()), 1.0)
		assert.Less(t, colour.DeltaE00(real.Tint(white), a.Paint.Tint(white)), 1.0)
		assert.Greater(t, colour.DeltaE00(real.Masstone(), like.Masstone()), 3.0, "the typical tube is no answer")
		assert.NotNil(t, a.Warnings)
	}
}

func TestTubeFromAPhotoSaysWhatIsWrong(t *testing.T) {
	file := tubePhoto(t, 6504, colour.Lab{L: 50, A: 15, B: 45}, colour.Lab{L: 80, A: 5, B: 25})
	blue := tubePhoto(t, 6504, colour.Lab{L: 30, A: 10, B: -40}, colour.Lab{L: 70, A: 0, B: -20})
	for _, c := range []struct {
		name   string
		change func(*TubeOptions)
		asked  bool
		want   string
	}{
		{"no card", func(o *TubeOptions) { o.Card = "" }, true, "is a photo, which needs a gray or white card in it: --card x,y,w,h"},
		{"no masstone", func(o *TubeOptions) { o.Masstone = "" }, true, "say where the paint alone is: --masstone x,y,w,h"},
		{"no tint", func(o *TubeOptions) { o.Tints = nil }, true, "paint a tint too and say where it is: --tint x,y,w,h=1:4"},
		{"an empty tint", func(o *TubeOptions) { o.Tints = []string{""} }, true, `--tint "" does not say which tint; write it as SAMPLE=1:4, or in a photo as x,y,w,h=1:4`},
		{"parts below nothing", func(o *TubeOptions) { o.Tints = []string{"70,10,20,30=-1:4"} }, true, "--tint: a tint of -1 parts to 4 of white is none"},
		{"a place twice", func(o *TubeOptions) { o.Tints = append(o.Tints, "70,10,20,30=1:10") }, true, `--tint "70,10,20,30=1:10": this place is given twice`},
		{"the masstone's place", func(o *TubeOptions) { o.Tints = []string{"40,10,20,30"} }, true, "this place is given twice"},
		{"a strange surface", func(o *TubeOptions) { o.Finish = "shiny" }, true, "--finish: "},
		{"films", func(o *TubeOptions) { o.OverBlack = []string{"x"} }, true, "and --shine are for spectra"},
		{"bare grounds", func(o *TubeOptions) { o.BareWhite = "x" }, true, "and --shine are for spectra"},
		{"whatever it is", func(o *TubeOptions) { o.Anyway = true }, true, "--anyway is for spectra"},
		{"a tint out of the photo", func(o *TubeOptions) { o.Tints = []string{"90,10,20,30=1:4"} }, true, "--tint: "},
		{"a strange ratio", func(o *TubeOptions) { o.Tints = []string{"70,10,20,30=4"} }, true, `--tint: "4" is no ratio of paint to white`},
		{"a strange card", func(o *TubeOptions) { o.CardIs = "grayish" }, true, "--card-is: write gray, white, or the card's own colour: "},
		{"no white", func(o *TubeOptions) { o.White = "viridian" }, true, "--white: Viridian is no white"},
		{"another paint", func(o *TubeOptions) { o.File = blue }, false, "no tube of Yellow Ochre looks like these swatches"},
	} {
		o := photoOptions(file)
		c.change(&o)
		_, err := TubeFor(o)
		require.Error(t, err, c.name)
		assert.Contains(t, err.Error(), c.want, c.name)
		_, isMisused := errors.AsType[plan.UsageError](err)
		assert.Equal(t, c.asked, isMisused, c.name)
	}
}
