package paint

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Against the band model itself with its centres moved: the tables hold K every 10 nm
// only, so a moved K is interpolated.
func TestVaryAgainstTheModel(t *testing.T) {
	const floor = 0.00052
	for _, shift := range []float64{-6, -2.5, 0, 4, 6} {
		p := Paint{K: absorption(floor, []curve{{520, 30, 1.2, false}, {450, 8, 2, true}})}
		want := absorption(floor, []curve{{520 + shift, 30, 1.2, false}, {450 + shift, 8, 2, true}})
		got := p.Vary(1, 1, shift)
		for b := range want {
			assert.InEpsilon(t, want[b], got.K[b], 0.12, "shift %v, band %d", shift, b)
		}
	}
}

func TestVaryScales(t *testing.T) {
	p := known(t, "phthalo-blue-gs")
	v := p.Vary(1.3, 0.7, 0)
	for b := range p.K {
		assert.InEpsilon(t, 1.3*p.K[b], v.K[b], 1e-9)
		assert.InEpsilon(t, 0.7*p.S[b], v.S[b], 1e-9)
	}
}

func TestFindLooksInTheBoxFirst(t *testing.T) {
	own := known(t, "yellow-ochre")
	own.Name, own.Basis = "Yellow Ochre", Own
	p, err := Find([]Paint{own}, "Yellow ochre")
	require.NoError(t, err)
	assert.Equal(t, Own, p.Basis)
	p, err = Find([]Paint{own}, "PB29")
	require.NoError(t, err)
	assert.Equal(t, "ultramarine-blue", p.ID)
	_, err = Find([]Paint{own}, "ultramarin blu")
	assert.ErrorContains(t, err, `did you mean "ultramarine-blue"`)
}
