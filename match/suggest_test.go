package match

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// chipOf returns an opaque paint whose masstone is a Munsell colour.
// Source: [Kubelka1948] K/S = (1 - R)² / 2R.
func chipOf(t *testing.T, notation string) paint.Paint {
	m, err := colour.ParseMunsell(notation)
	require.NoError(t, err)
	p := paint.Paint{ID: notation, Name: notation, CI: []string{"none"}, Facts: paint.Facts{Lightfastness: "I", Drying: "medium"}}
	for b, r := range m.Lab().Reflectance() {
		r = paint.Gloss.In(r)
		p.K[b], p.S[b] = (1-r)*(1-r)/(2*r), 1
	}
	return p
}

// families are Munsell's ten in their order round the circle, of which each lies
// opposite to the fifth after it.
// Source: [ASTMD1535].
var families = []string{"5R", "5YR", "5Y", "5GY", "5G", "5BG", "5B", "5PB", "5P", "5RP"}

func TestFamilyOnMunsellsCircle(t *testing.T) {
	for i := range families {
		at := func(step int) paint.Paint { return chipOf(t, families[(i+step)%10]+" 5/6") }
		for want, steps := range map[string][]int{
			"one paint":        {0},
			"analogous":        {0, 1, 2},
			"near complements": {0, 5},
			"mixed":            {0, 3, 7}, // a triad, as nearly as tenths give one
		} {
			var paints []paint.Paint
			for _, s := range steps {
				paints = append(paints, at(s))
			}
			assert.Equal(t, want, Family(paints), "%v", idsOf(paints))
			withBlack := append(paints, box(t, "titanium-white", "ivory-black")...)
			if len(steps) > 1 {
				assert.Equal(t, want, Family(withBlack), "%v", idsOf(withBlack))
			}
		}
	}
}

// Common practice, no source.
func TestFamilyOfTubes(t *testing.T) {
	for want, palettes := range map[string][][]string{
		"one paint":        {{"burnt-umber"}, {"burnt-umber", "titanium-white"}},
		"no hue":           {{"ivory-black", "mars-black"}, {"ivory-black", "mars-black", "titanium-white"}},
		"one hue":          {{"ivory-black", "viridian"}, {"ivory-black", "mars-black", "yellow-ochre", "titanium-white"}},
		"analogous":        {{"cadmium-yellow-light", "cadmium-red-light"}, {"yellow-ochre", "burnt-sienna", "burnt-umber"}, {"ultramarine-blue", "cerulean-blue", "cobalt-teal"}},
		"near complements": {{"burnt-sienna", "ultramarine-blue"}, {"burnt-umber", "ultramarine-blue"}, {"pyrrole-red", "viridian"}, {"cadmium-orange", "cobalt-blue"}, {"burnt-sienna", "yellow-ochre", "ultramarine-blue"}},
		"mixed":            {{"cadmium-yellow-light", "pyrrole-red", "phthalo-blue-gs"}},
	} {
		for _, ids := range palettes {
			assert.Equal(t, want, Family(box(t, ids...)), "%v", ids)
		}
	}
}

// regionOf returns aims of one Munsell hue and chroma over a range of values.
func regionOf(hue, chroma, from, to float64) (aims []colour.Lab) {
	for i := range 8 {
		aims = append(aims, colour.Munsell{Hue: hue, Value: from + (to-from)*float64(i)/7, Chroma: chroma}.Lab())
	}
	return aims
}

// A box of Munsell's ten families and white: the complement of each is the one across.
func TestSuggestAcrossMunsellsCircle(t *testing.T) {
	owned := box(t, "titanium-white")
	for _, f := range families {
		owned = append(owned, chipOf(t, f+" 4/6"))
	}
	for i, f := range families {
		hue, err := colour.ParseHue(f)
		require.NoError(t, err)
		all := Suggest(owned, Asked{Scheme: Complement, Hue: hue, Hued: true, Aims: regionOf(0, 0, 5, 8)})
		require.NotEmpty(t, all, f)
		assert.Equal(t, []string{families[(i+5)%10] + " 4/6"}, idsOf(all[0].Paints), f)
	}
}

func hueOfWord(t *testing.T, word string) float64 {
	hue, err := colour.ParseHue(word)
	require.NoError(t, err)
	return hue
}

