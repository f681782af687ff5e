package report

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/grid"
	"tonewright/report/plan"
)

// What comes after the plan stands in the page in words and figures, in the order of the
// work, and each section has its place in the list of links.
func TestWorkSections(t *testing.T) {
	page := pageOf(t, workedPlan(t))
	all := sections(page)
	order := []string{"picture", "setting-out", "stand-out", "layers", "days", "amounts", "cautions", "paints"}
	at := -1
	for _, id := range order {
		next := slices.Index(all, id)
		require.Greater(t, next, at, "%s in %v", id, all)
		at = next
	}
	for _, id := range order {
		assert.Contains(t, page, `<li><a href="#`+id+`">`)
	}
	words := parsePage(t, page).words()
	for _, text := range []string{
		"tonewright sheet painting.toml", "The coats break 2 rules of the trade: “Layers” says which",
		// Layers: rules first, then the coats.
		"A.1, block-in of across the top, dark brown; A.2, next pass of across the top, dark brown.", "Fast over slow. The coat above dries before",
		"To mend it: Wait 9 days more before the next pass of A.", "after = 12", "Common practice, no source", "Drying times are estimates",
		"Block-in It lies behind all that follows. Coat Region Piles", "solvent 1:4, 100 µm 44 to 52 % oil once dry", "12 hours to 2 days", "slowest: Titanium White in I1", "glaze 1 for A1, A2", "into A.1, while that is wet",
		"Coats : A.1 block-in, A.2 next pass, A.3 glaze.",
		// Days.
		"12 sessions from Mon 30 Nov 2026 to Fri 25 Dec 2026, 3 a week.", "First, by the thumb, touch dry: B C Waits for B.1 to dry.", "a hazelnut (1.2 ml) Titanium White 3/8 in", "Varnish. 17 Jun 2027 to 17 Dec 2027 Once it is dry",
		// Amounts.
		"To buy: 2.8 ml of Cadmium Yellow Lemon.", "Titanium White 3.2 6.1 37 ml – Enough.", "Cadmium Yellow Lemon 3.2 6.1 0.4 ml 2.8 ml Buy one.", "not said", "And of medium: 2.1 ml of linseed.",
		// Cautions: in full once, short where they are needed, what all end in once.
		"Cautions The usual ones for what this painting uses: reminders, not advice. Labels come first. Paints Cadmium Red Light, Cadmium Yellow Lemon. Harmful if breathed in or swallowed: never sand it dry or spray it. In A1 B2 from memory Mediums and solvents", "Colours that fade Alizarin Crimson is weak in tints and glazes.",
		"Care: solvent.", "Care: cadmium: no dry sanding, no spraying; solvent: open a window.", "Care: cadmium; Alizarin Crimson fades in tints.",
	} {
		assert.True(t, strings.Contains(words, text), text)
	}
	assert.Equal(t, 1, strings.Count(words, "Labels come first."))
	assert.NotContains(t, page, "ZgotmplZ")
}

// Where nothing is drawn, painted or counted there is nothing of it: no section, no view.
func TestNoWork(t *testing.T) {
	p := *workedPlan(t)
	p.Drawing, p.Layers, p.Days, p.Amounts, p.Cautions = plan.Drawing{}, plan.Layers{}, plan.Days{}, plan.Amounts{}, nil
	page := pageOf(t, &p)
	for _, id := range []string{"setting-out", "layers", "days", "amounts", "cautions"} {
		assert.NotContains(t, sections(page), id)
		assert.NotContains(t, page, `href="#`+id+`"`)
	}
	assert.NotContains(t, page, "v-drawing")
	assert.NotContains(t, page, "Care:")
	assert.Contains(t, checklistOf(t, &p), "There is nothing to paint.")
}

// Where the box says nothing of what is left, the table has no columns for it.
func TestAmountsUnknown(t *testing.T) {
	p := workedPlan(t)
	for i := range p.Amounts.Tubes {
		p.Amounts.Tubes[i].LeftML, p.Amounts.Tubes[i].BuyML = nil, 0
	}
	words := parsePage(t, pageOf(t, p)).words()
	assert.Contains(t, words, "The box does not say what is left in the tubes, so look. Tube Needed, ml In g Titanium White 3.2 6.1 Cadmium")
	enough := 50.0
	for i := range p.Amounts.Tubes {
		p.Amounts.Tubes[i].LeftML = &enough
	}
	assert.Contains(t, parsePage(t, pageOf(t, p)).words(), "What is left in the tubes is enough.")
}

