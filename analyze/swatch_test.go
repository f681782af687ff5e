package analyze

import (
	"bytes"
	"image"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/disintegration/imaging"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// The chart's colours come back from photos in full, warm, cool and dim light, with
// grain, as PNG and as JPEG; the last three in light and by a camera that cost something themselves.
func TestSwatchesComeBack(t *testing.T) {
	slow(t)
	for _, c := range []struct {
		name, lamp  string
		level       float64
		camera      *camera
		noise       float64
		asJPEG      bool
		median, p90 float64 // most CIEDE2000
	}{
		{"full, PNG", "D65", 0.95, nil, 1, false, 0.1, 0.25},
		{"full, JPEG", "D65", 0.95, nil, 1, true, 0.5, 1.6},
		{"warm, JPEG", "5500 K", 0.8, nil, 1, true, 0.7, 1.7},
		{"cool, JPEG", "D75", 0.8, nil, 1, true, 0.7, 1.7},
		{"dim, JPEG", "5500 K", 0.2, nil, 1, true, 0.8, 1.8},
		{"dim and grainy, JPEG", "5500 K", 0.2, nil, 3, true, 0.9, 1.8},
		{"4000 K, JPEG", "4000 K", 0.7, nil, 1, true, 1.4, 2.6},
		{"4000 K, plain camera, JPEG", "4000 K", 0.7, plainCamera(), 1, true, 2.0, 3.0},
		{"A, plain camera, JPEG", "A", 0.5, plainCamera(), 1, true, 2.2, 7.8},
	} {
		var off []float64
		for seed := range uint64(4) {
			s, spots := chart(int(seed)*12, 80, 40)
			s.lamp, s.level, s.camera, s.noise, s.seed = c.lamp, c.level, c.camera, c.noise, seed
			off = append(off, s.errors(t, c.asJPEG, spots)...)
		}
		slices.Sort(off)
		median, p90 := off[len(off)/2], off[len(off)*9/10]
		t.Logf("%-26s median %.2f, 90th percentile %.2f, worst %.2f CIEDE2000", c.name, median, p90, off[len(off)-1])
		require.LessOrEqual(t, median, c.median, c.name)
		require.LessOrEqual(t, p90, c.p90, c.name)
	}
}

// A white card and one that is not quite neutral serve as well as a gray one, and
// the gains are those that take the published white of D75 to D65's.
// Source: [CIE15], D75 has x = 0.29902, y = 0.31485 (from memory).
func TestCardOfAnotherColour(t *testing.T) {
	for _, lab := range []colour.Lab{{L: 96.539, A: -0.425, B: 1.186}, {L: 60, A: 4, B: -6}} {
		s := pair(checker[0])
		s.paint[0].lab, s.lamp = lab, "D75"
		read, card, err := s.photo(t, false).Swatches(Card{cardRect, lab}, []Spot{{"dark skin", beside}})
		require.NoError(t, err)
		require.Empty(t, card.Warnings)
		require.Empty(t, read[0].Warnings)
		require.Equal(t, "dark skin", read[0].Name)
		require.Less(t, colour.DeltaE00(read[0].Lab, checker[0]), 0.3)
		d65, d75 := bradford.apply(whiteXYZ(d65Chromaticity)), bradford.apply(whiteXYZ([2]float64{0.29902, 0.31485}))
		for k := range 3 {
			require.InEpsilon(t, d65[k]/(s.level*d75[k]), card.Gains[k], 0.01)
		}
	}
}

// Glare over a tenth of a swatch moves its colour no more than grain does.
func TestGlareIsLeftOut(t *testing.T) {
	for _, lab := range []colour.Lab{checker[0], checker[3], checker[7], checker[22]} {
		s := pair(lab)
		s.shine = shines(beside, 12, 9, 0.7)
		read, _, err := s.photo(t, false).Swatches(Card{cardRect, grayCard}, []Spot{{Rect: beside}})
		require.NoError(t, err)
		require.Less(t, colour.DeltaE00(read[0].Lab, lab), 0.5)
	}
}

// Twelve lights on the card do not tint or darken the swatch.
func TestGlareOnTheCardIsLeftOut(t *testing.T) {
	for _, lab := range []colour.Lab{checker[0], checker[3], checker[22]} {
		s := pair(lab)
		s.shine = shines(cardRect, 12, 9, 0.7)
		require.Less(t, s.errors(t, false, []Spot{{Rect: beside}})[0], 0.5)
	}
}

// shines are n round lights of a radius on a rectangle, the same each time.
func shines(on image.Rectangle, n int, radius, light float64) func(x, y float64, r *rand.Rand) float64 {
	at := make([][2]float64, n)
	r := rand.New(rand.NewPCG(5, 5))
	for i := range at {
		at[i] = [2]float64{float64(on.Min.X) + r.Float64()*float64(on.Dx()), float64(on.Min.Y) + r.Float64()*float64(on.Dy())}
	}
	return func(x, y float64, _ *rand.Rand) float64 {
		for _, a := range at {
			if math.Hypot(x-a[0], y-a[1]) < radius && image.Pt(int(x), int(y)).In(on) {
				return light
			}
		}
		return 0
	}
}

// Light that falls off over card and swatch is carried from one to the other, near
// and far; a camera held straight above, a lamp and a lens give the fields.
func TestUnevenLightIsCarried(t *testing.T) {
	slow(t)
	lamp := func(x0, y0, height, light float64) func(x, y float64) float64 { // Lambert: cosine over square of distance
		return func(x, y float64) float64 {
			return light * math.Pow(1+((x-x0)*(x-x0)+(y-y0)*(y-y0))/(height*height), -1.5)
		}
	}
	for name, field := range map[string]func(x, y float64) float64{
		"even": nil, "lamp at the side": lamp(-200, 40, 450, 1), "lamp above": lamp(225, 50, 450, 1), "lamp behind": lamp(750, 0, 1000, 1.2),
		"lens, fourth power of the cosine": func(x, y float64) float64 { return math.Pow(1+((x-225)*(x-225)+(y-70)*(y-70))/2.5e5, -2) },
	} {
		for _, gap := range []int{10, 80, 200} {
			for i, lab := range []colour.Lab{checker[0], checker[6], checker[18]} {
				s := pair(lab)
				s.field, s.seed = field, uint64(i)
				s.paint[1].rect = beside.Add(image.Pt(gap-20, 0))
				require.Less(t, s.errors(t, false, []Spot{{Rect: s.paint[1].rect}})[0], 1.5, "%s, %d pixels off", name, gap)
			}
		}
	}
}

// What changes more than light does across the card is not carried on.
func TestPictureOnTheCardIsNotCarried(t *testing.T) {
	s := pair(checker[0])
	s.touch = on(cardRect, func(x, _ float64, c rgb) rgb { return times(c, math.Exp((70-x)/80)) })
	require.Less(t, s.errors(t, false, []Spot{{Rect: beside}})[0], 1.5)
}

// Turned by EXIF or not, a photo gives the same, also where the light has a slope.
func TestTurnedPhotoReadsTheSame(t *testing.T) {
	s := pair(checker[6])
	s.field = func(x, y float64) float64 { return math.Exp(-x/900 - y/1500) }
	upright := s.render()
	read := func(data []byte) ([]Swatch, CardReading) {
		p, err := Open(tempFile(t, "photo.png", data), Limits{})
		require.NoError(t, err)
		w, c, err := p.Swatches(Card{cardRect, grayCard}, []Spot{{"a", beside}})
		require.NoError(t, err)
		return w, c
	}
	want, card := read(pngOf(t, upright))
	// [EXIF] 4.6.4: 6 is stored so that a quarter turn to the right makes it upright.
	got, turned := read(pngOf(t, imaging.Rotate90(upright), "eXIf", exifOf(6)))
	require.Equal(t, want, got)
	require.InDelta(t, card.Slope, turned.Slope, 1e-9)
	require.Greater(t, card.Slope, 0.1)
}

// A rectangle larger than is kept gives the same to within grain, however it lies.
func TestLargeRectangle(t *testing.T) {
	m := image.NewGray(image.Rect(0, 0, 1400, 900))
	for i := range m.Pix {
		m.Pix[i] = uint8(100 + i%7)
	}
	p, err := Open(tempFile(t, "p.png", pngOf(t, m)), Limits{})
	require.NoError(t, err)
	read, card, err := p.Swatches(Card{image.Rect(0, 0, 1400, 300), grayCard}, []Spot{{Rect: image.Rect(0, 300, 1400, 900)}})
	require.NoError(t, err)
	require.LessOrEqual(t, read[0].Pixels, mostPixels)
	require.Greater(t, read[0].Pixels, mostPixels/3)
	require.InDelta(t, grayCard.L, read[0].Lab.L, 0.1)
	require.Equal(t, []string{"The photo is in gray, so only lightness can be read from it: save it in colour."}, card.Warnings)
}

// What cannot be read is an error that says why and what to do.
func TestSwatchErrors(t *testing.T) {
	s := pair(checker[0])
	p := s.photo(t, true)
	for _, c := range []struct {
		card Card
		spot image.Rectangle
		want string
	}{
		{Card{image.Rect(600, 20, 800, 120), grayCard}, beside, "the card's rectangle (600,20)-(800,120) is empty or leaves the photo, which has 700 × 140 pixels"},
		{Card{image.Rectangle{}, grayCard}, beside, "the card's rectangle"},
		{Card{cardRect, grayCard}, image.Rect(0, 0, 10, 141), `of swatch "a" is empty or leaves the photo`},
		{Card{cardRect, colour.Lab{}}, beside, "the card's known colour, L* 0.0"},
		{Card{cardRect, colour.Lab{L: math.NaN()}}, beside, "the card's known colour"},
	} {
		_, _, err := p.Swatches(c.card, []Spot{{"a", c.spot}})
		require.ErrorContains(t, err, p.File+": ")
		require.ErrorContains(t, err, c.want)
	}
	for light, want := range map[float64]string{7: "the card is clipped: its red is at the top", 0.002: "the card is too dark to go by: its red is at the bottom"} {
		s.level = light
		_, _, err := s.photo(t, false).Swatches(Card{cardRect, grayCard}, []Spot{{"a", beside}})
		require.ErrorContains(t, err, want)
	}
}

// Transparent paint is no paint.
func TestTransparentSwatch(t *testing.T) {
	s := pair(checker[0])
	m := s.render()
	for y := range 140 {
		for x := 130; x < 700; x++ {
			m.Pix[m.PixOffset(x, y)+3] = 0
		}
	}
	p, err := Open(tempFile(t, "p.png", pngOf(t, m)), Limits{})
	require.NoError(t, err)
	_, _, err = p.Swatches(Card{cardRect, grayCard}, []Spot{{"a", beside}})
	require.ErrorContains(t, err, `swatch "a" is transparent`)
	_, _, err = p.Swatches(Card{beside, grayCard}, nil)
	require.ErrorContains(t, err, "the card is transparent")
}

// The photo's profile counts: the same still life in Display P3 and in sRGB reads alike.
func TestSwatchesAreColourManaged(t *testing.T) {
	var labs [2][]Swatch
	for i, name := range []string{"colour/fig_displayp3.jpg", "colour/fig_srgb.png"} {
		p, err := Open(sharedPhoto(t, name), Limits{})
		require.NoError(t, err)
		at := func(text string) image.Rectangle {
			r, err := ParseRect(text, p.Width, p.Height)
			require.NoError(t, err)
			return r
		}
		labs[i], _, err = p.Swatches(Card{at("80,0,8,8"), colour.Lab{L: 71.5}}, []Spot{{Rect: at("40,40,8,8")}, {Rect: at("60,40,8,8")}, {Rect: at("20,80,8,8")}})
		require.NoError(t, err)
	}
	for i := range labs[0] {
		t.Log(labs[0][i].Lab, labs[1][i].Lab)
		require.Less(t, colour.DeltaE00(labs[0][i].Lab, labs[1][i].Lab), 1.0)
	}
}

// Real photographs hold no card: whatever lies there, an answer or a sentence comes.
func TestSwatchesOfRealPhotos(t *testing.T) {
	slow(t)
	for _, name := range []string{"02_dahlia_orange.jpg", "05_fig_red_bowl.jpg", "16_brushes_multicolour.jpg", "17_coffee_still_life.png", "19_cliff_grayscale.png",
		"20_tulips_alpha.png", "22_daisies_cmyk_noicc.jpg", "23_harvesters.tiff", "colour/fig.heic", "colour/daisies_cmyk_icc.jpg", "colour/one_pixel.png", "colour/fully_transparent.png"} {
		p, err := Open(sharedPhoto(t, name), Limits{})
		require.NoError(t, err)
		whole := image.Rect(0, 0, p.Width, p.Height)
		middle := whole.Inset(min(p.Width, p.Height) * 2 / 5)
		read, card, err := p.Swatches(Card{middle, grayCard}, []Spot{{Rect: whole}, {Rect: middle}})
		t.Log(name, err, card, read)
		if err == nil {
			require.Len(t, read, 2)
			require.NotEmpty(t, read[0].Warnings) // no photo is of one colour, and the two overlap
		}
	}
}

// Chroma that a JPEG stores for two pixels at once does not run into the swatch
// from what lies around: the edge that is left out is wide enough.
func TestEdgeIsLeftOut(t *testing.T) {
	s := pair(checker[2])
	m := s.render()
	for y := range 140 { // strong red right up to the swatch, and the rectangle drawn a bit too large
		for x := 130; x < 250; x++ {
			if !image.Pt(x, y).In(beside) {
				copy(m.Pix[m.PixOffset(x, y):], []uint8{230, 20, 30})
			}
		}
	}
	var data bytes.Buffer
	require.NoError(t, jpeg.Encode(&data, m, &jpeg.Options{Quality: 90}))
	p, err := Open(tempFile(t, "p.jpg", data.Bytes()), Limits{})
	require.NoError(t, err)
	read, _, err := p.Swatches(Card{cardRect, grayCard}, []Spot{{Rect: beside.Inset(-5)}})
	require.NoError(t, err)
	require.Empty(t, read[0].Warnings)
	require.Less(t, colour.DeltaE00(read[0].Lab, checker[2]), 1.0)
}
