package plan

import (
	"fmt"
	"strings"

	"tonewright/analyze/colour"
)

// Ground is the colour under the paint.
type Ground struct {
	Name string
	Lab  colour.Lab
}

// grounds are the panel colours known by name. Typical acrylic grounds, from
// memory: makers' whites lie at L* 94-97, blacks at 15-25.
var grounds = []Ground{
	{"white", colour.Lab{L: 96, A: -0.5, B: 1.5}},
	{"gray", colour.Lab{L: 51.6, A: 0, B: 0}},
	{"black", colour.Lab{L: 18, A: 0, B: 0}},
	{"umber", colour.Lab{L: 48, A: 6, B: 16}},
	{"sienna", colour.Lab{L: 55, A: 22, B: 32}},
}

// white tells whether the ground is the one that recipes are for: paint laid over it
// loses nothing by what shows through.
func (g Ground) white() bool { return g.Name == grounds[0].Name }

// ParseGround reads a ground's name or its colour as #rrggbb.
func ParseGround(text string) (Ground, error) {
	word := strings.ToLower(strings.TrimSpace(text))
	if word == "grey" {
		word = "gray"
	}
	var names []string
	for _, g := range grounds {
		if g.Name == word {
			return g, nil
		}
		names = append(names, g.Name)
	}
	if strings.HasPrefix(word, "#") {
		lab, err := colour.ParseHex(word)
		if err != nil {
			return Ground{}, fmt.Errorf("ground %q: %w", text, err)
		}
		return Ground{word, lab}, nil
	}
	return Ground{}, fmt.Errorf("ground %q is not known: write %s, or a colour like #b0a090", text, strings.Join(names, ", "))
}

// middle is the L* of Munsell value 5, where neither pencil shows better.
const middle = 51.6

// Pencil returns which pencil shows on the ground, "light" or "dark".
func (g Ground) Pencil() string {
	if g.Lab.L < middle {
		return "light"
	}
	return "dark"
}
