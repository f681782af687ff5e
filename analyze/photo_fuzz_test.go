package analyze

import (
	"bytes"
	"image"
	"image/jpeg"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/image/tiff"

	"tonewright/analyze/colour"
)

// photoSeeds are small files of every kind of image, whole and broken.
func photoSeeds(f *testing.F) [][]byte {
	img := grayRows([]uint8{0x10, 0x20, 0x30}, []uint8{0x40, 0x50, 0x60})
	var asJPEG, asTIFF bytes.Buffer
	require.NoError(f, jpeg.Encode(&asJPEG, img, nil))
	require.NoError(f, tiff.Encode(&asTIFF, img, nil))
	return [][]byte{
		asJPEG.Bytes(),
		asTIFF.Bytes(),
		pngOf(f, img),
		pngOf(f, image.NewNRGBA(image.Rect(0, 0, 2, 2)), "eXIf", exifOf(6)),
		pngOf(f, img, "iCCP", "x\x00\x00"+deflated(f, []byte(strings.Repeat("acsp", 40)))),
		[]byte("RIFF\x1a\x00\x00\x00WEBPVP8L\x0d\x00\x00\x00\x2f\x00\x00\x00\x10\x07\x10\x11\x11\x88\x88\xfe\x07\x00"),
		[]byte("\x00\x00\x00\x14ftypheic\x00\x00\x00\x00heic" + "\x00\x00\x00\x2ameta\x00\x00\x00\x00" +
			"\x00\x00\x00\x0epitm\x00\x00\x00\x00\x00\x01" + "\x00\x00\x00\x10iprp\x00\x00\x00\x08ipco"),
	}
}

// FuzzOpen reads whatever bytes there may be: a picture whose parts fit, or one
// sentence that begins with the file.
func FuzzOpen(f *testing.F) {
	for _, data := range photoSeeds(f) {
		f.Add(data)
	}
	file := filepath.Join(f.TempDir(), "photo")
	f.Fuzz(func(t *testing.T, data []byte) {
		if kind, err := sniff(bytes.NewReader(data)); err == nil && kind == formatHEIC {
			headerOnly(t, file, data) // its decoder is its own sandbox, and takes a second
			return
		}
		require.NoError(t, os.WriteFile(file, data, 0o600))
		p, err := Open(file, Limits{Megapixels: 0.1})
		var pic *Picture
		if err == nil {
			pic, err = p.Picture(image.Rectangle{}, 50, colour.Lab{L: 50})
		}
		if err != nil {
			require.True(t, strings.HasPrefix(err.Error(), file+": "), err)
			return
		}
		require.LessOrEqual(t, max(pic.Width, pic.Height), 50)
		require.Len(t, pic.Lab, 3*pic.Width*pic.Height)
		require.Len(t, pic.RGB, 3*pic.Width*pic.Height)
	})
}

func headerOnly(t *testing.T, file string, data []byte) {
	t.Helper()
	require.NoError(t, os.WriteFile(file, data, 0o600))
	if _, err := Open(file, Limits{Megapixels: 0.1}); err != nil {
		require.True(t, strings.HasPrefix(err.Error(), file+": "), err)
	}
}
