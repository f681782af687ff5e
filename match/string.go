// A string: a row of mixes from one paint to another.

package match

import (
	"fmt"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// StringOptions says how to lay out a string; the zero value of each field is the
// good default.
type StringOptions struct {
	Steps    int          // mixes, the ends included, 3-15; 0 means 7
	White    *paint.Paint // to make tints of each step with; nil for none
	Lightest int          // the whole Munsell value up to which tints go, 1-9; 0 means 8
	Finish   paint.Finish
}

// String is a row of mixes from one paint to another.
type String struct {
	From, To paint.Paint
	Steps    []StringStep // from From alone to To alone, no two of them alike
	Even     float64      // the CIEDE2000 from each step to the next, were amounts free
	Through  []string     // hue families, "gray", "black" and "white" that it goes through, its ends' own first and last
}

// StringStep is one mix of a string.
type StringStep struct {
	First, Second Portion // of From and of To
	Lab           colour.Lab
	Munsell       colour.Munsell
	ToNext        float64 // CIEDE2000 to the next step; 0 at the last
	Dulls         float64 // Munsell chroma under the straight path between the ends; negative is over it
	Muddy         bool    // it has lost most of its chroma on the way; of a step nearly black, its tints have
	tintMuddy     bool    // its tints have; false where none are asked for
	Tints         []Tint  // by rising value
}

// Tint is a step's pile with white.
type Tint struct {
	Value       int     // the Munsell value it stands for
	Pile, White Portion // of the step's pile and of white
	Lab         colour.Lab
	Munsell     colour.Munsell
}

// Portion is how much of one thing goes into a pile.
type Portion struct {
	Count   int // of whole parts, touches or specks; 0 for none
	Measure Measure
	Parts   float64 // by volume, as in Part: a touch or a speck has the fraction that gives its share
}

// StringOf returns the string from one paint to another, spaced as evenly to the eye
// as a knife can. It fails where the two are too alike for so many steps, where white
// is already one of them, and where an option is out of range.
// Source: [Sharma2005] for what is even; mixing as [Duncan1940], see paint.Mix.
func StringOf(from, to paint.Paint, opt StringOptions) (String, error) {
	opt, err := opt.defaulted()
	if err != nil {
		return String{}, err
	}
	s := String{From: from, To: to}
	points := way(&from, &to, opt.Finish)
	s.Even = evenGap(points, opt.Steps)
	if s.Even < matches {
		return String{}, tooAlike(&from, &to, points, opt.Steps)
	}
	if opt.White != nil && (from.White() || to.White()) {
		return String{}, fmt.Errorf("a string that ends in white has its tints already; leave out the white to tint with")
	}
	s.Steps = layOut(&from, &to, opt.Steps, s.Even, opt.Finish)
	s.noteDulling(opt)
	s.Through = through(points)
	for i := range s.Steps {
		if opt.White != nil {
			s.Steps[i].Tints = s.tints(&s.Steps[i], opt)
		}
	}
	return s, nil
}

// How many steps a string may have. Ours: under 3 there is nothing between the ends,
// and past 15 the palette is full and most steps are told apart no more.
const (
	fewestSteps  = 3
	mostSteps    = 15
	defaultSteps = 7
)

const defaultLightest = 8 // ours: a pale tint that still shows its hue

func (o StringOptions) defaulted() (StringOptions, error) {
	if o.Steps == 0 {
		o.Steps = defaultSteps
	}
	if o.Lightest == 0 {
		o.Lightest = defaultLightest
	}
	if o.Steps < fewestSteps || o.Steps > mostSteps {
		return o, fmt.Errorf("%d steps is out of range: a string has %d to %d, its ends included", o.Steps, fewestSteps, mostSteps)
	}
	if o.Lightest < 1 || o.Lightest > 9 {
		return o, fmt.Errorf("value %d is out of range: tints go up to a whole value of 1 to 9", o.Lightest)
	}
	return o, nil
}

// tooAlike says how many steps two paints have room for.
func tooAlike(from, to *paint.Paint, points []waypoint, steps int) error {
	for fewer := steps - 1; fewer >= fewestSteps; fewer-- {
		if evenGap(points, fewer) >= matches {
			return fmt.Errorf("%s and %s are too alike for %d steps that can be told apart; ask for %d", from.Name, to.Name, steps, fewer)
		}
	}
	return fmt.Errorf("%s and %s are too alike for a string; take two paints further apart", from.Name, to.Name)
}
