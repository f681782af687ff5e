package answer

import (
	"fmt"
	"slices"

	"tonewright/match"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// String is a row of mixes from one paint to another.
type String struct {
	Made
	From    Named        `json:"from"`
	To      Named        `json:"to"`
	White   *Named       `json:"white,omitempty"` // that the tints are made with
	Box     string       `json:"box"`
	Finish  string       `json:"finish"`
	Even    float64      `json:"even_delta_e"` // from step to step, were amounts free
	Steps   []StringStep `json:"steps"`
	Values  [2]float64   `json:"values"`  // Munsell, the darkest and the lightest of the steps
	Through []string     `json:"through"` // hue families, gray, black and white, in order
	Note    string       `json:"note"`
}

// Named is a paint by its names, and whether it is in the box.
type Named struct {
	ID    string `json:"paint"`
	Name  string `json:"name"`
	Basis string `json:"basis"`
	Owned bool   `json:"owned"`
}

// StringStep is one mix of a string.
type StringStep struct {
	First  Amount `json:"first"` // of the paint it goes from
	Second Amount `json:"second"`
	Look
	ToNext float64 `json:"delta_e_to_next"`
	Dulls  float64 `json:"dulls"` // Munsell chroma under the straight path
	Muddy  bool    `json:"muddy"`
	Tints  []Tint  `json:"tints"`
}

// Tint is a step's pile with white.
type Tint struct {
	Value int    `json:"value"`
	Pile  Amount `json:"pile"`
	White Amount `json:"white"`
	Look
}

// Amount is how much goes in: whole parts, or a number of touches or specks.
type Amount struct {
	Count   int     `json:"count"`
	Measure string  `json:"measure,omitempty"` // "touch" or "speck" where it is no whole parts
	Parts   float64 `json:"parts"`             // its share is parts over the sum of them all
}

// BoxWhite stands for the white of the box, see paint.TintingWhite.
const BoxWhite = "box"

// StringOptions asks for a string; the zero value of each field is the good default.
type StringOptions struct {
	Paints   []string // two, or one with White
	White    string   // a paint, BoxWhite, or "" for no tints
	Steps    int      // 0 for the default
	Lightest int      // value that tints go up to; 0 for the default
	Finish   paint.Finish
	Box      paint.Box
	Version  string
}

// StringFor lays out a string of two paints, or of white and one paint.
// A plan.UsageError is a mistake in opt; there is no other error.
func StringFor(opt StringOptions) (*String, error) {
	ends, white, err := opt.paints()
	if err != nil {
		return nil, plan.Misused(err)
	}
	laid, err := match.StringOf(ends[0], ends[1], match.StringOptions{Steps: opt.Steps, White: white, Lightest: opt.Lightest, Finish: opt.Finish})
	if err != nil {
		return nil, plan.Misused(err)
	}
	a := &String{
		Made: made(opt.Version), From: namedOf(ends[0], opt.Box), To: namedOf(ends[1], opt.Box), Box: opt.Box.Name, Finish: opt.Finish.String(),
		Even: plan.Round(laid.Even, 2), Steps: []StringStep{}, Through: laid.Through, Note: laid.Note(),
	}
	if white != nil {
		tube := namedOf(*white, opt.Box)
		a.White = &tube
	}
	values := []float64{}
	for _, step := range laid.Steps {
		a.Steps = append(a.Steps, stepOf(step))
		values = append(values, step.Munsell.Value)
	}
	a.Values = [2]float64{plan.Round(slices.Min(values), 1), plan.Round(slices.Max(values), 1)}
	return a, nil
}

// paints returns the two ends of the string and the white to tint with.
func (o StringOptions) paints() (ends [2]paint.Paint, white *paint.Paint, err error) {
	var found []paint.Paint
	for _, name := range o.Paints {
		p, err := paint.Find(o.Box.Paints, name)
		if err != nil {
			return ends, nil, err
		}
		found = append(found, p)
	}
	if o.White != "" {
		p, err := o.white()
		if err != nil {
			return ends, nil, fmt.Errorf("--white: %w", err)
		}
		white = &p
	}
	switch {
	case len(found) == 2:
		return [2]paint.Paint(found), white, nil
	case len(found) == 1 && white != nil:
		return [2]paint.Paint{*white, found[0]}, nil, nil
	}
	return ends, nil, fmt.Errorf("a string is of two paints, or of one with --white; this names %d", len(found))
}

// white returns the white asked for.
func (o StringOptions) white() (paint.Paint, error) {
	if o.White == BoxWhite {
		return paint.TintingWhite(o.Box.Paints), nil
	}
	p, err := paint.Find(o.Box.Paints, o.White)
	if err == nil && !p.White() {
		err = fmt.Errorf("%s is no white; name a white, or leave the name out for the white of the box", p.Name)
	}
	return p, err
}

func namedOf(p paint.Paint, box paint.Box) Named {
	return Named{p.ID, p.Name, p.Basis, owns(box, p)}
}

func owns(box paint.Box, p paint.Paint) bool {
	return slices.ContainsFunc(box.Paints, func(q paint.Paint) bool { return q.ID == p.ID })
}

func stepOf(step match.StringStep) StringStep {
	s := StringStep{
		First: amountOf(step.First), Second: amountOf(step.Second), Look: look(step.Lab),
		ToNext: plan.Round(step.ToNext, 2), Dulls: plan.Round(step.Dulls, 1), Muddy: step.Muddy, Tints: []Tint{},
	}
	for _, t := range step.Tints {
		s.Tints = append(s.Tints, Tint{t.Value, amountOf(t.Pile), amountOf(t.White), look(t.Lab)})
	}
	return s
}

func amountOf(p match.Portion) Amount {
	return Amount{p.Count, string(p.Measure), plan.Round(p.Parts, 6)}
}
