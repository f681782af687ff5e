package analyze

import (
	"bytes"
	"encoding/binary"
	"go/build"
	"hash/crc32"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// sharedFile is a file of the shared folder, which lies beside the repository
// where there is one; a test that needs it is skipped without.
func sharedFile(t testing.TB, parts ...string) string {
	t.Helper()
	path := filepath.Join(append([]string{"..", "..", "shared"}, parts...)...)
	if _, err := os.Stat(path); err != nil {
		t.Skipf("the shared folder is not beside the repository: no %s", filepath.Join(parts...))
	}
	return path
}

func sharedPhoto(t testing.TB, name string) string {
	t.Helper()
	return sharedFile(t, "photos", filepath.FromSlash(name))
}

// moduleFile is a file in a module's source in the module cache, at the version
// that go.mod names.
func moduleFile(t testing.TB, module, name string) string {
	t.Helper()
	mod, err := os.ReadFile(filepath.Join("..", "go.mod"))
	require.NoError(t, err)
	_, rest, found := strings.Cut(string(mod), "\t"+module+" ")
	require.True(t, found, "go.mod does not name %s", module)
	cache := os.Getenv("GOMODCACHE")
	if cache == "" {
		cache = filepath.Join(build.Default.GOPATH, "pkg", "mod")
	}
	path := filepath.Join(cache, filepath.FromSlash(module)+"@"+strings.Fields(rest)[0], filepath.FromSlash(name))
	if _, err := os.Stat(path); err != nil {
		t.Skipf("the module cache has no %s", path)
	}
	return path
}

// mustPicture reads a photo whole at its own size over black.
func mustPicture(t testing.TB, file string) (*Photo, *Picture) {
	t.Helper()
	p, err := Open(file, Limits{})
	require.NoError(t, err)
	pic, err := p.Picture(image.Rectangle{}, 1<<20, colour.Lab{})
	require.NoError(t, err)
	return p, pic
}

// levels is the mean difference of two pictures in sRGB levels of 255.
func levels(t testing.TB, a, b *Picture) float64 {
	t.Helper()
	require.Equal(t, [2]int{a.Width, a.Height}, [2]int{b.Width, b.Height})
	var sum float64
	for i := range a.RGB {
		sum += math.Abs(float64(a.RGB[i]) - float64(b.RGB[i]))
	}
	return sum / float64(len(a.RGB))
}

// tempFile writes a file for one test.
func tempFile(t testing.TB, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, data, 0o600))
	return path
}

// pngOf encodes a picture with extra chunks, name and body in turns, after the header.
func pngOf(t testing.TB, img image.Image, chunks ...string) []byte {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, png.Encode(&out, img))
	const header = 8 + 25 // signature and IHDR
	data := bytes.Clone(out.Bytes()[:header])
	for i := 0; i < len(chunks); i += 2 {
		body := []byte(chunks[i] + chunks[i+1])
		data = binary.BigEndian.AppendUint32(data, uint32(len(chunks[i+1])))
		data = append(data, body...)
		data = binary.BigEndian.AppendUint32(data, crc32.ChecksumIEEE(body))
	}
	return append(data, out.Bytes()[header:]...)
}

// exifOf is a smallest EXIF block that says only the orientation.
func exifOf(orientation int) string {
	return "MM\x00*\x00\x00\x00\x08" + "\x00\x01" + "\x01\x12\x00\x03\x00\x00\x00\x01\x00" + string(rune(orientation)) + "\x00\x00" + "\x00\x00\x00\x00"
}

// grayRows makes a gray picture of hex rows, two digits a pixel, whose corner is
// at (3, 5) and not at (0, 0).
func grayRows(rows ...[]uint8) *image.Gray {
	m := image.NewGray(image.Rect(3, 5, 3+len(rows[0]), 5+len(rows)))
	for y, row := range rows {
		for x, v := range row {
			m.SetGray(3+x, 5+y, color.Gray{Y: v})
		}
	}
	return m
}

// reds lists a picture's red levels, row by row.
func reds(p *Picture) [][]uint8 {
	rows := make([][]uint8, p.Height)
	for i := range p.Width * p.Height {
		rows[i/p.Width] = append(rows[i/p.Width], p.RGB[3*i])
	}
	return rows
}

// fixIHDR writes the header's checksum anew.
func fixIHDR(data []byte) []byte {
	binary.BigEndian.PutUint32(data[29:], crc32.ChecksumIEEE(data[12:29]))
	return data
}
