// The still life: what stands where.

package main

import (
	"math"

	"tonewright/match/paint"
)

// body is one thing in the picture.
type body struct {
	object   int // which entry of still.objects it belongs to
	bounds   box
	distance func(p vec) float64 // to its surface, negative inside
	material *material
}

// object is what the mask and the truth tell apart; its mask index is its place in the list.
type object struct {
	name     string
	material *material
}

// still is the still life: the flat wall and shelf, and the bodies on it.
type still struct {
	objects []object
	bodies  []body
}

// Mask indices.
const (
	wall = iota
	shelf
	kettle
	wood
	bottle
	lemonNear
	lemonApart
)

// Ours: the room, in cm. The shelf's top is y = 0.
const (
	wallAt    = -22.0 // z of the wall
	shelfEdge = 15.0  // z of the shelf's front
	shelfDeep = 4.2   // thickness of the slab
	edgeStrip = 1.5   // the front of the slab that is modelled as a broken edge
)

// arrange sets up the still life with colours mixed from the library.
func arrange(library []paint.Paint) *still {
	m := materials(library)
	s := &still{objects: []object{
		{"wall", &m[wall]}, {"shelf", &m[shelf]}, {"kettle", &m[kettle]}, {"kettle wood", &m[wood]},
		{"bottle", &m[bottle]}, {"lemon near", &m[lemonNear]}, {"lemon apart", &m[lemonApart]},
	}}
	s.bodies = append(s.bodies, slabEdge(s))
	s.bodies = append(s.bodies, copperKettle(s)...)
	s.bodies = append(s.bodies, greenBottle(s))
	s.bodies = append(s.bodies,
		lemon(s, lemonNear, vec{-6.0, 0, 9.5}, vec{-0.80, 0.10, 0.55}, 1),
		lemon(s, lemonApart, vec{18.4, 0, 9}, vec{0.88, 0.05, -0.45}, 0.94))
	return s
}

// materials returns what each object is made of, by mask index. Ours: the mixes.
func materials(library []paint.Paint) [7]material {
	var m [7]material
	m[wall] = painted(library, part{"titanium-white", 3}, part{"raw-umber", 1})
	m[wall].gloss, m[wall].finish = 0, plasterFinish
	m[shelf] = painted(library, part{"ultramarine-blue", 4}, part{"burnt-umber", 3}, part{"titanium-white", 3})
	m[shelf].rough, m[shelf].finish = 0.38, slateFinish
	m[kettle] = painted(library, part{"burnt-sienna", 3}, part{"cadmium-orange", 2}, part{"yellow-ochre", 2})
	m[kettle].metal, m[kettle].tarnish, m[kettle].rough, m[kettle].gloss = copper(), 0.42, 0.31, 0
	m[kettle].finish = copperFinish
	m[wood] = painted(library, part{"burnt-umber", 3}, part{"ivory-black", 1})
	m[wood].rough, m[wood].finish = 0.32, woodFinish
	m[bottle] = painted(library, part{"phthalo-green-ys", 2}, part{"yellow-ochre", 3}, part{"burnt-umber", 1})
	m[bottle].rough, m[bottle].clear, m[bottle].finish = 0.05, 0.85, glassFinish
	k, _ := optics(library, m[bottle].parts)
	for i := range k {
		m[bottle].stain[i] = 5 * k[i]
	}
	m[lemonNear] = painted(library, part{"hansa-yellow-light", 6}, part{"titanium-white", 1}, part{"yellow-ochre", 0.5})
	m[lemonNear].rough, m[lemonNear].finish = 0.34, lemonFinish
	m[lemonApart] = painted(library, part{"hansa-yellow-medium", 5}, part{"titanium-white", 1}, part{"yellow-ochre", 0.5})
	m[lemonApart].rough, m[lemonApart].finish = 0.34, lemonFinish
	return m
}

func (s *still) body(object int, low, high vec, distance func(p vec) float64) body {
	return body{object, box{low, high}, distance, s.objects[object].material}
}

// slabEdge is the shelf's front, chipped where the slate was broken off.
func slabEdge(s *still) body {
	return s.body(shelf, vec{-90, -shelfDeep, shelfEdge - edgeStrip}, vec{90, 0, shelfEdge + 0.2}, func(p vec) float64 {
		chips, _ := clouds(vec{p.x, p.y * 2.5, p.z}, 2.4, 4, 71)
		z, y := p.z-shelfEdge, math.Abs(p.y+shelfDeep/2)-shelfDeep/2
		const round = 0.35
		dz, dy := max(z+round, 0), max(y+round, 0)
		flat := math.Hypot(dz, dy) + min(max(z+round, y+round), 0) - round
		return (flat + 0.15*(chips+0.6)*ramp(-edgeStrip, -0.2, z)) * 0.7
	})
}

