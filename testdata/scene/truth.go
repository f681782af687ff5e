// The truth file and the mask.

package main

import (
	"image"
	"image/color"
	"math"
	"slices"

	"github.com/lucasb-eyer/go-colorful"

	"tonewright/analyze/colour"
)

// truth is what is known of the picture because we made it: the JSON file beside it.
type truth struct {
	Picture  string        `json:"picture"`
	Mask     string        `json:"mask"`
	Width    int           `json:"width"`
	Height   int           `json:"height"`
	Light    string        `json:"light"`
	Exposure float64       `json:"exposure"`
	Objects  []objectTruth `json:"objects"`
}

// objectTruth is one object's own colour, and how it came out in the picture before JPEG.
type objectTruth struct {
	Name       string     `json:"name"`
	Mask       int        `json:"mask"`  // its index in the mask
	Share      float64    `json:"share"` // of the picture
	Box        [4]float64 `json:"box"`   // left, top, right, bottom; shares of the width and height
	Pigments   []part     `json:"pigments"`
	Metal      string     `json:"metal,omitempty"`
	MetalShare float64    `json:"metal_share,omitempty"`
	GlassShare float64    `json:"glass_share,omitempty"`
	FlatLab    [3]float64 `json:"flat_lab"`
	Munsell    string     `json:"flat_munsell"`
	PigmentLab [3]float64 `json:"pigment_lab"`
	MeanLab    [3]float64 `json:"mean_lab"`
	LightLab   [3]float64 `json:"light_lab"`
	LightShare float64    `json:"light_share"` // of the object's pixels
	DiffuseLab [3]float64 `json:"light_diffuse_lab"`
}

// tell gathers the truth about every object on the film.
func (s *still) tell(f *film) truth {
	t := truth{Picture: pictureFile, Mask: maskFile, Width: f.width, Height: f.height, Light: "D65", Exposure: exposure}
	for i, o := range s.objects {
		t.Objects = append(t.Objects, o.tell(f, i))
	}
	return t
}

func (o object) tell(f *film, index int) objectTruth {
	flat := o.material.flat()
	own := flat.Lab()
	t := objectTruth{
		Name: o.name, Mask: index, Pigments: o.material.parts, GlassShare: o.material.clear,
		FlatLab: printed(own), Munsell: own.Munsell().String(), PigmentLab: printed(o.material.diffuse.Lab()),
	}
	if o.material.isMetal() {
		t.Metal, t.MetalShare = "copper", rounded(1-o.material.tarnish, 4)
	}
	t.Box, t.Share = f.extent(index)
	inside := f.inside(index)
	lit := f.lit(inside)
	t.MeanLab = meanLab(inside, f.light)
	t.LightLab = meanLab(lit, f.light)
	t.LightShare = rounded(float64(len(lit))/float64(max(len(inside), 1)), 4)
	t.DiffuseLab = meanLab(lit, func(i int) xyz { return f.diffuse[i] })
	return t
}

// extent returns the box round an object's pixels and their share of the picture.
func (f *film) extent(index int) (box [4]float64, share float64) {
	var seen image.Rectangle
	count := 0
	for i, o := range f.object {
		if int(o) == index {
			x, y := i%f.width, i/f.width
			seen = seen.Union(image.Rect(x, y, x+1, y+1))
			count++
		}
	}
	w, h := float64(f.width), float64(f.height)
	box = [4]float64{float64(seen.Min.X) / w, float64(seen.Min.Y) / h, float64(seen.Max.X) / w, float64(seen.Max.Y) / h}
	for i := range box {
		box[i] = rounded(box[i], 4)
	}
	return box, rounded(float64(count)/(w*h), 5)
}

// inside lists an object's pixels whose eight neighbours are its own too: no mixed edges.
func (f *film) inside(index int) (pixels []int) {
	for y := 1; y < f.height-1; y++ {
		for x := 1; x < f.width-1; x++ {
			own := true
			for k := range 9 {
				own = own && int(f.object[(y+k/3-1)*f.width+x+k%3-1]) == index
			}
			if own {
				pixels = append(pixels, y*f.width+x)
			}
		}
	}
	return pixels
}

// lit keeps the light side: the pixels that scatter at least 0.6 of what the brightest
// twentieth of them does. Shade, half-light and highlights of the mirror do not choose it.
func (f *film) lit(pixels []int) (light []int) {
	if len(pixels) == 0 {
		return nil
	}
	levels := make([]float64, len(pixels))
	for k, i := range pixels {
		levels[k] = f.diffuse[i][1]
	}
	slices.Sort(levels)
	least := 0.6 * levels[len(levels)*19/20]
	for _, i := range pixels {
		if f.diffuse[i][1] >= least {
			light = append(light, i)
		}
	}
	return light
}

// meanLab is the mean colour of pixels as the camera renders their light; zeros for none.
func meanLab(pixels []int, light func(i int) xyz) [3]float64 {
	var sum colour.Lab
	for _, i := range pixels {
		seen := colorful.LinearRgb(response(light(i)))
		c := colour.FromSRGB(seen.R, seen.G, seen.B)
		sum.L, sum.A, sum.B = sum.L+c.L, sum.A+c.A, sum.B+c.B
	}
	n := float64(max(len(pixels), 1))
	return printed(colour.Lab{L: sum.L / n, A: sum.A / n, B: sum.B / n})
}

func printed(c colour.Lab) [3]float64 {
	return [3]float64{rounded(c.L, 2), rounded(c.A, 2), rounded(c.B, 2)}
}

func rounded(v float64, places int) float64 {
	scale := math.Pow(10, float64(places))
	return math.Round(v*scale) / scale
}

// mask is the picture's map of objects: pixel values are indices in truth.Objects.
func (f *film) mask() *image.Paletted {
	shown := color.Palette{
		color.RGBA{0x9a, 0x90, 0x80, 255}, color.RGBA{0x50, 0x58, 0x66, 255}, color.RGBA{0xc0, 0x60, 0x30, 255},
		color.RGBA{0x30, 0x20, 0x18, 255}, color.RGBA{0x20, 0x60, 0x30, 255}, color.RGBA{0xe8, 0xd0, 0x20, 255},
		color.RGBA{0xf4, 0xe8, 0x80, 255},
	}
	m := image.NewPaletted(image.Rect(0, 0, f.width, f.height), shown)
	copy(m.Pix, f.object)
	return m
}
