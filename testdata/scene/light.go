// The window, its shutter and the dim room.

package main

import (
	"math"

	"tonewright/analyze/colour"
)

// xyz is light as the observer weighs it; a white card in full light is about 1, 1, 1.
type xyz [3]float64

func (a *xyz) add(b xyz, s float64) {
	for c := range a {
		a[c] += b[c] * s
	}
}

// daylight is everything that shines: one tall window at the upper left and the dim room.
type daylight struct {
	centre     vec
	axes       frame   // u across, v up, w into the room
	wide, high float64 // half the window's size, cm
	power      float64 // radiance of the panes
	shutter    float64 // z of the shutter's slanting edge at y = 50
	white, dim [3]colour.Spectrum
}

// newDaylight hangs the window. The room's light has been thrown back by walls of the given
// colour, so that the shadows are warm and the lights neutral.
func newDaylight(walls colour.Spectrum) *daylight {
	l := &daylight{centre: vec{-82, 74, 62}, wide: 21, high: 31, shutter: 28}
	n := vec{0, 6, 0}.sub(l.centre)
	far := n.length()
	n = n.unit()
	u := vec{0, 1, 0}.cross(n).unit()
	l.axes = frame{u, n.cross(u), n}
	l.power = math.Pi * far * far / (4 * l.wide * l.high * glazed)
	l.white = *colour.Weights()
	var top float64
	for _, r := range walls {
		top = max(top, r)
	}
	for c := range l.dim {
		for i := range walls {
			l.dim[c][i] = l.white[c][i] * walls[i] / top
		}
	}
	return l
}

// seen is how the observer weighs a spectrum of daylight.
func seen(w *[3]colour.Spectrum, s *colour.Spectrum) (sum xyz) {
	for i, v := range s {
		sum[0] += w[0][i] * v
		sum[1] += w[1][i] * v
		sum[2] += w[2][i] * v
	}
	return sum
}

// point returns the place on the window for two even coordinates.
func (l *daylight) point(x, y float64) vec {
	return l.centre.along(l.axes.u, (2*x-1)*l.wide).along(l.axes.v, (2*y-1)*l.high)
}

// glazed is the share of the window that is glass: bars of a twentieth of its width or height
// at its sides and between the panes, those at the sides half hidden by the wall.
const glazed = (1 - 2*bar) * (1 - 3*bar)

// bar is the width of a glazing bar as a share of the window's width or height.
const bar = 0.05

// pane is 1 on the glass and 0 on the glazing bars: two panes across, three up.
func pane(x, y float64) float64 {
	between := func(t, panes float64) bool { return math.Abs(t-math.Round(t*panes)/panes) < bar/2 }
	if between(x, 2) || between(y, 3) {
		return 0
	}
	return 1
}

// shuttered tells whether the half-closed shutter stands between p and the window point q.
// It keeps the wall behind the bottle dark and lets the wall behind the spout be light.
func (l *daylight) shuttered(p, q vec) bool {
	const at = -52
	if p.x < at {
		return false
	}
	t := (at - p.x) / (q.x - p.x)
	y, z := mix(p.y, q.y, t), mix(p.z, q.z, t)
	return z < l.shutter+1.3*(y-50)
}

// window returns the radiance of the window along a ray and how densely point chooses
// that direction; 0 where the ray misses it.
func (l *daylight) window(o, d vec) (radiance, asked float64) {
	face := -d.dot(l.axes.w)
	if face <= 0 {
		return 0, 0
	}
	far := o.sub(l.centre).dot(l.axes.w) / face
	if far <= 0 {
		return 0, 0
	}
	q := o.along(d, far).sub(l.centre)
	x, y := q.dot(l.axes.u)/l.wide, q.dot(l.axes.v)/l.high
	if math.Abs(x) > 1 || math.Abs(y) > 1 || l.shuttered(o, o.along(d, far)) {
		return 0, 0
	}
	return l.power * pane((x+1)/2, (y+1)/2), l.density(far, face)
}

// density is how densely point chooses a direction, per steradian, for a window so far
// off that is seen at an angle of the given cosine.
func (l *daylight) density(far, face float64) float64 {
	return far * far / (4 * l.wide * l.high * face)
}

// room returns the dim light of the room from direction d: paler above, and a light wall far to the right.
func (l *daylight) room(d vec) float64 {
	above := 0.022 + 0.05*ramp(-0.2, 1, d.y)
	right := 0.16 * math.Exp(-((d.x-0.93)*(d.x-0.93)*22 + (d.y-0.15)*(d.y-0.15)*5))
	return above + right
}
