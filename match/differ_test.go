package match

import (
	"strings"
	"testing"

	"tonewright/analyze/colour"

	"github.com/stretchr/testify/assert"
)

// The words against Munsell notation, in which they are meant. Values by [ASTMD1535].
func TestValueWords(t *testing.T) {
	gray := func(value float64) colour.Lab { return colour.Lab{L: colour.LOf(value)} }
	for _, c := range []struct {
		measured, aim float64
		want          string
	}{
		{4.5, 5, "half a value too dark"}, {5.5, 5, "half a value too light"}, {5.25, 5, "a quarter of a value too light"},
		{4.22, 5, "three quarters of a value too dark"}, {4, 5, "one value too dark"}, {6.5, 5, "1.5 values too light"},
		{5.11, 5, "a trace too light"}, {5.05, 5, "no difference that is seen"}, {3, 5, "2 values too dark"},
	} {
		assert.Equal(t, c.want, Differ(gray(c.measured), gray(c.aim)).Words, "%v for %v", c.measured, c.aim)
	}
}

func TestHueAndChromaWords(t *testing.T) {
	for _, c := range []struct {
		name          string
		measured, aim colour.Lab
		want, not     []string
	}{
		// Hue angles in a*b* of Munsell value 5, from [Newhall1943]: red about 25°, orange 60°,
		// yellow 90°, green 165°, blue 230°, violet-blue 275°.
		{"an orange turned red", colour.Lab{L: 50, A: 32, B: 30}, colour.Lab{L: 50, A: 25, B: 38}, []string{"too red"}, []string{"too yellow", "dark", "light"}},
		{"an orange turned yellow", colour.Lab{L: 50, A: 18, B: 42}, colour.Lab{L: 50, A: 25, B: 38}, []string{"too yellow"}, []string{"too red", "dark"}},
		{"a gray turned green", colour.Lab{L: 50, A: -9, B: 3}, colour.Lab{L: 50}, []string{"clearly too green"}, []string{"strong", "dull"}},
		{"a gray turned violet-blue", colour.Lab{L: 50, A: 0, B: -4}, colour.Lab{L: 50}, []string{"too violet-blue"}, []string{"strong", "purple"}},
		{"a red too strong", colour.Lab{L: 50, A: 40, B: 20}, colour.Lab{L: 50, A: 30, B: 15}, []string{"too strong"}, []string{"dull"}},
		{"a green gone gray", colour.Lab{L: 50}, colour.Lab{L: 50, A: -30, B: 8}, []string{"far too dull"}, []string{"too red", "strong"}},
		{"a dark dull red", colour.Lab{L: 45, A: 27, B: 13}, colour.Lab{L: 50, A: 30, B: 15}, []string{"half a value too dark"}, []string{"too light", "strong"}},
		{"a red turned green", colour.Lab{L: 50, A: -30, B: 8}, colour.Lab{L: 50, A: 30, B: 15}, []string{"far too green"}, nil},
	} {
		got := Differ(c.measured, c.aim).Words
		for _, want := range c.want {
			assert.Contains(t, got, want, c.name)
		}
		for _, not := range c.not {
			assert.NotContains(t, got, not, c.name)
		}
	}
}

// Words and figures agree, and what is seen most comes first.
func TestWordsAgreeWithFigures(t *testing.T) {
	aims := testAims(400, 41)
	for i := 1; i < len(aims); i++ {
		d := Differ(aims[i], aims[i-1])
		if strings.Contains(d.Words, "too dark") {
			assert.Negative(t, d.Value, d.Words)
		}
		if strings.Contains(d.Words, "too light") {
			assert.Positive(t, d.Value, d.Words)
		}
		if strings.Contains(d.Words, "too dull") {
			assert.Negative(t, d.Chroma, d.Words)
		}
		if strings.Contains(d.Words, "too strong") {
			assert.Positive(t, d.Chroma, d.Words)
		}
	}
	dark := Differ(colour.Lab{L: 30, A: 22, B: 10}, colour.Lab{L: 50, A: 20, B: 10}).Words
	assert.True(t, strings.HasPrefix(dark, "2 values too dark"), dark)
}

// The words of a degree change where they say they do: ours, written out.
func TestDegrees(t *testing.T) {
	for deltaE, want := range map[float64]string{1.9: "a trace", 2.1: "a little", 3.9: "a little", 4.1: "clearly", 7.9: "clearly", 8.1: "far"} {
		assert.Equal(t, want, degree(deltaE), "%v", deltaE)
	}
	// And in a whole sentence: a gray that turned blue by 2.5 of CIEDE2000.
	blue := colour.Lab{L: 50, B: -2.6}
	assert.InDelta(t, 2.5, colour.DeltaE00(blue, colour.Lab{L: 50}), 0.2)
	assert.Contains(t, Differ(blue, colour.Lab{L: 50}).Words, "a little too")
}
