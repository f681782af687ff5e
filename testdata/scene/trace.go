package main

import (
	"math"

	"tonewright/analyze/colour"
)

// bounces is how often light may turn after the first surface. Ours: a third bounce
// changed the darkest shadows by under one 8-bit level.
const bounces = 3

// tracer follows light backwards from the eye through the still life.
type tracer struct {
	*still
	light *daylight
}

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
	if shuttered(p, q) {
		return false, 0
	}
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
		if ok {
			glass += b.leave(p.along(d, t+0.01), d)
		}
	}
	return true, glass
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

func schlick(straight, cos float64) float64 {
	c := 1 - min(max(cos, 0), 1)
	return straight + (1-straight)*c*c*c*c*c
}

// radiance is the light arriving at o against d, times the weights of the path so far.
func (t *tracer) radiance(o, d vec, path *colour.Spectrum, turn int, seesWindow bool, s *sampler) (sum xyz) {
	h, ok := t.hit(o, d)
	if !ok {
		if seesWindow {
			if w := t.light.window(o, d); w > 0 {
				sum.add(seen(&t.light.white, path), w)
				return sum
			}
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

// mirrorChance is how often to follow the mirror lobe rather than the scattered light.
func (t *tracer) mirrorChance(h *hit, at *surface, d vec) float64 {
	if h.m.isMetal() {
		return 1 - at.tarnish/2
	}
	if h.m.gloss == 0 {
		return 0
	}
	return 0.1 + 0.8*schlick(h.m.gloss, -at.normal.dot(d))
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
	got := t.radiance(o, d, &after, turn+1, false, s)
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
	open, green := t.shadow(o, q)
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

// stain takes away what so many cm of the bottle's glass absorb.
func (t *tracer) stain(path *colour.Spectrum, cm float64) {
	for i, k := range t.objects[bottle].material.stain {
		path[i] *= math.Exp(-k * cm)
	}
}

// cosine is a direction about the z axis, as likely as a matt surface sends light there.
func cosine(x, y float64) vec {
	r := math.Sqrt(x)
	sin, cos := math.Sincos(2 * math.Pi * y)
	return vec{r * cos, r * sin, math.Sqrt(1 - x)}
}

// mirrored is the light a surface throws back like a mirror, blurred by its roughness.
// Source: [Heitz2018], sampling the visible normals of GGX; weight F × G2/G1.
func (t *tracer) mirrored(h *hit, at *surface, d vec, path *colour.Spectrum, turn int, s *sampler) (sum xyz) {
	if turn >= bounces || !h.m.isMetal() && h.m.gloss == 0 {
		return sum
	}
	f := around(at.normal)
	eye := f.local(d.times(-1))
	x, y := s.next()
	width := at.rough * at.rough
	facet := visibleNormal(eye, width, x, y)
	out := eye.times(-1).mirrored(facet)
	away := f.world(out)
	if out.z <= 0 || away.dot(h.n) <= 0 {
		return sum
	}
	after := *path
	cos := eye.dot(facet)
	masked := (1 + lambda(eye, width)) / (1 + lambda(eye, width) + lambda(out, width))
	for i := range after {
		if h.m.isMetal() {
			after[i] *= schlick(h.m.metal[i], cos) * masked * (1 - at.tarnish)
		} else {
			after[i] *= schlick(h.m.gloss, cos) * masked
		}
	}
	return t.radiance(h.p.along(h.n, 0.02), away, &after, turn+1, true, s)
}

func lambda(v vec, width float64) float64 {
	return (math.Sqrt(1+width*width*(v.x*v.x+v.y*v.y)/(v.z*v.z)) - 1) / 2
}

func visibleNormal(eye vec, width, x, y float64) vec {
	v := vec{width * eye.x, width * eye.y, eye.z}.unit()
	t1 := vec{1, 0, 0}
	if side := v.x*v.x + v.y*v.y; side > 0 {
		t1 = vec{-v.y, v.x, 0}.times(1 / math.Sqrt(side))
	}
	t2 := v.cross(t1)
	r := math.Sqrt(x)
	sin, cos := math.Sincos(2 * math.Pi * y)
	a, b := r*cos, r*sin
	half := (1 + v.z) / 2
	b = (1-half)*math.Sqrt(1-a*a) + half*b
	n := t1.times(a).along(t2, b).along(v, math.Sqrt(max(0, 1-a*a-b*b)))
	return vec{width * n.x, width * n.y, max(n.z, 1e-6)}.unit()
}

// through follows light into the bottle, treated as one solid lens of glass, and out behind it.
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
			return t.radiance(p.along(n, 0.03), out, &after, turn+1, true, s)
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
