package answer

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// tagForm is how a plan names its colours: A1.
var tagForm = regexp.MustCompile(`^[A-Za-z]{1,2}[0-9]{1,3}$`)

// planned is a colour of a plan.
type planned struct {
	aim  colour.Lab
	pile match.Pile // its recipe; none where it has none
}

// findAim returns the aim that a text means: a colour of the plan by its tag, which
// comes with its recipe as a pile, else a colour as colour.Parse reads it.
func findAim(text, planFile string, owned []paint.Paint) (p planned, from string, err error) {
	text = strings.TrimSpace(text)
	if tagForm.MatchString(text) {
		p, err = readPlanned(planFile, strings.ToUpper(text), owned)
		if err == nil {
			return p, strings.ToUpper(text), nil
		}
		if neutral, bad := colour.Parse(text); bad == nil { // N5 is a gray as well
			return planned{aim: neutral}, text, nil
		}
		return p, text, err
	}
	if p.aim, err = colour.Parse(text); err != nil {
		return p, text, plan.Misused(fmt.Errorf("--aim: %w, or a tag of the plan such as A1", err))
	}
	if err = possible(p.aim); err != nil {
		return p, text, plan.Misused(fmt.Errorf("--aim: %s %w", text, err))
	}
	return p, text, nil
}

// notQuite is the CIEDE2000 by which an aim may be past what a surface can be, for the
// rounding of notations.
const notQuite = 1

// possible is an error where no surface can have a colour under daylight, which says what
// the strongest one towards it is.
func possible(aim colour.Lab) error {
	r := aim.Reflectance()
	if reached := r.Lab(); colour.DeltaE00(reached, aim) > notQuite {
		return fmt.Errorf("is stronger than any surface can be; the strongest towards it is about %s", reached.Munsell())
	}
	return nil
}

// mostTags is how many of a plan's tags an error lists.
const mostTags = 12

// readPlanned reads one colour of a plan.
func readPlanned(file, tag string, owned []paint.Paint) (p planned, err error) {
	read, err := readPlan(file, tag)
	if err != nil {
		return p, err
	}
	var tags []string
	for _, r := range read.Regions {
		for _, c := range r.Colours {
			if c.ID == tag {
				return c.planned(file, owned)
			}
			tags = append(tags, c.ID)
		}
	}
	switch n := len(tags); {
	case n == 0:
		return p, plan.Misused(fmt.Errorf("--aim: %s has no colours at all, so none is %s; make it anew with tonewright plan PHOTO --json plan.json", file, tag))
	case n > mostTags:
		tags = append(tags[:mostTags], fmt.Sprintf("and %d more", n-mostTags))
	}
	return p, plan.Misused(fmt.Errorf("--aim: %s has no colour %s; it has %s", file, tag, strings.Join(tags, ", ")))
}

func (c planColour) planned(file string, owned []paint.Paint) (p planned, err error) {
	if len(c.AimLab) != 3 || slices.Contains(c.AimLab, nil) {
		return p, fmt.Errorf("%s: %s has no aim_lab of three numbers; make the plan anew with tonewright plan PHOTO --json plan.json", file, c.ID)
	}
	p.aim, err = colour.Parse(fmt.Sprintf("lab(%.3f, %.3f, %.3f)", *c.AimLab[0], *c.AimLab[1], *c.AimLab[2]))
	if err != nil {
		return p, fmt.Errorf("%s: %s: %w", file, c.ID, err)
	}
	if c.Recipe == nil || len(c.Recipe.Parts) == 0 {
		return p, nil
	}
	var words []string
	for _, part := range c.Recipe.Parts { // parts is in parts of small amounts too; count and measure only word it
		words = append(words, part.Paint+" "+strconv.FormatFloat(part.Parts, 'f', -1, 64))
	}
	if p.pile, err = match.ReadPile(owned, strings.Join(words, ", ")); err != nil {
		return p, fmt.Errorf("%s: %s: %w", file, c.ID, err)
	}
	return p, nil
}
