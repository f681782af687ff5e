// Light mirrored by rough surfaces.

package main

import (
	"math"

	"tonewright/analyze/colour"
)

// sharp is the roughness under which a mirror lobe is too narrow to meet the window's own rays.
const sharp = 0.1

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

// mirrored is the light a surface throws back like a mirror, blurred by its roughness.
// Source: [Heitz2018], sampling the visible normals of GGX; weight F × G2/G1.
func (t *tracer) mirrored(h *hit, at *surface, d vec, path *colour.Spectrum, turn int, s *sampler) (sum xyz) {
	if turn >= bounces || !h.m.isMetal() && h.m.gloss == 0 {
		return sum
	}
	f := around(at.normal)
	eye := f.local(d.times(-1))
	width := at.rough * at.rough
	broad := at.rough > sharp
	if broad {
		x, y := s.next()
		sum = t.glint(h, at, f, eye, path, x, y)
	}
	x, y := s.next()
	facet := visibleNormal(eye, width, x, y)
	out := eye.times(-1).mirrored(facet)
	away := f.world(out)
	if out.z <= 0 || away.dot(h.n) <= 0 {
		return sum
	}
	after := *path
	tint(&after, h.m, at, eye.dot(facet))
	chosen := onlyWay
	if broad {
		chosen = density(eye, facet, width)
	}
	scale(&after, (1+lambda(eye, width))/(1+lambda(eye, width)+lambda(out, width)))
	sum.add(t.radiance(h.p.along(h.n, 0.02), away, &after, turn+1, chosen, s), 1)
	return sum
}

// glint is the window's own light in a mirror lobe; what shines through the bottle is left out.
func (t *tracer) glint(h *hit, at *surface, f frame, eye vec, path *colour.Spectrum, x, y float64) (sum xyz) {
	o := h.p.along(h.n, 0.02)
	q := t.light.point(x, y)
	d := q.sub(o)
	far := d.length()
	d = d.times(1 / far)
	out, face := f.local(d), -d.dot(t.light.axes.w)
	glass := pane(x, y)
	if glass == 0 || out.z <= 0 || face <= 0 || d.dot(h.n) <= 0 {
		return sum
	}
	open, green := t.open(o, q)
	if !open || green > 0 {
		return sum
	}
	facet, width := eye.add(out).unit(), at.rough*at.rough
	after := *path
	tint(&after, h.m, at, eye.dot(facet))
	asked := t.light.density(far, face)
	lobe := facets(facet, width) / (4 * eye.z * (1 + lambda(eye, width) + lambda(out, width)))
	sum.add(seen(&t.light.white, &after), t.light.power*lobe/asked*heuristic(asked, density(eye, facet, width)))
	return sum
}

// tint colours light mirrored at an angle of the given cosine; bare metal pales at a slant
// as clear surfaces do, which is near enough for copper.
func tint(path *colour.Spectrum, m *material, at *surface, cos float64) {
	for i := range path {
		if m.isMetal() {
			path[i] *= schlick(m.metal[i], cos) * (1 - at.tarnish)
		} else {
			path[i] *= schlick(m.gloss, cos)
		}
	}
}

// facets is how many of a rough surface's small mirrors face along n: GGX.
// Source: [Walter2007] eq. 33.
func facets(n vec, width float64) float64 {
	a := n.z*n.z*(width*width-1) + 1
	return width * width / (math.Pi * a * a)
}

// density is how densely mirrored chooses the direction that the facet sends on, per steradian.
// Source: [Heitz2018].
func density(eye, facet vec, width float64) float64 {
	return facets(facet, width) / ((1 + lambda(eye, width)) * 4 * eye.z)
}

// heuristic weighs a ray chosen as densely as mine against other rays that could be it.
// Source: [Veach1997], the power heuristic.
func heuristic(mine, other float64) float64 {
	if math.IsInf(mine, 1) {
		return 1
	}
	return mine * mine / (mine*mine + other*other)
}

// lambda is how much of a rough surface its own small hills hide from v: Smith's term for GGX.
// Source: [Heitz2018].
func lambda(v vec, width float64) float64 {
	return (math.Sqrt(1+width*width*(v.x*v.x+v.y*v.y)/(v.z*v.z)) - 1) / 2
}

// visibleNormal draws one of the small mirrors that eye can see, as often as it sees them.
// Source: [Heitz2018], by stretching the surface to a hemisphere and back.
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

// schlick is how much a clear surface mirrors at an angle, from what it mirrors straight on.
// Source: [Schlick1994].
func schlick(straight, cos float64) float64 {
	c := 1 - min(max(cos, 0), 1)
	return straight + (1-straight)*c*c*c*c*c
}
