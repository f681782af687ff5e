// Sizes of paper.

package grid

import (
	"fmt"
	"slices"
	"strings"
)

// Paper is a size of paper that a printer takes, standing upright: Width ≤ Height.
type Paper struct {
	Name          string
	Width, Height Millimetres
}

// papers are the sizes known by name, the usual ones first. The A sizes are whole
// millimetres, the others whole inches and halves.
// Source: [ISO216] table 1; [ASMEY141] sizes A (Letter), B (Tabloid), C, D and E.
var papers = []Paper{
	{"A4", 210, 297},
	{"Letter", 8.5 * 25.4, 11 * 25.4},
	{"A3", 297, 420},
	{"Tabloid", 11 * 25.4, 17 * 25.4},
	{"A2", 420, 594},
	{"A1", 594, 841},
	{"A0", 841, 1189},
	{"ANSI-C", 17 * 25.4, 22 * 25.4},
	{"ANSI-D", 22 * 25.4, 34 * 25.4},
	{"ANSI-E", 34 * 25.4, 44 * 25.4},
}

// ParsePaper reads a paper's name, in either case; "" is A4.
// An error lists the papers known.
func ParsePaper(text string) (Paper, error) {
	word := strings.TrimSpace(text)
	if word == "" {
		return papers[0], nil
	}
	var names []string
	for _, p := range papers {
		if strings.EqualFold(p.Name, word) {
			return p, nil
		}
		names = append(names, p.Name)
	}
	return Paper{}, fmt.Errorf("paper %q is not known: write one of %s", text, strings.Join(names, ", "))
}

// Papers lists the papers known, the usual ones first.
func Papers() []Paper { return slices.Clone(papers) }

// Turned returns the paper lying on its long side.
func (p Paper) Turned() Paper { return Paper{p.Name, p.Height, p.Width} }
