package analyze

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"math/rand/v2"
	"os"
	"testing"

	"github.com/kovidgoyal/imaging/prism/meta/icc"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

func deflated(t testing.TB, data []byte) string {
	t.Helper()
	var out bytes.Buffer
	z := zlib.NewWriter(&out)
	_, err := z.Write(data)
	require.NoError(t, err)
	require.NoError(t, z.Close())
	return out.String()
}

func testProfile(t testing.TB, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(moduleFile(t, "github.com/kovidgoyal/imaging", "prism/meta/icc/test-profiles/"+name))
	require.NoError(t, err)
	return data
}

// The lattice of a printing profile against the profile itself, at random inks:
// what the 17 nodes along each ink cost. The worst lie in the dark, where four
// inks overlap and little light is left.
func TestTableIsFineEnough(t *testing.T) {
	p, err := icc.DecodeProfile(bytes.NewReader(testProfile(t, "cmyk.icc")))
	require.NoError(t, err)
	xyz, err := profileXYZ(p, 4)
	require.NoError(t, err)
	table := newTable(xyz, 4)
	random := rand.New(rand.NewPCG(3, 4))
	var sum, worst float64
	const n = 5000
	for range n {
		var in [4]float64
		var small [4]float32
		for c := range in {
			in[c] = random.Float64()
			small[c] = float32(in[c])
		}
		got, want := table.at(small).light(), xyz(in)
		diff := colour.DeltaE00(labOf50(got), labOf50([3]float64{want[0] / d50[0], want[1] / d50[1], want[2] / d50[2]}))
		sum, worst = sum+diff, max(worst, diff)
	}
	t.Logf("CIEDE2000 mean %.3f, worst %.3f", sum/n, worst)
	require.Less(t, sum/n, 0.25) // 0.167
	require.Less(t, worst, 4.0)  // 3.44
}

func labOf50(ratio [3]float64) colour.Lab {
	x, y, z := labF(ratio[0]), labF(ratio[1]), labF(ratio[2])
	return colour.Lab{L: 116*y - 16, A: 500 * (x - y), B: 200 * (y - z)}
}

// Profiles of every kind are told apart, named, and keep white white and black black.
func TestProfileKinds(t *testing.T) {
	for _, c := range []struct {
		file, name string
		inks       int
		table      bool
	}{
		{"sRGB-v4.icc", "sRGB", 3, false},
		{"sRGB-v2-nano.icc", "sRGB", 3, false},
		{"displayp3.icc", "Display P3", 3, false},
		{"adobergb.icc", "Adobe RGB (1998)", 3, false},
		{"prophoto.icc", "ProPhoto RGB", 3, false},
		{"gray-v4-lab-gamma2.2.icc", "", 1, false},
		{"gray-v2-gamma1.8-d65.icc", "", 1, false},
		{"gray-v4-srgb.icc", "", 1, false},
		{"lcms-check-lut.icc", "", 3, true},
		{"cmyk.icc", "", 4, true},
	} {
		l, err := profileLight(testProfile(t, c.file), c.inks)
		require.NoError(t, err, c.file)
		t.Logf("%s: %s", c.file, l.name)
		if c.name != "" {
			require.Contains(t, l.name, c.name, c.file)
		}
		require.Equal(t, c.table, l.table != nil, c.file)
		if !c.table {
			for v := range 2 {
				x := float64(v)
				got := l.affine.apply([3]float64{l.curve(0, x), l.curve(1, x), l.curve(2, x)})
				require.InDeltaSlice(t, []float64{x, x, x}, got[:], 0.002, c.file)
			}
		}
	}
}

// A profile must suit the picture; a gray picture may have one for RGB.
func TestProfileMustSuit(t *testing.T) {
	_, err := profileLight(testProfile(t, "cmyk.icc"), 3)
	require.EqualError(t, err, "it is for CMYK and the picture is RGB")
	_, err = profileLight(testProfile(t, "gray-v4-srgb.icc"), 3)
	require.EqualError(t, err, "it is for gray and the picture is RGB")
	l, err := profileLight(testProfile(t, "displayp3.icc"), 1)
	require.NoError(t, err)
	require.Equal(t, 3, l.inks)
}

