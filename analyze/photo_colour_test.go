package analyze

import (
	"bytes"
	"encoding/csv"
	"image"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/image/tiff"

	"tonewright/analyze/colour"
)

// Photos with profiles against what a reference colour-management library makes
// of them. The most allowed is 0.6 levels where that library's own result is at
// hand; where two files were compressed apart, what is left of a lossless pair
// and the coder's loss, measured and stated.
func TestProfilesAgainstReference(t *testing.T) {
	slow(t)
	for _, c := range []struct {
		file, want, profile string
		most                float64
	}{
		{"07_irises_painting_AdobeRGB.jpg", "07_irises_EXPECTED_srgb.png", "Adobe RGB (1998)", 0.6},
		{"daisies_cmyk_icc.jpg", "daisies_cmyk_icc_EXPECTED_srgb.png", "CMYK profile uCMY", 0.6},
		{"fig_adobergb.png", "fig_srgb.png", "Adobe RGB (1998)", 0.6},
		{"dandelions_16bit.png", "dandelions_8bit.png", "sRGB (assumed)", 0.6},
		{"fig_displayp3.jpg", "fig_srgb.png", "Display P3", 2},          // a JPEG against a PNG: 1.4
		{"fig.heic", "fig_srgb.png", "sRGB (assumed)", 2},               // 0.8
		{"dandelions.webp", "dandelions_8bit.png", "sRGB (assumed)", 2}, // 1.5; full-range YCbCr would be 9
	} {
		p, got := mustPicture(t, sharedPhoto(t, "colour/"+c.file))
		_, want := mustPicture(t, sharedPhoto(t, "colour/"+c.want))
		diff := levels(t, got, want)
		t.Logf("%s differs by %.3f levels", c.file, diff)
		require.LessOrEqual(t, diff, c.most, c.file)
		require.Equal(t, c.profile, p.Profile, c.file)
		require.Empty(t, p.Warnings, c.file)
	}
}

// Single colours, in and out of the sRGB gamut, against the same library's
// unclipped values; the profiles are other files for the same spaces.
func TestAgainstReferenceValues(t *testing.T) {
	file, err := os.Open(sharedFile(t, "reference", "lcms_check_values.tsv"))
	require.NoError(t, err)
	defer file.Close()
	r := csv.NewReader(file)
	r.Comma = '\t'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	lights := map[string]light{"sRGB": srgbLight()}
	for name, icc := range map[string]string{"Display P3": "displayp3.icc", "Adobe RGB (1998) compat": "adobergb.icc"} {
		lights[name], err = profileLight(testProfile(t, icc), 3)
		require.NoError(t, err)
	}
	for _, row := range rows[1:] {
		n := numbers(t, row[1:])
		l := lights[row[0]]
		got := l.affine.apply([3]float64{l.curve(0, n[0]/255), l.curve(1, n[1]/255), l.curve(2, n[2]/255)})
		want := [3]float64{srgbToLinear(n[9] / 255), srgbToLinear(n[10] / 255), srgbToLinear(n[11] / 255)}
		diff := colour.DeltaE00(colour.FromLinear(got[0], got[1], got[2]), colour.FromLinear(want[0], want[1], want[2]))
		// Ours: profiles of one space differ in their last digits; the largest here is 0.12.
		require.Less(t, diff, 0.2, "%v", row)
	}
}

func numbers(t *testing.T, fields []string) []float64 {
	t.Helper()
	n := make([]float64, len(fields))
	for i, f := range fields {
		var err error
		n[i], err = strconv.ParseFloat(f, 64)
		require.NoError(t, err)
	}
	return n
}

// The same colour space by a camera's EXIF and by a profile is the same colour.
func TestAdobeLightIsTheProfiles(t *testing.T) {
	byProfile, err := profileLight(testProfile(t, "adobergb.icc"), 3)
	require.NoError(t, err)
	byEXIF := adobeLight()
	for _, v := range [][3]float64{{1, 1, 1}, {0.8, 0.4, 0.2}, {0.1, 0.9, 0.5}} {
		a := byProfile.affine.apply([3]float64{byProfile.curve(0, v[0]), byProfile.curve(1, v[1]), byProfile.curve(2, v[2])})
		b := byEXIF.affine.apply([3]float64{byEXIF.curve(0, v[0]), byEXIF.curve(1, v[1]), byEXIF.curve(2, v[2])})
		require.InDeltaSlice(t, a[:], b[:], 0.0005)
	}
}

