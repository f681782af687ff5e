package plan

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// inMunsell is a region of mixes in Munsell notation, each with its share of the panel.
func inMunsell(tag string, mixes ...any) Region {
	r := Region{Tag: tag, Name: "region " + tag}
	for i := 0; i < len(mixes); i += 2 {
		m, err := colour.ParseMunsell(mixes[i].(string))
		if err != nil {
			panic(err)
		}
		r.Colours = append(r.Colours, Colour{
			ID: fmt.Sprint(tag, i/2+1), PanelShare: mixes[i+1].(float64), Recipe: &Recipe{Lab: TripleOf(m.Lab())},
		})
	}
	return r
}

// nowhere do regions touch.
func nowhere(a, b int) bool { return false }

// Munsell 1915, Atlas of the Munsell Color System, chart G: six parts of GY 8/6
// balance forty-eight of P 2/3, and six parts of GY 4/5 balance five of P 4/6.
func TestMunsellsOwnBalances(t *testing.T) {
	for _, c := range []struct {
		a, b   string
		of, to float64
	}{{"5GY 8/6", "5P 2/3", 6, 48}, {"5GY 4/5", "5P 4/6", 6, 5}} {
		h := harmonyOf([]Region{inMunsell("A", c.a, c.of/(c.of+c.to)), inMunsell("B", c.b, c.to/(c.of+c.to))}, nil, nowhere)
		require.Len(t, h.Complements, 1)
		assert.InDelta(t, 1, h.Complements[0].Balance, 0.02, "%s and %s", c.a, c.b)
		assert.Equal(t, "A (yellow-green) and B (purple) are near complements, apart on the panel; they weigh about the same, so neither leads.", h.Complements[0].Text)
	}
}

// The five axes of Munsell's circle join opposite hues (ASTM D1535, the ten families
// in their order). By hand: 12.5 steps off to either side are near, more are not.
func TestOppositeHues(t *testing.T) {
	pairs := func(a, b string) []Complement {
		return harmonyOf([]Region{inMunsell("A", a+" 5/6", .5), inMunsell("B", b+" 5/6", .5)}, nil, nowhere).Complements
	}
	for _, axis := range [][2]string{{"5R", "5BG"}, {"5YR", "5B"}, {"5Y", "5PB"}, {"5GY", "5P"}, {"5G", "5RP"}} {
		found := pairs(axis[0], axis[1])
		require.Len(t, found, 1, axis)
		assert.InDelta(t, 50, found[0].Apart, 0.3, axis)
	}
	assert.Len(t, pairs("5R", "3G"), 1) // 38 steps
	assert.Empty(t, pairs("5R", "2G"))  // 37 steps
	assert.Len(t, pairs("5R", "7B"), 1) // 62 steps one way, 38 the other
	assert.Empty(t, pairs("5R", "8B"))  // 37 steps the other way
	assert.Empty(t, pairs("5Y", "5YR")) // neighbours
	assert.Empty(t, pairs("5R", "5R"))  // one hue
}

// A mean of a red and a green would be a yellow that is not there. By hand.
func TestUnlikeHuesStayApart(t *testing.T) {
	h := harmonyOf([]Region{inMunsell("A", "5R 5/10", .2, "5G 5/8", .1, "7R 5/10", .2)}, nil, nowhere)
	require.Len(t, h.Hues, 2)
	assert.Equal(t, "red", h.Hues[0].Word)
	assert.InDelta(t, 6, h.Hues[0].Step, 0.3)
	assert.InDelta(t, .4, h.Hues[0].Share, 1e-9)
	assert.Equal(t, "green", h.Hues[1].Word)
	assert.InDelta(t, 45, h.Hues[1].Step, 0.3)

	// Nor does a row of near neighbours run together from red to green.
	h = harmonyOf([]Region{inMunsell("A", "5R 5/8", .1, "4YR 5/8", .1, "4Y 6/8", .1, "4GY 5/8", .1, "4G 5/8", .1)}, nil, nowhere)
	for _, one := range h.Hues {
		assert.LessOrEqual(t, one.Spread, float64(oneHue)/2+0.5, one.Hue)
	}
	assert.GreaterOrEqual(t, len(h.Hues), 2)

	// The two hues of one region are a pair, in contact.
	h = harmonyOf([]Region{inMunsell("A", "5R 5/10", .5, "5BG 5/6", .1)}, nil, nowhere)
	require.Len(t, h.Complements, 1)
	assert.True(t, h.Complements[0].Touch)
	assert.Equal(t, "In A red and blue-green are near complements, within one region; the red has eight times the weight of the blue-green, which is the accent.", h.Complements[0].Text)
}

