// A new painting file, for a painter to go on with.

package painting

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"tonewright/grid"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// Start is what a new painting file begins with.
type Start struct {
	Photo   string       // from the file's folder
	BoxFile string       // from the file's folder; "": the paints are listed
	Name    string       // of the painting
	Options plan.Options // panel, cell, crop, ground, key of values, sight and box
	Found   plan.FoundPlan
	Command string // that plans the file
}

// Text returns the file's text, which reads back to the same options; a panel that the
// options leave to the photo is written with two decimals.
// It is an error if a name cannot be written in such a file, or if it does not read back:
// a painter is not given a file that plan refuses.
func (s Start) Text() (string, error) {
	for _, file := range []string{s.Photo, s.BoxFile} {
		if !utf8.ValidString(file) {
			return "", fmt.Errorf("%s: its name is not written in UTF-8 and cannot stand in a painting file; rename it", strings.ToValidUTF8(file, "?"))
		}
	}
	w := startWriter{Start: s, rule: s.ruler()}
	w.head()
	w.panel()
	w.paints()
	w.rest()
	w.legend()
	for i, r := range s.Found.Regions {
		w.region(i, r)
	}
	w.layers()
	if _, err := parseText("painting.toml", []byte(w.b.String()), &s.Options.Box); err != nil {
		return "", fmt.Errorf("%s: no painting file can be written for it: %w", s.Photo, err)
	}
	return w.b.String(), nil
}

// ruler returns the ruler of the panel, as large as it is written.
func (s Start) ruler() ruler {
	digits := 2
	if s.Options.Panel.Width != 0 { // as the painter has it
		digits = 6
	}
	side := func(m grid.Millimetres) float64 {
		v := inUnits(m, s.Found.Unit)
		for _, n := range []int{digits, 6} {
			if written, err := strconv.ParseFloat(decimals(v, n), 64); err == nil && written >= 0.1 {
				return written
			}
		}
		return v
	}
	return ruler{s.Found.Unit, side(s.Found.Width), side(s.Found.Height)}
}

// startWriter gathers the text.
type startWriter struct {
	Start
	rule ruler
	b    strings.Builder
}

// noteColumn is where notes behind keys stand, if the key leaves room.
const noteColumn = 28

// set writes a key, what it is set to, and a note.
func (w *startWriter) set(key, value, note string) {
	line := key + " = " + value
	if note != "" {
		line = fmt.Sprintf("%-*s# %s", noteColumn, line+" ", note)
	}
	w.say(line)
}

// say writes lines.
func (w *startWriter) say(lines ...string) {
	for _, line := range lines {
		w.b.WriteString(line + "\n")
	}
}

func (w *startWriter) head() {
	w.say(
		"# What is to be painted, and how. Change what you like, then plan it with",
		"#   "+w.Command,
		"# What follows a # is a note. To use a key that stands behind one, take the # away.",
		"",
	)
	w.set("photo", paint.TOMLString(w.Photo), "")
	if n := utf8.RuneCountInString(w.Name); n > 0 && n <= longestWord && utf8.ValidString(w.Name) {
		w.set("name", paint.TOMLString(w.Name), "what the plan is called")
	}
}

func (w *startWriter) panel() {
	o := w.Options
	w.say("", "# The panel, and the grid by which the drawing is carried over.")
	w.set("panel", paint.TOMLString(figure(w.rule.width)+"x"+figure(w.rule.height)+string(w.rule.unit)), "width and height, like 12x16in or 30x40cm")
	w.set("cell", paint.TOMLString(decimals(inUnits(w.Found.Cell, w.Found.CellUnit), 6)+string(w.Found.CellUnit)), "the side of a cell")
	w.set("ground", paint.TOMLString(w.ground()), `white, gray, black, umber, sienna, or like "#b0a090"`)
	w.set("crop", paint.TOMLString(cropText(o.Crop)), "what stays of the photo where the panel's proportion")
	w.say(strings.Repeat(" ", noteColumn)+`# differs: centre, top, bottom, left, right,`,
		strings.Repeat(" ", noteColumn)+`# or "x,y,w,h" in percent`)
	w.set("# detail", "5", "how much is drawn: 1 the main contours, 10 all")
	mode := "fit"
	if o.Literal {
		mode = "literal"
	}
	w.set("key", paint.TOMLString(mode), "fit brings the values into what paint reaches,")
	w.say(strings.Repeat(" ", noteColumn) + "# literal takes them as photographed")
}

