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

// weighed is how many of the spots that the gauge calls nearest are weighed exactly.
const weighed = 4

// astray is the most CIEDE2000 by which a gauge is thought to err, however far the aim.
// Ours: TODO
const astray = 1

// nearest returns the least miss of those spots that a gauge brings about under a
// miss; one at least that where there is none.
func (n *nears) nearest(spots []spot, under int32) int32 {
	limit := tie * float32(under)
	limit = min(slack*limit, limit+astray)
	least := uint8(min(2*limit+1, 255))
	bound := limit * limit
	var best [weighed]int32
	var squares [weighed]float32
	count := 0
	for i := range spots {
		p := &spots[i]
		if n.least[p.cell] >= least {
			continue
		}
		square := n.square(p)
		if square >= bound {
			continue
		}
		if count < weighed {
			count++
		}
		at := count - 1
		for ; at > 0 && square < squares[at-1]; at-- {
			best[at], squares[at] = best[at-1], squares[at-1]
		}
		best[at], squares[at] = int32(i), square
		if count == weighed {
			bound = squares[count-1]
			least = min(least, uint8(min(2*sqrt32(bound)+1, 255)))
		}
	}
	for _, i := range best[:count] {
		under = min(under, ties(colour.DeltaE00(n.aim, spots[i].lab())))
	}
	return under
}

// square returns about the square of CIEDE2000 to a spot; outside the columns that
// are known, where hardly any mix lies, the true one.
func (n *nears) square(p *spot) float32 {
	column := columnOf(p.point)
	if !n.known[column] {
		d := colour.DeltaE00(n.aim, p.lab())
		return float32(d * d)
	}
	away := p.l - float32(n.aim.L)
	return n.weight[storeyOf(p.l)]*away*away + n.forms[column].form(p.a, p.b)
}

// nears returns that of every aim.
func (s *search) nears(most int) []*nears {
	looks, all := s.firstLooks(most), make([]*nears, len(s.aims))
	inParallel(len(all), func(a int) { all[a] = newNears(s.aims[a], looks) })
	return all
}