// Across the seam of the scale: 8RP is 98, 4R is 4; by hand their middle is 1.
// A mix of three times the area × chroma pulls to three quarters of the way.
func TestMeanHue(t *testing.T) {
	one := func(mixes ...any) HueShare {
		h := harmonyOf([]Region{inMunsell("A", mixes...)}, nil, nowhere)
		require.Len(t, h.Hues, 1)
		return h.Hues[0]
	}
	even := one("8RP 5/6", .2, "4R 5/6", .2)
	assert.InDelta(t, 1, even.Step, 0.3)
	assert.Equal(t, "red", even.Word)
	assert.InDelta(t, 3, even.Spread, 0.5)
	assert.InDelta(t, 40*5*6, even.Weight, 15)
	pulled := one("5YR 5/4", .2, "5Y 5/6", .4) // 1 to 3
	assert.InDelta(t, 22.5, pulled.Step, 0.5)
	assert.InDelta(t, (.2*4+.4*6)/.6, pulled.Chroma, 0.1)
	assert.InDelta(t, 7.5, pulled.Spread, 0.5) // the yellow alone is 3 in 4, most is 4 in 5
}

// What is too gray to have a hue is counted apart, and nothing is lost.
func TestSharesAddUp(t *testing.T) {
	h := harmonyOf([]Region{
		inMunsell("A", "5R 5/8", .3, "5G 5/2", .001, "N 5", .2),
		inMunsell("B", "5B 5/1.4", .1, "5B 5/1.6", .399),
		{Tag: "C", Name: "nothing to paint"},
	}, nil, nowhere)
	total := h.Neutral + h.Slight
	for _, one := range h.Hues {
		total += one.Share
	}
	assert.InDelta(t, 1, total, 1e-9)
	assert.InDelta(t, .3, h.Neutral, 1e-9)
	assert.InDelta(t, .001, h.Slight, 1e-9)
	assert.Len(t, h.Hues, 2)

	// A trace of hue in a region that is gray is slight as well.
	trace := inMunsell("B", "5B 5/1.6", .001, "N 5", .199)
	trace.Share = .2
	h = harmonyOf([]Region{inMunsell("A", "5R 5/8", .8), trace}, nil, nowhere)
	assert.Len(t, h.Hues, 1)
	assert.InDelta(t, .001, h.Slight, 1e-9)

	gray := harmonyOf([]Region{inMunsell("A", "N 5", 1.)}, nil, nowhere)
	assert.Equal(t, Harmony{Hues: []HueShare{}, Neutral: 1, Complements: []Complement{}, Ties: []Tie{}, Once: []Tie{}}, gray)
}

func TestPairsInWords(t *testing.T) {
	regions := []Region{inMunsell("A", "5YR 5/10", .6), inMunsell("D", "5B 5/5", .4), inMunsell("E", "5B 5/10", .5)}
	h := harmonyOf(regions, nil, func(a, b int) bool { return a+b == 1 })
	require.Len(t, h.Complements, 2)
	assert.Equal(t, "A (orange) and E (blue) are near complements, apart on the panel; they weigh about the same, so neither leads.", h.Complements[0].Text)
	assert.Equal(t, "A (orange) and D (blue) are near complements, side by side; A has three times the weight of D, which is the accent.", h.Complements[1].Text)
	assert.Equal(t, []string{"5.0YR", "5.0B"}, []string{h.Complements[1].HueA, h.Complements[1].HueB})
	twice := harmonyOf([]Region{inMunsell("A", "5R 5/6", .2), inMunsell("B", "5BG 5/6", .4)}, nil, nowhere).Complements
	require.Len(t, twice, 1)
	assert.Contains(t, twice[0].Text, "B has twice the weight of A and leads.")
	for times, word := range map[float64]string{1.66: "one and a half times", 1.8: "twice", 2.4: "twice", 2.6: "three times", 10.4: "ten times", 53.2: "53 times"} {
		assert.Equal(t, word, timesWord(times))
	}
}

