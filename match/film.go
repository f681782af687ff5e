// What a mix looks like as coats over a ground.

package match

import (
	"fmt"
	"math"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Cover is what one coat of a mix does over a ground, and how many hide it.
type Cover struct {
	OneCoat     colour.Lab // of one coat over the ground
	Hidden      colour.Lab // of the mix where nothing of the ground is seen
	ValueShift  float64    // Munsell value of one coat less that of Hidden: negative reads darker
	ChromaShift float64    // the same of Munsell chroma: negative reads duller
	DeltaE      float64    // CIEDE2000 from one coat to Hidden
	Coats       int        // the fewest that hide the ground; 0 where MostCoats do not
}

// MostCoats is how many coats are tried. Ours: each has to dry before the next, so
// that 8 already take weeks, and thick oil films wrinkle and crack. Over black the
// library's paints need 1 to 6.
const MostCoats = 8

// When a ground counts as hidden: half a step of value, half a chip of chroma, and not
// more in CIEDE2000 than the half step is for a gray of middle value. Ours: without the
// last a ground of the mix's own value but of another hue would count as hidden from
// the start, and without the second a transparent dark would over black, where it all
// but loses its hue.
const (
	hiddenValue  = 0.5
	hiddenChroma = 1 // chips of the Munsell book are 2 apart
	hiddenDeltaE = 5 // values 5 and 5.5 differ by 4.9, see TestHiddenIsHalfAValue
)

// CoverOf returns what coats of a mix do over a ground. k ≥ 0 and s > 0 in every band,
// per unit thickness, as paint.Mix returns them; the ground is its reflectance as seen
// bare, with the same finish. A coat is so many times as thick as an ordinary
// brushed one, more than 0.
// Source: [Kubelka1948], see paint.Film and paint.Thick; an ordinary coat is
// paint.Coat thick.
func CoverOf(k, s, ground *colour.Spectrum, finish paint.Finish, coat float64) Cover {
	thick := paint.Thick(k, s, finish)
	c := Cover{Hidden: thick.Lab()}
	hidden := c.Hidden.Munsell()
	for coats := 1; coats <= MostCoats && c.Coats == 0; coats++ {
		film := paint.Film(k, s, float64(coats)*coat*paint.Coat, ground, finish)
		lab := film.Lab()
		seen, deltaE := lab.Munsell(), colour.DeltaE00(lab, c.Hidden)
		value, chroma := seen.Value-hidden.Value, seen.Chroma-hidden.Chroma
		if coats == 1 {
			c.OneCoat, c.ValueShift, c.ChromaShift, c.DeltaE = lab, value, chroma, deltaE
		}
		if math.Abs(value) <= hiddenValue && math.Abs(chroma) <= hiddenChroma && deltaE <= hiddenDeltaE {
			c.Coats = coats
		}
	}
	return c
}

// Carries tells whether one coat hides the ground.
func (c Cover) Carries() bool { return c.Coats == 1 }

// Note says in a sentence what one coat lacks over a ground of this name, and what
// hides it: "One coat over black comes out darker by 1.4 value and duller by 2.3 chroma;
// 3 coats hide it."
// "" where one coat carries.
func (c Cover) Note(ground string) string {
	if c.Carries() {
		return ""
	}
	comes := "comes out " + missOf(c.Hidden, c.OneCoat, c.Hidden.Munsell()).shifts()
	if c.Coats == 0 {
		return fmt.Sprintf("One coat over %s %s, and %d coats never hide it: treat it as a glaze.", ground, comes, MostCoats)
	}
	return fmt.Sprintf("One coat over %s %s; %d coats hide it.", ground, comes, c.Coats)
}
