package main

import "math"

// film is the light that fell on each pixel, row by row from the top left.
type film struct {
	width, height int
	object        []uint8 // mask index of what the pixel's centre shows
	diffuse       []xyz   // light scattered by the first body seen
	mirror        []xyz   // all other light
	albedo        []xyz   // the body's own colour there, as scattered by an even light
	normal        []vec
	depth         []float64
	noise         []float64 // variance of the diffuse Y, of the mean of the samples
	noiseMirror   []float64
}

func newFilm(width, height int) *film {
	n := width * height
	return &film{width, height, make([]uint8, n), make([]xyz, n), make([]xyz, n), make([]xyz, n),
		make([]vec, n), make([]float64, n), make([]float64, n), make([]float64, n)}
}

// camera looks at the still life from a standing painter's height.
type camera struct {
	eye  vec
	axes frame   // u right, v up, w forward
	tall float64 // half the picture's height at distance 1
}

func newCamera() camera {
	eye, aim := vec{0, 25, 108}, vec{0.8, 11.2, 0}
	w := aim.sub(eye).unit()
	u := w.cross(vec{0, 1, 0}).unit()
	return camera{eye, frame{u, u.cross(w), w}, math.Tan(11.3 * math.Pi / 180)}
}

// ray returns the direction through a place on the picture, in pixels.
func (c camera) ray(x, y float64, width, height int) vec {
	s := 2 * c.tall / float64(height)
	right, up := (x-float64(width)/2)*s, (float64(height)/2-y)*s
	return c.axes.w.along(c.axes.u, right).along(c.axes.v, up).unit()
}

// expose renders the still life.
func (t *tracer) expose(width, height, samples int) *film {
	f, cam := newFilm(width, height), newCamera()
	f.eachRow(func(y int) {
		for x := range width {
			t.pixel(f, cam, x, y, samples)
		}
	})
	return f
}

// pixel gathers the samples of one pixel, spread over it by a bell of half a pixel.
func (t *tracer) pixel(f *film, cam camera, x, y, samples int) {
	i := y*f.width + x
	centre, _ := t.hit(cam.eye, cam.ray(float64(x)+0.5, float64(y)+0.5, f.width, f.height))
	f.object[i] = uint8(centre.object)
	share := 1 / float64(samples)
	var square, squareMirror float64
	for k := range samples {
		s := sampler{pixel: uint32(i), index: uint32(k)}
		a, b := s.next()
		dx, dy := bell(a, b)
		d := cam.ray(float64(x)+0.5+dx*0.45, float64(y)+0.5+dy*0.45, f.width, f.height)
		got := t.look(cam.eye, d, &s)
		f.diffuse[i].add(got.diffuse, share)
		f.mirror[i].add(got.mirror, share)
		f.albedo[i].add(got.albedo, share)
		f.normal[i] = f.normal[i].along(got.n, share)
		f.depth[i] += got.t * share
		square += got.diffuse[1] * got.diffuse[1] * share
		squareMirror += got.mirror[1] * got.mirror[1] * share
	}
	mean, meanMirror := f.diffuse[i][1], f.mirror[i][1]
	f.noise[i] = max(square-mean*mean, 0) * share
	f.noiseMirror[i] = max(squareMirror-meanMirror*meanMirror, 0) * share
}
