// What measured samples cannot carry.

package tube

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// alike is the difference under which two samples say the same, CIEDE2000. Ours: a
// tint that differs by 1 from masstone and white leaves K and S to the noise.
const alike = 1.0

// Tints past these say too little of the paint or of the white, and no palette knife
// measures them (ours). mostParts keeps sums of parts finite.
const (
	weakest   = 1.0 / 50
	strongest = 10.0
	mostParts = 1000.0
)

// CheckParts refuses parts of paint to parts of white that no tint can be fitted by:
// figures not over 0 or over 1000, NaN, and ratios outside of 1:50 to 10:1.
func CheckParts(part, white float64) error {
	if !(part > 0 && white > 0 && part <= mostParts && white <= mostParts) {
		return fmt.Errorf("a tint of %g parts to %g of white is none; write figures over 0, at most %g, best 1:4", part, white, mostParts)
	}
	if ratio := part / white; ratio < weakest || ratio > strongest {
		return fmt.Errorf("a tint of %g parts to %g of white is out of range; make one between 1:50 and 10:1, best 1:4", part, white)
	}
	return nil
}

// check refuses what cannot be fitted; each refusal says what to measure.
func (m Measured) check(white paint.Paint) error {
	if !white.White() {
		return fmt.Errorf("%s is no white; say which white the tints were made with, such as titanium-white", white.Name)
	}
	if len(m.Tints) == 0 {
		return errMasstoneAlone
	}
	if m.Surface < 0 || m.Surface > 0.1 {
		return fmt.Errorf("a surface that mirrors %.3g of the light is none of paint; use %v or %v", float64(m.Surface), float64(ShineOut), float64(ShineIn))
	}
	if least := slices.Min(m.Masstone[:]); least < 0.7*float64(m.Surface) {
		return fmt.Errorf("the masstone gives back %.1f %% at its darkest, less than the shine alone would, so it was measured without its shine; say that it was (specular excluded)", 100*least)
	}
	for _, f := range m.Films {
		if f.Black.Lab().L > f.White.Lab().L {
			return errors.New("the black ground under a film is lighter than the white one; the two were taken for each other, or else measure the bare white ground too")
		}
	}
	w := paint.Thick(&white.K, &white.S, m.Surface)
	if m.White != nil {
		w = *m.White
	}
	mass := m.Masstone.Lab()
	for _, t := range m.Tints {
		if err := checkTint(t.Paint, t.White, t.R.Lab(), mass, w.Lab()); err != nil {
			return err
		}
	}
	return m.finite()
}

// checkTint refuses a tint that tells nothing beside the masstone and the white.
func checkTint(part, toWhite float64, tint, mass, white colour.Lab) error {
	if err := CheckParts(part, toWhite); err != nil {
		return err
	}
	switch {
	case colour.DeltaE00(tint, mass) < alike:
		return fmt.Errorf("the tint %s is the masstone's colour, so it tells nothing of the paint's strength; make one with more white", partsName(part, toWhite))
	case colour.DeltaE00(tint, white) < alike:
		return fmt.Errorf("the tint %s is the white's colour, so it tells nothing of the paint; make one with less white", partsName(part, toWhite))
	}
	return nil
}

// partsName writes parts of paint to parts of white: "1:4".
func partsName(part, toWhite float64) string { return fmt.Sprintf("%g:%g", part, toWhite) }

// finite refuses reflectances that are none.
func (m Measured) finite() error {
	all := []colour.Spectrum{m.Masstone}
	for _, t := range m.Tints {
		all = append(all, t.R)
	}
	for _, f := range m.Films {
		all = append(all, f.OverBlack, f.OverWhite, f.Black, f.White)
	}
	if m.White != nil {
		all = append(all, *m.White)
	}
	for _, s := range all {
		for _, r := range s {
			if math.IsNaN(r) || r < 0 || r > mostReflectance {
				return fmt.Errorf("a reflectance of %v is none; give the samples as 0 to 1", r)
			}
		}
	}
	return nil
}

// finite refuses a tube that is none: figures that ran over, as from a paint without
// optics.
func (f *Fitted) finite() error {
	all := slices.Concat(f.Paint.K[:], f.Paint.S[:], []float64{f.Mean, f.Worst, f.MasstoneAway, f.TintAway, f.Strength, f.Scatter})
	if slices.ContainsFunc(all, func(v float64) bool { return math.IsNaN(v) || math.IsInf(v, 0) }) {
		return errors.New("these samples lead to figures without end; check that they are of this paint, the parts, and the white")
	}
	return nil
}

// notes says what was taken as known rather than measured.
func (p *problem) notes(scatter float64) (notes []string) {
	if p.m.White == nil {
		notes = append(notes, fmt.Sprintf("The tints' white was taken to be a typical %s; a sample of it alone would be surer.", p.white.Name))
	}
	how := "without their shine (specular excluded)"
	if p.m.Surface != ShineOut {
		how = "with their shine (specular included)"
	}
	notes = append(notes, "The samples were taken to be measured "+how+".")
	black, light := p.assumed()
	if black {
		notes = append(notes, "The black under the films was taken to reflect 1 %, as a usual chart's does; a sample of it bare would be surer.")
	}
	if light {
		notes = append(notes, "The white under the films was taken to reflect 80 %, as a usual chart's does; a sample of it bare would be surer.")
	}
	if from, to, any := p.untold(); any {
		hue := lightName(from)
		if name := lightName(to); name != hue {
			hue += " to " + name
		}
		notes = append(notes, fmt.Sprintf("In %s light masstone and tints look alike, so how well the paint covers there comes from the typical tube (%d to %d nm).", hue, from, to))
	}
	if scatter > surprise || scatter < 1./surprise {
		much := "much more"
		if scatter < 1 {
			much = "much less"
		}
		notes = append(notes, fmt.Sprintf("The tube throws back %s light than a typical one; check the parts of the tint if that is a surprise (scattering %.2g times).", much, scatter))
	}
	return notes
}

// assumed tells whether a film's black or white ground is that of a usual chart, for
// want of a sample.
func (p *problem) assumed() (black, white bool) {
	for _, f := range p.m.Films {
		black = black || f.Black == flat(blackGround)
		white = white || f.White == flat(whiteGround)
	}
	return black, white
}

// doubt is what else may be amiss where nothing fits: "" or the end of a sentence.
func (p *problem) doubt() string {
	if black, white := p.assumed(); black || white {
		return ", and measure the bare black and white under the films, which were taken to be a usual chart's"
	}
	return ""
}

// surprise is how many times a typical tube's scattering is worth a word. Ours.
const surprise = 3

// lightName names the light of a wavelength. Limits of the hues of the spectrum as
// commonly given; from memory.
func lightName(nm int) string {
	switch {
	case nm < 450:
		return "violet"
	case nm < 495:
		return "blue"
	case nm < 570:
		return "green"
	case nm < 590:
		return "yellow"
	case nm < 620:
		return "orange"
	}
	return "red"
}

// lookAlike is the lightness under which two samples say the same in one band. Ours:
// twice the noise that is reckoned with.
const lookAlike = 1.0

// untold returns the outer wavelengths of the bands in which no tint differs from the
// masstone.
func (p *problem) untold() (from, to int, any bool) {
	for b, r := range p.m.Masstone {
		most := 0.0
		for _, t := range p.m.Tints {
			most = max(most, math.Abs(lightness(t.R[b])-lightness(r)))
		}
		if most >= lookAlike {
			continue
		}
		if to = 400 + 10*b; !any {
			from, any = to, true
		}
	}
	return from, to, any
}
