// How long a coat takes to dry.

package layer

import "math"

// Indoors is the air of a heated room.
var Indoors = Air{Celsius: 20, Humidity: 50}

// Dries is how a coat dries: estimates in days after it is laid.
type Dries struct {
	Touch   Range // until it is dry to the touch
	Through Range // until it is dry through, so that a faster coat or a glaze may go over it
	Wet     Range // how long it can be blended wet into wet
	Slowest int   // index in Paints of the one it waits for; -1 without paints
}

// thinFilm is what the facts' days to touch dry are taken to be told of, µm wet. Ours: they
// say "a thin coat" and no figure; 100 µm is 10 m² a litre, an ordinary brushed coat.
const thinFilm = 100

// How days go with the film, as its powers, slowest and steepest. Oxygen comes in from the
// surface only. A thin film lacks none, and dries at the pace of its chemistry, whatever
// its thickness: power 0. Where it has to come through what is dry already, days go with
// the square: power 2, as a front that cures a coating goes with the root of time. Between
// the two, painters say "twice as thick, a bit more than twice as long".
// Source: that oxygen is used up within a starvation depth, [Thomson1978]; the front,
// [Erich2006], from memory; the powers are ours.
var (
	touchThinner   = Range{0.3, 1}
	touchThicker   = Range{0.8, 1.3}
	throughThinner = Range{0.5, 1.5}
	throughThicker = Range{1, 2}
)

// throughTouch is how many times as long as touch dry a thin coat takes to dry through.
// Common practice, no source: a week where it is touch dry in three days.
var throughTouch = Range{1.5, 2.5}

// openFor is for which part of the days to touch dry a coat blends with what is worked
// into it; then it drags. Common practice, no source.
var openFor = Range{0.15, 0.4}

// soaked is how many times as long a coat takes on a ground that takes oil in from beneath.
// That what it lies on matters is told by [Dick1872] no. 2735; the figure is ours, since an
// absorbent ground leaves a thin coat matt and set within a day or two, or does little.
var soaked = Range{0.6, 1}

// Drying returns how a coat dries in an air. Every figure is an estimate: the paints by
// share, the driers among them, the medium, film, temperature and humidity each bring a
// rough factor, as does an absorbent ground; in what light they dry is not known. None is over
// three years.
func Drying(c Coat, air Air) Dries {
	if len(c.Paints) == 0 {
		return Dries{Slowest: -1}
	}
	days := c.pace().times(c.mediumFactor()).times(airFactor(air))
	if c.Soaks {
		days = days.times(soaked)
	}
	film := c.left() / thinFilm
	touch := days.times(power(film, touchThinner, touchThicker)).within(mostDays)
	through := days.times(throughTouch).times(power(film, throughThinner, throughThicker)).within(mostDays)
	return Dries{
		Touch:   touch,
		Through: Range{max(through.From, touch.From), max(through.To, touch.To)},
		Wet:     touch.times(openFor),
		Slowest: c.slowest(),
	}
}

// mostDays is the longest that is told of a coat, three years. Ours: past it the factors say
// nothing any more, and no painter waits; Check finds such coats too thick or too fat.
const mostDays = 3 * 365

// within returns the range as far as it goes to most.
func (r Range) within(most float64) Range { return Range{min(r.From, most), min(r.To, most)} }

// perTen is how many times as fast oil dries when it is 10 °C warmer, from-to: "twice or
// thrice" is the rule of thumb for chemical change (from memory), less where oxygen has to
// seep in. That warmth hastens it is told by [Church1901].
var perTen = Range{1.5, 2.5}

// dampFor is how many times as long oil takes per 100 % more humidity, as a logarithm: from
// no longer at all to 2.7 times. That moist air delays it is told by [Dick1872] no. 2735;
// the figure is ours.
var dampFor = Range{0, 1}

// airFactor returns how many times as long as indoors a coat takes to dry.
func airFactor(air Air) Range {
	colder := (Indoors.Celsius - air.Celsius) / 10
	damper := (air.Humidity - Indoors.Humidity) / 100
	return between(math.Pow(perTen.From, colder), math.Pow(perTen.To, colder)).
		times(between(math.Exp(dampFor.From*damper), math.Exp(dampFor.To*damper)))
}

// mediums are how many times as long as its paint a coat takes whose binder were nearly
// all medium. Common practice, no source: glossaries give days to dry for the oils alone,
// linseed 3-5, walnut 4-5, poppy 5-7, stand oil 7-14; that linseed slows paint somewhat
// is since its pigments no longer reach it all. An alkyd brings driers of its own.
var mediums = map[string]Range{
	Linseed: {1, 1.3}, Walnut: {1.1, 1.6}, Safflower: {1.3, 2}, StandOil: {1.5, 2.8}, Alkyd: {0.25, 0.6},
}

// By how much medium to one of paint half of its effect is there. Paint is about half oil,
// so that half as much medium is half of the binder; of an alkyd, whose driers reach all
// oil, a tenth does (ours, by the practice that 1:4 has it dry the next day or the one after).
const (
	halfOil   = 0.5
	halfAlkyd = 0.1
)

// mediumFactor returns how many times as long as its paint alone a coat takes to dry.
// Solvent changes only the film.
func (c Coat) mediumFactor() Range {
	whole, known := mediums[c.Medium.Kind]
	if !known || c.Medium.none() {
		return Range{1, 1}
	}
	half := halfOil
	if c.Medium.Kind == Alkyd {
		half = halfAlkyd
	}
	share := c.Medium.Parts / (c.Medium.Parts + half)
	return Range{math.Pow(whole.From, share), math.Pow(whole.To, share)}
}

// times returns the product of two ranges of positive numbers.
func (r Range) times(by Range) Range { return Range{r.From * by.From, r.To * by.To} }

// middle returns the middle of a range by ratio.
func (r Range) middle() float64 { return math.Sqrt(r.From * r.To) }

// between returns the range of two numbers, whichever is less.
func between(a, b float64) Range { return Range{min(a, b), max(a, b)} }

// power returns x to powers of a range, one for x under 1, one for x over it.
func power(x float64, under, over Range) Range {
	if x < 1 {
		return between(math.Pow(x, under.From), math.Pow(x, under.To))
	}
	return between(math.Pow(x, over.From), math.Pow(x, over.To))
}
