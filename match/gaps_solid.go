// A box's reach in Munsell's terms: its rim read at the hues that are told.

package match

import (
	"math"

	"tonewright/analyze/colour"
)

// A solid is the most chroma at the middle hue of each half family, on each plane of
// value, rounded so that the last bit decides nothing; 0 where no mix has that hue.
type solid [rimPlanes][halfFamilies]float64

// A ring has the Munsell of each corner of a rim; chroma 0 where there is no corner.
type ring [rimPlanes][directions]colour.Munsell

// solidsOf returns the solids of a box's rim and of rims that hold it. The corners
// that they share are looked up once.
func solidsOf(box *rim, wider []*rim) []*solid {
	solids := make([]*solid, 1+len(wider))
	known := ringOf(box, &rim{}, &ring{})
	solids[0] = known.solid()
	inParallel(len(wider), func(i int) {
		solids[i+1] = ringOf(wider[i], box, known).solid()
		solids[i+1].join(solids[0]) // it holds the box's mixes, whatever corners new ones moved
	})
	return solids
}

// ringOf looks up the corners of a rim that are not those of one that is known.
func ringOf(r, known *rim, of *ring) *ring {
	all := *of
	for i := range r {
		for d, c := range r[i] {
			if c.square > 0 && c != known[i][d] {
				all[i][d] = c.at.lab().Munsell()
			}
		}
	}
	return &all
}

// mostOpen is how many directions beside one another may have no corner and still lie
// within the rim, and nearHue how many hue steps a hue may lie past the end of a rim
// that does not close. Ours: a sheet leaves out a direction here and there, and a step
// of hue is what a direction spans.
const (
	mostOpen = 2
	nearHue  = 1
)

// solid reads a ring at the middle hue of each half family.
func (g *ring) solid() *solid {
	s := new(solid)
	for i := range g {
		for h := range s[i] {
			s[i][h] = roundTo(chromaAt(&g[i], middleOf(h)), 10)
		}
	}
	return s
}

// chromaAt returns the chroma of a plane's rim at a Munsell hue, on the straight line
// between the corners to either side; where the rim is open there, that of the corner
// within nearHue; else 0.
//
// Ours, in place of the strongest corner of the half family: of the starter box that put
// ultramarine's 15.5 at 7.1PB down for a 5PB at value 3 that recipes take to
// 11. Of 120 hues and values three in four are met by a recipe, to 0.14 chroma in the
// median and 0.45 at nine in ten, see TestGapsAgreeWithRecipes.
func chromaAt(corners *[directions]colour.Munsell, hue float64) (chroma float64) {
	end := 0.0
	for d, c := range corners {
		if c.Chroma == 0 {
			continue
		}
		ahead := turnTo(c.Hue, hue)
		if math.Abs(ahead) <= nearHue {
			end = max(end, c.Chroma)
		}
		for e := 1; e <= mostOpen+1; e++ {
			next := corners[(d+e)%directions]
			if next.Chroma == 0 {
				continue
			}
			chroma = max(chroma, chord(c, next, hue))
			break
		}
	}
	if chroma > 0 {
		return chroma
	}
	return end
}

// chord returns where the straight line between two colours of one value passes a hue,
// as chroma; 0 where it does not, or where they lie across from each other.
func chord(a, b colour.Munsell, hue float64) float64 {
	whole, part := turnTo(a.Hue, b.Hue), turnTo(a.Hue, hue)
	if whole == 0 || part/whole < 0 || part/whole > 1 || math.Abs(whole) >= acrossFrom {
		return 0
	}
	sin := func(steps float64) float64 { return math.Sin(steps * math.Pi / 50) }
	return a.Chroma * b.Chroma * sin(whole) / (a.Chroma*sin(part) + b.Chroma*sin(whole-part))
}

// turnTo returns the steps from one Munsell hue to another, -50 to 50.
func turnTo(from, to float64) float64 { return math.Remainder(to-from, 100) }

// middleOf returns the middle hue of a half family on the ASTM scale, 5 for 5R.
func middleOf(half int) float64 { return 5 * float64(half+1) }

// join takes in what another solid has more of.
func (s *solid) join(other *solid) {
	for i := range s {
		for h := range s[i] {
			s[i][h] = max(s[i][h], other[i][h])
		}
	}
}

// volume returns the size of the Munsell solid, in chroma squared times value: on each
// plane, of each half family a sector of the chroma at its middle, a twentieth of a
// circle.
func (s *solid) volume() (sum float64) {
	for i := range s {
		for _, chroma := range s[i] {
			sum += chroma * chroma / 2 * (2 * math.Pi / halfFamilies) * planeStep
		}
	}
	return sum
}
