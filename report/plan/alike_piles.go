// Piles as a painter's eye has them on the palette, and what tells two apart.

package plan

import (
	"fmt"
	"math"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
)

// eye is a sight that is not full, and the white that tints are made with; nil for a
// box without one.
type eye struct {
	sight colour.Sight
	white *paint.Paint
}

// dab is a mix or a tube; of is empty where its paints are not in the box.
type dab struct {
	tag, name string
	of        match.Pile // 1 in all
	share     float64    // of the panel, 0-1; of a tube, of all the paint laid
	lab, seen colour.Lab
}

func (p *dab) value() float64     { return colour.ValueOf(p.lab.L) }
func (p *dab) seenValue() float64 { return colour.ValueOf(p.seen.L) }

// dabsOf returns the mixes of the plan, each once, in order.
func (e *eye) dabsOf(regions []Region, paints []paint.Paint) []dab {
	var piles []dab
	at := map[string]int{}
	for _, r := range regions {
		for _, c := range r.Colours {
			if i, again := at[c.SameAs]; again {
				piles[i].share += c.PanelShare
				continue
			}
			at[c.ID] = len(piles)
			lab := colour.Lab{L: c.Recipe.Lab[0], A: c.Recipe.Lab[1], B: c.Recipe.Lab[2]}
			piles = append(piles, dab{
				tag: c.ID, name: c.ID, of: knifed(c.Recipe.Parts, paints), share: c.PanelShare, lab: lab, seen: e.sight.See(lab),
			})
		}
	}
	return piles
}

// knifed returns a recipe as a pile of 1 in all; empty where a paint is not known.
func knifed(parts []Part, paints []paint.Paint) (of match.Pile) {
	all := 0.0
	for _, part := range parts {
		all += part.Parts
	}
	for _, part := range parts {
		i := indexOf(paints, part.Paint)
		if i < 0 {
			return match.Pile{}
		}
		of.Paints, of.Parts = append(of.Paints, paints[i]), append(of.Parts, part.Parts/all)
	}
	return of
}

func indexOf(paints []paint.Paint, id string) int {
	for i := range paints {
		if paints[i].ID == id {
			return i
		}
	}
	return -1
}

// tubesIn returns the tubes of the box that the piles are mixed from, by how much of all
// the paint they are.
func (e *eye) tubesIn(piles []dab, paints []paint.Paint) []dab {
	shares := make([]float64, len(paints))
	for _, p := range piles {
		for i, of := range p.of.Paints {
			shares[indexOf(paints, of.ID)] += p.share * p.of.Parts[i]
		}
	}
	var tubes []dab
	for i, p := range paints {
		if shares[i] > 0 {
			lab := p.Masstone()
			of := match.Pile{Paints: []paint.Paint{p}, Parts: []float64{1}}
			tubes = append(tubes, dab{tag: p.ID, name: p.Name, of: of, share: shares[i], lab: lab, seen: e.sight.See(lab)})
		}
	}
	return tubes
}

// tintsOf returns the tubes in white; nil for a box without one.
func (e *eye) tintsOf(tubes []dab) []dab {
	if e.white == nil {
		return nil
	}
	tints := slices.Clone(tubes)
	for i := range tints {
		tints[i].lab = inWhite(tubes[i].of, *e.white)
		tints[i].seen = e.sight.See(tints[i].lab)
	}
	return tints
}

// Differences that an eye can go by. Ours: in value a third of a step where two strokes
// lie side by side, three times what is just seen, and half a step between tests made
// apart; in strength 8 of C*, about a chip of the Munsell book.
const (
	sideBySide = 0.3
	tested     = 0.5
	stronger   = 8
)

// tellPiles says what tells two mixes apart without hue, the surest first.
func (e *eye) tellPiles(a, b *dab, _ bool) (kind, how string) {
	if kind, how = e.test(a, b); kind == "" {
		return "tag", "Only the tags: keep " + a.name + " and " + b.name + " apart on the palette, each by its tag."
	}
	return kind, how
}

// tellTubes says what tells two tubes apart without hue, that look alike as they come
// or, if tinted, in white.
func (e *eye) tellTubes(a, b *dab, tinted bool) (kind, how string) {
	const labels = "Only the labels: set %s and %s apart in the box."
	if !tinted {
		if kind, how = e.test(a, b); kind == "" {
			return "tag", fmt.Sprintf(labels, a.name, b.name)
		}
		return kind, how
	}
	alike := fmt.Sprintf("Alike in white, 1 part to %d. ", paint.TintParts)
	if d := Round(a.seenValue()-b.seenValue(), 1); math.Abs(d) >= sideBySide {
		dark, light := order(a, b, d)
		return "value", alike + "As they come from the tube " + byEye(dark, light, math.Abs(d))
	}
	return "tag", alike + fmt.Sprintf(labels, a.name, b.name)
}

