package colour

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The luminance factors of values 1 to 9 as Newhall, Nickerson and Judd 1943
// table 1 gives them, on the scale of magnesium oxide; ASTM D1535 takes them
// times 0.975 for the perfect diffuser and fits its formula to that.
var magnesiumOxide = [tableValues]float64{1.21, 3.126, 6.555, 12.00, 19.77, 30.05, 43.06, 59.10, 78.66}

// The formula departs from the published table by at most 0.001 of a value.
func TestValueTable(t *testing.T) {
	for i, y := range magnesiumOxide {
		assert.InDelta(t, float64(i+1), valueOfY(0.975*y), 0.001)
	}
	assert.InDelta(t, 100, luminance(10), exact) // the perfect diffuser is value 10
}

// Second implementation: colour (Python) 0.4.7, as its reference pages print
// munsell_value_ASTMD1535(12.23634268) and munsell_colour_to_xyY("N8.9").
func TestValueAgainstColour(t *testing.T) {
	assert.InDelta(t, 4.0824437, valueOfY(12.23634268), 1e-6)
	assert.InDelta(t, 74.61345, luminance(8.9), printed)
}

func TestValueComesBack(t *testing.T) {
	before := -1.0
	for l := 0.0; l <= 100; l += 0.05 {
		v := ValueOf(l)
		assert.InDelta(t, l, LOf(v), 1e-7)
		assert.Greater(t, v, before)
		before = v
	}
}

func TestValueEnds(t *testing.T) {
	assert.Zero(t, ValueOf(0))
	assert.Zero(t, ValueOf(-5))
	assert.Equal(t, 10.0, ValueOf(100))
	assert.Equal(t, 10.0, ValueOf(130))
	assert.Zero(t, LOf(-1))
	assert.InDelta(t, 100, LOf(10), exact)
	assert.InDelta(t, 100, LOf(12), exact)
	assert.Zero(t, ValueOf(math.NaN()))
}
