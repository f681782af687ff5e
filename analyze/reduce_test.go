package analyze

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"runtime"
	"testing"

	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// pictureOf reads a made picture through a PNG file.
func pictureOf(t *testing.T, img image.Image, crop image.Rectangle, longSide int) *Picture {
	t.Helper()
	p, err := Open(tempFile(t, "p.png", pngOf(t, img)), Limits{})
	require.NoError(t, err)
	pic, err := p.Picture(crop, longSide, colour.Lab{})
	require.NoError(t, err)
	return pic
}

// Half the squares white, half black send half the light: Y = 0.5 encodes to
// 255·(1.055·0.5^(1/2.4) - 0.055) = 187.5, level 188, by IEC 61966-2-1:1999.
// Averaging the numbers instead gives 128.
func TestCheckerboardReducesInLinearLight(t *testing.T) {
	board := image.NewGray(image.Rect(0, 0, 64, 64))
	for i := range board.Pix {
		board.Pix[i] = 255 * uint8((i%64+i/64)%2)
	}
	pic := pictureOf(t, board, image.Rectangle{}, 16)
	for i, v := range pic.RGB {
		require.Equal(t, uint8(188), v, "byte %d", i)
	}
	require.InDelta(t, 76.069, pic.At(0).L, 0.01) // CIE 15:2018 eq. 8.1 at Y = 0.5
}

// Three pixels into two: each cell has one and a half. By hand, in light: black
// with half of white is 1/3, and half of white with black is 1/3.
func TestCellsShareAPixel(t *testing.T) {
	pic := pictureOf(t, grayRows([]uint8{0x00, 0xff, 0x00}), image.Rectangle{}, 2)
	third := uint8(math.Round(255 * linearToSRGB(1.0/3)))
	require.Equal(t, [][]uint8{{third, third}}, reds(pic))
	pic = pictureOf(t, grayRows([]uint8{0x00}, []uint8{0xff}, []uint8{0x00}), image.Rectangle{}, 2)
	require.Equal(t, [][]uint8{{third}, {third}}, reds(pic))
}

// A crop takes its pixels and no others, whole and reduced.
func TestCropIsExact(t *testing.T) {
	img := grayRows(
		[]uint8{0xff, 0xff, 0xff, 0xff, 0xff},
		[]uint8{0xff, 0x10, 0x20, 0x30, 0xff},
		[]uint8{0xff, 0x40, 0x50, 0x60, 0xff},
		[]uint8{0xff, 0xff, 0xff, 0xff, 0xff},
	)
	crop := image.Rect(1, 1, 4, 3)
	require.Equal(t, [][]uint8{{0x10, 0x20, 0x30}, {0x40, 0x50, 0x60}}, reds(pictureOf(t, img, crop, 0)))
	var light float64
	for _, v := range []float64{0x10, 0x20, 0x30, 0x40, 0x50, 0x60} {
		light += srgbToLinear(v/255) / 6
	}
	mean := uint8(math.Round(255 * linearToSRGB(light)))
	require.Equal(t, [][]uint8{{mean}}, reds(pictureOf(t, img, crop, 1)))
}

func TestCropOutsideIsAnError(t *testing.T) {
	p, err := Open(tempFile(t, "p.png", pngOf(t, grayRows([]uint8{1, 2}))), Limits{})
	require.NoError(t, err)
	_, err = p.Picture(image.Rect(0, 0, 3, 1), 0, colour.Lab{})
	require.ErrorContains(t, err, "reaches past the photo, which has 2 × 1 pixels")
}

// An sRGB picture that is not reduced comes back byte for byte, and its Lab is
// that of its bytes. It is never enlarged.
func TestOwnSizeIsExact(t *testing.T) {
	img := image.NewNRGBA(image.Rect(0, 0, 256, 3))
	for x := range 256 {
		img.SetNRGBA(x, 0, color.NRGBA{R: uint8(x), G: uint8(255 - x), B: 77, A: 255})
		img.SetNRGBA(x, 1, color.NRGBA{R: 9, G: uint8(x), B: uint8(x), A: 255})
		img.SetNRGBA(x, 2, color.NRGBA{R: uint8(x), G: uint8(x), B: uint8(x), A: 255})
	}
	pic := pictureOf(t, img, image.Rectangle{}, 5000)
	require.Equal(t, 256, pic.Width)
	for i := range 3 * 256 {
		p := img.Pix[4*i : 4*i+3]
		require.Equal(t, p, pic.RGB[3*i:3*i+3], "pixel %d", i)
		want := colour.FromSRGB(float64(p[0])/255, float64(p[1])/255, float64(p[2])/255)
		got := pic.At(i)
		require.InDeltaSlice(t, []float64{want.L, want.A, want.B}, []float64{got.L, got.A, got.B}, 0.005, "pixel %d", i)
	}
}

