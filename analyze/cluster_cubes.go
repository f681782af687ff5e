package analyze

import "math"

// cubes cuts the colours of a region into cubes of about equal size to the eye, by
// axes on which L*, a* and b* are drawn together as in evenly, each for itself.
type cubes struct{ axes [3]axis }

// axis cuts the range of L*, a* or b* into bins.
type axis struct {
	low  float32
	bins []int // of low, low + 1/perBin and so on
	size int   // number of bins
}

// perBin is how finely an axis is tabulated: steps to a unit of L*, a* or b*.
const perBin = 8

// The lightness and the chromatic axes of evenly.
func drawL(v float64) float64 {
	return math.Copysign(math.Log(1+0.015*math.Abs(v-50))/0.015, v-50)
}
func drawAB(v float64) float64 { return math.Copysign(math.Log(1+0.045*math.Abs(v))/0.045, v) }

// cubesOf returns the finest cubes that are fewer than maxTable.
func cubesOf(p *Picture, pixels []int32) *cubes {
	low, high := rangesOf(p, pixels)
	for side := 0.25; ; side *= 1.125 {
		g := &cubes{[3]axis{
			cut(low[0], high[0], side, drawL),
			cut(low[1], high[1], side, drawAB),
			cut(low[2], high[2], side, drawAB),
		}}
		if g.count() < maxTable {
			return g
		}
	}
}

// rangesOf returns the least and greatest L*, a*, b* of the pixels.
func rangesOf(p *Picture, pixels []int32) (low, high [3]float32) {
	low = [3]float32(p.Lab[3*pixels[0]:])
	high = low
	for _, i := range pixels {
		for k, v := range (*[3]float32)(p.Lab[3*i:]) {
			if v < low[k] { // the builtins min and max take three times as long
				low[k] = v
			}
			if v > high[k] {
				high[k] = v
			}
		}
	}
	return low, high
}

// cut tabulates an axis in bins of a side.
func cut(low, high float32, side float64, draw func(float64) float64) axis {
	a := axis{low: low, bins: make([]int, int((high-low)*perBin)+1)}
	from := draw(float64(low))
	for i := range a.bins {
		a.bins[i] = int((draw(float64(low)+float64(i)/perBin) - from) / side)
	}
	a.size = a.bins[len(a.bins)-1] + 1
	return a
}

// bin returns the bin of v.
func (a *axis) bin(v float32) int { return a.bins[int((v-a.low)*perBin)] }

// count returns the number of cubes.
func (g *cubes) count() int { return g.axes[0].size * g.axes[1].size * g.axes[2].size }

// at returns the number of a colour's cube.
func (g *cubes) at(c *[3]float32) int {
	return (g.axes[0].bin(c[0])*g.axes[1].size+g.axes[1].bin(c[1]))*g.axes[2].size + g.axes[2].bin(c[2])
}

// wider returns the number of the cube that takes in cube n and those beside it when
// sides are times as long.
func (g *cubes) wider(n, times int) int {
	a, b := g.axes[1].size, g.axes[2].size
	return (n/b/a/times*a+n/b%a/times)*b + n%b/times
}
