package analyze

import (
	"image"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// kinds of warnings, by words that only they hold.
var kinds = map[string]string{
	"small": "are left inside its edge", "glare": "much lighter", "two": "has two parts", "slope": "as light at one corner", "uneven": "is uneven",
	"top red": "red of the %s is at the top", "top green": "green of the %s is at the top", "top blue": "blue of the %s is at the top",
	"bottom red": "red of the %s is at the bottom", "bottom green": "green of the %s is at the bottom", "bottom blue": "blue of the %s is at the bottom",
	"dark": "very dark", "tint": "strongly coloured", "overlap": "overlaps", "far": "far from it",
}

// kindsOf names the warnings of a card or swatch.
func kindsOf(t *testing.T, what string, warnings []string) []string {
	t.Helper()
	found := []string{}
	for _, w := range warnings {
		n := len(found)
		for kind, words := range kinds {
			if strings.Contains(w, strings.ReplaceAll(words, "%s", what)) {
				found = append(found, kind)
			}
		}
		require.Len(t, found, n+1, w)
		require.True(t, strings.HasSuffix(w, ".") && strings.Count(w, ". ") == 0 && strings.Contains(w, ": "), "not one sentence with what to do: %s", w)
	}
	return found
}

// on lets something lie on one rectangle only.
func on(r image.Rectangle, touch func(x, y float64, c rgb) rgb) func(x, y float64, c rgb, _ *rand.Rand) rgb {
	return func(x, y float64, c rgb, _ *rand.Rand) rgb {
		if (image.Point{X: int(x), Y: int(y)}).In(r) {
			return touch(x, y, c)
		}
		return c
	}
}

func times(c rgb, by float64) rgb { return rgb{c[0] * by, c[1] * by, c[2] * by} }

// Each warning comes when its cause is there, and no other comes with it.
func TestEachWarningHasItsCause(t *testing.T) {
	slow(t)
	edge := func(share, light float64, r image.Rectangle) func(x, y float64, c rgb, _ *rand.Rand) rgb {
		return on(r, func(x, y float64, c rgb) rgb {
			if x+y/4 < float64(r.Min.X)+share*float64(r.Dx())+float64(r.Min.Y+r.Dy()/2)/4 {
				return times(c, light)
			}
			return c
		})
	}
	marks := func(r image.Rectangle) func(x, y float64, c rgb, _ *rand.Rand) rgb {
		return on(r, func(x, y float64, c rgb) rgb { return times(c, math.Exp(0.5*math.Sin(y/2.5+math.Sin(x/9)))) })
	}
	slope := func(x, _ float64) float64 { return math.Exp(-x / 350) }
	for name, c := range map[string]struct {
		change       func(s *studio)
		card, swatch []string
	}{
		"nothing":        {func(*studio) {}, nil, nil},
		"glare":          {func(s *studio) { s.shine = shines(beside, 12, 5, 0.6) }, nil, []string{"glare"}},
		"a little glare": {func(s *studio) { s.shine = shines(beside, 1, 2, 0.6) }, nil, nil},
		"shadow":         {func(s *studio) { s.touch = edge(0.4, 0.6, beside) }, nil, []string{"two"}},
		"half in shadow": {func(s *studio) { s.touch = edge(0.5, 0.75, beside) }, nil, []string{"two"}},
		"a speck": {func(s *studio) {
			s.touch = on(image.Rect(160, 30, 180, 50), func(_, _ float64, c rgb) rgb { return times(c, 0.3) })
		}, nil, nil},
		"shadow on the card": {func(s *studio) { s.touch = edge(0.3, 0.6, cardRect) }, []string{"two"}, nil},
		"slope":              {func(s *studio) { s.field = slope }, []string{"slope"}, []string{"slope"}},
		"a little slope":     {func(s *studio) { s.field = func(x, _ float64) float64 { return math.Exp(-x / 3000) } }, nil, nil},
		"brush marks":        {func(s *studio) { s.touch = marks(beside) }, nil, []string{"uneven"}},
		"dirt on the card":   {func(s *studio) { s.touch = marks(cardRect) }, []string{"uneven"}, nil},
		"brush marks far off": {func(s *studio) {
			s.touch, s.field = marks(image.Rect(300, 0, 500, 140)), slope
			s.paint[1].rect = beside.Add(image.Pt(200, 0))
		}, []string{"slope"}, []string{"uneven", "far"}},
		"glare on the card":       {func(s *studio) { s.shine = shines(cardRect, 12, 5, 0.6) }, []string{"glare"}, nil},
		"too light":               {func(s *studio) { s.level, s.paint[1].lab = 1.6, colour.Lab{L: 94} }, nil, []string{"top red", "top green", "top blue"}},
		"colour the photo cannot": {func(s *studio) { s.paint[1].lab = colour.Lab{L: 51.038, A: -28.631, B: -28.638} }, nil, []string{"bottom red"}}, // the chart's cyan
		"coloured light":          {func(s *studio) { s.lamp, s.level = "3500 K", 0.6 }, []string{"tint"}, nil},
		"camera set to a lamp": {func(s *studio) {
			s.camera, s.lamp, s.level = plainCamera().balanced(standard().lamps["3500 K"]), "D65", 0.6
		}, []string{"tint"}, nil},
		"warm light":               {func(s *studio) { s.lamp, s.level = "4000 K", 0.6 }, nil, nil},
		"dark card":                {func(s *studio) { s.level, s.paint[1].lab = 0.04, colour.Lab{L: 80} }, []string{"dark"}, nil},
		"small swatch":             {func(s *studio) { s.paint[1].rect = image.Rect(140, 20, 160, 40) }, nil, []string{"small"}},
		"narrow card":              {func(s *studio) { s.paint[0].rect = image.Rect(20, 20, 30, 120) }, []string{"small"}, nil},
		"swatch drawn on the card": {func(s *studio) { s.paint[1] = painted{image.Rect(100, 20, 200, 120), grayCard} }, nil, []string{"overlap"}},
	} {
		for _, asJPEG := range []bool{false, true} {
			s := pair(checker[0])
			c.change(&s)
			read, card, err := s.photo(t, asJPEG).Swatches(Card{s.paint[0].rect, grayCard}, []Spot{{Rect: s.paint[1].rect}})
			require.NoError(t, err, name)
			require.ElementsMatch(t, c.card, kindsOf(t, "card", card.Warnings), "%s, JPEG %v: %v", name, asJPEG, card.Warnings)
			require.ElementsMatch(t, c.swatch, kindsOf(t, "swatch", read[0].Warnings), "%s, JPEG %v: %v", name, asJPEG, read[0].Warnings)
		}
	}
}

// Two colours of one lightness, which some eyes cannot tell apart, are told.
func TestTwoHuesOfOneLightness(t *testing.T) {
	s := pair(colour.Lab{L: 55, A: 14, B: 30})
	green := s.lit(colour.Lab{L: 55, A: -2, B: 32})
	s.touch = on(image.Rect(200, 0, 240, 140), func(_, _ float64, _ rgb) rgb { return green })
	read, _, err := s.photo(t, true).Swatches(Card{cardRect, grayCard}, []Spot{{Rect: beside}})
	require.NoError(t, err)
	require.Equal(t, []string{"two"}, kindsOf(t, "swatch", read[0].Warnings))
}

// A reflection of something coloured beside the card spoils it, though its lightness
// is even.
func TestColouredReflectionOnTheCard(t *testing.T) {
	s := pair(checker[0])
	yellow := s.lit(colour.Lab{L: grayCard.L, B: 12})
	s.touch = on(cardRect, func(x, _ float64, c rgb) rgb {
		for k, v := range yellow {
			c[k] += (x - 20) / 100 * (v - c[k])
		}
		return c
	})
	_, card, err := s.photo(t, true).Swatches(Card{cardRect, grayCard}, nil)
	require.NoError(t, err)
	require.Equal(t, []string{"two"}, kindsOf(t, "card", card.Warnings))
}

// Flat paint in even light raises no warning, whatever the grain and the coding, but
// for one in seven hundred.
// Patches that the light leaves near the bottom of a channel are left out: there a
// warning would be right.
func TestNoFalseAlarms(t *testing.T) {
	slow(t)
	t.Parallel()
	lights := []studio{{lamp: "D65", level: 0.95}, {lamp: "4000 K", level: 0.65}, {lamp: "D65", level: 0.25}}
	swatches, alarms := 0, 0
	for n := range 72 {
		seed, side := uint64(n/3), [][2]int{{26, 26}, {80, 40}, {60, 50}}[n/3%3]
		s, spots := chart(n/3*12, side[0], side[1])
		s.seed, s.lamp, s.level, s.noise = seed, lights[n%3].lamp, lights[n%3].level, float64(1+2*(seed%2))
		read, card, err := s.photo(t, seed%5 > 0).Swatches(Card{s.paint[0].rect, grayCard}, spots)
		require.NoError(t, err)
		require.Empty(t, card.Warnings)
		for i, r := range read {
			if c := s.lit(s.paint[i+1].lab); min(c[0], c[1], c[2]) < 0.01 {
				continue
			}
			swatches++
			if len(r.Warnings) > 0 {
				alarms++
				t.Log(n, s.paint[i+1].lab, r.Warnings)
			}
		}
	}
	t.Logf("%d alarms on %d swatches", alarms, swatches)
	require.LessOrEqual(t, alarms, 1) // a swatch of 20 pixels in a quarter of the light, with three times the grain, as JPEG
	require.Greater(t, swatches, 500)
}