// Every cell's weights sum to the pixels it covers, and all of them to the row.
func TestSpansCoverEachPixelOnce(t *testing.T) {
	for _, c := range [][2]int{{1, 1}, {5, 5}, {7, 3}, {6000, 1200}, {5312, 1200}, {1201, 1200}, {10, 1}} {
		t.Run(fmt.Sprint(c), func(t *testing.T) {
			seen := make([]float64, c[0])
			for _, s := range spans(c[0], c[1]) {
				var sum float64
				for i := s.first; i <= s.last; i++ {
					seen[i] += float64(s.weight(i))
					sum += float64(s.weight(i))
				}
				require.InDelta(t, float64(c[0])/float64(c[1]), sum, 1e-5)
			}
			for i, w := range seen {
				require.InDelta(t, 1, w, 1e-6, "pixel %d", i)
			}
		})
	}
}

// The result is the same to the bit however many workers share it.
func TestWorkersDoNotShow(t *testing.T) {
	img := image.NewYCbCr(image.Rect(0, 0, 331, 217), image.YCbCrSubsampleRatio420)
	for i := range img.Y {
		img.Y[i] = uint8(i * 7919 >> 3)
	}
	for i := range img.Cb {
		img.Cb[i], img.Cr[i] = uint8(i*31), uint8(i*17)
	}
	p := &Photo{File: "made", Orientation: 6, light: srgbLight(), ycc: yccJPEG, stored: img.Rect.Max}
	one := func(workers int) *Picture {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(workers))
		r, err := p.raster(img, img.Rect, image.Pt(100, 66))
		require.NoError(t, err)
		pic, _ := p.finish(r, image.Pt(100, 66), turnOf(6), colour.Lab{})
		return pic
	}
	require.Equal(t, one(1), one(7))
}

// Y, Cb and Cr straight to light must be what the standard library's conversion
// to bytes gives, within the one level that its own rounding leaves open.
func TestYCbCrIsTheStandards(t *testing.T) {
	for _, ratio := range []image.YCbCrSubsampleRatio{image.YCbCrSubsampleRatio444, image.YCbCrSubsampleRatio422,
		image.YCbCrSubsampleRatio420, image.YCbCrSubsampleRatio440, image.YCbCrSubsampleRatio411, image.YCbCrSubsampleRatio410} {
		img := image.NewYCbCr(image.Rect(0, 0, 61, 45), ratio)
		for i := range img.Y {
			img.Y[i] = uint8(i * 101)
		}
		for i := range img.Cb {
			img.Cb[i], img.Cr[i] = uint8(i*57), uint8(i*211)
		}
		p := &Photo{light: srgbLight(), ycc: yccJPEG}
		crop := image.Rect(3, 5, 60, 44)
		r, err := p.light.yccRaster(img, p.ycc, crop, false)
		require.NoError(t, err)
		pic, _ := p.finish(r, crop.Size(), turnOf(1), colour.Lab{})
		for i := range pic.Width * pic.Height {
			c := color.RGBAModel.Convert(img.At(crop.Min.X+i%pic.Width, crop.Min.Y+i/pic.Width)).(color.RGBA)
			for k, want := range []uint8{c.R, c.G, c.B} {
				require.InDelta(t, want, pic.RGB[3*i+k], 1, "%v pixel %d", ratio, i)
			}
		}
	}
}

// Smooth chroma by hand: samples 128 and 192 side by side give, at the four
// pixels, 128, 144, 176, 192: nearer counts 3, farther 1, edges themselves.
// Source: ITU-T T.871 (JFIF): samples are sited in the middle of their pixels.
func TestSmoothChroma(t *testing.T) {
	img := image.NewYCbCr(image.Rect(0, 0, 4, 1), image.YCbCrSubsampleRatio422)
	for i := range img.Y {
		img.Y[i] = 100
	}
	copy(img.Cb, []uint8{128, 128})
	copy(img.Cr, []uint8{128, 192})
	tables := yccJPEG.tables()
	c := newChromaReader(tables, img, 0, 4, true).row(0)
	for i, cr := range []float64{128, 144, 176, 192} {
		require.InDelta(t, 1.402*(cr-128), float64(c[i][0]), 0.5, "pixel %d", i)
	}
}

func TestWorkingSize(t *testing.T) {
	for _, c := range []struct {
		size     image.Point
		longSide int
		want     image.Point
	}{
		{image.Pt(6000, 4000), 0, image.Pt(1000, 667)},
		{image.Pt(4000, 6000), 0, image.Pt(667, 1000)},
		{image.Pt(1286, 3), 100, image.Pt(100, 1)},
		{image.Pt(800, 600), 0, image.Pt(800, 600)},
		{image.Pt(1, 1), 1, image.Pt(1, 1)},
	} {
		require.Equal(t, c.want, workingSize(c.size, c.longSide), "%v", c)
	}
}
