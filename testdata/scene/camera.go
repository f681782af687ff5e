// The camera: where it stands, and how light becomes sRGB.

package main

import (
	"math"

	"github.com/lucasb-eyer/go-colorful"

	"tonewright/analyze/colour"
)

// camera looks at the still life from a standing painter's height.
type camera struct {
	eye  vec
	axes frame   // u right, v up, w forward
	tall float64 // half the picture's height at distance 1
}

func newCamera() camera {
	eye, aim := vec{1, 25, 108}, vec{1.9, 12, 0}
	w := aim.sub(eye).unit()
	u := w.cross(vec{0, 1, 0}).unit()
	return camera{eye, frame{u, u.cross(w), w}, math.Tan(11 * math.Pi / 180)}
}

// ray returns the direction through a place on the picture, in pixels.
func (c camera) ray(x, y float64, width, height int) vec {
	s := 2 * c.tall / float64(height)
	right, up := (x-float64(width)/2)*s, (float64(height)/2-y)*s
	return c.axes.w.along(c.axes.u, right).along(c.axes.v, up).unit()
}

// exposure is what the camera multiplies light by; 1 is then the white of sRGB. A white card
// square to the window at the middle of the shelf would have a light of about 1 with the shutter open.
const exposure = 1.55

// shoulder is the linear level above which lights are pressed together instead of cut off.
const shoulder = 0.75

// response turns light into linear sRGB, 0 to 1. All three channels are scaled alike in the
// highlights, and mixed with white in the brightest and with their own gray where a colour leaves
// the gamut, so that hue stays.
func response(light xyz) (r, g, b float64) {
	white := colour.Lab{L: 100}.XYZ()
	r, g, b = colorful.XyzToLinearRgb(exposure*light[0]*white.X/100, exposure*light[1]*white.Y/100, exposure*light[2]*white.Z/100)
	if low, gray := min(r, g, b), exposure*light[1]; low < 0 {
		t := gray / (gray - low)
		r, g, b = mix(gray, r, t), mix(gray, g, t), mix(gray, b, t)
	}
	if high := max(r, g, b); high > shoulder {
		s := (1 - (1-shoulder)*math.Exp(-(high-shoulder)/(1-shoulder))) / high
		bleach := 0.7 * ramp(1, 7, high)
		r, g, b = mix(r*s, 1, bleach), mix(g*s, 1, bleach), mix(b*s, 1, bleach)
	}
	return r, g, b
}

// grainOf is the camera's own noise at a linear level: shot noise on a small floor.
// Ours: about half an 8-bit level in the mid tones, which hides banding on the wall.
func grainOf(level float64) float64 { return math.Sqrt(1e-7 + 1.2e-5*level) }

// develop turns the film into sRGB bytes, three a pixel.
func (f *film) develop() []uint8 {
	out := make([]uint8, 3*len(f.object))
	for i := range f.object {
		r, g, b := response(f.light(i))
		s := sampler{pixel: uint32(i), index: 0x5eed}
		n1, n2 := bell(s.next())
		n3, _ := bell(s.next())
		for c, v := range [...]float64{r + n1*grainOf(r), g + n2*grainOf(g), b + n3*grainOf(b)} {
			out[3*i+c] = encoded(v)
		}
	}
	return out
}

// encoded is a linear level as an sRGB byte.
func encoded(v float64) uint8 {
	c := colorful.LinearRgb(v, 0, 0)
	return uint8(math.Round(255 * min(max(c.R, 0), 1)))
}

// light is all light that fell on pixel i.
func (f *film) light(i int) xyz {
	sum := f.diffuse[i]
	sum.add(f.mirror[i], 1)
	return sum
}
