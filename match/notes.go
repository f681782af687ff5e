// What a recipe misses, in the painter's words.

package match

import (
	"fmt"
	"math"
	"strings"

	"tonewright/analyze/colour"
)

// All in CIEDE2000. Ours: side by side under one light 1 is hardly seen, and twice
// that is as near as parts by the knife come again.
const (
	matches = 1
	near    = 3
)

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

// shift says the largest of the differences: "duller by 3 chroma".
func (m miss) shift() string {
	value, chroma, hue := m.valueShift(), m.chromaShift(), m.hueShift()
	switch {
	case m.hue > max(m.value, m.chroma) && hue != 0:
		return fmt.Sprintf("turned towards %s by %s hue steps", m.towards(), amount(hue))
	case m.chroma > m.value:
		return fmt.Sprintf("%s by %s chroma", either(chroma < 0, "duller", "more chromatic"), amount(chroma))
	}
	return fmt.Sprintf("%s by %.1f of a value step", either(value < 0, "darker", "lighter"), math.Abs(value))
}

// hueNames are the ten Munsell families in plain words.
var hueNames = [10]string{"red", "orange", "yellow", "yellow-green", "green", "blue-green", "blue", "violet-blue", "purple", "red-purple"}

// towards names the family next to the aim's on the side the mix lies.
func (m miss) towards() string {
	step := 10.0
	if m.hueShift() < 0 {
		step = -10
	}
	family := math.Floor(m.aim.Hue/10) + step/10
	return hueNames[(int(family)+20)%10]
}

// lacking says what no mix of the box has: the reason why the nearest one is not
// nearer. lowest and highest are the values the box reaches.
func (m miss) lacking(lowest, highest float64) string {
	value := fmt.Sprintf("value %.0f", m.aim.Value)
	switch {
	case m.aim.Value < lowest-0.1 && m.value >= max(m.chroma, m.hue):
		return fmt.Sprintf("Darker than these paints go: their darkest mix is value %.1f", lowest)
	case m.aim.Value > highest+0.1 && m.value >= max(m.chroma, m.hue):
		return fmt.Sprintf("Lighter than these paints go: their lightest mix is value %.1f", highest)
	case m.hue > max(m.value, m.chroma) && m.hueShift() != 0:
		return fmt.Sprintf("No mix of these paints has this hue at %s and this chroma", value)
	case m.chromaShift() < 0:
		return fmt.Sprintf("No mix of these paints is this chromatic at %s", value)
	case m.chroma > m.value:
		return fmt.Sprintf("No mix of these paints is this dull at %s", value)
	}
	return fmt.Sprintf("No mix of these paints is this %s in this hue and chroma", either(m.valueShift() < 0, "light", "dark"))
}

// note says how near a recipe comes, and for the first one what is missing when
// the aim is out of reach.
func (m miss) note(deltaE float64, first bool, lowest, highest float64) string {
	switch {
	case deltaE <= matches:
		return "Matches."
	case deltaE <= near:
		return fmt.Sprintf("Close: %s.", m.shift())
	case first:
		return fmt.Sprintf("%s; the nearest is %s.", m.lacking(lowest, highest), m.shift())
	}
	return fmt.Sprintf("Off the aim: %s.", m.shift())
}

// describe fills in how the recipe differs from the aim.
func (s *search) describe(r *Recipe, aim colour.Lab, aimMunsell colour.Munsell, first bool) {
	m := missOf(aim, r.Lab, aimMunsell)
	r.ValueShift, r.ChromaShift = m.valueShift(), m.chromaShift()
	r.Note = m.note(r.DeltaE, first, s.lowest, s.highest)
	r.Note += s.smallAmounts(r.Parts)
}

// smallAmounts says what to bring in last.
func (s *search) smallAmounts(parts []Part) string {
	var names []string
	size := ""
	for _, p := range parts {
		if p.Measure == Knife {
			continue
		}
		names = append(names, s.paints[p.Paint].Name)
		if say := map[Measure]string{Touch: "a touch is 1 part in 32 of the pile", Speck: "a speck is 1 in 128"}[p.Measure]; !strings.Contains(size, say) {
			size += "; " + say
		}
	}
	if len(names) == 0 {
		return ""
	}
	return fmt.Sprintf(" Bring in the %s last and by little: %s.", strings.Join(names, " and the "), strings.TrimPrefix(size, "; "))
}

// amount writes a size without its sign, whole from 2 on.
func amount(v float64) string {
	v = math.Abs(v)
	if math.Round(v*10)/10 >= 2 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.1f", v)
}

func either(yes bool, a, b string) string {
	if yes {
		return a
	}
	return b
}
