package colour

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestParse(t *testing.T) {
	hex, err := ParseHex("#b4783c")
	require.NoError(t, err)
	orange := Munsell{15.2, 6.1, 8.3}
	for text, want := range map[string]Lab{
		"#b4783c":               hex,
		" #B4783C ":             hex,
		"lab(52, 18.5, 30)":     {52, 18.5, 30},
		"lab(52 18.5 30)":       {52, 18.5, 30},
		"LAB( 52,-18.5 ,+30. )": {52, -18.5, 30},
		"lab(0,-150,150)":       {0, -150, 150},
		"lab(.5 -.5 0)":         {0.5, -0.5, 0},
		"5.2YR 6.1/8.3":         orange.Lab(),
		"5.2yr6.1/8.3":          orange.Lab(),
		"5.2 YR 6.1 / 8.3":      orange.Lab(),
		"N 5":                   {L: LOf(5)},
	} {
		c, err := Parse(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, c, text)
	}
}

// ASTM D1535: the hue circle runs R, YR, Y, GY, G, BG, B, PB, P, RP, ten steps
// each, and a neutral is N, its value, and a stroke.
func TestParseMunsell(t *testing.T) {
	for text, want := range map[string]Munsell{
		"5YR 6/8":   {15, 6, 8},
		"10R 5/4":   {10, 5, 4},
		"0YR 5/4":   {10, 5, 4},
		"0R 5/4":    {0, 5, 4},
		"10RP 5/4":  {0, 5, 4},
		"2.5pb 3/6": {72.5, 3, 6},
		"9.9RP 0/0": {99.9, 0, 0},
		"5Y 10/50":  {25, 10, 50},
		"N 6.1":     {0, 6.1, 0},
		"N6/":       {0, 6, 0},
		"n 0 /":     {},
	} {
		m, err := ParseMunsell(text)
		require.NoError(t, err, text)
		assert.InDelta(t, want.Hue, m.Hue, exact, text)
		assert.Equal(t, [2]float64{want.Value, want.Chroma}, [2]float64{m.Value, m.Chroma}, text)
	}
}

// What String writes is read as what it says.
func TestLabelsAreRead(t *testing.T) {
	for _, c := range randomLabs(300) {
		label := c.Munsell().String()
		m, err := ParseMunsell(label)
		require.NoError(t, err, label)
		assert.Equal(t, label, m.String())
	}
}

func TestParseRefuses(t *testing.T) {
	const form = "; write it as #rrggbb, lab(52, 18, 30), or Munsell such as 5YR 6/8 or N 5"
	for text, want := range map[string]string{
		"":                                  "not a colour" + form,
		"red":                               "not a colour" + form,
		"7f7f7f":                            "not a colour" + form,
		"#12345":                            "not a hex colour" + form,
		"lab(52, 18)":                       "not a colour" + form,
		"lab(52,,18 30)":                    "not a colour" + form,
		"lab(NaN, 0, 0)":                    "not a colour" + form,
		"lab(1e9, 0, 0)":                    "not a colour" + form,
		"lab(521830)":                       "not a colour" + form,
		"5YR 6":                             "not a colour" + form,
		"-5YR 6/8":                          "not a colour" + form,
		"N":                                 "not a colour" + form,
		"lab(101, 0, 0)":                    "out of range; L runs from 0 to 100, a and b from -150 to 150",
		"lab(-1, 0, 0)":                     "out of range; L runs from 0 to 100, a and b from -150 to 150",
		"lab(50, 151, 0)":                   "out of range; L runs from 0 to 100, a and b from -150 to 150",
		"lab(50, 0, -151)":                  "out of range; L runs from 0 to 100, a and b from -150 to 150",
		"5OR 6/8":                           "no such hue as OR; the hues are R, YR, Y, GY, G, BG, B, PB, P, RP",
		"11YR 6/8":                          "hue out of range; the step before the letters runs from 0 to 10",
		"5YR 11/8":                          "value out of range; it runs from 0, black, to 10, white",
		"N 10.1":                            "value out of range; it runs from 0, black, to 10, white",
		"5YR 6/51":                          "chroma out of range; it runs from 0 to 50",
		"5YR 6/" + strings.Repeat("9", 400): "chroma out of range; it runs from 0 to 50",
	} {
		c, err := Parse(text)
		require.Error(t, err, text)
		assert.Equal(t, `colour "`+text+`": `+want, err.Error())
		assert.Equal(t, Lab{}, c, text)
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"#b73", "#b4783c", "lab(52, 18.5, -30)", "5.2YR 6.1/8.3", "N6/", "10RP 0/50", "0.01B 9.99/49", "5YR 6/8/2", ""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := Parse(text)
		if err != nil {
			assert.NotContains(t, err.Error(), "\n")
			return
		}
		assert.False(t, math.IsNaN(c.L+c.A+c.B) || math.IsInf(c.L+c.A+c.B, 0), "%q: %v", text, c)
	})
}
