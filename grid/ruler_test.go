package grid

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// By hand; the inch is 25.4 mm exactly.
func TestRuled(t *testing.T) {
	for want, m := range map[string]Millimetres{
		"0 in": 0.7, "1/16 in": 0.9, "1/8 in": 3.175, "1/2 in": 12.7, "1 in": 25.4, "4 5/8 in": 118.1, "12 in": 304.8, "1 15/16 in": 49.3,
	} {
		assert.Equal(t, want, Inch.Ruled(m), "%v mm", m)
	}
	assert.Equal(t, "11.8 cm", Centimetre.Ruled(118.1))
	assert.Equal(t, "12.0 cm", Centimetre.Ruled(120.4))
	assert.Equal(t, "119 mm", Millimetre.Ruled(118.5))
}
