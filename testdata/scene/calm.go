// Taking the samples' grain out of the film.

package main

import (
	"math"
	"runtime"
	"slices"
	"sync"
)

// calm takes the grain of the random samples out of the film and keeps its edges: each
// pixel becomes a mean of neighbours that face the same way, lie as far off, and differ
// in light by no more than their grain explains. The scattered light is smoothed without
// the body's own colour, so that the texture stays. Pixels that show an edge come last, from their calm neighbours.
// Source: [Dammertz2010] for the widening rings, [Schied2017] for the grain as a guide.
func (f *film) calm() {
	bare := make([]xyz, len(f.diffuse))
	grain := make([]float64, len(bare))
	for i, d := range f.diffuse {
		for c := range d {
			bare[i][c] = d[c] / max(f.albedo[i][c], 0.01)
		}
		grain[i] = f.noise[i] / max(f.albedo[i][1]*f.albedo[i][1], 1e-4)
	}
	for _, step := range []int{1, 2, 4, 8} {
		bare, grain = f.ring(bare, grain, step, 0.12)
	}
	for i, b := range bare {
		for c := range b {
			f.diffuse[i][c] = b[c] * max(f.albedo[i][c], 0.01)
		}
	}
	grain = f.noiseMirror
	for _, step := range []int{1, 2, 4} {
		f.mirror, grain = f.ring(f.mirror, grain, step, 0.08)
	}
	f.mend()
}

// mend gives each pixel on an edge the light of the calm pixels near it, surface by surface,
// in the shares its samples met them. Where a surface has no calm pixel near, the pixel stays.
func (f *film) mend() {
	diffuse, mirror := slices.Clone(f.diffuse), slices.Clone(f.mirror)
	f.eachRow(func(y int) {
		for x := range f.width {
			if i := y*f.width + x; f.edge(i) {
				if d, m, ok := f.blend(x, y); ok {
					diffuse[i], mirror[i] = d, m
				}
			}
		}
	})
	f.diffuse, f.mirror = diffuse, mirror
}

// blend is the light of an edge pixel from its surfaces' calm pixels; false when one has none.
func (f *film) blend(x, y int) (diffuse, mirror xyz, ok bool) {
	const reach = 3
	var near [surfaces]struct {
		diffuse, mirror xyz
		weight          float64
	}
	for py := max(y-reach, 0); py <= min(y+reach, f.height-1); py++ {
		for px := max(x-reach, 0); px <= min(x+reach, f.width-1); px++ {
			j := py*f.width + px
			if f.edge(j) {
				continue
			}
			w := math.Exp(-float64((px-x)*(px-x)+(py-y)*(py-y)) / 2)
			n := &near[f.face[j]]
			n.diffuse.add(f.diffuse[j], w)
			n.mirror.add(f.mirror[j], w)
			n.weight += w
		}
	}
	var met float64
	cover := &f.cover[y*f.width+x]
	for k, n := range cover {
		if n == 0 {
			continue
		}
		if near[k].weight == 0 {
			return diffuse, mirror, false
		}
		diffuse.add(near[k].diffuse, float64(n)/near[k].weight)
		mirror.add(near[k].mirror, float64(n)/near[k].weight)
		met += float64(n)
	}
	for c := range diffuse {
		diffuse[c], mirror[c] = diffuse[c]/met, mirror[c]/met
	}
	return diffuse, mirror, true
}

// ring takes one mean over 25 pixels, step apart. Facing is how far normals may differ.
func (f *film) ring(light []xyz, grain []float64, step int, facing float64) ([]xyz, []float64) {
	out, outGrain := make([]xyz, len(light)), make([]float64, len(light))
	spread := f.blurred(grain)
	f.eachRow(func(y int) {
		for x := range f.width {
			i := y*f.width + x
			out[i], outGrain[i] = f.mean(light, grain, math.Sqrt(max(grain[i], spread[i])), x, y, step, facing)
		}
	})
	return out, outGrain
}

// mean is the weighted mean around one pixel, and the grain that remains.
func (f *film) mean(light []xyz, grain []float64, spread float64, x, y, step int, facing float64) (sum xyz, left float64) {
	// Ours: two deviations of the grain; at four, the edges of cast shadows went soft.
	const deviations, depthPerPixel = 2, 0.5
	kernel := [...]float64{1.0 / 16, 1.0 / 4, 3.0 / 8, 1.0 / 4, 1.0 / 16}
	i := y*f.width + x
	if f.edge(i) {
		return light[i], grain[i]
	}
	var total float64
	for r := range 5 {
		py := y + (r-2)*step
		if py < 0 || py >= f.height {
			continue
		}
		for c := range 5 {
			px := x + (c-2)*step
			if px < 0 || px >= f.width {
				continue
			}
			j := py*f.width + px
			if f.face[i] != f.face[j] || f.edge(j) {
				continue
			}
			turn := f.normal[i].sub(f.normal[j])
			off := turn.dot(turn)/(facing*facing) +
				math.Abs(f.depth[i]-f.depth[j])/(depthPerPixel*float64(step)) +
				math.Abs(light[i][1]-light[j][1])/(deviations*spread+1e-4)
			if off > 12 {
				continue
			}
			w := kernel[r] * kernel[c] * math.Exp(-off)
			sum.add(light[j], w)
			left += w * w * grain[j]
			total += w
		}
	}
	for c := range sum {
		sum[c] /= total
	}
	return sum, left / (total * total)
}

// blurred evens out the measured grain over 3 × 3 pixels: one pixel's is too uncertain.
func (f *film) blurred(grain []float64) []float64 {
	out := make([]float64, len(grain))
	f.eachRow(func(y int) {
		for x := range f.width {
			var sum, total float64
			for py := max(y-1, 0); py <= min(y+1, f.height-1); py++ {
				for px := max(x-1, 0); px <= min(x+1, f.width-1); px++ {
					sum += grain[py*f.width+px]
					total++
				}
			}
			out[y*f.width+x] = sum / total
		}
	})
	return out
}

// eachRow runs work for every row, shared out among the cores; rows must not touch each other.
func (f *film) eachRow(work func(y int)) {
	rows := make(chan int)
	var done sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		done.Go(func() {
			for y := range rows {
				work(y)
			}
		})
	}
	for y := range f.height {
		rows <- y
	}
	close(rows)
	done.Wait()
}
