package answer

import (
	"fmt"
	"slices"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// Mix is the recipes for one colour.
type Mix struct {
	Made
	Aim     Aim           `json:"aim"`
	Box     string        `json:"box"`
	Ground  string        `json:"ground,omitempty"` // "" where none was named
	Finish  string        `json:"finish"`
	Recipes []plan.Recipe `json:"recipes"` // the one to take first
}

// Aim is a wanted colour and where it is from.
type Aim struct {
	Look
	From string `json:"from"`           // as typed
	Seen *Look  `json:"seen,omitempty"` // the photo's colour, where the aim was keyed to the box's values
}

// MixOptions asks for recipes; the zero value of each field is the good default.
type MixOptions struct {
	Colour        string       // in any form of colour.Parse, or PHOTO@CELL
	Photo         plan.Options // box, ground, mixing, and the grid on a photo; its file is in Colour
	With, Without []string     // paints that every recipe must have, and that none may have
}

// MixFor finds recipes for a colour.
// A plan.UsageError is a mistake in opt; any other error is the photo's.
func MixFor(opt MixOptions) (*Mix, error) {
	box, mixing, err := chosen(opt)
	if err != nil {
		return nil, plan.Misused(err)
	}
	aim, wanted, err := aimOf(opt.Colour, opt.Photo)
	if err != nil {
		return nil, err
	}
	if ground := opt.Photo.Ground; ground.Name != "" {
		r := ground.Lab.Reflectance()
		mixing.Ground = &r
	}
	a := &Mix{Made: made(opt.Photo.Version), Aim: aim, Box: box.Name, Ground: opt.Photo.Ground.Name, Finish: mixing.Finish.String(), Recipes: []plan.Recipe{}}
	for _, r := range match.Recipes(box.Paints, []colour.Lab{wanted}, mixing)[0] {
		a.Recipes = append(a.Recipes, plan.RecipeOf(r, box.Paints, a.Ground))
	}
	return a, nil
}

// aimOf reads a colour, from text or from the middle of a photo's cell.
func aimOf(text string, photo plan.Options) (Aim, colour.Lab, error) {
	if file, cell, found := cutLast(text, "@"); found {
		if file == "" || cell == "" {
			return Aim{}, colour.Lab{}, plan.Misused(fmt.Errorf("colour %q: a photo and a cell are written as photo.jpg@C3", text))
		}
		photo.Photo = file
		seen, wanted, err := plan.Cell(photo, cell)
		if err != nil {
			return Aim{}, wanted, err
		}
		as := look(seen)
		return Aim{Look: look(wanted), From: text, Seen: &as}, wanted, nil
	}
	wanted, err := colour.Parse(text)
	if err != nil {
		return Aim{}, wanted, plan.Misused(err)
	}
	return Aim{Look: look(wanted), From: text}, wanted, nil
}

func cutLast(s, sep string) (before, after string, found bool) {
	if i := strings.LastIndex(s, sep); i >= 0 {
		return s[:i], s[i+len(sep):], true
	}
	return s, "", false
}

// chosen returns the box without the paints to leave out, and the options with the
// places of those that must be in.
func chosen(opt MixOptions) (paint.Box, match.Options, error) {
	box, mixing := opt.Photo.Box, opt.Photo.Mixing
	box.Paints = slices.Clone(box.Paints)
	var without []string
	for _, name := range opt.Without {
		i, err := owned(box.Paints, name)
		if err != nil {
			return box, mixing, fmt.Errorf("--without: %w", err)
		}
		without = append(without, box.Paints[i].ID)
		box.Paints = slices.Delete(box.Paints, i, i+1)
	}
	if len(box.Paints) == 0 {
		return box, mixing, fmt.Errorf("--without: leaves no paint in the box; leave out fewer")
	}
	for _, name := range opt.With {
		if p, err := paint.Find(opt.Photo.Box.Paints, name); err == nil && slices.Contains(without, p.ID) {
			return box, mixing, fmt.Errorf("--with and --without both name %s; drop one of them", p.Name)
		}
		i, err := owned(box.Paints, name)
		if err != nil {
			return box, mixing, fmt.Errorf("--with: %w", err)
		}
		mixing.With = append(mixing.With, i)
	}
	if len(mixing.With) > mostWith {
		return box, mixing, fmt.Errorf("--with: %d paints are more than a recipe has; name at most %d", len(mixing.With), mostWith)
	}
	return box, mixing, nil
}

// mostWith is the most paints of a recipe.
const mostWith = 3

// owned returns the place of a paint in the box.
func owned(box []paint.Paint, name string) (int, error) {
	p, err := paint.Find(box, name)
	if err != nil {
		return 0, err
	}
	i := slices.IndexFunc(box, func(q paint.Paint) bool { return q.ID == p.ID })
	if i < 0 {
		return 0, fmt.Errorf("%s is not in the box, which has %s", p.Name, listed(box))
	}
	return i, nil
}

// listed names the paints of a box, the first of many.
func listed(box []paint.Paint) string {
	const most = 12
	var names []string
	for _, p := range box {
		names = append(names, p.ID)
	}
	if len(names) > most {
		return fmt.Sprintf("%s and %d more", strings.Join(names[:most], ", "), len(names)-most)
	}
	return strings.Join(names, ", ")
}
