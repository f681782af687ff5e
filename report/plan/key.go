package plan

import (
	"fmt"
	"math"
	"slices"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
)

// outliers is the part of the pixels, at each end, that does not set the photo's
// value range: a few dead or burnt pixels are no shadow and no light.
const outliers = 0.001

// tones is what the picture's lightness alone says: the key, and the values to
// paint by it.
type tones struct {
	key        ValueKey
	five, nine analyze.ValueMap
}

func tonesOf(p *analyze.Picture, reach [2]float64, literal bool) tones {
	dark, light := lightness(p)
	t := tones{key: keyValues(dark, light, reach, literal)}
	keyed := t.key.picture(p)
	nine := aside(func() analyze.ValueMap { return analyze.Values(keyed, 9) })
	t.five = analyze.Values(keyed, 5)
	t.nine = nine()
	return t
}

// picture returns the picture with its lightness keyed; its other parts are shared.
func (k ValueKey) picture(p *analyze.Picture) *analyze.Picture {
	if lo, hi := k.reach(); k.Mode == "literal" || lo == k.PhotoMin && hi == k.PhotoMax {
		return p
	}
	keyed := *p
	keyed.Lab = slices.Clone(p.Lab)
	offset, gain := k.line()
	for i := 0; i < len(keyed.Lab); i += 3 {
		l := float32(offset) + float32(gain)*keyed.Lab[i]
		keyed.Lab[i] = min(float32(k.PaintMax), max(float32(k.PaintMin), l))
	}
	return &keyed
}

// keyValues says how the picture's lightness is brought into what paint reaches.
// The fit is linear in L* and only ever narrows: a picture that paint can match
// is left as it is.
func keyValues(photoMin, photoMax float64, reach [2]float64, literal bool) ValueKey {
	k := ValueKey{Mode: "fit", PhotoMin: photoMin, PhotoMax: photoMax, PaintMin: reach[0], PaintMax: reach[1]}
	if literal {
		k.Mode = "literal"
	}
	k.Text = k.words()
	return k
}

// reachOf returns the L* of the box's darkest and lightest mix.
func reachOf(paints []paint.Paint, f paint.Finish) [2]float64 {
	lo, hi := match.Reach(paints, f)
	return [2]float64{Round(lo, 2), Round(hi, 2)}
}

// lightness returns the picture's darkest and lightest L*, outliers aside.
func lightness(p *analyze.Picture) (lo, hi float64) {
	const bins = 1000 // a tenth of L*
	var count [bins + 1]int
	for i := 0; i < len(p.Lab); i += 3 {
		count[int(min(100, max(0, p.Lab[i]))*(bins/100)+0.5)]++
	}
	skip := int(outliers * float64(len(p.Lab)/3))
	return edge(count[:], skip, 0, 1) * 100 / bins, edge(count[:], skip, bins, -1) * 100 / bins
}

// edge walks from one end of a histogram until more than skip pixels are passed.
func edge(count []int, skip, from, step int) float64 {
	i := from
	for seen := count[i]; seen <= skip && i+step >= 0 && i+step < len(count); seen += count[i] {
		i += step
	}
	return float64(i)
}

// reach returns the range of L* that the aims are brought into.
func (k ValueKey) reach() (lo, hi float64) {
	return math.Max(k.PhotoMin, k.PaintMin), math.Min(k.PhotoMax, k.PaintMax)
}

// aim returns the colour to mix for a colour of the photo: its lightness keyed,
// a* and b* as they are.
func (k ValueKey) aim(c colour.Lab) colour.Lab {
	if k.Mode == "literal" {
		return c
	}
	offset, gain := k.line()
	c.L = math.Min(k.PaintMax, math.Max(k.PaintMin, offset+gain*c.L))
	return c
}

// line returns the straight line, offset + gain × L*, that brings the photo's
// lightness into reach.
func (k ValueKey) line() (offset, gain float64) {
	lo, hi := k.reach()
	span := k.PhotoMax - k.PhotoMin
	if span <= 0 || hi <= lo {
		return 0, 1
	}
	gain = (hi - lo) / span
	return lo - gain*k.PhotoMin, gain
}

// steps returns how far the key moves the photo's darkest and lightest, in
// Munsell value steps.
func (k ValueKey) steps() (dark, light float64) {
	at := func(l float64) float64 {
		return colour.ValueOf(k.aim(colour.Lab{L: l}).L) - colour.ValueOf(l)
	}
	return at(k.PhotoMin), at(k.PhotoMax)
}

func (k ValueKey) words() string {
	span := fmt.Sprintf("The photo runs from value %.1f to %.1f; this box reaches %.1f to %.1f.",
		colour.ValueOf(k.PhotoMin), colour.ValueOf(k.PhotoMax), colour.ValueOf(k.PaintMin), colour.ValueOf(k.PaintMax))
	dark, light := k.steps()
	switch {
	case k.Mode == "literal":
		return span + " Values are taken as photographed; what the box cannot reach is said at each mix."
	case math.Abs(dark) < 0.05 && math.Abs(light) < 0.05:
		return span + " The box covers the photo, so no value was moved."
	}
	return span + fmt.Sprintf(" Values are fitted, evenly in L*: the darkest is %s, the lightest is %s.", moved(dark), moved(light))
}

// moved says a shift in value steps in words.
func moved(steps float64) string {
	switch {
	case math.Abs(steps) < 0.05:
		return "left as it is"
	case steps > 0:
		return fmt.Sprintf("raised by %.1f of a value step", steps)
	}
	return fmt.Sprintf("lowered by %.1f of a value step", -steps)
}