// ground returns the ground's name; white where none was asked for.
func (w *startWriter) ground() string {
	if w.Options.Ground.Name == "" {
		return "white"
	}
	return w.Options.Ground.Name
}

// cropText returns a crop as grid.ParseCrop reads it.
func cropText(c grid.Crop) string {
	switch {
	case c.Window != grid.Window{}:
		return fmt.Sprintf("%v,%v,%v,%v", c.Window.X, c.Window.Y, c.Window.Width, c.Window.Height)
	case c.Keep == "":
		return "centre"
	}
	return c.Keep
}

func (w *startWriter) paints() {
	w.say("", "# Your eyes: protan, deutan or tritan and how strongly, 0 to 1; or full.")
	sight := "full"
	if !w.Options.Sight.Full() {
		sight = w.Options.Sight.String()
	}
	w.set("sight", paint.TOMLString(sight), "")
	w.say("")
	if w.BoxFile != "" {
		w.say("# Your paints, in a file of their own.")
		w.set("box", paint.TOMLString(w.BoxFile), "")
	} else {
		w.say("# Your paints. To keep them in a file of their own, put in place of the list",
			`# box = "my-paints.toml".`, "paints = [")
		for _, p := range w.Options.Box.Paints {
			w.say("  " + paint.TOMLString(p.ID) + ",")
		}
		w.say("]")
	}
	w.set("# tubes", "8", "choose the best 8 of them for the whole picture")
	w.set("# within", "3.0", "or as few as keep each region within this mean CIEDE2000")
}

// rest writes the keys that are seldom wanted.
func (w *startWriter) rest() {
	w.say("", "# How the paint is mixed and laid.")
	w.set("# finish", `"gloss"`, "the dry paint's surface: gloss, satin or matt")
	w.set("# coat", "1.0", "times an ordinary brushed coat; 0.3 is scrubbed in")
	w.set("# holds", "true", "mixes that hold their colour under lamps")
	w.set("# colours", "5", "in each region; without it as few as describe it")
	w.say("", "# How and when it is painted.")
	w.set("# start", `"2026-12-01"`, "the first day at the easel; without it days are counted")
	w.set("# sessions", "3", "days at the easel in a week, 1 to 7")
	w.set("# piles", "10", "the most mixes laid out in a day")
	w.set("# medium", `"linseed 1:10"`, "1 stirred into 10 of paint; without it none is")
	w.set("# film", "100", "of an ordinary coat, wet, in thousandths of a millimetre")
	w.set("# absorbent", "true", "the ground takes oil in, as chalk and matt acrylic do")
	w.set("# waste", "0.3", "laid out and not painted, as a share of what is painted")
	w.set("# temperature", "20", "where it dries, in °C")
	w.set("# humidity", "50", "and in percent")
	w.say("", "# Where results go, from this file's folder.")
	w.set("# out", `"report.html"`, "")
	w.set("# json", `"plan.json"`, "")
	w.set("# study", `"study.png"`, "the painting before it is painted")
	w.set("# ics", `"painting.ics"`, "the days for a calendar; they need a start")
	w.set("# checklist", `"days.txt"`, "the days as a list to tick off")
	w.left()
}

// left shows how to say what is left in the tubes, which comes after all other keys above
// the regions; a box file says it itself.
func (w *startWriter) left() {
	if w.BoxFile != "" || len(w.Options.Box.Paints) == 0 {
		return
	}
	w.say("", "# What is left in your tubes, in ml or g, so that the plan can say what to buy.", "# [left]")
	w.set("# "+w.Options.Box.Paints[0].ID, `"37 ml"`, "")
}
