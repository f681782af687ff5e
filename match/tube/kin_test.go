package tube

import (
	"strings"
	"testing"

	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// One library paint's thick layer and tint offered as a tube of another: varieties of a
// name pass, other paints do not, and the paint that it really is gets named. What is a
// variety: Colour Index, PR108 for both cadmium reds, PBr7 for both burnt earths, PY42 and
// PY43 for the two yellows, which differ in being made or dug; PR101 for both red
// oxides, of which the transparent one scatters a ninth, for its particles are so fine.
func TestTellsAnotherPaint(t *testing.T) {
	white := library(t, "titanium-white")
	for _, c := range []struct{ real, as, why string }{
		{"cadmium-red-deep", "cadmium-red-light", ""},
		{"burnt-umber", "burnt-sienna", ""},
		{"mars-yellow", "yellow-ochre", ""},
		{"yellow-ochre", "ultramarine-blue", `^is 63 CIEDE2000 from the typical tube thick and \d\d in white and throws back \d\d times the light$`},
		{"ivory-black", "raw-sienna", "CIEDE2000 from the typical tube"},
		{"transparent-oxide-red", "venetian-red", `^throws back 0\.1\d* times the light$`},
		{"phthalo-blue-gs", "ultramarine-blue", "CIEDE2000 from the typical tube"},
	} {
		real := library(t, c.real)
		k, s := paint.Mix([]paint.Paint{real, white}, []float64{1, 4})
		f, err := Fit(library(t, c.as), white, Measured{Masstone: paint.Thick(&real.K, &real.S, ShineOut), Tints: []Tint{{1, 4, paint.Thick(&k, &s, ShineOut)}}})
		require.NoError(t, err, "%s as %s", c.real, c.as)
		if c.why == "" {
			assert.Empty(t, f.Unlike, "%s as %s", c.real, c.as)
			continue
		}
		assert.Regexp(t, c.why, f.Unlike, "%s as %s", c.real, c.as)
		assert.Equal(t, c.real, f.Reads.ID, "offered as %s", c.as)
	}
}

// What is noted is said in words, with the figures after them.
func TestNotesInWords(t *testing.T) {
	tint := flat(0.7)
	for b := 16; b <= 20; b++ { // 560 to 600 nm
		tint[b] = 0.5
	}
	p := problem{like: library(t, "yellow-ochre"), white: library(t, "titanium-white"), m: Measured{Masstone: flat(0.5), Tints: []Tint{{1, 4, tint}}}}
	assert.Contains(t, p.notes(1), "In green to orange light masstone and tints look alike, so how well the paint covers there comes from the typical tube (560 to 600 nm).")
	assert.NotContains(t, strings.Join(p.notes(1), " "), "throws back")
	assert.Contains(t, p.notes(0.3), "The tube throws back much less light than a typical one; check the parts of the tint if that is a surprise (scattering 0.3 times).")
	assert.Equal(t, "it takes in more light, further towards red, and throws back less (absorption times 1.22, moved by 3.0 nm; scattering times 0.74)", place{20, -30, 30}.words())
	assert.Equal(t, "it takes in less light and throws back as much (absorption times 0.82, moved by 0.0 nm; scattering times 1.00)", place{-20, 0, 0}.words())
}
