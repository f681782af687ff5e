// Light going through the green bottle.

package main

import (
	"math"

	"tonewright/analyze/colour"
)

// through follows light into the bottle's wall and out on its other side; below the level
// of what it holds, wall and filling are one solid lens.
func (t *tracer) through(h *hit, at *surface, d vec, path *colour.Spectrum, turn int, s *sampler) (sum xyz) {
	const index = 1.5
	after := *path
	scale(&after, h.m.clear*(1-schlick(h.m.gloss, -at.normal.dot(d))))
	b := &t.bodies[h.body]
	d = bent(d, at.normal, 1/index)
	o := h.p.along(h.n, -0.02)
	for range 4 {
		far := b.leave(o, d)
		t.stain(&after, far)
		p := o.along(d, far)
		n := b.normal(p)
		out := bent(d, n.times(-1), index)
		if out != (vec{}) {
			return t.radiance(p.along(n, 0.03), out, &after, turn, onlyWay, s)
		}
		d = d.mirrored(n)
		o = p.along(n, -0.03)
	}
	return sum
}

// bent is the direction after refraction, by Snell's law; zero when all is turned back.
func bent(d, n vec, ratio float64) vec {
	cos := -d.dot(n)
	k := 1 - ratio*ratio*(1-cos*cos)
	if k < 0 {
		return vec{}
	}
	return d.times(ratio).along(n, ratio*cos-math.Sqrt(k)).unit()
}

// stain takes away what so many cm of the bottle's glass absorb.
func (t *tracer) stain(path *colour.Spectrum, cm float64) {
	for i, k := range t.objects[bottle].material.stain {
		path[i] *= math.Exp(-k * cm)
	}
}
