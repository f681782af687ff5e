package match

import (
	"errors"
	"strings"
	"testing"

	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestParsePile(t *testing.T) {
	box := paint.StarterBox().Paints
	p, err := ParsePile(box, "yellow-ochre 3, 1 Titanium White, PB29 speck")
	require.NoError(t, err)
	assert.Equal(t, []string{"yellow-ochre", "titanium-white", "ultramarine-blue"}, []string{p.Paints[0].ID, p.Paints[1].ID, p.Paints[2].ID})
	assert.Equal(t, []float64{3, 1}, p.Parts[:2])
	assert.InDelta(t, 1.0/128, p.Parts[2]/sum(p.Parts), exact) // by definition
	p, err = ParsePile(box, "burnt umber")
	require.NoError(t, err)
	assert.Equal(t, []float64{1}, p.Parts)
}

func TestParsePileSaysWhatIsWrong(t *testing.T) {
	for text, want := range map[string]string{
		"":                                 "a paint is missing",
		"yellow-ochre 3,,":                 "a paint is missing",
		"yellow-ochre -1":                  "out of range",
		"yellow-ochre NaN":                 "out of range",
		"yellow-ochre 1e9":                 "out of range: from 0.001 to 1000",
		"yellow-ochre 1e-320":              "out of range",
		"PY43 1, viridian 0 touches":       "0 touches of viridian is out of range",
		"PY43 1, viridian 20 touches":      "more than half of the pile",
		"PY43 1, 2 touches of":             "unknown paint \"of\"",
		"PY43 1, viridian parts":           "unknown paint \"viridian parts\"",
		"gold 3, PY43 -1":                  "out of range", // a slip comes before a name: see UnknownPaint
		"gold 1, gold 2":                   "twice",
		"yellow-okre 1":                    "did you mean",
		"yellow-ochre 3 titanium-white 1":  `"yellow-ochre 3 titanium-white 1" is several paints; put commas between them`,
		"phthalo-blue-gs touch viridian 2": "put commas between them",
		"PY43 1, 2 touches of viridian 2 touches of PB29": "put commas between them",
		"yellow-ochre 1, PY43 2":                          "twice",
		"phthalo-blue-gs touch":                           "only touches",
		"PB29 1,PY43 1,PBr7 1,x 1,y 1":                    "write one of",
		"a, b, c, d, e, f, g":                             "has 7 paints; at most 6",
		strings.Repeat("a", 201) + " 1":                   "name is 201 letters long",
	} {
		_, err := ParsePile(nil, text)
		assert.ErrorContains(t, err, want, text)
	}
}

// Small amounts in every order of words; a touch is 1/32 of the pile by definition.
func TestParsePileReadsTouches(t *testing.T) {
	for text, want := range map[string]float64{
		"viridian 2 touches": 2.0 / 32, "2 touches of viridian": 2.0 / 32, "2 Touches Viridian": 2.0 / 32, "PG18 touch": 1.0 / 32,
		"a touch of viridian": 1.0 / 32, "viridian a touch": 1.0 / 32, "3 specks of PG18": 3.0 / 128, "viridian 1.5 specks": 1.5 / 128,
		"1 part of viridian": 1.0 / 4, "viridian 2 parts": 2.0 / 5, "viridian": 1.0 / 4,
	} {
		p, err := ParsePile(nil, "titanium-white 3, "+text)
		require.NoError(t, err, text)
		assert.Equal(t, "viridian", p.Paints[1].ID, text)
		assert.InDelta(t, want, p.Parts[1]/sum(p.Parts), exact, text)
	}
}

// A log reads more than anyone types, and tells a name nobody knows from a slip.
func TestReadPileIsWide(t *testing.T) {
	all := paint.StarterBox().Paints
	p := Pile{all[:9], []float64{1409.03125, 2e6, 3, 4, 5, 6, 7, 8, 1e-5}}
	got, err := ReadPile(nil, p.String())
	require.NoError(t, err)
	require.Len(t, got.Paints, 9)
	assert.InEpsilon(t, 1409.03125, got.Parts[0], 1e-4)
	_, err = ParsePile(nil, p.String())
	assert.Error(t, err)
	_, err = ReadPile(nil, strings.Repeat("gold 1,", 1e5))
	assert.ErrorContains(t, err, "a pile of 100001 paints is longer than is read")
	for text, unknown := range map[string]bool{"gold 3": true, "viridian 1, gold touch": true, "gold x y": true, "gold -3": false, "gold 3, viridian 1e10": false, "gold touch": false} {
		_, err := ReadPile(nil, text)
		assert.Equal(t, unknown, errors.As(err, new(UnknownPaint)), "%s: %v", text, err)
	}
}

// Identity: what is written is read back, to the digits written.
func TestPileIsReadBack(t *testing.T) {
	box := paint.StarterBox().Paints
	for _, parts := range [][]float64{{3, 1}, {0.21875, 12}, {1.0 / 3, 999.94}, {1e-3, 2}} {
		p := Pile{box[3:5], parts}
		got, err := ParsePile(nil, p.String())
		require.NoError(t, err, p.String())
		for i := range parts {
			assert.Equal(t, p.Paints[i].ID, got.Paints[i].ID)
			assert.InEpsilon(t, parts[i], got.Parts[i], 1e-4)
		}
	}
}
