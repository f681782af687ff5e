package analyze

import (
	"image"
	"math"
)

// ycc is how Y, Cb and Cr become red, green and blue.
type ycc struct {
	kr, kb float64 // shares of red and blue in Y
	video  bool    // Y runs from 16 to 235 and Cb, Cr from 16 to 240
}

var (
	yccJPEG  = ycc{kr: 0.299, kb: 0.114}              // [T871]
	yccVideo = ycc{kr: 0.299, kb: 0.114, video: true} // WebP: [RFC6386] 9.2 names ITU-R BT.601
)

// yccOf is the coding that a HEIC file names. Source: [H273] table 4; numbers
// that are not among these are read as BT.601, as they are in photos.
func yccOf(coefficients int, full bool) ycc {
	y := ycc{kr: 0.299, kb: 0.114, video: !full}
	switch coefficients {
	case 1:
		y.kr, y.kb = 0.2126, 0.0722
	case 9:
		y.kr, y.kb = 0.2627, 0.0593
	}
	return y
}

// Luma and chroma, each rounded to a level, add up to between
// 1.164·(0 - 16) - 2.02·128 and 1.164·(255 - 16) + 2.02·127, so with the margin
// the sum is never negative and stays under yccSteps. Y of a JPEG is whole, so
// its sum is rounded once; that of a video coding can be off by one level.
const (
	yccMargin = 384
	yccSteps  = 1024
)

// yccTables hold, for each value of Y, Cb and Cr, what it adds to each channel;
// the chroma in 1/65536 of a level, to be mixed before it is rounded.
type yccTables struct {
	luma                [256]int32 // with the margin
	redOfCr, greenOfCr  [256]int32
	greenOfCb, blueOfCb [256]int32
}

func (y ycc) tables() *yccTables {
	t := new(yccTables)
	kg := 1 - y.kr - y.kb
	lumaGain, lumaZero, chromaGain := 1.0, 0.0, 1.0
	if y.video {
		lumaGain, lumaZero, chromaGain = 255.0/219, 16, 255.0/224
	}
	fixed := func(v float64) int32 { return int32(math.Round(v * 65536)) }
	for i := range 256 {
		t.luma[i] = yccMargin + int32(math.Round((float64(i)-lumaZero)*lumaGain))
		c := (float64(i) - 128) * chromaGain
		t.redOfCr[i] = fixed(2 * (1 - y.kr) * c)
		t.blueOfCb[i] = fixed(2 * (1 - y.kb) * c)
		t.greenOfCr[i] = fixed(-2 * (1 - y.kr) * y.kr / kg * c)
		t.greenOfCb[i] = fixed(-2 * (1 - y.kb) * y.kb / kg * c)
	}
	return t
}

// chroma is what Cb and Cr add to red, green and blue, sample by sample.
type chroma [][3]int32

// chromaReader reads the Cb and Cr of a span of pixels, row by row. Plain, each
// sample stands for all its pixels; smooth, samples are joined by straight lines
// between their centres, as reference decoders do. Ours: smooth only where less
// than two pixels go into one, since a mean of two hides the difference.
type chromaReader struct {
	t        *yccTables
	m        *image.YCbCr
	from, to int // pixels
	smooth   bool
	shift    uint // of a pixel's place to its sample's
	phase    int  // pixels of the first sample that lie before from
	c, mixed chroma
	have     int // row of samples in c, when plain
}

func newChromaReader(t *yccTables, m *image.YCbCr, from, to int, smooth bool) *chromaReader {
	r := &chromaReader{t: t, m: m, from: from, to: to, shift: chromaShift(m), have: -1, c: make(chroma, to-from)}
	r.phase = from & (1<<r.shift - 1)
	if r.smooth = smooth && r.shift < 2; r.smooth {
		r.shift, r.phase = 0, 0
		r.mixed = make(chroma, to-from+2)
	}
	return r
}

// row is the chroma of row y: pixel i of the span has sample (i + phase) >> shift.
func (r *chromaReader) row(y int) chroma {
	if r.smooth {
		r.fillSmooth(y)
		return r.c
	}
	first, last := r.m.COffset(r.from, y), r.m.COffset(r.to-1, y)
	if first == r.have { // two rows may share their samples
		return r.c
	}
	r.have = first
	cb, cr := r.m.Cb[first:last+1], r.m.Cr[first:last+1]
	for i := range cb {
		r.c[i] = whole(r.t.adds(cb[i], cr[i]))
	}
	return r.c
}

func (t *yccTables) adds(cb, cr uint8) [3]int32 {
	return [3]int32{t.redOfCr[cr], t.greenOfCb[cb] + t.greenOfCr[cr], t.blueOfCb[cb]}
}

// fillSmooth mixes the nearer and the farther row of samples 3 : 1, then along
// the row likewise. At the picture's edge a sample is its own neighbour.
func (r *chromaReader) fillSmooth(y int) {
	near, far := r.m.COffset(0, y), r.m.COffset(0, r.neighbour(y))
	shift := chromaShift(r.m)
	last := (r.m.Rect.Dx() - 1) >> shift
	before := r.from>>shift - 1 // the sample in mixed[0]
	after := (r.to-1)>>shift + 1
	for s := before; s <= after; s++ {
		at := min(last, max(0, s))
		a := r.t.adds(r.m.Cb[near+at], r.m.Cr[near+at])
		b := r.t.adds(r.m.Cb[far+at], r.m.Cr[far+at])
		r.mixed[s-before] = mix(a, b)
	}
	for i := range r.c {
		x := r.from + i
		s := x>>shift - before
		next := s
		if shift == 1 {
			next += 2*(x&1) - 1
		}
		r.c[i] = whole(mix(r.mixed[s], r.mixed[next]))
	}
}

