package plan

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
)

// studyRow paints a row of grays, dark to light, from three piles of one region.
func studyRow(t *testing.T, m *mixer, greys ...float32) (thick, coat *analyze.Picture, x mixed) {
	t.Helper()
	p := &analyze.Picture{Width: len(greys), Height: 1, RGB: make([]uint8, 3*len(greys))}
	of := make([]uint16, len(greys))
	clusters := []analyze.Cluster{{Lab: colour.Lab{L: 90}, Pixels: 1}, {Lab: colour.Lab{L: 50}, Pixels: 1}, {Lab: colour.Lab{L: 20}, Pixels: 1}}
	for i, l := range greys {
		p.Lab = append(p.Lab, l, 0, 0)
		switch {
		case l < 35:
			of[i] = 2
		case l < 70:
			of[i] = 1
		}
	}
	x = mixed{paints: m.box}
	for _, c := range clusters {
		x.aims = append(x.aims, c.Lab)
	}
	x.recipes = match.Recipes(m.box, x.aims, m.mixing)
	if m.wishes == nil {
		m.wishes = []RegionWish{{}}
	}
	thick, coat = studyOf(p, of, []mixed{x}, [][]analyze.Cluster{clusters}, m)
	return thick, coat, x
}

func studyMixer() *mixer {
	return &mixer{
		box:    []paint.Paint{owned("titanium-white"), owned("ivory-black")},
		key:    ValueKey{Mode: "literal", PaintMin: 5, PaintMax: 97, PhotoMin: 0, PhotoMax: 100},
		mixing: match.Options{Coat: 1},
	}
}

func owned(id string) paint.Paint {
	p, err := paint.Find(nil, id)
	if err != nil {
		panic(err)
	}
	return p
}

// At a pile's own value the study shows the pile; half way to the next, and on from
// there with the other pile, the blend of both; past the last piles white and black are
// blended in, so that the value is the photo's as far as they reach.
func TestStudyBlendsNeighbouringPiles(t *testing.T) {
	m := studyMixer()
	study, coat, x := studyRow(t, m, 10, 20, 34.9, 35, 50, 60, 90, 97)
	assert.Nil(t, coat, "no ground, no coat")
	mix := func(j int) float64 { return x.recipes[j][0].Lab.L }
	at := func(i int) float64 { return study.At(i).L }
	assert.InDelta(t, m.box[1].Masstone().L, at(0), 0.05, "black is as dark as it gets")
	assert.InDelta(t, mix(2), at(1), 0.05)
	assert.InDelta(t, (mix(2)+mix(1))/2, at(2), 0.3)
	assert.InDelta(t, at(2), at(3), 0.3, "no seam half way")
	assert.InDelta(t, mix(1), at(4), 0.05)
	assert.InDelta(t, mix(1)+(mix(0)-mix(1))*0.25, at(5), 0.3)
	assert.InDelta(t, mix(0), at(6), 0.05)
	assert.InDelta(t, 97, at(7), 0.5)
}

// A coat over black is never lighter than the pile, and where the pile hides it is the
// pile. Source: [Kubelka1948], a film over a darker ground.
func TestStudyOverBlack(t *testing.T) {
	m := studyMixer()
	black := colour.Lab{L: 18}.Reflectance()
	m.mixing.Ground = &black
	study, coat, _ := studyRow(t, m, 10, 20, 35, 50, 60, 90, 97)
	darker := 0
	for i := range 7 {
		assert.LessOrEqual(t, coat.At(i).L, study.At(i).L+0.05)
		if coat.At(i).L < study.At(i).L-1 {
			darker++
		}
	}
	assert.Positive(t, darker, "white lets black through in one coat")
}

// A thinner coat lets more of the ground through, and a region that is lightened is
// lighter in the study.
func TestStudyByCoatAndShift(t *testing.T) {
	at := func(l float32, coat, shift float64) (thick, over float64) {
		m := studyMixer()
		black := colour.Lab{L: 18}.Reflectance()
		m.mixing.Ground, m.mixing.Coat = &black, coat
		m.wishes = []RegionWish{{Shift: shift}}
		a, b, _ := studyRow(t, m, l)
		return a.At(0).L, b.At(0).L
	}
	_, one := at(95, 1, 0)
	_, thin := at(95, 0.3, 0)
	thick, _ := at(60, 1, 0)
	lighter, _ := at(60, 1, 1)
	assert.Less(t, thin, one-1)
	assert.InDelta(t, colour.LOf(colour.ValueOf(thick)+1), lighter, 1)
}