// Counts that the reader would believe are checked before it sees them.
func TestCheckICC(t *testing.T) {
	good := testProfile(t, "displayp3.icc")
	require.NoError(t, checkICC(good))
	broken := func(change func(b []byte) []byte) error { return checkICC(change(bytes.Clone(good))) }
	require.Error(t, broken(func(b []byte) []byte { return b[:100] }))
	require.Error(t, broken(func(b []byte) []byte { return b[:len(b)-40] }))
	require.Error(t, broken(func(b []byte) []byte { b[36] = 'x'; return b }))
	require.Error(t, broken(func(b []byte) []byte { binary.BigEndian.PutUint32(b[128:], 1<<31); return b }))
	require.Error(t, broken(func(b []byte) []byte { binary.BigEndian.PutUint32(b[136:], 0xfffffff0); return b }))
	require.Error(t, broken(func(b []byte) []byte { return append(b, "curv\x00\x00\x00\x00\xff\xff\xff\xff"...) }))
}

// The matrices against printed ones: XYZ of linear sRGB, IEC 61966-2-1:1999 eq. 8,
// four decimals; the inverse of Bradford's white change back and forth.
func TestMatrices(t *testing.T) {
	const printed = 0.5e-4
	for i, row := range [][]float64{{0.4124, 0.3576, 0.1805}, {0.2126, 0.7152, 0.0722}, {0.0193, 0.1192, 0.9505}} {
		require.InDeltaSlice(t, row, srgbToXYZ[i][:], printed+1e-5)
	}
	there := adapt(d50, whiteXYZ(d65Chromaticity))
	back := there.times(adapt(whiteXYZ(d65Chromaticity), d50))
	for i := range 3 {
		require.InDeltaSlice(t, identity.m[i][:], back[i][:], 1e-9)
	}
	white := xyzToSRGB50.apply(d50)
	require.InDeltaSlice(t, []float64{1, 1, 1}, white[:], 1e-9)
}

// Black-point compensation by hand: black to nothing, white to itself, and what
// lies halfway between them to half of white.
func TestBlackToZero(t *testing.T) {
	black := [3]float64{0.02, 0.03, 0.01}
	a := blackToZero(icc.XYZType{X: black[0], Y: black[1], Z: black[2]})
	at := func(v [3]float64) []float64 { w := a.apply(v); return w[:] }
	require.InDeltaSlice(t, []float64{0, 0, 0}, at(black), 1e-12)
	require.InDeltaSlice(t, d50[:], at(d50), 1e-12)
	middle := [3]float64{(black[0] + d50[0]) / 2, (black[1] + d50[1]) / 2, (black[2] + d50[2]) / 2}
	require.InDeltaSlice(t, []float64{d50[0] / 2, d50[1] / 2, d50[2] / 2}, at(middle), 1e-12)
}

// One bit of a profile can go wrong and leave its layout whole: the white of its
// connection space, a primary, a matrix of nothing. Such a profile is refused, for
// what it gives is no light; an unharmed one of each kind passes.
func TestDamagedProfilesAreRefused(t *testing.T) {
	for _, name := range []string{"displayp3.icc", "prophoto.icc", "cmyk.icc", "gray-v4-srgb.icc"} {
		inks := map[string]int{"cmyk.icc": 4, "gray-v4-srgb.icc": 1}[name]
		if inks == 0 {
			inks = 3
		}
		_, err := profileLight(testProfile(t, name), inks)
		require.NoError(t, err, name)
	}
	damaged := func(tag string, at int, value byte) error {
		b := bytes.Clone(testProfile(t, "displayp3.icc"))
		for i := range int(binary.BigEndian.Uint32(b[128:])) {
			if entry := b[132+12*i:]; string(entry[:4]) == tag {
				b[int(binary.BigEndian.Uint32(entry[4:]))+at] = value
			}
		}
		_, err := profileLight(b, 3)
		return err
	}
	require.NoError(t, damaged("none", 0, 0))
	require.Error(t, damaged("rXYZ", 8, 0x7f), "red a hundred times as strong")
	require.Error(t, damaged("gXYZ", 12, 0x80), "green that is negative")
}
