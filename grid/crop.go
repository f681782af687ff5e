package grid

import (
	"fmt"
	"image"
	"math"
	"strconv"
	"strings"
)

// Crop says which part of the photo goes onto the panel. The zero value keeps
// the middle, in the panel's proportion.
type Crop struct {
	// Keep is the side that stays: "centre" (or ""), "top", "bottom", "left", "right".
	Keep string
	// Window, if not zero, is the part kept before Keep applies, in percent of
	// the photo's width and height from its top left.
	Window Window
}

// Window is a rectangle in percent of the photo, 0-100.
type Window struct{ X, Y, Width, Height float64 }

// ParseCrop reads "centre", "top", "bottom", "left", "right" or "x,y,w,h" in percent.
func ParseCrop(text string) (Crop, error) {
	word := strings.ToLower(strings.TrimSpace(text))
	switch word {
	case "", "centre", "center", "top", "bottom", "left", "right":
		if word == "center" {
			word = "centre"
		}
		return Crop{Keep: word}, nil
	}
	fields := strings.Split(strings.ReplaceAll(word, "%", ""), ",")
	if len(fields) != 4 {
		return Crop{}, fmt.Errorf("crop %q is not known: write centre, top, bottom, left, right, or x,y,w,h in percent of the photo", text)
	}
	var v [4]float64
	for i, f := range fields {
		n, err := strconv.ParseFloat(strings.TrimSpace(f), 64)
		if err != nil || math.IsNaN(n) || n < 0 || n > 100 {
			return Crop{}, fmt.Errorf("crop %q: %q is not a percentage from 0 to 100", text, strings.TrimSpace(f))
		}
		v[i] = n
	}
	w := Window{v[0], v[1], v[2], v[3]}
	if w.Width <= 0 || w.Height <= 0 || w.X+w.Width > 100 || w.Y+w.Height > 100 {
		return Crop{}, fmt.Errorf("crop %q leaves the photo: x + w and y + h may be 100 at most, w and h more than 0", text)
	}
	return Crop{Window: w}, nil
}

// Rect returns the part of a photo of width × height pixels that a panel of
// the given proportion (width ÷ height) takes. It is as large as fits into the
// window and never empty.
func (c Crop) Rect(width, height int, proportion float64) image.Rectangle {
	window := c.window(width, height)
	w, h := float64(window.Dx()), float64(window.Dy())
	if w/h > proportion {
		w = h * proportion
	} else {
		h = w / proportion
	}
	size := image.Pt(max(1, int(math.Round(w))), max(1, int(math.Round(h))))
	size = image.Pt(min(size.X, window.Dx()), min(size.Y, window.Dy()))
	spare := window.Size().Sub(size)
	at := image.Pt(spare.X/2, spare.Y/2)
	switch c.Keep {
	case "top":
		at.Y = 0
	case "bottom":
		at.Y = spare.Y
	case "left":
		at.X = 0
	case "right":
		at.X = spare.X
	}
	corner := window.Min.Add(at)
	return image.Rectangle{Min: corner, Max: corner.Add(size)}
}

// Proportion returns width ÷ height of the window on a photo, for a panel that
// takes the photo's own proportion.
func (c Crop) Proportion(width, height int) float64 {
	window := c.window(width, height)
	return float64(window.Dx()) / float64(window.Dy())
}

func (c Crop) window(width, height int) image.Rectangle {
	if c.Window == (Window{}) {
		return image.Rect(0, 0, width, height)
	}
	x0, x1 := share(c.Window.X, c.Window.Width, width)
	y0, y1 := share(c.Window.Y, c.Window.Height, height)
	return image.Rect(x0, y0, x1, y1)
}

// share turns percent into whole pixels, at least one.
func share(at, size float64, pixels int) (from, to int) {
	from = min(pixels-1, int(math.Round(at/100*float64(pixels))))
	to = min(pixels, max(from+1, int(math.Round((at+size)/100*float64(pixels)))))
	return from, to
}

// CutOff returns, in words, how much of a photo a crop leaves out on each side,
// or "nothing".
func CutOff(crop image.Rectangle, width, height int) string {
	sides := []struct {
		name string
		part float64
	}{
		{"left", float64(crop.Min.X) / float64(width)},
		{"right", float64(width-crop.Max.X) / float64(width)},
		{"top", float64(crop.Min.Y) / float64(height)},
		{"bottom", float64(height-crop.Max.Y) / float64(height)},
	}
	var words []string
	for _, s := range sides {
		if s.part >= 0.0005 {
			words = append(words, fmt.Sprintf("%.1f %% at the %s", 100*s.part, s.name))
		}
	}
	if len(words) == 0 {
		return "nothing"
	}
	return strings.Join(words, ", ")
}