// Rules that the same coats break and one change mends are told together; others apart.
func TestBrokenTogether(t *testing.T) {
	p := workedPlan(t)
	b := p.Layers.Broken[0]
	b.Rule, b.Source = "over wet", "[Other]"
	p.Layers.Broken = []plan.Broken{p.Layers.Broken[0], b, p.Layers.Broken[1]}
	rules := brokenRules(p.Layers.Broken, coatNamerOf(p))
	require.Len(t, rules, 2)
	apart := slices.Clone(p.Layers.Broken)
	apart[1].Mend = "Take other paints."
	assert.Len(t, brokenRules(apart, coatNamerOf(p)), 3)
	assert.Len(t, rules[0].Rules, 2)
	assert.Equal(t, "Common practice, no source; [Other]", rules[0].Source)
}

// The terminal says what breaks, how long, how much and what to mind, within its width.
func TestWorkText(t *testing.T) {
	p := workedPlan(t)
	var b bytes.Buffer
	require.NoError(t, PlanText(&b, p, "report.html", "", "", ""))
	for _, line := range strings.Split(b.String(), "\n") {
		assert.LessOrEqual(t, utf8.RuneCountInString(line), columns, line)
	}
	for _, text := range []string{
		"Not sound: A.1, block-in of across the top, dark brown; A.2, next pass of across\n      the top, dark brown\n      Fast over slow: The coat above",
		"To mend it: Wait 9 days more before the next pass of A. In the painting\n      file, under A.2's [[layer]]:\n        after = 12\n",
		"To mend it: Mix a tenth of linseed oil into B.2.\n",
		"Painted: 12 sessions from Mon 30 Nov 2026 to Fri 25 Dec 2026, 3 a week; varnish\n      17 Jun 2027 to 17 Dec 2027\n",
		fmt.Sprintf("Paint: %.0f ml in all, from %d tubes; to buy: 2.8 ml of Cadmium Yellow Lemon\n", 3.2*float64(len(p.Paints)), len(p.Paints)),
		"Care: cadmium, solvent, Alizarin Crimson fades in tints; the report says how\n",
	} {
		assert.Contains(t, b.String(), text)
	}
}

// The drawing's lines lie where the plan has them, at the size of the picture, the
// heaviest drawn last; no two numbers overlap, and each stands on its own line.
func TestDrawingView(t *testing.T) {
	p := demoPlan(t)
	require.NotEmpty(t, p.Drawing.Contours)
	d := drawnOf(p)
	strokes := d.strokes()
	require.Len(t, strokes, len(p.Drawing.Contours))
	first := p.Drawing.Contours[0]
	g := p.Grid.Layout()
	start := first.Points()[0]
	x, y := float64(start.X/g.Width)*float64(p.Pictures.Photo.Width), float64(start.Y/g.Height)*float64(p.Pictures.Photo.Height)
	assert.True(t, strings.HasPrefix(strokes[len(strokes)-1].D, "M"+number(x)+" "+number(y)+"L"), "the first contour is drawn last")
	for i, s := range strokes {
		assert.Equal(t, p.Drawing.Contours[len(strokes)-1-i].Closed, strings.HasSuffix(s.D, "Z"))
	}
	numbers := d.numbers()
	require.NotEmpty(t, numbers)
	size := numberSize * max(d.width, d.height)
	for i, a := range numbers {
		var ax, ay float64
		fmt.Sscan(a.X, &ax)
		fmt.Sscan(a.Y, &ay)
		var id int
		fmt.Sscan(a.Text, &id)
		assert.Contains(t, d.lines[id-1], nearest(d.lines[id-1], ax, ay))
		for _, b := range numbers[:i] {
			var bx, by float64
			fmt.Sscan(b.X, &bx)
			fmt.Sscan(b.Y, &by)
			wide := letterWidth * size * float64(len(a.Text)+len(b.Text)) / 2
			assert.False(t, ax-bx < wide && bx-ax < wide && ay-by < size && by-ay < size, "%s over %s", a.Text, b.Text)
		}
	}
}

// Of lines that lie beside each other closer than their numbers are high, one has its
// number, or all where they are long enough to have it elsewhere; off the edge.
func TestNumbersHaveRoom(t *testing.T) {
	along := func(y grid.Millimetres, xs ...grid.Millimetres) (line []grid.Point) {
		for _, x := range xs {
			line = append(line, grid.Point{X: x, Y: y})
		}
		return line
	}
	d := drawn{width: 600, height: 400, contours: []plan.Contour{{ID: 1, Main: true}, {ID: 2, Main: true}, {ID: 3, Main: true}, {ID: 4}}}
	d.lines = [][]grid.Point{along(200, 5, 300, 595), along(205, 5, 300, 595), along(205, 200, 300, 400), along(100, 300)}
	assert.Equal(t, []label{{"300", "200", "10", "1"}, {"200", "205", "10", "3"}}, d.numbers())
}

