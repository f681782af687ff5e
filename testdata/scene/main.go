package main

import (
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"strconv"
	"time"

	"tonewright/match/paint"
)

func main() {
	w, _ := strconv.Atoi(os.Args[1])
	spp, _ := strconv.Atoi(os.Args[2])
	s := arrange(paint.Library())
	for _, o := range s.objects {
		f := o.material.flat()
		l := f.Lab()
		fmt.Printf("%-12s L %.1f C %.1f h %.0f\n", o.name, l.L, l.Chroma(), l.Hue())
	}
	t := &tracer{s, newDaylight(s.objects[wall].material.diffuse)}
	start := time.Now()
	f := t.expose(w, w*3/4, spp)
	fmt.Println(time.Since(start))
	if len(os.Args) < 5 {
		f.calm()
	}
	fmt.Println(time.Since(start))
	im := image.NewRGBA(image.Rect(0, 0, f.width, f.height))
	enc := func(v float64) uint8 {
		v = min(max(v, 0), 1)
		if v <= 0.0031308 {
			v *= 12.92
		} else {
			v = 1.055*math.Pow(v, 1/2.4) - 0.055
		}
		return uint8(v*255 + .5)
	}
	for i := range f.object {
		c := f.diffuse[i]
		c.add(f.mirror[i], 1)
		for j := range c {
			c[j] *= 1.3
		}
		X, Y, Z := c[0]*.95047, c[1], c[2]*1.08883
		r, g, b := 3.2404542*X-1.5371385*Y-.4985314*Z, -.969266*X+1.8760108*Y+.041556*Z, .0556434*X-.2040259*Y+1.0572252*Z
		im.SetRGBA(i%f.width, i/f.width, color.RGBA{enc(r), enc(g), enc(b), 255})
	}
	o, _ := os.Create(os.Args[3])
	png.Encode(o, im)
	o.Close()
}
