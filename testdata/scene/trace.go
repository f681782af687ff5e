// Following light backwards from the eye.

package main

import (
	"math"

	"tonewright/analyze/colour"
)

// bounces is how often light may turn after the first surface. Ours: from two to three the
// darks (green under level 45) rose by 0.8 of a level on average, from three to four by 0.1.
const bounces = 3

// tracer follows light backwards from the eye through the still life.
type tracer struct {
	*still
	light *daylight
}

// first is what one ray from the eye brings back, kept apart for the camera and the truth.
type first struct {
	hit
	diffuse, mirror xyz // light scattered by the body, and the rest
	albedo          xyz
}

// look follows one ray from the eye.
func (t *tracer) look(o, d vec, s *sampler) first {
	h, ok := t.hit(o, d)
	if !ok {
		return first{hit: h}
	}
	f := first{hit: h}
	even := evenSpectrum()
	at := t.surface(&f.hit, d)
	f.albedo = seen(&t.light.white, &at.diffuse)
	f.diffuse = t.scattered(&f.hit, &at, &even, 0, s)
	f.mirror = t.mirrored(&f.hit, &at, d, &even, 0, s)
	if h.m.clear > 0 {
		f.mirror.add(t.through(&f.hit, &at, d, &even, 0, s), 1)
	}
	return f
}

func evenSpectrum() (s colour.Spectrum) {
	for i := range s {
		s[i] = 1
	}
	return s
}

// surface is the material at a hit, with its unevenness.
type surface struct {
	diffuse colour.Spectrum // share scattered, less what is mirrored and let through
	normal  vec
	rough   float64
	tarnish float64
}

func (t *tracer) surface(h *hit, d vec) surface {
	f := h.m.finish(h.p, h.n)
	if f.normal.dot(d) > -0.02 {
		f.normal = f.normal.along(d, -0.02-f.normal.dot(d)).unit()
	}
	at := surface{normal: f.normal, rough: h.m.rough * f.rough}
	share := f.shade * (1 - h.m.clear)
	if h.m.isMetal() {
		at.tarnish = min(max(h.m.tarnish+f.dull, 0), 1)
		share *= at.tarnish
	} else if h.m.gloss > 0 {
		share *= 1 - schlick(h.m.gloss, -f.normal.dot(d))
	}
	for i, r := range h.m.diffuse {
		at.diffuse[i] = min(r*share, 1)
	}
	return at
}

// onlyWay says that a direction was the only way to find the window; alreadyCounted that
// the window's light was taken in by a ray of its own.
var onlyWay, alreadyCounted = math.Inf(1), 0.0

// radiance is the light arriving at o against d, times the weights of the path so far.
// chosen is how densely d was chosen, per steradian, for weighing it against the window's own rays.
func (t *tracer) radiance(o, d vec, path *colour.Spectrum, turn int, chosen float64, s *sampler) (sum xyz) {
	h, ok := t.hit(o, d)
	if !ok {
		if w, asked := t.light.window(o, d); w > 0 {
			if chosen != alreadyCounted {
				sum.add(seen(&t.light.white, path), w*heuristic(chosen, asked))
			}
			return sum
		}
		sum.add(seen(&t.light.dim, path), t.light.room(d))
		return sum
	}
	at := t.surface(&h, d)
	pick, _ := s.next()
	mirror := t.mirrorChance(&h, &at, d)
	weighed := *path
	if pick < mirror {
		scale(&weighed, 1/mirror)
		return t.mirrored(&h, &at, d, &weighed, turn, s)
	}
	scale(&weighed, 1/(1-mirror))
	if h.m.clear > 0 && (pick-mirror)/(1-mirror) < h.m.clear {
		scale(&weighed, 1/h.m.clear)
		return t.through(&h, &at, d, &weighed, turn, s)
	}
	if h.m.clear > 0 {
		scale(&weighed, 1/(1-h.m.clear))
	}
	return t.scattered(&h, &at, &weighed, turn, s)
}

func scale(s *colour.Spectrum, by float64) {
	for i := range s {
		s[i] *= by
	}
}

// scattered is the diffuse light a surface sends on: straight from the window, and by one more turn.
func (t *tracer) scattered(h *hit, at *surface, path *colour.Spectrum, turn int, s *sampler) (sum xyz) {
	after := *path
	for i := range after {
		after[i] *= at.diffuse[i]
	}
	o := h.p.along(h.n, 0.02)
	x, y := s.next()
	sum = t.direct(o, at.normal, &after, x, y)
	if turn >= bounces {
		return sum
	}
	x, y = s.next()
	d := around(at.normal).world(cosine(x, y))
	if d.dot(h.n) <= 0 {
		return sum
	}
	got := t.radiance(o, d, &after, turn+1, alreadyCounted, s)
	// A matt body lit by a mirror that happens to show the window: too rare to sample well.
	const brightest = 0.8
	if bound := brightest * seen(&t.light.white, &after)[1]; got[1] > bound {
		scaled := bound / got[1]
		got = xyz{got[0] * scaled, got[1] * scaled, got[2] * scaled}
	}
	sum.add(got, 1)
	return sum
}

// direct is the window's light on a matt surface.
func (t *tracer) direct(o, n vec, path *colour.Spectrum, x, y float64) (sum xyz) {
	glass := pane(x, y)
	q := t.light.point(x, y)
	d := q.sub(o)
	far := d.length()
	d = d.times(1 / far)
	in, out := d.dot(n), -d.dot(t.light.axes.w)
	if glass == 0 || in <= 0 || out <= 0 {
		return sum
	}
	open, green := t.open(o, q)
	if !open {
		return sum
	}
	lit := *path
	if green > 0 {
		t.stain(&lit, green)
		scale(&lit, t.objects[bottle].material.clear*0.9)
	}
	area := 4 * t.light.wide * t.light.high
	sum.add(seen(&t.light.white, &lit), t.light.power*in*out*area/(far*far*math.Pi))
	return sum
}

// open returns whether the window's point q shines on p, and through how many cm of glass.
func (t *tracer) open(p, q vec) (bool, float64) {
	if t.light.shuttered(p, q) {
		return false, 0
	}
	return t.shadow(p, q)
}

// cosine is a direction about the z axis, as likely as a matt surface sends light there.
func cosine(x, y float64) vec {
	r := math.Sqrt(x)
	sin, cos := math.Sincos(2 * math.Pi * y)
	return vec{r * cos, r * sin, math.Sqrt(1 - x)}
}
