package match

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// palettes returns seeded palettes of one to four library paints, every other one
// with white.
func palettes(count int) (all [][]paint.Paint, whites []*paint.Paint) {
	random := rand.New(rand.NewPCG(3, 5))
	library := paint.Library()
	for i := range count {
		var paints []paint.Paint
		for _, p := range random.Perm(len(library))[:1+random.IntN(4)] {
			paints = append(paints, library[p])
		}
		white := &library[0]
		if i%2 == 0 {
			white = nil
		}
		all, whites = append(all, paints), append(whites, white)
	}
	return all, whites
}

// A ladder has one mix for a value, lighter for a lighter one, and its colour does not
// leap. 6 CIEDE2000 over a tenth of L* is the steepest here, where a string turns and
// lightness stands still while colour does not; taking the nearest mix of either side
// of a dip instead of bridging it leaps by 20 and more.
func TestLadderRises(t *testing.T) {
	all, whites := palettes(200)
	for i, paints := range all {
		l := LadderOf(paints, whites[i], paint.Gloss)
		lo, hi := l.Reach()
		last, within := l.At(lo)
		assert.True(t, within)
		for at := lo + 0.1; at < hi; at += 0.1 {
			c, within := l.At(at)
			require.True(t, within)
			require.InDelta(t, at, c.L, exact)
			if at > 9 { // under value 1, where strings between darks turn on the spot
				require.Less(t, colour.DeltaE00(last, c), 6.0, "%v at %.1f", idsOf(paints), at)
			}
			last = c
		}
	}
}

// Every colour of a ladder can be mixed from its paints: the rungs are, and between
// two of them there is hardly anything.
func TestLadderIsMixed(t *testing.T) {
	all, whites := palettes(60)
	for i, paints := range all {
		l := LadderOf(paints, whites[i], paint.Satin)
		for r, rung := range l.rungs {
			assert.InDelta(t, 1, sum(rung.shares), exact)
			assert.Equal(t, labOf(l.paints, rung.shares, paint.Satin), rung.lab)
			if r > 0 && rung.lab.L > 30 { // L* of matter; satin blacks lie at 20
				assert.Less(t, colour.DeltaE00(l.rungs[r-1].lab, rung.lab), 2.0, "%v at %.1f", idsOf(paints), rung.lab.L)
			}
		}
	}
}

// The ladder goes as far as its strings do: each is sampled here anew, evenly by
// shares. A bridge may go darker by a little.
func TestLadderReachesAsFarAsItsStrings(t *testing.T) {
	all, whites := palettes(60)
	for i, paints := range all {
		if whites[i] != nil {
			paints = append(paints, *whites[i])
		}
		row := byValue(paints)
		lo, hi := LadderOf(paints, nil, paint.Matt).Reach()
		least, most := math.Inf(1), math.Inf(-1)
		for p := range row {
			next := min(p+1, len(row)-1)
			for s := range 2001 {
				at := labOf([]paint.Paint{row[p], row[next]}, []float64{1 - float64(s)/2000, float64(s) / 2000}, paint.Matt).L
				least, most = min(least, at), max(most, at)
			}
		}
		assert.InDelta(t, least, lo, 0.1, "%v", idsOf(paints))
		assert.InDelta(t, most, hi, 0.1, "%v", idsOf(paints))
	}
}

func TestLadderTakesPaintsInAnyOrder(t *testing.T) {
	paints := paint.StarterBox().Paints[1:5]
	want := LadderOf(paints, nil, paint.Gloss)
	slices.Reverse(paints)
	assert.Equal(t, want.rungs, LadderOf(paints, nil, paint.Gloss).rungs)
}

// Beyond its ends a ladder has the end's colour and says so.
func TestLadderBeyondItsEnds(t *testing.T) {
	ochre := box(t, "yellow-ochre")[0]
	l := LadderOf([]paint.Paint{ochre}, nil, paint.Gloss)
	lo, hi := l.Reach()
	assert.Equal(t, lo, hi, "one paint without white has one value")
	c, within := l.At(10)
	assert.False(t, within)
	assert.InDelta(t, 0, colour.DeltaE00(ochre.Masstone(), c), exact)
	_, within = l.At(lo + 1)
	assert.True(t, within, "1 of L* is under a quarter of a value")

	none := LadderOf(nil, nil, paint.Gloss)
	_, within = none.At(50)
	assert.False(t, within)
	assert.Empty(t, none.Lacks(paint.Library(), 0, 100))
}