// neighbour is a row in the nearest other row of samples, or y itself.
func (r *chromaReader) neighbour(y int) int {
	switch r.m.SubsampleRatio {
	case image.YCbCrSubsampleRatio420, image.YCbCrSubsampleRatio440:
		return min(r.m.Rect.Dy()-1, max(0, y+4*(y&1)-2)) // an odd row is nearer to the one below
	}
	return y
}

func mix(near, far [3]int32) [3]int32 {
	return [3]int32{(3*near[0] + far[0] + 2) >> 2, (3*near[1] + far[1] + 2) >> 2, (3*near[2] + far[2] + 2) >> 2}
}

// whole rounds 1/65536 of a level to levels.
func whole(c [3]int32) [3]int32 {
	return [3]int32{(c[0] + 1<<15) >> 16, (c[1] + 1<<15) >> 16, (c[2] + 1<<15) >> 16}
}

// chromaShift is by how many bits fewer columns Cb and Cr have.
func chromaShift(m *image.YCbCr) uint {
	switch m.SubsampleRatio {
	case image.YCbCrSubsampleRatio422, image.YCbCrSubsampleRatio420:
		return 1
	case image.YCbCrSubsampleRatio411, image.YCbCrSubsampleRatio410:
		return 2
	}
	return 0
}

// reader reads rows of m as red, green and blue.
func (y ycc) reader(m *image.YCbCr) func(from, to int) rowReader {
	t := y.tables()
	return func(from, to int) rowReader {
		c := newChromaReader(t, m, from, to, true)
		return func(y int, row []uint16) {
			add := c.row(y)
			for i, v := range m.Y[m.YOffset(from, y):][:to-from] {
				for k, a := range add[(i+c.phase)>>c.shift] {
					row[3*i+k] = uint16(min(255, max(0, t.luma[v]+a-yccMargin))) * 257
				}
			}
		}
	}
}

// yccRaster reads a crop of Y, Cb and Cr straight to light by one look-up a
// channel: the curves are stretched so that what overshoots 0 or 255 falls on
// their ends, and nothing needs to be clipped. It is where a large photo's time goes.
func (l light) yccRaster(m *image.YCbCr, y ycc, crop image.Rectangle, smooth bool) (raster, error) {
	curves, err := l.curves(256)
	if err != nil {
		return raster{}, err
	}
	var stretched yccCurves
	for k := range stretched {
		for i := range stretched[k] {
			stretched[k][i] = curves[k][min(255, max(0, i-yccMargin))]
		}
	}
	t := y.tables()
	across := func(columns []span) func(int, []float32) {
		c := newChromaReader(t, m, crop.Min.X, crop.Max.X, smooth)
		return func(line int, sums []float32) {
			line += crop.Min.Y
			p := yccRow{luma: m.Y[m.YOffset(crop.Min.X, line):][:crop.Dx()], lumaOf: &t.luma, chroma: c.row(line), phase: c.phase, shift: c.shift, curves: &stretched}
			p.across(columns, sums)
		}
	}
	return raster{width: crop.Dx(), height: crop.Dy(), channels: 3, across: across}, nil
}

// yccRow is one row of a picture and what turns it to light.
type yccRow struct {
	luma   []uint8
	lumaOf *[256]int32
	chroma chroma
	phase  int
	shift  uint
	curves *yccCurves
}

// across sums the row cell by cell. The pixel that two cells share is turned to
// light once. The row's fields are copied first: read through p, each pixel would
// load them anew.
func (p *yccRow) across(columns []span, sums []float32) {
	luma, lumaOf, add, curves := p.luma, p.lumaOf, p.chroma, p.curves
	phase, shift := p.phase, p.shift&3
	var r, g, b float32 // the latest pixel
	at := -1
	for x, s := range columns {
		if s.first != at {
			r, g, b = curves.light(lumaOf[luma[s.first]], &add[(s.first+phase)>>shift])
		}
		red, green, blue := r*s.firstWeight, g*s.firstWeight, b*s.firstWeight
		for i := s.first + 1; i < s.last; i++ {
			r, g, b := curves.light(lumaOf[luma[i]], &add[(i+phase)>>shift])
			red, green, blue = red+r, green+g, blue+b
		}
		if s.last > s.first {
			r, g, b = curves.light(lumaOf[luma[s.last]], &add[(s.last+phase)>>shift])
			red, green, blue = red+r*s.lastWeight, green+g*s.lastWeight, blue+b*s.lastWeight
		}
		at = s.last
		cell := sums[3*x : 3*x+3]
		cell[0], cell[1], cell[2] = red, green, blue
	}
}

// yccCurves turn luma plus what chroma adds, with the margin, to light.
type yccCurves [3][yccSteps]float32

// light is one pixel.
func (c *yccCurves) light(luma int32, add *[3]int32) (r, g, b float32) {
	return c[0][(luma+add[0])&(yccSteps-1)], c[1][(luma+add[1])&(yccSteps-1)], c[2][(luma+add[2])&(yccSteps-1)]
}
