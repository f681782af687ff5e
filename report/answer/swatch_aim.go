package answer

import (
	"encoding/json"
	"fmt"
	"os"
	"regexp"
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
	return p, text, nil
}

// planColour is what is read of a colour in a plan's JSON.
type planColour struct {
	ID     string      `json:"id"`
	AimLab plan.Triple `json:"aim_lab"`
	Recipe *struct {
		Parts []plan.Part `json:"parts"`
	} `json:"recipe"`
}

// planRead is what is read of a plan's JSON.
type planRead struct {
	Tool   string   `json:"tool"`
	Box    plan.Box `json:"box"`
	Paints []struct {
		ID    string `json:"paint"`
		Basis string `json:"basis"`
	} `json:"paints"`
	Regions []struct {
		Colours []planColour `json:"colours"`
	} `json:"regions"`
}

// readPlan reads a plan's JSON; what it is wanted for ends the error of a file that is
// not there.
func readPlan(file, wanted string) (read planRead, err error) {
	text, err := os.ReadFile(file)
	if err != nil {
		return read, fmt.Errorf("%s: cannot be read: %v; %s is looked up in the plan's data: make it with tonewright plan PHOTO --json plan.json, or say with --plan where it is", file, causeOf(err), wanted)
	}
	if err := json.Unmarshal(text, &read); err != nil || read.Tool != "tonewright" || read.Regions == nil {
		return read, fmt.Errorf("%s: is not the data of a plan; make it with tonewright plan PHOTO --json plan.json", file)
	}
	return read, nil
}

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
	return p, plan.Misused(fmt.Errorf("--aim: %s has no colour %s; it has %s", file, tag, strings.Join(tags, ", ")))
}

func (c planColour) planned(file string, owned []paint.Paint) (p planned, err error) {
	p.aim, err = colour.Parse(fmt.Sprintf("lab(%.3f, %.3f, %.3f)", c.AimLab[0], c.AimLab[1], c.AimLab[2]))
	if err != nil {
		return p, fmt.Errorf("%s: %s: %w", file, c.ID, err)
	}
	if c.Recipe == nil || len(c.Recipe.Parts) == 0 {
		return p, nil
	}
	var words []string
	for _, part := range c.Recipe.Parts {
		amount := strconv.FormatFloat(part.Parts, 'f', -1, 64)
		if part.Measure != "" {
			amount = part.Measure
		}
		words = append(words, part.Paint+" "+amount)
	}
	if p.pile, err = match.ParsePile(owned, strings.Join(words, ", ")); err != nil {
		return p, fmt.Errorf("%s: %s: %w", file, c.ID, err)
	}
	return p, nil
}
