// The band model of a paint's optics: K and S as sums of a few bell and step curves.

package paint

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"tonewright/analyze/colour"
)

// A curve is one hump or step of a model: its centre and width in nm, its height.
type curve struct {
	centre, width, height float64
	step                  bool // falls from height to 0 around the centre, else a bell
}

// at returns the curve at a wavelength in nm.
func (c curve) at(nm float64) float64 {
	x := (nm - c.centre) / c.width
	if c.step {
		return c.height / (1 + math.Exp(x))
	}
	return c.height * math.Exp(-x*x/2)
}

// absorption returns K in each band: a floor with bells and steps on it.
// Source: [PaintOptics] model.k.
func absorption(floor float64, curves []curve) (k colour.Spectrum) {
	for i := range k {
		k[i] = floor
		for _, c := range curves {
			k[i] += c.at(wavelength(i))
		}
	}
	return k
}

// scattering returns S in each band: level times the exponential of a parabola
// with bells on it.
// Source: [PaintOptics] model.s, x = (nm - 550) / 150.
func scattering(level, slope, bend float64, curves []curve) (s colour.Spectrum) {
	for i := range s {
		x := (wavelength(i) - 550) / 150
		power := slope*x + bend*x*x
		for _, c := range curves {
			power += c.at(wavelength(i))
		}
		s[i] = level * math.Exp(power)
	}
	return s
}

// wavelength returns the middle of a band in nm.
func wavelength(band int) float64 { return 400 + 10*float64(band) }

// parseAbsorption reads "floor centre/width/height … ~centre/width/height",
// where ~ marks a step.
func parseAbsorption(text string) (k colour.Spectrum, err error) {
	numbers, curves, err := parseModel(text, 1)
	if err != nil {
		return k, err
	}
	return absorption(numbers[0], curves), nil
}

// parseScattering reads "level slope bend centre/width/height …".
func parseScattering(text string) (s colour.Spectrum, err error) {
	numbers, curves, err := parseModel(text, 3)
	if err != nil {
		return s, err
	}
	return scattering(numbers[0], numbers[1], numbers[2], curves), nil
}

// parseModel splits a model into its count plain numbers and its curves.
func parseModel(text string, count int) (numbers []float64, curves []curve, err error) {
	fields := strings.Fields(text)
	if len(fields) < count {
		return nil, nil, fmt.Errorf("%q: wants %d numbers before its curves", text, count)
	}
	for _, field := range fields[:count] {
		n, err := strconv.ParseFloat(field, 64)
		if err != nil {
			return nil, nil, err
		}
		numbers = append(numbers, n)
	}
	for _, field := range fields[count:] {
		c, err := parseCurve(field)
		if err != nil {
			return nil, nil, err
		}
		curves = append(curves, c)
	}
	return numbers, curves, nil
}

// parseCurve reads "centre/width/height" or, for a step, "~centre/width/height".
func parseCurve(text string) (c curve, err error) {
	rest, step := strings.CutPrefix(text, "~")
	fields := strings.Split(rest, "/")
	if len(fields) != 3 {
		return c, fmt.Errorf("%q: wants centre/width/height", text)
	}
	c.step = step
	for i, to := range []*float64{&c.centre, &c.width, &c.height} {
		if *to, err = strconv.ParseFloat(fields[i], 64); err != nil {
			return c, err
		}
	}
	return c, nil
}
