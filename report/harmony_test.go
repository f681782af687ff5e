package report

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/report/plan"
)

// hueEntry is a region's hue as the plan says it, "7.5YR 5/8".
func hueEntry(t *testing.T, tag, notation string, share float64) plan.HueShare {
	m, err := colour.ParseMunsell(notation)
	require.NoError(t, err)
	hue, _, _ := strings.Cut(m.String(), " ")
	return plan.HueShare{Region: tag, Name: "region " + tag, Hue: hue, Step: m.Hue, Word: colour.HueName(m.Hue), Spread: 3, Share: share,
		Value: m.Value, Chroma: m.Chroma, Weight: 100 * share * m.Value * m.Chroma, SRGB: m.Lab().Hex()}
}

// sampleHarmony has a region of two hues, neighbours that lie on one another, and
// pairs of both kinds.
func sampleHarmony(t *testing.T) plan.Harmony {
	h := plan.Harmony{Neutral: 0.2, Slight: 0.002, Analogous: "Analogous within themselves: A.", Hues: []plan.HueShare{
		hueEntry(t, "A", "5.0R 4/12", 0.3), hueEntry(t, "A", "5.0G 5/6", 0.1),
		hueEntry(t, "B", "5.0BG 5/5", 0.2), hueEntry(t, "C", "6.0BG 5/5", 0.15), hueEntry(t, "D", "5.0BG 5/6", 0.04),
	}}
	pair := func(a, b int, touch bool) plan.Complement {
		x, y := h.Hues[a], h.Hues[b]
		return plan.Complement{A: x.Region, B: y.Region, HueA: x.Hue, HueB: y.Hue, Apart: 50, Touch: touch, Text: fmt.Sprintf("%s and %s.", x.Hue, y.Hue)}
	}
	h.Complements = []plan.Complement{pair(0, 2, true), pair(0, 3, false), pair(0, 4, false), pair(0, 1, true), pair(0, 2, false)}
	h.Ties = []plan.Tie{{Paint: "burnt-umber", Name: "Burnt Umber", Regions: []string{"A", "C"}, Colours: []string{"A1", "C1"}}}
	h.Once = []plan.Tie{{Paint: "viridian", Name: "Viridian", Regions: []string{"B"}, Colours: []string{"B1"}}}
	return h
}

func floatOf(t *testing.T, s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return v
}

// Munsell's circle runs R, YR, Y, GY, G, BG, B, PB, P, RP (ASTM D1535); here clockwise
// from 5R at the top, so that 5YR to 5G are right of the middle and 5BG is at the bottom.
func TestPlacesOnTheCircle(t *testing.T) {
	right := func(notation string) float64 { m, _ := colour.ParseMunsell(notation); return polar(m.Hue, 1).x }
	assert.Equal(t, spot{0, -100}, polar(5, 100))
	assert.Equal(t, spot{0, 100}, polar(55, 100))
	for _, hue := range []string{"5YR", "5Y", "5GY", "5G"} {
		assert.Positive(t, right(hue+" 5/5"), hue)
	}
	for _, hue := range []string{"5B", "5PB", "5P", "5RP"} {
		assert.Negative(t, right(hue+" 5/5"), hue)
	}
	var letters, words []string
	for _, n := range arcNames() {
		letters, words = append(letters, n.Letters), append(words, n.Word)
	}
	assert.Equal(t, "R YR Y GY G BG B PB P RP", strings.Join(letters, " "))
	assert.Equal(t, "red", words[0])
	assert.Equal(t, "blue-green", words[5])
}

// By hand: chroma 12 lies at 12 of the outermost ring's, and the disc of a panel's
// tenth has half the area of that of its fifth.
func TestDistanceIsChromaAndAreaIsShare(t *testing.T) {
	h := sampleHarmony(t)
	w := newWheel(h, hueTags(h.Hues))
	outer := w.Rings[len(w.Rings)-1]
	unit := floatOf(t, outer.R) / floatOf(t, outer.Text)
	require.Len(t, w.Discs, len(h.Hues))
	red := w.Discs[0] // the largest is drawn first
	assert.InDelta(t, 12*unit, math.Hypot(floatOf(t, red.X), floatOf(t, red.Y)), 0.05)
	assert.InDelta(t, 2, math.Pow(discRadius(0.2)/discRadius(0.1), 2), 1e-9)
	for _, d := range w.Discs {
		assert.LessOrEqual(t, math.Hypot(floatOf(t, d.X), floatOf(t, d.Y))+floatOf(t, d.R), wheelRadius+0.1, "off the circle")
	}
	assert.Equal(t, []bool{true, false, false, true}, []bool{w.Pairs[0].Touch, w.Pairs[1].Touch, w.Pairs[2].Touch, w.Pairs[3].Touch})
}

// Every hue has a tag of its own; no two tags lie on one another, and none off the circle.
func TestTagsOnTheCircle(t *testing.T) {
	h := sampleHarmony(t)
	assert.Equal(t, []string{"A R", "A G", "B", "C", "D"}, hueTags(h.Hues))
	for i := range 12 { // a crowd of nearly one hue
		h.Hues = append(h.Hues, hueEntry(t, string(rune('E'+i)), fmt.Sprintf("%d.0BG 5/5", 1+i/2), 0.02))
	}
	tags := hueTags(h.Hues)
	w := newWheel(h, tags)
	require.Len(t, w.Tags, len(tags))
	for i, a := range w.Tags {
		left, top := floatOf(t, a.Left), floatOf(t, a.Top)
		assert.Less(t, math.Hypot(max(math.Abs(left), math.Abs(left+floatOf(t, a.Width))), max(math.Abs(top), math.Abs(top+floatOf(t, a.Height)))), float64(bandInner), a.Text)
		for _, b := range w.Tags[:i] {
			apart := math.Abs(floatOf(t, a.X)-floatOf(t, b.X)) >= (floatOf(t, a.Width)+floatOf(t, b.Width))/2 || math.Abs(floatOf(t, a.Y)-floatOf(t, b.Y)) >= tagHeight
			assert.True(t, apart, "%s lies on %s", a.Text, b.Text)
		}
	}
}

func TestHarmonySection(t *testing.T) {
	p := blocksPlan(t, "a", "b")
	p.Harmony = sampleHarmony(t)
	p.Harmony.Hues[2].Name = `</bdi><script>alert(1)</script>`
	section := func() string {
		var b bytes.Buffer
		require.NoError(t, pageTemplate.ExecuteTemplate(&b, "harmony", newHarmony(p)))
		return b.String()
	}
	page := section()
	assert.NotContains(t, page, "ZgotmplZ")
	assert.NotContains(t, page, "<script>")
	assert.Contains(t, page, "20 % of the panel is too gray to have a hue, and 0.2 % is in hues too slight to be listed.")
	assert.Contains(t, page, "1 lighter pair")
	assert.Contains(t, page, `A solid line joins A R and B. A dashed line joins A R and C.`)
	assert.Equal(t, 5, strings.Count(page, `class="disc"`))

	p.Harmony.Hues = []plan.HueShare{}
	p.Harmony.Complements = nil
	assert.Contains(t, section(), "No mix of this plan is strong enough to have a hue.")
	assert.NotContains(t, section(), "<svg")
	p.Harmony.Hues = nil
	assert.Empty(t, section())
}