// Common practice, no source: blue is the complement of orange.
func TestComplementOfOrangeIsBlue(t *testing.T) {
	blues := []string{"ultramarine-blue", "phthalo-blue-gs", "phthalo-blue-rs", "cobalt-blue", "cerulean-blue", "prussian-blue", "indanthrone-blue", "cobalt-teal"}
	for _, owned := range [][]paint.Paint{paint.StarterBox().Paints, own(40)} {
		all := Suggest(owned, Asked{Scheme: Complement, Hue: hueOfWord(t, "orange"), Hued: true, Aims: regionOf(15, 5, 2, 7)})
		require.NotEmpty(t, all)
		for _, s := range all {
			assert.Contains(t, blues, s.Paints[len(s.Paints)-1].ID, "the paint that its lights are made of")
			assert.Equal(t, "titanium-white", s.White.ID)
		}
	}
}

// A box without a blue has none to propose, and says so.
func TestNothingFits(t *testing.T) {
	owned := box(t, "titanium-white", "yellow-ochre", "burnt-sienna", "ivory-black")
	ask := Asked{Hued: true, Hue: hueOfWord(t, "blue"), Aims: regionOf(65, 4, 3, 7)}
	assert.Empty(t, Suggest(owned, ask))
	assert.Equal(t, "No palette of the box stays blue at the region's values; a tube of that hue would make one.", WhyNone(owned, ask))

	gray := Asked{Scheme: Complement, Aims: ask.Aims}
	assert.Empty(t, Suggest(owned, gray))
	assert.Contains(t, WhyNone(owned, gray), "gray has no complement")

	bright := box(t, "titanium-white", "pyrrole-red")
	quiet := Asked{Scheme: Quiet, Aims: ask.Aims}
	assert.Empty(t, Suggest(bright, quiet))
	assert.Contains(t, WhyNone(bright, quiet), "chroma 4")

	quietBlue := quiet
	quietBlue.Hue, quietBlue.Hued = 70, true
	assert.Contains(t, WhyNone(bright, quietBlue), "is quiet and stays blue")
	assert.Contains(t, WhyNone(bright, Asked{Scheme: Analogous, Aims: ask.Aims}), "quarter of the hue circle")
	assert.Contains(t, WhyNone(box(t, "titanium-white"), quiet), "no paint but white")
	assert.Empty(t, Suggest(nil, quiet))
	assert.Empty(t, Suggest(owned, Asked{Aims: ask.Aims}), "nothing is wished for")
	assert.Empty(t, Suggest(owned, Asked{Scheme: Quiet}), "the region has no colours")
}

// Common practice, no source: a quiet passage is not painted with cadmiums, and earths
// and blacks are what it is painted with.
func TestQuietIsQuiet(t *testing.T) {
	for _, owned := range [][]paint.Paint{paint.StarterBox().Paints, own(24), own(40)} {
		for hue := 5.0; hue < 100; hue += 20 {
			ask := Asked{Scheme: Quiet, Aims: regionOf(hue, 6, 1.5, 8), Around: regionOf(hue, 2, 3, 6)}
			all := Suggest(owned, ask)
			require.NotEmpty(t, all)
			for _, s := range all {
				assert.LessOrEqual(t, s.Chroma, quietMost+0.05, "%v", idsOf(s.Paints))
				for _, p := range s.Paints {
					assert.NotContains(t, p.Facts.Hazards, "cadmium", "%v", idsOf(s.Paints))
				}
			}
		}
	}
}

// What is quiet beside warm surroundings is warm, and beside gray ones gray.
func TestQuietLeansToItsSurroundings(t *testing.T) {
	owned := box(t, "titanium-white", "burnt-umber", "ivory-black")
	for paint, chroma := range map[string]float64{"burnt-umber": 6, "ivory-black": 0} {
		all := Suggest(owned, Asked{Scheme: Quiet, Aims: regionOf(15, 4, 2, 7), Around: regionOf(15, chroma, 3, 6)})
		require.NotEmpty(t, all)
		assert.Equal(t, []string{paint}, idsOf(all[0].Paints))
	}
}

