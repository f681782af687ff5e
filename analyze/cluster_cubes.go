package analyze

import "math"

// cubes cuts the colours of a region into cubes of about equal size to the eye, by
// axes on which L*, a* and b* are drawn together as in evenly, each for itself.
type cubes struct {
	low, high [3]float32
	side      float64
	axes      [3]axis
}

// axis cuts the range of L*, a* or b* into bins.
type axis struct {
	low  float32
	bins []int32 // of low, low + 1/perBin and so on
	size int     // number of bins
}

// perBin is how finely an axis is tabulated: steps to a unit of L*, a* or b*.
const perBin = 8

// The lightness and the chromatic axes of evenly.
func drawL(v float64) float64 {
	return math.Copysign(math.Log(1+0.015*math.Abs(v-50))/0.015, v-50)
}
func drawAB(v float64) float64 { return math.Copysign(math.Log(1+0.045*math.Abs(v))/0.045, v) }

// draws are the axes drawn together, L*, a* and b*.
var draws = [3]func(float64) float64{drawL, drawAB, drawAB}

// cubesOf returns the finest cubes that are fewer than maxTable.
func cubesOf(p *Picture, pixels []int32) *cubes {
	g := &cubes{side: 0.25}
	g.low, g.high = rangesOf(p, pixels)
	for g.size(); g.count() >= maxTable; g.size() {
		g.side *= 1.06
	}
	g.cut()
	return g
}

// wider returns cubes whose side is times as long.
func (g *cubes) wider(times float64) *cubes {
	w := &cubes{low: g.low, high: g.high, side: g.side * times}
	w.size()
	w.cut()
	return w
}

// size sets the number of bins of each axis.
func (g *cubes) size() {
	for k, draw := range draws {
		g.axes[k].size = int((draw(float64(g.high[k]))-draw(float64(g.low[k])))/g.side) + 1
	}
}

// cut tabulates the axes.
func (g *cubes) cut() {
	for k, draw := range draws {
		g.axes[k].cut(g.low[k], g.high[k], g.side, draw)
	}
}

// rangeStride is that of the pixels whose range is taken; a colour beyond it is counted
// to the outermost bin.
const rangeStride = 3

// rangesOf returns the least and greatest L*, a*, b* of every third pixel.
func rangesOf(p *Picture, pixels []int32) (low, high [3]float32) {
	low = [3]float32(p.Lab[3*pixels[0]:])
	high = low
	for j := 0; j < len(pixels); j += rangeStride {
		for k, v := range (*[3]float32)(p.Lab[3*pixels[j]:]) {
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

// cut tabulates the bins of a side.
func (a *axis) cut(low, high float32, side float64, draw func(float64) float64) {
	a.low = low
	a.bins = make([]int32, int((high-low)*perBin)+1)
	from := draw(float64(low))
	for i := range a.bins {
		a.bins[i] = int32((draw(float64(low)+float64(i)/perBin) - from) / side)
	}
}

// bin returns the bin of v.
func (a *axis) bin(v float32) int32 {
	return a.bins[min(max(int((v-a.low)*perBin), 0), len(a.bins)-1)] // beyond the range: see rangeStride
}

// count returns the number of cubes.
func (g *cubes) count() int { return g.axes[0].size * g.axes[1].size * g.axes[2].size }

// at returns the number of a colour's cube.
func (g *cubes) at(c *[3]float32) int {
	l, a, b := g.axes[0].bin(c[0]), g.axes[1].bin(c[1]), g.axes[2].bin(c[2])
	return (int(l)*g.axes[1].size+int(a))*g.axes[2].size + int(b)
}
