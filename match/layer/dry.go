// How long a coat takes to dry.

package layer

import "math"

// Indoors is the air of a heated room.
var Indoors = Air{Celsius: 20, Humidity: 50}

// Dries is how a coat dries: estimates in days after it is laid.
type Dries struct {
	Touch   Range // until it is dry to the touch
	Through Range // until it is dry through, so that a faster or fatter coat, or a glaze, may go over it
	Wet     Range // how long it can be blended wet into wet
	Slowest int   // index in Paints of the one it waits for
}

// Drying returns how a coat dries in an air. Every figure is an estimate: the slowest paint
// by share, driers, medium, film, temperature and humidity are rough factors.
func Drying(c Coat, air Air) Dries {
	if len(c.Paints) == 0 {
		return Dries{}
	}
	pile, slowest := paceOf(c)
	pace := pile.times(airFactor(air)).times(mediumFactor(c))
	film := filmLeft(c) / thinFilm
	touch := pace.times(power(film, touchFilm))
	through := pace.times(throughTouch).times(power(film, throughFilm))
	return Dries{
		Touch:   touch,
		Through: Range{max(through.From, touch.From), max(through.To, touch.To)},
		Wet:     Range{touch.From * openFor.From, touch.To * openFor.To},
		Slowest: slowest,
	}
}

const thinFilm = 100

var (
	touchFilm    = Range{0.8, 1.2}
	throughFilm  = Range{1, 2}
	throughTouch = Range{1.5, 2.5}
	openFor      = Range{0.15, 0.4}
)

// times returns the product of two ranges of positive numbers.
func (r Range) times(by Range) Range { return Range{r.From * by.From, r.To * by.To} }

// power returns x to the powers of a range, the smaller first.
func power(x float64, powers Range) Range {
	a, b := math.Pow(x, powers.From), math.Pow(x, powers.To)
	return Range{min(a, b), max(a, b)}
}

// filmLeft returns the film without its solvent, µm.
func filmLeft(c Coat) float64 {
	if c.Medium.Kind == Solvent && !c.Medium.none() {
		return c.Film / (1 + c.Medium.Parts)
	}
	return c.Film
}

// airFactor returns how many times as long as indoors a coat takes to dry.
func airFactor(air Air) Range {
	warm := power(math.Exp2((Indoors.Celsius-air.Celsius)/10), Range{0.6, 1.3})
	damp := power(math.Exp((air.Humidity-Indoors.Humidity)/100), Range{0, 1})
	return warm.times(damp)
}

// mediumFactor returns how many times as long as the paint alone a coat takes to dry.
func mediumFactor(c Coat) Range {
	factors := map[string]Range{
		Linseed: {1, 1.5}, StandOil: {1.2, 2}, Walnut: {1.1, 1.8}, Safflower: {1.3, 2.5}, Alkyd: {0.2, 0.5},
	}
	whole, known := factors[c.Medium.Kind]
	if !known || c.Medium.none() {
		return Range{1, 1}
	}
	share := c.Medium.Parts / (c.Medium.Parts + 0.5)
	return Range{math.Pow(whole.From, share), math.Pow(whole.To, share)}
}