// Common practice, no source: cadmium yellow and red stay clean, and so are analogous;
// burnt sienna and ultramarine neutralise each other, and red and green make mud.
func TestWhatPalettesDull(t *testing.T) {
	tubes := box(t, "cadmium-yellow-medium", "cadmium-red-light", "burnt-sienna", "ultramarine-blue", "pyrrole-red", "viridian")
	table := newTable(tubes, Asked{Scheme: Quiet, Aims: regionOf(0, 0, 2, 8)})
	dulls := func(a, b string) float64 {
		set := []int{indexOf(table.paints, a), indexOf(table.paints, b)}
		slices.Sort(set)
		return table.dullsOf(set)
	}
	assert.Less(t, dulls("cadmium-yellow-medium", "cadmium-red-light"), float64(dull))
	assert.Greater(t, dulls("burnt-sienna", "ultramarine-blue"), float64(dull))
	assert.Greater(t, dulls("pyrrole-red", "viridian"), float64(2*dull))
	clean := Suggest(slices.Concat(tubes[:2], tubes[3:]), Asked{Scheme: Analogous, Aims: regionOf(15, 10, 4, 7)})
	require.Len(t, clean, 1)
	assert.Equal(t, []string{"cadmium-red-light", "cadmium-yellow-medium"}, idsOf(clean[0].Paints))
	assert.Contains(t, clean[0].Why, "stays clean however mixed")
}

// A monochrome of a light earth lacks darks, one of a dark earth does not; a tube that
// other regions use is preferred among like ones, and said.
func TestMonochrome(t *testing.T) {
	owned := box(t, "titanium-white", "yellow-ochre", "burnt-umber", "raw-umber")
	ask := Asked{Scheme: Monochrome, Aims: regionOf(18, 2.5, 1.5, 9), InUse: map[string][]string{"raw-umber": {"C", "A"}, "yellow-ochre": {"B"}}}
	all := Suggest(owned, ask)
	require.GreaterOrEqual(t, len(all), 2)
	assert.Equal(t, []string{"raw-umber"}, idsOf(all[0].Paints))
	assert.Equal(t, []string{"A", "C"}, all[0].TieIns)
	assert.Equal(t, "Raw Umber and Titanium White: values 1.2 to 9.7 cover all of it; chroma up to 2; hue orange; one paint, nothing to muddy; already used in A and C. Dries fast.", all[0].Why)
	for _, s := range all {
		if s.Paints[0].ID == "yellow-ochre" {
			assert.Less(t, s.Covered, 0.6)
			assert.Contains(t, s.Why, "values 5.5 to 9.7 cover 50% of it")
		}
	}
}

// Neighbours of another hue than the region's are not proposed where no hue is wished
// for: neighbours lie within a quarter of the circle, common practice, no source. A
// gray region has no hue, and a wish for one is followed.
func TestAnalogousKeepsTheRegionsHue(t *testing.T) {
	owned := paint.StarterBox().Paints
	apart := func(s Suggestion, aims []colour.Lab, hue float64) float64 {
		l := LadderOf(s.Paints, s.White, paint.Gloss)
		var middle colour.Lab
		for _, aim := range aims {
			c, _ := l.At(aim.L)
			n := float64(len(aims))
			middle = colour.Lab{L: middle.L + c.L/n, A: middle.A + c.A/n, B: middle.B + c.B/n}
		}
		return colour.HuesApart(middle.Munsell().Hue, hue)
	}
	for _, hue := range []float64{15, 25, 35, 45, 50, 55} {
		aims := regionOf(hue, 4, 1.5, 5)
		all := Suggest(owned, Asked{Scheme: Analogous, Aims: aims})
		assert.NotEmpty(t, all, "hue %v", hue)
		for _, s := range all {
			assert.LessOrEqual(t, apart(s, aims, hue), 26.0, "hue %v: %v", hue, idsOf(s.Paints))
		}
	}
	warm := box(t, "titanium-white", "ivory-black", "yellow-ochre", "cadmium-yellow-lemon", "burnt-umber")
	leaves := Asked{Scheme: Analogous, Aims: regionOf(52, 4, 1.5, 5)}
	assert.Empty(t, Suggest(warm, leaves))
	assert.Contains(t, WhyNone(warm, leaves), "near to the region's own hue")
	assert.NotEmpty(t, Suggest(warm, Asked{Scheme: Analogous, Aims: regionOf(52, 0.5, 1.5, 5)}), "gray leaves")
	leaves.Hue, leaves.Hued = 22, true
	assert.NotEmpty(t, Suggest(warm, leaves), "yellow is wished for")
}

// Black gives leaves of value 2 no hue, but the paints beside it have one.
func TestAnalogousDarksHaveTheHueOfTheirPaints(t *testing.T) {
	owned := box(t, "titanium-white", "ivory-black", "yellow-ochre", "cadmium-yellow-lemon")
	aims := regionOf(52, 4, 1, 1.4)
	assert.Empty(t, Suggest(owned, Asked{Scheme: Analogous, Aims: aims}))
	assert.NotEmpty(t, Suggest(owned, Asked{Scheme: Analogous, Aims: regionOf(25, 4, 1, 1.4)}))
}

