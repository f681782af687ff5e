// Simulated painters: whose tubes, hands and cameras are not ours.

package match

import (
	"math"
	"math/rand/v2"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// checker is the 24 patches of a common colour chart, Lab under D50 taken as aims.
// Source: [BabelColor2012] Lab of the chart before November 2014. They are under D50
// there; here they are only colours such as are met, and taken as they stand.
var checker = []colour.Lab{
	{L: 37.986, A: 13.555, B: 14.059}, {L: 65.711, A: 18.13, B: 17.81}, {L: 49.927, A: -4.88, B: -21.905},
	{L: 43.139, A: -13.095, B: 21.905}, {L: 55.112, A: 8.844, B: -25.399}, {L: 70.719, A: -33.397, B: -0.199},
	{L: 62.661, A: 36.067, B: 57.096}, {L: 40.02, A: 10.41, B: -45.964}, {L: 51.124, A: 48.239, B: 16.248},
	{L: 30.325, A: 22.976, B: -21.587}, {L: 72.532, A: -23.709, B: 57.255}, {L: 71.941, A: 19.363, B: 67.857},
	{L: 28.778, A: 14.179, B: -50.297}, {L: 55.261, A: -38.342, B: 31.37}, {L: 42.101, A: 53.378, B: 28.19},
	{L: 81.733, A: 4.039, B: 79.819}, {L: 51.935, A: 49.986, B: -14.574}, {L: 51.038, A: -28.631, B: -28.638},
	{L: 96.539, A: -0.425, B: 1.186}, {L: 81.257, A: -0.638, B: -0.335}, {L: 66.766, A: -0.734, B: -0.504},
	{L: 50.867, A: -0.153, B: -0.27}, {L: 35.656, A: -0.421, B: -1.231}, {L: 20.461, A: -0.079, B: -0.973},
}

// still is the flat colours of the things in testdata/kettle.jpg, from kettle.json.
var still = []colour.Lab{
	{L: 61.19, A: 3.42, B: 13.28}, {L: 41.37, A: -2.01, B: -6.23}, {L: 73.69, A: 15.38, B: 15.99},
	{L: 13.02, A: 6.37, B: 10.83}, {L: 29.98, A: -16.2, B: 17.2}, {L: 81.58, A: -1.61, B: 88.82},
}

// painter is one of those simulated: whose tubes are not ours and whose camera strays.
type painter struct {
	chance *rand.Rand
	tubes  map[string]paint.Paint
	box    []paint.Paint // as the library has it
	slip   float64       // of a part that is measured out, 0-1
	lamp   bool          // the light is not daylight, which a card evens out only in part
}

func newPainter(seed uint64, box []paint.Paint) *painter {
	p := &painter{chance: rand.New(rand.NewPCG(seed, 81)), tubes: map[string]paint.Paint{}, box: box}
	for _, tube := range box {
		p.tubes[tube.ID] = p.another(tube)
	}
	return p
}

func (p *painter) normal(deviation float64) float64 { return deviation * p.chance.NormFloat64() }

func (p *painter) within(width float64) float64 { return width * (2*p.chance.Float64() - 1) }

// another returns a tube of that name as this painter has it: strength ±30 %,
// scattering ±15 %, bands ±6 nm moved along a cubic of K itself, with a ripple of 3 %
// over the spectrum that no two tubes share. None of it is paint.Vary.
func (p *painter) another(tube paint.Paint) paint.Paint {
	strength, scatter, shift := 1+p.within(0.3), 1+p.within(0.15), p.within(6)
	period, phase := 60+60*p.chance.Float64(), 2*math.Pi*p.chance.Float64()
	true := tube
	for b := range true.K {
		nm := 400 + 10*float64(b)
		ripple := 1 + 0.03*math.Sin(2*math.Pi*nm/period+phase)
		true.K[b] = strength * ripple * cubicAt(&tube.K, nm-shift)
		true.S[b] = scatter * tube.S[b]
	}
	return true
}

// cubicAt returns a curve between its samples along the cubic through the four around,
// kept over 0.
func cubicAt(k *colour.Spectrum, nm float64) float64 {
	at := (nm - 400) / 10
	i := math.Floor(at)
	t := at - i
	y := func(n float64) float64 { return k[int(min(max(i+n, 0), colour.Bands-1))] }
	v := y(0) + t/2*(y(1)-y(-1)+t*(2*y(-1)-5*y(0)+4*y(1)-y(2)+t*(3*(y(0)-y(1))+y(2)-y(-1))))
	return max(v, min(y(0), y(1))/2, 1e-5)
}

// look returns the true colour of a pile of this painter's tubes, straight from the
// definitions.
func (p *painter) look(pile Pile) colour.Lab {
	var parts []Part
	var tubes []paint.Paint
	for i, tube := range pile.Paints {
		tubes = append(tubes, p.tubes[tube.ID])
		parts = append(parts, Part{Paint: i, Parts: pile.Parts[i]})
	}
	return mixed(tubes, parts)
}

// How the photo strays, in linear RGB: uniform bounds of the cast of the light in each
// channel and of exposure, which the card tells; standard deviations of what it tells
// wrong, of the light not being the same on both, and of the sensor's noise.
const (
	cast       = 0.25
	exposure   = 0.2
	cardError  = 0.008
	lightError = 0.012
	tintError  = 0.006
	grainError = 0.002
)

// photographed returns what is read of a true colour: in linear RGB, under a cast, with
// noise, and divided by what is read of a gray card, with noise of its own.
func (p *painter) photographed(true colour.Lab) colour.Lab {
	const card = 0.184 // luminance of a gray card of L* 50
	var read [3]float64
	exposed, light := 1+p.within(exposure), 1+p.normal(lightError)
	for c, v := range linear(true) {
		gain := exposed * (1 + p.within(cast))
		onCard := card*gain*(1+p.normal(cardError)) + p.normal(grainError)
		onSwatch := v*gain*light*(1+p.normal(tintError)) + p.normal(grainError)
		read[c] = onSwatch * card / onCard
	}
	return fromLinear(read)
}

// What a card leaves of a light of 4000 K before a plain camera, in CIEDE2000: its median
// and 90th percentile. They were measured on made photos: see gainsRatio in
// analyze/swatch_warn.go. Drawn here as log-normal with those two.
const lampMedian, lampNinetieth = 1.0, 2.9

// underLamp returns how such a light shows a colour: off in any direction. What is painted
// hardly changes between two rounds, so neither does this: it is drawn once an aim.
func (p *painter) underLamp() func(colour.Lab) colour.Lab {
	const z90 = 1.2816 // of the normal distribution
	off := lampMedian * math.Exp(p.normal(math.Log(lampNinetieth/lampMedian)/z90))
	l, a, b := p.normal(1), p.normal(1), p.normal(1)
	return func(c colour.Lab) colour.Lab {
		at := func(far float64) colour.Lab { return colour.Lab{L: c.L + far*l, A: c.A + far*a, B: c.B + far*b} }
		low, high := 0.0, 100.0
		for range 40 {
			if far := (low + high) / 2; colour.DeltaE00(c, at(far)) < off {
				low = far
			} else {
				high = far
			}
		}
		return at(low)
	}
}

// toLinear is XYZ to linear sRGB. Source: [IEC61966-2-1], as printed to four decimals.
var toLinear = [3][3]float64{{3.2406, -1.5372, -0.4986}, {-0.9689, 1.8758, 0.0415}, {0.0557, -0.2040, 1.0570}}

func linear(c colour.Lab) (rgb [3]float64) {
	xyz := c.XYZ()
	for i, row := range toLinear {
		rgb[i] = (row[0]*xyz.X + row[1]*xyz.Y + row[2]*xyz.Z) / 100
	}
	return rgb
}

// fromLinear is its inverse. Source: [IEC61966-2-1].
func fromLinear(rgb [3]float64) colour.Lab {
	xyz := func(r, g, b float64) float64 { return max(100*(r*rgb[0]+g*rgb[1]+b*rgb[2]), 0) }
	return colour.XYZ{X: xyz(0.4124, 0.3576, 0.1805), Y: xyz(0.2126, 0.7152, 0.0722), Z: xyz(0.0193, 0.1192, 0.9505)}.Lab()
}

// pileOf is the pile of a recipe.
func pileOf(paints []paint.Paint, r *Recipe) (p Pile) {
	for _, part := range r.Parts {
		p.Paints, p.Parts = append(p.Paints, paints[part.Paint]), append(p.Parts, part.Parts)
	}
	return p
}

// mixes returns the true parts of a pile that is meant to be so.
func (p *painter) mixes(meant Pile) Pile {
	mixed := Pile{meant.Paints, slices.Clone(meant.Parts)}
	for i := range mixed.Parts {
		mixed.Parts[i] *= 1 + p.within(p.slip)
	}
	return mixed
}

// adds returns the true pile after additions.
func (p *painter) adds(mixed Pile, additions []Addition) Pile {
	additions = slices.Clone(additions)
	for i := range additions {
		additions[i].Parts *= 1 + p.within(p.slip)
	}
	return mixed.with(additions)
}

// A manner of correcting, to compare.
type manner func(box []paint.Paint, rounds []Round, aim colour.Lab) Correction

// unlearned is the library's paints, and a pile moved onto its measurement.
func unlearned(box []paint.Paint, rounds []Round, aim colour.Lab) Correction {
	return advise(box, rounds[len(rounds)-1], aim, nil, 1)
}

// corrects mixes a recipe and corrects it twice. It returns the true CIEDE2000 to the
// aim before, after one and after two rounds; the rounds; and the errors of the photos.
func (p *painter) corrects(start Pile, aim colour.Lab, correct manner, known []Round) (off [3]float64, rounds []Round, photos []float64) {
	rounds = slices.Clone(known)
	meant, mixed := start, p.mixes(start)
	shown := func(c colour.Lab) colour.Lab { return c }
	if p.lamp {
		shown = p.underLamp()
	}
	off[0] = colour.DeltaE00(p.look(mixed), aim)
	for round := 1; round <= 2; round++ {
		true := p.look(mixed)
		seen := p.photographed(shown(true))
		photos = append(photos, colour.DeltaE00(true, seen))
		rounds = append(rounds, Round{Pile: meant, Measured: seen})
		switch c := correct(p.box, rounds, aim); c.Verdict {
		case Anew:
			meant = pileOf(p.box, c.Fresh)
			mixed = p.mixes(meant)
		default:
			meant, mixed = c.After, p.adds(mixed, c.Additions)
		}
		off[round] = colour.DeltaE00(p.look(mixed), aim)
	}
	return off, rounds, photos
}

// reachable returns the aims that the box comes near enough to, with their recipes.
func reachable(box []paint.Paint) (aims []colour.Lab, first []Recipe) {
	all := append(slices.Clone(checker), still...)
	for i, recipes := range Recipes(box, all, Options{}) {
		if recipes[0].DeltaE <= Right {
			aims, first = append(aims, all[i]), append(first, recipes[0])
		}
	}
	return aims, first
}

func shareWithin(v []float64, bound float64) float64 {
	n := 0
	for _, x := range v {
		if x <= bound {
			n++
		}
	}
	return float64(n) / float64(len(v))
}

func quantile(v []float64, q float64) float64 {
	v = slices.Sorted(slices.Values(v))
	return v[int(q*float64(len(v)-1))]
}
