package report

import (
	"bytes"
	"image/png"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/report/plan"
)

// allViews lists the views of a plan.
func allViews(p *plan.Plan) (views []view) {
	for _, g := range viewGroups(p, draw(p)) {
		views = append(views, g.Views...)
	}
	return views
}

// Each view's button shows that view and no other, in a browser, without script.
func TestEveryViewShows(t *testing.T) {
	ctx := browser(t)
	p := composedPlan(t)
	open(t, ctx, p, 390)
	views := allViews(p)
	require.Len(t, views, 12)
	for _, v := range views {
		require.NoError(t, chromedp.Do(ctx, chromedp.Click(chromedp.CSS(`label[for=v-`+v.ID+`]`))))
		shown := ask[[]string](t, ctx, `[...document.querySelectorAll(".view")].filter(e => getComputedStyle(e).display != "none").map(e => e.classList[1])`)
		assert.Equal(t, []string{v.ID}, shown)
		weight := ask[string](t, ctx, `getComputedStyle(document.querySelector("label[for=v-`+v.ID+`]")).fontWeight`)
		assert.Equal(t, "600", weight, "the button of %s stands out", v.ID)
	}
}

// Every view says what it shows, and has a name that is no other's.
func TestViewsSayWhatTheyShow(t *testing.T) {
	seen := map[string]bool{}
	for _, v := range allViews(composedPlan(t)) {
		assert.NotEmpty(t, v.Caption, v.ID)
		assert.False(t, seen[v.Name] || seen[v.Caption], v.Name)
		seen[v.Name], seen[v.Caption] = true, true
		assert.Contains(t, strings.ToLower(v.Name), strings.ToLower(v.Label), "the button's word is in the name that is read aloud")
	}
}

// A study's file holds the study's own pixels; gray has one level for each of the
// three channels, that of the pixel's L*; what the plan has not is refused.
func TestStudyFiles(t *testing.T) {
	p := composedPlan(t)
	assert.Equal(t, []string{"study", "gray", "coat", "sight"}, Studies(p))
	w, h := p.Pictures.Photo.Width, p.Pictures.Photo.Height
	for which, rgb := range map[string][]uint8{"study": p.Pictures.Study.RGB, "sight": p.Pictures.StudySeen, "gray": nil} {
		var b bytes.Buffer
		require.NoError(t, Study(&b, p, which))
		m, err := png.Decode(&b)
		require.NoError(t, err)
		require.Equal(t, [2]int{w, h}, [2]int{m.Bounds().Dx(), m.Bounds().Dy()}, which)
		for i := 0; i < w*h; i += 997 {
			r, g, b, _ := m.At(i%w, i/w).RGBA()
			got, want := [3]uint8{uint8(r >> 8), uint8(g >> 8), uint8(b >> 8)}, [3]uint8{}
			if rgb == nil {
				l := grayOf(p.Pictures.Study.At(i).L)
				assert.InDelta(t, float64(l), float64(got[0]), 1)
				want = [3]uint8{got[0], got[0], got[0]}
			} else {
				copy(want[:], rgb[3*i:3*i+3])
			}
			assert.Equal(t, want, got, "%s, pixel %d", which, i)
		}
	}
	var plain plan.Plan
	assert.Empty(t, Studies(&plain))
	err := Study(&bytes.Buffer{}, p, "mauve")
	assert.EqualError(t, err, `report: this plan has no picture "mauve" of the colour study: it has study, gray, coat, sight`)
}

// The map of what a sight misses tells its classes apart by ink alone: none, some and
// about twice as much, whatever lightness lies beneath.
func TestMissedByPattern(t *testing.T) {
	const pitch = 16
	var share [3]float64
	for class := range share {
		n := 0
		for y := range 12 * pitch {
			for x := range 12 * pitch {
				if inked(uint8(class), x, y, pitch) {
					n++
				}
			}
		}
		share[class] = float64(n) / (144 * pitch * pitch)
	}
	assert.Zero(t, share[0])
	assert.InDelta(t, 0.126, share[1], 0.04, "dots with a radius of a fifth of the pitch: π/25 of the square")
	assert.Greater(t, share[2], 1.6*share[1])
	for l := 0.0; l <= 100; l++ {
		assert.Greater(t, int(pale(l))-patternInk, 80, "ink shows on L* %g", l)
	}
	assert.Equal(t, uint8(255), pale(100))
}

// A heavy line runs along the borders that the plan holds lost, and nowhere else.
func TestLostBorders(t *testing.T) {
	p := blocksPlan(t, "a", "b")
	w, h := p.Pictures.Photo.Width, p.Pictures.Photo.Height
	p.Pictures.Study, p.Pictures.Missed, p.Pictures.LostBorders = p.Pictures.Photo, make([]uint8, w*h), make([]bool, w*h)
	black := func() (n int) {
		m := missedImage(p)
		for y := range h {
			for x := range w {
				if r, _, _, _ := m.At(x, y).RGBA(); r == 0 {
					assert.InDelta(t, w/3, x, 1, "only beside it")
					n++
				}
			}
		}
		return n
	}
	assert.Zero(t, black())
	for y := range h {
		p.Pictures.LostBorders[y*w+w/3] = true
	}
	assert.Equal(t, 2*h, black(), "a line two pixels wide")
}
