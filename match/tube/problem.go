// The fit as least squares: what is unknown, where to start, what is left over.

package tube

import (
	"fmt"
	"math"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// problem is a tube to be fitted. Its unknowns are ln K of each band, ln S of each
// band, then ln of each film's thickness: K, S and thickness cannot be negative.
type problem struct {
	like, white paint.Paint
	m           Measured  // with grounds
	first       []float64 // ln thickness of each film, at the start
}

// How far each is let go, as one standard deviation. Ours. Measured on five tubes made
// by another optics (fit_test.go): a quarter or four times of any but farS and of
// noiseLightness moves the mean error in ln K by at most 0.013 and that of a predicted
// mix by at most 0.04 CIEDE2000; farS at 0.25 bends a tube that is far from the typical
// one until it is refused.
const (
	noiseLightness   = 0.3   // of a sample beside what any K and S can give, in L*
	noiseReflectance = 0.002 // of an instrument
	roughK           = 1.0   // second difference of ln K from band to band
	roughS           = 0.3   // of ln S
	farS             = 3.0   // ln S from the typical tube's
	farThickness     = 3.0   // ln of a thickness from where it starts
)

// optics returns the paint of a set of unknowns, within what a box may hold, and the
// films' thicknesses.
func (p *problem) optics(x []float64) (k, s colour.Spectrum, thick []float64) {
	for b := range k {
		k[b] = math.Exp(min(max(x[b], lnLeastK), lnMost))
		s[b] = math.Exp(min(max(x[colour.Bands+b], lnLeastS), lnMost))
	}
	for _, t := range x[2*colour.Bands:] {
		thick = append(thick, math.Exp(min(max(t, lnLeastS), lnMost)))
	}
	return k, s, thick
}

// What a box may hold, as logarithms; no absorption at all is written as a hundredth
// of the library's least.
var lnLeastK, lnLeastS, lnMost = math.Log(2e-6), math.Log(1.01e-4), math.Log(99)

// A sample is one measured reflectance with the parts or the film that gave it.
type sample struct {
	what string
	r    *colour.Spectrum
	seen func(own paint.Paint, thick []float64) colour.Spectrum
}

// samples lists what was measured, in a fixed order.
func (p *problem) samples() []sample {
	surface := p.m.Surface
	all := []sample{{"masstone", &p.m.Masstone, func(own paint.Paint, _ []float64) colour.Spectrum {
		return paint.Thick(&own.K, &own.S, surface)
	}}}
	for i := range p.m.Tints {
		t := &p.m.Tints[i]
		all = append(all, sample{"tint " + partsName(t.Paint, t.White), &t.R, func(own paint.Paint, _ []float64) colour.Spectrum {
			k, s := paint.Mix([]paint.Paint{own, p.white}, []float64{t.Paint, t.White})
			return paint.Thick(&k, &s, surface)
		}})
	}
	for i := range p.m.Films {
		f := &p.m.Films[i]
		over := func(ground *colour.Spectrum) func(paint.Paint, []float64) colour.Spectrum {
			return func(own paint.Paint, thick []float64) colour.Spectrum {
				return paint.Film(&own.K, &own.S, thick[i], ground, surface)
			}
		}
		all = append(all, sample{fmt.Sprintf("film %d over black", i+1), &f.OverBlack, over(&f.Black)},
			sample{fmt.Sprintf("film %d over white", i+1), &f.OverWhite, over(&f.White)})
	}
	return all
}

// start returns the unknowns of the closed form: K/S from the masstone, S from the
// first tint, held within a factor of ten of the typical tube's.
// Source: [Duncan1940], q = (pK + wKw)/(pS + wSw) solved for S at K = S·K/S.
func (p *problem) start() []float64 {
	x := make([]float64, 2*colour.Bands+len(p.m.Films))
	t := p.m.Tints[0]
	for b, r := range p.m.Masstone {
		mass, tint := ratio(p.m.Surface.In(r)), ratio(p.m.Surface.In(t.R[b]))
		s := t.White * (tint*p.white.S[b] - p.white.K[b]) / (t.Paint * (mass - tint))
		like := p.like.S[b]
		if !(s > like/10 && s < like*10) {
			s = like
		}
		x[b], x[colour.Bands+b] = math.Log(s*mass), math.Log(s)
	}
	for i := range p.m.Films {
		x[2*colour.Bands+i] = p.thickness(x, i)
	}
	p.first = x[2*colour.Bands:]
	return x
}

// thickness returns ln of the thickness, of a row from 1/16 to 64, that gives a film best.
func (p *problem) thickness(x []float64, film int) float64 {
	best, least := 0.0, math.Inf(1)
	own := p.like
	thick := make([]float64, len(p.m.Films))
	own.K, own.S, _ = p.optics(x)
	pair := p.samples()[1+len(p.m.Tints)+2*film:][:2]
	for octave := -4.0; octave <= 6; octave += 0.5 {
		thick[film] = math.Exp2(octave)
		sum := 0.0
		for _, s := range pair {
			sum = squares(sum, leftOver(s, own, thick))
		}
		if sum < least-1e-9 {
			best, least = octave*math.Ln2, sum
		}
	}
	return best
}

func squares(sum float64, of []float64) float64 {
	for _, v := range of {
		sum += v * v
	}
	return sum
}

// leftOver returns what a sample differs by in each band, in standard deviations, on
// the scale of lightness, so that darks count as the eye counts them.
func leftOver(s sample, own paint.Paint, thick []float64) []float64 {
	seen := s.seen(own, thick)
	left := make([]float64, colour.Bands)
	for b, r := range s.r {
		noise := noiseReflectance * slope(r)
		left[b] = (lightness(seen[b]) - lightness(r)) / math.Sqrt(noise*noise+noiseLightness*noiseLightness)
	}
	return left
}

// residuals returns what is left over of all samples, then how far the unknowns stray
// from smooth curves and from the typical tube, all in standard deviations.
func (p *problem) residuals(x []float64) (left []float64) {
	own := p.like
	var thick []float64
	own.K, own.S, thick = p.optics(x)
	for _, s := range p.samples() {
		left = append(left, leftOver(s, own, thick)...)
	}
	for b := range colour.Bands {
		s := x[colour.Bands:][:colour.Bands]
		left = append(left, (s[b]-math.Log(p.like.S[b]))/farS)
		if b > 0 && b < colour.Bands-1 {
			left = append(left, (x[b-1]-2*x[b]+x[b+1])/roughK, (s[b-1]-2*s[b]+s[b+1])/roughS)
		}
	}
	for i, t := range x[2*colour.Bands:] {
		left = append(left, (t-p.first[i])/farThickness)
	}
	return left
}

// misses compares each sample with what the tube gives.
func (p *problem) misses(own paint.Paint, x []float64) (misses []Miss) {
	_, _, thick := p.optics(x)
	for _, s := range p.samples() {
		seen := s.seen(own, thick)
		misses = append(misses, Miss{s.what, colour.DeltaE00(s.r.Lab(), seen.Lab())})
	}
	return misses
}

// lightness returns L* of a reflectance, as if it were all that is seen; 0-1 gives 0-100.
// Source: [CIE15] 8.2.1.
func lightness(r float64) float64 {
	if r > 216.0/24389 {
		return 116*math.Cbrt(r) - 16
	}
	return r * 24389 / 27
}

// slope returns how fast lightness grows with reflectance.
func slope(r float64) float64 {
	if r > 216.0/24389 {
		c := math.Cbrt(r)
		return 116 / (3 * c * c)
	}
	return 24389.0 / 27
}
