package analyze

import (
	"fmt"
	"image"
	"testing"

	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// Each orientation by what EXIF says of it: where the stored first row and first
// column belong. Source: JEITA CP-3451C (EXIF 2.3), 4.6.4, Orientation.
func TestOrientationTurnsUpright(t *testing.T) {
	stored := grayRows(
		[]uint8{0x10, 0x20, 0x30},
		[]uint8{0x40, 0x50, 0x60},
	)
	for orientation, want := range map[int][][]uint8{
		1: {{0x10, 0x20, 0x30}, {0x40, 0x50, 0x60}},   // row 0 top, column 0 left
		2: {{0x30, 0x20, 0x10}, {0x60, 0x50, 0x40}},   // top, right
		3: {{0x60, 0x50, 0x40}, {0x30, 0x20, 0x10}},   // bottom, right
		4: {{0x40, 0x50, 0x60}, {0x10, 0x20, 0x30}},   // bottom, left
		5: {{0x10, 0x40}, {0x20, 0x50}, {0x30, 0x60}}, // left, top
		6: {{0x40, 0x10}, {0x50, 0x20}, {0x60, 0x30}}, // right, top
		7: {{0x60, 0x30}, {0x50, 0x20}, {0x40, 0x10}}, // right, bottom
		8: {{0x30, 0x60}, {0x20, 0x50}, {0x10, 0x40}}, // left, bottom
	} {
		t.Run(fmt.Sprint(orientation), func(t *testing.T) {
			p, pic := mustPicture(t, tempFile(t, "p.png", pngOf(t, stored, "eXIf", exifOf(orientation))))
			require.Equal(t, want, reds(pic))
			require.Equal(t, [3]int{orientation, len(want[0]), len(want)}, [3]int{p.Orientation, p.Width, p.Height})
		})
	}
}

// A crop is named in upright pixels, whichever way the file lies: cropping the
// upright picture afterwards must give the same.
func TestCropIsUpright(t *testing.T) {
	stored := grayRows(
		[]uint8{0x10, 0x20, 0x30, 0x40},
		[]uint8{0x50, 0x60, 0x70, 0x80},
		[]uint8{0x90, 0xa0, 0xb0, 0xc0},
	)
	for orientation := 1; orientation <= 8; orientation++ {
		p, whole := mustPicture(t, tempFile(t, "p.png", pngOf(t, stored, "eXIf", exifOf(orientation))))
		crop := image.Rect(1, 0, 3, 3)
		got, err := p.Picture(crop, 0, colour.Lab{})
		require.NoError(t, err)
		for y, row := range reds(got) {
			require.Equal(t, reds(whole)[y][1:3], row, "orientation %d, row %d", orientation, y)
		}
	}
}

// The shared photos say the same picture in all orientations and four formats.
func TestTulipsAllLookAlike(t *testing.T) {
	_, want := mustPicture(t, sharedPhoto(t, "exif/tulips_1.jpg"))
	for _, name := range []string{"2.jpg", "3.jpg", "4.jpg", "5.jpg", "6.jpg", "7.jpg", "8.jpg", "6.png", "6.tif", "6.webp"} {
		p, got := mustPicture(t, sharedPhoto(t, "exif/tulips_"+name))
		require.Equal(t, int(name[0]-'0'), p.Orientation)
		diff := levels(t, got, want)
		t.Logf("tulips_%s differs by %.2f levels", name, diff)
		// JPEG and WebP at their quality differ by 2 to 3; a wrong turn by 40 and more.
		require.Less(t, diff, 4.0, name)
	}
}

// Broken EXIF leaves the photo upright, with a word about it.
func TestBrokenEXIFIsAWarning(t *testing.T) {
	pixel := grayRows([]uint8{0x10, 0x20})
	for name, block := range map[string]string{
		"garbage":          "not an EXIF block at all",
		"cut short":        "MM\x00*",
		"past its end":     "MM\x00*\x00\xff\xff\xff",
		"orientation 9":    exifOf(9),
		"orientation zero": exifOf(0),
	} {
		p, pic := mustPicture(t, tempFile(t, "p.png", pngOf(t, pixel, "eXIf", block)))
		require.Len(t, p.Warnings, 1, name)
		require.Contains(t, p.Warnings[0], "it is taken as upright", name)
		require.Equal(t, [][]uint8{{0x10, 0x20}}, reds(pic), name)
	}
}

// A count too large is read as far as the block goes.
func TestEXIFCountTooLarge(t *testing.T) {
	block := []byte(exifOf(6))
	block[8], block[9] = 0xff, 0xff
	e, err := readEXIF(block)
	require.NoError(t, err)
	require.Equal(t, 6, e.orientation)
}

// Cameras set to Adobe RGB that embed no profile write R03 in the
// interoperability directory. Source: JEITA CP-3461B (DCF 2.0).
func TestAdobeRGBByEXIF(t *testing.T) {
	block := "MM\x00*\x00\x00\x00\x08" +
		"\x00\x01" + "\x87\x69\x00\x04\x00\x00\x00\x01\x00\x00\x00\x1a" + "\x00\x00\x00\x00" + // at 8: EXIF at 26
		"\x00\x01" + "\xa0\x05\x00\x04\x00\x00\x00\x01\x00\x00\x00\x2c" + "\x00\x00\x00\x00" + // at 26: interoperability at 44
		"\x00\x01" + "\x00\x01\x00\x02\x00\x00\x00\x04R03\x00" + "\x00\x00\x00\x00" // at 44
	img := image.NewRGBA(image.Rect(0, 0, 1, 1))
	copy(img.Pix, []uint8{200, 100, 50, 255})
	p, pic := mustPicture(t, tempFile(t, "p.png", pngOf(t, img, "eXIf", block)))
	require.Equal(t, "Adobe RGB (by its EXIF)", p.Profile)
	// 200, 100, 50 in the shared table of a reference colour-management library's
	// values where it is present: see TestAgainstReferenceValues. Here only that
	// it is not taken as sRGB, whose red would stay 200.
	require.Greater(t, pic.RGB[0], uint8(215))
}
