// Learning the painter's tubes from piles that were mixed and measured.

package match

import (
	"math"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match/fit"
	"tonewright/match/paint"
)

// Round is a pile that was mixed, and what was measured of it.
type Round struct {
	Pile     Pile
	Measured colour.Lab
	Spread   float64 // CIEDE2000 of the swatch's places from its middle; 0 if not known
}

// Tubes are what rounds have told of the tubes at hand.
type Tubes []Tube

// Tube is how one paint differs from the one it was taken for: see paint.Paint.Vary.
type Tube struct {
	ID                       string
	Strength, Scatter, Shift float64
	Far                      bool // that hardly any tube strays so far: the piles are not what they are said to be, or it is another paint
}

// How far tubes of one name lie apart: one standard deviation of the logarithm of
// strength and of scattering, and of the band's place in nm. Ours, for want of a
// published figure: a fifth stronger or weaker is what makers' tubes of one pigment
// differ by, common practice, no source. A tube that was fitted strays by its fit's error.
var (
	unknownTube = [3]float64{0.2, 0.15, 4}
	ownTube     = [3]float64{0.07, 0.05, 1}
)

// The standard error of each of the three directions in which a measured colour may
// be off, in CIEDE2000. Ours: of 1000 simulated painters whose photos err by 1.0, about as
// many were right after two rounds with 0.4 to 1.2 (97.3 to 98.3 %), and fewer near after
// one with 1.2. Of a swatch's spread a part is the same all over it.
const (
	cameraError = 0.8
	spreadShare = 0.25
)

// mostStrays bounds how far a tube may be taken to stray, in standard deviations.
const mostStrays = 3

// farStrays is from where on a tube is Far. Ours: of 1000 fits for painters as in
// TestTwoHundredPainters, 99.4 in 100 had no tube that strayed by more.
const farStrays = 0.9 * mostStrays

func (r Round) sigma() float64 {
	return math.Hypot(cameraError, spreadShare*r.Spread)
}

// mostRounds is how many of the last rounds are learned from. Ours: with more, one
// correction takes longer than anybody waits, and tubes are used up.
const mostRounds = 24

// Learn returns the tubes of the paints in the piles, in the order in which they come
// up: those that are likeliest, given how far tubes and measurements stray, jointly
// over the last 24 rounds. No rounds: none.
// Source: maximum a posteriori, least squares of CIEDE2000 and of the strays.
func Learn(rounds []Round) Tubes {
	rounds = rounds[max(0, len(rounds)-mostRounds):]
	l := newLearning(rounds)
	return tubesOf(l.paints, fit.Least(l.at, mostStrays, l.residuals))
}

// learning is what the fit of tubes is at: it keeps what did not change.
type learning struct {
	rounds []Round
	paints []paint.Paint // as they come
	places [][]int       // of each round's paints among them
	at     []float64     // how far each strays, three numbers a paint
	tubes  []paint.Paint // straying so
	apart  [][3]float64  // each round's measurement from its pile of them
}

func newLearning(rounds []Round) *learning {
	l := &learning{rounds: rounds, paints: paintsOf(rounds), apart: make([][3]float64, len(rounds))}
	for _, r := range rounds {
		var places []int
		for _, p := range r.Pile.Paints {
			places = append(places, indexOf(l.paints, p.ID))
		}
		l.places = append(l.places, places)
	}
	l.at = make([]float64, 3*len(l.paints))
	l.tubes = tubesOf(l.paints, l.at).All(l.paints)
	for i := range rounds {
		l.measure(i)
	}
	return l
}

// measure sets how far a round's measurement is from its pile, in standard errors.
func (l *learning) measure(round int) {
	r := l.rounds[round]
	var tubes []paint.Paint
	for _, i := range l.places[round] {
		tubes = append(tubes, l.tubes[i])
	}
	l.apart[round] = parted(r.Measured, Pile{tubes, r.Pile.Parts}.look())
	for i := range l.apart[round] {
		l.apart[round][i] /= r.sigma()
	}
}

// residuals returns how far the tubes stray by x, and each round's measurement then,
// both in standard deviations.
func (l *learning) residuals(x []float64) []float64 {
	changed := make([]bool, len(l.paints))
	for i, p := range l.paints {
		if of := x[3*i : 3*i+3]; !slices.Equal(of, l.at[3*i:3*i+3]) {
			l.tubes[i], changed[i] = tubeOf(p, of).of(p), true
		}
	}
	l.at = slices.Clone(x)
	all := slices.Clone(x)
	for r, places := range l.places {
		if slices.ContainsFunc(places, func(i int) bool { return changed[i] }) {
			l.measure(r)
		}
		all = append(all, l.apart[r][:]...)
	}
	return all
}

// paintsOf returns the paints in the piles, each once.
func paintsOf(rounds []Round) (paints []paint.Paint) {
	for _, r := range rounds {
		for _, p := range r.Pile.Paints {
			if !slices.ContainsFunc(paints, func(q paint.Paint) bool { return q.ID == p.ID }) {
				paints = append(paints, p)
			}
		}
	}
	return paints
}

// tubesOf returns the tubes that stray by x, three numbers a paint.
func tubesOf(paints []paint.Paint, x []float64) (tubes Tubes) {
	for i, p := range paints {
		tubes = append(tubes, tubeOf(p, x[3*i:3*i+3]))
	}
	return tubes
}

// tubeOf returns the tube of a paint that strays by three numbers of standard deviations.
func tubeOf(p paint.Paint, x []float64) Tube {
	width := unknownTube
	if p.Basis == paint.Own {
		width = ownTube
	}
	far := slices.ContainsFunc(x, func(x float64) bool { return math.Abs(x) >= farStrays })
	return Tube{p.ID, math.Exp(width[0] * x[0]), math.Exp(width[1] * x[1]), width[2] * x[2], far}
}

func (t Tube) of(p paint.Paint) paint.Paint { return p.Vary(t.Strength, t.Scatter, t.Shift) }

// Of returns the paint as the tube at hand is, or as it comes where nothing is known of it.
func (t Tubes) Of(p paint.Paint) paint.Paint {
	for _, tube := range t {
		if tube.ID == p.ID {
			return tube.of(p)
		}
	}
	return p
}

// All returns the paints as the tubes at hand are.
func (t Tubes) All(paints []paint.Paint) []paint.Paint {
	learned := make([]paint.Paint, len(paints))
	for i, p := range paints {
		learned[i] = t.Of(p)
	}
	return learned
}

func (t Tubes) pile(p Pile) Pile { return Pile{t.All(p.Paints), p.Parts} }

// look returns the colour of the pile, thick and wet.
func (p Pile) look() colour.Lab { return labOf(p.Paints, p.Parts, paint.Gloss) }

// parted returns three numbers whose squares sum to about the square of CIEDE2000: the
// difference in lightness, and that in a* and b* along two directions.
func parted(from, to colour.Lab) [3]float64 {
	half := colour.Lab{L: (from.L + to.L) / 2, A: (from.A + to.A) / 2, B: (from.B + to.B) / 2}
	aa, bb := stretch(half, 1, 0), stretch(half, 0, 1)
	ab := (stretch(half, 1, 1) - stretch(half, 1, -1)) / 4
	a, b := to.A-from.A, to.B-from.B
	return [3]float64{
		(to.L - from.L) * math.Sqrt(float64(lightness(from, to.L))),
		math.Sqrt(aa)*a + ab/math.Sqrt(aa)*b,
		math.Sqrt(max(bb-ab*ab/aa, 0)) * b,
	}
}
