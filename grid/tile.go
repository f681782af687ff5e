// A panel parted into sheets of paper that overlap.

package grid

import (
	"fmt"
	"math"
)

// Tile is the part of a panel that one sheet of paper takes, what it shares with its
// neighbours included. Rows and columns of tiles are counted from 0 at the top left.
type Tile struct {
	Column, Row int
	Box
}

// Tiling is a panel cut into tiles of one size, each sharing a strip as wide as the
// overlap with every neighbour.
// len(Tiles) == Columns × Rows, row by row.
type Tiling struct {
	Columns, Rows int
	Overlap       Millimetres
	Tiles         []Tile
}

// Lay cuts a panel of width × height into as few tiles as fit into a room of
// across × down. All tiles have one size, so that no sheet holds a mere strip.
// An error says that the overlap leaves nothing of the room, or that there would be more
// than most tiles; how many there would be is in it.
func Lay(width, height, across, down, overlap Millimetres, most int) (Tiling, error) {
	if overlap < 0 || overlap*2 > min(across, down) {
		return Tiling{}, fmt.Errorf("an overlap of %s is too wide for sheets with room for %s: take half of the narrower side or less",
			Millimetre.Format(overlap), Millimetre.Size(across, down))
	}
	columns, rows := tilesAlong(width, across, overlap), tilesAlong(height, down, overlap)
	if columns*rows > most {
		return Tiling{}, TooManyTiles{columns, rows, most}
	}
	l := Tiling{Columns: columns, Rows: rows, Overlap: overlap}
	w, h := tileSide(width, overlap, columns), tileSide(height, overlap, rows)
	for row := range rows {
		for column := range columns {
			x, y := Millimetres(column)*(w-overlap), Millimetres(row)*(h-overlap)
			l.Tiles = append(l.Tiles, Tile{column, row, Box{x, y, w, h}})
		}
	}
	return l, nil
}

// TooManyTiles says that a panel takes more sheets than are of use.
type TooManyTiles struct{ Columns, Rows, Most int }

func (e TooManyTiles) Error() string {
	return fmt.Sprintf("%d × %d sheets would be %d, and %d is the most", e.Columns, e.Rows, e.Columns*e.Rows, e.Most)
}

// tilesAlong returns how many tiles of at most room cover a side: n of them reach over
// n × room - (n-1) × overlap.
func tilesAlong(side, room, overlap Millimetres) int {
	const hair = 1e-6 // of a tile: a side that fits but for rounding needs no further one
	return max(1, int(math.Ceil(float64((side-overlap)/(room-overlap))-hair)))
}

func tileSide(side, overlap Millimetres, n int) Millimetres {
	return (side + Millimetres(n-1)*overlap) / Millimetres(n)
}
