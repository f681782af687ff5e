package analyze

import "math"

// Composition is how the regions of a picture lie: it is worked out once, whatever
// colours they are then painted in.
type Composition struct {
	shares []float64   // of the picture, by region
	near   [][]float64 // 0-1, see nearness
	ring   [][]float64 // see Ring
	inside []float64   // of each ring, how much of it is within the picture, 0-1
	sides  [][]int     // pixel sides that two regions share
	few    int         // sides that are no contact yet
}

// Ours: two regions touch where they share a hundredth of the short side or more. What is
// less is a corner where several meet, or stray pixels. Of regions found in eight photos
// no two had so little in common; a corner of the painter's cells or outlines has.
const contactShare = 0.01

// leastSides is the least contact in a picture too small for contactShare: where four
// regions meet in a corner, two of them share a side or two.
const leastSides = 3

// Composed returns how the regions of a picture of width × height pixels lie.
// It panics if len(parting.Of) is not their product.
func Composed(parting Parting, width, height int) *Composition {
	if len(parting.Of) != width*height {
		panic("analyze: the parting is not of a picture of that size")
	}
	c := &Composition{few: max(leastSides, int(contactShare*float64(min(width, height))))}
	bodies := c.survey(parting.Of, len(parting.Regions), width, height)
	c.near = nearness(bodies, width, height)
	c.ring, c.inside = thin(parting.Of, width, height, max(1, max(width, height)/ringSide)).rings(bodies)
	for a, ring := range c.ring {
		if !shareOut(ring) { // too small for the thinned picture: by what it touches
			for b, n := range c.sides[a] {
				ring[b] = float64(n)
			}
			shareOut(ring)
		}
	}
	return c
}

// Touch tells whether regions a and b have a border in common that is longer than a
// few pixels.
func (c *Composition) Touch(a, b int) bool { return a != b && c.sides[a][b] >= c.few }

// Ring returns the share that each region has of the ring around region a, which is as
// large as a itself: see ringWidth. The shares add up to 1, but are all 0 for a region
// without pixels or without others around it. What lies off the picture is no part of it.
func (c *Composition) Ring(a int) []float64 { return c.ring[a] }

// shareOut divides v by its sum and tells whether there was one.
func shareOut(v []float64) bool {
	sum := 0.0
	for _, x := range v {
		sum += x
	}
	if sum == 0 {
		return false
	}
	for i := range v {
		v[i] /= sum
	}
	return true
}

// extent is how many pixels a region has, and where: twice the sum of their middles.
type extent struct{ pixels, x, y int }

// survey counts pixels and the sides that regions share, in one pass.
func (c *Composition) survey(of []uint8, regions, width, height int) []extent {
	all := make([]extent, regions)
	c.sides = make([][]int, regions)
	for r := range c.sides {
		c.sides[r] = make([]int, regions)
	}
	meet := func(a, b uint8) { c.sides[a][b]++; c.sides[b][a]++ }
	for y := range height {
		row := of[y*width : (y+1)*width]
		for x := 0; x < width; {
			from, r := x, row[x]
			for x++; x < width && row[x] == r; x++ {
			}
			e := &all[r]
			e.pixels, e.x, e.y = e.pixels+x-from, e.x+(x-from)*(x+from), e.y+(x-from)*(2*y+1)
			if x < width {
				meet(r, row[x])
			}
		}
		if y > 0 {
			for x, r := range of[(y-1)*width : y*width] {
				if r != row[x] {
					meet(r, row[x])
				}
			}
		}
	}
	c.shares = make([]float64, regions)
	for r, e := range all {
		c.shares[r] = float64(e.pixels) / float64(max(1, len(of)))
	}
	return all
}

// nearSpread is how far a region is felt: a square of the distance between the middles
// of two, where the picture is 1 wide and 1 high. Source: [Cheng2015], σs² = 0.4.
const nearSpread = 0.4

// nearness returns exp(-D²/σ²) of the distance D between the middles of two regions, 1
// for one and itself. Source: [Cheng2015], the region contrast's spatial weight; the
// paper prints D, the authors' program squares it.
func nearness(all []extent, width, height int) [][]float64 {
	near := make([][]float64, len(all))
	for a := range all {
		near[a] = make([]float64, len(all))
		for b := range all {
			if all[a].pixels > 0 && all[b].pixels > 0 {
				dx := (all[a].middle(all[a].x) - all[b].middle(all[b].x)) / float64(width)
				dy := (all[a].middle(all[a].y) - all[b].middle(all[b].y)) / float64(height)
				near[a][b] = math.Exp(-(dx*dx + dy*dy) / nearSpread)
			}
		}
	}
	return near
}

func (e extent) middle(twice int) float64 { return float64(twice) / float64(2*e.pixels) }
