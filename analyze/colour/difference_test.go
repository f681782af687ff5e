package colour

import (
	"math"
	"testing"

	"github.com/lucasb-eyer/go-colorful"
	"github.com/stretchr/testify/assert"
)

// pairs are the 34 of Sharma, Wu, Dalal 2005, table 1, doi:10.1002/col.20070.
var pairs = []struct {
	a, b Lab
	want float64
}{
	{Lab{50.0000, 2.6772, -79.7751}, Lab{50.0000, 0.0000, -82.7485}, 2.0425},
	{Lab{50.0000, 3.1571, -77.2803}, Lab{50.0000, 0.0000, -82.7485}, 2.8615},
	{Lab{50.0000, 2.8361, -74.0200}, Lab{50.0000, 0.0000, -82.7485}, 3.4412},
	{Lab{50.0000, -1.3802, -84.2814}, Lab{50.0000, 0.0000, -82.7485}, 1.0000},
	{Lab{50.0000, -1.1848, -84.8006}, Lab{50.0000, 0.0000, -82.7485}, 1.0000},
	{Lab{50.0000, -0.9009, -85.5211}, Lab{50.0000, 0.0000, -82.7485}, 1.0000},
	{Lab{50.0000, 0.0000, 0.0000}, Lab{50.0000, -1.0000, 2.0000}, 2.3669},
	{Lab{50.0000, -1.0000, 2.0000}, Lab{50.0000, 0.0000, 0.0000}, 2.3669},
	{Lab{50.0000, 2.4900, -0.0010}, Lab{50.0000, -2.4900, 0.0009}, 7.1792},
	{Lab{50.0000, 2.4900, -0.0010}, Lab{50.0000, -2.4900, 0.0010}, 7.1792},
	{Lab{50.0000, 2.4900, -0.0010}, Lab{50.0000, -2.4900, 0.0011}, 7.2195},
	{Lab{50.0000, 2.4900, -0.0010}, Lab{50.0000, -2.4900, 0.0012}, 7.2195},
	{Lab{50.0000, -0.0010, 2.4900}, Lab{50.0000, 0.0009, -2.4900}, 4.8045},
	{Lab{50.0000, -0.0010, 2.4900}, Lab{50.0000, 0.0010, -2.4900}, 4.8045},
	{Lab{50.0000, -0.0010, 2.4900}, Lab{50.0000, 0.0011, -2.4900}, 4.7461},
	{Lab{50.0000, 2.5000, 0.0000}, Lab{50.0000, 0.0000, -2.5000}, 4.3065},
	{Lab{50.0000, 2.5000, 0.0000}, Lab{73.0000, 25.0000, -18.0000}, 27.1492},
	{Lab{50.0000, 2.5000, 0.0000}, Lab{61.0000, -5.0000, 29.0000}, 22.8977},
	{Lab{50.0000, 2.5000, 0.0000}, Lab{56.0000, -27.0000, -3.0000}, 31.9030},
	{Lab{50.0000, 2.5000, 0.0000}, Lab{58.0000, 24.0000, 15.0000}, 19.4535},
	{Lab{50.0000, 2.5000, 0.0000}, Lab{50.0000, 3.1736, 0.5854}, 1.0000},
	{Lab{50.0000, 2.5000, 0.0000}, Lab{50.0000, 3.2972, 0.0000}, 1.0000},
	{Lab{50.0000, 2.5000, 0.0000}, Lab{50.0000, 1.8634, 0.5757}, 1.0000},
	{Lab{50.0000, 2.5000, 0.0000}, Lab{50.0000, 3.2592, 0.3350}, 1.0000},
	{Lab{60.2574, -34.0099, 36.2677}, Lab{60.4626, -34.1751, 39.4387}, 1.2644},
	{Lab{63.0109, -31.0961, -5.8663}, Lab{62.8187, -29.7946, -4.0864}, 1.2630},
	{Lab{61.2901, 3.7196, -5.3901}, Lab{61.4292, 2.2480, -4.9620}, 1.8731},
	{Lab{35.0831, -44.1164, 3.7933}, Lab{35.0232, -40.0716, 1.5901}, 1.8645},
	{Lab{22.7233, 20.0904, -46.6940}, Lab{23.0331, 14.9730, -42.5619}, 2.0373},
	{Lab{36.4612, 47.8580, 18.3852}, Lab{36.2715, 50.5065, 21.2231}, 1.4146},
	{Lab{90.8027, -2.0831, 1.4410}, Lab{91.1528, -1.6435, 0.0447}, 1.4441},
	{Lab{90.9257, -0.5406, -0.9208}, Lab{88.6381, -0.8985, -0.7239}, 1.5381},
	{Lab{6.7747, -0.2908, -2.4247}, Lab{5.8714, -0.0985, -2.2286}, 0.6377},
	{Lab{2.0776, 0.0795, -1.1350}, Lab{0.9033, -0.0636, -0.5514}, 0.9082},
}

