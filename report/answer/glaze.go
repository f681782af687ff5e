package answer

import (
	"fmt"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// Glaze is what glazes do over an under-layer: for an aim, or of one paint.
type Glaze struct {
	Made
	Over     UnderLayer   `json:"over"`
	Aim      *Aim         `json:"aim,omitempty"`
	Bare     float64      `json:"bare_delta_e"` // of the under-layer to the aim; 0 without one
	Best     []BestGlaze  `json:"best"`         // for the aim, nearest first
	Tube     *Named       `json:"tube,omitempty"`
	Scumbles bool         `json:"scumbles"` // the paint to try is too opaque for a glaze
	Tried    []TriedGlaze `json:"tried"`    // of the paint, strongest first
	Warnings []string     `json:"warnings"` // what no glaze can do here
	Box      string       `json:"box"`
}

// UnderLayer is what the glaze goes over.
type UnderLayer struct {
	Look
	From  string      `json:"from"`            // as typed
	Mix   []plan.Part `json:"mix,omitempty"`   // the mix of the box whose reflectance stands for a colour
	Guess bool        `json:"guess,omitempty"` // no mix is near: the smoothest reflectance of the colour stands for it
}

// TriedGlaze is a paint thinned with medium over the under-layer.
type TriedGlaze struct {
	Medium int `json:"medium"` // parts by volume to one of paint
	Coats  int `json:"coats"`
	Look
	Lifts float64 `json:"over_value_shift"`  // Munsell, against the under-layer
	Gains float64 `json:"over_chroma_shift"` // the same
	Milky bool    `json:"milky"`
	Fat   bool    `json:"fat"` // mostly medium: a film that dries slowly
}

// BestGlaze is a glaze for an aim.
type BestGlaze struct {
	Tube Named `json:"tube"`
	TriedGlaze
	DeltaE      float64 `json:"delta_e"`
	ValueShift  float64 `json:"value_shift"`  // Munsell, against the aim
	ChromaShift float64 `json:"chroma_shift"` // the same
	Note        string  `json:"note"`
}

// GlazeOptions asks for glazes: for an aim, or of a paint to try.
type GlazeOptions struct {
	Over    string // a colour in any form of colour.Parse, or a mix as match.ParsePile reads it
	Aim     string // a colour
	Try     string // a paint
	Box     paint.Box
	Version string
}

// GlazeFor finds glazes for an aim, or tries a paint. Layers are glossy, as glazes are.
// A plan.UsageError is a mistake in opt; there is no other error.
func GlazeFor(opt GlazeOptions) (*Glaze, error) {
	a, err := glazeFor(opt)
	if err != nil {
		return nil, plan.Misused(err)
	}
	return a, nil
}

func glazeFor(opt GlazeOptions) (*Glaze, error) {
	if (opt.Aim == "") == (opt.Try == "") {
		return nil, fmt.Errorf("glaze wants --aim with a colour, or --try with a paint, and not both")
	}
	over, under, err := underLayer(opt.Over, opt.Box)
	if err != nil {
		return nil, fmt.Errorf("--over: %w", err)
	}
	a := &Glaze{Made: made(opt.Version), Over: over, Best: []BestGlaze{}, Tried: []TriedGlaze{}, Warnings: []string{}, Box: opt.Box.Name}
	if opt.Try != "" {
		return a, a.try(opt, &under)
	}
	return a, a.advise(opt, &under)
}

// advise fills in the glazes for the aim.
func (a *Glaze) advise(opt GlazeOptions, under *colour.Spectrum) error {
	wanted, err := colour.Parse(opt.Aim)
	if err != nil {
		return fmt.Errorf("--aim: %w", err)
	}
	a.Aim = &Aim{Look: look(wanted), From: opt.Aim}
	advice := match.AdviseGlaze(opt.Box.Paints, under, wanted, paint.Gloss)
	a.Bare = plan.Round(advice.Bare, 2)
	a.Warnings = append(a.Warnings, advice.Warnings...)
	for _, g := range advice.Best {
		a.Best = append(a.Best, BestGlaze{
			namedOf(g.Paint, opt.Box), triedOf(g.Glaze), plan.Round(g.DeltaE, 2), plan.Round(g.ValueShift, 2), plan.Round(g.ChromaShift, 1), g.Note,
		})
	}
	return nil
}

// try fills in what the paint does.
func (a *Glaze) try(opt GlazeOptions, under *colour.Spectrum) error {
	p, err := paint.Find(opt.Box.Paints, opt.Try)
	if err != nil {
		return fmt.Errorf("--try: %w", err)
	}
	tube := namedOf(p, opt.Box)
	a.Tube, a.Scumbles = &tube, !match.Glazes(p)
	for _, g := range match.TryGlaze(p, under, paint.Gloss) {
		a.Tried = append(a.Tried, triedOf(g))
	}
	return nil
}

func triedOf(g match.Glaze) TriedGlaze {
	return TriedGlaze{g.Medium, g.Coats, look(g.Lab), plan.Round(g.Lifts, 2), plan.Round(g.Gains, 1), g.Milky(), g.Fat()}
}

// underLayer reads a colour or a mix, and returns its reflectance as seen dry: that of
// the mix; for a colour that of the nearest mix of the box, or the smoothest one of the
// colour where no mix is near.
func underLayer(text string, box paint.Box) (UnderLayer, colour.Spectrum, error) {
	lab, err := colour.Parse(text)
	if err != nil {
		pile, bad := match.ParsePile(box.Paints, text)
		switch {
		case bad == nil:
			r := thick(pile)
			return UnderLayer{Look: look(r.Lab()), From: text}, r, nil
		case strings.ContainsAny(text, "#/("):
			return UnderLayer{}, colour.Spectrum{}, err
		}
		return UnderLayer{}, colour.Spectrum{}, fmt.Errorf("%q is no colour, such as 5YR 6/8, and no mix of paints: %w", text, bad)
	}
	best := match.Recipes(box.Paints, []colour.Lab{lab}, match.Options{Alternatives: -1})[0][0]
	if best.DeltaE > match.Near {
		return UnderLayer{Look: look(lab), From: text, Guess: true}, lab.Reflectance(), nil
	}
	r := thick(recipePile(best, box.Paints))
	return UnderLayer{Look: look(r.Lab()), From: text, Mix: plan.RecipeOf(best, box.Paints, "").Parts}, r, nil
}

// thick returns the reflectance of a pile laid so that nothing shows through.
func thick(p match.Pile) colour.Spectrum {
	k, s := p.Optics()
	return paint.Thick(&k, &s, paint.Gloss)
}