// A quiet region's complement, neighbours and hue are of less chroma than another's;
// what is strong all the same, for want of a quieter tube, is said to be.
func TestQuietRolePrefersLowChroma(t *testing.T) {
	owned := own(40)
	for _, ask := range []Asked{
		{Scheme: Complement, Hue: hueOfWord(t, "orange"), Hued: true, Aims: regionOf(70, 3, 2, 7)},
		{Scheme: Complement, Hue: hueOfWord(t, "blue"), Hued: true, Aims: regionOf(20, 3, 2, 7)},
		{Scheme: Analogous, Aims: regionOf(15, 8, 2, 7)},
		{Hue: 45, Hued: true, Aims: regionOf(45, 5, 2, 7)},
	} {
		loud := Suggest(owned, ask)
		ask.Quiet = true
		quiet := Suggest(owned, ask)
		require.NotEmpty(t, loud)
		require.NotEmpty(t, quiet)
		assert.Less(t, meanChroma(quiet), meanChroma(loud), "%v", ask.Scheme)
		for _, s := range quiet {
			assert.Equal(t, s.Chroma > quietMost+0.05, strings.Contains(s.Why, "strong for a quiet region"), s.Why)
		}
		for _, s := range loud {
			assert.NotContains(t, s.Why, "quiet")
		}
	}
	blue := Suggest(owned, Asked{Scheme: Complement, Hue: hueOfWord(t, "orange"), Hued: true, Aims: regionOf(70, 3, 2, 7), Quiet: true})
	assert.Equal(t, []string{"prussian-blue"}, idsOf(blue[0].Paints), "of the library's blues the one whose tints are dullest")
}

func meanChroma(all []Suggestion) (mean float64) {
	for _, s := range all {
		mean += s.Chroma / float64(len(all))
	}
	return mean
}

// Darks of black have no hue: under a wished hue they count against a palette.
func TestBareDarksCountAgainstAWishedHue(t *testing.T) {
	owned := box(t, "titanium-white", "ivory-black", "ultramarine-blue", "viridian")
	leaves := Asked{Hue: hueOfWord(t, "blue-green"), Hued: true, Aims: []colour.Lab{{L: colour.LOf(1.2)}, {L: colour.LOf(3)}, {L: colour.LOf(5)}}, Shares: []float64{1, 1.5, 1.5}}
	all := Suggest(owned, leaves)
	require.NotEmpty(t, all)
	assert.Equal(t, []string{"ultramarine-blue", "viridian"}, idsOf(all[0].Paints), "a quarter of the leaves would be black")
	table := newTable(owned, Asked{Hue: 50, Hued: true, Aims: []colour.Lab{{L: 20}}})
	points := func(chroma float64) float64 {
		g := given{munsell: colour.Munsell{Hue: 50, Value: 2, Chroma: chroma}}
		table.rate(&g, table.wanted[0])
		return g.points
	}
	assert.InDelta(t, -pointsBare, points(0), exact)
	assert.InDelta(t, pointsChroma*hueless, points(hueless), exact)
	for chroma := 0.1; chroma < 4; chroma += 0.1 {
		assert.Greater(t, points(chroma), points(chroma-0.1), "chroma %v", chroma)
	}
}

// A region that is mostly one dark tone, near the end of what two palettes reach: an
// end moved by less than is seen does not turn all of it into nothing.
func TestCoverageHasNoCliff(t *testing.T) {
	owned := box(t, "titanium-white", "ivory-black")
	lo, _ := LadderOf(owned[1:], &owned[0], paint.Gloss).Reach()
	end := colour.ValueOf(lo)
	covered := func(off float64) float64 {
		all := Suggest(owned, Asked{Scheme: Monochrome, Aims: []colour.Lab{{L: colour.LOf(end - off)}, {L: 60}}, Shares: []float64{9, 1}})
		require.Len(t, all, 1)
		return all[0].Covered
	}
	for off, want := range map[float64]float64{0: 1, 0.25: 1, 0.375: 0.55, 0.5: 0.1, 0.7: 0.1} {
		assert.InDelta(t, want, covered(off), 1e-6, "%v under the end", off)
	}
	for off := 0.0; off < 0.7; off += 0.02 {
		assert.InDelta(t, covered(off), covered(off+0.02), 0.08, "%v under the end", off)
	}
}

