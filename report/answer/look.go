// Package answer holds what tonewright answers to a painter's single questions, as
// data: each question is a function from options to an answer. Their JSON is read by
// other programs: keys are added, never renamed. Colours are D65 Lab.
package answer

import (
	"tonewright/analyze/colour"
	"tonewright/report/plan"
)

// Look is a colour in numbers and words.
type Look struct {
	Lab     plan.Triple `json:"lab"`
	Munsell string      `json:"munsell"`
	Name    string      `json:"name"` // ISCC-NBS
	SRGB    string      `json:"srgb"`
}

// HardToTell words two colours that are up to match.Close apart.
const HardToTell = "hard to tell across a palette"

// look words a colour.
func look(c colour.Lab) Look {
	m := c.Munsell()
	return Look{plan.TripleOf(c), m.String(), m.Name(), c.Hex()}
}

// Made says which program gave an answer.
type Made struct {
	Tool    string `json:"tool"`
	Version string `json:"version"`
}

func made(version string) Made { return Made{"tonewright", version} }
