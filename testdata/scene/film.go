// The film: what fell on each pixel.

package main

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
	cover         [][surfaces]uint16 // how many samples of the pixel met each surface
	face          []uint8            // the surface at the pixel's centre
}

// surfaces is how many surfaces can be told apart: the flat wall and shelf, and up to 14 bodies.
const surfaces = 16

// surface numbers what was hit: bodies come after the wall and the shelf's flat top.
func (h hit) surface() uint8 {
	if h.body < 0 {
		return uint8(h.object)
	}
	return uint8(h.body + 2)
}

// edge tells whether more than one surface shows in pixel i.
func (f *film) edge(i int) bool {
	met := 0
	for _, n := range f.cover[i] {
		if n > 0 {
			met++
		}
	}
	return met > 1
}

func newFilm(width, height int) *film {
	n := width * height
	return &film{width, height, make([]uint8, n), make([]xyz, n), make([]xyz, n), make([]xyz, n),
		make([]vec, n), make([]float64, n), make([]float64, n), make([]float64, n), make([][surfaces]uint16, n), make([]uint8, n)}
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
	f.object[i], f.face[i] = uint8(centre.object), centre.surface()
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
		f.cover[i][got.surface()]++
		square += got.diffuse[1] * got.diffuse[1] * share
		squareMirror += got.mirror[1] * got.mirror[1] * share
	}
	mean, meanMirror := f.diffuse[i][1], f.mirror[i][1]
	f.noise[i] = max(square-mean*mean, 0) * share
	f.noiseMirror[i] = max(squareMirror-meanMirror*meanMirror, 0) * share
}
