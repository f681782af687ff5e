package analyze

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

const exact = 1e-9

// blown returns a parting of digits, each blown up to size × size pixels, and its size.
func blown(size int, rows ...string) (parting Parting, width, height int) {
	width, height = size*len(rows[0]), size*len(rows)
	regions := 0
	for y := range height {
		for x := range width {
			r := rows[y/size][x/size] - '0'
			parting.Of = append(parting.Of, r)
			regions = max(regions, int(r)+1)
		}
	}
	parting.Regions = make([]Region, regions)
	count(parting.Regions, parting.Of)
	return parting, width, height
}

// plain paints every region in one tone.
func plain(colours ...colour.Lab) [][]Tone {
	tones := make([][]Tone, len(colours))
	for r, c := range colours {
		tones[r] = []Tone{{Lab: c, Share: 1}}
	}
	return tones
}

func standingsOf(tones [][]Tone, size int, rows ...string) []Standing {
	return Composed(blown(size, rows...)).Standings(tones)
}

// Three regions worked by hand. A is L* 50, B 80, C has b* 40 at L* 50, so that A and B
// are 30 apart, all value; A and C 40, all chroma; B and C 50, of which 30²/50 = 18 is
// value and 32 chroma.
//
//	Overall  A (0.5·0.3·30 + 0.5·0.2·40) / (0.5 + 0.15 + 0.1)  = 8.5 / 0.75
//	         B (0.5·0.5·30 + 1·0.2·50)   / (0.3 + 0.25 + 0.2)  = 17.5 / 0.75
//	         C (0.5·0.5·40 + 1·0.3·50)   / (0.2 + 0.25 + 0.3)  = 25 / 0.75
//	Around   A (30 + 40) / 2 = 35, B 30, C 0.4·40 + 0.6·50 = 46
//	Score²   A 35·11.333, B 30·23.333 = 700, C 46·33.333·0.25 = 383.33
//	Value    A (15/35 + 4.5/8.5) / 2, C (0.6·18/46 + 0.3·18/25) / 2
func TestThreeRegionsByHand(t *testing.T) {
	c := &Composition{
		shares: []float64{0.5, 0.3, 0.2},
		near:   [][]float64{{1, 0.5, 0.5}, {0.5, 1, 1}, {0.5, 1, 1}},
		ring:   [][]float64{{0, 0.5, 0.5}, {1, 0, 0}, {0.4, 0.6, 0}},
		inside: []float64{1, 1, 0.25},
	}
	got := c.Standings(plain(colour.Lab{L: 50}, colour.Lab{L: 80}, colour.Lab{L: 50, B: 40}))
	for r, want := range []Standing{
		{Around: 35, Overall: 8.5 / 0.75, Score: math.Sqrt(35 * 8.5 / 0.75 / 700), Value: (15.0/35 + 4.5/8.5) / 2, Rank: 2},
		{Around: 30, Overall: 17.5 / 0.75, Score: 1, Value: (1 + (7.5+3.6)/17.5) / 2, Rank: 1},
		{Around: 46, Overall: 25 / 0.75, Score: math.Sqrt(46 * 25 / 0.75 * 0.25 / 700), Value: (0.6*18/46 + 0.3*18/25) / 2, Rank: 3},
	} {
		assert.InDelta(t, want.Around, got[r].Around, exact, "%d", r)
		assert.InDelta(t, want.Overall, got[r].Overall, exact, "%d", r)
		assert.InDelta(t, want.Score, got[r].Score, exact, "%d", r)
		assert.InDelta(t, want.Value, got[r].Value, exact, "%d", r)
		assert.InDelta(t, 1-want.Value, got[r].Chroma, exact, "%d", r)
		assert.InDelta(t, 0, got[r].Hue, exact, "%d", r)
		assert.Equal(t, want.Rank, got[r].Rank, "%d", r)
	}
}

// Two halves, by the formula of [Cheng2015]: the saliency of one is exp(-D²/0.4) of the
// distance between their middles, 0.5 of the picture's width, times the other's share
// times their difference, here 40, all hue; over the weights that is 13.946.
func TestTwoHalvesByFormula(t *testing.T) {
	got := standingsOf(plain(colour.Lab{L: 60, A: 20, B: 10}, colour.Lab{L: 60, A: -20, B: 10}), 10, "01", "01")
	saliency := math.Exp(-0.25/0.4) * 0.5 * 40
	assert.InDelta(t, 10.7052, saliency, 5e-5)
	for r := range got {
		assert.InDelta(t, saliency/(0.5+0.5*math.Exp(-0.25/0.4)), got[r].Overall, exact)
		assert.InDelta(t, 40, got[r].Around, exact)
		assert.InDelta(t, 1, got[r].Hue, exact)
	}
	assert.Equal(t, []int{1, 2}, []int{got[0].Rank, got[1].Rank}, "no difference: the first goes first")
}

// Tones are told from tones and not mean from mean: a region half black, half white
// against gray is 50 from it overall, though their means agree and nothing is left of it
// with half-closed eyes.
func TestTonesOfTwoRegions(t *testing.T) {
	tones := plain(colour.Lab{L: 50}, colour.Lab{})
	tones[1] = []Tone{{colour.Lab{L: 0}, 3}, {colour.Lab{L: 100}, 3}, {colour.Lab{L: 7}, 0}}
	got := standingsOf(tones, 10, "01")
	weight := math.Exp(-0.25 / 0.4)
	assert.InDelta(t, 50*weight/(1+weight), got[1].Overall, exact)
	assert.Zero(t, got[1].Around)
	assert.Zero(t, got[1].Score)
	assert.InDelta(t, 1, got[1].Value, exact)
}

