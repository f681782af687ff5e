// What layers of paint look like: Kubelka and Munk's two constants, by volume,
// with the surface of the film.

package paint

import (
	"fmt"
	"math"
	"strings"

	"tonewright/analyze/colour"
)

// Coat is the thickness of one ordinary brushed coat, in the units of K and S.
// Source: [PaintOptics] model.units, an estimate.
const Coat = 12

// inside is the share of diffuse light that the film's surface sends back in.
// Source: [PaintOptics] surface; [Saunderson1942] works out about 0.6 for a binder of index 1.5.
const inside = 0.60

// Finish is the share of light that the surface mirrors into the eye, 0-1:
// Saunderson's k1.
type Finish float64

// Source: [PaintOptics] surface, but for satin, which is ours: half way.
const (
	Gloss Finish = 0     // glossy or varnished, seen without glare
	Satin Finish = 0.015 // between the two, as most paint dries
	Matt  Finish = 0.03  // sunk in
)

// finishes are the finishes by name.
var finishes = []struct {
	name   string
	finish Finish
}{{"gloss", Gloss}, {"satin", Satin}, {"matt", Matt}}

// ParseFinish reads gloss, satin or matt.
func ParseFinish(text string) (Finish, error) {
	for _, f := range finishes {
		if strings.EqualFold(strings.TrimSpace(text), f.name) {
			return f.finish, nil
		}
	}
	return Gloss, fmt.Errorf("finish %q is not known: write gloss, satin or matt", text)
}

// String returns the finish's name, or its share where it has none.
func (f Finish) String() string {
	for _, known := range finishes {
		if f == known.finish {
			return known.name
		}
	}
	return fmt.Sprintf("surface %.3f", float64(f))
}

// Mix returns K and S of a mix by volume; the shares need not sum to 1.
// len(paints) == len(shares) > 0, shares ≥ 0 and not all 0. It panics if lengths differ.
// Source: [Duncan1940], both constants add by volume.
func Mix(paints []Paint, shares []float64) (k, s colour.Spectrum) {
	if len(paints) != len(shares) {
		panic("paint: Mix: paints and shares differ in length")
	}
	whole := 0.0
	for _, share := range shares {
		whole += share
	}
	for i := range paints {
		share := shares[i] / whole
		for b := range k {
			k[b] += share * paints[i].K[b]
			s[b] += share * paints[i].S[b]
		}
	}
	return k, s
}

// Infinite returns the reflectance of a layer too thick to see through, before
// the surface: q = K/S ≥ 0, result in (0, 1].
// Source: [Kubelka1948] R∞ = 1 + q - sqrt(q² + 2q), as its equal 1/(1 + q + sqrt(q² + 2q)),
// which loses no digits when q is large.
func Infinite(q float64) float64 { return 1 / (1 + q + math.Sqrt(q*(q+2))) }

// Out returns what is seen of reflectance r inside the film.
// Source: [Saunderson1942] R = k1 + (1 - k1)(1 - k2)·r / (1 - k2·r).
func (f Finish) Out(r float64) float64 {
	return float64(f) + (1-float64(f))*(1-inside)*r/(1-inside*r)
}

// In returns the reflectance inside the film of what is seen as r, at least 0:
// the inverse of Out.
func (f Finish) In(r float64) float64 {
	t := max(0, (r-float64(f))/(1-float64(f)))
	return t / (1 - inside + inside*t)
}

// Thick returns what is seen of a layer too thick to see through.
// S > 0 in every band.
func Thick(k, s *colour.Spectrum, f Finish) (r colour.Spectrum) {
	for b := range r {
		r[b] = f.Out(Infinite(k[b] / s[b]))
	}
	return r
}

// Film returns what is seen of a film over a ground. The ground is given as it
// is seen bare with the same finish; thickness ≥ 0 in the units of K and S.
// Source: [Kubelka1948] the hyperbolic solution.
func Film(k, s *colour.Spectrum, thickness float64, ground *colour.Spectrum, f Finish) (r colour.Spectrum) {
	for b := range r {
		r[b] = f.Out(film(k[b], s[b], thickness, f.In(ground[b])))
	}
	return r
}

// film returns the reflectance, before the surface, of a film of thickness x
// over a ground of reflectance g.
// Source: [Kubelka1948] R = (1 - g(a - b·coth bSX)) / (a - g + b·coth bSX) with
// a = 1 + K/S, b = sqrt(a² - 1). Both sides are multiplied by S here, so that
// nothing is divided by it and S = 0 gives g·exp(-2KX).
func film(k, s, x, g float64) float64 {
	if x <= 0 {
		return g
	}
	sum := k + s                     // a·S
	root := math.Sqrt(k * (k + 2*s)) // b·S
	coth := rootCoth(root, x)
	return (s - g*(sum-coth)) / (sum + coth - g*s)
}

// rootCoth returns m·coth(m·x), which is 1/x at m = 0.
func rootCoth(m, x float64) float64 {
	t := m * x
	if t < 1e-4 {
		return (1 + t*t/3) / x // the next term, t⁴/45, is under the last bit
	}
	return m / math.Tanh(t)
}

// Masstone returns the colour of the paint as it comes, thick and glossy.
func (p Paint) Masstone() colour.Lab {
	r := Thick(&p.K, &p.S, Gloss)
	return r.Lab()
}

// ContrastRatio returns the luminance of one coat over black by that over white,
// before the surface: 1 hides everything, 0 nothing.
// Source: [ISO6504-3] for the ratio; [PaintOptics] model.units leaves the surface out
// where it finds 0.93 for titanium white.
func ContrastRatio(k, s *colour.Spectrum) float64 {
	var overBlack, overWhite colour.Spectrum
	for b := range k {
		overBlack[b] = film(k[b], s[b], Coat, 0)
		overWhite[b] = film(k[b], s[b], Coat, 1)
	}
	return luminance(&overBlack) / luminance(&overWhite)
}

func luminance(r *colour.Spectrum) (y float64) {
	for b, w := range colour.Weights()[1] {
		y += w * r[b]
	}
	return y
}
