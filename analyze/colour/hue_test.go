package colour

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ASTM D1535: ten families of ten steps in the order R, YR, Y, GY, G, BG, B, PB, P,
// RP, whose names in full these are; step 5 of each is its middle, and hue 0 of the
// scale of a hundred is 10RP.
var munsellNames = []struct{ letters, full string }{
	{"R", "red"}, {"YR", "yellow-red"}, {"Y", "yellow"}, {"GY", "green-yellow"}, {"G", "green"},
	{"BG", "blue-green"}, {"B", "blue"}, {"PB", "purple-blue"}, {"P", "purple"}, {"RP", "red-purple"},
}

func TestFamiliesInMunsellsOrder(t *testing.T) {
	for i, family := range munsellNames {
		for _, text := range []string{family.letters, "5" + family.letters, family.full, HueName(float64(10*i + 5))} {
			step, err := ParseHue(text)
			require.NoError(t, err, text)
			assert.Equal(t, float64(10*i+5), step, text)
		}
	}
}

func TestParseHue(t *testing.T) {
	for text, want := range map[string]float64{
		"5YR": 15, "7.5 bg": 57.5, " 2.5  PB ": 72.5, "10R": 10, "0YR": 10, "10RP": 0, ".5r": 0.5, "10 b": 70,
		"Orange": 15, "Blue-Green": 55, "blue green": 55, "violet-blue": 75, "brown": 15, "pink-purple": 95,
	} {
		step, err := ParseHue(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, step, text)
	}
}

func TestParseHueRefuses(t *testing.T) {
	const form = "not a hue; write a step and letters, such as 5YR or 7.5 BG, with the letters R, YR, Y, GY, G, BG, B, PB, P, RP, or one word of " +
		"red, orange, yellow, yellow-green, green, blue-green, blue, violet-blue, purple, red-purple"
	for text, want := range map[string]string{
		"": form, "5": form, "teal": form, "5YR 6/8": form, "-5YR": form, "N": form, "5orange": form, "YR5": form, "NaN R": form,
		"11YR":      "out of range; the step before the letters runs from 0 to 10, such as 5YR",
		"99999e9YR": form,
	} {
		_, err := ParseHue(text)
		require.Error(t, err, text)
		assert.Equal(t, `hue "`+text+`": `+want, err.Error())
	}
}

// The end of a family is its step 10, as ASTM D1535 writes it: 10R, not 0YR.
func TestHueNameAgreesWithNotation(t *testing.T) {
	for step, want := range map[float64]string{0: "red-purple", 0.1: "red", 10: "red", 10.1: "orange", 75: "violet-blue", 100: "red-purple", 104: "red", -2: "red-purple"} {
		assert.Equal(t, want, HueName(step), "%v", step)
	}
	for i := range 1000 {
		notation, _ := hueStep(float64(i) / 10)
		assert.True(t, notation > 0 && notation <= 10, "%d", i)
	}
}

// Ten families round a circle of a hundred: opposite are R and BG, Y and PB, as in
// the Munsell circle of ASTM D1535.
func TestHuesApart(t *testing.T) {
	for _, c := range []struct{ a, b, want float64 }{
		{5, 55, 50}, {25, 75, 50}, {5, 5, 0}, {95, 5, 10}, {5, 95, 10}, {0, 100, 0}, {0, 99, 1}, {-5, 5, 10}, {205, 80, 25},
	} {
		assert.Equal(t, c.want, HuesApart(c.a, c.b), "%v and %v", c.a, c.b)
	}
	for a := range 100 {
		for b := range 100 {
			d := HuesApart(float64(a), float64(b))
			assert.InDelta(t, math.Abs(math.Remainder(float64(a-b), 100)), d, exact)
		}
	}
}
