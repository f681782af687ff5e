package report

import (
	"bytes"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/report/plan"
)

// manyColours is a deutan's plan of 24 hues of one value side by side, on umber: to a
// dichromat and in gray most of them are alike.
func manyColours(t *testing.T) *plan.Plan {
	m := image.NewRGBA(image.Rect(0, 0, 480, 320))
	for y := range 320 {
		for x := range 480 {
			n := x/80 + 6*(y/80)
			m.SetRGBA(x, y, swatchColour(colour.Munsell{Hue: float64(n) * 100 / 24, Value: 6, Chroma: 7}.Lab()))
		}
	}
	file := filepath.Join(t.TempDir(), "hues.png")
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, m))
	require.NoError(t, os.WriteFile(file, b.Bytes(), 0o644))
	umber, err := plan.ParseGround("umber")
	require.NoError(t, err)
	p, err := plan.Make(plan.Options{Photo: file, Version: "test", Colours: 12, Sight: colour.Sight{Kind: "deutan", Severity: 1}, Ground: umber,
		Regions: []plan.RegionWish{{Name: "upper", Cells: "A1:L4"}, {Name: "lower", Cells: "A5:L8"}}})
	require.NoError(t, err)
	return p
}

// Whatever the report tells by colour it tells by text, tag, pattern or lightness too:
// for the demo, for a plan with all that composing adds, and for one of many hues.
func TestNeverByHueAlone(t *testing.T) {
	hues := manyColours(t)
	hues.Harmony = sampleHarmony(t)
	for name, p := range map[string]*plan.Plan{"demo": demoPlan(t), "composed": composedPlan(t), "worked": workedPlan(t), "many hues": hues} {
		assert.Empty(t, hueFindings(t, pageOf(t, p)), name)
	}

	// The check had work to do: many swatches are one to some sight.
	var chips []colour.Lab
	for _, c := range hues.Pictures.Colours {
		chips = append(chips, c.Mix)
	}
	require.GreaterOrEqual(t, len(chips), 12)
	for _, look := range looks {
		n := 0
		for i, a := range chips {
			for _, b := range chips[:i] {
				if colour.DeltaE00(look.see(a), look.see(b)) <= alike && colour.DeltaE00(a, b) >= 10 {
					n++
				}
			}
		}
		t.Logf("%s: %d pairs of %d clearly different mixes are alike", look.name, n, len(chips))
		assert.Positive(t, n, look.name)
	}
}

// The check finds what it is there for: each page here tells something by hue alone.
func TestHueAloneIsFound(t *testing.T) {
	// A red and a green of one lightness, from Munsell's 5R and 5G of value 5.
	const red, green = "#b26156", "#5b8467"
	swatch := func(hex, text string) string {
		return `<span style="background:` + hex + `;color:#000000">` + text + `</span>`
	}
	row := func(cells string) string {
		return `<table><thead><tr><th>Tag</th><th>Aim | mix</th></tr></thead><tr>` + cells + `</tr></table>`
	}
	tag := func(text string) string { return `<td><b class="tag">` + text + `</b></td>` }
	for _, c := range []struct{ name, page, want string }{
		{"no tags", `<p>` + swatch(red, "5.0") + `</p><p>` + swatch(green, "5.0") + `</p>`, "has no tag"},
		{"no text", row(tag("A1") + `<td>` + swatch(red, "") + `</td>`), "no text of its own"},
		{"one tag for two", row(tag("A1")+`<td>`+swatch(red, "5.0")+`</td>`) + row(tag("A1")+`<td>`+swatch("#8f7550", "5.0")+`</td>`), "both are called A1"},
		{"more than the column names", row(tag("A1") + `<td>` + swatch(red, "5.0") + swatch(green, "5.0") + swatch(red, "5.0") + `</td>`), "3 swatches in one row"},
		{"a disc without its tag", `<svg><circle fill="` + red + `"></circle><g class="tagmark"><text>A</text></g></svg>`, "has no tag"},
		{"a disc whose tag is not there", `<svg><circle fill="` + red + `"><title>B</title></circle><g class="tagmark"><text>A</text></g></svg>`, "has no tag"},
		{"coloured text", `<style>.good{color:#2e6b3a}.bad{color:#8c3030}</style>`, "not a gray"},
		{"a colour by name", `<style>@media print{.bad{border-left:3px solid red}}</style>`, "does not read"},
		{"chosen by colour", `<style>#v:checked~.switch{background:#1b1b1a;color:#f3f3f2}</style>`, "by colour alone"},
		{"a map in colours", `<figure>` + img(t, red, green) + `</figure>`, "colours and no tags on it"},
		{"a map in grays too near", img(t, "#808080", "#888888"), "L* apart"},
	} {
		found := hueFindings(t, "<html>"+c.page+"</html>")
		assert.Contains(t, strings.Join(found, "\n"), c.want, c.name)
	}
	// And is content with the same, done right.
	fine := row(tag("A1")+`<td>`+swatch(red, "5.0")+swatch(red, "5.1")+`</td>`) + row(tag("A2")+`<td>`+swatch(green, "5.0")+`</td>`) +
		`<svg><circle fill="` + red + `"><title>A</title></circle><g class="tagmark"><text>A</text></g></svg>` +
		`<style>#v:checked~.switch{background:#1b1b1a;color:#f3f3f2;font-weight:600}</style>` + img(t, "#000000", "#bebebe", "#fafafa")
	assert.Empty(t, hueFindings(t, "<html>"+fine+"</html>"))
}

