// Where in L*, a*, b* which aims are near: a coarse grid of cells, with a gauge of
// each aim for each block of cells.

package match

import (
	"slices"

	"tonewright/analyze/colour"
)

// The grid has cells of 4 L* by 8 a* by 8 b*, as many along each axis as the
// colours of paint need; a block is 4 cells high and 2 by 2 wide. Ours: larger
// cells list more aims than are near, smaller ones take longer to fill.
const (
	side      = 32 // cells along each axis
	cellL     = 4
	cellAB    = 8
	storey    = 4 // cells of a block in L*
	wide      = 2 // and in a* and b*
	storeys   = side / storey
	columns   = (side / wide) * (side / wide) // blocks seen from above
	zeroAB    = cellAB * side / 2             // a* and b* start at minus this
	blockAB   = cellAB * wide
	nearBlock = 1.25 * blockAB // from its middle in a* or b* an aim takes nearGauge
)

// columnOf and cellOf return the column of blocks and the cell of a colour. Past
// the end of an axis, where no mix lies, they wrap round.
func columnOf(p point) int {
	a, b := uint(int((p.a+zeroAB)*(1.0/blockAB))), uint(int((p.b+zeroAB)*(1.0/blockAB)))
	return int(a%(side/wide)*(side/wide) + b%(side/wide))
}

func cellOf(p point) int {
	l := uint(int(p.l * (1.0 / cellL)))
	a, b := uint(int((p.a+zeroAB)*(1.0/cellAB))), uint(int((p.b+zeroAB)*(1.0/cellAB)))
	return int((l%side*side+a%side)*side + b%side)
}

// middleOfColumn returns the a* and b* of the middle of a column of blocks.
func middleOfColumn(column int) colour.Lab {
	a, b := column/(side/wide), column%(side/wide)
	return colour.Lab{A: (float64(a)+0.5)*blockAB - zeroAB, B: (float64(b)+0.5)*blockAB - zeroAB}
}

// lens is an aim with its gauge for each block, made when first asked for.
type lens struct {
	aim     colour.Lab
	looks   *looks
	away    [columns]float32 // CIEDE2000 from the middle of each column used, L* aside
	forms   [columns]gauge   // but for the weight of L*
	known   [columns]bool
	grained [columns]bool
	weight  [storeys]float32 // of the square of L*
}

func newLens(aim colour.Lab, looks *looks) *lens {
	l := &lens{aim: aim, looks: looks, grained: grained(aim)}
	for i := range l.weight {
		l.weight[i] = lightness(aim, (float64(i)+0.5)*cellL*storey)
	}
	for column, used := range looks.used {
		if used {
			middle := middleOfColumn(column)
			middle.L = aim.L
			l.away[column] = float32(colour.DeltaE00(aim, middle))
		}
	}
	return l
}

// isFar tells whether no colour of a column is within the distance.
func (l *lens) isFar(column int, distance float32) bool {
	return l.away[column]-l.looks.reach[column] > distance
}

// form returns the gauge of a column of blocks.
func (l *lens) form(column int) *gauge {
	if !l.known[column] {
		l.known[column] = true
		middle := middleOfColumn(column)
		switch {
		case l.isNear(middle):
			l.forms[column] = nearGauge(l.aim, middle)
		case l.grained[column]:
			l.forms[column] = gauge{at: pointOf(l.aim), grain: newGrain(l.aim, middle)}
		default:
			l.forms[column] = farGauge(l.aim, middle, blockAB/2)
		}
	}
	return &l.forms[column]
}

func (l *lens) isNear(middle colour.Lab) bool {
	return max(middle.A-l.aim.A, l.aim.A-middle.A, middle.B-l.aim.B, l.aim.B-middle.B) < nearBlock
}

func storeyOf(l float32) int { return min(max(int(l*(1.0/(cellL*storey))), 0), storeys-1) }

// watch is an aim's gauge for a block.
type watch struct {
	gauge
	aim int32
}

// patch is where one aim is near: its watches, and the cells with the watch that
// each is for.
type patch struct {
	watches []watch
	cells   []int32
	owners  []int32 // beside cells: index in watches
}

// patch returns the cells, in the columns that any mix comes near to, which hold a
// colour within a distance of the aim.
func (l *lens) patch(aim int32, distance float32) (p patch) {
	for column := range columns {
		if !l.looks.used[column] || l.isFar(column, distance) {
			continue
		}
		var left [wide * wide]float32
		for i := range left {
			left[i] = distance*distance - l.least(column, i/wide, i%wide)
		}
		if slices.Max(left[:]) < 0 {
			continue
		}
		for floor := range storeys {
			l.block(&p, aim, column, floor, &left)
		}
	}
	return p
}

// block adds the cells of one block, where left is what the L* difference may add
// to the square at each of its places.
func (l *lens) block(p *patch, aim int32, column, floor int, left *[wide * wide]float32) {
	count := len(p.cells)
	for i := range storey {
		low := float32((floor*storey + i) * cellL)
		away := max(low-float32(l.aim.L), float32(l.aim.L)-low-cellL, 0)
		square := l.weight[floor] * away * away
		for j, most := range left {
			if square <= most {
				p.cells = append(p.cells, int32(cellAt(column, floor*storey+i, j/wide, j%wide)))
				p.owners = append(p.owners, int32(len(p.watches)))
			}
		}
	}
	if len(p.cells) > count {
		w := watch{*l.form(column), aim}
		w.ll = l.weight[floor]
		p.watches = append(p.watches, w)
	}
}

// cellAt returns a cell by its column, its height, and its place in the column.
func cellAt(column, height, a, b int) int {
	const n = side / wide
	return (height*side+column/n*wide+a)*side + column%n*wide + b
}

// least returns what the form is at least in the cells at one place: for a near
// one, where it is a distance, that to the middle less half the diagonal; for a
// far one, where it hardly bends, the least of middle and corners.
func (l *lens) least(column, a, b int) float32 {
	g, middle := l.form(column), middleOfColumn(column)
	const half = cellAB / 2
	ma := float32(middle.A) + half*float32(2*a+1-wide)
	mb := float32(middle.B) + half*float32(2*b+1-wide)
	if g.grain != nil {
		return g.grain.least(ma, mb)
	}
	if l.isNear(middle) {
		across := sqrt32(half * half * (g.aa + g.bb + abs32(g.ab)))
		least := max(sqrt32(g.form(ma, mb))-across, 0)
		return least * least
	}
	return max(0, min(g.form(ma, mb),
		g.form(ma-half, mb-half), g.form(ma-half, mb+half), g.form(ma+half, mb-half), g.form(ma+half, mb+half)))
}

// field lists, for each cell, the watches that a colour in it is held against.
type field struct {
	watches []watch
	start   []int32 // where each cell's list begins in list; the next cell's start ends it
	list    []int32 // indices of watches
}

// newField joins patches.
func newField(patches []patch) *field {
	f := &field{start: make([]int32, side*side*side+1)}
	for _, p := range patches {
		for _, c := range p.cells {
			f.start[c+1]++
		}
	}
	for c := range side * side * side {
		f.start[c+1] += f.start[c]
	}
	f.list = make([]int32, f.start[side*side*side])
	next := append([]int32(nil), f.start...)
	for _, p := range patches {
		for i, c := range p.cells {
			f.list[next[c]] = int32(len(f.watches)) + p.owners[i]
			next[c]++
		}
		f.watches = append(f.watches, p.watches...)
	}
	return f
}

// near returns the watches listed for the cell of a colour.
func (f *field) near(p point) []int32 {
	c := cellOf(p)
	return f.list[f.start[c]:f.start[c+1]]
}
