package analyze

import (
	"cmp"
	"image"
	"math"
	"slices"

	"tonewright/analyze/colour"
)

// Edge is where the border of two regions is lost: both sides have nearly one value.
type Edge struct {
	A, B       int           // regions, A < B
	Pixels     []image.Point // of the smaller region, along the lost stretches, in order, one stretch after the other
	Length     float64       // of the lost stretches, in pixels
	Share      float64       // of the whole border of the two, 0-1
	ValueApart float64       // Munsell, the mean along it, less than lostBelow
	DeltaE     float64       // CIEDE2000, the mean along it
}

// lostBelow is the difference in Munsell value under which an edge is lost. Ours: half
// of the step of the nine-step scale that painters part their values by, so that both
// sides are mixed to one step; that an edge without a difference in value is lost,
// whatever the hues, is common practice, no source.
const lostBelow = 0.5

// lostLength is the shortest stretch that counts, as a share of the picture's short
// side. Ours: a painter softens or saves an edge over the breadth of a finger, not of a
// hair; on a panel of 9 in it is a quarter of an inch.
const lostLength = 0.03

// LostEdges returns where neighbouring regions of study, which is parted by parting,
// have nearly the same value along their border: for each pair one Edge or none, by A,
// then B. Both sides are compared place by place along the border, each by the mean of a
// few pixels beside it; those at the seam, which are of both, do not count.
// It panics if the parting is not of the study.
func LostEdges(study *Picture, parting Parting) []Edge {
	if len(parting.Of) != study.Width*study.Height {
		panic("analyze: the parting is not of that picture")
	}
	found := losses{parting: parting, of: map[[2]uint8]*loss{}}
	least := coarse(lostLength * float64(min(study.Width, study.Height)))
	for _, l := range linesOf(parting.Of, study.Width, study.Height) {
		sides := l.compare(study, parting.Of)
		at := found.at(l)
		at.whole += length(sides)
		for _, stretch := range l.stretches(sides) {
			if coarse(length(stretch.sides)) >= least {
				at.add(stretch)
			}
		}
	}
	return found.edges()
}

// losses are what is lost of the borders between regions.
type losses struct {
	parting Parting
	of      map[[2]uint8]*loss
	all     []*loss
}

// loss is what is lost of the border of two regions; the differences in edge are summed
// over the length until edges divides them by it.
type loss struct {
	edge   Edge
	whole  float64        // length of their whole border
	beside [4]image.Point // the pixels of the smaller region beside a crack
}

// at returns the loss of the regions that a line is between.
func (l *losses) at(line line) *loss {
	a, b := line.cracks[0].a, line.cracks[0].b
	if found := l.of[[2]uint8{a, b}]; found != nil {
		return found
	}
	found := &loss{edge: Edge{A: int(a), B: int(b)}, beside: leftOf}
	if l.parting.Regions[b].Pixels < l.parting.Regions[a].Pixels {
		found.beside = rightOf
	}
	l.of[[2]uint8{a, b}] = found
	l.all = append(l.all, found)
	return found
}

// edges returns those that something is lost of, in order.
func (l *losses) edges() []Edge {
	edges := []Edge{}
	for _, found := range l.all {
		if e := found.edge; e.Length > 0 {
			e.ValueApart, e.DeltaE, e.Share = e.ValueApart/e.Length, e.DeltaE/e.Length, e.Length/found.whole
			edges = append(edges, e)
		}
	}
	slices.SortFunc(edges, func(a, b Edge) int { return cmp.Or(a.A-b.A, a.B-b.B) })
	return edges
}

// stretch is a part of a line, and what its sides are like.
type stretch struct {
	cracks []crack
	sides  []sides
}

// stretches returns the parts of a line along which the edge is lost.
func (l line) stretches(all []sides) []stretch {
	cracks := l.cracks
	if firm := slices.IndexFunc(all, sides.firm); l.ring && firm > 0 { // no stretch goes on past the end
		cracks = slices.Concat(cracks[firm:], cracks[:firm])
		all = slices.Concat(all[firm:], all[:firm])
	}
	var found []stretch
	for i := 0; i < len(all); i++ {
		from := i
		for i < len(all) && !all[i].firm() {
			i++
		}
		if i > from {
			found = append(found, stretch{cracks[from:i], all[from:i]})
		}
	}
	return found
}

// add puts a stretch to the edge.
func (l *loss) add(s stretch) {
	e := &l.edge
	for i, c := range s.cracks {
		if p := c.from.Add(l.beside[c.way]); i == 0 || p != e.Pixels[len(e.Pixels)-1] {
			e.Pixels = append(e.Pixels, p)
		}
		side := s.sides[i]
		e.Length += side.length
		e.ValueApart += side.length * math.Abs(side.value)
		e.DeltaE += side.length * colour.DeltaE00(side.left, side.right)
	}
}

func length(all []sides) (sum float64) {
	for _, s := range all {
		sum += s.length
	}
	return sum
}
