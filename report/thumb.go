package report

import (
	"image"
	"image/color"

	"tonewright/report/plan"
)

// thumbIndex returns, for every pixel of a small picture, the pixel of the large
// one that stands for it.
func thumbIndex(w, h, smallW, smallH int) []int {
	index := make([]int, 0, smallW*smallH)
	for y := range smallH {
		for x := range smallW {
			index = append(index, ((2*y+1)*h/(2*smallH))*w+(2*x+1)*w/(2*smallW))
		}
	}
	return index
}

// The where-pictures tell things apart by lightness only, and keep apart in
// gray print: paper, the region around, the place itself.
var (
	wherePalette    = wide(color.Palette{color.Gray{250}, color.Gray{190}, color.Gray{0}})
	linePalette     = wide(color.Palette{color.Transparent, color.Gray{0}, color.Gray{255}})
	linePaletteDark = wide(color.Palette{color.Transparent, color.Gray{255}, color.Gray{0}})
)

const (
	elsewhere = iota
	around
	here
)

func regionThumb(pics *plan.Pictures, index []int, w, h, region int) image.Image {
	m := image.NewPaletted(image.Rect(0, 0, w, h), wherePalette)
	for i, at := range index {
		if int(pics.Parting.Of[at]) == region {
			m.Pix[i] = here
		}
	}
	return m
}

func colourThumb(pics *plan.Pictures, index []int, w, h, region, colour int) image.Image {
	m := image.NewPaletted(image.Rect(0, 0, w, h), wherePalette)
	for i, at := range index {
		switch {
		case int(pics.ColourOf[at]) == colour:
			m.Pix[i] = here
		case int(pics.Parting.Of[at]) == region:
			m.Pix[i] = around
		}
	}
	return m
}

// outlineImage draws the borders between regions, light with a dark edge, so that
// they show on any picture; the rest is clear.
func outlineImage(of []uint8, w, h int) image.Image {
	return bordersImage(w, h, func(x, y int) bool {
		i := y*w + x
		return x+1 < w && of[i] != of[i+1] || y+1 < h && of[i] != of[i+w]
	}, linePalette)
}

// bordersImage draws a line where a border runs between a pixel and the next or the one
// below: index 2 of the palette with an edge of index 1; the rest is 0.
func bordersImage(w, h int, border func(x, y int) bool, palette color.Palette) *image.Paletted {
	const edge, core = 1, 2
	m := image.NewPaletted(image.Rect(0, 0, w, h), palette)
	for y := range h {
		for x := range w {
			if !border(x, y) {
				continue
			}
			for dy := -1; dy <= 2; dy++ {
				for dx := -1; dx <= 2; dx++ {
					paintDot(m, x+dx, y+dy, edge)
				}
			}
		}
	}
	for y := range h {
		for x := range w {
			if border(x, y) {
				for _, d := range []image.Point{{}, {X: 1}, {Y: 1}, {X: 1, Y: 1}} {
					setDot(m, x+d.X, y+d.Y, core)
				}
			}
		}
	}
	return m
}

// paintDot sets a pixel that is still clear; setDot sets any pixel. Both leave
// out what lies off the picture.
func paintDot(m *image.Paletted, x, y int, index uint8) {
	if (image.Point{X: x, Y: y}).In(m.Rect) && m.Pix[y*m.Stride+x] == 0 {
		m.Pix[y*m.Stride+x] = index
	}
}

func setDot(m *image.Paletted, x, y int, index uint8) {
	if (image.Point{X: x, Y: y}).In(m.Rect) {
		m.Pix[y*m.Stride+x] = index
	}
}
