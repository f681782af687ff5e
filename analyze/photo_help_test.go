package analyze

import (
	"go/build"
	"image"
	"math"
	"os"
	"path/filepath"
	"runtime/debug"
	"testing"

	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// sharedPhoto is a file of the shared folder of photos, which lies beside the
// repository where there is one; a test that needs it is skipped without.
func sharedPhoto(t testing.TB, name string) string {
	t.Helper()
	path := filepath.Join("..", "..", "shared", "photos", filepath.FromSlash(name))
	if _, err := os.Stat(path); err != nil {
		t.Skipf("the shared photos are not beside the repository: no %s", name)
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

// moduleDir is where the source of a module lies in the module cache: beside the
// path that this test binary's build information names for it.
func moduleDir(path string) string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return ""
	}
	for _, m := range info.Deps {
		if m.Path == path {
			return filepath.Join(build.Default.GOPATH, "pkg", "mod", filepath.FromSlash(m.Path)+"@"+m.Version)
		}
	}
	return ""
}
