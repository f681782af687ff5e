// Ridges followed from place to place into strokes.

package analyze

import (
	"cmp"
	"math"
	"slices"
)

// stroke is a line as it is followed along a ridge of the sketch, place by place.
type stroke struct {
	places  []Place
	heights []float32 // of the ridge at each place; 0 between strides and over gaps
	closed  bool
}

// How a ridge is followed; lengths are in pixels of the sketch. Ours.
const (
	lowestRidge = 0.15 // in colour a pixel: what is lower is no ridge
	goesOn      = 0.35 // of the mean height of its stroke so far a ridge must keep
	gapReach    = 6    // over which a gap is bridged, 3 mm on a 12-inch panel
	swayAtMost  = 0.85 // cosine of the turn from one stride to the next
	turnAtMost  = 0.5  // the same onto another stroke right beside
	ringAtLeast = 8    // strides of a stroke that closes on itself
)

// follower follows ridges.
type follower struct {
	*ridges
	owner []int32 // 1 + the stroke that a pixel or its neighbour is on; 0 for none
}

// strokesOf follows the ridges, the highest first, each as far as it keeps a part of its
// height. A walk takes the pixels around it and so strides over them, two pixels on, three
// on a slant: it cannot turn back along its own ridge, which is two pixels wide in places.
// This is hysteresis whose threshold is the stroke's own, so that a faint outline is
// followed where it is all there is and a strong one does not run out into the texture.
// Source: [Canny1986] (hysteresis), with the thresholds ours.
func strokesOf(r *ridges) []stroke {
	f := &follower{r, make([]int32, len(r.high))}
	var seeds []int32
	for i, h := range r.high {
		if h >= lowestRidge {
			seeds = append(seeds, int32(i))
		}
	}
	slices.SortFunc(seeds, func(a, b int32) int {
		return cmp.Or(grade(r.high[b])-grade(r.high[a]), int(a-b))
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

// walk is a stroke in the making, in one direction.
type walk struct {
	number int32
	at     int     // pixel
	u, v   float32 // the way it goes, of length 1
	sum, n float32 // of the heights so far
}

// from returns the stroke through a pixel, followed both ways.
func (f *follower) from(seed int, number int32) stroke {
	f.take(seed, number)
	way := f.across[seed]
	w := walk{number, seed, -way[1], way[0], f.high[seed], 1}
	ahead := f.follow(&w)
	if len(ahead) >= ringAtLeast && f.near(w.at, seed) {
		return f.stroke(append([]int{seed}, ahead...), true)
	}
	w.at, w.u, w.v = seed, way[1], -way[0]
	back := f.follow(&w)
	slices.Reverse(back)
	return f.stroke(slices.Concat(back, []int{seed}, ahead), false)
}

// follow returns the pixels of a ridge from where the walk is, until it ends or meets
// another stroke, whose pixel is then the last.
func (f *follower) follow(w *walk) (pixels []int) {
	for {
		next := f.next(w)
		if next < 0 {
			return pixels
		}
		pixels = append(pixels, next)
		if f.owner[next] > 0 {
			return pixels
		}
		f.take(next, w.number)
		du, dv := float32(next%f.width-w.at%f.width), float32(next/f.width-w.at/f.width)
		w.u, w.v = -f.across[next][1], f.across[next][0]
		if float32(w.u*du)+float32(w.v*dv) < 0 {
			w.u, w.v = -w.u, -w.v
		}
		w.at, w.sum, w.n = next, w.sum+f.high[next], w.n+1
	}
}

// take marks a pixel and its neighbours, of which no other stroke may be made.
func (f *follower) take(i int, number int32) {
	x, y := i%f.width, i/f.width
	for v := max(0, y-1); v <= min(f.height-1, y+1); v++ {
		for u := max(0, x-1); u <= min(f.width-1, x+1); u++ {
			if j := v*f.width + u; f.owner[j] == 0 {
				f.owner[j] = number
			}
		}
	}
}

// near tells whether two pixels are no farther apart than a gap may be.
func (f *follower) near(i, j int) bool {
	dx, dy := i%f.width-j%f.width, i/f.width-j/f.width
	return dx*dx+dy*dy <= gapReach*gapReach
}

// next returns the pixel that a ridge goes on with, the best of the nearest, or -1.
func (f *follower) next(w *walk) int {
	x, y := w.at%f.width, w.at/f.width
	for reach := 1; reach <= gapReach; reach++ {
		best, most := -1, 0
		for dy := -reach; dy <= reach; dy++ {
			step := 1
			if dy > -reach && dy < reach {
				step = 2 * reach // the two sides of the square
			}
			for dx := -reach; dx <= reach; dx += step {
				if x+dx < 1 || y+dy < 1 || x+dx >= f.width-1 || y+dy >= f.height-1 {
					continue
				}
				if fit := grade(f.fit(w, dx, dy)); fit > most {
					best, most = (y+dy)*f.width+x+dx, fit
				}
			}
		}
		if best >= 0 {
			return best
		}
	}
	return -1
}

// fit returns how well a walk goes on with the pixel that is so far away: the height of
// the ridge there, less as the walk turns; 0 for not at all.
func (f *follower) fit(w *walk, dx, dy int) float32 {
	i := w.at + dy*f.width + dx
	if f.high[i] < max(lowestRidge, goesOn*w.sum/w.n) || f.owner[i] == w.number {
		return 0
	}
	limit := float32(turnAtMost)
	if max(dx, -dx, dy, -dy) > 1 {
		limit = swayAtMost
	}
	way := f.across[i]
	there := (float32(w.u*float32(dx)) + float32(w.v*float32(dy))) / root32(float32(dx*dx+dy*dy))
	then := float32(w.v*way[0]) - float32(w.u*way[1])
	then = max(then, -then)
	if there < limit || then < limit {
		return 0
	}
	return there * then * f.high[i]
}

// stroke returns pixels as places.
func (f *follower) stroke(pixels []int, closed bool) stroke {
	s := stroke{}
	for _, i := range pixels {
		s.add(f.at[i], f.high[i])
	}
	if closed {
		s.close()
	}
	return s
}

// close goes on to where a stroke began.
func (s *stroke) close() {
	s.closed = true
	s.add(s.places[0], 0)
	last := len(s.places) - 1
	s.places, s.heights = s.places[:last], s.heights[:last]
}

// add goes on to a place, straight over a gap if there is one.
func (s *stroke) add(at Place, height float32) {
	if n := len(s.places); n > 0 {
		last := s.places[n-1]
		steps := int(math.Ceil(last.to(at) / longestStep))
		for k := 1; k < steps; k++ {
			s.places = append(s.places, last.plus(Place{at.X - last.X, at.Y - last.Y}, float64(k)/float64(steps)))
			s.heights = append(s.heights, 0)
		}
	}
	s.places = append(s.places, at)
	s.heights = append(s.heights, height)
}

// longestStep is how far the places of a stroke may be apart, in pixels: what is more,
// such as a stride on a slant, gets places between that weigh nothing, so that a line
// weighs as many strides as it has.
const longestStep = 2
