package analyze

import (
	"image"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// What makes a reading worthless is told, and what only blurs it is not. The colour that
// was painted is known: those let pass read within 2 CIEDE2000 of it, and those
// refused are off by more.
func TestWhatMakesAReadingUseless(t *testing.T) {
	slow(t)
	shade := func(r image.Rectangle, share, light float64) func(*studio) {
		return func(s *studio) {
			s.touch = on(r, func(x, _ float64, c rgb) rgb {
				if x < float64(r.Min.X)+share*float64(r.Dx()) {
					return times(c, light)
				}
				return c
			})
		}
	}
	wavy := func(r image.Rectangle, by float64) func(*studio) {
		return func(s *studio) {
			s.touch = on(r, func(x, y float64, c rgb) rgb { return times(c, math.Exp(by*math.Sin(y/2.5+math.Sin(x/9)))) })
		}
	}
	for name, c := range map[string]struct {
		change func(*studio)
		says   string // of the card and the swatch, "" where it may be read
	}{
		"all well":                {func(*studio) {}, ""},
		"half in shadow":          {shade(beside, 0.5, 0.6), "Photograph it again: half of the swatch seems to lie in shadow."},
		"most of it in shadow":    {shade(beside, 0.75, 0.6), "Photograph it again: most of the swatch seems to lie in shadow."},
		"the card half in shadow": {shade(cardRect, 0.5, 0.6), "Photograph it again: half of the card seems to lie in shadow."},
		"a rim of shadow":         {shade(beside, 0.25, 0.6), ""},
		"glare":                   {func(s *studio) { s.shine = shines(beside, 12, 5, 0.6) }, ""},
		"glare on the card":       {func(s *studio) { s.shine = shines(cardRect, 12, 5, 0.6) }, ""},
		"a slope":                 {func(s *studio) { s.field = func(x, _ float64) float64 { return math.Exp(-x / 350) } }, ""},
		"a slope past use": {func(s *studio) { s.field = func(x, _ float64) float64 { return math.Exp(-x / 80) } },
			"Photograph it again: the card is more than twice as light at one corner as at the opposite one."},
		"a small swatch":             {func(s *studio) { s.paint[1].rect = image.Rect(140, 20, 160, 40) }, ""},
		"brush marks":                {wavy(beside, 0.4), ""},
		"another thing for the card": {wavy(cardRect, 1.2), "Photograph it again: the card is not of one colour."},
		"clipped": {func(s *studio) { s.level, s.paint[1].lab = 1.6, colour.Lab{L: 94} },
			"Photograph it again with less exposure: the swatch is too light for the photo's range."},
		"more light on it than on the card": {func(s *studio) {
			s.level, s.paint[1].lab = 0.5, colour.Lab{L: 94}
			s.touch = on(beside, func(_, _ float64, c rgb) rgb { return times(c, 1.4) })
		}, "Photograph it again: the swatch reads lighter than a perfect white"},
		"warm light": {func(s *studio) { s.camera, s.lamp, s.level = plainCamera(), "4000 K", 0.6 }, ""},
		"a lamp":     {func(s *studio) { s.camera, s.lamp, s.level = plainCamera(), "A", 0.3 }, "Photograph it again in daylight:"},
		"dark":       {func(s *studio) { s.level, s.noise = 0.03, 3 }, "Photograph it again with more light:"},
	} {
		s := pair(colour.Lab{L: 62.661, A: 36.067, B: 57.096})
		c.change(&s)
		read, card, err := s.photo(t, true).Swatches(Card{s.paint[0].rect, grayCard}, []Spot{{Rect: s.paint[1].rect}})
		require.NoError(t, err, name)
		off := colour.DeltaE00(read[0].Lab, s.paint[1].lab)
		said := append(append([]string{}, card.Useless...), read[0].Useless...)
		t.Logf("%s: off by %.1f: %v", name, off, said)
		if c.says == "" {
			assert.Empty(t, said, name)
			assert.Less(t, off, 2.0, name)
			continue
		}
		if assert.NotEmpty(t, said, name) {
			assert.Contains(t, said[0], c.says, name)
		}
		assert.Greater(t, off, 2.0, name)
	}
}

// A swatch drawn over its card, by a pixel too, is told from one beside it.
func TestOverlapIsUseless(t *testing.T) {
	s := pair(checker[0])
	for x, useless := range map[int]int{119: 1, 130: 0} {
		read, _, err := s.photo(t, false).Swatches(Card{cardRect, grayCard}, []Spot{{Rect: image.Rect(x, 20, x+30, 120)}})
		require.NoError(t, err)
		said := 0
		for _, text := range read[0].Useless {
			if text == "Draw the rectangles again: the swatch's lies over the card's." {
				said++
			}
		}
		assert.Equal(t, useless, said, "from %d on: %v", x, read[0].Useless)
	}
}

// Flat paint in even light is never refused, whatever the grain.
func TestFlatPaintIsNeverUseless(t *testing.T) {
	slow(t)
	for n := range 12 {
		s, spots := chart(n/3*12, 40, 40)
		s.seed, s.level, s.noise = rand.New(rand.NewPCG(uint64(n), 3)).Uint64(), []float64{0.95, 0.5, 0.2}[n%3], float64(1+n%2*2)
		read, card, err := s.photo(t, n%2 > 0).Swatches(Card{s.paint[0].rect, grayCard}, spots)
		require.NoError(t, err)
		require.Empty(t, card.Useless)
		for _, r := range read {
			require.Empty(t, r.Useless, "%v", r.Lab)
		}
	}
}
