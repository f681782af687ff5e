// Ends of strokes drawn on to the frame or to the line ahead.

package analyze

import "slices"

// endReach is how far the end of a stroke is drawn on to what lies ahead of it, in
// pixels of the sketch. Ours: 3 mm on a 12-inch panel. Ridges break off where
// three colours meet and a pixel before the frame.
const endReach = 5

// reachOut draws the open ends of strokes on to the stroke or the frame right ahead.
func reachOut(strokes []stroke, width, height int) {
	owner := make([]int32, width*height) // 1 + the stroke at a pixel
	for n, s := range strokes {
		for _, p := range s.places {
			owner[pixelAt(p, width, height)] = int32(n + 1)
		}
	}
	for n := range strokes {
		if s := &strokes[n]; !s.closed && len(s.places) >= leastStroke {
			for e := end(2 * n); e <= end(2*n+1); e++ {
				at, way := e.look(strokes)
				if to, found := met(owner, at, way, n, width, height); found {
					s.extend(to, e%2 == 1)
				}
			}
		}
	}
}

// met returns where the frame or another stroke than n is met from a place on.
func met(owner []int32, from, way Place, n, width, height int) (Place, bool) {
	w, h := float64(width), float64(height)
	for step := 1.0; step <= endReach; step++ {
		at := from.plus(way, step)
		if at.X <= 0 || at.Y <= 0 || at.X >= w || at.Y >= h {
			return Place{min(max(0, at.X), w), min(max(0, at.Y), h)}, true
		}
		x, y := int(at.X), int(at.Y)
		for k := range 9 {
			u, v := x+k%3-1, y+k/3-1
			if u < 0 || v < 0 || u >= width || v >= height {
				continue
			}
			if o := owner[v*width+u]; o > 0 && int(o) != n+1 {
				return Place{float64(u) + 0.5, float64(v) + 0.5}, true
			}
		}
	}
	return Place{}, false
}

// extend adds a place at the end of a stroke, or before its start.
func (s *stroke) extend(to Place, atEnd bool) {
	if atEnd {
		s.places, s.heights = append(s.places, to), append(s.heights, 0)
		return
	}
	s.places, s.heights = slices.Insert(s.places, 0, to), slices.Insert(s.heights, 0, 0)
}

// pixelAt returns the pixel of a sketch that a place is in.
func pixelAt(p Place, width, height int) int {
	return min(max(0, int(p.Y)), height-1)*width + min(max(0, int(p.X)), width-1)
}
