package analyze

import (
	"fmt"
	"image"
	"slices"
)

// Outlines returns the rings of every region: its outer borders and those of its holes.
// len(result) == len(parting.Regions); a place is in a region if it is inside an odd
// number of the region's rings, and a region without pixels has none.
//
// Rings run along the sides of pixels and are then made simpler: no border moves by
// more than tolerance ≥ 0, in pixels, and with 0 only places between two others on a
// straight line go. What two regions share is made simpler once, so that they still
// fit: every pixel stays in an odd number of regions, which is one but for slivers
// where borders nearer to each other than the tolerance cross. Loose specks of a region,
// smaller than a square of twice the tolerance, go to the region around them first; a
// part narrower than that may vanish. It panics if tolerance is not 0 or more.
func Outlines(parting Parting, width, height int, tolerance float64) [][][]Place {
	if !(tolerance >= 0) {
		panic(fmt.Sprintf("analyze: a tolerance of %v pixels", tolerance))
	}
	tolerance = min(tolerance, float64(width+height)) // all there is; halving must come to an end
	of := withoutSpecks(parting.Of, width, height, 4*tolerance*tolerance)
	rings := make([][][]Place, len(parting.Regions))
	t := tracer{of: of, width: width, height: height, seen: make([]bool, len(of))}
	for y := range height {
		for x, region := range of[y*width : (y+1)*width] {
			if y > 0 && of[(y-1)*width+x] == region || t.seen[y*width+x] {
				continue
			}
			if ring := simplerRing(t.trace(image.Pt(x, y)), tolerance); len(ring) > 2 {
				rings[region] = append(rings[region], ring)
			}
		}
	}
	return rings
}

// withoutSpecks returns the labels with every part of fewer than least pixels joined to
// its longest neighbour, but for the largest part of each label.
func withoutSpecks(of []uint8, width, height int, least float64) []uint8 {
	if least <= 1 {
		return of
	}
	q := partsOf(of, width, height)
	specks := slices.DeleteFunc(q.scraps(), func(n int) bool { return float64(q.pixels[n]) >= least })
	of = slices.Clone(of)
	q.absorb(of, specks, width*height)
	return of
}
