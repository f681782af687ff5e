package analyze

import (
	"image"
	"math"
	"slices"

	"tonewright/analyze/colour"
)

// body is the paint of a sample, told apart from the glare on it.
type body struct {
	colour rgb     // its middle
	pixels []pixel // without glare
	glare  float64 // share of the sample left out, 0-1
}

func (b *body) lab() colour.Lab { return b.colour.lab() }

func (c rgb) lab() colour.Lab { return colour.FromLinear(c[0], c[1], c[2]) }

// Glare is lighter than the body by so many robust standard deviations, and by so
// much of L*. 3 is the rule of [Leys2013]. Ours: the second keeps the grain of a smooth
// swatch, whose deviation is next to nothing, from counting.
const (
	glareDeviations = 3
	glareLightness  = 4
)

// bodyOf leaves glare out, twice, since the first time the glare itself widens the
// deviation. Light is evened out before: then the light is white, and glare adds the
// same to all channels, whereas a thicker or more lit place multiplies them. A pixel
// much lighter than the body is glare if what it has more points rather to the
// light than to the body. Unmixed white in a paint looks the same.
// Source: [Shafer1985], dichromatic reflection; [Leys2013], median and MAD.
func bodyOf(all []pixel) body {
	b := body{pixels: all, colour: middle(all)}
	for range 2 {
		limit := b.glareLimit()
		var kept []pixel
		for _, p := range all {
			if p.light.lab().L <= limit || !towardsLight(p.light, b.colour) {
				kept = append(kept, p)
			}
		}
		b = body{pixels: kept, colour: middle(kept), glare: 1 - float64(len(kept))/float64(len(all))}
	}
	return b
}

// glareLimit is the L* above which a pixel may be glare.
func (b *body) glareLimit() float64 {
	l := make([]float64, len(b.pixels))
	for i, p := range b.pixels {
		l[i] = p.light.lab().L
	}
	m, d := deviation(l)
	return m + max(glareDeviations*d, glareLightness)
}

// towardsLight tells whether what a pixel has more than the body is nearer in
// direction to white light than to the body's own colour.
func towardsLight(c, body rgb) bool {
	more := rgb{c[0] - body[0], c[1] - body[1], c[2] - body[2]}
	white := rgb{1, 1, 1}
	return more.along(white) >= more.along(body)-neutralSlack
}

// neutralSlack lets a gray body's glare through, whose two directions are one.
const neutralSlack = 1e-3

// along is the length of a in direction b.
func (a rgb) along(b rgb) float64 {
	return (a[0]*b[0] + a[1]*b[1] + a[2]*b[2]) / max(math.Sqrt(b[0]*b[0]+b[1]*b[1]+b[2]*b[2]), 1e-12)
}

// middle is the mean of the middle half of each channel.
func middle(all []pixel) (m rgb) {
	v := make([]float64, len(all))
	for k := range m {
		for i, p := range all {
			v[i] = p.light[k]
		}
		m[k] = middleHalf(v)
	}
	return m
}

// middleHalf sorts v and returns the mean of what lies between its quarters; 0 of none.
// Ours: a median sticks to one of the photo's 256 levels, this does not, and stands as
// firm unless a quarter is off. On made photos of 23 patches it halved the error:
// 0.18 → 0.03 CIEDE2000 as PNG in full light, 0.50 → 0.27 in a fifth of the light with
// noise, 0.77 → 0.57 the same as JPEG.
func middleHalf(v []float64) float64 {
	slices.Sort(v)
	n := len(v) / 4
	sum := 0.0
	for _, x := range v[n : len(v)-n] {
		sum += x
	}
	return sum / float64(max(1, len(v)-2*n))
}

// median sorts v; 0 of none.
func median(v []float64) float64 {
	slices.Sort(v)
	n := len(v)
	if n == 0 {
		return 0
	}
	return (v[(n-1)/2] + v[n/2]) / 2
}

// deviation returns the median of v and its standard deviation by the median of the
// distances from it, as if v were normal. It reorders v.
// Source: [Leys2013] eq. 1; 1.4826 is 1 ÷ the upper quartile of the normal distribution.
func deviation(v []float64) (middle, deviation float64) {
	middle = median(v)
	for i := range v {
		v[i] = math.Abs(v[i] - middle)
	}
	return middle, 1.4826 * median(v)
}

// spread is the median CIEDE2000 of the pixels from their middle, and marks that of
// cells of some 4 × 4 pixels, which grain hardly reaches and brush marks do.
func (b *body) spread(rect image.Rectangle) (spread, marks float64) {
	var pixels, cells []float64
	at := b.lab()
	for _, p := range b.pixels {
		pixels = append(pixels, colour.DeltaE00(p.light.lab(), at))
	}
	for _, c := range blocksOf(rect, b.pixels, finestBlocks) {
		cells = append(cells, colour.DeltaE00(c.light.lab(), at))
	}
	return median(pixels), median(cells)
}

// clipped are the shares of the pixels at the bottom and the top of each channel.
func (b *body) clipped() (bottom, top [3]float64) {
	for _, p := range b.pixels {
		for k := range 3 {
			bottom[k] += float64(p.ends >> k & 1)
			top[k] += float64(p.ends >> (3 + k) & 1)
		}
	}
	for k := range 3 {
		bottom[k] /= float64(len(b.pixels))
		top[k] /= float64(len(b.pixels))
	}
	return bottom, top
}
