package analyze

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/disintegration/imaging"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/tiff"

	"tonewright/analyze/colour"
)

// Every kind of PNG and TIFF, gray and colour JPEG: a made picture comes back.
func TestKindsOfPixels(t *testing.T) {
	rect := image.Rect(2, 1, 6, 4)
	paint := func(set func(x, y int, c color.Color)) {
		for y := rect.Min.Y; y < rect.Max.Y; y++ {
			for x := rect.Min.X; x < rect.Max.X; x++ {
				set(x, y, color.NRGBA{R: uint8(40 * x), G: 120, B: uint8(60 * y), A: 255})
			}
		}
	}
	palette := color.Palette{}
	paint(func(_, _ int, c color.Color) { palette = append(palette, c) })
	for name, m := range map[string]interface {
		image.Image
		Set(x, y int, c color.Color)
	}{
		"NRGBA": image.NewNRGBA(rect), "NRGBA64": image.NewNRGBA64(rect), "RGBA": image.NewRGBA(rect), "RGBA64": image.NewRGBA64(rect),
		"Gray": image.NewGray(rect), "Gray16": image.NewGray16(rect), "Paletted": image.NewPaletted(rect, palette),
	} {
		paint(m.Set)
		var asTIFF bytes.Buffer
		require.NoError(t, tiff.Encode(&asTIFF, m, nil))
		for format, data := range map[string][]byte{"PNG": pngOf(t, m), "TIFF": asTIFF.Bytes()} {
			p, pic := mustPicture(t, tempFile(t, "p."+strings.ToLower(format), data))
			require.Equal(t, format, p.Format, name)
			require.Equal(t, "sRGB (assumed)", p.Profile, name)
			require.Empty(t, p.Warnings, name)
			for i := range pic.Width * pic.Height {
				c := color.NRGBAModel.Convert(m.At(rect.Min.X+i%pic.Width, rect.Min.Y+i/pic.Width)).(color.NRGBA)
				require.Equal(t, []uint8{c.R, c.G, c.B}, pic.RGB[3*i:3*i+3], "%s %s pixel %d", format, name, i)
			}
		}
	}
}

// Gray with alpha decodes to RGB, and a gray profile suits it.
func TestGrayWithAlphaAndProfile(t *testing.T) {
	data := pngOf(t, image.NewNRGBA(image.Rect(0, 0, 1, 1)), "iCCP", "g\x00\x00"+deflated(t, testProfile(t, "gray-v4-srgb.icc")))
	data[25] = 4 // the header now says gray with alpha
	p, err := Open(tempFile(t, "p.png", fixIHDR(data)), Limits{})
	require.NoError(t, err)
	require.Empty(t, p.Warnings)
	require.Equal(t, 1, p.light.inks)
}

// JPEG against an independent reading of the same file, imaging's, upright.
func TestJPEGAgainstImaging(t *testing.T) {
	for _, name := range []string{"branches.jpg", "orientation_6.jpg"} {
		file := moduleFile(t, "github.com/disintegration/imaging", "testdata/"+name)
		want, err := imaging.Open(file, imaging.AutoOrientation(true))
		require.NoError(t, err)
		_, pic := mustPicture(t, file)
		require.Equal(t, want.Bounds().Size(), image.Pt(pic.Width, pic.Height))
		var sum int
		for i := range pic.Width * pic.Height {
			c := want.At(i%pic.Width, i/pic.Width)
			n := color.NRGBAModel.Convert(c).(color.NRGBA)
			for k, v := range []uint8{n.R, n.G, n.B} {
				sum += max(int(v), int(pic.RGB[3*i+k])) - min(int(v), int(pic.RGB[3*i+k]))
			}
		}
		// Only the joining of chroma samples differs.
		require.Less(t, float64(sum)/float64(len(pic.RGB)), 2.0, name)
	}
}