// nearest returns the point of a line within a hundredth of a place.
func nearest(line []grid.Point, x, y float64) grid.Point {
	for _, at := range line {
		if dx, dy := float64(at.X)-x, float64(at.Y)-y; dx*dx+dy*dy < 1e-4 {
			return at
		}
	}
	return grid.Point{X: -1, Y: -1}
}

// A line that is weaker is drawn thinner, and the thinnest is still a line on a
// telephone 390 pixels wide: half a pixel.
func TestStrokeWidths(t *testing.T) {
	d := drawn{width: 1000, height: 800, contours: []plan.Contour{{Strength: 1}, {Strength: 0.5}, {Strength: 0}}, lines: make([][]grid.Point, 3)}
	var widths []float64
	for _, s := range d.strokes() {
		var w float64
		fmt.Sscan(s.Width, &w)
		widths = append(widths, w)
	}
	assert.IsIncreasing(t, widths)
	assert.GreaterOrEqual(t, widths[0]*390/1000, 0.48)
}

// A plan has a table for each numbered line and no other, with the plan's own figures.
func TestSettingOut(t *testing.T) {
	p := demoPlan(t)
	page := pageOf(t, p)
	mains := 0
	for _, c := range p.Drawing.Contours {
		if c.Main {
			mains++
		}
	}
	require.Positive(t, mains)
	assert.Equal(t, mains, strings.Count(page, `<details class="contour">`))
	rows := regexp.MustCompile(`<li><span>([^<]+)</span> <span>([^<]+)</span> <span>([^<]+)</span> <span>([^<]+)</span></li>`).FindAllStringSubmatch(page, -1)
	n := 0
	for _, c := range p.Drawing.Contours {
		for _, crossing := range c.Crossings {
			require.Less(t, n, len(rows))
			assert.Equal(t, []string{crossing.Line, crossing.Cell, fmt.Sprintf("%.2f", crossing.At), crossing.Text}, rows[n][1:])
			n++
		}
	}
	assert.Equal(t, len(rows), n)
}

// On paper the tables of the numbered lines stand open, and the cautions begin a page.
func TestPrintedWork(t *testing.T) {
	ctx := browser(t)
	open(t, ctx, workedPlan(t), 1280)
	_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
	require.NoError(t, err)
	seen := ask[[]bool](t, ctx, `[...document.querySelectorAll(".contour li")].map(e => e.checkVisibility())`)
	require.NotEmpty(t, seen)
	assert.NotContains(t, seen, false)
	assert.Equal(t, "page", ask[string](t, ctx, `getComputedStyle(document.getElementById("cautions")).breakBefore`))
	assert.Equal(t, "block", ask[string](t, ctx, `getComputedStyle(document.querySelector(".stage .drawing")).display`))
}

// Whatever is named by a painter, a box or another program stays text in these sections.
func TestHostileWorkStaysText(t *testing.T) {
	p := workedPlan(t)
	bad := `<script>alert(1)</script>"'&<img:0>{{.Name}}</style>`
	c := &p.Layers.Coats[0]
	c.Medium, c.Why, c.Pass, c.Into = bad, bad, bad, bad
	c.Mixes = []plan.CoatMix{{Pile: bad, On: []string{bad, bad}, Slowest: bad, TouchDry: c.TouchDry}}
	p.Layers.Text, p.Amounts.Text = bad, bad
	p.Layers.Broken = []plan.Broken{{Rule: bad, Coats: []string{bad}, Reason: bad, Mend: bad, Line: bad, Source: bad}}
	s := &p.Days.Sessions[0]
	s.Date, s.Coats, s.Reason, s.Piles = bad, []string{bad}, bad, []plan.Pile{{ID: bad, Size: bad, Tubes: bad, Parts: []plan.Part{{Name: bad}}}}
	p.Days.After = []plan.Event{{Name: bad, From: bad, Text: bad}}
	p.Amounts.Tubes[0].Name, p.Amounts.Tubes[0].Text, p.Amounts.Mixes[0].ID = bad, bad, bad
	p.Amounts.Mediums = []plan.MediumAmount{{Medium: bad, ML: 1}}
	p.Cautions = []plan.Caution{{Text: bad, Short: bad, Kind: bad, Source: bad, Paints: []string{bad}, Colours: []string{bad}, Coats: []string{bad}}}
	page := pageOf(t, p)
	for _, markup := range []string{"<script", "<img:", "ZgotmplZ"} {
		assert.NotContains(t, page, markup)
	}
	assert.Equal(t, 1, strings.Count(page, "</style>"))
	assert.GreaterOrEqual(t, strings.Count(page, "&lt;script&gt;alert(1)&lt;/script&gt;"), 28)
}
