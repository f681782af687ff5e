package answer

import (
	"fmt"
	"image"
	"path/filepath"
	"strings"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// Swatch is whether a pile is right, and what to add to it.
type Swatch struct {
	Made
	Photo    string      `json:"photo"`
	Aim      Aim         `json:"aim"`
	Measured Look        `json:"measured"`
	Spread   float64     `json:"spread"` // median CIEDE2000 of the swatch's pixels from their middle
	DeltaE   float64     `json:"delta_e"`
	Differs  Differs     `json:"difference"`
	Verdict  string      `json:"verdict"` // right, off (no pile was told), add, anew or short
	Advice   string      `json:"advice"`  // the verdict in a sentence or two
	Pile     []plan.Part `json:"pile"`
	PileFrom string      `json:"pile_from"` // how the pile is known, in words

	Add   []Addition   `json:"add"`
	Then  *Then        `json:"then,omitempty"`  // with what is added
	Fresh *plan.Recipe `json:"fresh,omitempty"` // where it is better to start again
	Keep  float64      `json:"keep"`            // of the old pile, as a share of the fresh paint

	Learned  []Learned `json:"learned"`       // of the tubes in the piles
	Earlier  int       `json:"earlier"`       // rounds of any aim that it was learned from, this one aside
	Round    int       `json:"round_for_aim"` // 1 is the first
	Box      string    `json:"box"`
	Warnings []string  `json:"warnings"`
}

// Differs is how the swatch differs from the aim.
type Differs struct {
	Value  float64 `json:"value"`  // Munsell steps; positive is too light
	Chroma float64 `json:"chroma"` // Munsell steps; positive is too strong
	Hue    float64 `json:"hue"`    // Munsell hue steps of 100, positive from red towards yellow and on round; 0 where one is a gray
	Words  string  `json:"words"`
}

// Addition is an amount of a paint to add.
type Addition struct {
	Paint   string  `json:"paint"`
	Name    string  `json:"name"`
	Count   float64 `json:"count"`             // of parts, touches or specks
	Measure string  `json:"measure,omitempty"` // touch, 1/32 of the pile as it lies, or speck, 1/128; "" is parts
	Parts   float64 `json:"parts"`             // in the pile's parts
	Words   string  `json:"words"`
}

// Then is the pile with what is added.
type Then struct {
	Look
	DeltaE float64     `json:"delta_e"`
	Pile   []plan.Part `json:"pile"`
}

// Learned is how a tube differs from the typical one of its name.
type Learned struct {
	Paint    string  `json:"paint"`
	Name     string  `json:"name"`
	Strength float64 `json:"strength"` // 1 is as strong
	Scatter  float64 `json:"scatter"`
	Shift    float64 `json:"shift_nm"` // of its absorption, positive towards long waves
}

// SwatchOptions asks whether a pile is right. Photo, Card, Spot and Aim are wanted.
type SwatchOptions struct {
	Photo      string
	Card, Spot string // where the card and the swatch are, as analyze.ParseRect reads
	CardIs     string // gray, white, or a colour; "" is gray
	Aim        string // a tag of the plan, or a colour
	Pile       string // as match.ParsePile reads it; "": what the log or the plan says
	Plan       string // the plan's JSON
	Box        paint.Box
	Log        *Rounds // gets the new round
	Date       string  // YYYY-MM-DD
	Version    string
}

// SwatchFor measures a swatch and says what to do with its pile. The round is put into
// the log.
// A plan.UsageError is a mistake in opt; any other error is a file's.
func SwatchFor(opt SwatchOptions) (*Swatch, error) {
	wanted, aimed, err := findAim(opt.Aim, opt.Plan, opt.Box.Paints)
	if err != nil {
		return nil, err
	}
	typed, err := typedPile(opt)
	if err != nil {
		return nil, err
	}
	read, warnings, err := measure(opt)
	if err != nil {
		return nil, err
	}
	now := round{date: opt.Date, aimed: aimed, aim: wanted.aim, photo: filepath.Base(opt.Photo), measured: read.Lab, spread: read.Spread}
	now.deltaE = colour.DeltaE00(read.Lab, wanted.aim)
	earlier := opt.Log.before(now)
	a := &Swatch{
		Made: made(opt.Version), Photo: opt.Photo, Box: opt.Box.Name, Warnings: warnings,
		Aim: Aim{Look: look(wanted.aim), From: aimed}, Measured: look(read.Lab),
		Spread: plan.Round(read.Spread, 1), DeltaE: plan.Round(now.deltaE, 1), Differs: differsOf(match.Differ(read.Lab, wanted.aim)),
		Round: 1 + countOf(earlier, wanted.aim), Add: []Addition{}, Learned: []Learned{},
	}
	now.pile, a.PileFrom = pileNow(typed, earlier, wanted)
	a.Pile = partsOf(now.pile)
	now.then = a.advise(now, learnable(earlier), opt.Box.Paints)
	now.advice = a.Advice
	opt.Log.add(now)
	return a, nil
}

// typedPile reads the pile that was typed; none where none was.
func typedPile(opt SwatchOptions) (p match.Pile, err error) {
	if opt.Pile == "" {
		return p, nil
	}
	if p, err = match.ParsePile(opt.Box.Paints, opt.Pile); err != nil {
		return p, plan.Misused(fmt.Errorf("--pile: %w", err))
	}
	return p, nil
}

// pileNow returns the pile that was measured and how it is known: as typed, or the
// last one for the aim with the advice taken, or the plan's recipe.
func pileNow(typed match.Pile, earlier []round, wanted planned) (match.Pile, string) {
	if len(typed.Paints) > 0 {
		return typed, "as you gave it"
	}
	if i := lastOf(earlier, wanted.aim); i >= 0 && len(earlier[i].then.Paints) > 0 {
		return earlier[i].then, "as the log has it after the advice of " + earlier[i].date + "; if it is another, say so with --pile"
	}
	if len(wanted.pile.Paints) > 0 {
		return wanted.pile, "the plan's recipe; if you mixed another, say so with --pile"
	}
	return match.Pile{}, "not told"
}

// advise fills in what to do. It returns the pile if that is done.
func (a *Swatch) advise(now round, earlier []match.Round, owned []paint.Paint) match.Pile {
	if len(now.pile.Paints) == 0 {
		a.Verdict, a.Advice = "off", "Say with --pile what is in it, to be told what to add."
		if now.deltaE <= match.Right {
			a.Verdict, a.Advice = string(match.Leave), rightText
		}
		return now.pile
	}
	rounds := append(earlier, match.Round{Pile: now.pile, Measured: now.measured, Spread: now.spread})
	c := match.Correct(owned, rounds, now.aim)
	a.Earlier, a.Verdict, a.Keep = len(earlier), string(c.Verdict), c.Keep
	if c.Surprise > surprising {
		a.Warnings = append(a.Warnings, fmt.Sprintf("The pile is %.0f CIEDE2000 from what these paints and parts should give, which is more than tubes differ by: make sure that pile, card and rectangles are as told. If not, take this round out of the log, which later ones learn from.", c.Surprise))
	}
	for _, add := range c.Additions {
		a.Add = append(a.Add, Addition{add.Paint.ID, add.Paint.Name, add.Count, string(add.Measure), plan.Round(add.Parts, 4), add.String()})
	}
	for _, t := range c.Tubes {
		a.Learned = append(a.Learned, learnedOf(t, rounds))
	}
	if len(a.Add) > 0 {
		a.Then = &Then{look(c.Lab), plan.Round(c.Remaining, 1), partsOf(c.After)}
	}
	after := c.After
	if c.Fresh != nil {
		fresh := plan.RecipeOf(*c.Fresh, owned, "")
		a.Fresh = &fresh
		after = recipePile(*c.Fresh, owned) // of the fresh paint alone: what is kept of the old pile is little, and for the painter to choose
	}
	a.Advice = a.adviceText(c)
	return after
}

// surprising is the CIEDE2000 past which a pile is hardly what it is said to be. Ours:
// the piles of 1000 simulated painters, whose tubes differ by up to 30 %, were measured
// 7.3 off or less by 99 in 100, and 9.4 at most.
const surprising = 10

// recipePile is the pile that a recipe makes of the paints it is from.
func recipePile(r match.Recipe, paints []paint.Paint) (p match.Pile) {
	for _, part := range r.Parts {
		p.Paints, p.Parts = append(p.Paints, paints[part.Paint]), append(p.Parts, part.Parts)
	}
	return p
}

const rightText = "It is right: leave it as it is."

// adviceText says what to do.
func (a *Swatch) adviceText(c match.Correction) string {
	add := "Nothing that you own brings it nearer."
	if len(a.Add) > 0 {
		add = fmt.Sprintf("Add %s", match.ListAdditions(c.Additions))
	}
	switch c.Verdict {
	case match.Leave:
		return rightText
	case match.Add:
		return add + "."
	case match.Anew:
		return "Start again: to mend it would take more paint than there is in it. " + keepText(c.Keep)
	}
	if len(a.Add) > 0 {
		return fmt.Sprintf("These paints do not get it within %d CIEDE2000. Nearest: add %s.", match.Right, match.ListAdditions(c.Additions))
	}
	return add
}

// keepText says how much of the old pile a fresh one bears.
func keepText(keep float64) string {
	for _, share := range []struct {
		of   float64
		word string
	}{{0.5, "half"}, {0.25, "a quarter"}, {0.125, "an eighth"}, {0.0625, "a sixteenth"}} {
		if keep == share.of {
			return fmt.Sprintf("Of the old pile, up to %s as much as there is fresh paint may be stirred in.", share.word)
		}
	}
	return "Keep the old pile for something else."
}

func learnedOf(t match.Tube, rounds []match.Round) Learned {
	l := Learned{Paint: t.ID, Strength: plan.Round(t.Strength, 2), Scatter: plan.Round(t.Scatter, 2), Shift: plan.Round(t.Shift, 1)}
	for _, r := range rounds {
		for _, p := range r.Pile.Paints {
			if p.ID == t.ID {
				l.Name = p.Name
			}
		}
	}
	return l
}

func differsOf(d match.Difference) Differs {
	return Differs{plan.Round(d.Value, 1), plan.Round(d.Chroma, 1), plan.Round(d.Hue, 0), d.Words}
}

func partsOf(p match.Pile) []plan.Part {
	parts := []plan.Part{}
	for i, of := range p.Paints {
		parts = append(parts, plan.Part{Paint: of.ID, Name: of.Name, Parts: plan.Round(p.Parts[i], 4)})
	}
	return parts
}

// measure reads the swatch from the photo.
func measure(opt SwatchOptions) (analyze.Swatch, []string, error) {
	card, err := cardColour(opt.CardIs)
	if err != nil {
		return analyze.Swatch{}, nil, plan.Misused(fmt.Errorf("--card-is: %w", err))
	}
	photo, err := analyze.Open(opt.Photo, analyze.Limits{})
	if err != nil {
		return analyze.Swatch{}, nil, err
	}
	places := [2]image.Rectangle{}
	for i, flag := range []struct{ name, text string }{{"card", opt.Card}, {"swatch", opt.Spot}} {
		if places[i], err = analyze.ParseRect(flag.text, photo.Width, photo.Height); err != nil {
			return analyze.Swatch{}, nil, plan.Misused(fmt.Errorf("--%s: %w", flag.name, err))
		}
	}
	read, of, err := photo.Swatches(analyze.Card{Rect: places[0], Lab: card}, []analyze.Spot{{Name: "swatch", Rect: places[1]}})
	if err != nil {
		return analyze.Swatch{}, nil, err
	}
	warnings := append(append([]string{}, photo.Warnings...), of.Warnings...)
	return read[0], append(warnings, read[0].Warnings...), nil
}

// Lightness of the usual cards. Common practice, no source: a gray card gives back
// 18 % of the light; a white one is as its maker says, about L* 96.
const (
	grayCard  = 49.5
	whiteCard = 96
)

// cardColour reads what a card is.
func cardColour(text string) (colour.Lab, error) {
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "", "gray", "grey":
		return colour.Lab{L: grayCard}, nil
	case "white":
		return colour.Lab{L: whiteCard}, nil
	}
	c, err := colour.Parse(text)
	if err != nil {
		return c, fmt.Errorf("write gray, white, or the card's own colour: %w", err)
	}
	return c, nil
}
