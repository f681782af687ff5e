// Points, directions, frames and boxes in space.

package main

import "math"

// vec is a point or direction in centimetres: x right, y up, z towards the viewer.
type vec struct{ x, y, z float64 }

func (a vec) add(b vec) vec              { return vec{a.x + b.x, a.y + b.y, a.z + b.z} }
func (a vec) sub(b vec) vec              { return vec{a.x - b.x, a.y - b.y, a.z - b.z} }
func (a vec) times(s float64) vec        { return vec{a.x * s, a.y * s, a.z * s} }
func (a vec) dot(b vec) float64          { return a.x*b.x + a.y*b.y + a.z*b.z }
func (a vec) along(d vec, t float64) vec { return vec{a.x + d.x*t, a.y + d.y*t, a.z + d.z*t} }
func (a vec) length() float64            { return math.Sqrt(a.dot(a)) }
func (a vec) unit() vec                  { return a.times(1 / a.length()) }
func (a vec) cross(b vec) vec {
	return vec{a.y*b.z - a.z*b.y, a.z*b.x - a.x*b.z, a.x*b.y - a.y*b.x}
}

// mirrored is the direction d thrown back by a surface with normal n.
func (d vec) mirrored(n vec) vec { return d.along(n, -2*d.dot(n)) }

// frame is three axes at right angles, each of unit length.
type frame struct{ u, v, w vec }

// around returns a frame whose w is the unit vector n.
func around(n vec) frame {
	side := vec{0, 1, 0}
	if math.Abs(n.y) > 0.9 {
		side = vec{1, 0, 0}
	}
	u := side.cross(n).unit()
	return frame{u, n.cross(u), n}
}

// world turns the local a into world axes; local turns it back.
func (f frame) world(a vec) vec { return f.u.times(a.x).along(f.v, a.y).along(f.w, a.z) }
func (f frame) local(a vec) vec { return vec{a.dot(f.u), a.dot(f.v), a.dot(f.w)} }

// box is an upright block that holds a body, so that most rays can pass it by.
type box struct{ low, high vec }

// span returns where the ray from o along d is inside the box, from ≥ 0; from > to when it misses.
func (b box) span(o, inverse vec, far float64) (from, to float64) {
	from, to = 0, far
	clip := func(low, high, o, inv float64) {
		t0, t1 := (low-o)*inv, (high-o)*inv
		if t0 > t1 {
			t0, t1 = t1, t0
		}
		from, to = max(from, t0), min(to, t1)
	}
	clip(b.low.x, b.high.x, o.x, inverse.x)
	clip(b.low.y, b.high.y, o.y, inverse.y)
	clip(b.low.z, b.high.z, o.z, inverse.z)
	return from, to
}

// ramp rises smoothly from 0 at low to 1 at high.
func ramp(low, high, x float64) float64 {
	t := min(max((x-low)/(high-low), 0), 1)
	return t * t * (3 - 2*t)
}

func mix(a, b, t float64) float64 { return a + (b-a)*t }
