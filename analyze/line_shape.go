package analyze

import (
	"image"
	"math"
	"slices"
)

// smoothed evens out the steps of a line's places, but for its ends.
func smoothed(places []Place, closed bool) []Place {
	n := len(places)
	for range 4 {
		next := slices.Clone(places)
		for i := range places {
			if !closed && (i == 0 || i == n-1) {
				continue
			}
			a, b := places[(i+n-1)%n], places[(i+1)%n]
			next[i] = Place{(a.X + 2*places[i].X + b.X) / 4, (a.Y + 2*places[i].Y + b.Y) / 4}
		}
		places = next
	}
	return places
}

// simplerLine returns a line with fewer places. Places are taken to a 16th of a pixel.
func simplerLine(places []Place, closed bool) []Place {
	const fine = 16
	stops := make([]stop, 0, len(places)+1)
	for _, p := range places {
		stops = append(stops, stop{Point: image.Pt(int(math.Round(fine*p.X)), int(math.Round(fine*p.Y)))})
	}
	if closed {
		stops = append(stops, stops[0])
	}
	kept := douglasPeucker(stops, fine*0.75)
	if closed {
		kept = kept[:len(kept)-1]
	}
	result := make([]Place, len(kept))
	for i, s := range kept {
		result[i] = Place{float64(s.X) / fine, float64(s.Y) / fine}
	}
	return result
}