// Common practice, no source: red and green make a black, darker than either; and
// white is not needed for it.
func TestComplementsReachDarker(t *testing.T) {
	for _, pair := range [][2]string{{"pyrrole-red", "viridian"}, {"cadmium-red-medium", "chromium-oxide-green"}, {"cadmium-orange", "cobalt-blue"}} {
		a, b := box(t, pair[0])[0], box(t, pair[1])[0]
		lo, _ := LadderOf([]paint.Paint{a, b}, nil, paint.Gloss).Reach()
		assert.Less(t, lo, min(a.Masstone().L, b.Masstone().L)-1, "%v", pair)
	}
}

// Common practice, no source: yellow ochre and white have no darks, burnt umber and
// white have; an earth deepens an earth without turning it, black turns yellow green.
func TestLacks(t *testing.T) {
	starter := paint.StarterBox().Paints
	white := box(t, "titanium-white")[0]
	dark, light := colour.LOf(1.4), colour.LOf(9.4)
	for _, c := range []struct {
		paint string
		white *paint.Paint
		want  []string
	}{
		{"burnt-umber", &white, nil},
		{"yellow-ochre", &white, []string{"Values 1.4 to 5.5 are too dark for it; Burnt Umber would reach them"}},
		{"burnt-sienna", &white, []string{"Values 1.4 to 2.5 are too dark for it; Burnt Umber would reach them"}},
		{"burnt-umber", nil, []string{"Values 1.4 to 9.4 are too light for it; Titanium White would reach them."}},
		{"yellow-ochre", nil, []string{"too dark for it; Burnt Umber", "Values 5.5 to 9.4 are too light for it; Titanium White would reach them."}},
	} {
		text := LadderOf([]paint.Paint{box(t, c.paint)[0]}, c.white, paint.Gloss).Lacks(starter, dark, light)
		if len(c.want) == 0 {
			assert.Empty(t, text)
		}
		for _, want := range c.want {
			assert.Contains(t, text, want)
		}
	}
}

// A box that does not reach so far says how far it does.
func TestLacksWhatTheBoxLacks(t *testing.T) {
	ochre, sienna, lemon := box(t, "yellow-ochre")[0], box(t, "burnt-sienna")[0], box(t, "cadmium-yellow-lemon")[0]
	l := LadderOf([]paint.Paint{ochre}, nil, paint.Gloss)
	assert.Equal(t, "Values 0.5 to 5.5 are too dark for it; Burnt Sienna goes darkest with it, down to 2.5. "+
		"Values 5.5 to 9.6 are too light for it; Cadmium Yellow Lemon, the lightest in the box, goes up to 8.8.",
		l.Lacks([]paint.Paint{ochre, sienna, lemon}, colour.LOf(0.5), colour.LOf(9.6)))
	assert.Equal(t, "Values 5.0 to 5.5 are too dark for it; nothing in the box goes darker with it.", l.Lacks([]paint.Paint{ochre, lemon}, colour.LOf(5), colour.LOf(5.5)))
}

// What Recipes finds for a ladder's colours, from its paints alone: an amount that a
// knife can do is near, since the box is small, see fewPaints. Where the string turns
// fast, it is not.
func TestRecipesFollowTheLadder(t *testing.T) {
	starter := paint.StarterBox().Paints
	var misses, values []float64
	worst := ""
	for i := range starter[1:] {
		for j := range starter[1 : i+1] {
			paints := []paint.Paint{starter[i+1], starter[j+1]}
			l := LadderOf(paints, &starter[0], paint.Gloss)
			lo, hi := l.Reach()
			var aims []colour.Lab
			for k := range 25 {
				c, _ := l.At(lo + (hi-lo)*float64(k)/24)
				aims = append(aims, c)
			}
			for k, r := range Recipes(append(paints, starter[0]), aims, Options{}) {
				if len(misses) == 0 || r[0].DeltaE > slices.Max(misses) {
					worst = paints[0].Name + " and " + paints[1].Name + " at " + aims[k].Munsell().String()
				}
				misses, values = append(misses, r[0].DeltaE), append(values, math.Abs(r[0].ValueShift))
			}
		}
	}
	slices.Sort(misses)
	slices.Sort(values)
	at := func(v []float64, percent int) float64 { return v[(len(v)-1)*percent/100] }
	t.Logf("CIEDE2000: median %.2f, 90 in 100 within %.2f, worst %.1f (%s); value: 90 in 100 within %.2f, worst %.2f",
		at(misses, 50), at(misses, 90), at(misses, 100), worst, at(values, 90), at(values, 100))
	assert.Less(t, at(misses, 50), 0.5)
	assert.Less(t, at(misses, 90), 1.5)
	assert.Less(t, at(values, 90), reached*0.6)
}

func idsOf(paints []paint.Paint) (all []string) {
	for _, p := range paints {
		all = append(all, p.ID)
	}
	return all
}
