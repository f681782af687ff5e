// What light does: how a mix shifts from daylight to the lamps it may hang under.

package match

import (
	"fmt"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Shift is how a mix seen under a lamp differs from itself in daylight, to an eye
// that is used to either.
type Shift struct {
	Lamp   colour.Lamp
	Value  float64 // Munsell steps; positive is lighter under the lamp
	Chroma float64 // Munsell; positive is stronger under the lamp
	Hue    float64 // Munsell hue steps of 100, -50 to 50; 0 where one of the two is neutral
	DeltaE float64 // CIEDE2000

	words string
}

// otherLook is the CIEDE2000 from which a shift is flagged. Ours: what half a step of
// value is for a middle gray, the same that a ground may show through by. Of the mixes
// of the starter box for colours within its reach, half shift by 2.4 or less under the
// office lamp, the hardest of the three, and one in eight by more than 5.
const otherLook = hiddenDeltaE

// shiftsOf returns the shift of a reflectance under each lamp, in the order of
// colour.Lamps.
func shiftsOf(r *colour.Spectrum) []Shift {
	day := r.Lab()
	munsell := day.Munsell()
	lamps := colour.Lamps()
	shifts := make([]Shift, len(lamps))
	for i := range lamps {
		seen := lamps[i].Lab(r)
		m := missOf(day, seen, munsell)
		shifts[i] = Shift{lamps[i], m.valueShift(), m.chromaShift(), m.hueShift(), colour.DeltaE00(day, seen), m.shifts()}
	}
	return shifts
}

// Words says what the lamp does: "lighter by 0.3 value and stronger by 2.5 chroma".
func (s Shift) Words() string { return s.words }

// worst returns the largest shift, the first of equals.
func worst(shifts []Shift) Shift {
	most := shifts[0]
	for _, s := range shifts[1:] {
		if s.DeltaE > most.DeltaE {
			most = s
		}
	}
	return most
}

// Holds tells whether the recipe's colour holds under the lamps it may hang under.
func (r Recipe) Holds() bool { return worst(r.Lamps).DeltaE <= otherLook }

// LampNote says in a sentence what the worst lamp does to the recipe; "" where the
// recipe holds.
func (r Recipe) LampNote() string {
	if r.Holds() {
		return ""
	}
	w := worst(r.Lamps)
	return fmt.Sprintf("Changes under a %s: %s.", w.Lamp.Name, w.words)
}

// worstShift returns the CIEDE2000 of a mix's largest shift under the lamps.
func (s *search) worstShift(m mix) float64 {
	r := s.thick(m)
	return worst(shiftsOf(&r)).DeltaE
}

// thick returns the reflectance of a mix where nothing shows through.
func (s *search) thick(m mix) colour.Spectrum {
	k, r := s.optics(m.set, m.measure)
	return paint.Thick(&k, &r, s.finish)
}