// Painted grain by grain and measured pixel by pixel, without regions' sums, reduced
// sizes or chamfer: the same differences. Around may differ by what a chamfer's distance
// is off, 6 % of a ring's width.
func TestStandingsAgainstEveryPixel(t *testing.T) {
	parting, w, h := blown(6, "00000000", "01100220", "01103320", "00443300", "04444000", "00000005")
	tones := make([][]Tone, 6)
	g := grain{state: 5}
	for r := range tones {
		for range 2 + r%3 {
			tones[r] = append(tones[r], Tone{g.on(colour.Lab{L: 50}, 40), 1})
		}
	}
	got := Composed(parting, w, h).Standings(tones)
	for r := range tones {
		around, overall := everyPixel(parting, w, h, tones, r)
		assert.InDelta(t, overall, got[r].Overall, 1e-6, "%d", r)
		assert.InDelta(t, around, got[r].Around, 0.06*around, "%d", r)
		assert.InDelta(t, 1, got[r].Value+got[r].Chroma+got[r].Hue, exact)
	}
}

func everyPixel(parting Parting, w, h int, tones [][]Tone, r int) (around, overall float64) {
	distance := func(a, b colour.Lab) float64 { return math.Hypot(math.Hypot(a.L-b.L, a.A-b.A), a.B-b.B) }
	mean := func(r int) (m colour.Lab) {
		n := float64(len(tones[r]))
		for _, s := range tones[r] {
			m.L, m.A, m.B = m.L+s.Lab.L/n, m.A+s.Lab.A/n, m.B+s.Lab.B/n
		}
		return m
	}
	middle := func(r int) (x, y float64) {
		for i, at := range parting.Of {
			if int(at) == r {
				x += (float64(i%w) + 0.5) / float64(w*parting.Regions[r].Pixels)
				y += (float64(i/w) + 0.5) / float64(h*parting.Regions[r].Pixels)
			}
		}
		return x, y
	}
	x, y := middle(r)
	reach := max(2, min(0.41421356*math.Sqrt(float64(parting.Regions[r].Pixels)/math.Pi), float64(min(w, h))/6))
	weights, ring := 0.0, 0.0
	for i, at := range parting.Of {
		bx, by := middle(int(at))
		weight := math.Exp(-((x-bx)*(x-bx) + (y-by)*(y-by)) / 0.4)
		weights += weight
		if int(at) == r {
			continue
		}
		for _, s := range tones[r] {
			for _, o := range tones[at] {
				overall += weight * distance(s.Lab, o.Lab) / float64(len(tones[r])*len(tones[at]))
			}
		}
		for j, other := range parting.Of {
			if int(other) == r && math.Hypot(float64(i%w-j%w), float64(i/w-j/w)) <= reach {
				ring++
				around += distance(mean(r), mean(int(at)))
				break
			}
		}
	}
	return around / ring, overall / weights
}

// A region in its surroundings' colour does not stand out, whatever else does; one alone
// has nothing to stand out from; one without pixels or tones has no standing.
func TestNothingToStandOut(t *testing.T) {
	gray := colour.Lab{L: 50}
	got := standingsOf(plain(gray, gray, colour.Lab{L: 90}), 10, "00000", "01002", "00000")
	assert.Zero(t, got[1].Around)
	assert.Zero(t, got[1].Score)
	assert.Equal(t, []int{2, 3, 1}, []int{got[0].Rank, got[1].Rank, got[2].Rank})

	assert.Equal(t, []Standing{{Rank: 1}}, standingsOf(plain(gray), 10, "00"))

	parting, w, h := blown(10, "00", "02")
	c := Composed(parting, w, h)
	for _, tones := range [][][]Tone{plain(gray, gray, colour.Lab{L: 90}), {{{gray, 1}}, nil, {{colour.Lab{L: 90}, 1}}}} {
		got = c.Standings(tones)
		assert.Equal(t, Standing{}, got[1])
		assert.Equal(t, 1, got[2].Rank)
		assert.InDelta(t, 40, got[2].Around, exact)
	}
	got = c.Standings([][]Tone{{{gray, 1}}, {}, {{gray, 0}}})
	assert.Equal(t, []Standing{{Rank: 1}, {}, {}}, got)

	assert.Empty(t, Composed(Parting{}, 0, 0).Standings(nil))
	assert.PanicsWithValue(t, "analyze: the parting is not of a picture of that size", func() { Composed(parting, w, h+1) })
	assert.PanicsWithValue(t, "analyze: there are not as many lists of tones as regions", func() { c.Standings(nil) })
}

// The same picture with its regions numbered the other way round, and at three times the
// size, has the same standings.
func TestNumberingAndSizeDoNotMatter(t *testing.T) {
	a, b, c := colour.Lab{L: 40, A: 20}, colour.Lab{L: 70, B: 60}, colour.Lab{L: 20, A: -5, B: 10}
	one := standingsOf(plain(a, b, c), 8, "000000", "011220", "011000", "000022")
	other := standingsOf(plain(c, b, a), 8, "222222", "211002", "211222", "222200")
	large := standingsOf(plain(a, b, c), 24, "000000", "011220", "011000", "000022")
	for r := range one {
		assert.InDelta(t, one[r].Score, other[2-r].Score, exact)
		assert.Equal(t, one[r].Rank, other[2-r].Rank)
		assert.InDelta(t, one[r].Overall, large[r].Overall, 1e-6)
		assert.InDelta(t, one[r].Around, large[r].Around, 0.04*one[r].Around)
	}
	require.NotEqual(t, one[0].Rank, one[1].Rank)
}
