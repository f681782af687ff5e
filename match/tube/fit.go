// Package tube fits a paint's optics to a painter's own tube: from spectra of it,
// thick and in white, or from painted swatches. It knows colours and paints, no
// pictures and no commands.
package tube

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"

	"tonewright/analyze/colour"
	"tonewright/match/fit"
	"tonewright/match/paint"
)

// What the measuring of a paint with its shine counted or left out means for the
// surface. Source: [Saunderson1942] k1; 0.04 is the mirrored share at right angles of a
// binder of index 1.5, ((1.5 - 1) / (1.5 + 1))².
const (
	ShineOut              = paint.Gloss // specular excluded, or 45°/0°
	ShineIn  paint.Finish = 0.04        // specular included, d/8°
)

// Measured is what was measured of one tube. Reflectances are 0-1 as seen.
type Measured struct {
	Masstone colour.Spectrum // thick enough to hide
	Tints    []Tint          // at least one
	Films    []Film
	White    *colour.Spectrum // the tints' white alone, thick; nil: the library's
	Surface  paint.Finish     // of the measuring: ShineOut or ShineIn
}

// Tint is a thick mix with white, by volume.
type Tint struct {
	Paint, White float64 // parts
	R            colour.Spectrum
}

// Film is one drawn-down film that lets its ground show, over black and over white.
type Film struct {
	OverBlack, OverWhite colour.Spectrum
	Black, White         colour.Spectrum // the bare grounds; zero: those of a usual chart
}

// Fitted is a tube with what the fit is worth.
type Fitted struct {
	Paint        paint.Paint
	Misses       []Miss  // each sample, as measured, against what the tube gives
	Mean, Worst  float64 // of Misses, CIEDE2000
	MasstoneAway float64 // CIEDE2000 of masstone and 1:4 tint from the typical tube's
	TintAway     float64
	Strength     float64 // tinting strength, the typical tube's being 1; 0: it hardly tints the white
	Scatter      float64 // scattering, likewise
	Masstone     colour.Lab
	Tint         colour.Lab    // one part to four of the white
	Typical      [2]colour.Lab // masstone and tint of the typical tube, in the same white
	Checked      bool          // more was measured than nearly any tube would meet
	Unlike       string        // why it is hardly of the paint it was fitted as: it "is 65 CIEDE2000 from …"; "" if it may be
	Reads        paint.Paint   // the library paint that it is most like, where Unlike
	Notes        []string      // what was taken as known, each one plain sentence
}

// Miss is how far one sample lies from what the fitted tube gives.
type Miss struct {
	What   string
	DeltaE float64 // CIEDE2000
}

// worstMean is the largest mean miss that is still called a fit, CIEDE2000.
// Ours: layers worked out by streams of light in six directions, which no K and S give
// exactly, were fitted to 0.14, with a film to 0.87 (fit_test.go).
const worstMean = 1.5

// Fit returns the tube, like with K and S fitted to what was measured of it, in
// white's units: white is the library paint the tints were made with. The paint's id
// and name are those of like: see paint.OwnTube. K and S have four digits.
// The error says what the data cannot carry and what to measure.
// Source: [Kubelka1948], [Saunderson1942], [Duncan1940] as in package paint; the fit is
// damped least squares [Marquardt1963] on lightness.
func Fit(like, white paint.Paint, m Measured) (Fitted, error) {
	m = withGrounds(m)
	if err := m.check(white); err != nil {
		return Fitted{}, err
	}
	p := problem{like: like, white: whiteOf(white, m), m: m}
	x := fit.Least(p.start(), math.Inf(1), p.residuals)
	own := like
	own.Basis, own.Like = paint.Own, like.ID
	own.K, own.S, _ = p.optics(x)
	for b := range own.K {
		own.K[b], own.S[b] = fourDigits(own.K[b]), fourDigits(own.S[b])
	}
	f := Fitted{Paint: own, Misses: p.misses(own, x)}
	f.judge(like, p.white)
	if err := f.finite(); err != nil {
		return Fitted{}, err
	}
	f.Checked = len(m.Tints)+len(m.Films) > 1
	if f.Unlike = f.unlike(); f.Unlike != "" {
		f.Reads = f.nearest(p.white)
	}
	f.Notes = append(f.Notes, p.notes(f.Scatter)...)
	if f.Mean > worstMean {
		return Fitted{}, fmt.Errorf("no paint gives these samples: they are missed by %.1f CIEDE2000 on average; check which sample is the masstone and which the tint, the parts, and that all but films are thick enough to hide%s", f.Mean, p.doubt())
	}
	return f, nil
}

