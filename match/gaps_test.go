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

// No mix made in full lies outside of the rim, and no figure of the solid is far from a
// mix made in full. A rim may fall off steeply, so a direction's width of hue is allowed.
func TestRimAgainstDense(t *testing.T) {
	for _, paints := range [][]paint.Paint{
		box(t, "titanium-white", "yellow-ochre", "ivory-black", "cadmium-red-light"),
		box(t, "titanium-white", "ultramarine-blue", "burnt-sienna", "hansa-yellow-light"),
		box(t, "titanium-white", "phthalo-blue-gs", "pyrrole-red", "hansa-yellow-medium"),
	} {
		around, mixes := ringOf(newWeb(paints).rimOf(len(paints)), &rim{}, &ring{}), denseMixes(paints, 10000)
		s := around.solid()
		var sampled solid // in slabs a fifth of a value thick
		outside, far := 0.0, 0.0
		for _, m := range mixes {
			at := (m.munsell.Value - lowestPlane) / planeStep
			plane, half := int(math.Round(at)), (int(math.Round(m.munsell.Hue/5))+halfFamilies-1)%halfFamilies
			if plane < 0 || plane >= rimPlanes || math.Abs(at-float64(plane)) > 0.2 {
				continue
			}
			if math.Abs(math.Remainder(m.munsell.Hue, 5)) < nearHue {
				sampled[plane][half] = max(sampled[plane][half], m.munsell.Chroma)
			}
			if math.Abs(at-float64(plane)) > 0.04 { // a masstone sticks out between planes
				continue
			}
			reached := 0.0
			for turn := -nearHue; turn <= nearHue; turn++ {
				reached = max(reached, chromaAt(&around[plane], m.munsell.Hue+float64(turn)))
			}
			outside = max(outside, m.munsell.Chroma-reached)
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

// What the table says of a hue and value is what recipes reach there, by another search:
// asked for the table's chroma, the mix that a knife can do has it. Where the parts leave
// a hole the nearest mix is of another hue or value, which says nothing.
func TestGapsAgreeWithRecipes(t *testing.T) {
	slow(t)
	paints := paint.StarterBox().Paints
	var aims []colour.Munsell
	for h, reach := range GamutOf(paints, paint.Library()).Hues {
		for v := range reach.Box {
			if value := LowestValue + v; value > LowestValue && value < HighestValue {
				aims = append(aims, colour.Munsell{Hue: middleOf(h), Value: float64(value), Chroma: reach.Box[v]})
			}
		}
	}
	var off []float64
	for i, found := range Recipes(paints, labsOf(aims), Options{Alternatives: -1}) {
		got := found[0].Lab.Munsell()
		if math.Abs(turnTo(got.Hue, aims[i].Hue)) <= nearHue && math.Abs(got.Value-aims[i].Value) <= 0.2 {
			off = append(off, math.Abs(got.Chroma-aims[i].Chroma))
		}
	}
	slices.Sort(off)
	t.Logf("%d of %d near: off by %.2f in the median, %.2f at nine in ten, %.2f at most", len(off), len(aims), off[len(off)/2], off[len(off)*9/10], off[len(off)-1])
	assert.Greater(t, len(off)*10, len(aims)*6)
	assert.Less(t, off[len(off)/2], 0.3)
	assert.Less(t, off[len(off)*9/10], 1.0)
	assert.Less(t, off[len(off)-1], 1.5)
}

// No table promises a chroma that no mix of that hue has: of the blues of the starter
// box ultramarine's own 15.5 lies at 7.1PB, and at 5PB and value 3 recipes stop near 11.
func TestTheTableIsOfTheHuePrinted(t *testing.T) {
	paints := paint.StarterBox().Paints
	reach := GamutOf(paints, paint.Library()).Hues[14]
	require.Equal(t, "5PB", reach.Hue)
	aim := colour.Munsell{Hue: middleOf(14), Value: 3, Chroma: 16}
	got := Recipes(paints, labsOf([]colour.Munsell{aim}), Options{Alternatives: -1})[0][0].Lab.Munsell()
	assert.InDelta(t, got.Chroma, reach.Box[3-LowestValue], 1.0)
}

// By hand: between 4PB/10 and 6PB/10 the chord passes 5PB at 10 cos 3.6°; what lies past
// the last corner has none, but for a step of hue; across an open stretch, none.
func TestChromaBetweenCorners(t *testing.T) {
	var corners [directions]colour.Munsell
	corners[60], corners[62] = colour.Munsell{Hue: 69, Chroma: 10}, colour.Munsell{Hue: 71, Chroma: 10}
	assert.InDelta(t, 10*math.Cos(3.6*math.Pi/180), chromaAt(&corners, 70), exact)
	assert.InDelta(t, 10, chromaAt(&corners, 69), exact)
	assert.InDelta(t, 10, chromaAt(&corners, 71.9), exact)
	assert.Zero(t, chromaAt(&corners, 72.1))
	assert.Zero(t, chromaAt(&corners, 20))
	corners[60], corners[62], corners[64] = colour.Munsell{Hue: 67, Chroma: 10}, colour.Munsell{}, colour.Munsell{Hue: 73, Chroma: 10}
	assert.Zero(t, chromaAt(&corners, 70), "the rim is open there")
}

func labsOf(all []colour.Munsell) (labs []colour.Lab) {
	for _, m := range all {
		labs = append(labs, m.Lab())
	}
	return labs
}

// A box with every blue taken out lacks the blues, and what it is told to get is one;
// a box without yellows likewise. Common practice, no source.
func TestABoxLacksWhatItHasNot(t *testing.T) {
	slow(t)
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
	slow(t)
	paints := box(t, "titanium-white", "yellow-ochre", "cadmium-red-light", "ivory-black", "viridian")
	before := GamutOf(paints, paint.Library())
	require.Len(t, before.Widening, suggested)
	for _, w := range before.Widening {
		after := GamutOf(append(slices.Clone(paints), w.Paint), paint.Library())
		// Of all paints, fewer mixes of three are looked at that have not the white or a black.
		assert.InDelta(t, w.Share, after.Share, 0.006, w.Paint.ID)
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
	slow(t)
	library := paint.Library()
	w := newWeb(library)
	whole, spared := solidsOf(w.rimOf(len(library)), nil)[0], solidsOf(w.rimOfAll(), nil)[0]
	assert.Less(t, spared.volume(), whole.volume())
	assert.Greater(t, spared.volume(), 0.98*whole.volume())
	for i := range whole {
		for h := range whole[i] {
			assert.InDelta(t, whole[i][h], spared[i][h], webTolerance+exact)
		}
	}
}

func TestGamutOfEverythingHasNoGaps(t *testing.T) {
	slow(t)
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