// What is not a photo gets a sentence that names the file and the next step.
func TestOpenSaysWhatIsWrong(t *testing.T) {
	folder := t.TempDir()
	pixel := pngOf(t, grayRows([]uint8{0x10, 0x20}))
	for _, c := range []struct{ name, data, want string }{
		{"empty.jpg", "", "the file is empty; copy it again from the camera"},
		{"notes.jpg", "a shopping list", "not a photo in a format that is read (JPEG, PNG, WebP, TIFF, HEIC)"},
		{"moving.gif", "GIF89a\x01\x00\x01\x00", "this is a GIF, which is not read; save it as JPEG"},
		{"new.avif", "\x00\x00\x00\x1cftypavif\x00\x00\x00\x00", "this is an AVIF, which is not read"},
		{"cut.png", string(pixel[:len(pixel)-30]), "the file ends early, before the whole picture is there"},
		{"head.jpg", "\xff\xd8\xff\xe0", "the file ends early"},
		{"raw.tif", "II*\x00\x08\x00\x00\x00\x01\x00\xfe\x00\x04\x00\x01\x00\x00\x00\x01\x00\x00\x00\x00\x00\x00\x00", "camera raw file"},
	} {
		file := filepath.Join(folder, c.name)
		require.NoError(t, os.WriteFile(file, []byte(c.data), 0o600))
		err := readAll(file, Limits{})
		require.ErrorContains(t, err, c.want, c.name)
		require.True(t, strings.HasPrefix(err.Error(), file+": "), err)
		require.NotContains(t, err.Error(), "\n")
	}
	require.ErrorContains(t, readAll(folder, Limits{}), "this is a folder; name a photo in it")
	require.ErrorContains(t, readAll(filepath.Join(folder, "none.jpg"), Limits{}), "there is no such file")
	require.ErrorContains(t, readAll(os.DevNull, Limits{}), "a device or a pipe")
}

func readAll(file string, lim Limits) error {
	p, err := Open(file, lim)
	if err != nil {
		return err
	}
	_, err = p.Picture(image.Rectangle{}, 0, colour.Lab{})
	return err
}

// The limit holds before anything is decoded, and is the caller's to raise.
func TestLimit(t *testing.T) {
	file := tempFile(t, "p.png", pngOf(t, image.NewGray(image.Rect(0, 0, 1000, 500))))
	require.ErrorContains(t, readAll(file, Limits{Megapixels: 0.4}), "1000 × 500 pixels are 0.5 megapixels and the limit is 0.4; make it smaller first, or raise the limit of plan with --megapixels")
	require.NoError(t, readAll(file, Limits{Megapixels: 0.5}))
}

// The name never decides; a wrong one is said.
func TestWrongExtension(t *testing.T) {
	p, _ := mustPicture(t, tempFile(t, "photo.jpg", pngOf(t, grayRows([]uint8{0x10}))))
	require.Equal(t, []string{"The name says JPEG but the file is a PNG; it was read as a PNG."}, p.Warnings)
}

// A file that changes between Open and Picture is not read past its promise.
func TestFileChangedAfterOpen(t *testing.T) {
	file := tempFile(t, "p.png", pngOf(t, grayRows([]uint8{0x10, 0x20})))
	p, err := Open(file, Limits{})
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(file, pngOf(t, image.NewGray(image.Rect(0, 0, 9, 9))), 0o600))
	_, err = p.Picture(image.Rectangle{}, 0, colour.Lab{})
	require.ErrorContains(t, err, "its header says 2 × 1 pixels and its picture has 9 × 9")
}

// A profile in parts, as JPEG carries it, is put together; a part missing is said.
func TestProfileInParts(t *testing.T) {
	profile := testProfile(t, "displayp3.icc")
	half := len(profile) / 2
	var plain bytes.Buffer
	require.NoError(t, jpeg.Encode(&plain, image.NewGray(image.Rect(0, 0, 8, 8)), nil))
	with := func(parts ...[]byte) string {
		data := bytes.Clone(plain.Bytes()[:2])
		for _, p := range parts {
			data = append(data, 0xff, 0xe2, byte((len(p)+2)>>8), byte(len(p)+2))
			data = append(data, p...)
		}
		return tempFile(t, "p.jpg", append(data, plain.Bytes()[2:]...))
	}
	lead := func(n byte, data []byte) []byte {
		return append([]byte("ICC_PROFILE\x00"+string([]byte{n, 2})), data...)
	}
	p, err := Open(with(lead(2, profile[half:]), lead(1, profile[:half])), Limits{})
	require.NoError(t, err)
	require.Equal(t, "Display P3", p.Profile)
	p, err = Open(with(lead(2, profile[half:])), Limits{})
	require.NoError(t, err)
	require.Equal(t, "sRGB (assumed)", p.Profile)
	require.Contains(t, p.Warnings[0], "a part of it is missing")
}

// A decoder's panic is a sentence.
func TestPanicIsContained(t *testing.T) {
	err := func() (err error) {
		defer contain(&err)
		panic("index out of range")
	}()
	require.EqualError(t, err, "its decoder failed: index out of range")
	p := &Photo{File: "x.jpg"}
	require.ErrorContains(t, p.sentence(err), "x.jpg: the JPEG is damaged (its decoder failed")
	require.ErrorContains(t, p.sentence(io.ErrUnexpectedEOF), "x.jpg: the file ends early")
}
