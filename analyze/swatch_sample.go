package analyze

import (
	"image"
)

// rgb is linear light; white is 1.
type rgb [3]float64

// luminance is Y of linear sRGB, 1 for white.
func (c rgb) luminance() float64 {
	return srgbToXYZ[1][0]*c[0] + srgbToXYZ[1][1]*c[1] + srgbToXYZ[1][2]*c[2]
}

// pixel is one pixel of a sample.
type pixel struct {
	x, y  float64 // its middle, in upright pixels of the photo
	light rgb
	ends  ends
}

// ends says which channels of a pixel are at the end of the photo's range: bit k
// the bottom of channel k, bit 3 + k its top.
type ends uint8

// Where a channel counts as clipped, of 65535. Ours: a JPEG of quality 90 strays
// by two levels of 255 from a flat end.
const (
	clipBottom = 2 * 257
	clipTop    = 253 * 257
)

// sample is what a rectangle of the photo shows.
type sample struct {
	rect   image.Rectangle // without its edge, upright
	pixels []pixel         // at most mostPixels; none where the photo is transparent
}

// mostPixels bounds what a sample keeps. Ours: past it pixels are left out evenly, not
// averaged, which would mix glare into its surroundings and hide clipping; the middle
// of so many with a noise of 3 L* is still sure to 0.02. Four times as many took a second
// longer for a card and a swatch.
const mostPixels = 1 << 16

// sampleReader reads samples of a decoded photo. Printing inks have no ends.
func (p *Photo) sampleReader(img image.Image) (func(image.Rectangle) sample, error) {
	d, toLight, err := p.light.rows(deviceOf(img, p.ycc))
	if err != nil {
		return nil, err
	}
	channels := 3
	if d.alpha {
		channels = 4
	}
	return func(rect image.Rectangle) sample {
		c := sample{rect: withoutEdge(rect)}
		t := turnOf(p.Orientation)
		stored := t.storedCrop(c.rect, p.stored)
		corner := t.corner(p.stored)
		read, numbers := d.span(stored.Min.X, stored.Max.X), make([]uint16, d.per()*stored.Dx())
		row := make([]float32, channels*stored.Dx())
		step := strideOf(stored.Size())
		for y := stored.Min.Y + (stored.Dy()-1)%step/2; y < stored.Max.Y; y += step {
			read(y, numbers)
			toLight(numbers, row)
			for i := (stored.Dx() - 1) % step / 2; i < stored.Dx(); i += step {
				if channels == 4 && row[4*i+3] < 1 {
					continue
				}
				x := stored.Min.X + i
				c.pixels = append(c.pixels, pixel{
					x:     float64(corner.X+x*t.ax+y*t.bx) + 0.5,
					y:     float64(corner.Y+x*t.ay+y*t.by) + 0.5,
					light: p.light.linear(row[channels*i:]),
					ends:  d.ends(numbers[d.per()*i:]),
				})
			}
		}
		return c
	}, nil
}

// linear takes light to linear sRGB.
func (l light) linear(v []float32) rgb {
	return l.affine.apply([3]float64{float64(v[0]), float64(v[1]), float64(v[2])})
}

// ends are those of one pixel's numbers.
func (d device) ends(numbers []uint16) (e ends) {
	if d.inks == 4 {
		return 0
	}
	for k := range 3 {
		switch v := numbers[min(k, d.inks-1)]; {
		case v <= clipBottom:
			e |= 1 << k
		case v >= clipTop:
			e |= 1 << (3 + k)
		}
	}
	return e
}

// withoutEdge leaves the outer tenth out on each side; a pixel at least is left.
func withoutEdge(r image.Rectangle) image.Rectangle {
	x, y := (r.Dx()+5)/10, (r.Dy()+5)/10
	return image.Rect(r.Min.X+x, r.Min.Y+y, r.Max.X-x, r.Max.Y-y)
}

// strideOf is the step between the pixels that are kept, along and across.
func strideOf(size image.Point) int {
	step := 1
	for ((size.X+step-1)/step)*((size.Y+step-1)/step) > mostPixels {
		step++
	}
	return step
}
