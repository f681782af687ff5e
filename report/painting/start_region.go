// The regions of a new painting file.

package painting

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"tonewright/grid"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// legend says what a region can be given.
func (w *startWriter) legend() {
	w.say(
		"",
		"# The regions. Where two overlap, the one further down lies on top. A region lies",
		"# where one of these says:",
		`#   cells = "C3:F7, G4"       cells of the grid, and ranges of them`,
		"#   outline = [[1.5, 2], [4, 2], [4, 5]]",
		"#                             points as a ruler has them, from the panel's top left,",
		"#                             in the panel's unit; or a list of such outlines",
		`#   mask = "kettle.png"       an image of the photo's shape, light in the region`,
		"# and these say what you want of it:",
		`#   role = "focal"            focal stands out, quiet stays back, support is between`,
		`#   palette = ["yellow-ochre", "burnt-umber"]`,
		"#                             it is mixed from these alone, and white",
		"#   white = false             without the white",
		`#   aim = "value"             photo: near to the photo's colours; value: only as`,
		"#                             light and dark as the photo, in the palette's hues,",
		"#                             from its darkest paint to its lightest and white; so",
		"#                             it is where a palette, scheme or hue is set, unless",
		"#                             photo is",
		`#   scheme = "analogous"      have palettes proposed: monochrome, analogous, quiet,`,
		`#                             or "complement of NAME" with another region's name`,
		`#   hue = "5YR"               have them proposed about a hue: 5YR, or "blue-green"`,
		"#   value_shift = 0.5         lighter by half a value; darker with a minus",
	)
}

// layers says how coats are set.
func (w *startWriter) layers() {
	w.say(
		"",
		"# The layers. Those of each region are proposed. To set them yourself, write them",
		"# here, in the order of painting, each with a region and a pass:",
		"#   [[layer]]",
		`#   region = "kettle"         the region's name`,
		`#   pass = "block-in"         or "next pass", or "glaze"`,
		"# and with what is to be other than usual:",
		`#   mix = "ivory-black 1, burnt-umber 2"`,
		"#                             in place of the region's own mixes",
		`#   medium = "solvent 1:4"    1 stirred into 4 of paint, or "none"`,
		"#   film = 0.5                times an ordinary coat",
		"#   wet = true                into the layer before, while that is wet",
		"#   after = 7                 days after the layer before; without it as early as",
		"#                             that can be gone over",
	)
}

// palette returns two of the paints as a list, to show what a palette is like; those that
// stand a quarter and half way down, since lists begin with yellows. "" without paints
// but white.
func (w *startWriter) palette() string {
	var names []string
	for _, p := range w.Options.Box.Paints {
		if !p.White() {
			names = append(names, paint.TOMLString(p.ID))
		}
	}
	switch n := len(names); {
	case n == 0:
		return ""
	case n > 2:
		names = []string{names[n/4], names[n/2]}
	}
	return "[" + strings.Join(names, ", ") + "]"
}

// region writes the region that was found i-th. The first is laid over the whole panel
// and the others over it.
func (w *startWriter) region(i int, r plan.FoundRegion) {
	w.say("", "[[region]]")
	w.set("name", paint.TOMLString(r.Name), "")
	w.say(fmt.Sprintf("# About %s; %s of the panel.", briefly(r.Where), percent(r.Share)))
	lines := w.outline(r.Outline)
	switch last := (grid.Cell{Column: w.Found.Columns - 1, Row: w.Found.Rows - 1}); {
	case i == 0:
		w.set("cells", paint.TOMLString(grid.Cell{}.String()+":"+last.String()), "the whole panel; the regions below lie over it")
	case len(lines) == 0: // too small for a ruler
		w.set("cells", paint.TOMLString(r.Where), "")
	default:
		w.say(lines...)
	}
	w.set("# role", `"support"`, "focal, support or quiet")
	if list := w.palette(); list != "" {
		w.set("# palette", list, "")
	}
	w.set("# aim", `"photo"`, "photo or value; with a palette it is value unless set")
	w.set("# scheme", `"analogous"`, `monochrome, analogous, quiet, "complement of NAME"`)
}

// percent returns a share as a whole percentage.
func percent(share float64) string {
	if share < 0.005 {
		return "under 1 %"
	}
	return fmt.Sprintf("%.0f %%", 100*share)
}

// longestWhere is the most letters of a list of cells in a note.
const longestWhere = 56

// briefly returns the first cells of a list.
func briefly(where string) string {
	if len(where) <= longestWhere {
		return where
	}
	end := max(0, strings.LastIndex(where[:longestWhere], ","))
	return where[:end] + " and more"
}

// outline writes rings, a ring alone as a list of points; none if there is nothing to write.
func (w *startWriter) outline(rings [][]grid.Point) []string {
	var written [][]string
	for _, ring := range rings {
		if points := w.rule.ring(ring); points != nil {
			written = append(written, points)
		}
	}
	switch len(written) {
	case 0:
		return nil
	case 1:
		return append(append([]string{"outline = ["}, filled("  ", written[0])...), "]")
	}
	lines := []string{"outline = ["}
	for _, points := range written {
		lines = append(lines, "  [")
		lines = append(lines, filled("    ", points)...)
		lines = append(lines, "  ],")
	}
	return append(lines, "]")
}

// width is how wide the lines of a list are.
const width = 80

// filled sets points into lines.
func filled(indent string, points []string) (lines []string) {
	line := indent
	for i, p := range points {
		if i < len(points)-1 {
			p += ","
		}
		if line != indent && utf8.RuneCountInString(line)+len(p) > width {
			lines, line = append(lines, strings.TrimRight(line, " ")), indent
		}
		line += p + " "
	}
	return append(lines, strings.TrimRight(line, " "))
}