func TestDeltaE00Published(t *testing.T) {
	assert.Len(t, pairs, 34)
	for i, p := range pairs {
		assert.InDelta(t, p.want, DeltaE00(p.a, p.b), printed, "pair %d", i+1)
		assert.InDelta(t, p.want, DeltaE00(p.b, p.a), printed, "pair %d, swapped", i+1)
	}
}

// Pair 14 lies on the flip at 180°; both orders must take the same side to the
// last bit that counts, not only to the printed digits.
func TestDeltaE00Symmetric(t *testing.T) {
	labs := randomLabs(2000)
	for i := range len(labs) - 1 {
		assert.InDelta(t, DeltaE00(labs[i], labs[i+1]), DeltaE00(labs[i+1], labs[i]), exact)
	}
	for _, c := range labs {
		opposite := Lab{c.L, -c.A, -c.B}
		assert.InDelta(t, DeltaE00(c, opposite), DeltaE00(opposite, c), exact, "%v", c)
		assert.Zero(t, DeltaE00(c, c))
	}
}

// Second implementation: go-colorful v1.4.1 DistanceCIEDE2000. Its Lab runs to 1
// where ours runs to 100, and it goes through RGB with its own white, both ways.
// A neutral comes out of RGB with a chroma of 1e-8, which moves a difference by
// up to 3e-6. Exactly opposite hues are left out: it has no tolerance there.
func TestDeltaE00AgainstGoColorful(t *testing.T) {
	labs := randomLabs(3000)
	check := func(a, b Lab) {
		want := 100 * theirs(a).DistanceCIEDE2000(theirs(b))
		assert.InDelta(t, want, DeltaE00(a, b), throughRGB, "%v %v", a, b)
	}
	for i := range len(labs) - 1 {
		check(labs[i], labs[i+1])
		near := Lab{labs[i].L + 0.3, labs[i].A - 0.4, labs[i].B + 0.5}
		check(labs[i], near)
		check(labs[i], Lab{L: labs[i].L})
	}
}

// throughRGB is what the second implementation's way through RGB may cost.
const throughRGB = 1e-5

func theirs(c Lab) colorful.Color { return colorful.Lab(c.L/100, c.A/100, c.B/100) }

// The branch for opposite hues and the vector form must meet without a step.
func TestDeltaE00NearOpposite(t *testing.T) {
	a := Lab{50, 30, -20}
	for _, off := range []float64{1e-2, 3e-3, 1.5e-3, 1.4e-3, 1e-3, 1e-4, 1e-6} { // radians from opposite; the branch is at 1.414e-3
		sin, cos := math.Sincos(off)
		b := Lab{40, -a.A*cos + a.B*sin, -a.A*sin - a.B*cos}
		want := 100 * theirs(a).DistanceCIEDE2000(theirs(b))
		assert.InDelta(t, want, DeltaE00(a, b), throughRGB, "off by %g", off)
	}
}

func BenchmarkDeltaE00(b *testing.B) {
	labs := randomLabs(1024)
	i := 0
	for b.Loop() {
		number = DeltaE00(labs[i&1023], labs[(i+1)&1023])
		i++
	}
}

// The yardstick for BenchmarkDeltaE00: the formula step by step, from Lab.
func BenchmarkDeltaE00GoColorful(b *testing.B) {
	var colours [1024]colorful.Color
	for i, c := range randomLabs(1024) {
		colours[i] = theirs(c)
	}
	i := 0
	for b.Loop() {
		number = colours[i&1023].DistanceCIEDE2000(colours[(i+1)&1023])
		i++
	}
}

var number float64
