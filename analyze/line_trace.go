package analyze

import (
	"cmp"
	"math"
	"slices"
)

// stroke is a line as it is followed along a ridge: pixels of the sketch.
type stroke struct {
	pixels []int
	closed bool
}

// How a ridge is followed, in pixels of the sketch. Ours.
const (
	goesOn     = 0.35 // of the mean height of the line so far that it must keep
	gapReach   = 6    // over which a gap is bridged
	leastRidge = 0.15 // height that a ridge must have at all
)

// follower follows ridges.
type follower struct {
	*ridges
	owner []int32 // 1 + the stroke that a pixel or its neighbour is on
}

// strokesOf follows the ridges, the highest first, as far as they keep a part of their
// height; small gaps are bridged.
func strokesOf(r *ridges) []stroke {
	f := &follower{r, make([]int32, len(r.height32))}
	var seeds []int32
	for i, h := range r.height32 {
		if h >= leastRidge {
			seeds = append(seeds, int32(i))
		}
	}
	slices.SortFunc(seeds, func(a, b int32) int {
		return cmp.Or(cmp.Compare(grade(r.height32[b]), grade(r.height32[a])), cmp.Compare(a, b))
	})
	var strokes []stroke
	for _, seed := range seeds {
		if f.owner[seed] == 0 {
			strokes = append(strokes, f.from(int(seed), int32(len(strokes)+1)))
		}
	}
	return strokes
}

// grade is a height in steps so coarse that a machine's last bit decides nothing.
func grade(height float32) int { return int(math.Round(64 * float64(height))) }

// from returns the stroke through a pixel.
func (f *follower) from(seed int, number int32) stroke {
	f.take(seed, number)
	way := f.across[seed]
	sum, n := float64(f.height32[seed]), 1.0
	ahead, closed := f.walk(seed, -way[1], way[0], number, &sum, &n, seed)
	if closed {
		return stroke{append([]int{seed}, ahead...), true}
	}
	back, _ := f.walk(seed, way[1], -way[0], number, &sum, &n, -1)
	slices.Reverse(back)
	return stroke{append(append(back, seed), ahead...), false}
}

// walk follows the ridge from pixel i the way (u, v) until it ends, meets another, or
// comes back to start.
func (f *follower) walk(i int, u, v float32, number int32, sum, n *float64, start int) (pixels []int, closed bool) {
	for {
		next := f.next(i, u, v, number, float32(goesOn**sum / *n))
		if next < 0 {
			if len(pixels) > 8 && start >= 0 && f.near(i, start) {
				return pixels, true
			}
			return pixels, false
		}
		if f.owner[next] > 0 { // it meets another
			return append(pixels, next), false
		}
		du, dv := float32(next%f.width-i%f.width), float32(next/f.width-i/f.width)
		tu, tv := -f.across[next][1], f.across[next][0]
		if tu*du+tv*dv < 0 {
			tu, tv = -tu, -tv
		}
		u, v = tu, tv
		f.take(next, number)
		*sum += float64(f.height32[next])
		*n++
		pixels = append(pixels, next)
		i = next
	}
}

func (f *follower) near(i, j int) bool {
	dx, dy := i%f.width-j%f.width, i/f.width-j/f.width
	return dx*dx+dy*dy <= gapReach*gapReach
}

// take marks a pixel and its neighbours.
func (f *follower) take(i int, number int32) {
	x, y := i%f.width, i/f.width
	for v := max(0, y-1); v <= min(f.height-1, y+1); v++ {
		for u := max(0, x-1); u <= min(f.width-1, x+1); u++ {
			if j := v*f.width + u; f.owner[j] == 0 {
				f.owner[j] = number
			}
		}
	}
	f.owner[i] = number
}

// next returns the pixel that a ridge goes on with, or -1.
func (f *follower) next(i int, u, v float32, number int32, low float32) int {
	x, y := i%f.width, i/f.width
	best, most := -1, float32(0)
	for reach := 1; reach <= gapReach && best < 0; reach++ {
		for dy := -reach; dy <= reach; dy++ {
			for dx := -reach; dx <= reach; dx++ {
				if max(dx, -dx, dy, -dy) != reach || x+dx < 1 || y+dy < 1 || x+dx >= f.width-1 || y+dy >= f.height-1 {
					continue
				}
				j := (y+dy)*f.width + x + dx
				if f.height32[j] < max(low, leastRidge) || f.owner[j] == number && reach < 3 {
					continue
				}
				if f.owner[j] == number {
					continue
				}
				d := root32(float32(dx*dx + dy*dy))
				along := (u*float32(dx) + v*float32(dy)) / d
				limit := float32(0.5)
				if reach > 1 {
					limit = 0.85
				}
				if along < limit {
					continue
				}
				w := f.across[j]
				same := max(-w[1]*u+w[0]*v, w[1]*u-w[0]*v)
				if same < limit {
					continue
				}
				score := along * same * f.height32[j]
				if grade(score) > grade(most) || best < 0 {
					best, most = j, score
				}
			}
		}
	}
	return best
}
