package paint

import (
	"math"
	"slices"
	"strings"
	"testing"

	"tonewright/analyze/colour"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Straight from the definitions, one part in five. Source: [PaintOptics] mixing, surface.
func TestTint(t *testing.T) {
	rose, white := known(t, "quinacridone-rose"), known(t, "titanium-white")
	var r colour.Spectrum
	for b := range r {
		q := (rose.K[b] + 4*white.K[b]) / (rose.S[b] + 4*white.S[b])
		inner := 1 + q - math.Sqrt(q*q+2*q)
		r[b] = 0.4 * inner / (1 - 0.6*inner)
	}
	assert.InDelta(t, 0, colour.DeltaE00(r.Lab(), rose.Tint(white)), 1e-6)
	assert.InDelta(t, 0, colour.DeltaE00(white.Masstone(), white.Tint(white)), exact, "white in white is white")
}

func TestTintingWhite(t *testing.T) {
	for want, owned := range map[string][]string{
		"titanium-white": {"viridian", "zinc-white", "titanium-white", "lead-white"},
		"lead-white":     {"zinc-white", "lead-white", "unbleached-titanium"},
		"zinc-white":     {"zinc-white", "cadmium-yellow-lemon"},
	} {
		var paints []Paint
		for _, id := range owned {
			paints = append(paints, known(t, id))
		}
		assert.Equal(t, want, TintingWhite(paints).ID)
	}
	assert.Equal(t, "titanium-white", TintingWhite([]Paint{known(t, "unbleached-titanium")}).ID, "a buff is no white")
	assert.Equal(t, "titanium-white", TintingWhite(nil).ID)
	pale := known(t, "nickel-titanate-yellow").Vary(0.05, 1, 0)
	assert.Greater(t, pale.Masstone().L, known(t, "zinc-white").Masstone().L)
	assert.Equal(t, "zinc-white", TintingWhite([]Paint{pale, known(t, "zinc-white")}).ID, "a pale yellow is no white")
}

// The stronger a blue or a green tints by its facts, the darker its tint in white is
// by its optics. Source: [PaintFacts] tinting strength, from [Okumura2005] for most.
func TestTintsDarkenWithStrength(t *testing.T) {
	white := known(t, "titanium-white")
	var mean []float64
	for _, strength := range []string{"low", "medium", "very high"} {
		sum, n := 0.0, 0.0
		for _, p := range Library() {
			if strings.HasPrefix(p.CI[0], "PB") && !strings.HasPrefix(p.CI[0], "PBk") && !strings.HasPrefix(p.CI[0], "PBr") && p.Facts.Strength == strength && p.Basis != Blend {
				sum, n = sum+p.Tint(white).L, n+1
			}
		}
		require.NotZero(t, n, strength)
		mean = append(mean, sum/n)
	}
	assert.Greater(t, mean[0], mean[1]+3)
	assert.Greater(t, mean[1], mean[2]+3)
}

// One coat of a light paint hides the better the more opaque it is called. Contrast
// ratios are for light colours: a dark transparent one covers by its depth.
// Source: [ISO6504-3] light-coloured paints; [PaintFacts] opacity; [PaintOptics]
// model.units for titanium white.
func TestOpacityAgreesWithContrast(t *testing.T) {
	contrast := func(p Paint) float64 { return ContrastRatio(&p.K, &p.S) }
	var mean []float64
	for _, opacity := range []string{"opaque", "semi-opaque", "semi-transparent", "transparent"} {
		sum, n := 0.0, 0.0
		for _, p := range slices.DeleteFunc(Library(), func(p Paint) bool { return p.Opacity != opacity || p.Masstone().L < 30 }) {
			sum, n = sum+contrast(p), n+1
		}
		mean = append(mean, sum/n)
	}
	t.Logf("mean contrast from opaque to transparent: %.2f", mean)
	for i := range mean[1:] {
		assert.Greater(t, mean[i], mean[i+1]+0.03)
	}
	assert.InDelta(t, 0.93, contrast(known(t, "titanium-white")), 0.005)
	assert.Greater(t, contrast(known(t, "titanium-white")), contrast(known(t, "zinc-white"))+0.2)
}

// A white too gray to tint with is no white to mix by, and nothing that is not owned is.
func TestOwnWhite(t *testing.T) {
	dim := library()[0].Vary(200, 1, 0)
	require.True(t, dim.White())
	require.Less(t, dim.Masstone().L, float64(whiteL))
	assert.Nil(t, OwnWhite([]Paint{dim}))
	assert.Nil(t, OwnWhite(nil))
	assert.Equal(t, library()[0].ID, OwnWhite([]Paint{dim, library()[0]}).ID)
}
