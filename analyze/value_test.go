package analyze

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// Luminance factors, in percent, of Munsell values 1 to 9 against a perfect diffuser:
// [ASTMD1535] gives 1.210, 3.126, 6.555, 12.00, 19.77, 30.05, 43.06, 59.10, 78.66
// against magnesium oxide, which is 97.5 % of it.
var luminance = []float64{1.180, 3.048, 6.391, 11.70, 19.28, 29.30, 41.98, 57.62, 76.69}

// lightnessOf returns L* of a luminance factor above 0.9 %. Source: [CIE15] eq. 8.3.
func lightnessOf(y float64) float64 { return 116*math.Cbrt(y/100) - 16 }

func TestEveryValueIsItsOwnStep(t *testing.T) {
	p := paintedPicture(len(luminance), 1, func(x, _ int) colour.Lab { return colour.Lab{L: lightnessOf(luminance[x])} })
	nine := Values(p, 9)
	assert.Equal(t, []float64{1, 2, 3, 4, 5, 6, 7, 8, 9}, nine.Steps)
	assert.Equal(t, []uint8{0, 1, 2, 3, 4, 5, 6, 7, 8}, nine.Of)
	five := Values(p, 5)
	assert.Equal(t, []float64{1, 3, 5, 7, 9}, five.Steps)
	for x, step := range five.Of {
		if x%2 == 0 { // an even value lies on a limit
			assert.EqualValues(t, x/2, step)
		}
	}
}

// A step ends half way to the next: at Munsell value 3.5 between 3 and 4 of nine, at 4
// between 3 and 5 of five. L* of the limits by interpolation in [ASTMD1535]'s table,
// value 3.5: Y 8.806 against the perfect diffuser, 35.6; value 4: 11.70, 40.7.
func TestStepsMeetHalfWay(t *testing.T) {
	at := func(l float64, steps int) uint8 {
		return Values(paintedPicture(1, 1, func(int, int) colour.Lab { return colour.Lab{L: l} }), steps).Of[0]
	}
	const printed = 0.15 // of L*: what the interpolation is good for
	assert.EqualValues(t, 2, at(lightnessOf(8.806)-printed, 9))
	assert.EqualValues(t, 3, at(lightnessOf(8.806)+printed, 9))
	assert.EqualValues(t, 1, at(lightnessOf(11.70)-printed, 5))
	assert.EqualValues(t, 2, at(lightnessOf(11.70)+printed, 5))
	assert.EqualValues(t, 0, at(-3, 9), "darker than black is the darkest step")
	assert.EqualValues(t, 8, at(104, 9), "lighter than white is the lightest")
}

func TestOnlyFiveOrNineSteps(t *testing.T) {
	assert.PanicsWithValue(t, "analyze: 7 value steps, want 5 or 9", func() { Values(&Picture{}, 7) })
	assert.Empty(t, Values(&Picture{}, 5).Of)
}

// spots is a dark picture of 400 × 300 with a speck of 4 × 4, a touch of 16 × 16 and a
// disc of radius 60 in a light gray.
func spots() *Picture {
	return paintedPicture(400, 300, func(x, y int) colour.Lab {
		speck := x >= 20 && x < 24 && y >= 20 && y < 24
		touch := x >= 50 && x < 66 && y >= 20 && y < 36
		if disc := (x-250)*(x-250)+(y-150)*(y-150) < 60*60; speck || touch || disc {
			return colour.Lab{L: 80}
		}
		return colour.Lab{L: 30}
	})
}

func TestSpecksAreJoined(t *testing.T) {
	m := Values(spots(), 5)
	dark, light := m.Of[0], m.Of[150*400+250]
	assert.NotEqual(t, dark, light)
	assert.Equal(t, dark, m.Of[22*400+22], "a speck is too small to paint")
	assert.Equal(t, light, m.Of[28*400+58], "a touch is not")
}

// A part under the least size joins what it has the longest border with.
// In this one of 2 × 2 pixels, number 3 has five sides to 1 and three to 2.
func TestPartsJoinTheirLongestBorder(t *testing.T) {
	of := []uint8{
		1, 1, 1, 1, 1,
		1, 3, 3, 2, 2,
		1, 3, 3, 2, 2,
		1, 1, 2, 2, 2,
	}
	q := partsOf(of, 5, 4)
	assert.Equal(t, []int{9, 4, 7}, q.pixels)
	q.absorb(of, q.under(5), 5)
	assert.Equal(t, []uint8{
		1, 1, 1, 1, 1,
		1, 1, 1, 2, 2,
		1, 1, 1, 2, 2,
		1, 1, 2, 2, 2,
	}, of)
}

func TestMarkOfADisc(t *testing.T) {
	m := Values(spots(), 5)
	light := m.Of[150*400+250]
	var best Mark
	for _, mark := range m.Marks {
		if mark.Step == int(light) && mark.Radius > best.Radius {
			best = mark
		}
	}
	assert.InDelta(t, 250, best.X, 3)
	assert.InDelta(t, 150, best.Y, 3)
	assert.InDelta(t, 60, best.Radius, 3)
	requireFree(t, 400, 300, m)
}

// requireFree checks every mark by looking at every pixel of its disc, and the marks'
// order and number.
func requireFree(t *testing.T, width, height int, m ValueMap) {
	t.Helper()
	require.LessOrEqual(t, len(m.Marks), mostMarks)
	for n, mark := range m.Marks {
		require.EqualValues(t, m.Of[mark.Y*width+mark.X], mark.Step)
		r := int(mark.Radius) + 1
		for y := mark.Y - r; y <= mark.Y+r; y++ {
			for x := mark.X - r; x <= mark.X+r; x++ {
				if math.Hypot(float64(x-mark.X), float64(y-mark.Y)) < mark.Radius-1e-9 {
					require.True(t, x >= 0 && y >= 0 && x < width && y < height, "mark %d leaves the picture", n)
					require.EqualValues(t, mark.Step, m.Of[y*width+x], "mark %d is not free", n)
				}
			}
		}
		if n > 0 {
			last := m.Marks[n-1]
			require.True(t, last.Y < mark.Y || last.Y == mark.Y && last.X < mark.X, "row by row")
		}
	}
}

func TestLongPartsGetSeveralMarks(t *testing.T) {
	p := paintedPicture(1200, 300, func(_, y int) colour.Lab {
		if y < 220 {
			return colour.Lab{L: 90}
		}
		return colour.Lab{L: 30}
	})
	m := Values(p, 5)
	steps := map[int]int{}
	for _, mark := range m.Marks {
		steps[mark.Step]++
	}
	assert.GreaterOrEqual(t, steps[4], 3)
	assert.GreaterOrEqual(t, steps[1], 3)
	assert.LessOrEqual(t, len(m.Marks), 10)
	requireFree(t, 1200, 300, m)
}

func TestValuesOfPhotos(t *testing.T) {
	for _, name := range []string{"14_dandelions_16MP.jpg", "23_harvesters.tiff"} {
		p := workingPicture(t, name, 1200)
		for _, steps := range []int{5, 9} {
			m := Values(p, steps)
			requireFree(t, p.Width, p.Height, m)
			assert.NotEmpty(t, m.Marks)
			for n, pixels := range partsOf(m.Of, p.Width, p.Height).pixels {
				assert.GreaterOrEqual(t, pixels, smallestPart(p), "part %d", n)
			}
			assert.Equal(t, m, Values(p, steps))
		}
	}
}

func BenchmarkValues(b *testing.B) {
	p := workingPicture(b, benchPhoto, 1200)
	for b.Loop() {
		Values(p, 9)
	}
}