// img is an image of stripes in these colours.
func img(t *testing.T, hexes ...string) string {
	m := image.NewRGBA(image.Rect(0, 0, len(hexes), 4))
	for x, hex := range hexes {
		c, err := colour.ParseHex(hex)
		require.NoError(t, err)
		for y := range 4 {
			m.SetRGBA(x, y, swatchColour(c))
		}
	}
	p := asPNG(m)
	var b bytes.Buffer
	require.NoError(t, writeDataURI(&b, p))
	return `<img alt="stripes" src="` + b.String() + `">`
}

// In every dress of the page its inks stand out from its papers in gray.
// Source: WCAG 2.2 AA, 1.4.3: 4.5 for text; 1.4.11: 3 for marks. --rule and --faint only
// part what white space parts already.
func TestInksStandOut(t *testing.T) {
	rules := rulesOf(parsePage(t, pageOf(t, blocksPlan(t, "a", "b"))))
	dress := map[string]string{}
	for _, media := range []string{"", "(prefers-color-scheme:dark)", "print"} {
		for _, r := range rules {
			if r.selector == ":root" && r.media == media {
				for name, value := range r.set {
					dress[name] = value
				}
			}
		}
		pairs := []struct {
			ink, paper string
			least      float64
		}{
			{"--ink", "--paper", textContrast}, {"--ink", "--sheet", textContrast},
			{"--soft", "--paper", textContrast}, {"--soft", "--sheet", textContrast},
			{"--mark", "--paper", markContrast}, {"--mark", "--sheet", markContrast},
		}
		if media != "print" { // where the letters of the axes are black on paper
			pairs = append(pairs, struct {
				ink, paper string
				least      float64
			}{"#ffffff", "--stage", textContrast})
		}
		for _, p := range pairs {
			got := contrast(inkOf(t, dress, p.ink), inkOf(t, dress, p.paper))
			assert.GreaterOrEqual(t, got, p.least, "%s on %s %s", p.ink, p.paper, media)
		}
	}
}

func inkOf(t *testing.T, dress map[string]string, name string) colour.Lab {
	hex := name
	if strings.HasPrefix(name, "--") {
		hex = dress[name]
	}
	c, err := colour.ParseHex(hex)
	require.NoError(t, err, name)
	return c
}

// The figures on a swatch can be read on any colour: WCAG 2.2 AA, 1.4.3.
func TestFiguresOnSwatches(t *testing.T) {
	for l := 0.0; l <= 100; l += 0.25 {
		c, err := colour.ParseHex(ink(plan.Triple{l, 0, 0}))
		require.NoError(t, err)
		assert.GreaterOrEqual(t, contrast(c, colour.Lab{L: l}), textContrast, "L* %.2f", l)
	}
}