// By hand: 95, 0, 5 and 12 lie within 17 steps across the seam; with a blue of a
// twentieth of the weight most of the picture is, with one of a quarter nothing is.
func TestAnalogous(t *testing.T) {
	warm := []Region{inMunsell("A", "5RP 5/8", .2, "10RP 5/8", .2), inMunsell("B", "5R 5/8", .2), inMunsell("C", "2YR 5/8", .2)}
	text := func(extra ...Region) string { return harmonyOf(append(warm[:3:3], extra...), nil, nowhere).Analogous }
	assert.Regexp(t, `^The picture is analogous: all its hues lie within 17 of the 100 steps, 5\.\dRP \(red-purple\) to [12]\.\dYR \(orange\)\. Analogous within themselves: A\.$`, text())
	assert.Regexp(t, `^Most of the picture is analogous: 95 in 100 of its colour, by area × chroma, lie within 17 .*; outside: D \(blue\)\.`, text(inMunsell("D", "5B 5/8", .042)))
	assert.NotContains(t, text(inMunsell("D", "5B 5/8", .27)), "picture")

	for _, hues := range []string{"9R", "3YR"} { // a hue and its shades; 6 steps, that is two
		alone := inMunsell("E", "7R 5/8", .2, hues+" 3/6", .2, "7R 6/8", .2)
		assert.Equal(t, hues == "3YR", strings.Contains(harmonyOf([]Region{alone}, nil, nowhere).Analogous, "themselves: E."), hues)
	}

	chosen := warm[2]
	chosen.Palette.Family = "analogous"
	assert.Equal(t, "Palettes of neighbouring paints: C.", harmonyOf([]Region{chosen}, nil, nowhere).Analogous)
}

// A hue's mean may lie just past an arc that begins at one of its own mixes: 97 to 12 holds
// more of A than it leaves out at 94.
func TestPartlyInTheArc(t *testing.T) {
	regions := []Region{
		inMunsell("A", "7RP 5/8", .2, "4RP 5/6", .04, "9RP 5/2", .01), inMunsell("B", "2YR 5/8", .4), inMunsell("C", "5B 5/8", .02),
	}
	h := harmonyOf(regions, nil, nowhere)
	assert.Contains(t, h.Analogous, "outside: C (blue).")
	for _, one := range h.Hues {
		assert.Equal(t, Round(one.Step, 1), one.Step, "no digits past those that are meant")
	}
}

// Tubes in the most regions first, whites and blacks after them; by hand.
func TestTies(t *testing.T) {
	regions := []Region{inMunsell("A", "5R 5/8", .1, "5R 4/8", .1), inMunsell("B", "5R 5/8", .1), inMunsell("C", "5R 5/8", .1)}
	paints := []Paint{
		{ID: "white", Used: []string{"A1", "A2", "B1", "C1"}, Plain: true},
		{ID: "umber", Used: []string{"A1", "B1"}},
		{ID: "black", Used: []string{"B1"}, Plain: true},
		{ID: "rose", Used: []string{"C1"}},
		{ID: "ochre", Used: []string{"A1", "B1", "C1"}},
		{ID: "sienna", Used: []string{"A1", "A2"}},
	}
	h := harmonyOf(regions, paints, nowhere)
	ids := func(ties []Tie) (ids []string) {
		for _, tie := range ties {
			ids = append(ids, tie.Paint)
		}
		return ids
	}
	assert.Equal(t, []string{"ochre", "umber", "white"}, ids(h.Ties))
	assert.Equal(t, []string{"sienna", "rose", "black"}, ids(h.Once))
	assert.Equal(t, []string{"A", "B"}, h.Ties[1].Regions)
	assert.Equal(t, []string{"A1", "B1"}, h.Ties[1].Colours)
}

// A region so small that the share of its mix rounds to nothing has the hue of that mix:
// by area it would be a mean over none.
func TestHueOfARegionOfHardlyAnyArea(t *testing.T) {
	h := harmonyOf([]Region{inMunsell("A", "5GY 3/4", 0.0), inMunsell("B", "5R 5/6", 1.0)}, nil, nowhere)
	require.Len(t, h.Hues, 2)
	assert.Equal(t, "5.0GY", h.Hues[0].Hue)
	assert.InDelta(t, 3, h.Hues[0].Value, 0.05)
	assert.InDelta(t, 4, h.Hues[0].Chroma, 0.05)
}
