package analyze

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// checker is the chart of 24 patches without its cyan, which sRGB cannot hold.
// Source: [BabelColor2012], Lab of charts made before November 2014. They
// are for D50; here the figures are taken as they stand, as colours that paint has.
var checker = []colour.Lab{
	{L: 37.986, A: 13.555, B: 14.059}, {L: 65.711, A: 18.13, B: 17.81}, {L: 49.927, A: -4.88, B: -21.905},
	{L: 43.139, A: -13.095, B: 21.905}, {L: 55.112, A: 8.844, B: -25.399}, {L: 70.719, A: -33.397, B: -0.199},
	{L: 62.661, A: 36.067, B: 57.096}, {L: 40.02, A: 10.41, B: -45.964}, {L: 51.124, A: 48.239, B: 16.248},
	{L: 30.325, A: 22.976, B: -21.587}, {L: 72.532, A: -23.709, B: 57.255}, {L: 71.941, A: 19.363, B: 67.857},
	{L: 28.778, A: 14.179, B: -50.297}, {L: 55.261, A: -38.342, B: 31.37}, {L: 42.101, A: 53.378, B: 28.19},
	{L: 81.733, A: 4.039, B: 79.819}, {L: 51.935, A: 49.986, B: -14.574}, {L: 96.539, A: -0.425, B: 1.186},
	{L: 81.257, A: -0.638, B: -0.335}, {L: 66.766, A: -0.734, B: -0.504}, {L: 50.867, A: -0.153, B: -0.27},
	{L: 35.656, A: -0.421, B: -1.231}, {L: 20.461, A: -0.079, B: -0.973},
}

// grayCard gives back 18 % of the light: L* = 116·cbrt(0.18) - 16 = 49.5, [CIE15] 8.2.1.
var grayCard = colour.Lab{L: 49.496}

// studio is a made photograph of a card and of swatches: flat paint with the smoothest
// reflectance of its colour, in the light of a lamp and a field, seen by a camera set to
// daylight, with a sensor's noise, coded as sRGB of 8 bits.
type studio struct {
	size   image.Point
	paint  []painted
	lamp   string                                      // of the known lamps; "" is D65
	level  float64                                     // luminance of white; 0 is 1
	camera *camera                                     // nil is the ideal one
	field  func(x, y float64) float64                  // nil is even light
	touch  func(x, y float64, c rgb, r *rand.Rand) rgb // what else lies on the paint, by its light; nil is nothing
	shine  func(x, y float64, r *rand.Rand) float64    // glare, added after the paint, as a share of the light; nil is none
	noise  float64                                     // 1 is a good camera: see sensor
	seed   uint64
}

type painted struct {
	rect image.Rectangle
	lab  colour.Lab
}

// sensor is a camera's noise: shot noise that is 1 % of full light and grows with the
// square root of light, and read noise of 0.2 %. From memory: about a phone's main
// camera in room light; the form is Poisson's and holds for every sensor.
func sensor(v, noise float64, r *rand.Rand) float64 {
	s := math.Sqrt(1e-4*max(v, 0) + 4e-6)
	return v + noise*s*r.NormFloat64()
}

func (s *studio) render() *image.NRGBA {
	m := image.NewNRGBA(image.Rectangle{Max: s.size})
	r := rand.New(rand.NewPCG(s.seed, 7))
	white := s.seen(perfect)
	for i := range m.Pix { // the panel, which no test looks at
		m.Pix[i] = 0xff - uint8(i%4/3^1)*0x60
	}
	for _, p := range s.paint {
		light := s.lit(p.lab)
		for y := p.rect.Min.Y; y < p.rect.Max.Y; y++ {
			for x := p.rect.Min.X; x < p.rect.Max.X; x++ {
				m.SetNRGBA(x, y, s.look(float64(x)+0.5, float64(y)+0.5, light, white, r))
			}
		}
	}
	return m
}

// lit is what the camera has of a colour in the lamp's light.
func (s *studio) lit(lab colour.Lab) rgb { return s.seen(reflectanceOf(lab)) }

func (s *studio) seen(r *waves) rgb {
	c, lamp, level := idealCamera(), standard().lamps["D65"], 1.0
	if s.camera != nil {
		c = s.camera
	}
	if s.lamp != "" {
		lamp = standard().lamps[s.lamp]
	}
	if s.level > 0 {
		level = s.level
	}
	return c.exposed(lamp, level).sees(lamp, r)
}

// look is one pixel of paint as the camera stores it.
func (s *studio) look(x, y float64, c, white rgb, r *rand.Rand) color.NRGBA {
	if s.touch != nil {
		c = s.touch(x, y, c, r)
	}
	glare, field := 0.0, 1.0
	if s.shine != nil {
		glare = s.shine(x, y, r)
	}
	if s.field != nil {
		field = s.field(x, y)
	}
	var level [3]uint8
	for k := range level {
		v := sensor((c[k]+glare*white[k])*field, s.noise, r)
		level[k] = uint8(math.Round(255 * linearToSRGB(min(1, max(0, v)))))
	}
	return color.NRGBA{R: level[0], G: level[1], B: level[2], A: 255}
}

// photo saves the studio and opens it: as PNG, or as JPEG of quality 90.
func (s *studio) photo(t testing.TB, asJPEG bool) *Photo {
	t.Helper()
	var data bytes.Buffer
	if asJPEG {
		require.NoError(t, jpeg.Encode(&data, s.render(), &jpeg.Options{Quality: 90}))
	} else {
		require.NoError(t, (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(&data, s.render()))
	}
	p, err := Open(tempFile(t, "photo", data.Bytes()), Limits{})
	require.NoError(t, err)
	return p
}

// card and beside are where most tests have their card and their swatch.
var (
	cardRect = image.Rect(20, 20, 120, 120)
	beside   = image.Rect(140, 20, 240, 120)
)

// pair is a studio with a gray card and one swatch.
func pair(lab colour.Lab) studio {
	return studio{size: image.Pt(700, 140), paint: []painted{{cardRect, grayCard}, {beside, lab}}, lamp: "6000 K", level: 0.75, noise: 1, seed: 1}
}

// chart is a studio with a gray card and twelve swatches of the chart from one on.
func chart(from, wide, high int) (studio, []Spot) {
	s := studio{size: image.Pt(560, 220), noise: 1, paint: []painted{{image.Rect(0, 0, 80, 80), grayCard}}}
	var spots []Spot
	for j := range 12 {
		at := image.Pt(90*(j%6), 90+j/6*60)
		r := image.Rectangle{Min: at, Max: at.Add(image.Pt(wide, high))}
		s.paint = append(s.paint, painted{r, checker[(from+j)%len(checker)]})
		spots = append(spots, Spot{Rect: r})
	}
	return s, spots
}

// errors reads a chart and gives how far off each swatch is, in CIEDE2000.
func (s *studio) errors(t testing.TB, asJPEG bool, spots []Spot) (off []float64) {
	t.Helper()
	read, _, err := s.photo(t, asJPEG).Swatches(Card{Rect: s.paint[0].rect, Lab: s.paint[0].lab}, spots)
	require.NoError(t, err)
	for i, r := range read {
		off = append(off, colour.DeltaE00(r.Lab, s.paint[i+1].lab))
	}
	return off
}
