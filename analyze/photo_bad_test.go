package analyze

import (
	"context"
	"fmt"
	"image"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// badOutcomes is how each hostile or broken file must end: in an error or in a
// picture with a warning, and which words must be in it.
var badOutcomes = map[string]struct{ kind, words string }{
	"bomb_header_50000x50000.png":     {"error", "2500 megapixels and the limit is 200"},
	"bomb_header_max.png":             {"error", "more pixels than any picture has"},
	"bomb_valid_30000x30000_1bit.png": {"error", "900 megapixels and the limit is 200"},
	"exif_count_huge.jpg":             {"picture", ""},
	"exif_garbage.jpg":                {"warning", "taken as upright"},
	"exif_ifd_loop.jpg":               {"picture", ""},
	"exif_offset_past_end.jpg":        {"warning", "taken as upright"},
	"exif_orientation_99.jpg":         {"warning", "its orientation is 99"},
	"heic_truncated.heic":             {"error", "the file ends early"},
	"huge_valid_20000x14000_gray.jpg": {"error", "280 megapixels and the limit is 200"},
	"icc_garbage.jpg":                 {"warning", "taken as sRGB"},
	"icc_missing_chunk.jpg":           {"warning", "a part of it is missing"},
	"icc_tagcount_huge.jpg":           {"warning", "taken as sRGB"},
	"icc_truncated.jpg":               {"warning", "it is cut short"},
	"icc_wrong_space.jpg":             {"warning", "it is for CMYK and the picture is RGB"},
	"jpeg_claims_65500x65500.jpg":     {"error", "4290.3 megapixels"},
	"jpeg_zero_dims.jpg":              {"error", "0 × 0 pixels"},
	"png_bad_crc.png":                 {"error", "the PNG is damaged"},
	"png_iccp_corrupt.png":            {"picture", ""}, // a second, sound profile follows
	"png_truncated.png":               {"error", "the file ends early"},
	"skimage_truncated.jpg":           {"error", "the file ends early"},
	"soi_only.jpg":                    {"error", "the JPEG is damaged"},
	"text_renamed.jpg":                {"error", "not a photo in a format that is read"},
	"tiff_bad_offset.tif":             {"error", "the file ends early"},
	"truncated_half.jpg":              {"error", "the file ends early"},
	"truncated_header.jpg":            {"error", "the file ends early"},
	"truncated_progressive.jpg":       {"error", "the file ends early"},
	"webp_truncated.webp":             {"error", "the file ends early"},
	"wrong_extension_png_as.jpg":      {"warning", "The name says JPEG but the file is a PNG"},
	"zero_byte.jpg":                   {"error", "the file is empty"},
	"zero_dimension.png":              {"error", "the PNG is damaged"},
}

// badChild is set in the child process that reads one file, so that what it
// takes can be measured and a crash is not the test's own.
const badChild = "TONEWRIGHT_TEST_READ"

// Every broken file ends in a sentence or a picture within 2 s and 500 MiB.
func TestBadFiles(t *testing.T) {
	if file := os.Getenv(badChild); file != "" {
		readInChild(file)
		return
	}
	folder := filepath.Dir(sharedPhoto(t, "bad/zero_byte.jpg"))
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	for _, e := range entries {
		t.Run(e.Name(), func(t *testing.T) {
			want, known := badOutcomes[e.Name()]
			require.True(t, known, "say in badOutcomes how it should end")
			limit, cancel := context.WithTimeout(t.Context(), time.Minute)
			defer cancel()
			child := exec.CommandContext(limit, os.Args[0], "-test.run=^TestBadFiles$")
			child.Env = append(os.Environ(), badChild+"="+filepath.Join(folder, e.Name()))
			out, err := child.Output()
			require.NoError(t, err, "%s", out)
			took := child.ProcessState.UserTime() + child.ProcessState.SystemTime() // other work on the machine does not count
			line, _, _ := strings.Cut(string(out), "\n")
			var mebibytes int
			_, err = fmt.Sscanf(line, "%d MiB", &mebibytes)
			require.NoError(t, err, line)
			t.Logf("%v, %s", took.Round(time.Millisecond), line)
			require.Less(t, took, 2*time.Second)
			require.Less(t, mebibytes, 500)
			require.Contains(t, line, " MiB, "+want.kind+": ")
			require.Contains(t, line, want.words)
		})
	}
}

// readInChild prints one line: what the process got from the system, and how it ended.
func readInChild(file string) {
	kind, text := "picture", ""
	p, err := Open(file, Limits{})
	if err == nil {
		_, err = p.Picture(image.Rectangle{}, 0, colour.Lab{})
	}
	switch {
	case err != nil:
		kind, text = "error", err.Error()
	case len(p.Warnings) > 0:
		kind, text = "warning", strings.Join(p.Warnings, "; ")
	}
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	fmt.Printf("%d MiB, %s: %s\n", m.Sys>>20, kind, text)
}