// test goes through what tells two piles apart; "" where nothing does.
func (e *eye) test(a, b *dab) (kind, how string) {
	if d := Round(a.seenValue()-b.seenValue(), 1); math.Abs(d) >= sideBySide {
		dark, light := order(a, b, d)
		return "value", "Side by side " + byEye(dark, light, math.Abs(d))
	}
	if len(a.of.Paints) == 0 || len(b.of.Paints) == 0 {
		return "", ""
	}
	if e.white != nil {
		if how = e.tint(a, b); how != "" {
			return "tint", how
		}
	}
	if how = e.overBlack(a, b); how != "" {
		return "opacity", how
	}
	return "", ""
}

// byEye says by how much one of two looks darker to the eye. Printed values are those
// of full sight, and are told where they differ by more than rounding does.
func byEye(dark, light *dab, by float64) string {
	looks := fmt.Sprintf("%s looks darker to you than %s by %.1f value", dark.name, light.name, by)
	switch printed := Round(Round(light.value(), 1)-Round(dark.value(), 1), 1); {
	case Round(math.Abs(printed-by), 1) <= 0.1:
		return looks + "."
	case printed > 0:
		return looks + fmt.Sprintf("; as printed it is by %.1f.", printed)
	case printed < 0:
		return looks + fmt.Sprintf("; as printed it is lighter by %.1f.", -printed)
	}
	return looks + "; as printed they are equal."
}

// order returns the darker pile first; d is a's value less b's.
func order(a, b *dab, d float64) (dark, light *dab) {
	if d > 0 {
		return b, a
	}
	return a, b
}

// tint says what a dab of each in white shows to the eye; "" where it shows too little.
func (e *eye) tint(a, b *dab) string {
	tints := [2]colour.Lab{inWhite(a.of, *e.white), inWhite(b.of, *e.white)}
	seen := [2]colour.Lab{e.sight.See(tints[0]), e.sight.See(tints[1])}
	if e.sight.Apart(tints[0], tints[1]) <= nearlyAlike {
		return ""
	}
	start := fmt.Sprintf("Mix a dab of each with white, 1 part to %d: ", paint.TintParts)
	names := [2]string{tints[0].Munsell().Name(), tints[1].Munsell().Name()}
	toOthers := fmt.Sprintf(" To others %s is now %s, %s %s.", a.name, names[0], b.name, names[1])
	if names[0] == names[1] {
		toOthers = ""
	}
	if d := Round(colour.ValueOf(seen[0].L)-colour.ValueOf(seen[1].L), 1); math.Abs(d) >= tested {
		dark, light := order(a, b, d)
		return start + fmt.Sprintf("%s comes out darker than %s, by %.1f value.", dark.name, light.name, math.Abs(d)) + toOthers
	}
	if d := Round(seen[0].Chroma()-seen[1].Chroma(), 1); math.Abs(d) >= stronger {
		gray, strong := order(a, b, d)
		return start + fmt.Sprintf("%s turns grayer, %s keeps more colour.", gray.name, strong.name) + toOthers
	}
	return ""
}

// inWhite returns the colour of a pile of 1 in all in paint.TintParts of white.
func inWhite(p match.Pile, white paint.Paint) colour.Lab {
	paints := append(p.Paints[:len(p.Paints):len(p.Paints)], white)
	parts := append(p.Parts[:len(p.Parts):len(p.Parts)], paint.TintParts)
	k, s := paint.Mix(paints, parts)
	r := paint.Thick(&k, &s, paint.Gloss)
	return r.Lab()
}

// blackLine is what a line of black paint gives back. Ours: a dry black's, L* 12.
const blackLine = 0.014

// overBlack says what one brushed coat of each over a line of black shows to the eye;
// "" where it shows too little.
func (e *eye) overBlack(a, b *dab) string {
	over := func(p *dab) float64 {
		var line colour.Spectrum
		for i := range line {
			line[i] = blackLine
		}
		k, s := p.of.Optics()
		r := paint.Film(&k, &s, paint.Coat, &line, paint.Gloss)
		return colour.ValueOf(e.sight.See(r.Lab()).L)
	}
	d := Round(over(a)-over(b), 1)
	if math.Abs(d) < tested {
		return ""
	}
	clear, hiding := order(a, b, d)
	return fmt.Sprintf("Brush a thin coat of each over a line of black: over it %s is darker than %s, by %.1f value, since it hides less.", clear.name, hiding.name, math.Abs(d))
}
