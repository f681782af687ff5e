// Bringing a measured spectrum to the bands that the program reckons in.

package tube

import (
	"fmt"
	"math"
	"slices"

	"tonewright/analyze/colour"
)

// Steps between wavelengths, in nm.
const (
	widestStep = 20.0
	unevenStep = 1.5 // a step this many times the usual one is a gap
	band       = 10.0
)

// finish turns what was read into samples: percent to shares, any step to the bands.
func finish(found []raw) ([]Sample, error) {
	top, percent := 0.0, false
	for _, s := range found {
		top, percent = max(top, slices.Max(s.r)), percent || s.percent
	}
	scale, note := 1.0, "The reflectances were read as shares of 1."
	if percent || top > mostReflectance {
		scale, note = 100, "The reflectances were read as percent."
	}
	var samples []Sample
	for _, s := range found {
		s.name = plainName(s.name)
		for i, r := range s.r {
			if s.r[i] = r / scale; s.r[i] < 0 || s.r[i] > mostReflectance {
				return nil, fmt.Errorf("%d: %q reflects %g at %g nm, which is outside 0 to %g %%; measure it again after calibrating", s.line, s.name, r, s.nm[i], 100*mostReflectance)
			}
		}
		r, notes, err := s.bands()
		if err != nil {
			return nil, fmt.Errorf("%d: %q %w", s.line, s.name, err)
		}
		samples = append(samples, Sample{Name: s.name, R: r, Notes: append([]string{note}, notes...)})
	}
	return samples, nil
}

// bands returns the spectrum at 400 to 700 nm in steps of 10, and what was extended.
// Finer steps are averaged over each band; others are read off cubics through the
// four nearest wavelengths. Past the ends, the last one measured is kept.
// Source: [ASTME2022] for cubics.
func (s *raw) bands() (r colour.Spectrum, notes []string, err error) {
	if len(s.nm) < fewest {
		return r, nil, fmt.Errorf("has %d wavelengths; %d or more are needed", len(s.nm), fewest)
	}
	step := s.step()
	for i := 1; i < len(s.nm); i++ {
		if gap := s.nm[i] - s.nm[i-1]; gap > widestStep || gap > unevenStep*step {
			return r, nil, fmt.Errorf("has a gap from %g to %g nm; export it in even steps of at most %g nm", s.nm[i-1], s.nm[i], widestStep)
		}
	}
	first, last := s.nm[0], s.nm[len(s.nm)-1]
	if first > 400+step || last < 700-step {
		return r, nil, fmt.Errorf("covers %g to %g nm; it must cover 400 to 700 but for one step", first, last)
	}
	for b := range r {
		nm := min(max(400+band*float64(b), first), last)
		if r[b] = s.cubic(nm); step < band {
			r[b] = s.average(nm-band/2, nm+band/2)
		}
		r[b] = min(max(r[b], 0), mostReflectance) // a cubic may swing past a sharp edge
	}
	if first > 400 {
		notes = append(notes, fmt.Sprintf("Below %g nm, the reflectance there was kept.", first))
	}
	if last < 700 {
		notes = append(notes, fmt.Sprintf("Above %g nm, the reflectance there was kept.", last))
	}
	return r, notes, nil
}

// step returns the usual distance of neighbours in nm, their median.
func (s *raw) step() float64 {
	steps := make([]float64, len(s.nm)-1)
	for i := range steps {
		steps[i] = s.nm[i+1] - s.nm[i]
	}
	slices.Sort(steps)
	return steps[len(steps)/2]
}

// cubic returns the reflectance at a wavelength from the four nearest, by Lagrange.
func (s *raw) cubic(nm float64) (sum float64) {
	after, found := slices.BinarySearch(s.nm, nm)
	if found {
		return s.r[after]
	}
	from := min(max(after-2, 0), len(s.nm)-4)
	for i := from; i < from+4; i++ {
		term := s.r[i]
		for j := from; j < from+4; j++ {
			if j != i {
				term *= (nm - s.nm[j]) / (s.nm[i] - s.nm[j])
			}
		}
		sum += term
	}
	return sum
}

// average returns the mean of the broken line through the samples over a stretch, as
// far as it was measured.
func (s *raw) average(from, to float64) float64 {
	from, to = max(from, s.nm[0]), min(to, s.nm[len(s.nm)-1])
	area := 0.0
	for i := 1; i < len(s.nm); i++ {
		a, b := max(from, s.nm[i-1]), min(to, s.nm[i])
		if a < b {
			area += (b - a) * (s.between(i, a) + s.between(i, b)) / 2
		}
	}
	return area / math.Max(to-from, 1e-9)
}

// between returns the straight line between a sample and the one before, at nm.
func (s *raw) between(i int, nm float64) float64 {
	return s.r[i-1] + (nm-s.nm[i-1])/(s.nm[i]-s.nm[i-1])*(s.r[i]-s.r[i-1])
}
