// The fit from painted swatches, seen by a camera: a typical tube made stronger,
// denser or of a slightly other hue, never a spectrum of its own.

package tube

import (
	"fmt"
	"math"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Swatch is a painted patch's colour and how far its pixels lie from it, CIEDE2000.
type Swatch struct {
	Lab    colour.Lab
	Spread float64
}

// TintSwatch is a swatch of a mix with white, by volume.
type TintSwatch struct {
	Paint, White float64 // parts
	Swatch
}

// Painted is what was painted of one tube.
type Painted struct {
	Masstone Swatch
	Tints    []TintSwatch // at least one
	Surface  paint.Finish // of the dry swatches
}

// How far a tube may be from the typical one. Bounds: half to twice for K and S, 12 nm
// for the place of the absorption; ours, between two and three of the widths of the pull
// to the typical tube. Widths, as one standard deviation: ours, tubes of one name differ
// by about a quarter and 5 nm (from general knowledge, no source). match.Learn goes by
// 0.2, 0.15 and 4: a pile is one colour for three numbers a paint, so there a narrow
// scatter must decide for strength, which masstone and tint tell apart by themselves. No
// one set serves both: with these, Learn's first mixes miss by a median of 1.69, not
// 1.42; with its own, swatches misread by up to 1 leave 0.54 where these leave 0.47.
// Of a hundred made tubes with swatches misread by up to 3 CIEDE2000, a held-back mix is
// missed by 1.09 with the pull and by 1.17 without; misread by up to 1, by 0.47 and 0.39.
const (
	latticeLog   = 0.01 // steps of ln strength and ln scatter
	latticeShift = 0.1  // nm
	mostLog      = 69   // in steps: e^0.69 is twice
	mostShift    = 120
	widthLog     = 0.25
	widthShift   = 5.0
)

// cameraError is what a swatch read from a photo beside a gray card is off by even
// without any spread, CIEDE2000, as one standard deviation. Ours, the same that
// match.Learn goes by.
const cameraError = 0.8

// worstSwatches is the largest mean miss that is still called a fit, CIEDE2000. Ours:
// four tubes of another optics, seen with an error of 0.7, were missed by 2.4 at most;
// of 282 offers of a wrong paint, 15 or more away, none passes (swatches_test.go).
const worstSwatches = 4.0

// FitSwatches returns the tube, like with its strength (K), scatter (S) and band place
// moved within bounds so that the swatches are met best, with a pull to the typical
// tube. white is what the tints were made with. A camera is no colorimeter: Mean says
// what is left over.
// The error says what the swatches cannot carry and what to do.
func FitSwatches(like, white paint.Paint, seen Painted) (Fitted, error) {
	if err := seen.check(white); err != nil {
		return Fitted{}, err
	}
	p := swatches{like, white, seen}
	at := p.search()
	own := p.tube(at)
	own.Basis, own.Like = paint.Own, like.ID
	for b := range own.K {
		own.K[b], own.S[b] = fourDigits(own.K[b]), fourDigits(own.S[b])
	}
	f := Fitted{Paint: own, Misses: p.misses(own)}
	f.judge(like, white)
	if err := f.finite(); err != nil {
		return Fitted{}, err
	}
	if f.Mean > worstSwatches {
		return Fitted{}, fmt.Errorf("no tube of %s looks like these swatches: they are missed by %.1f CIEDE2000 on average; check that it is this paint, the parts, and that card and swatches lay in the same light", like.Name, f.Mean)
	}
	if what := at.bound(); what != "" {
		return Fitted{}, fmt.Errorf("these swatches ask for more than a tube of %s can differ (%s); check that it is this paint, the parts of the tint, and the light", like.Name, what)
	}
	f.Checked = true // three numbers cannot meet just any two colours
	f.Notes = []string{
		"The typical tube was varied: " + at.words() + ".",
		fmt.Sprintf("The tints' white was taken to be a typical %s, the surface %v.", white.Name, seen.Surface),
	}
	return f, nil
}

// check refuses what tells too little.
func (s Painted) check(white paint.Paint) error {
	if !white.White() {
		return fmt.Errorf("%s is no white; say which white the tints were made with, such as titanium-white", white.Name)
	}
	if len(s.Tints) == 0 {
		return fmt.Errorf("a masstone alone cannot tell a strong paint from one that scatters little; paint a tint too, 1 part to 4 of white")
	}
	r := paint.Thick(&white.K, &white.S, s.Surface)
	for _, t := range s.Tints {
		if err := checkTint(t.Paint, t.White, t.Lab, s.Masstone.Lab, r.Lab()); err != nil {
			return err
		}
	}
	return nil
}

// swatches is a fit from swatches.
type swatches struct {
	like, white paint.Paint
	seen        Painted
}

// place is a point of the lattice that is searched: steps of ln strength, ln scatter
// and shift. On a lattice the same is found on every machine.
type place [3]int

var most = place{mostLog, mostLog, mostShift}

// values returns the place as paint.Vary takes it.
func (at place) values() (strength, scatter, shift float64) {
	return math.Exp(latticeLog * float64(at[0])), math.Exp(latticeLog * float64(at[1])), latticeShift * float64(at[2])
}

// bound names what lies at the end of its range; "" if nothing does.
func (at place) bound() string {
	strength, scatter, shift := at.values()
	switch {
	case at[0] == most[0] || at[0] == -most[0]:
		return fmt.Sprintf("absorption times %.1f", strength)
	case at[1] == most[1] || at[1] == -most[1]:
		return fmt.Sprintf("scattering times %.1f", scatter)
	case at[2] == most[2] || at[2] == -most[2]:
		return fmt.Sprintf("bands moved by %.0f nm", shift)
	}
	return ""
}

// words says what was done to the typical tube, then in figures.
func (at place) words() string {
	strength, scatter, shift := at.values()
	towards := ""
	switch {
	case at[2] > 0:
		towards = ", further towards red,"
	case at[2] < 0:
		towards = ", further towards violet,"
	}
	return fmt.Sprintf("it takes in %s light%s and throws back %s (absorption times %.2f, moved by %.1f nm; scattering times %.2f)",
		moreOrLess(at[0]), towards, moreOrLess(at[1]), strength, shift, scatter)
}

func moreOrLess(steps int) string {
	switch {
	case steps > 0:
		return "more"
	case steps < 0:
		return "less"
	}
	return "as much"
}

func (p *swatches) tube(at place) paint.Paint {
	return p.like.Vary(at.values())
}

// search goes over a coarse lattice and then downhill from its best point in ever
// smaller steps to all 26 sides; a step must gain more than rounding.
func (p *swatches) search() place {
	const coarse, gain = 16, 1e-9
	best, least := place{}, p.cost(place{})
	try := func(at place) bool {
		for i := range at {
			at[i] = min(max(at[i], -most[i]), most[i])
		}
		if c := p.cost(at); c < least-gain {
			best, least = at, c
			return true
		}
		return false
	}
	for i := -4; i <= 4; i++ {
		for j := -4; j <= 4; j++ {
			for k := -6; k <= 6; k++ {
				try(place{coarse * i, coarse * j, 20 * k})
			}
		}
	}
	for step := coarse / 2; step >= 1; step /= 2 {
		for moved := true; moved; {
			moved = false
			from := best
			for side := range 27 {
				i, j, k := side/9-1, side/3%3-1, side%3-1
				moved = try(place{from[0] + step*i, from[1] + step*j, from[2] + step*k}) || moved
			}
		}
	}
	return best
}

// cost is the sum of squares of all misses and of the stray from the typical tube, in
// standard deviations.
func (p *swatches) cost(at place) (sum float64) {
	own := p.tube(at)
	for i, miss := range p.misses(own) {
		spread := p.seen.Masstone.Spread
		if i > 0 {
			spread = p.seen.Tints[i-1].Spread
		}
		sum += miss.DeltaE * miss.DeltaE / (cameraError*cameraError + spread*spread/4)
	}
	strength, scatter, shift := latticeLog*float64(at[0])/widthLog, latticeLog*float64(at[1])/widthLog, latticeShift*float64(at[2])/widthShift
	return sum + strength*strength + scatter*scatter + shift*shift
}

// misses compares each swatch with what a tube gives.
func (p *swatches) misses(own paint.Paint) []Miss {
	surface := p.seen.Surface
	r := paint.Thick(&own.K, &own.S, surface)
	misses := []Miss{{"masstone", colour.DeltaE00(p.seen.Masstone.Lab, r.Lab())}}
	for _, t := range p.seen.Tints {
		k, s := paint.Mix([]paint.Paint{own, p.white}, []float64{t.Paint, t.White})
		r := paint.Thick(&k, &s, surface)
		misses = append(misses, Miss{"tint " + partsName(t.Paint, t.White), colour.DeltaE00(t.Lab, r.Lab())})
	}
	return misses
}
