package answer

import (
	"fmt"
	"path/filepath"
	"slices"

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
	Verdict  string      `json:"verdict"` // right, off (no pile was told), add, anew, short, or again: the photo is not to be gone by
	Advice   string      `json:"advice"`  // the verdict in a sentence or two
	Pile     []plan.Part `json:"pile"`
	PileFrom string      `json:"pile_from"` // how the pile is known, in words

	Add    []Addition   `json:"add"`              // empty where nothing is to be added
	Then   *Then        `json:"then,omitempty"`   // with what is added
	Mended *Mended      `json:"mended,omitempty"` // where it is better to start again: how near adding would come
	Fresh  *plan.Recipe `json:"fresh,omitempty"`  // a new pile, where it is better (anew) or may be (short)
	Keep   float64      `json:"keep"`             // of the old pile, as a share of the fresh paint

	Learned  []Learned `json:"learned"`       // of the tubes in the piles
	Earlier  int       `json:"earlier"`       // rounds of any aim that it was learned from, this one aside
	Round    int       `json:"round_for_aim"` // 1 is the first
	Logged   bool      `json:"logged"`        // whether the round went into the log; not where the verdict is again
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

// Mended is what adding would do to a pile that is better mixed anew.
type Mended struct {
	Add  []Addition `json:"add"`
	Then Then       `json:"then"`
}

// Learned is how a tube differs from the typical one of its name.
type Learned struct {
	Paint    string  `json:"paint"`
	Name     string  `json:"name"`
	Strength float64 `json:"strength"` // 1 is as strong
	Scatter  float64 `json:"scatter"`
	Shift    float64 `json:"shift_nm"` // of its absorption, positive towards long waves
	Hue      string  `json:"hue"`      // what that does to its tints: "a little towards green"; "" where it is not seen
	Far      bool    `json:"far"`      // farther than tubes of one name stray: it may be another paint, or other parts
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
	BoxNote    string  // to be said with the warnings; "" is none: see SwatchBox
	Log        *Rounds // gets the new round
	Date       string  // YYYY-MM-DD
	Version    string
}

// SwatchFor measures a swatch and says what to do with its pile. The round is put into
// the log, unless the photo is not to be gone by.
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
	read, err := measure(opt)
	if err != nil {
		return nil, err
	}
	now := round{date: opt.Date, aimed: aimed, aim: wanted.aim, photo: filepath.Base(opt.Photo), measured: read.swatch.Lab, spread: read.swatch.Spread}
	earlier := opt.Log.before(now)
	a := &Swatch{
		Made: made(opt.Version), Photo: opt.Photo, Box: opt.Box.Name, Warnings: append([]string{}, read.warnings...),
		Aim: Aim{Look: look(wanted.aim), From: aimed}, Measured: look(now.measured), Spread: plan.Round(now.spread, 1),
		Round: 1 + countOf(earlier, wanted.aim), Add: []Addition{}, Learned: []Learned{},
	}
	if opt.BoxNote != "" {
		a.Warnings = append(a.Warnings, opt.BoxNote)
	}
	if text := unknownText(earlier, a.Box); text != "" {
		a.Warnings = append(a.Warnings, text)
	}
	now.pile.Pile, a.PileFrom = pileNow(typed, earlier, wanted)
	a.Pile = plan.PartsOf(now.pile.Pile)
	a.judge(&now, read, learnable(earlier), opt.Box.Paints)
	if a.Logged = a.Verdict != string(match.Again); a.Logged {
		opt.Log.add(now)
	}
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
	switch i := lastOf(earlier, wanted.aim); {
	case i < 0:
	case earlier[i].then.unread != "":
		return match.Pile{}, "not told: the log's last one has a paint that is not known here"
	case len(earlier[i].then.Paints) > 0:
		return earlier[i].then.Pile, "as the log has it after the advice of " + earlier[i].date + "; if it is another, say so with --pile"
	}
	if len(wanted.pile.Paints) > 0 {
		return wanted.pile, "the plan's recipe; if you mixed another, say so with --pile"
	}
	return match.Pile{}, "not told"
}

// judge fills in what the swatch misses and what to do, and into the round what came of
// it.
func (a *Swatch) judge(now *round, read reading, earlier []match.Round, owned []paint.Paint) {
	last := match.Round{Pile: now.pile.Pile, Measured: now.measured, Spread: now.spread}
	c := match.Judge(last, now.aim)
	switch {
	case len(read.useless) > 0:
		c.Verdict = match.Again
		a.Warnings = slices.Concat(read.useless[1:], a.Warnings)
	case len(now.pile.Paints) > 0:
		rounds := append(earlier, last)
		c = match.Correct(owned, rounds, now.aim)
		a.Earlier = len(earlier)
		a.learned(c.Tubes, rounds)
	}
	a.Verdict, a.DeltaE, a.Differs, a.Keep = string(c.Verdict), plan.Round(c.DeltaE, 1), differsOf(c.Difference), c.Keep
	a.fill(c, owned)
	a.Advice = a.adviceText(c, read.useless)
	if text := a.doubt(c); text != "" {
		a.Warnings = append(a.Warnings, text)
	}
	now.deltaE, now.advice, now.then.Pile = c.DeltaE, a.Advice, c.After
	if c.Verdict == match.Anew {
		now.then.Pile = recipePile(*c.Fresh, owned) // of the fresh paint alone: what is kept of the old pile is little, and for the painter to choose
	}
}

// fill sets what to add or to mix anew.
func (a *Swatch) fill(c match.Correction, owned []paint.Paint) {
	for _, add := range c.Additions {
		a.Add = append(a.Add, Addition{add.Paint.ID, add.Paint.Name, add.Count, string(add.Measure), plan.Round(add.Parts, 4), add.String()})
	}
	if len(a.Add) > 0 {
		a.Then = &Then{look(c.Lab), plan.Round(c.Remaining, 1), plan.PartsOf(c.After)}
	}
	if c.Fresh != nil {
		fresh := plan.RecipeOf(*c.Fresh, owned, "")
		a.Fresh = &fresh
	}
	if c.Verdict == match.Anew && a.Then != nil {
		a.Mended = &Mended{a.Add, *a.Then}
		a.Add, a.Then = []Addition{}, nil
	}
}

// recipePile is the pile that a recipe makes of the paints it is from.
func recipePile(r match.Recipe, paints []paint.Paint) (p match.Pile) {
	for _, part := range r.Parts {
		p.Paints, p.Parts = append(p.Paints, paints[part.Paint]), append(p.Parts, part.Parts)
	}
	return p
}

func differsOf(d match.Difference) Differs {
	return Differs{plan.Round(d.Value, 1), plan.Round(d.Chroma, 1), plan.Round(d.Hue, 0), d.Words}
}
