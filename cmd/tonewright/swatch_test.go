package main

import (
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math/rand/v2"
	"os"
	"path/filepath"

	"github.com/rogpeppe/go-internal/testscript"

	"tonewright/analyze/colour"
)

// cardPhoto writes a photo, JPEG or PNG by its name, of a swatch beside a card:
// cardphoto FILE COLOUR [COLOUR], with another colour on the swatch's left half, such as
// a shadow.
func cardPhoto(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 || len(args) > 3 {
		ts.Fatalf("usage: cardphoto FILE COLOUR [COLOUR]")
	}
	paint, err := colour.Parse(args[1])
	ts.Check(err)
	left, err := colour.Parse(args[len(args)-1])
	ts.Check(err)
	file, err := os.Create(ts.MkAbs(args[0]))
	ts.Check(err)
	if photo := swatchPhoto(400, 300, paint, left); filepath.Ext(args[0]) == ".jpg" {
		ts.Check(jpeg.Encode(file, photo, nil))
	} else {
		ts.Check(png.Encode(file, photo))
	}
	ts.Check(file.Close())
}

// swatchPhoto returns a photo of a brown table with a gray card, L* 49.5, at
// 10,20,15,20 percent and a swatch at 55,25,20,20 of two halves; each pixel has a little grain.
func swatchPhoto(width, height int, paint, left colour.Lab) image.Image {
	random := rand.New(rand.NewPCG(1, 2))
	part := func(x, y, w, h int) image.Rectangle {
		return image.Rect(x*width/100, y*height/100, (x+w)*width/100, (y+h)*height/100)
	}
	card, swatch := part(10, 20, 15, 20), part(55, 25, 20, 20)
	photo := image.NewNRGBA(image.Rect(0, 0, width, height))
	for y := range height {
		for x := range width {
			at := colour.Lab{L: 40, A: 8, B: 14}
			switch p := image.Pt(x, y); {
			case p.In(card):
				at = colour.Lab{L: 49.5}
			case p.In(swatch) && x < (swatch.Min.X+swatch.Max.X)/2:
				at = left
			case p.In(swatch):
				at = paint
			}
			at.L += random.Float64() - 0.5
			r, g, b := at.SRGB()
			photo.SetNRGBA(x, y, color.NRGBA{channel(r), channel(g), channel(b), 255})
		}
	}
	return photo
}

func channel(v float64) uint8 { return uint8(min(max(v, 0), 1)*255 + 0.5) }
