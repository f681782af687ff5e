// Fast optics: the colour of a mix to about a tenth of a CIEDE2000, for looking
// through all mixes of a box. What is handed out is computed again in full.

package match

import (
	"math"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// screenBands are 420 to 680 nm by 20 nm. Ours: with the weights below, 3,000
// random mixes of three of the library's paints came out within 0.04 CIEDE2000
// of the 31 bands on average and 0.36 at worst; 13 bands were twice as far off.
const (
	screenBands = 14
	firstBand   = 2 // 420 nm in a colour.Spectrum
)

// strip is one number for each screening band.
type strip [screenBands]float32

// optics are the two constants of an amount of paint, not divided by its volume:
// only their ratio counts.
type optics struct{ k, s strip }

// The ratio K/S of a paint is kept in this range, so that the tables below hold
// every mix. Ours: beyond it the layer is white or black to a tenth of an L*.
const (
	leastRatio = 1.0 / (1 << 13)
	mostRatio  = 1 << 12
)

// opticsOf returns the optics of so many parts of a paint.
func opticsOf(p *paint.Paint, parts float64) (o optics) {
	for i := range screenBands {
		k, s := p.K[firstBand+2*i], p.S[firstBand+2*i]
		s = max(s, k/mostRatio)
		o.k[i] = float32(parts * max(k, s*leastRatio))
		o.s[i] = float32(parts * s)
	}
	return o
}

func (o *optics) add(p *optics) (sum optics) {
	for i := range screenBands {
		sum.k[i] = o.k[i] + p.k[i]
		sum.s[i] = o.s[i] + p.s[i]
	}
	return sum
}

// screenWeights are those of colour.Weights brought onto the screening bands.
var screenWeights = weigh(colour.Weights())

// weigh gives the weight of each band between two screening bands to the four
// around it, as a cubic through them would, and that past the ends to the end.
// Source: [ASTME2022] weights for a coarser step by Lagrange's interpolation.
func weigh(full *[3]colour.Spectrum) (weights [screenBands][3]float32) {
	cubic := [4]float64{-1.0 / 16, 9.0 / 16, 9.0 / 16, -1.0 / 16}
	for c, w := range full {
		var sum [screenBands]float64
		for band, v := range w {
			i := (band - firstBand) >> 1 // rounded down
			if (band-firstBand)%2 == 0 {
				sum[nearBand(i)] += v
				continue
			}
			for j, share := range cubic {
				sum[nearBand(i-1+j)] += share * v
			}
		}
		for i, v := range sum {
			weights[i][c] = float32(v)
		}
	}
	return weights
}

func nearBand(i int) int { return min(max(i, 0), screenBands-1) }

// glow is what is seen of a thick layer of some finish by its ratio K/S: 128 steps an
// octave, at the place that the low bits of the exponent and the high bits of
// the fraction of a float32 name.
type glow [4096]float32

const glowShift = 16 // bits of a float32's fraction that are left out

// glossGlow is the table that nearly every search takes.
var glossGlow = makeGlow(paint.Gloss)

func glowOf(f paint.Finish) *glow {
	if f == paint.Gloss {
		return glossGlow
	}
	return makeGlow(f)
}

func makeGlow(f paint.Finish) *glow {
	table := new(glow)
	for bits := math.Float32bits(leastRatio) >> glowShift; bits <= math.Float32bits(mostRatio)>>glowShift; bits++ {
		middle := math.Float32frombits(bits<<glowShift | 1<<(glowShift-1))
		table[bits%4096] = float32(f.Out(paint.Infinite(float64(middle))))
	}
	return table
}

// roots is the f of L*a*b* in straight pieces, 64 an octave, from 2^-15 to 2.
var roots = makeRoots()

const rootShift = 17

type piece struct{ start, slope float32 }

func makeRoots() (table [1024]piece) {
	for bits := math.Float32bits(1.0/(1<<15)) >> rootShift; bits < math.Float32bits(2)>>rootShift; bits++ {
		from := labRoot(float64(math.Float32frombits(bits << rootShift)))
		to := labRoot(float64(math.Float32frombits((bits + 1) << rootShift)))
		table[bits%1024] = piece{float32(from), float32((to - from) / (1 << rootShift))}
	}
	return table
}

// labRoot is the f of L*a*b*. Source: [CIE15] 8.2.1.
func labRoot(t float64) float64 {
	if t > 216.0/24389 {
		return math.Cbrt(t)
	}
	return t*(841.0/108) + 4.0/29
}

func root(t float32) float32 {
	bits := math.Float32bits(t)
	p := &roots[bits>>rootShift%1024]
	return p.start + p.slope*float32(bits%(1<<rootShift))
}

// point is a colour of the screening: L*, a*, b*.
type point struct{ l, a, b float32 }

func (p point) lab() colour.Lab { return colour.Lab{L: float64(p.l), A: float64(p.a), B: float64(p.b)} }

func pointOf(c colour.Lab) point { return point{float32(c.L), float32(c.A), float32(c.B)} }

func sqrt32(v float32) float32 { return float32(math.Sqrt(float64(max(v, 0)))) }

func abs32(v float32) float32 { return max(v, -v) }

// screen returns the colour of two amounts of paint mixed, in a thick layer.
func (g *glow) screen(base, more *optics) point {
	var x, y, z float32
	for i := range screenBands {
		q := (base.k[i] + more.k[i]) / (base.s[i] + more.s[i])
		r := g[math.Float32bits(q)>>glowShift%4096]
		w := &screenWeights[i]
		x += w[0] * r
		y += w[1] * r
		z += w[2] * r
	}
	fx, fy, fz := root(x), root(y), root(z)
	return point{116*fy - 16, 500 * (fx - fy), 200 * (fy - fz)}
}
