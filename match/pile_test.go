package match

import (
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
		"yellow-ochre 1e9":                 "out of range",
		"yellow-okre 1":                    "did you mean",
		"yellow-ochre 3 titanium-white 1":  `"yellow-ochre 3 titanium-white 1" is several paints; put commas between them`,
		"phthalo-blue-gs touch viridian 2": "put commas between them",
		"yellow-ochre 1, PY43 2":           "twice",
		"phthalo-blue-gs touch":            "only touches",
		"PB29 1,PY43 1,PBr7 1,x 1,y 1":     "write one of",
	} {
		_, err := ParsePile(nil, text)
		assert.ErrorContains(t, err, want, text)
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
