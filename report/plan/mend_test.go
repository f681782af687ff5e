package plan

import (
	"image"
	"image/color"
	"image/png"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/match"
	"tonewright/match/paint"
)

// patches writes a photo of 3 × 2 flat patches with a margin of gray and returns its
// name and a region for each patch.
func patches(t *testing.T, of [6]color.RGBA) (file string, regions []RegionWish) {
	m := image.NewRGBA(image.Rect(0, 0, 480, 360))
	for i := range m.Pix {
		m.Pix[i] = 120
	}
	for i, c := range of {
		x, y := 60+i%3*130, 50+i/3*150
		for py := y; py < y+110; py++ {
			for px := x; px < x+100; px++ {
				m.SetRGBA(px, py, c)
			}
		}
	}
	file = filepath.Join(t.TempDir(), "patches.png")
	f, err := os.Create(file)
	require.NoError(t, err)
	require.NoError(t, png.Encode(f, m))
	require.NoError(t, f.Close())
	for i, cells := range []string{"C3:E5", "G3:I5", "K3:M5", "C8:E10", "G8:I10", "K8:M10"} {
		regions = append(regions, RegionWish{Name: string(rune('a' + i)), Cells: cells})
	}
	return file, regions
}

// applied is the regions with a mend's line put in, as the painting file would.
func applied(t *testing.T, regions []RegionWish, m *Mend) []RegionWish {
	out := append([]RegionWish(nil), regions...)
	for i := range out {
		if out[i].Name != m.Name {
			continue
		}
		for _, line := range strings.Split(m.Line, "\n") {
			apply(t, &out[i], line)
		}
		return out
	}
	t.Fatalf("no region %q", m.Name)
	return nil
}

func apply(t *testing.T, w *RegionWish, line string) {
	if v := regexp.MustCompile(`^value_shift = (-?[\d.]+)$`).FindStringSubmatch(line); v != nil {
		shift, err := strconv.ParseFloat(v[1], 64)
		require.NoError(t, err)
		w.Shift = shift
		return
	}
	require.Regexp(t, `^palette = \[("[^"]+"(, )?)+\]$`, line)
	w.Palette = nil
	for _, name := range regexp.MustCompile(`"([^"]+)"`).FindAllStringSubmatch(line, -1) {
		p, err := paint.Find(paint.StarterBox().Paints, name[1])
		require.NoError(t, err)
		w.Palette = append(w.Palette, p.ID)
	}
}

// What is offered as a mend mends: planned again with its line, the region stands
// as it was meant to, and nothing else is out of place that was not before.
func TestMendsMend(t *testing.T) {
	slow(t)
	allMend(t, func([]RegionWish) {})
}

// So it does where palettes are proposed: a change is tried on the proposed palette, not
// on the whole box, and what is then proposed is what the mend was measured with.
func TestMendsMendWhereProposed(t *testing.T) {
	slow(t)
	allMend(t, func(regions []RegionWish) {
		regions[0].Wish.Scheme, regions[1].Wish.Scheme, regions[3].Wish.Scheme = match.Analogous, match.Monochrome, match.Quiet
		regions[4].Wish = Wish{Scheme: match.Complement, Of: "a"}
	})
}

// allMend plans pictures of chance colours, with regions wished for as prepare sets
// them, and each anew with every mend that is offered.
func allMend(t *testing.T, prepare func([]RegionWish)) {
	random := rand.New(rand.NewPCG(4, 4))
	level := func() uint8 { return uint8(30 + random.IntN(200)) }
	told, mended := 0, 0
	for range 12 {
		var of [6]color.RGBA
		for i := range of {
			of[i] = color.RGBA{level(), level(), level(), 255}
		}
		file, regions := patches(t, of)
		prepare(regions)
		regions[random.IntN(3)].Role, regions[3+random.IntN(3)].Role = RoleFocal, RoleQuiet
		opt := Options{Photo: file, Cell: Length{20, "mm"}, Regions: regions}
		before, err := Make(opt)
		require.NoError(t, err)
		for _, d := range before.StandOut.Disagreements {
			told++
			if d.Mend == nil {
				continue
			}
			mended++
			opt.Regions = applied(t, regions, d.Mend)
			after, err := Make(opt)
			require.NoError(t, err)
			assert.Less(t, len(after.StandOut.Disagreements), len(before.StandOut.Disagreements), "%s with %s", d.Text, d.Mend.Line)
			for _, left := range after.StandOut.Disagreements {
				assert.NotEqual(t, d.Region, left.Region, "%s with %s", d.Text, d.Mend.Line)
				assert.True(t, slices.ContainsFunc(before.StandOut.Disagreements, func(was Disagreement) bool { return was.Region == left.Region }), "%s with %s", d.Text, d.Mend.Line)
			}
		}
	}
	assert.Greater(t, told, 5)
	assert.Greater(t, mended, told/2)
	t.Logf("%d disagreements, %d with a mend", told, mended)
}

// On the demo the near lemon on its slate shelf outranks the bottle; with the palettes
// of the two exchanged the bottle outranks the lemon.
func TestDemoPalettesTurnTheRanking(t *testing.T) {
	slow(t)
	rank := func(lemon, bottle []string) (l, b int) {
		p, err := Make(Options{Photo: demo, Regions: []RegionWish{
			{Name: "shelf", Cells: "A1:L9", Palette: []string{"ultramarine-blue", "burnt-umber"}},
			{Name: "bottle", Cells: "C1:D6", Palette: bottle},
			{Name: "lemon", Cells: "D7:E8", Palette: lemon},
		}})
		require.NoError(t, err)
		return p.Regions[2].Standing.Rank, p.Regions[1].Standing.Rank
	}
	yellow, green := []string{"cadmium-yellow-lemon"}, []string{"viridian", "burnt-umber"}
	l, b := rank(yellow, green)
	assert.Less(t, l, b)
	l, b = rank(green, yellow)
	assert.Less(t, b, l)
}
