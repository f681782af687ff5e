package analyze

import (
	"fmt"
	"image"
)

// MaxAreas is how many areas a painter may name: Parting.Of counts in a byte, and
// the rest needs one number.
const MaxAreas = 255

// TheRest names what no named area covers; no area can have the name.
const TheRest = "the rest"

// Area is a part of the picture the painter names: the pixels in any of Rects, those
// inside Outline and those in Mask. What lies off the picture is ignored.
type Area struct {
	Name    string
	Rects   []image.Rectangle // in working pixels
	Outline [][]Place         // rings; a pixel is in whose centre is inside an odd number of them
	Mask    []bool            // nil, or one a pixel: len(Mask) == Width × Height
}

// Region is a part of the picture that is planned as one.
type Region struct {
	Name   string
	Pixels int // 0 for a named area that later areas cover whole
}

// Parting is the picture cut into regions: every pixel belongs to one.
// len(Of) == Width × Height; Of[i] is the index in Regions of pixel i.
type Parting struct {
	Regions []Region
	Of      []uint8
}

// Regions returns the painter's areas in their order, later ones over earlier ones,
// and what none covers as TheRest, last, if there is any.
// With no areas it parts the picture itself: see findRegions.
// It panics on more than MaxAreas areas, and on a mask of another size than the picture.
func Regions(p *Picture, areas []Area) Parting {
	if len(areas) == 0 {
		return findRegions(p)
	}
	if len(areas) > MaxAreas {
		panic(fmt.Sprintf("analyze: %d areas, at most %d can be told apart", len(areas), MaxAreas))
	}
	return named(p, areas)
}

// named lays the areas over the rest, one after the other.
func named(p *Picture, areas []Area) Parting {
	rest := uint8(len(areas))
	of := make([]uint8, p.Width*p.Height)
	for i := range of {
		of[i] = rest
	}
	regions := make([]Region, len(areas)+1)
	for a, area := range areas {
		regions[a].Name = area.Name
		for _, r := range area.Rects {
			fill(of, p.Width, r.Intersect(image.Rect(0, 0, p.Width, p.Height)), uint8(a))
		}
		for _, s := range inside(area.Outline, p.Width, p.Height) {
			fill(of, p.Width, image.Rect(s.from, s.y, s.to, s.y+1), uint8(a))
		}
		if area.Mask != nil {
			fillMask(of, area.Mask, uint8(a))
		}
	}
	regions[rest].Name = TheRest
	count(regions, of)
	if regions[rest].Pixels == 0 {
		regions = regions[:rest]
	}
	return Parting{Regions: regions, Of: of}
}

// fill gives the pixels of r, which lies within the picture, the number n.
func fill(of []uint8, width int, r image.Rectangle, n uint8) {
	for y := r.Min.Y; y < r.Max.Y; y++ {
		row := of[y*width+r.Min.X : y*width+r.Max.X]
		for x := range row {
			row[x] = n
		}
	}
}

// fillMask gives the pixels that are in the mask the number n.
func fillMask(of []uint8, mask []bool, n uint8) {
	if len(mask) != len(of) {
		panic(fmt.Sprintf("analyze: a mask of %d pixels on a picture of %d", len(mask), len(of)))
	}
	for i, in := range mask {
		if in {
			of[i] = n
		}
	}
}

// count sets the pixels of each region.
func count(regions []Region, of []uint8) {
	var pixels [256]int
	for _, r := range of {
		pixels[r]++
	}
	for i := range regions {
		regions[i].Pixels = pixels[i]
	}
}
