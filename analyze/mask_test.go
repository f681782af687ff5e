package analyze

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/tiff"
)

// sized is a photo of which only the size matters.
func sized(width, height int) *Photo { return &Photo{File: "photo", Width: width, Height: height} }

// grayMask writes a mask of levels as a PNG.
func grayMask(t testing.TB, rows ...[]uint8) string {
	return tempFile(t, "mask.png", pngOf(t, grayRows(rows...)))
}

func readMask(t *testing.T, file string, photo *Photo, crop image.Rectangle, width, height int) string {
	t.Helper()
	in, err := ReadMask(file, photo, crop, width, height, Limits{})
	require.NoError(t, err)
	require.Len(t, in, width*height)
	return drawn(in, width)
}

// drawn writes a mask as rows of # and dots.
func drawn(in []bool, width int) string {
	var text strings.Builder
	for i, is := range in {
		if i > 0 && i%width == 0 {
			text.WriteByte(' ')
		}
		text.WriteByte(".#"[map[bool]int{true: 1}[is]])
	}
	return text.String()
}

// [CIE15] 8.2.1: L* 50 is Y = ((50+16)/116)³ = 0.1842, which [IEC61966-2-1] writes as
// 255·(1.055·0.1842^(1/2.4) − 0.055) = 118.9: 119 is light and 118 is dark.
func TestMaskByHand(t *testing.T) {
	file := grayMask(t,
		[]uint8{0, 118, 119, 255},
		[]uint8{255, 0, 0, 0})
	assert.Equal(t, "..## #...", readMask(t, file, sized(4, 2), image.Rectangle{}, 4, 2), "as it is")
	assert.Equal(t, "..## #...", readMask(t, file, sized(400, 200), image.Rectangle{}, 4, 2), "a smaller mask than the photo")
	assert.Equal(t, "### ...", readMask(t, file, sized(400, 200), image.Rect(200, 0, 400, 200), 3, 2), "the right half")
	assert.Equal(t, "....#### ....#### ##...... ##......", readMask(t, file, sized(8, 4), image.Rectangle{}, 8, 4), "enlarged")
}

// A picture of 3 × 1 pixels of columns 1 to 3 of 4: its middles lie in those columns; by
// hand also for two pixels over four columns: their middles are the borders 1 and 3,
// which belong to the columns right of them.
func TestMaskMiddles(t *testing.T) {
	assert.Equal(t, []int{1, 2, 3}, middles(1, 3, 4, 4, 3))
	assert.Equal(t, []int{1, 3}, middles(0, 4, 4, 4, 2))
	assert.Equal(t, []int{10, 30}, middles(0, 4, 4, 40, 2), "a larger mask than the photo")
	assert.Equal(t, []int{0, 0, 1, 1}, middles(0, 4, 4, 2, 4), "a smaller one")
	assert.Equal(t, []int{59999}, middles(59999, 1, 60000, 60000, 1), "more than 32 bits hold")
}

// Transparent is outside, whatever colour lies under it.
func TestTransparentMask(t *testing.T) {
	m := image.NewNRGBA(image.Rect(0, 0, 3, 1))
	m.SetNRGBA(0, 0, color.NRGBA{255, 255, 255, 0})
	m.SetNRGBA(1, 0, color.NRGBA{255, 255, 255, 255})
	m.SetNRGBA(2, 0, color.NRGBA{255, 255, 255, 30}) // 30/255 of the light: L* 41
	assert.Equal(t, ".#.", readMask(t, tempFile(t, "mask.png", pngOf(t, m)), sized(3, 1), image.Rectangle{}, 3, 1))
}

// Two masks that are each other's opposites part the picture, at any size.
func TestOppositeMasks(t *testing.T) {
	a, b := image.NewGray(image.Rect(0, 0, 90, 60)), image.NewGray(image.Rect(0, 0, 90, 60))
	for i := range a.Pix {
		if x, y := i%90-40, i/90-25; x*x+3*y*y < 900 {
			a.Pix[i] = 255
		}
		b.Pix[i] = 255 - a.Pix[i]
	}
	first, second := tempFile(t, "a.png", pngOf(t, a)), tempFile(t, "b.png", pngOf(t, b))
	for _, size := range []image.Point{{90, 60}, {41, 33}, {7, 5}, {200, 130}} {
		one, err := ReadMask(first, sized(90, 60), image.Rect(3, 2, 90, 55), size.X, size.Y, Limits{})
		require.NoError(t, err)
		other, err := ReadMask(second, sized(90, 60), image.Rect(3, 2, 90, 55), size.X, size.Y, Limits{})
		require.NoError(t, err)
		for i := range one {
			require.NotEqual(t, one[i], other[i], "pixel %d at %v", i, size)
		}
	}
}

// A mask stored in any of the eight ways is read upright: the photo reader, which is
// checked on shared photos, must see the same at the mask's own size.
func TestTurnedMasks(t *testing.T) {
	m := image.NewNRGBA(image.Rect(0, 0, 3, 2))
	for i := range 6 {
		m.SetNRGBA(i%3, i/3, color.NRGBA{R: 255, G: 255, B: 255, A: []uint8{255, 0, 0, 0, 255, 255}[i]})
	}
	for orientation := 1; orientation <= 8; orientation++ {
		file := tempFile(t, "mask.png", pngOf(t, m, "eXIf", exifOf(orientation)))
		photo, upright := mustPicture(t, file)
		var want []bool
		for i := range upright.Width * upright.Height {
			want = append(want, upright.Lab[3*i] > 50)
		}
		got := readMask(t, file, sized(photo.Width, photo.Height), image.Rectangle{}, photo.Width, photo.Height)
		assert.Equal(t, drawn(want, upright.Width), got, "orientation %d", orientation)
		assert.Equal(t, image.Pt(upright.Width, upright.Height), photo.WorkingSize(image.Rectangle{}, 0))
	}
}

