package colour

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// returned is what Munsell.Lab states of its own inverse.
const returned = 1e-6

// offBy returns how far the notation of m's colour is from m.
func offBy(m Munsell) float64 {
	back := m.Lab().Munsell()
	p, q := m.point(), back.point()
	return max(math.Hypot(p[0]-q[0], p[1]-q[1]), math.Abs(back.Value-m.Value))
}

// Identity: every colour of Newhall, Nickerson, Judd 1943, table 1, by its notation.
func TestTabledNotationsComeBack(t *testing.T) {
	n, worst := 0, 0.0
	for _, line := range tableLines(t, renotation) {
		row := wholeNumbers(line)
		for k := 2; k < len(row); k += 2 {
			worst = max(worst, offBy(Munsell{wrap(float64(row[1])/10, 100), float64(row[0]), float64(k)}))
			n++
		}
	}
	assert.Equal(t, 2734, n)
	assert.LessOrEqual(t, worst, returned)
}

// The same from between the tabled colours, under value 1, over 9, and past the
// table's chroma; half of them weak, where a hue is hardest to keep.
func TestNotationsComeBack(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for i := range 20000 {
		m := Munsell{100 * r.Float64(), 10 * r.Float64(), maxChroma * r.Float64()}
		if i%2 == 0 {
			m.Chroma /= 10
		}
		assert.LessOrEqual(t, offBy(m), returned, "%+v", m)
	}
	for value := range 11 {
		for _, chroma := range []float64{0, 1e-3, 0.5, 2, 38, 40, 50} {
			for hue := 0.0; hue < 100; hue += 2.5 {
				m := Munsell{hue, float64(value), chroma}
				if value == 0 {
					m.Value = 1e-6 // at 0 a colour has no light, and so no hue
				}
				assert.LessOrEqual(t, offBy(m), returned, "%+v", m)
			}
		}
	}
}

// Newhall, Nickerson, Judd 1943, table 1: x, y under C and Y on the scale of
// magnesium oxide, which is 0.975 of the perfect diffuser. The quintic of ASTM
// D1535 misses the printed Y by up to 0.02 of value.
func TestNotationsGiveTheTable(t *testing.T) {
	for _, c := range []struct {
		notation string
		x, y, mg float64
	}{
		{"7.5PB 1/6", 0.2, 0.1422, 1.21},
		{"7.5PB 2/38", 0.1623, 0.028, 3.126},
		{"5B 3/12", 0.1042, 0.1681, 6.555},
		{"2.5R 5/18", 0.554, 0.2804, 19.77},
		{"10PB 5/12", 0.2384, 0.1857, 19.77},
		{"2.5Y 7/2", 0.3436, 0.3507, 43.06},
		{"2.5R 8/8", 0.39, 0.3171, 59.1},
	} {
		xyz := notation(t, c.notation).Lab().XYZ()
		seen := toC.times([3]float64{xyz.X, xyz.Y, xyz.Z})
		sum := seen[0] + seen[1] + seen[2]
		assert.InDelta(t, c.x, seen[0]/sum, printed, c.notation)
		assert.InDelta(t, c.y, seen[1]/sum, printed, c.notation)
		assert.InDelta(t, 0.975*c.mg, seen[1], 0.15, c.notation)
	}
}

// CIE 13.3-1995, tables 1 and 2: the colour that the printed notation of each
// chip means is about that of its reflectance. The 5GY is off most, by 2.45, as
// TestPublishedChips says.
func TestNotationsOfChips(t *testing.T) {
	for _, c := range publishedChips(t) {
		d := DeltaE00(c.nominal.Lab(), c.s.Lab())
		assert.Less(t, d, 2.5, c.label)
	}
}

func TestNotationsOutsideTheScale(t *testing.T) {
	assert.Equal(t, Lab{}, Munsell{}.Lab())
	assert.InDelta(t, 100, Munsell{Value: 12}.Lab().L, exact)
	gray := Lab{L: LOf(5)}
	for _, m := range []Munsell{{20, 5, -1}, {20, 5, math.NaN()}, {math.NaN(), 5, 8}, {20, 5, math.Inf(1)}, {math.Inf(1), 5, 8}} {
		assert.Equal(t, gray, m.Lab(), "%+v", m)
	}
	assert.Zero(t, Munsell{20, math.NaN(), 0}.Lab().Chroma())
}

func BenchmarkMunsellLab(b *testing.B) {
	r := rand.New(rand.NewPCG(5, 6))
	m := make([]Munsell, 1024)
	for i := range m {
		m[i] = Munsell{100 * r.Float64(), 10 * r.Float64(), 20 * r.Float64()}
	}
	i := 0
	for b.Loop() {
		sink = m[i&1023].Lab()
		i++
	}
}
