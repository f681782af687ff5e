// Where rays meet the wall, the shelf and the bodies.

package main

import "math"

// hit is where a ray meets a surface.
type hit struct {
	t      float64
	p, n   vec
	object int
	m      *material
	body   int // index in still.bodies, -1 for the wall and the shelf's top
}

// hit returns the first surface along the ray; the second result is false when there is none.
func (s *still) hit(o, d vec) (hit, bool) {
	h := s.planes(o, d)
	inverse := vec{1 / d.x, 1 / d.y, 1 / d.z}
	for i := range s.bodies {
		b := &s.bodies[i]
		if from, to := b.bounds.span(o, inverse, h.t); from < to {
			if t, ok := b.march(o, d, from, to); ok {
				h = hit{t: t, object: b.object, m: b.material, body: i}
			}
		}
	}
	if math.IsInf(h.t, 1) {
		return h, false
	}
	h.p = o.along(d, h.t)
	if h.body >= 0 {
		h.n = s.bodies[h.body].normal(h.p)
	}
	return h, true
}

// planes returns the hit on the wall or the shelf's flat top.
func (s *still) planes(o, d vec) hit {
	h := hit{t: math.Inf(1), body: -1}
	if d.z < 0 {
		h.t, h.object, h.n = (wallAt-o.z)/d.z, wall, vec{0, 0, 1}
	}
	if t := -o.y / d.y; d.y < 0 && t > 0 && t < h.t {
		if z := o.z + d.z*t; z < shelfEdge-edgeStrip {
			h.t, h.object, h.n = t, shelf, vec{0, 1, 0}
		}
	}
	h.m = s.objects[h.object].material
	return h
}

// march steps along the ray by the distance to the body until it touches.
func (b *body) march(o, d vec, from, to float64) (float64, bool) {
	const touch, most = 0.003, 96
	t := from
	for range most {
		step := b.distance(o.along(d, t))
		if step < touch {
			return t, true
		}
		if t += step; t >= to {
			return 0, false
		}
	}
	return 0, false
}

// leave steps from inside the body at o to its far side.
func (b *body) leave(o, d vec) float64 {
	const touch, most = 0.003, 96
	var t float64
	for range most {
		step := -b.distance(o.along(d, t))
		t += max(step, touch)
		if t > touch*2 && step < touch {
			break
		}
	}
	return t
}

// normal is the slope of the distance, from four points around p.
func (b *body) normal(p vec) vec {
	const e = 0.02
	var n vec
	for _, k := range [...]vec{{1, -1, -1}, {-1, -1, 1}, {-1, 1, -1}, {1, 1, 1}} {
		n = n.along(k, b.distance(p.along(k, e)))
	}
	return n.unit()
}

// shadow returns whether light from q reaches p, and how many cm of green glass it crosses.
func (s *still) shadow(p, q vec) (open bool, glass float64) {
	d := q.sub(p)
	far := d.length()
	d = d.times(1 / far)
	if t := -p.y / d.y; p.y < -0.01 && t > 0 && p.z+d.z*t < shelfEdge-edgeStrip {
		return false, 0
	}
	inverse := vec{1 / d.x, 1 / d.y, 1 / d.z}
	for i := range s.bodies {
		b := &s.bodies[i]
		from, to := b.bounds.span(p, inverse, far)
		if from >= to {
			continue
		}
		t, ok := b.march(p, d, from, to)
		if ok && b.material.clear == 0 {
			return false, 0
		}
		for ok {
			thick := b.leave(p.along(d, t+0.01), d)
			glass += thick
			t, ok = b.march(p, d, t+thick+0.03, to)
		}
	}
	return true, glass
}