// copperKettle is the squat body with its lid and gooseneck spout, the bail and its turned grip, the knob.
func copperKettle(s *still) []body {
	pot := newLathe(point{0, 0}, point{7.9, 0}, point{7.9, 0}, point{8.3, 0.25}, point{8.5, 0.8}, point{9.7, 2.4}, point{10.7, 5.2},
		point{10.2, 8.3}, point{8.0, 11.2}, point{5.7, 12.7}, point{5.0, 13.2}, point{4.8, 13.7}, point{5.2, 13.95},
		point{5.25, 14.2}, point{4.9, 14.45}, point{3.9, 15.2}, point{2.2, 16.0}, point{0.8, 16.4}, point{0, 16.45})
	spout := newSweep(func(t float64) float64 { return mix(2.7, 1.0, math.Pow(t, 0.7)) + 0.35*ramp(0.93, 1, t) },
		point{8.0, 4.6}, point{11.5, 5.6}, point{13.8, 8.6}, point{15.2, 12.0}, point{17.6, 13.9}, point{19.3, 14.3})
	bail := newSweep(func(t float64) float64 { return 0.75 + 0.35*ramp(0.12, 0, min(t, 1-t)) },
		point{-6.6, 11.9}, point{-7.9, 14.5}, point{-8.1, 18.5}, point{-5.2, 22.9}, point{0, 24.2},
		point{5.2, 22.9}, point{8.1, 18.5}, point{7.9, 14.5}, point{6.6, 11.9})
	grip := newSweep(func(t float64) float64 { return 0.72 + 0.38*math.Sin(math.Pi*min(max((t-0.02)/0.96, 0), 1)) },
		point{-4.4, 23.25}, point{-2.2, 24.0}, point{0, 24.25}, point{2.2, 24.0}, point{4.4, 23.25})
	knob := newLathe(point{0, 16.2}, point{0.6, 16.3}, point{0.6, 16.7}, point{1.3, 17.2}, point{1.45, 17.9}, point{0.95, 18.6}, point{0, 18.8})
	at := vec{5.2, 0, -1.5}
	turn := around(vec{math.Sin(0.5), 0, math.Cos(0.5)})
	placed := func(object int, low, high vec, f func(p vec) float64) body {
		return s.body(object, at.add(low), at.add(high), func(p vec) float64 { return f(turn.local(p.sub(at))) })
	}
	return []body{
		placed(kettle, vec{-10.9, 0, -13}, vec{19, 16.8, 13}, func(p vec) float64 {
			d := pot.distance(p)
			if p.x < 4 {
				return d
			}
			tube := spout.distance(p, 1)
			beyond := (p.x-19.1)*0.96 + (p.y-14.25)*0.28
			bore := max(tube+0.25, -2-beyond)
			return max(joined(d, max(tube, beyond), 1.2), -bore)
		}),
		placed(kettle, vec{-8.2, 11, -6}, vec{8.2, 25, 6}, func(p vec) float64 { return bail.distance(p, 0.45) }),
		placed(wood, vec{-5, 22, -4}, vec{5, 26, 4}, func(p vec) float64 { return max(grip.distance(p, 0.9), math.Abs(p.x)-4.3) }),
		placed(wood, vec{-1.6, 16, -1.6}, vec{1.6, 19, 1.6}, knob.distance),
	}
}

// greenBottle is a tall wine bottle.
func greenBottle(s *still) body {
	turned := newLathe(point{0, 0}, point{3.5, 0}, point{3.5, 0}, point{3.85, 0.4}, point{3.9, 1.5}, point{3.9, 9}, point{3.9, 16.0},
		point{3.7, 18.2}, point{2.7, 20.4}, point{1.75, 22.4}, point{1.45, 24.6}, point{1.38, 28.4}, point{1.38, 28.4},
		point{1.75, 28.6}, point{1.8, 29.2}, point{1.5, 29.6}, point{1.45, 30.2}, point{1.2, 30.4}, point{1.0, 30.3}, point{0, 30.2})
	at := vec{-11.5, 0, -8.5}
	const thick, filled = 0.4, 12.5
	return s.body(bottle, at.add(vec{-4, 0, -4}), at.add(vec{4, 30.6, 4}), func(p vec) float64 {
		d := turned.distance(p.sub(at))
		return max(d, -max(d+thick, filled-p.y))
	})
}

// lemon lies on the shelf at the place, its tip towards axis.
func lemon(s *still, object int, at, axis vec, size float64) body {
	peel := newLathe(point{0, -4.3 * size}, point{0.45 * size, -4.2 * size}, point{0.75 * size, -3.8 * size}, point{1.6 * size, -3.2 * size},
		point{2.7 * size, -1.8 * size}, point{3.15 * size, 0}, point{2.8 * size, 1.8 * size}, point{1.75 * size, 3.2 * size},
		point{0.95 * size, 3.9 * size}, point{0.7 * size, 4.5 * size}, point{0.4 * size, 4.85 * size}, point{0, 4.9 * size})
	axis = axis.unit()
	at.y = peel.rest(axis)
	lie := around(axis)
	reach := vec{5, 5, 5}
	return s.body(object, at.sub(reach), at.add(reach), func(p vec) float64 {
		q := lie.local(p.sub(at))
		lumps, _ := noise(q.times(0.4), uint32(80+object))
		return (peel.distance(vec{q.x, q.z, q.y}) + 0.12*lumps*ramp(4.2, 2, math.Abs(q.z))) * 0.9
	})
}