// A picture keeps colours that sRGB cannot show: only its RGB is clipped.
func TestWideGamutIsKept(t *testing.T) {
	data := testProfile(t, "displayp3.icc")
	img := image.NewRGBA(image.Rect(0, 0, 1, 1))
	copy(img.Pix, []uint8{255, 0, 0, 255})
	_, pic := mustPicture(t, tempFile(t, "red.png", pngOf(t, img, "iCCP", "p3\x00\x00"+deflated(t, data))))
	require.False(t, pic.At(0).InGamut())
	// lcms 2.14 by lcms_check_values.tsv: red of Display P3 is 278.7, -138.2, -64.6 in sRGB.
	require.Equal(t, []uint8{255, 0, 0}, pic.RGB)
}

// Alpha is laid over the ground as light. Half of white over black is half the
// light: L* 76.069, by Y = 0.5 in CIE 15:2018 eq. 8.1, which is sRGB 188.
func TestAlphaOverGround(t *testing.T) {
	img := image.NewNRGBA64(image.Rect(7, 7, 9, 8))
	copy(img.Pix, "\xff\xff\xff\xff\xff\xff\x80\x00"+"\xff\xff\x00\x00\x00\x00\x00\x00") // half white, no red
	p, err := Open(tempFile(t, "a.png", pngOf(t, img)), Limits{})
	require.NoError(t, err)
	pic, err := p.Picture(image.Rectangle{}, 0, colour.Lab{})
	require.NoError(t, err)
	require.InDelta(t, 76.069, pic.At(0).L, 0.01)
	require.Equal(t, []uint8{188, 188, 188, 0, 0, 0}, pic.RGB)
	ochre := colour.Lab{L: 60, A: 12, B: 45}
	pic, err = p.Picture(image.Rectangle{}, 0, ochre)
	require.NoError(t, err)
	got := pic.At(1)
	require.InDeltaSlice(t, []float64{ochre.L, ochre.A, ochre.B}, []float64{got.L, got.A, got.B}, 0.005)
}

// A TIFF may hold colours already multiplied by alpha: 128 of red at alpha 128 is
// full red, half there. Over black that is 128/255 of its light.
func TestAlphaAlreadyMultiplied(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 1, 1))
	copy(img.Pix, []uint8{128, 0, 0, 128})
	var out bytes.Buffer
	require.NoError(t, tiff.Encode(&out, img, nil))
	_, pic := mustPicture(t, tempFile(t, "a.tif", out.Bytes()))
	require.Equal(t, []uint8{uint8(math.Round(255 * linearToSRGB(128.0/255))), 0, 0}, pic.RGB)
}

// A wholly transparent photo is the ground, everywhere.
func TestFullyTransparent(t *testing.T) {
	p, err := Open(sharedPhoto(t, "colour/fully_transparent.png"), Limits{})
	require.NoError(t, err)
	pic, err := p.Picture(image.Rectangle{}, 100, colour.Lab{L: 40, A: 10, B: -5})
	require.NoError(t, err)
	for i := range pic.Width * pic.Height {
		c := pic.At(i)
		require.InDeltaSlice(t, []float64{40, 10, -5}, []float64{c.L, c.A, c.B}, 0.005)
	}
}

// Inks without a profile are turned by the simple rule, and the photo says so.
func TestCMYKWithoutProfile(t *testing.T) {
	p, pic := mustPicture(t, sharedPhoto(t, "22_daisies_cmyk_noicc.jpg"))
	require.Len(t, p.Warnings, 1)
	require.Contains(t, p.Warnings[0], "(1 − ink) × (1 − black)")
	require.Equal(t, [2]int{510, 532}, [2]int{pic.Width, pic.Height})
	var bright int
	for i := range pic.Width * pic.Height {
		if pic.At(i).L > 50 {
			bright++
		}
	}
	// Violet daisies: three pixels of four are lighter than L* 50. Taken inverted,
	// as such files store their inks, three of four would be darker.
	require.Greater(t, float64(bright)/float64(pic.Width*pic.Height), 0.6)
}
