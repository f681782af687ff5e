package layer

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Drying oils heat rags as they dry, stand oil too; solvent leaves; an alkyd medium does
// both and holds driers. Source: [BucksFire2020] for oils; alkyds common practice, no source.
func TestMediumCautions(t *testing.T) {
	for text, want := range map[string][]string{
		"none": nil, "": nil, "linseed 1:10": {"rags"}, "stand oil 1:6": {"rags"}, "walnut 1:8": {"rags"}, "poppy 1:8": {"rags"},
		"solvent 1:4": {"solvents"}, "alkyd 1:5": {"rags", "solvents", "alkyd"},
	} {
		m, err := ParseMedium(text)
		require.NoError(t, err, text)
		var keys []string
		for _, c := range m.Cautions() {
			keys = append(keys, c.Key)
			assert.NotEmpty(t, c.Source, c.Key)
			assert.Equal(t, "medium", c.Kind, c.Key)
			for _, word := range []string{"label", "safety data sheet", "local rules"} {
				assert.Contains(t, c.Text, word, c.Key)
			}
		}
		assert.Equal(t, want, keys, text)
	}
}