// A region lightened by a value is lighter by a value everywhere the box reaches.
func TestShifted(t *testing.T) {
	k := ValueKey{Mode: "fit", PaintMin: 20, PaintMax: 90}
	assert.InDelta(t, colour.LOf(6), k.shifted(colour.LOf(5), 1), 1e-6)
	assert.InDelta(t, colour.LOf(3.5), k.shifted(colour.LOf(5), -1.5), 1e-6)
	assert.Equal(t, 90.0, k.shifted(85, 4), "not past what paint reaches")
	assert.Equal(t, 95.0, k.shifted(95, 1), "what is past it already stays")
	assert.Equal(t, 50.0, k.shifted(50, 0))
}

// Shades of one thing are blended, things of another colour are not.
func TestNeighbours(t *testing.T) {
	at := func(l, a, b float64) pile { c := colour.Lab{L: l, A: a, B: b}; return pile{photo: c, lab: c} }
	piles := []pile{at(80, 10, 10), at(50, 15, 18), at(30, 16, 20), at(27, -20, 15), at(10, -6, 5)}
	lighter, darker := neighbours(piles, 1)
	assert.Same(t, &piles[0], lighter)
	assert.Same(t, &piles[2], darker)
	lighter, darker = neighbours(piles, 3)
	assert.Same(t, &piles[0], lighter, "a highlight is far enough up")
	assert.Same(t, &piles[4], darker)
	wall := []pile{at(35, 16, 20), at(26, 3, 9)}
	lighter, _ = neighbours(wall, 1)
	assert.Nil(t, lighter, "copper is no lighter shade of a brown wall")
}

// Every place of the study has the value that the photo is keyed to, to a fifth of a
// step at the 95th of 100, in a region followed by value and in one of the whole box.
func TestStudyKeepsTheValues(t *testing.T) {
	p, err := Make(Options{Photo: demo, Regions: []RegionWish{
		{Name: "left", Cells: "A1:F9", Palette: []string{"burnt-umber", "ultramarine-blue"}},
		{Name: "right", Cells: "G1:L9"},
	}})
	require.NoError(t, err)
	off := [2][]float64{}
	for i, r := range p.Pictures.Parting.Of {
		wanted := colour.ValueOf(p.ValueKey.aim(p.Pictures.Photo.At(i)).L)
		off[r] = append(off[r], math.Abs(colour.ValueOf(p.Pictures.Study.At(i).L)-wanted))
	}
	for r, list := range off {
		slices.Sort(list)
		assert.Less(t, list[len(list)*95/100], 0.2, p.Regions[r].Name)
		t.Logf("%s: median %.2f, 95th %.2f, worst %.2f", p.Regions[r].Name, list[len(list)/2], list[len(list)*95/100], list[len(list)-1])
	}
}

// Past half way to the next pile the other takes over.
func TestBlendsGoHalfWay(t *testing.T) {
	own, next := &pile{aim: 50, lab: colour.Lab{L: 48}}, &pile{aim: 70, lab: colour.Lab{L: 72}}
	assert.InDelta(t, 48+24*0.25, wanted(55, own, next), 1e-9)
	assert.InDelta(t, 60, wanted(60, own, next), 1e-9)
	assert.InDelta(t, 60, wanted(68, own, next), 1e-9)
	assert.InDelta(t, 48, wanted(40, own, next), 1e-9)
}

// A pile of another colour is no shade of a pile; of those that are the nearest is taken.
func TestNeighboursAreShades(t *testing.T) {
	at := func(l, a float64) pile { return pile{photo: colour.Lab{L: l, A: a}, lab: colour.Lab{L: l}} }
	piles := []pile{at(50, 0), at(60, 40), at(90, 0), at(70, 0), at(30, 0)}
	lighter, darker := neighbours(piles, 0)
	assert.Same(t, &piles[3], lighter)
	assert.Same(t, &piles[4], darker)
}

// Piles that a strong shift brings to one aim, at the end of what the box reaches, are
// still a number.
func TestPilesOfOneAim(t *testing.T) {
	slow(t)
	own, next := pile{aim: 97, lab: colour.Lab{L: 96}}, pile{aim: 97, lab: colour.Lab{L: 97}}
	assert.Equal(t, 96.0, wanted(97, &own, &next))
	p, err := Make(Options{Photo: demo, Colours: 12, Regions: []RegionWish{{Name: "all", Cells: "A1:L9", Shift: 4}}})
	require.NoError(t, err)
	for _, v := range p.Pictures.Study.Lab {
		require.False(t, math.IsNaN(float64(v)))
	}
}
