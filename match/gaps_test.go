package match

import (
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"strings"
	"testing"

	"tonewright/analyze/colour"
	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// denseMix is a mix made in full, over all 31 bands.
type denseMix struct {
	lab     colour.Lab
	munsell colour.Munsell
}

// denseMixes returns mixes of every three of the paints in ratios drawn at random,
// 1:256 to 256:1: no web, no sheet, no screening.
func denseMixes(paints []paint.Paint, each int) (all []denseMix) {
	random := rand.New(rand.NewPCG(5, 6))
	amount := func() float64 { return math.Exp2(16*random.Float64() - 8) }
	for i := range paints {
		for j := range i {
			for k := range j {
				for range each {
					r := thickOf([]paint.Paint{paints[i], paints[j], paints[k]}, []float64{amount(), amount(), amount()})
					all = append(all, denseMix{r, r.Munsell()})
				}
			}
		}
	}
	return all
}

func thickOf(paints []paint.Paint, parts []float64) colour.Lab {
	k, s := paint.Mix(paints, parts)
	r := paint.Thick(&k, &s, paint.Gloss)
	return r.Lab()
}

// solidOf returns the solid of a box by the web.
func solidOf(paints []paint.Paint) *solid {
	return solidsOf(newWeb(paints).rimOf(len(paints)), nil)[0]
}

// webTolerance is the most chroma by which the solid may miss: a chip of the Munsell
// book is 2 and a gap is told from 4.
const webTolerance = 1.0

// No mix made in full lies outside of the solid, and none of the solid's corners is
// far from a mix made in full.
func TestRimAgainstDense(t *testing.T) {
	for _, paints := range [][]paint.Paint{
		box(t, "titanium-white", "yellow-ochre", "ivory-black", "cadmium-red-light"),
		box(t, "titanium-white", "ultramarine-blue", "burnt-sienna", "hansa-yellow-light"),
		box(t, "titanium-white", "phthalo-blue-gs", "pyrrole-red", "hansa-yellow-medium"),
	} {
		s, mixes := solidOf(paints), denseMixes(paints, 10000)
		var sampled solid // in slabs a fifth of a value thick
		outside, far := 0.0, 0.0
		for _, m := range mixes {
			at := (m.munsell.Value - lowestPlane) / planeStep
			low, half := int(math.Floor(at)), halfFamilyOf(m.munsell.Hue)
			if low < 0 || low >= rimPlanes-1 {
				continue
			}
			// Near a border of two half families the web may have it on the other side.
			reached := 0.0
			for _, hue := range []float64{m.munsell.Hue - 1, m.munsell.Hue, m.munsell.Hue + 1} {
				h := halfFamilyOf(math.Mod(hue+100, 100))
				reached = max(reached, s[low][h], s[low+1][h])
			}
			outside = max(outside, m.munsell.Chroma-reached)
			if plane := int(math.Round(at)); math.Abs(at-float64(plane)) < 0.2 {
				sampled[plane][half] = max(sampled[plane][half], m.munsell.Chroma)
			}
		}
		for i := range s {
			for h := range s[i] {
				if sampled[i][h] > 0 { // else no mix was drawn near
					far = max(far, s[i][h]-sampled[i][h])
				}
			}
		}
		t.Logf("outside by %.2f, beyond the drawn by %.2f, volume %.0f", outside, far, s.volume())
		assert.Less(t, outside, webTolerance)
		assert.Less(t, far, webTolerance)
	}
}

// A box with every blue taken out lacks the blues, and what it is told to get is one;
// a box without yellows likewise. Common practice, no source.
func TestABoxLacksWhatItHasNot(t *testing.T) {
	starter := GamutOf(paint.StarterBox().Paints, paint.Library())
	for _, c := range []struct {
		index string   // of the paints taken out, which is that of those suggested
		hues  []string // that are missing
	}{
		{"PB", []string{"10B", "5PB"}},
		{"PY", []string{"10YR", "5Y", "10Y", "5GY"}},
	} {
		paints := slices.DeleteFunc(paint.StarterBox().Paints, func(p paint.Paint) bool {
			return strings.HasPrefix(p.CI[0], c.index) && !strings.HasPrefix(p.CI[0], "PBk") && !strings.HasPrefix(p.CI[0], "PBr")
		})
		g := GamutOf(paints, paint.Library())
		for _, hue := range c.hues {
			missing := slices.ContainsFunc(g.Gaps, func(s Stretch) bool { return s.Hue == hue && s.To > s.From })
			assert.True(t, missing, "%s is not missed: %v", hue, g.Gaps)
		}
		require.Len(t, g.Widening, suggested)
		for _, w := range g.Widening[:2] {
			assert.True(t, strings.HasPrefix(w.Paint.CI[0], c.index), "%s is suggested", w.Paint.ID)
		}
		assert.Contains(t, c.hues, g.Widening[0].Where[0].Hue)
		assert.Less(t, g.Share, starter.Share)
	}
}

// The red-purples of value 5 and 6 are the gap of a box without quinacridones, which
// are the pigments for them. Common practice, no source.
func TestQuinacridonesFillTheRedPurples(t *testing.T) {
	paints := slices.DeleteFunc(paint.StarterBox().Paints, func(p paint.Paint) bool { return p.ID == "quinacridone-rose" })
	g := GamutOf(paints, paint.Library())
	require.NotEmpty(t, g.Widening)
	assert.Contains(t, g.Widening[0].Paint.ID, "quinacridone")
	assert.Contains(t, []string{"5RP", "10RP"}, g.Gaps[0].Hue)
}

// What is said of a paint is what comes of adding it.
func TestASuggestedPaintWidensByWhatWasSaid(t *testing.T) {
	paints := box(t, "titanium-white", "yellow-ochre", "cadmium-red-light", "ivory-black", "viridian")
	before := GamutOf(paints, paint.Library())
	require.Len(t, before.Widening, suggested)
	for _, w := range before.Widening {
		after := GamutOf(append(slices.Clone(paints), w.Paint), paint.Library())
		// All paints' own volume is found over another web of the same mixes.
		assert.InDelta(t, w.Share, after.Share, 0.003, w.Paint.ID)
		assert.Greater(t, w.Share, before.Share+worthwhile)
		for _, s := range w.Where {
			h := slices.IndexFunc(after.Hues[:], func(r HueReach) bool { return r.Hue == s.Hue })
			assert.InDelta(t, s.Less, before.Hues[h].Box[s.Value-LowestValue], exact)
			assert.InDelta(t, s.More, after.Hues[h].Box[s.Value-LowestValue], exact)
			assert.GreaterOrEqual(t, roundTo(s.More-s.Less, 10), 2.0)
		}
	}
}

// The paints suggested are those that add most: every other one is tried.
func TestNoOtherPaintAddsMore(t *testing.T) {
	paints := box(t, "titanium-white", "yellow-ochre", "cadmium-red-light", "ivory-black")
	widening := GamutOf(paints, paint.Library()).Widening
	said := solidOf(append(slices.Clone(paints), widening[0].Paint)).volume()
	for _, p := range paint.Library() {
		if !slices.ContainsFunc(paints, func(q paint.Paint) bool { return q.ID == p.ID }) {
			assert.LessOrEqual(t, solidOf(append(slices.Clone(paints), p)).volume(), said*1.001, p.ID)
		}
	}
}

// Mixes with one more paint are found as if it had been there from the start.
func TestWidenedAsFromTheStart(t *testing.T) {
	w := newWeb(paint.StarterBox().Paints)
	assert.Equal(t, w.rimOf(12), w.widened(w.rimOf(11), 11, 11))
	assert.NotEqual(t, w.rimOf(12), w.rimOf(11))
}

// Of all paints, three together are only looked at with a white or a black among them.
func TestWhiteAndBlackSpareMostTriples(t *testing.T) {
	library := paint.Library()
	w := newWeb(library)
	whole, spared := solidsOf(w.rimOf(len(library)), nil)[0], solidsOf(w.rimOfAll(), nil)[0]
	assert.Less(t, spared.volume(), whole.volume())
	assert.Greater(t, spared.volume(), 0.988*whole.volume())
	for i := range whole {
		for h := range whole[i] {
			assert.InDelta(t, whole[i][h], spared[i][h], webTolerance+exact)
		}
	}
}

func TestGamutOfEverythingHasNoGaps(t *testing.T) {
	g := GamutOf(paint.Library(), paint.Library())
	assert.InDelta(t, 1, g.Share, exact)
	assert.Empty(t, g.Gaps)
	assert.Empty(t, g.Widening)
	assert.Equal(t, g.AllDarkest, g.Darkest)
}

func TestGamutOfOneAndNone(t *testing.T) {
	one := GamutOf(box(t, "titanium-white"), paint.Library())
	assert.Zero(t, one.Share)
	assert.InDelta(t, one.Darkest, one.Lightest, exact)
	assert.Len(t, one.Gaps, halfFamilies)
	require.NotEmpty(t, one.Widening)
	none := GamutOf(nil, paint.Library())
	assert.Zero(t, none.Share)
	assert.Len(t, none.Gaps, halfFamilies)
	assert.Zero(t, GamutOf(nil, nil).Share)
}

// A paint of the painter's own stands for the library's of the same ID.
func TestOwnTubeIsNotSuggestedAgain(t *testing.T) {
	paints := box(t, "titanium-white", "yellow-ochre", "ivory-black", "quinacridone-magenta")
	paints[3].Basis, paints[3].Name = paint.Own, "My Magenta"
	for _, w := range GamutOf(paints, paint.Library()).Widening {
		assert.NotEqual(t, "quinacridone-magenta", w.Paint.ID)
	}
}

func TestGamutIsTheSameOnAnyNumberOfCores(t *testing.T) {
	paints := paint.StarterBox().Paints[:9]
	before := runtime.GOMAXPROCS(1)
	one := GamutOf(paints, paint.Library())
	runtime.GOMAXPROCS(2)
	two := GamutOf(paints, paint.Library())
	runtime.GOMAXPROCS(before)
	assert.Equal(t, one, two)
}

// A solid of chroma 10 all round is a cylinder: π 10² on each of 15 planes that
// stand half a value apart.
func TestVolumeOfACylinder(t *testing.T) {
	var s solid
	for i := range s {
		for h := range s[i] {
			s[i][h] = 10
		}
	}
	assert.InDelta(t, math.Pi*100*15*0.5, s.volume(), exact)
}

// Chips of the renotation lie in their own half family at their own chroma.
// Source: [Newhall1943] by the inverse in colour; half families as in [ASTMD1535].
func TestChipsLieInTheirHalfFamily(t *testing.T) {
	for half, hue := range []string{"5R", "10R", "5YR", "10YR", "5Y", "10Y", "5GY", "10GY", "5G", "10G", "5BG", "10BG", "5B", "10B", "5PB", "10PB", "5P", "10P", "5RP", "10RP"} {
		m, err := colour.ParseMunsell(hue + " 5/6")
		require.NoError(t, err)
		var r rim
		lab := m.Lab()
		r.hold(6, float32(lab.A), float32(lab.B))
		s := solidsOf(&r, nil)[0]
		assert.InDelta(t, 6, s[6][half], 0.11, hue)
		notation, word := hueOf(half)
		assert.Equal(t, hue, notation)
		assert.NotEmpty(t, word)
	}
}

// By hand: values 3 and 5 to 6 are short, widest at 6.
func TestStretches(t *testing.T) {
	var less, more solid
	for value, chroma := range map[int][2]float64{3: {1, 5}, 4: {2, 5}, 5: {3, 8}, 6: {2, 9}, 7: {4, 6}} {
		less[2*(value-LowestValue)][14], more[2*(value-LowestValue)][14] = chroma[0], chroma[1]
	}
	assert.Equal(t, []Stretch{
		{"5PB", "violet-blue", 5, 6, 6, 2, 9},
		{"5PB", "violet-blue", 3, 3, 3, 1, 5},
	}, stretches(&less, &more, ShortBy))
}

// Directions rise with the hue angle and go once round.
func TestDirectionsRiseWithHue(t *testing.T) {
	before := 0
	for angle := range 3600 {
		sin, cos := math.Sincos(float64(angle) / 10 * math.Pi / 180)
		d := directionOf(float32(30*cos), float32(30*sin))
		assert.GreaterOrEqual(t, d, before, "%d", angle)
		before = d
	}
	assert.Equal(t, directions-1, before)
}

// By hand: a string from L* 0 to 100 whose a* rises from 0 to 100 has a* as L* on
// every plane, and one that goes down is the same string.
func TestLineCrossesPlanes(t *testing.T) {
	var up, down rim
	up.line(point{0, 0, 1}, point{100, 100, 1})
	down.line(point{100, 100, 1}, point{0, 0, 1})
	for i := range up {
		l := colour.LOf(2 + float64(i)/2)
		found := slices.IndexFunc(up[i][:], func(c corner) bool { return c.square > 0 })
		require.GreaterOrEqual(t, found, 0)
		assert.InDelta(t, l, up[i][found].at.a, 1e-3)
		assert.InDelta(t, l, up[i][found].at.l, 1e-3)
		assert.InDelta(t, l, down[i][found].at.a, 1e-3)
	}
}

// By hand: a flat sheet through all planes, a quarter turn wide at chroma 20, has a
// corner in every direction of it.
func TestSheetFillsDirections(t *testing.T) {
	var r rim
	r.sheet(point{0, 20, 0.01}, point{100, 20, 0.01}, point{100, 0.01, 20})
	top := r[rimPlanes-1]
	filled := 0
	for _, c := range top[:directions/4] {
		if c.square > 0 {
			filled++
		}
	}
	assert.Greater(t, filled, directions/4*8/10)
	for _, c := range top[directions/4:] {
		assert.Zero(t, c.square)
	}
}
