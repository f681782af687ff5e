// Scene renders the demo picture: a copper kettle, two lemons and a green bottle on a slate
// shelf, by daylight, from spectral reflectances. Everything in it is ours, so the true
// colour, mask and pigments of each object are known; README.md describes the files.
//
//	go run ./testdata/scene -out testdata -width 1600
package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"
	"io"
	"os"
	"path/filepath"

	"tonewright/match/paint"
)

// The files written, inside the folder of -out.
const (
	pictureFile = "kettle.jpg"
	maskFile    = "kettle-mask.png"
	truthFile   = "kettle.json"
)

func main() { os.Exit(run(os.Args[1:], os.Stderr)) }

// run renders and writes the three files; it returns the exit code.
func run(args []string, stderr io.Writer) int {
	flags := flag.NewFlagSet("scene", flag.ContinueOnError)
	flags.SetOutput(stderr)
	out := flags.String("out", "testdata", "folder to write the picture, its mask and its truth to")
	width := flags.Int("width", 1600, "width of the picture in pixels, a multiple of 4")
	samples := flags.Int("samples", 16, "rays a pixel")
	if err := flags.Parse(args); err != nil {
		return 2
	}
	if *width < 16 || *width%4 != 0 || *samples < 1 {
		fmt.Fprintf(stderr, "scene: width %d, samples %d: give a width of 16 or more that 4 divides, and 1 sample or more\n", *width, *samples)
		return 2
	}
	if err := write(*out, render(*width, *samples)); err != nil {
		fmt.Fprintf(stderr, "scene: %v\n", err)
		return 1
	}
	return 0
}

// rendered is the finished work.
type rendered struct {
	film  *film
	still *still
}

// render makes the picture, three high to four wide.
func render(width, samples int) rendered {
	s := arrange(paint.Library())
	t := &tracer{s, newDaylight(s.objects[wall].material.diffuse)}
	f := t.expose(width, width*3/4, samples)
	f.calm()
	return rendered{f, s}
}

// write puts the picture, the mask and the truth into the folder.
func write(folder string, r rendered) error {
	var picture, mask bytes.Buffer
	if err := r.jpeg(&picture); err != nil {
		return err
	}
	encoder := png.Encoder{CompressionLevel: png.BestCompression}
	if err := encoder.Encode(&mask, r.film.mask()); err != nil {
		return err
	}
	data, err := json.MarshalIndent(r.still.tell(r.film), "", " ")
	if err != nil {
		return err
	}
	for _, f := range []struct {
		name string
		data []byte
	}{{pictureFile, picture.Bytes()}, {maskFile, mask.Bytes()}, {truthFile, append(data, '\n')}} {
		if err := os.WriteFile(filepath.Join(folder, f.name), f.data, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// jpeg writes the picture as sRGB without a profile.
func (r rendered) jpeg(w io.Writer) error {
	const quality = 88
	f := r.film
	m := image.NewRGBA(image.Rect(0, 0, f.width, f.height))
	for i, rgb := 0, f.develop(); i < len(f.object); i++ {
		copy(m.Pix[4*i:], rgb[3*i:3*i+3])
		m.Pix[4*i+3] = 255
	}
	return jpeg.Encode(w, m, &jpeg.Options{Quality: quality})
}
