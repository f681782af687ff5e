package layer

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestParseMedium(t *testing.T) {
	for _, c := range []struct {
		text string
		want Medium
		back string
	}{
		{"none", Medium{Kind: None}, "none"},
		{"", Medium{Kind: None}, "none"},
		{"linseed 1:10", Medium{Linseed, 0.1}, "linseed 1:10"},
		{"  Linseed  Oil 2:20 ", Medium{Linseed, 0.1}, "linseed 1:10"},
		{"stand oil 1:6", Medium{StandOil, 1. / 6}, "stand oil 1:6"},
		{"stand 1 : 6", Medium{StandOil, 1. / 6}, "stand oil 1:6"},
		{"poppy 1:8", Medium{Safflower, 0.125}, "safflower 1:8"},
		{"walnut 3:10", Medium{Walnut, 0.3}, "walnut 3:10"},
		{"alkyd 1:4", Medium{Alkyd, 0.25}, "alkyd 1:4"},
		{"SOLVENT 3:2", Medium{Solvent, 1.5}, "solvent 3:2"},
		{"linseed 2:1", Medium{Linseed, 2}, "linseed 2:1"},
		{"linseed 1:2.5", Medium{Linseed, 0.4}, "linseed 2:5"},
		{"linseed 20:1", Medium{Linseed, 20}, "linseed 20:1"},
	} {
		m, err := ParseMedium(c.text)
		require.NoError(t, err, c.text)
		assert.Equal(t, c.want.Kind, m.Kind, c.text)
		assert.InDelta(t, c.want.Parts, m.Parts, 1e-12, c.text)
		assert.Equal(t, c.back, m.String(), c.text)
	}
	assert.Equal(t, "none", Medium{}.String())
	assert.Equal(t, "1 part of linseed oil to 12 of paint", Medium{Linseed, 1. / 12}.words())
	assert.Equal(t, "3 parts of stand oil to 10 of paint", Medium{StandOil, 0.3}.words())
}

func TestParseMediumSaysWhatWouldDo(t *testing.T) {
	for text, says := range map[string]string{
		"butter 1:10":        `unknown medium "butter 1:10": write none, linseed, stand oil, walnut, safflower, alkyd, solvent, and how much, as in "linseed 1:10"`,
		"1:10":               `unknown medium "1:10"`,
		"linseed":            `medium "linseed": say how much, as in "linseed 1:10" for 1 part of it to 10 of paint by volume`,
		"linseed 10":         `medium "linseed 10": write parts of medium and of paint, each over 0 and at most 20 of medium to 1 of paint, as in "linseed 1:10"`,
		"linseed 0:10":       "each over 0",
		"linseed 1:0":        "each over 0",
		"linseed -1:10":      "each over 0",
		"linseed 1:-10":      "each over 0",
		"linseed -1:-10":     "each over 0",
		"linseed 21:1":       "at most 20 of medium",
		"linseed 1:10:3":     "each over 0",
		"linseed 1:1e9":      "each over 0",
		"linseed 1:10 drops": "each over 0",
		"none 1:10":          `medium "none 1:10": none takes no parts`,
	} {
		_, err := ParseMedium(text)
		assert.ErrorContains(t, err, says, text)
	}
}

// A medium says what ParseMedium reads back.
func TestMediumReadsBack(t *testing.T) {
	for of := 1; of <= 12; of++ {
		for to := 1; to <= 40; to++ {
			m := Medium{Linseed, float64(of) / float64(to)}
			back, err := ParseMedium(m.String())
			require.NoError(t, err, m.String())
			assert.InEpsilon(t, m.Parts, back.Parts, 1e-9, m.String())
		}
	}
}

func FuzzParseMedium(f *testing.F) {
	for _, text := range []string{"none", "linseed 1:10", "stand oil 2:3", "1:", ":", "alkyd 1e3:1e3", "solvent ٣:1", "walnut NaN:1", "walnut 0x1p-2:1", "poppy oil 1:.5"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		m, err := ParseMedium(text)
		if err != nil {
			return
		}
		assert.True(t, m.none() || m.Parts > 0 && m.Parts <= mostMedium, "%q: %v", text, m)
		back, err := ParseMedium(m.String())
		require.NoError(t, err, "%q: %s", text, m)
		assert.Equal(t, m.Kind, back.Kind)
		assert.InDelta(t, m.Parts, back.Parts, 0.006*m.Parts, "%q: %s", text, m) // three digits, where no whole parts fit
	})
}
