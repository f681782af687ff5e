package analyze

import (
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// What a card cannot undo, and why it scales cone responses and not the photo's own
// channels: paints, the chart and published chips under lamps, seen by an ideal and by
// a plain camera that is set to some light, rightly or not, held in sRGB's range as a
// photo is, and evened out by a gray card in both ways. The truth is the look in D65,
// summed with the published observer and lamps. The figures are ours, measured here;
// they are where gainsRatio and what Photo.Swatches says of light are from.
func TestLightByConesAndByChannels(t *testing.T) {
	ideal, plain := idealCamera(), plainCamera()
	all := manyReflectances(t)
	pooled := map[*camera]*[2][]float64{ideal: {}, plain: {}}
	for _, c := range []struct {
		camera          *camera
		lamp, set       string  // what the paint is under, and what the camera is set to
		ratio           float64 // of the largest cone gain to the smallest
		channels, cones [2]float64
	}{
		{ideal, "D65", "D65", 1, [2]float64{0, 0.3}, [2]float64{0, 0.3}},
		{ideal, "D50", "D65", 1.4, [2]float64{0.8, 2.2}, [2]float64{0.6, 1.2}},
		{ideal, "D75", "D65", 1.2, [2]float64{0.3, 1}, [2]float64{0.3, 0.5}},
		{ideal, "4000 K", "D65", 1.9, [2]float64{1.9, 4.7}, [2]float64{1, 2.3}},
		{ideal, "3500 K", "D65", 2.5, [2]float64{2.8, 6.1}, [2]float64{1.5, 3.2}},
		{ideal, "3000 K", "D65", 3.6, [2]float64{4.1, 9}, [2]float64{2, 4.6}},
		{ideal, "A", "D65", 4, [2]float64{4.7, 9.9}, [2]float64{2.4, 5.5}},
		{ideal, "B3", "D65", 1.8, [2]float64{3.3, 7}, [2]float64{1.6, 4}},
		{ideal, "F11", "D65", 2, [2]float64{3.4, 7.6}, [2]float64{1.9, 5.4}},

		{plain, "D65", "D65", 1, [2]float64{0.4, 1.4}, [2]float64{0.4, 1.4}},
		{plain, "D50", "D65", 1.4, [2]float64{0.9, 2}, [2]float64{0.6, 1.8}},
		{plain, "D75", "D65", 1.2, [2]float64{0.6, 1.6}, [2]float64{0.5, 1.2}},
		{plain, "4000 K", "D65", 1.9, [2]float64{1.7, 4.4}, [2]float64{1, 2.9}},
		{plain, "3500 K", "D65", 2.5, [2]float64{2.4, 5.9}, [2]float64{1.4, 3.9}},
		{plain, "3000 K", "D65", 3.5, [2]float64{3.4, 8.5}, [2]float64{2, 5.6}},
		{plain, "A", "D65", 3.9, [2]float64{3.7, 9.3}, [2]float64{2.2, 6.4}},
		{plain, "B3", "D65", 2, [2]float64{3.4, 6.8}, [2]float64{1.8, 3.4}},
		{plain, "F11", "D65", 2.1, [2]float64{3.5, 8.3}, [2]float64{2.5, 5.7}},
		{plain, "D75", "D50", 1.6, [2]float64{1.6, 2.8}, [2]float64{1.3, 2.7}},
		{plain, "D65", "4000 K", 1.9, [2]float64{2.8, 4.8}, [2]float64{2.5, 4.7}},
		{plain, "D65", "3500 K", 2.5, [2]float64{4, 6.9}, [2]float64{3.5, 7.2}},
		{plain, "D65", "3000 K", 3.5, [2]float64{6.2, 11}, [2]float64{5.3, 11.5}},
		{plain, "D65", "A", 3.9, [2]float64{7.3, 13.1}, [2]float64{6.1, 13.4}},
		{plain, "B3", "A", 2, [2]float64{5.8, 10.7}, [2]float64{6, 12.3}},
		{plain, "F11", "B3", 1.1, [2]float64{3.6, 8.7}, [2]float64{3.4, 8.6}},
		{plain, "A", "4000 K", 2, [2]float64{3.4, 8}, [2]float64{2.8, 5.6}},
		{plain, "A", "A", 1, [2]float64{4.6, 8.7}, [2]float64{4.6, 8.7}},
	} {
		off, ratio := evenedOut(c.camera, c.lamp, c.set, all)
		t.Logf("%-6s in %-6s: %.2f, %.2f and %.2f", c.lamp, c.set, ratio, quantiles(off[0]), quantiles(off[1]))
		require.InDelta(t, c.ratio, ratio, rounded, "%s in %s", c.lamp, c.set)
		requireQuantiles(t, c.channels, off[0])
		requireQuantiles(t, c.cones, off[1])
		for k := range off {
			pooled[c.camera][k] = append(pooled[c.camera][k], off[k]...)
		}
	}
	for _, want := range []struct {
		camera          *camera
		channels, cones [2]float64
	}{
		{ideal, [2]float64{1.9, 6.6}, [2]float64{1, 3.8}},
		{plain, [2]float64{2.8, 8.1}, [2]float64{2, 7.6}},
	} {
		off := pooled[want.camera]
		requireQuantiles(t, want.channels, off[0])
		requireQuantiles(t, want.cones, off[1])
	}
}

// rounded is half the last digit of the figures, and a little more.
const rounded = 0.06

func requireQuantiles(t *testing.T, want [2]float64, off []float64) {
	t.Helper()
	got := quantiles(off)
	require.InDeltaSlice(t, want[:], got[:], rounded)
}

// An ideal camera and a white card give what an eye used to the lamp sees, as the
// colour package works it out from 380 to 780 nm; 0.43 was measured, of the worst of
// 204 paints under A, where gains of the channels are off by 10 and more.
func TestCardIsTheEyeGettingUsedToTheLamp(t *testing.T) {
	for _, lamp := range colour.Lamps() {
		most := 0.0
		power := standard().lamps[lamp.Key]
		c := idealCamera().exposed(power, 0.5)
		gains := rgb{1, 1, 1}.cones().over(c.sees(power, perfect).cones())
		for _, s := range paintedOut(t) {
			seen := []pixel{{light: c.sees(power, betweenBands(&s))}}
			relight(seen, gains.matrix())
			most = max(most, colour.DeltaE00(seen[0].light.lab(), lamp.Lab(&s)))
		}
		t.Logf("%s: %.3f", lamp.Key, most)
		require.Less(t, most, 0.45, lamp.Key)
	}
}

// evenedOut gives how far off each reflectance under a lamp is, in CIEDE2000, if a card evens it
// out by channels and by cones, and the largest cone gain over the smallest.
func evenedOut(c *camera, lampName, set string, all []*waves) (off [2][]float64, ratio float64) {
	lamp, day := standard().lamps[lampName], standard().lamps["D65"]
	c = c.balanced(standard().lamps[set])
	white := c.sees(lamp, perfect)
	c.balance = times(c.balance, 0.95/max(white[0], white[1], white[2]))
	photo := func(r *waves) (v rgb) {
		for k, light := range c.sees(lamp, r) {
			v[k] = min(1, max(0, light))
		}
		return v
	}
	gray := reflectanceOf(grayCard)
	is, reads := idealCamera().sees(day, gray), photo(gray)
	gains := is.cones().over(reads.cones())
	for _, r := range all {
		want, seen := idealCamera().sees(day, r).lab(), photo(r)
		byCones := rgb(gains.matrix().apply(seen))
		for k := range seen {
			seen[k] *= is[k] / reads[k]
		}
		off[0] = append(off[0], colour.DeltaE00(seen.lab(), want))
		off[1] = append(off[1], colour.DeltaE00(byCones.lab(), want))
	}
	return off, slices.Max(gains[:]) / slices.Min(gains[:])
}

// quantiles sorts v and gives its median and 90th percentile.
func quantiles(v []float64) [2]float64 {
	slices.Sort(v)
	return [2]float64{v[len(v)/2], v[len(v)*9/10]}
}

// manyReflectances are the library's paints, the chart's colours and the chips of [CIE13.3].
func manyReflectances(t *testing.T) (all []*waves) {
	for _, s := range paintedOut(t) {
		all = append(all, betweenBands(&s))
	}
	for _, lab := range checker {
		all = append(all, reflectanceOf(lab))
	}
	text, err := os.ReadFile("colour/testdata/chips.txt")
	require.NoError(t, err)
	for line := range strings.Lines(string(text)) {
		f := strings.Fields(line)
		if f[0] == "#" {
			continue
		}
		var s colour.Spectrum
		for i, thousandths := range f[len(f)-colour.Bands:] {
			v, err := strconv.ParseFloat(thousandths, 64)
			require.NoError(t, err)
			s[i] = v / 1000
		}
		all = append(all, betweenBands(&s))
	}
	return all
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