// Each wish, over boxes and regions of many kinds: only owned paints, whites aside, no
// palette twice, none that has all of another before it; figures as the ladder has
// them; and the order of the box changes nothing.
func TestSuggestionsAreSound(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 11))
	for i := range 60 {
		owned := randomBox(random)
		ask := randomAsk(random)
		t.Run(fmt.Sprint(i, ask.Scheme), func(t *testing.T) {
			all := Suggest(owned, ask)
			assert.LessOrEqual(t, len(all), mostSuggestions)
			for n, s := range all {
				assertSound(t, owned, ask, s)
				for _, before := range all[:n] {
					assert.False(t, containsAll(placesOf(owned, s.Paints), placesOf(owned, before.Paints)), "%v and %v", idsOf(s.Paints), idsOf(before.Paints))
				}
			}
			shuffled := slices.Clone(owned)
			random.Shuffle(len(shuffled), func(i, j int) { shuffled[i], shuffled[j] = shuffled[j], shuffled[i] })
			again := Suggest(shuffled, ask)
			require.Len(t, again, len(all))
			for n := range all {
				assert.Equal(t, all[n].Why, again[n].Why)
			}
			assert.Equal(t, len(all) == 0, len(all) == 0 && WhyNone(owned, ask) != "", "nothing fits, and no reason is given")
		})
	}
}

func assertSound(t *testing.T, owned []paint.Paint, ask Asked, s Suggestion) {
	require.NotEmpty(t, s.Paints)
	require.LessOrEqual(t, len(s.Paints), 3)
	for _, p := range s.Paints {
		assert.GreaterOrEqual(t, indexOf(owned, p.ID), 0, p.ID)
		assert.False(t, p.White())
	}
	l := LadderOf(s.Paints, s.White, ask.Finish)
	lo, hi := l.Reach()
	assert.InDelta(t, colour.ValueOf(lo), s.ValueMin, exact)
	assert.InDelta(t, colour.ValueOf(hi), s.ValueMax, exact)
	covered, chroma := 0.0, 0.0
	for _, aim := range ask.Aims {
		value := colour.ValueOf(aim.L)
		if off := max(0, s.ValueMin-value, value-s.ValueMax); off < 0.5 {
			covered += min(1, 2-4*off) / float64(len(ask.Aims))
			c, _ := l.At(aim.L)
			chroma = max(chroma, c.Munsell().Chroma)
		}
	}
	assert.InDelta(t, covered, s.Covered, exact)
	assert.InDelta(t, chroma, s.Chroma, exact)
	assert.GreaterOrEqual(t, s.Dulls, 0.0)
	if ask.Scheme == Analogous {
		assert.Less(t, s.Dulls, float64(dull))
		assert.Equal(t, "analogous", Family(s.Paints))
	}
	if len(s.Paints) == 1 {
		assert.Zero(t, s.Dulls)
	}
}

func randomBox(random *rand.Rand) (owned []paint.Paint) {
	library := paint.Library()
	for _, i := range random.Perm(len(library))[:3+random.IntN(12)] {
		owned = append(owned, library[i])
	}
	return owned
}

func randomAsk(random *rand.Rand) Asked {
	schemes := []Scheme{"", Monochrome, Analogous, Complement, Quiet}
	dark := 1 + 6*random.Float64()
	ask := Asked{
		Scheme: schemes[random.IntN(len(schemes))],
		Hue:    math.Floor(100 * random.Float64()),
		Aims:   regionOf(100*random.Float64(), 6*random.Float64(), dark, dark+3*random.Float64()),
		Around: regionOf(100*random.Float64(), 4, 2, 8),
		Finish: paint.Satin,
	}
	ask.Hued = ask.Scheme == "" || ask.Scheme == Complement || random.IntN(3) == 0
	return ask
}

func placesOf(owned, paints []paint.Paint) (places []int) {
	for _, p := range paints {
		places = append(places, indexOf(owned, p.ID))
	}
	return places
}

// A shared tube that fades, and a very slow drier beside a fast one, are said.
func TestWhyWarns(t *testing.T) {
	s := Suggestion{Paints: box(t, "burnt-umber", "ivory-black", "alizarin-crimson")}
	assert.Equal(t, "Drying: Burnt Umber fast, Ivory Black very slow, Alizarin Crimson slow. "+
		"Do not work Burnt Umber and Ivory Black wet into wet: the one dries fast, the other very slow. "+
		"Alizarin Crimson fades: lightfastness III.", s.drying())
}
