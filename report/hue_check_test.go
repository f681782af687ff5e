package report

import (
	"bytes"
	"cmp"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// Bounds of the check. alike is the CIEDE2000 up to which two colours count as one to
// a sight, as in the plan's look-alikes. neutralInk is the CIELAB chroma up to which a
// colour of the page's own is a gray that no sight tells by its hue; ours: the page's
// warmest is 2.7. levels is how far apart in L* two grays of a map have to be; ours: a
// Munsell value step is about 10.
// textContrast and markContrast are WCAG 2.2 AA, success criteria 1.4.3 and 1.4.11.
const (
	alike        = 4
	neutralInk   = 4
	levels       = 8
	textContrast = 4.5
	markContrast = 3
)

// looks are the ways the page is looked at.
var looks = []struct {
	name string
	see  func(colour.Lab) colour.Lab
}{
	{"protan", colour.Sight{Kind: "protan", Severity: 1}.See},
	{"deutan", colour.Sight{Kind: "deutan", Severity: 1}.See},
	{"tritan", colour.Sight{Kind: "tritan", Severity: 1}.See},
	{"gray", func(c colour.Lab) colour.Lab { return colour.Lab{L: c.L} }},
}

// hueFindings lists everything in a page that is told by hue alone to some sight.
func hueFindings(t *testing.T, page string) (found []string) {
	root := parsePage(t, page)
	found = append(found, swatchFindings(root)...)
	rules := rulesOf(root)
	found = append(found, inkFindings(rules)...)
	found = append(found, stateFindings(rules)...)
	return append(found, mapFindings(t, root)...)
}

// chip is a place of the page that carries a colour of the data.
type chip struct {
	colour    colour.Lab
	hex       string
	tag, text string
	row       *element // what it stands in with its tag
	order     int      // among the chips of the row
}

var (
	hexColour  = regexp.MustCompile(`#(?:[0-9a-fA-F]{6}|[0-9a-fA-F]{3})\b`)
	background = regexp.MustCompile(`background(?:-color)?\s*:\s*(#[0-9a-fA-F]{3,6})`)
)

func hexOf(e *element) string {
	if m := background.FindStringSubmatch(e.attributes["style"]); m != nil {
		return m[1]
	}
	for _, paint := range []string{"fill", "stroke", "bgcolor"} {
		if hex := hexColour.FindString(e.attributes[paint]); hex != "" {
			return hex
		}
	}
	return ""
}

// swatchFindings checks the swatches: each has a text of its own and a tag in its
// row, and no two that some sight takes for one have the same.
func swatchFindings(root *element) (found []string) {
	var chips []chip
	inRow := map[*element]int{}
	for _, e := range root.all(func(e *element) bool { return hexOf(e) != "" }) {
		c := chip{hex: hexOf(e), text: e.words()}
		lab, err := colour.ParseHex(c.hex)
		if err != nil {
			found = append(found, fmt.Sprintf("colour %s cannot be read", c.hex))
			continue
		}
		c.colour = lab
		c.row, c.tag = tagOf(e)
		if c.tag == "" {
			found = append(found, fmt.Sprintf("swatch %s in <%s> has no tag", c.hex, e.within.name))
			continue
		}
		if c.text == "" {
			found = append(found, fmt.Sprintf("swatch %s of %s has no text of its own", c.hex, c.tag))
		}
		c.order = inRow[c.row]
		inRow[c.row]++
		chips = append(chips, c)
	}
	for row, n := range inRow {
		if row.name != "svg" && n > columnNames(row) {
			found = append(found, fmt.Sprintf("%d swatches in one row, and the column names %d", n, columnNames(row)))
		}
	}
	slices.Sort(found)
	return append(found, collapsed(chips)...)
}

// tagOf returns what a swatch stands in and the tag it has there. In a drawing its
// title is its tag, and has to stand there to be seen too.
func tagOf(e *element) (row *element, tag string) {
	if svg := e.closest(named("svg")); svg != nil {
		text := e.words()
		for _, mark := range svg.all(isTag) {
			if text != "" && mark.words() == text {
				return svg, text
			}
		}
		return svg, ""
	}
	row = e.closest(func(e *element) bool {
		return slices.Contains([]string{"tr", "li", "dd", "p", "figure", "page"}, e.name)
	})
	if tags := row.all(isTag); len(tags) > 0 {
		return row, tags[0].words()
	}
	return row, ""
}

// columnNames returns how many swatches the heads of a row's table name: "Aim | mix" two.
func columnNames(row *element) int {
	most := 1
	if table := row.closest(named("table")); table != nil {
		for _, head := range table.all(named("th")) {
			most = max(most, strings.Count(head.words(), "|")+1)
		}
	}
	return most
}

// collapsed lists the swatches that some sight takes for one, and that no text tells apart.
func collapsed(chips []chip) (found []string) {
	for i, a := range chips {
		for _, b := range chips[:i] {
			if a.tag != b.tag || a.row == b.row && a.order != b.order && a.row.name != "svg" || colour.DeltaE00(a.colour, b.colour) < 1 {
				continue
			}
			for _, look := range looks {
				if colour.DeltaE00(look.see(a.colour), look.see(b.colour)) <= alike {
					found = append(found, fmt.Sprintf("%s and %s are one to %s, and both are called %s", b.hex, a.hex, look.name, a.tag))
				}
			}
		}
	}
	return found
}

// colourWords are other ways to write a colour, which this check does not read; grays
// have words that are no danger.
var colourWords = regexp.MustCompile(`\b(?:red|green|blue|orange|yellow|purple|violet|brown|pink|cyan|magenta|teal|maroon|olive|navy|lime|aqua|gold|crimson|tomato|salmon)\b|\b(?:rgba?|hsla?|hwb|lab|lch|oklab|oklch|color)\(`)

// inkFindings checks that the page's own colours are grays: then no two of its states
// differ by hue, and what differs does so in gray.
func inkFindings(rules []rule) (found []string) {
	for _, r := range rules {
		for _, name := range slices.Sorted(keysOf(r.set)) {
			value := r.set[name]
			for _, hex := range hexColour.FindAllString(value, -1) {
				if c, err := colour.ParseHex(hex); err != nil || c.Chroma() > neutralInk {
					found = append(found, fmt.Sprintf("style %s{%s:%s}: not a gray", r.selector, name, value))
				}
			}
			if name != "content" && name != "font" && !strings.HasPrefix(name, "--serif") && colourWords.MatchString(value) {
				found = append(found, fmt.Sprintf("style %s{%s:%s}: a colour this check does not read; write it as #rrggbb", r.selector, name, value))
			}
		}
	}
	return found
}

func keysOf(m map[string]string) func(func(string) bool) {
	return func(yield func(string) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

// beyondColour are the properties that mark a state without colour.
var beyondColour = []string{"font-weight", "border-width", "border-style", "border", "outline", "text-decoration", "content", "display"}

// stateFindings checks that what is chosen is marked by more than colour.
func stateFindings(rules []rule) (found []string) {
	for _, r := range rules {
		if !strings.Contains(r.selector, ":checked") {
			continue
		}
		if !slices.ContainsFunc(beyondColour, func(name string) bool { return r.set[name] != "" }) {
			found = append(found, fmt.Sprintf("style %s: what is chosen is marked by colour alone", r.selector))
		}
	}
	return found
}

// mapFindings checks the embedded images of few colours: grays that keep apart in
// gray, or else a picture of the mixes with tags on it.
func mapFindings(t *testing.T, root *element) (found []string) {
	for _, e := range root.all(func(e *element) bool { return e.name == "img" || e.name == "image" }) {
		media, data := e.imageData(t)
		if media != "image/png" {
			continue
		}
		m, err := png.Decode(bytes.NewReader(data))
		require.NoError(t, err)
		if used := fewColours(m); used != nil {
			found = append(found, paletteFindings(e, used)...)
		}
	}
	return found
}

// mostOfMap is the most colours a map has; what has more is a picture.
const mostOfMap = 64

// fewColours returns the colours that an image has, clear ones aside; nil where they
// are more than a map's.
func fewColours(m image.Image) (used []colour.Lab) {
	seen := map[color.RGBA]bool{}
	b := m.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			c := color.RGBAModel.Convert(m.At(x, y)).(color.RGBA)
			if c.A < 255 || seen[c] {
				continue
			}
			seen[c] = true
			used = append(used, colour.FromSRGB(float64(c.R)/255, float64(c.G)/255, float64(c.B)/255))
			if len(used) > mostOfMap {
				return nil
			}
		}
	}
	return used
}

func paletteFindings(e *element, used []colour.Lab) (found []string) {
	name := strings.TrimSpace(e.attributes["alt"] + e.attributes["id"])
	if slices.ContainsFunc(used, func(c colour.Lab) bool { return c.Chroma() > neutralInk }) {
		if svg := e.closest(named("svg")); svg == nil || len(svg.all(isTag)) == 0 {
			found = append(found, fmt.Sprintf("map %q has colours and no tags on it", name))
		}
		return found
	}
	slices.SortFunc(used, func(a, b colour.Lab) int { return cmp.Compare(a.L, b.L) })
	if e.attributes["id"] == patterned {
		return patternFindings(name, used)
	}
	for i := 1; i < len(used); i++ {
		if d := used[i].L - used[i-1].L; d < levels {
			found = append(found, fmt.Sprintf("map %q has two grays %.1f L* apart", name, d))
		}
	}
	return found
}

// patterned is the one map that is told by patterns over a gray picture, which TestMissedByPattern checks;
// the grays of that picture mean nothing.
const patterned = "i-missed"

// patternFindings checks that of many grays the darkest stand out from all others, as
// ink does on a pale picture.
func patternFindings(name string, used []colour.Lab) []string {
	for i := 1; i < len(used); i++ {
		if contrast(used[i-1], used[i]) >= markContrast {
			return nil
		}
	}
	return []string{fmt.Sprintf("map %q has %d grays and no ink that stands out from them", name, len(used))}
}

// contrast returns the contrast of two colours, 1-21.
// Source: WCAG 2.2, definition of contrast ratio.
func contrast(a, b colour.Lab) float64 {
	y := func(c colour.Lab) float64 { return c.XYZ().Y / 100 }
	hi, lo := max(y(a), y(b)), min(y(a), y(b))
	return (hi + 0.05) / (lo + 0.05)
}
