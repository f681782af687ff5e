// Numbers that look random and are not: sample points and noise.

package main

import (
	"math"
	"math/bits"
)

// scramble turns x into another number with no visible order: the finaliser of MurmurHash3.
func scramble(x uint32) uint32 {
	x ^= x >> 16
	x *= 0x85ebca6b
	x ^= x >> 13
	x *= 0xc2b2ae35
	return x ^ x>>16
}

// sampler gives the sample points of one pixel. Each pair of coordinates is its own
// scrambled (0,2)-sequence, so n samples cover the square evenly whatever n is.
// It depends on the pixel, sample and pair only: threads cannot change the picture.
// Source: [Burley2020], hash-based Owen scrambling.
type sampler struct{ pixel, index, pair uint32 }

// next returns the coming pair of coordinates in [0, 1).
func (s *sampler) next() (float64, float64) {
	s.pair++
	seed := scramble(s.pixel*0x9e3779b1 + s.pair*0x85ebca77)
	i := owen(s.index, seed)
	x := owen(bits.Reverse32(i), scramble(seed+1))
	y := owen(sobol(i), scramble(seed+2))
	return float64(x) / (1 << 32), float64(y) / (1 << 32)
}

// owen shuffles x so that every binary interval stays whole: [Burley2020].
func owen(x, seed uint32) uint32 {
	x = bits.Reverse32(x)
	x += seed
	x ^= x * 0x6c50b47c
	x ^= x * 0xb82f1e52
	x ^= x * 0xc7afe638
	x ^= x * 0x8d22f6e6
	return bits.Reverse32(x)
}

// sobol is the second coordinate of the Sobol sequence; bits.Reverse32 is the first.
func sobol(i uint32) uint32 {
	var y uint32
	for v := uint32(1) << 31; i != 0; i >>= 1 {
		if i&1 != 0 {
			y ^= v
		}
		v ^= v >> 1
	}
	return y
}

// bell turns two even coordinates into two normal ones of deviation 1.
func bell(x, y float64) (float64, float64) {
	r := math.Sqrt(-2 * math.Log(1-x))
	sin, cos := math.Sincos(2 * math.Pi * y)
	return r * cos, r * sin
}

// noise is smooth value noise about -1 to 1 with features one unit wide, and its slope.
func noise(p vec, seed uint32) (float64, vec) {
	fx, fy, fz := math.Floor(p.x), math.Floor(p.y), math.Floor(p.z)
	x, y, z := p.x-fx, p.y-fy, p.z-fz
	ix, iy, iz := uint32(int32(fx)), uint32(int32(fy)), uint32(int32(fz))
	var c [8]float64
	for k := range uint32(2) {
		atZ := scramble(iz + k + seed)
		for j := range uint32(2) {
			atY := scramble(iy + j + atZ)
			for i := range uint32(2) {
				c[i+2*j+4*k] = float64(scramble(ix+i+atY))/(1<<31) - 1
			}
		}
	}
	u, v, w := fade(x), fade(y), fade(z)
	a, b := mix(c[0], c[1], u), mix(c[2], c[3], u)
	e, f := mix(c[4], c[5], u), mix(c[6], c[7], u)
	near, far := mix(a, b, v), mix(e, f, v)
	slopeX := mix(mix(c[1]-c[0], c[3]-c[2], v), mix(c[5]-c[4], c[7]-c[6], v), w)
	slope := vec{slopeX * fadeSlope(x), mix(b-a, f-e, w) * fadeSlope(y), (far - near) * fadeSlope(z)}
	return mix(near, far, w), slope
}

func fade(t float64) float64      { return t * t * t * (t*(t*6-15) + 10) }
func fadeSlope(t float64) float64 { return 30 * t * t * (t*(t-2) + 1) }

// clouds sums octaves of noise, each twice as fine and half as strong; the first is size wide.
func clouds(p vec, size float64, octaves int, seed uint32) (float64, vec) {
	var sum float64
	var slope vec
	strength := 1.0
	for i := range octaves {
		v, g := noise(p.times(1/size), seed+uint32(i)*17)
		sum += v * strength
		slope = slope.along(g, strength/size)
		size, strength = size/2, strength/2
	}
	return sum, slope
}
