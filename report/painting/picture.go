// The keys of the whole picture: the photo, the panel, the paints, the results.

package painting

import (
	"cmp"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"tonewright/grid"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// reading is a painting file while it is read.
type reading struct {
	Painting
	folder  string     // where its paths start
	given   *paint.Box // in place of its own; nil: its own
	boxLine int
	paints  *value // the list of paints; nil: none
	left    *table // what is left in their tubes; nil: nothing is said
	wishes  []*wish
	coats   []*coat
	first   string // the first line in brackets
}

// all reads the tree; what needs other keys comes after all of them.
func (r *reading) all(tree *table) error {
	r.first = cmp.Or(tree.first, "[[region]]")
	elsewhere := r.elsewhere()
	for _, p := range paint.Library() {
		elsewhere[p.ID] = "below a line [left], where it says what is left in the tube"
	}
	if err := fill(r, tree, pictureKeys(), "here", elsewhere); err != nil {
		return err
	}
	r.keys = map[string]int{}
	for _, e := range tree.entries {
		r.keys[e.key] = e.line
	}
	if r.Options.Photo == "" {
		return plan.Misused(fmt.Errorf(`%s: names no photo; write photo = "kettle.jpg", with the photo beside this file`, r.file))
	}
	if err := r.takeBox(); err != nil {
		return err
	}
	if err := r.takeLeft(); err != nil {
		return err
	}
	if err := r.regions(); err != nil {
		return err
	}
	return r.layers()
}

// elsewhere says where each key of a painting file stands, for where it is a wrong one.
func (r *reading) elsewhere() map[string]string {
	above := "above " + r.first
	if strings.HasPrefix(r.first, "[[") {
		above = "above the first " + r.first
	}
	places := map[string]string{}
	for _, each := range []struct {
		keys  []string
		where string
	}{
		{namesOf(slices.Concat(panelKeys(), paintKeys(), workKeys(), fileKeys())), above},
		{namesOf(regionKeys()), "under a [[region]], where it says what is wanted of that region"},
		{namesOf(layerKeys()), "under a [[layer]], where it says how that coat is laid"},
	} {
		for _, key := range each.keys {
			if places[key] != "" {
				places[key] += ", or "
			}
			places[key] += each.where
		}
	}
	return places
}

// longestPath is the most letters of a path or a list of cells.
const longestPath = 4096

// pictureKeys are the keys above the first region.
func pictureKeys() []key[reading] {
	return append(slices.Concat(panelKeys(), paintKeys(), workKeys(), fileKeys()),
		key[reading]{"left", `{titanium-white = "37 ml"}`, readLeft},
		key[reading]{"region", "[[region]]", readRegions},
		key[reading]{"layer", "[[layer]]", readLayers})
}

// panelKeys say what is painted on what.
func panelKeys() []key[reading] {
	return []key[reading]{
		{"photo", `"kettle.jpg"`, path(func(r *reading, file string, _ int) { r.Options.Photo = file })},
		{"name", `"Kettle on a shelf"`, words(func(r *reading, text string) error {
			r.Options.Name = text
			return nil
		})},
		{"panel", `"12x16in"`, words(func(r *reading, text string) (err error) {
			p := &r.Options.Panel
			p.Width, p.Height, p.Unit, err = grid.ParsePanel(text)
			return err
		})},
		{"cell", `"1in"`, words(func(r *reading, text string) (err error) {
			c := &r.Options.Cell
			c.Length, c.Unit, err = grid.ParseLength(text)
			return err
		})},
		{"crop", `"centre"`, words(func(r *reading, text string) (err error) {
			r.Options.Crop, err = grid.ParseCrop(text)
			return err
		})},
		{"ground", `"black"`, words(func(r *reading, text string) (err error) {
			r.Options.Ground, err = plan.ParseGround(text)
			return err
		})},
		{"detail", "5", whole(plan.MostDetail, func(r *reading, n int) { r.Options.Detail = n })},
		{"key", `"fit"`, oneOf([]string{"fit", "literal"}, func(r *reading, word string) { r.Options.Literal = word == "literal" })},
	}
}

// paintKeys say with what it is painted, and for whose eyes.
func paintKeys() []key[reading] {
	return []key[reading]{
		{"sight", `"deutan 0.8"`, readSight},
		{"paints", `["titanium-white", "yellow-ochre"]`, readPaints},
		{"box", `"my-paints.toml"`, path(func(r *reading, file string, line int) { r.BoxFile, r.boxLine = file, line })},
		{"tubes", "8", whole(plan.MostTubes, func(r *reading, n int) { r.Options.Tubes.Most = n })},
		{"within", "3.0", number(plan.LeastWithin, plan.MostWithin, func(r *reading, n float64) { r.Options.Tubes.Within = n })},
		{"colours", "5", whole(plan.MostColours, func(r *reading, n int) { r.Options.Colours = n })},
		{"finish", `"gloss"`, words(func(r *reading, text string) (err error) {
			r.Options.Mixing.Finish, err = paint.ParseFinish(text)
			return err
		})},
		{"coat", "1.0", readCoat},
		{"holds", "true", yesNo(func(r *reading, yes bool) { r.Options.Mixing.Holds = yes })},
	}
}

const coatIsThickness = "is how thick a coat over the ground is, like coat = 1.0; the coats of a region are set as [[layer]]"

// readCoat reads how thick a coat is; a painter may look for the coats themselves there.
func readCoat(r *reading, v *value) error {
	if v.kind == unstable.Array || v.kind == unstable.InlineTable {
		return errors.New(coatIsThickness)
	}
	return measured(plan.LeastCoat, plan.MostCoat, " times an ordinary coat", func(r *reading, n float64) { r.Options.Mixing.Coat = n })(r, v)
}

// fileKeys say what is read, and where results go.
func fileKeys() []key[reading] {
	return []key[reading]{
		{"megapixels", "200", readMegapixels},
		{"out", `"report.html"`, path(func(r *reading, file string, _ int) { r.Out = file })},
		{"json", `"plan.json"`, path(func(r *reading, file string, _ int) { r.JSON = file })},
		{"study", `"study.png"`, readStudy},
		{"ics", `"painting.ics"`, path(func(r *reading, file string, _ int) { r.Calendar = file })},
		{"checklist", `"days.txt"`, path(func(r *reading, file string, _ int) { r.Checklist = file })},
		{"quiet", "true", yesNo(func(r *reading, yes bool) { r.Quiet = yes })},
	}
}

// path reads a file's name, which starts from the painting file's folder.
func path(set func(r *reading, file string, line int)) func(*reading, *value) error {
	return func(r *reading, v *value) error {
		file, err := r.path(v)
		if err == nil {
			set(r, file, v.line)
		}
		return err
	}
}

// path returns a file's name as it is reached from where the program runs.
func (r *reading) path(v *value) (string, error) {
	text, err := v.asText(longestPath)
	switch {
	case err != nil:
		return "", err
	case strings.TrimSpace(text) == "":
		return "", errors.New("names no file; give one, or leave the key out")
	case strings.ContainsRune(text, 0):
		return "", fmt.Errorf("%q cannot be a file's name", shortened(text))
	}
	file := filepath.FromSlash(text)
	if filepath.IsAbs(file) {
		return file, nil
	}
	return filepath.Join(r.folder, file), nil
}

// readStudy reads where the colour study goes, which is written as PNG.
func readStudy(r *reading, v *value) (err error) {
	if r.Study, err = r.path(v); err == nil && !strings.EqualFold(filepath.Ext(r.Study), ".png") {
		return fmt.Errorf("%q: the study is written as PNG; give it a name that ends in .png", shortened(v.text))
	}
	return err
}

func readMegapixels(r *reading, v *value) error {
	n, err := v.asNumber()
	if err == nil && !(n > 0 && n <= plan.MostMegapixels) {
		return fmt.Errorf("%s is out of range: more than 0 and at most %d", shortened(v.text), plan.MostMegapixels)
	}
	r.Options.Megapixels = n
	return err
}
