package painting

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"tonewright/grid"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// FuzzRead reads whatever bytes there may be: a painting whose parts fit, or one
// sentence that begins with the file. Box files are not read: a box is given.
func FuzzRead(f *testing.F) {
	f.Add([]byte(everyKey))
	f.Add([]byte("photo = 'a'\n[[region]]\nname = 'a'\noutline = [[1, 2], [0x10, +inf], [1e3, 1_0]]"))
	f.Add([]byte("photo = 'a'\r\nsight = {kind = 'deutan', severity = -0.0}\r\nregion = [{name = 'b', cells = 'A1:ZZ702'}]"))
	f.Add([]byte("photo = 'a'\n[[region]]\nname = 'a'\ncells = 'A1'\n[region.name]\n[[region.cells.b]]\n[sight.kind]"))
	f.Add([]byte("\xef\xbb\xbfphoto = 'a'\n[[region]]\nname = 'a'\nscheme = 'complement of a'\nmask = 'b'"))
	f.Add([]byte("photo = 'a'\nstart = 2026-12-01\nwaste = 0\nhumidity = 9e1\n[left]\nPW6 = '1e3 g'\n[[layer]]\nregion = 'b'\npass = 'glaze'\nmix = 'PW6 1, PBk9 3 touches'\n[[region]]\nname = 'b'\ncells = 'A1'"))
	f.Add([]byte("photo = 'a'\nstart = 2026-12-01T10:00:00Z\nleft.a.b = 1\ncoat = [{x = 1}]"))
	f.Add([]byte("photo = 'a'\nlayer = [{region = 'b', wet = true, after = 1, film = nan, medium = ':'}]"))
	box := paint.StarterBox()
	f.Fuzz(func(t *testing.T, text []byte) {
		p, err := parseText("a.toml", text, &box)
		if err != nil {
			require.True(t, strings.HasPrefix(err.Error(), "a.toml:"), err)
			return
		}
		o := p.Options
		require.NotEmpty(t, o.Photo)
		for _, c := range o.Work.Coats {
			require.Contains(t, plan.Passes, c.Pass)
			require.True(t, slices.ContainsFunc(o.Regions, func(r plan.RegionWish) bool { return r.Name == c.Region }))
		}
		if o.Work.Start != "" {
			_, err := plan.ParseDate(o.Work.Start)
			require.NoError(t, err)
		}
		require.LessOrEqual(t, len(o.Regions), plan.MostRegions)
		for _, r := range o.Regions {
			require.NoError(t, plan.CheckRegionName(r.Name))
			for _, ring := range r.Outline {
				require.GreaterOrEqual(t, len(ring), 3)
				for _, at := range ring {
					require.True(t, at.X >= 0 && at.X <= grid.Largest && at.Y >= 0 && at.Y <= grid.Largest)
				}
			}
		}
	})
}
