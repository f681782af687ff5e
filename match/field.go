// Which aims a colour may be near to: a coarse grid of L*, a*, b*.

package match

// The grid has cells of 4 L* by 8 a* by 8 b*. Ours: larger ones list more aims
// than are near, smaller ones take longer to fill.
const (
	cellL, cellA, cellB = 4, 8, 8
	side                = 32 // cells along each axis; past the end they wrap round
)

// field lists, for each cell, the aims whose reach meets it.
type field struct {
	start [side*side*side + 1]int32 // of the cell's aims in aims
	aims  []int32
}

func cell(p point) int {
	l, a, b := int(p.l)/cellL, int(p.a+cellA*side/2)/cellA, int(p.b+cellB*side/2)/cellB
	return (l%side*side+a%side)*side + b%side
}
