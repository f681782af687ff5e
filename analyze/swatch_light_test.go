package analyze

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// What gains alone cannot undo: paints under a glowing body, seen by an ideal camera
// (the CIE observer) and evened out by a gray card, against the same paints in
// daylight. It is where gainsRatio is from. The figures beside are ours, measured here.
func TestGainsUnderColouredLight(t *testing.T) {
	for _, c := range []struct{ kelvin, ratio, median, p90 float64 }{
		{6504, 1, 0, 0}, {5000, 1.6, 0.8, 2.3}, {4000, 2.6, 1.8, 5.4}, {3500, 3.8, 2.7, 8.5}, {2856, 7.8, 5.5, 24},
	} {
		var card colour.Spectrum
		for i := range card {
			card[i] = 1
		}
		gains := rgb{1, 1, 1}.over(under(c.kelvin, &card))
		require.InEpsilon(t, c.ratio, slices.Max(gains[:])/slices.Min(gains[:]), 0.05)
		var off []float64
		for _, r := range paintedOut(t) {
			seen := []pixel{{light: under(c.kelvin, &r)}}
			brighten(seen, gains)
			off = append(off, colour.DeltaE00(seen[0].light.lab(), r.Lab()))
		}
		slices.Sort(off)
		require.InDelta(t, c.median, off[len(off)/2], 0.06)
		require.InDelta(t, c.p90, off[len(off)*9/10], 0.5)
	}
}

// under is a reflectance as an ideal camera for daylight sees it under a glowing body,
// daylight of 6504 K being taken as one too. Source: Planck's law, c2 = 0.014388 m K.
func under(kelvin float64, r *colour.Spectrum) rgb {
	glow := func(i int, kelvin float64) float64 { return 1 / math.Expm1(0.014388/((400+10*float64(i))*1e-9*kelvin)) }
	white := whiteXYZ(d65Chromaticity)
	var xyz [3]float64
	for k, weight := range colour.Weights() {
		for i := range r {
			xyz[k] += white[k] * weight[i] * r[i] * glow(i, kelvin) / glow(i, 6504)
		}
	}
	return xyzToSRGB.apply(xyz)
}

// paintedOut is every paint of the library alone, with as much white and with
// most of it white, thick and matt.
func paintedOut(t *testing.T) (all []colour.Spectrum) {
	library := paint.Library()
	white, err := paint.Find(library, "titanium-white")
	require.NoError(t, err)
	for _, p := range library {
		for _, share := range []float64{0, 0.5, 0.85} {
			k, s := paint.Mix([]paint.Paint{p, white}, []float64{1 - share, share})
			all = append(all, paint.Thick(&k, &s, paint.Matt))
		}
	}
	return all
}
