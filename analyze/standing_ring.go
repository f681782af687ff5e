package analyze

import (
	"image"
	"math"
)

// ringSide is about how long the picture is when the rings are measured: every n-th
// pixel of every n-th row. Against the full picture the shares of a ring are then off
// by 0.02 at most on the demo's true mask (TestRingAgainstEveryPixel).
const ringSide = 400

// ringBound is the widest a ring gets, as a share of the short side: what is farther
// from a large region is not around it any more. Ours.
const ringBound = 1.0 / 6

// ringWidth returns how wide, in pixels, the ring around a region is: a disc of its size
// has a ring of its own area. That a thing is held against surroundings as large as
// itself is from [Liu2011]; the disc and the bounds are ours.
func ringWidth(pixels, width, height int) float64 {
	disc := math.Sqrt(float64(pixels) / math.Pi)
	return min((math.Sqrt2-1)*disc, ringBound*float64(min(width, height)))
}

// thinned is every factor-th pixel of a raster of regions.
type thinned struct {
	width, height int // of the raster
	factor        int
	columns, rows int
	of            []uint8
}

// rings returns how many thinned pixels of each region lie in the ring around each,
// rings[a][b] of region b around region a, and of all its ring how many are within the
// picture: inside[a], 0-1.
func (t *thinned) rings(all []extent) (rings [][]float64, inside []float64) {
	boxes := t.boxes(len(all))
	rings, inside = make([][]float64, len(all)), make([]float64, len(all))
	for a := range rings {
		rings[a] = make([]float64, len(all))
		if inside[a] = 1; boxes[a].Empty() {
			continue
		}
		// Two thinned pixels at least, so that the ring of a small thing is more than its seam.
		reach := max(2*straight, int32(straight*ringWidth(all[a].pixels, t.width, t.height)/float64(t.factor)))
		within, off := t.ring(uint8(a), boxes[a], reach, rings[a])
		inside[a] = float64(within) / float64(max(1, within+off))
	}
	return rings, inside
}

// thin takes the pixel in the middle of every f × f.
func thin(of []uint8, width, height, f int) *thinned {
	t := &thinned{width: width, height: height, factor: f, columns: (width + f - 1) / f, rows: (height + f - 1) / f}
	t.of = make([]uint8, t.columns*t.rows)
	for y := range t.rows {
		row := of[min(height-1, y*f+f/2)*width:][:width]
		for x := range t.columns {
			t.of[y*t.columns+x] = row[min(width-1, x*f+f/2)]
		}
	}
	return t
}

// boxes returns the rectangle that each region lies in.
func (t *thinned) boxes(regions int) []image.Rectangle {
	boxes := make([]image.Rectangle, regions)
	for y := range t.rows {
		for x := 0; x < t.columns; {
			from, r := x, t.of[y*t.columns+x]
			for x++; x < t.columns && t.of[y*t.columns+x] == r; x++ {
			}
			boxes[r] = boxes[r].Union(image.Rect(from, y, x, y+1))
		}
	}
	return boxes
}

// ring counts, by region, the pixels no farther than reach from region a, which lies in
// box, and returns how many they are and how many more would lie off the picture.
func (t *thinned) ring(a uint8, box image.Rectangle, reach int32, count []float64) (within, off int) {
	box = box.Inset(-int(reach/straight) - 1)
	stride := box.Dx()
	far := t.distances(a, box)
	for y := box.Min.Y + 1; y < box.Max.Y-1; y++ {
		row := far[(y-box.Min.Y)*stride:][:stride]
		for x, d := range row {
			x += box.Min.X
			switch {
			case d == 0 || d > reach:
			case x < 0 || y < 0 || x >= t.columns || y >= t.rows:
				off++
			default:
				within++
				count[t.of[y*t.columns+x]]++
			}
		}
	}
	return within, off
}

// distances returns how far the pixels of box, which may reach off the picture, are from
// region a, in thirds of a pixel; the outermost pixels are a rim that is not measured.
// Source: [Borgefors1986], chamfer 3-4.
func (t *thinned) distances(a uint8, box image.Rectangle) []int32 {
	stride := box.Dx()
	far := make([]int32, stride*box.Dy())
	for i := range far {
		far[i] = math.MaxInt32 / 2 // farther than all, with room for a step
	}
	picture := box.Intersect(image.Rect(0, 0, t.columns, t.rows))
	for y := picture.Min.Y; y < picture.Max.Y; y++ {
		row := far[(y-box.Min.Y)*stride+picture.Min.X-box.Min.X:]
		for x, r := range t.of[y*t.columns+picture.Min.X : y*t.columns+picture.Max.X] {
			if r == a {
				row[x] = 0
			}
		}
	}
	sweepAll(far, stride, box.Dy()-2)
	return far
}

// sweepAll lets every pixel within the rim of a raster take what its neighbours know of
// the distance, first those before it, then those after it.
func sweepAll(far []int32, stride, rows int) {
	for y := 1; y <= rows; y++ {
		for i := y*stride + 1; i < (y+1)*stride-1; i++ {
			far[i] = min(far[i], far[i-1]+straight, far[i-stride]+straight, far[i-stride-1]+diagonal, far[i-stride+1]+diagonal)
		}
	}
	for y := rows; y >= 1; y-- {
		for i := (y+1)*stride - 2; i > y*stride; i-- {
			far[i] = min(far[i], far[i+1]+straight, far[i+stride]+straight, far[i+stride+1]+diagonal, far[i+stride-1]+diagonal)
		}
	}
}
