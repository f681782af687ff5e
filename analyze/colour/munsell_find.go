package colour

import "sort"

// neutralRadius is the distance from neutral in a*b* under which a colour is
// rounding noise and has hue 0 and chroma 0.
const neutralRadius = 1e-6

// Munsell returns the notation of c, which is taken from D65 to illuminant C by
// the Bradford transform. Value comes from its Y under C, so that it may differ
// from ValueOf(c.L) by some hundredths where c is strongly coloured; hue and
// chroma are looked up at its chromaticity on the planes of the whole values
// below and above.
//
// The table ends at values 1 and 9. Above 9, plane 9 serves alone. Below 1, plane
// 1 serves alone and is entered at the a*b* of c, not at its chromaticity: near
// black a chromaticity says nothing and would turn noise into chroma. Chroma past
// the table is carried on, see hueLine. Every finite c has a notation; that of a
// neutral has hue 0 and chroma 0, and so has one that is not a number.
// Source: [ASTMD1535] for value and for going between values; the rest is ours.
func (c Lab) Munsell() Munsell {
	d65 := c.XYZ()
	seen := toC.times([3]float64{d65.X / 100, d65.Y / 100, d65.Z / 100})
	value := valueOfY(100 * seen[1])
	if value < 1 {
		hue, chroma := planes()[0].find(seen, 1)
		return Munsell{hue, value, chroma}
	}
	low := min(int(value), tableValues)
	hue, chroma := onPlane(seen, low)
	if low == tableValues {
		return Munsell{hue, value, chroma}
	}
	hue2, chroma2 := onPlane(seen, low+1)
	t := value - float64(low)
	turn := wrap(hue2-hue+50, 100) - 50 // the shorter way round
	return Munsell{wrap(hue+t*turn, 100), value, chroma + t*(chroma2-chroma)}
}

// onPlane returns hue and chroma of tristimulus values under C, white Y = 1, at
// their chromaticity on the plane of a whole value.
func onPlane(seen [3]float64, value int) (hue, chroma float64) {
	scale := luminance(float64(value)) / (100 * seen[1])
	return planes()[value-1].find(seen, scale)
}

// find returns hue and chroma on p of tristimulus values under C times scale.
// At one hue angle the radius rises with chroma, so chroma is found by halving.
func (p *plane) find(seen [3]float64, scale float64) (hue, chroma float64) {
	c := fromRatios(scale*seen[0]/illuminantC[0], scale*seen[1], scale*seen[2]/illuminantC[2])
	radius, angle := c.Chroma(), c.Hue()
	if !(radius > neutralRadius) {
		return 0, 0
	}
	outer := sort.Search(tableChromas-1, func(k int) bool {
		_, r := p.at(k, 0, angle)
		return r >= radius
	})
	if hue, r := p.at(outer, 0, angle); outer == 0 || r <= radius {
		return hue, 2 * float64(outer+1) * radius / r // inside the first ring or outside the last
	}
	low, high := 0.0, 1.0 // share of the way from ring outer-1 to ring outer
	for range 26 {        // to 3e-8 of chroma
		mid := (low + high) / 2
		if _, r := p.at(outer-1, mid, angle); r < radius {
			low = mid
		} else {
			high = mid
		}
	}
	hue, _ = p.at(outer-1, high, angle)
	return hue, 2 * (float64(outer) + high)
}

// at returns the hue, and the distance from neutral, of the point in direction
// angle on the ring that lies a share of the way from ring k to the next.
func (p *plane) at(k int, share, angle float64) (hue, radius float64) {
	first := p.point(k, 0, share)
	angle = first.angle + wrap(angle-first.angle, 360)
	i := sort.Search(tableHues-1, func(i int) bool { return p.point(k, i+1, share).angle > angle })
	a, b := p.point(k, i, share), first
	if i < tableHues-1 {
		b = p.point(k, i+1, share)
	} else {
		b.angle += 360
	}
	t := (angle - a.angle) / (b.angle - a.angle)
	return wrap((float64(i)+t)*(100.0/tableHues), 100), a.radius + t*(b.radius-a.radius)
}

// point returns the point of hue i a share of the way from ring k to the next.
func (p *plane) point(k, i int, share float64) polar {
	a := p[k][i]
	if share == 0 {
		return a
	}
	b := p[k+1][i]
	return polar{a.angle + share*(b.angle-a.angle), a.radius + share*(b.radius-a.radius)}
}
