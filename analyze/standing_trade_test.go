package analyze

import (
	"encoding/json"
	"image"
	"image/png"
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// What painters know of what jumps and what stays back: common practice, no source.

// Near complements side by side stand out more than analogous neighbours of the same
// value and chroma. In one picture, of two pairs of like squares of one L* and C*: both
// of the one before both of the other, on gray and on a dull ground.
func TestComplementsStandOutOverNeighbours(t *testing.T) {
	for _, ground := range []colour.Lab{{L: 51.6}, {L: 30}, {L: 45, A: 4, B: 12}} {
		for hue := 0.0; hue < 360; hue += 30 {
			at := func(turn float64) colour.Lab {
				sin, cos := math.Sincos((hue + turn) * math.Pi / 180)
				return colour.Lab{L: 61, A: 35 * cos, B: 35 * sin}
			}
			got := standingsOf(plain(ground, at(0), at(180), at(0), at(40)), 20,
				"00000000000", "01122033440", "01122033440", "00000000000")
			for _, complement := range got[1:3] {
				for _, neighbour := range got[3:] {
					if ground.Chroma() == 0 {
						assert.Less(t, complement.Rank, neighbour.Rank, "hue %v on %v", hue, ground)
					}
				}
			}
			assert.Greater(t, got[1].Score, got[3].Score, "hue %v on %v: the same colour, beside its complement and beside its neighbour", hue, ground)
		}
	}
}

// The same by Munsell's circle: a spot on its complement is farther from what is around
// it than on a neighbour of the same value and chroma, and by hue.
func TestSpotOnItsComplement(t *testing.T) {
	munsell := func(hue string) colour.Lab {
		c, err := colour.Parse(hue + " 6/6")
		require.NoError(t, err)
		return c
	}
	for _, hues := range [][3]string{{"5Y", "5PB", "5GY"}, {"5R", "5BG", "5YR"}, {"5G", "5RP", "5BG"}, {"5B", "5YR", "5PB"}, {"5P", "5GY", "5RP"}} {
		on := func(field string) Standing {
			return standingsOf(plain(munsell(field), munsell(hues[0])), 10, "00000", "00100", "00000")[1]
		}
		complement, neighbour := on(hues[1]), on(hues[2])
		assert.Greater(t, complement.Around, 1.5*neighbour.Around, "%v", hues)
		assert.Greater(t, complement.Overall, 1.5*neighbour.Overall, "%v", hues)
		assert.Greater(t, complement.Hue, 0.8, "%v", hues)
	}
}

// Earths and black stay back where cadmiums jump, on mid gray and on an earth. The
// colours are masstones as match/paint computes them, in CIE L*a*b* under D65.
func TestEarthsAndBlackRecede(t *testing.T) {
	cadmiums := []colour.Lab{{L: 88.5, A: -9.6, B: 99.2}, {L: 63.7, A: 54.2, B: 77.8}, {L: 40.2, A: 60.2, B: 40.9}} // lemon, orange, red
	back := []colour.Lab{{L: 13.2, A: 9.5, B: 14.1}, {L: 12.0, A: 2.9, B: 8.0}, {L: 9.0, A: 0.8, B: 2.5}}           // burnt umber, raw umber, mars black
	earth := colour.Lab{L: 25.6, A: 26.2, B: 24.9}                                                                  // burnt sienna
	rows := []string{"00000000000000", "01102203304400", "01102203304400", "00000000000000", "00550066000000", "00550066000000", "00000000000000"}
	for _, ground := range []colour.Lab{{L: 51.6}, earth} {
		got := standingsOf(plain(ground, cadmiums[0], back[0], cadmiums[1], back[1], cadmiums[2], back[2]), 12, rows...)
		for _, c := range []int{1, 3, 5} {
			for _, b := range []int{2, 4, 6} {
				assert.Less(t, got[c].Rank, got[b].Rank, "cadmium %d, dark %d on %v", c, b, ground)
			}
		}
	}
}

// A small bright accent in a calm field stands out over the field, in the middle and
// off it, and over a second accent that is nearer to the field.
func TestAccentOverField(t *testing.T) {
	field, bright, faint := colour.Lab{L: 45, A: 2, B: 6}, colour.Lab{L: 80, A: 5, B: 85}, colour.Lab{L: 55, A: 4, B: 15}
	for _, rows := range [][]string{
		{"0000000", "0000000", "0001000", "0000020", "0000000"},
		{"0000000", "0100000", "0000000", "0002000", "0000000"},
	} {
		got := standingsOf(plain(field, bright, faint), 10, rows...)
		assert.Equal(t, []int{3, 1, 2}, []int{got[0].Rank, got[1].Rank, got[2].Rank})
		assert.Less(t, got[0].Score, 0.3, "the field hardly differs from the picture it is most of")
	}
}

// A thing in the picture stands out over the same thing cut by the frame.
func TestFrameHoldsBack(t *testing.T) {
	field, thing := colour.Lab{L: 40}, colour.Lab{L: 70, B: 50}
	got := standingsOf(plain(field, thing, thing), 10, "20000000", "00000000", "00001000", "00000000")
	assert.Equal(t, []int{3, 2, 1}, []int{got[0].Rank, got[2].Rank, got[1].Rank}, "field, cut, whole")
	assert.InDelta(t, got[1].Around, got[2].Around, exact, "its surroundings are what is in the picture")
}

// The demo scene with its true masks. Its pixels as rendered; then with the colours of
// lemons and bottle changed over, and the ranking follows.
func TestDemoLemonsOverBottle(t *testing.T) {
	parting, w, h, known := demoMask(t)
	c := Composed(parting, w, h)
	wall, shelf, kettle, bottle, lemon, apart := 0, 1, 2, 4, 5, 6
	require.Equal(t, []string{"wall", "shelf", "kettle", "bottle", "lemon near", "lemon apart"},
		[]string{known[wall].Name, known[shelf].Name, known[kettle].Name, known[bottle].Name, known[lemon].Name, known[apart].Name})
	for _, flat := range []bool{false, true} {
		colours := make([]colour.Lab, len(known))
		for r, o := range known {
			m := o.Mean
			if flat {
				m = o.Flat
			}
			colours[r] = colour.Lab{L: m[0], A: m[1], B: m[2]}
		}
		got := c.Standings(plain(colours...))
		assert.Less(t, got[lemon].Rank, got[bottle].Rank)
		assert.Less(t, got[apart].Rank, got[bottle].Rank)
		assert.LessOrEqual(t, max(got[lemon].Rank, got[apart].Rank), 2, "lemons first")
		assert.Greater(t, got[lemon].Chroma, got[lemon].Value, "by chroma most")
		assert.Less(t, got[bottle].Rank, got[wall].Rank, "things over what is behind them")

		colours[lemon], colours[apart], colours[bottle] = colours[bottle], colours[bottle], colours[lemon]
		got = c.Standings(plain(colours...))
		assert.Less(t, got[bottle].Rank, got[lemon].Rank)
		assert.Less(t, got[bottle].Rank, got[apart].Rank)
		assert.Equal(t, 1, got[bottle].Rank)
	}
}

// The shares of the rings at the reduced size are those of every pixel.
func TestRingAgainstEveryPixel(t *testing.T) {
	parting, w, h, _ := demoMask(t)
	c := Composed(parting, w, h)
	full := &Composition{}
	rings, inside := thin(parting.Of, w, h, 1).rings(full.survey(parting.Of, len(parting.Regions), w, h))
	for a, ring := range rings {
		shareOut(ring)
		assert.InDelta(t, inside[a], c.inside[a], 0.02, "%d", a)
		for b := range ring {
			assert.InDelta(t, ring[b], c.Ring(a)[b], 0.02, "%d around %d", b, a)
		}
	}
}

// Who touches whom in the demo: the near lemon lies before bottle, kettle and shelf, the
// other on the shelf alone; both rise over its far edge by a few pixels (kettle.json: they
// begin at 0.6767 of the height, the shelf at 0.68), and so touch the wall.
func TestDemoTouch(t *testing.T) {
	parting, w, h, _ := demoMask(t)
	c := Composed(parting, w, h)
	for a, touching := range map[int][]int{
		0: {1, 2, 3, 4, 5, 6}, 1: {0, 2, 4, 5, 6}, 2: {0, 1, 3, 5}, 3: {0, 2}, 4: {0, 1, 5}, 5: {0, 1, 2, 4}, 6: {0, 1},
	} {
		var got []int
		for b := range parting.Regions {
			if c.Touch(a, b) {
				got = append(got, b)
			}
		}
		assert.Equal(t, touching, got, "%d", a)
	}
}

// Corners do not touch, sides do.
func TestTouch(t *testing.T) {
	c := Composed(blown(10, "01", "23"))
	assert.True(t, c.Touch(0, 1) && c.Touch(1, 0) && c.Touch(0, 2) && c.Touch(1, 3))
	assert.False(t, c.Touch(0, 3) || c.Touch(1, 2) || c.Touch(0, 0))
}

// A corner of four regions that is a pixel off is no contact.
func TestTouchInACorner(t *testing.T) {
	c := Composed(blown(1, "000111", "000111", "000111", "222211", "222333", "222333"))
	assert.Equal(t, 2, c.sides[1][2], "one across, one down")
	assert.False(t, c.Touch(1, 2))
	assert.True(t, c.Touch(0, 1))
}

// A ring is as large as what it is around: a disc of radius 60 has one 24.85 wide, so
// that a band of radius 60 to 72 is (72² - 60²) / 60² = 0.44 of it. A half of 200 × 300
// would have one of 57 pixels, bound to 50, a sixth of the short side. A square of 30 in
// the corner has one 7.0 wide, of which (2·30·7 + 39) / (4·30·7 + 4·39) is inside.
func TestRingByHand(t *testing.T) {
	_, parting := parted(300, 300, func(x, y int) uint8 {
		switch d := math.Hypot(float64(x)-149.5, float64(y)-149.5); {
		case d < 60:
			return 1
		case d < 72:
			return 2
		}
		return 0
	}, func(int, int) colour.Lab { return colour.Lab{} })
	c := Composed(parting, 300, 300)
	assert.InDelta(t, 0.44, c.Ring(1)[2], 0.03)
	assert.InDelta(t, 0.56, c.Ring(1)[0], 0.03)
	assert.InDelta(t, 1, c.inside[1], exact)

	c = Composed(blown(50, "00001233", "00001233", "00001233", "00001233", "00001233", "00001233"))
	assert.InDelta(t, 1, c.Ring(0)[1], 0.001)

	c = Composed(blown(30, "1000", "0000", "0000", "0000"))
	assert.InDelta(t, 459.0/996, c.inside[1], 0.03)
}

type demoObject struct {
	Name string     `json:"name"`
	Flat [3]float64 `json:"flat_lab"`
	Mean [3]float64 `json:"mean_lab"`
}

// demoMask returns what is where in the demo scene: see testdata/scene.
func demoMask(t testing.TB) (parting Parting, width, height int, known []demoObject) {
	data, err := os.ReadFile("../testdata/kettle.json")
	require.NoError(t, err)
	var scene struct{ Objects []demoObject }
	require.NoError(t, json.Unmarshal(data, &scene))
	f, err := os.Open("../testdata/kettle-mask.png")
	require.NoError(t, err)
	defer f.Close()
	m, err := png.Decode(f)
	require.NoError(t, err)
	mask := m.(*image.Paletted)
	parting = Parting{Regions: make([]Region, len(scene.Objects)), Of: mask.Pix}
	count(parting.Regions, parting.Of)
	return parting, mask.Rect.Dx(), mask.Rect.Dy(), scene.Objects
}
