package grid

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// By hand: two tiles of 105 cover 200 with 10 shared, and three of 90 cover 250.
func TestLay(t *testing.T) {
	l, err := Lay(200, 250, 105, 90, 10, 100)
	require.NoError(t, err)
	assert.Equal(t, []int{2, 3}, []int{l.Columns, l.Rows})
	require.Len(t, l.Tiles, 6)
	assert.Equal(t, Tile{0, 0, Box{0, 0, 105, 90}}, l.Tiles[0])
	assert.Equal(t, Tile{1, 2, Box{95, 160, 105, 90}}, l.Tiles[5])

	l, err = Lay(200.5, 90, 105, 90, 10, 100) // half a millimetre more, and all are narrower
	require.NoError(t, err)
	assert.Equal(t, []int{3, 1}, []int{l.Columns, l.Rows})
	assert.InDelta(t, 220.5/3, float64(l.Tiles[0].Width), 1e-9)

	l, err = Lay(80, 60, 105, 90, 10, 100)
	require.NoError(t, err)
	assert.Equal(t, []Tile{{0, 0, Box{0, 0, 80, 60}}}, l.Tiles)
}

func TestLayRefuses(t *testing.T) {
	_, err := Lay(1000, 1000, 100, 80, 41, 100)
	assert.ErrorContains(t, err, "an overlap of 41 mm is too wide for sheets with room for 100 × 80 mm")
	_, err = Lay(1000, 1000, 110, 110, 10, 80)
	assert.Equal(t, TooManyTiles{10, 10, 80}, err)
}

// Whatever the panel: the tiles cover it, none is empty or larger than the room,
// neighbours share the overlap, and one tile fewer would not do.
func FuzzLay(f *testing.F) {
	f.Add(304.8, 406.4, 180.0, 242.0, 10.0)
	f.Add(10000.0, 3000.0, 811.0, 1132.0, 10.0)
	f.Add(350.0, 1.0, 180.0, 242.0, 10.0)
	f.Fuzz(func(t *testing.T, width, height, across, down, overlap float64) {
		for _, v := range []float64{width, height, across, down} {
			if !(v >= 1 && v <= float64(Largest)) {
				return
			}
		}
		if !(overlap >= 0 && overlap <= 1000) {
			return
		}
		l, err := Lay(Millimetres(width), Millimetres(height), Millimetres(across), Millimetres(down), Millimetres(overlap), 400)
		if err != nil {
			return
		}
		require.Len(t, l.Tiles, l.Columns*l.Rows)
		checkSide(t, l.Columns, width, across, overlap, func(i int) (Millimetres, Millimetres) { b := l.Tiles[i]; return b.X, b.Width })
		checkSide(t, l.Rows, height, down, overlap, func(i int) (Millimetres, Millimetres) { b := l.Tiles[i*l.Columns]; return b.Y, b.Height })
	})
}

func checkSide(t *testing.T, n int, side, room, overlap float64, tile func(int) (Millimetres, Millimetres)) {
	const exact = 1e-9
	end := 0.0
	for i := range n {
		from, long := tile(i)
		assert.Greater(t, float64(long), 0.0)
		assert.LessOrEqual(t, float64(long), room*(1+1e-5))
		if i > 0 {
			assert.InDelta(t, overlap, end-float64(from), exact*math.Max(1, side))
		} else {
			assert.Zero(t, from)
		}
		end = float64(from + long)
	}
	assert.InDelta(t, side, end, exact*math.Max(1, side))
	if n > 1 {
		assert.Less(t, float64(n-1)*room-float64(n-2)*overlap, side)
	}
}