// judge fills in what the paint is worth beside the typical one.
func (f *Fitted) judge(like, white paint.Paint) {
	sum := 0.0
	for _, miss := range f.Misses {
		sum += miss.DeltaE
		f.Worst = max(f.Worst, miss.DeltaE)
	}
	f.Mean = sum / float64(len(f.Misses))
	f.Masstone, f.Tint = f.Paint.Masstone(), f.Paint.Tint(white)
	f.Typical = [2]colour.Lab{like.Masstone(), like.Tint(white)}
	f.MasstoneAway = colour.DeltaE00(f.Masstone, f.Typical[0])
	f.TintAway = colour.DeltaE00(f.Tint, f.Typical[1])
	if !like.White() && colour.DeltaE00(f.Typical[1], white.Masstone()) >= alike {
		f.Strength = tinting(f.Paint, white) / tinting(like, white)
	}
	f.Scatter = scatterOf(f.Paint, like)
	f.Paint.Fit.Error = round2(f.Mean)
	f.Paint.Fit.Away = round2(max(f.MasstoneAway, f.TintAway))
}

// tinting returns how much K/S a part of the paint brings to four of white, summed
// over the bands: what tinting strength compares.
// Source: [ISO787-24], the sum over the spectrum.
func tinting(p, white paint.Paint) (sum float64) {
	k, s := paint.Mix([]paint.Paint{p, white}, []float64{1, paint.TintParts})
	for b := range k {
		sum += max(0, k[b]/s[b]-white.K[b]/white.S[b])
	}
	return sum
}

// The grounds of a usual chart: white reflects about 0.80, black 0.01 at most.
// Source: [ASTMD2805].
const whiteGround, blackGround = 0.80, 0.01

// withGrounds puts the grounds of a usual chart where none were measured.
func withGrounds(m Measured) Measured {
	m.Films = slices.Clone(m.Films)
	for i := range m.Films {
		f := &m.Films[i]
		if f.Black == (colour.Spectrum{}) {
			f.Black = flat(blackGround)
		}
		if f.White == (colour.Spectrum{}) {
			f.White = flat(whiteGround)
		}
	}
	return m
}

func flat(r float64) (s colour.Spectrum) {
	for b := range s {
		s[b] = r
	}
	return s
}

// whiteOf returns the white with its K from its own sample, where there is one. Its S
// stays the library's: it is the unit that all else is measured in.
func whiteOf(white paint.Paint, m Measured) paint.Paint {
	if m.White == nil {
		return white
	}
	for b, r := range m.White {
		white.K[b] = white.S[b] * ratio(m.Surface.In(r))
	}
	return white
}

// ratio returns K/S of a thick layer's reflectance inside.
// Source: [Kubelka1948] (1 - R)² / 2R. Held off 0 and 1, where noise would make it
// endless or nothing.
func ratio(r float64) float64 {
	r = min(max(r, 1e-4), 0.9999)
	return (1 - r) * (1 - r) / (2 * r)
}

// fourDigits rounds to what is written and used from here on, so that the last bits,
// which differ between machines, go nowhere.
func fourDigits(v float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 4, 64), 64)
	if err != nil {
		return v
	}
	return r
}

func round2(v float64) float64 { return math.Round(v*100) / 100 }

// mostReflectance lets a glossy or fluorescent white read over the standard it is held against.
const mostReflectance = 1.2

var errMasstoneAlone = errors.New("a masstone alone tells what the paint takes away against what it scatters, but not how much of either; measure a tint too: 1 part to 4 of white")
