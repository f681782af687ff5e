// What a recipe misses, in the painter's words.

package match

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"tonewright/analyze/colour"
)

// matches is the CIEDE2000 up to which a mix is as good as its aim. Ours: side by
// side under one light 1 is hardly seen.
const matches = 1

// Near is the CIEDE2000 up to which a mix counts as reaching its aim. Ours: it is as
// near as parts by the knife come again.
const Near = 3

// neutral is the Munsell chroma under which hue says nothing.
// Source: [KellyJudd1976] section 13.
const neutral = 0.5

// miss is how a mix differs from its aim.
type miss struct {
	aim, mix colour.Munsell
	// Shares of CIEDE2000 for value, chroma and hue, roughly.
	value, chroma, hue float64
}

// missOf parts the difference by the leading terms of CIEDE2000.
// Source: [Sharma2005] eq. 18-20 without their finer factors.
func missOf(aim, mix colour.Lab, aimMunsell colour.Munsell) miss {
	m := miss{aim: aimMunsell, mix: mix.Munsell()}
	meanC := (aim.Chroma() + mix.Chroma()) / 2
	dL, dC := mix.L-aim.L, mix.Chroma()-aim.Chroma()
	dA, dB := mix.A-aim.A, mix.B-aim.B
	dH := math.Sqrt(max(0, dA*dA+dB*dB-dC*dC))
	m.value, m.chroma, m.hue = math.Abs(dL), math.Abs(dC)/(1+0.045*meanC), dH/(1+0.015*meanC)
	return m
}

func (m miss) valueShift() float64  { return m.mix.Value - m.aim.Value }
func (m miss) chromaShift() float64 { return m.mix.Chroma - m.aim.Chroma }

// hueShift returns the Munsell hue steps from the aim to the mix, -50 to 50; 0
// where one of them is neutral.
func (m miss) hueShift() float64 {
	if min(m.aim.Chroma, m.mix.Chroma) < neutral {
		return 0
	}
	return math.Remainder(m.mix.Hue-m.aim.Hue, 100)
}

// Misses under these are not worth a word: finer than a hand mixes (ours).
const (
	valueWord  = 0.1
	chromaWord = 0.5
	hueWord    = 1.5 // Munsell hue steps, of 100
)

// shifts says how the mix differs: "lighter by 0.4 value and duller by 1.3 chroma".
// It names every difference worth a word, the one that is seen most first, or that
// one alone where none is.
func (m miss) shifts() string {
	value, chroma, hue := m.valueShift(), m.chromaShift(), m.hueShift()
	type shift struct {
		seen  float64
		worth bool
		words string
	}
	all := []shift{
		{m.value, math.Abs(value) >= valueWord, fmt.Sprintf("%s by %.1f value", either(value < 0, "darker", "lighter"), math.Abs(value))},
		{m.chroma, math.Abs(chroma) >= chromaWord, fmt.Sprintf("%s by %.1f chroma", either(chroma < 0, "duller", "stronger"), math.Abs(chroma))},
	}
	if hue != 0 {
		all = append(all, shift{m.hue, math.Abs(hue) >= hueWord, fmt.Sprintf("turned %.0f hue steps towards %s", math.Max(2, math.Abs(hue)), m.towards())})
	}
	slices.SortStableFunc(all, func(a, b shift) int { return cmp.Compare(b.seen, a.seen) })
	var words []string
	for _, s := range all {
		if s.worth {
			words = append(words, s.words)
		}
	}
	if len(words) == 0 {
		return m.lean()
	}
	return Listed(words)
}

// lean says which way two near grays differ, where no figure does.
func (m miss) lean() string {
	switch {
	case max(m.value, m.chroma, m.hue) < unseen:
		return "no different"
	case m.mix.Chroma >= m.aim.Chroma:
		return "a trace more " + colour.HueName(m.mix.Hue)
	}
	return "a trace less " + colour.HueName(m.aim.Hue)
}

// unseen is the CIEDE2000 under which no word is worth while: what is printed as 0.0.
const unseen = 0.05

// towards names the family next to the aim's on the side the mix lies.
func (m miss) towards() string {
	step := 10.0
	if m.hueShift() < 0 {
		step = -10
	}
	return colour.HueName(m.aim.Hue + step)
}

// lacking says what the box has not, where that is why its nearest mix misses: its
// reach in value, or chroma in this hue at this value. Else it is only off.
func (m miss) lacking(lowest, highest float64) string {
	switch {
	case m.aim.Value < lowest-valueWord:
		return fmt.Sprintf("Darker than these paints go, value %.1f at the darkest", lowest)
	case m.aim.Value > highest+valueWord:
		return fmt.Sprintf("Lighter than these paints go, value %.1f at the lightest", highest)
	case m.chromaShift() <= -chromaWord && m.chroma >= max(m.value, m.hue):
		return fmt.Sprintf("These paints lack chroma in this hue at value %.0f", m.aim.Value)
	}
	return "Off the aim"
}

// note says how near a recipe comes and how it differs, and for the first one what
// is missing when the aim is out of reach.
func (m miss) note(deltaE float64, first bool, lowest, highest float64) string {
	switch {
	case deltaE <= matches:
		return "Matches."
	case deltaE <= Near:
		return fmt.Sprintf("Close: %s.", m.shifts())
	case first:
		return fmt.Sprintf("%s: %s.", m.lacking(lowest, highest), m.shifts())
	}
	return fmt.Sprintf("Off the aim: %s.", m.shifts())
}

// describe fills in how the recipe differs from the aim.
func (s *search) describe(r *Recipe, aim colour.Lab, aimMunsell colour.Munsell, first bool) {
	m := missOf(aim, r.Lab, aimMunsell)
	r.ValueShift, r.ChromaShift = m.valueShift(), m.chromaShift()
	if r.Cover != nil {
		r.ThinDeltaE = colour.DeltaE00(r.Cover.OneCoat, aim)
	}
	r.Note = m.note(r.DeltaE, first, s.lowest, s.highest) + s.smallAmounts(r.Parts)
}

// smallAmounts says what to bring in last.
func (s *search) smallAmounts(parts []Part) string {
	var names []string
	for _, p := range parts {
		if p.Measure != Knife {
			names = append(names, fmt.Sprintf("%s of %s", small(p), s.paints[p.Paint].Name))
		}
	}
	if len(names) == 0 {
		return ""
	}
	return fmt.Sprintf(" Add the %s last.", strings.Join(names, " and the "))
}

// small words touches and specks: "touch", "2 specks".
func small(p Part) string {
	if p.Count == 1 {
		return string(p.Measure)
	}
	return fmt.Sprintf("%d %s", p.Count, either(p.Measure == Touch, "touches", "specks"))
}

func either(yes bool, a, b string) string {
	if yes {
		return a
	}
	return b
}
