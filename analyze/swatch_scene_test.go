package analyze

import (
	"math"
	"os"
	"strconv"
	"strings"
	"sync"

	"tonewright/analyze/colour"
)

// waves are figures at 400, 405 … 700 nm.
type waves [2*colour.Bands - 1]float64

// betweenBands reads figures by 10 nm at every 5, straight between them, as
// CIE daylights are defined.
func betweenBands(s *colour.Spectrum) *waves {
	var w waves
	for i := range w {
		w[i] = (s[i/2] + s[(i+1)/2]) / 2
	}
	return &w
}

// spectra are what scenes are lit and seen by: the observer and the lamps.
type spectra struct {
	observer [3]waves
	lamps    map[string]*waves
}

// standard are the observer and the lamps A, FL11 and LED-B3 of the colour package's table,
// whose source is [CIE15], the D65 that its weights are made with, two more
// daylights, and glowing bodies.
var standard = sync.OnceValue(func() (s spectra) {
	text, err := os.ReadFile("colour/lamps.txt")
	if err != nil {
		panic(err)
	}
	var a, f11, b3 waves
	for line := range strings.Lines(string(text)) {
		f := strings.Fields(line)
		nm, err := strconv.Atoi(f[0])
		if err != nil || nm < 400 || nm > 700 {
			continue
		}
		for k, w := range []*waves{&s.observer[0], &s.observer[1], &s.observer[2], &a, &f11, &b3} {
			if w[(nm-400)/5], err = strconv.ParseFloat(f[k+1], 64); err != nil {
				panic(err)
			}
		}
	}
	var d65 colour.Spectrum
	for i, w := range colour.Weights()[1] {
		d65[i] = w / s.observer[1][2*i]
	}
	s.lamps = map[string]*waves{
		"A": &a, "F11": &f11, "B3": &b3, "D65": betweenBands(&d65), "D50": betweenBands(&d50Power), "D75": betweenBands(&d75Power),
		"6000 K": glow(6000), "5500 K": glow(5500), "5000 K": glow(5000), "4000 K": glow(4000), "3500 K": glow(3500), "3000 K": glow(3000),
	}
	return s
})

// Relative power by 10 nm from 400 nm on. Source: [CIE15], illuminants D50 and D75.
var (
	d50Power = colour.Spectrum{
		49.308, 56.513, 60.034, 57.818, 74.825, 87.247, 90.612, 91.368, 95.109, 91.963, 95.724, 96.613, 97.129, 102.099, 100.755, 102.317,
		100, 97.735, 98.918, 93.499, 97.688, 99.269, 99.042, 95.722, 98.857, 95.667, 98.19, 103.003, 99.133, 87.381, 91.604,
	}
	d75Power = colour.Spectrum{
		101.929, 111.894, 112.798, 103.092, 121.198, 133.01, 132.355, 127.322, 126.8, 117.783, 116.589, 113.702, 108.659, 110.445, 106.289, 104.904,
		100, 95.616, 94.213, 86.997, 87.227, 86.14, 83.581, 78.747, 78.428, 74.801, 74.324, 75.422, 71.576, 63.852, 65.076,
	}
)

// glow is a glowing body. Source: Planck's law, c2 = 0.014388 m K.
func glow(kelvin float64) *waves {
	var w waves
	for i := range w {
		m := (400 + 5*float64(i)) * 1e-9
		w[i] = 1e-33 / (math.Pow(m, 5) * math.Expm1(0.014388/(m*kelvin)))
	}
	return &w
}

// camera takes a reflectance under a lamp to linear sRGB: by three curves, each
// divided by what it has of white in the light that it is balanced for, and a matrix.
type camera struct {
	curves  [3]waves
	balance rgb
	toSRGB  matrix
}

// sensed is what the curves have of a reflectance under a lamp.
func (c *camera) sensed(lamp, r *waves) (v rgb) {
	for k := range v {
		for i := range lamp {
			v[k] += c.curves[k][i] * lamp[i] * r[i]
		}
	}
	return v
}

// perfect is a reflectance of 1.
var perfect = func() *waves {
	var w waves
	for i := range w {
		w[i] = 1
	}
	return &w
}()

// balanced is the camera set to a light.
func (c camera) balanced(lamp *waves) *camera {
	for k, v := range c.sensed(lamp, perfect) {
		c.balance[k] = 1 / v
	}
	return &c
}

// exposed is the camera set so that white under lamp has a luminance.
func (c camera) exposed(lamp *waves, luminance float64) *camera {
	c.balance = times(c.balance, luminance/c.sees(lamp, perfect).luminance())
	return &c
}

// sees is linear sRGB, in which white in the light that the camera is balanced for is 1.
func (c *camera) sees(lamp, r *waves) rgb {
	v := c.sensed(lamp, r)
	for k := range v {
		v[k] *= c.balance[k]
	}
	return c.toSRGB.apply(v)
}

// idealCamera has the observer's curves and is set to daylight, in which it sees
// colours as they are.
var idealCamera = sync.OnceValue(func() *camera {
	white := whiteXYZ(d65Chromaticity)
	c := camera{curves: standard().observer, toSRGB: xyzToSRGB.times(matrix{{white[0]}, {0, white[1]}, {0, 0, white[2]}})}
	return c.balanced(standard().lamps["D65"])
})

// plainCamera has three bell curves for a sensor, and a matrix fitted under D65 to
// the chart, with white kept white; it is set to daylight. The curves' middles and
// widths are from memory, about those of common cameras.
var plainCamera = sync.OnceValue(func() *camera {
	var c camera
	for k, bell := range [3][2]float64{{600, 32}, {535, 38}, {460, 27}} {
		for i := range c.curves[k] {
			c.curves[k][i] = math.Exp(-math.Pow((400+5*float64(i)-bell[0])/bell[1], 2) / 2)
		}
	}
	c.toSRGB = identity.m
	d65 := standard().lamps["D65"]
	raw := c.balanced(d65)
	fitted := *raw
	for k := range 3 {
		var xx, xz, zz, xy, zy float64 // least squares of what is beyond green
		for _, lab := range checker {
			r := reflectanceOf(lab)
			v := raw.sees(d65, r)
			x, z, y := v[0]-v[1], v[2]-v[1], idealCamera().sees(d65, r)[k]-v[1]
			xx, xz, zz, xy, zy = xx+x*x, xz+x*z, zz+z*z, xy+x*y, zy+z*y
		}
		det := xx*zz - xz*xz
		x, z := (xy*zz-zy*xz)/det, (zy*xx-xy*xz)/det
		fitted.toSRGB[k] = [3]float64{x, 1 - x - z, z}
	}
	return &fitted
})

// reflectanceOf is a reflectance of a colour.
func reflectanceOf(lab colour.Lab) *waves {
	s := lab.Reflectance()
	return betweenBands(&s)
}
