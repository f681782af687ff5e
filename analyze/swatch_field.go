package analyze

import (
	"image"
	"math"
)

// block is the middle of one of the small fields into which a sample is parted, so
// that grain and brush marks do not hide what changes from one end to the other.
type block struct {
	x, y     float64 // its middle, in upright pixels
	col, row int
	light    rgb
}

// Ours: 8 × 8 blocks; fewer where they would be under 4 pixels a side. Cells, by
// which brush marks are told from grain, are as many as that allows, within reason.
const (
	mostBlocks   = 8
	finestBlocks = 64
	blockSide    = 4
)

// field is how light, or the thickness of paint, lies over a sample.
type field struct {
	blocks []block
	slope  [2]float64 // of the logarithm of luminance, per pixel right and down
	noise  float64    // robust deviation of the blocks from that slope, as a share
	change float64    // from one corner to the opposite, as a share: 0.2 is a fifth more
}

func fieldOf(rect image.Rectangle, pixels []pixel) field {
	f := field{blocks: blocksOf(rect, pixels, mostBlocks)}
	f.slope, f.noise = slopeOf(f.blocks)
	f.change = math.Expm1(math.Abs(f.slope[0])*float64(rect.Dx()) + math.Abs(f.slope[1])*float64(rect.Dy()))
	return f
}

// blocksOf are the blocks, at most so many a side, that have at least a third of an
// even share of the pixels, row by row.
func blocksOf(rect image.Rectangle, pixels []pixel, most int) (blocks []block) {
	across := min(most, max(1, rect.Dx()/blockSide))
	down := min(most, max(1, rect.Dy()/blockSide))
	wide, high := float64(rect.Dx())/float64(across), float64(rect.Dy())/float64(down)
	left, top := float64(rect.Min.X), float64(rect.Min.Y)
	in := make([][]pixel, across*down)
	for _, p := range pixels {
		i := int((p.y-top)/high)*across + int((p.x-left)/wide)
		in[i] = append(in[i], p)
	}
	for i, b := range in {
		if 3*len(b)*len(in) < len(pixels) || len(b) == 0 {
			continue
		}
		col, row := i%across, i/across
		blocks = append(blocks, block{
			x: left + (float64(col)+0.5)*wide, y: top + (float64(row)+0.5)*high,
			col: col, row: row, light: middle(b),
		})
	}
	return blocks
}

// slopeOf is how the logarithm of luminance changes per pixel to the right and down:
// the median over all pairs of blocks in a row and in a column, so that neither a
// spot nor one bad corner tilts it; noise is the robust deviation of the blocks from it.
// Source: [Sen1968], the median of pairwise slopes.
func slopeOf(blocks []block) (slope [2]float64, noise float64) {
	var right, down []float64
	for i, a := range blocks {
		for _, b := range blocks[i+1:] {
			rise := b.height() - a.height()
			switch {
			case a.row == b.row:
				right = append(right, rise/(b.x-a.x))
			case a.col == b.col:
				down = append(down, rise/(b.y-a.y))
			}
		}
	}
	slope = [2]float64{median(right), median(down)}
	rest := make([]float64, len(blocks))
	for i, b := range blocks {
		rest[i] = b.height() - slope[0]*b.x - slope[1]*b.y
	}
	_, noise = deviation(rest)
	return slope, noise
}

// height is the logarithm of a block's luminance, which is kept off zero.
func (b *block) height() float64 { return math.Log(max(b.light.luminance(), 1e-6)) }
