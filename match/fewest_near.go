// The nearest of many mixes to one aim, whether near or far.

package match

import (
	"tonewright/analyze/colour"
)

// nears is an aim with how far from it every cell of the grid is at least.
type nears struct {
	*lens
	least [side * side * side]uint8 // CIEDE2000 in halves, rounded down; past 127 it is 255
}

// newNears makes the gauges of the columns that mixes lie in and bounds their cells.
func newNears(aim colour.Lab, looks *looks) *nears {
	n := &nears{lens: newLens(aim, looks)}
	for column, used := range looks.used {
		if !used {
			continue
		}
		for place := range wide * wide {
			least := n.lens.least(column, place/wide, place%wide)
			for height := range side {
				low := float32(height * cellL)
				away := max(low-float32(aim.L), float32(aim.L)-low-cellL, 0)
				square := least + n.weight[height/storey]*away*away
				n.least[cellAt(column, height, place/wide, place%wide)] = uint8(min(2*sqrt32(square), 255))
			}
		}
	}
	return n
}

// weighed is how many of the mixes that the gauge calls nearest are weighed exactly.
// Ours: of 22,000 cases of three of 12 paints and an aim, half beyond reach, the nearest
// mix was missed by a mean of 0.07 CIEDE2000 with 1, by 0.02 with 4, by 0.01 with 8;
// what is missed by more than 0.3, one case in 60, is far off anyway.
const weighed = 4

// astray is the most CIEDE2000 by which a gauge is thought to err, however far the aim.
// Ours: with 2 in its place nothing came out nearer on average.
const astray = 1

// nearest returns the least miss of mixes, or another miss where none comes under it.
func (n *nears) nearest(c *cloud, under int32) int32 {
	limit := tie * float32(under)
	limit = min(slack*limit, limit+astray)
	near := shortlist{bound: limit * limit}
	near.draw()
	from := int32(0)
	for _, run := range c.runs {
		if n.least[run.cell] < near.least {
			n.look(c.points[from:run.end], from, &near)
		}
		from = run.end
	}
	for _, i := range near.at[:near.count] {
		under = min(under, ties(colour.DeltaE00(n.aim, c.points[i].lab())))
	}
	return under
}

// look holds mixes of one cell against the shortlist; outside the columns that are
// known, where hardly any mix lies, by the true CIEDE2000.
func (n *nears) look(points []point, from int32, near *shortlist) {
	column, weight := columnOf(points[0]), n.weight[storeyOf(points[0].l)]
	high, g := float32(n.aim.L), &n.forms[column]
	for i := range points {
		p := &points[i]
		away := p.l - high
		square := weight * away * away
		if square >= near.bound {
			continue
		}
		if n.known[column] {
			square += g.form(p.a, p.b)
		} else {
			d := float32(colour.DeltaE00(n.aim, p.lab()))
			square = d * d
		}
		if square < near.bound {
			near.add(from+int32(i), square)
		}
	}
}

// shortlist is the mixes that the gauge calls nearest.
type shortlist struct {
	at      [weighed]int32 // nearest first
	squares [weighed]float32
	count   int
	bound   float32 // square that a mix must come under
	least   uint8   // as in nears, that a cell must be under
}

func (s *shortlist) add(mix int32, square float32) {
	s.count = min(s.count+1, weighed)
	i := s.count - 1
	for ; i > 0 && square < s.squares[i-1]; i-- {
		s.at[i], s.squares[i] = s.at[i-1], s.squares[i-1]
	}
	s.at[i], s.squares[i] = mix, square
	if s.count == weighed {
		s.bound = s.squares[weighed-1]
		s.draw()
	}
}

// draw draws in what cells are looked at.
func (s *shortlist) draw() { s.least = uint8(min(2*sqrt32(s.bound)+1, 255)) }

// nears returns that of every aim.
func (s *search) nears(most int) []*nears {
	looks, all := s.firstLooks(most), make([]*nears, len(s.aims))
	inParallel(len(all), func(a int) { all[a] = newNears(s.aims[a], looks) })
	return all
}
