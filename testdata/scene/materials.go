// What things are made of: mixes of paints, copper, glass, and their unevenness.

package main

import (
	"fmt"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// part is so many parts by volume of one paint of the library.
type part struct {
	Paint string  `json:"paint"`
	Parts float64 `json:"parts"`
}

// material is what a body is made of.
type material struct {
	parts   []part          // the paints whose mix is the diffuse colour
	diffuse colour.Spectrum // share of light scattered back
	metal   colour.Spectrum // share mirrored straight on, where it is a metal; else all 0
	tarnish float64         // share of a metal's face that scatters instead
	gloss   float64         // share mirrored straight on by a clear surface; 0 for a metal
	rough   float64         // GGX width of the mirror lobe
	clear   float64         // share of the entering light that goes through, as in glass
	stain   colour.Spectrum // what glass takes away, per cm
	finish  func(p, n vec) finish
}

// finish is the small unevenness of a surface at one place.
type finish struct {
	normal vec
	shade  float64 // times the diffuse colour
	rough  float64 // times the width of the mirror lobe
	dull   float64 // added to the tarnish
}

// painted returns a material with the opaque colour of a mix, seen without glare.
func painted(library []paint.Paint, parts ...part) material {
	k, s := optics(library, parts)
	return material{parts: parts, diffuse: paint.Thick(&k, &s, paint.Gloss), gloss: 0.04, rough: 0.5}
}

// optics returns K and S of a mix.
// It panics at a name the library does not have: the scene is at fault.
func optics(library []paint.Paint, parts []part) (k, s colour.Spectrum) {
	var paints []paint.Paint
	var shares []float64
	for _, p := range parts {
		at := slices.IndexFunc(library, func(q paint.Paint) bool { return q.ID == p.Paint })
		if at < 0 {
			panic(fmt.Sprintf("scene: no paint %q in the library", p.Paint))
		}
		paints, shares = append(paints, library[at]), append(shares, p.Parts)
	}
	return paint.Mix(paints, shares)
}

// copperIndex is the refractive index n and extinction k of copper.
// Source: [Hagemann1974] table 3, from 3.2 to 1.85 eV.
var copperIndex = [...]struct{ nm, n, k float64 }{
	{387.5, 1.232, 2.07}, {413.3, 1.184, 2.21}, {442.8, 1.169, 2.36}, {476.9, 1.152, 2.50},
	{516.6, 1.121, 2.60}, {539.1, 1.037, 2.59}, {563.6, 0.826, 2.60}, {590.4, 0.468, 2.81},
	{619.9, 0.272, 3.24}, {652.5, 0.214, 3.67}, {670.2, 0.215, 3.86},
}

// copper is what bare copper mirrors straight on; past 670 nm the last slope goes on.
// Source: Fresnel's reflectance at normal incidence, ((n-1)² + k²) / ((n+1)² + k²).
func copper() (mirror colour.Spectrum) {
	i := 0
	for band := range mirror {
		nm := 400 + 10*float64(band)
		for i < len(copperIndex)-2 && copperIndex[i+1].nm < nm {
			i++
		}
		a, b := copperIndex[i], copperIndex[i+1]
		t := (nm - a.nm) / (b.nm - a.nm)
		n, k := mix(a.n, b.n, t), mix(a.k, b.k, t)
		mirror[band] = ((n-1)*(n-1) + k*k) / ((n+1)*(n+1) + k*k)
	}
	return mirror
}

// flat is the body's own colour in an even white light: mirrored and scattered together,
// without the glare of a clear surface.
func (m *material) flat() (s colour.Spectrum) {
	for i := range s {
		s[i] = m.diffuse[i]
		if m.isMetal() {
			s[i] = mix(m.metal[i], m.diffuse[i], m.tarnish)
		}
	}
	return s
}

func (m *material) isMetal() bool { return m.metal[0] > 0 }

// bumped tilts the normal n against the slope of a height, strength deep.
func bumped(n, slope vec, strength float64) vec {
	along := slope.along(n, -slope.dot(n))
	return n.along(along, -strength).unit()
}

// slateFinish is riven stone: long shallow steps, fine grain, a paler bloom here and there;
// the broken front is darker.
func slateFinish(p, n vec) finish {
	long := vec{p.x * 0.5, p.y * 2, p.z}
	wide, slope := clouds(long, 7, 5, 11)
	fine, grain := clouds(p, 0.5, 2, 12)
	tilt := bumped(n, vec{slope.x * 0.5, slope.y * 2, slope.z}, 0.16)
	broken := ramp(0.2, 0.8, n.z)
	shade := (1 + 0.10*wide + 0.04*fine) * (1 - 0.35*broken)
	return finish{bumped(tilt, grain, 0.012), shade, 1 + 0.25*wide + 0.5*broken, 0}
}

// plasterFinish is a limewashed wall: broad clouds of tone and a trowelled face.
func plasterFinish(p, n vec) finish {
	wide, _ := clouds(p, 16, 4, 21)
	fine, slope := clouds(p, 2.2, 4, 22)
	return finish{bumped(n, slope, 0.035), 1 + 0.05*wide + 0.015*fine, 1, 0}
}

// copperFinish is an old beaten pot: shallow dents, and tarnish that gathers in clouds.
func copperFinish(p, n vec) finish {
	_, dents := clouds(p, 3.4, 2, 31)
	bloom, _ := clouds(p, 4.5, 5, 32)
	return finish{bumped(n, dents, 0.06), 1 + 0.2*bloom, 1 + 0.35*bloom, 0.16 * bloom}
}

// lemonFinish is pitted peel, unevenly ripe.
func lemonFinish(p, n vec) finish {
	tone, _ := clouds(p, 2.6, 3, 41)
	wide, swell := noise(p.times(1/0.42), 42)
	pits, pores := noise(p.times(1/0.17), 43)
	tilt := bumped(bumped(n, swell, 0.028), pores, 0.03)
	return finish{tilt, 1 + 0.06*tone + 0.03*wide + 0.03*pits, 1 + 0.25*tone, 0}
}

// glassFinish is hand-blown glass, not quite even.
func glassFinish(p, n vec) finish {
	_, slope := clouds(p, 5, 2, 51)
	return finish{bumped(n, slope, 0.02), 1, 1, 0}
}

// woodFinish is turned wood with a fine grain.
func woodFinish(p, n vec) finish {
	grain, slope := clouds(vec{p.x * 0.4, p.y * 4, p.z * 4}, 1, 3, 61)
	return finish{bumped(n, vec{slope.x * 0.4, slope.y * 4, slope.z * 4}, 0.01), 1 + 0.15*grain, 1, 0}
}
