package match

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/match/paint"
)

// What the trade takes for a paint that fades: quinacridone crimson for alizarin, pyrrole
// or perylene red for naphthol, cadmium or bismuth for arylide yellows. Common practice, no source.
func TestLastingLikes(t *testing.T) {
	library := paint.Library()
	for _, row := range []struct {
		weak  string
		clear bool
		want  []string // any of them
	}{
		{"alizarin-crimson", true, []string{"quinacridone-crimson", "quinacridone-rose"}},
		{"alizarin-crimson", false, []string{"quinacridone-crimson", "quinacridone-rose"}},
		{"anthraquinone-red", true, []string{"quinacridone-crimson", "perylene-red"}},
		{"naphthol-red", true, []string{"perylene-red"}},
		{"hansa-yellow-light", false, []string{"cadmium-yellow-lemon", "bismuth-yellow"}},
		{"hansa-yellow-medium", false, []string{"cadmium-yellow-light", "cadmium-yellow-medium"}},
	} {
		weak, err := paint.Find(nil, row.weak)
		require.NoError(t, err)
		best, ok := LastingLike(weak, library, row.clear)
		require.True(t, ok, row.weak)
		got := library[best.Paint]
		assert.Contains(t, row.want, got.ID, row.weak)
		assert.Equal(t, "I", got.Facts.Lightfastness)
		assert.LessOrEqual(t, best.DeltaE, float64(MostUnlike))
	}
}

// Nothing of the library is a violet like dioxazine; a weak paint is
// not its own stead, and a box of whites and blacks has none.
func TestNoLastingLike(t *testing.T) {
	violet, err := paint.Find(nil, "dioxazine-violet")
	require.NoError(t, err)
	_, ok := LastingLike(violet, paint.Library(), false)
	assert.False(t, ok)
	alizarin, err := paint.Find(nil, "alizarin-crimson")
	require.NoError(t, err)
	white, err := paint.Find(nil, "titanium-white")
	require.NoError(t, err)
	for _, among := range [][]paint.Paint{nil, {alizarin}, {white}} {
		_, ok = LastingLike(alizarin, among, false)
		assert.False(t, ok)
	}
}