// Every format that is read, gray and in colour.
func TestMaskFormats(t *testing.T) {
	m := image.NewRGBA(image.Rect(0, 0, 32, 16))
	for i := range 32 * 16 {
		m.Set(i%32, i/32, color.Gray{Y: uint8(i % 32 / 16 * 255)})
	}
	var asJPEG, asTIFF, asPNG bytes.Buffer
	require.NoError(t, jpeg.Encode(&asJPEG, m, nil))
	require.NoError(t, tiff.Encode(&asTIFF, m, nil))
	p := image.NewPaletted(m.Rect, color.Palette{color.Black, color.White})
	for i := range p.Pix {
		p.Pix[i] = uint8(i % 32 / 16)
	}
	require.NoError(t, png.Encode(&asPNG, p))
	for name, data := range map[string][]byte{"mask.jpg": asJPEG.Bytes(), "mask.tif": asTIFF.Bytes(), "mask.png": asPNG.Bytes()} {
		assert.Equal(t, "..## ..##", readMask(t, tempFile(t, name, data), sized(3200, 1600), image.Rectangle{}, 4, 2), name)
	}
}

func TestMaskRefuses(t *testing.T) {
	half := grayMask(t, []uint8{0, 0, 255, 255}, []uint8{0, 0, 255, 255})
	for part, c := range map[string]struct {
		file  string
		photo *Photo
		crop  image.Rectangle
	}{
		"this mask has 4 × 2 pixels, which is another proportion than the photo's 200 × 200; paint it over": {half, sized(200, 200), image.Rectangle{}},
		"4 × 2 pixels and the photo 2000 × 4000: it lies on its side; turn it":                              {half, sized(2000, 4000), image.Rectangle{}},
		"dark everywhere on the part of the photo that is painted; paint its region white":                  {half, sized(4, 2), image.Rect(0, 0, 2, 2)},
		"light everywhere on the part of the photo that is painted; paint black":                            {half, sized(4, 2), image.Rect(2, 0, 4, 2)},
		"there is no such file":                {filepath.Join(t.TempDir(), "none.png"), sized(4, 2), image.Rectangle{}},
		"not a photo in a format that is read": {tempFile(t, "mask.png", []byte("words")), sized(4, 2), image.Rectangle{}},
	} {
		_, err := ReadMask(c.file, c.photo, c.crop, 4, 2, Limits{})
		require.ErrorContains(t, err, part)
		assert.True(t, strings.HasPrefix(err.Error(), c.file+": "), err)
	}
	_, err := ReadMask(half, sized(4, 2), image.Rectangle{}, 4, 2, Limits{Megapixels: 1e-6})
	assert.ErrorContains(t, err, "megapixels and the limit is")
}

// A pixel more or less by a program's rounding is no other proportion.
func TestMaskProportion(t *testing.T) {
	photo := image.Pt(4000, 3000)
	for size, want := range map[image.Point]bool{
		{4000, 3000}: true, {1000, 750}: true, {1000, 751}: true, {1001, 750}: true, {999, 750}: true, {1333, 1000}: true, {333, 249}: true,
		{1000, 752}: false, {1002, 750}: false, {750, 1000}: false, {1000, 667}: false, {3000, 3000}: false,
	} {
		assert.Equal(t, want, sameShape(size, photo), "%v", size)
	}
}

// FuzzReadMask reads whatever bytes there may be: a mask of the size asked for, or one
// sentence that begins with the file.
func FuzzReadMask(f *testing.F) {
	for _, data := range photoSeeds(f) {
		f.Add(data, uint16(2), uint16(3))
	}
	f.Add(pngOf(f, grayRows([]uint8{0, 255}, []uint8{255, 0})), uint16(20), uint16(20))
	file := filepath.Join(f.TempDir(), "mask")
	f.Fuzz(func(t *testing.T, data []byte, w, h uint16) {
		if kind, err := sniff(bytes.NewReader(data)); err == nil && kind == formatHEIC {
			t.Skip("its decoder is its own sandbox, and takes a second")
		}
		require.NoError(t, os.WriteFile(file, data, 0o600))
		photo := sized(1+int(w), 1+int(h))
		in, err := ReadMask(file, photo, image.Rectangle{}, 1+int(w)%50, 1+int(h)%50, Limits{Megapixels: 0.1})
		if err != nil {
			require.True(t, strings.HasPrefix(err.Error(), file+": "), err)
			return
		}
		require.Len(t, in, (1+int(w)%50)*(1+int(h)%50))
		assert.Contains(t, in, true)
		assert.Contains(t, in, false)
	})
}

// BenchmarkReadMask24MP is a mask as large as a large photo, beside plain decoding
// measured in the same turns.
func BenchmarkReadMask24MP(b *testing.B) {
	m := image.NewGray(image.Rect(0, 0, 6000, 4000))
	for i := range m.Pix {
		if x, y := i%6000-3000, i/6000-2000; x*x+2*y*y < 3000000 {
			m.Pix[i] = 255
		}
	}
	data := pngOf(b, m)
	file := tempFile(b, "mask.png", data)
	var floor, job time.Duration
	for b.Loop() {
		start := time.Now()
		_, err := png.Decode(bytes.NewReader(data))
		require.NoError(b, err)
		floor += time.Since(start)
		start = time.Now()
		_, err = ReadMask(file, sized(6000, 4000), image.Rectangle{}, 1000, 667, Limits{})
		require.NoError(b, err)
		job += time.Since(start)
	}
	b.ReportMetric(float64(job)/float64(floor), "x-floor")
}
