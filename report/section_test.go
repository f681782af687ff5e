package report

import (
	"bytes"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/report/plan"
)

// pageOf is the page of a plan, images and all.
func pageOf(t *testing.T, p *plan.Plan) string {
	var page bytes.Buffer
	require.NoError(t, HTML(&page, p))
	return page.String()
}

// sections lists the ids of the page's sections in order, regions aside.
func sections(page string) (ids []string) {
	for _, m := range regexp.MustCompile(`<section id="([^"]+)"`).FindAllStringSubmatch(page, -1) {
		ids = append(ids, m[1])
	}
	return ids
}

// What was composed stands in the page in words and figures, and each section has its
// place in the list of links.
func TestComposedSections(t *testing.T) {
	page := pageOf(t, composedPlan(t))
	for _, id := range []string{"picture", "stand-out", "sight", "more", "tubes", "paints"} {
		assert.Contains(t, sections(page), id)
		assert.Contains(t, page, `<li><a href="#`+id+`">`)
	}
	for _, text := range []string{
		"<b>Focal.</b> Mixed from your palette: Yellow Ochre and Burnt Umber, with Titanium White (analogous). It follows the photo&#39;s values only, in the palette&#39;s hues, and reaches values 2.1 to 9.4.",
		"Darkened by 1 value step.", "a dark such as ivory black would reach them",
		"Opposite the other&#39;s hue; both tubes are in use already.",
		`<code class="line">palette = [&#34;viridian&#34;]</code>`, "<code class=\"line\">aim = &#34;value&#34;\nvalue_shift = -1</code>",
		"A is to be focal, but stands out last.", "Darkening upper left, dark yellow-green by one value step", "No single change was found that mends it.",
		"value 60 %, chroma 30 %, hue 10 %", "D4:F4", "3 in",
		"For deutan 1.", "2 more pairs", "Viridian is transparent", "Others see hardly a step here.",
		"Kept: Titanium White, Yellow Ochre and Ivory Black.", "3 tubes of 12 do for this picture.", "Pyrrole Red: would bring",
	} {
		assert.Contains(t, page, text)
	}
	assert.NotContains(t, page, "ZgotmplZ")
	assert.Less(t, len(page), 3<<20, "bytes of the whole report")
}

// Where nothing was composed nothing is said of it: no section, no view, no line.
func TestPlainSections(t *testing.T) {
	p := *composedPlan(t)
	p.Sight, p.StandOut, p.LookAlikes, p.Tubes = fullSight, plan.StandOut{}, plan.LookAlikes{}, nil
	pics := p.Pictures
	pics.Study, pics.OneCoat, pics.PhotoSeen, pics.StudySeen, pics.Missed = nil, nil, nil, nil, nil
	p.Pictures, p.Regions = pics, plainRegions(p.Regions)
	page := pageOf(t, &p)
	for _, id := range []string{"stand-out", "sight", "tubes"} {
		assert.NotContains(t, sections(page), id)
		assert.NotContains(t, page, `href="#`+id+`"`)
	}
	for _, text := range []string{"Your sight", "One coat", "v-study", "v-missed", "whole box", "Palettes proposed", "Support"} {
		assert.NotContains(t, page, text)
	}
}

// plainRegions are regions as a plan has them that was asked for nothing.
func plainRegions(regions []plan.Region) []plan.Region {
	plain := append([]plan.Region{}, regions...)
	for i := range plain {
		plain[i].Role, plain[i].Shift, plain[i].Scheme, plain[i].Suggestions, plain[i].Standing = "support", 0, "", nil, nil
		plain[i].Palette = plan.Palette{From: "box", Aim: "photo"}
	}
	return plain
}

// With no roles the order is there, and how to set one; with roles that all agree, that.
func TestRoles(t *testing.T) {
	p := *composedPlan(t)
	p.StandOut.Disagreements, p.StandOut.LostEdges = nil, nil
	agree := pageOf(t, &p)
	assert.Contains(t, agree, "Every region stands where its role wants it.")
	assert.NotContains(t, agree, "tonewright start")
	assert.NotContains(t, agree, "Lost edges")

	p.Regions = append([]plan.Region{}, p.Regions...)
	for i := range p.Regions {
		p.Regions[i].Role = "support"
	}
	none := pageOf(t, &p)
	assert.Contains(t, none, `<td class="rank">1</td>`)
	assert.Contains(t, none, "<code>tonewright start kettle.jpg</code>")
	assert.NotContains(t, none, "Every region stands")
}

// A sight that misses something and a plan in which nothing looks alike to it: a sentence.
func TestNothingLooksAlike(t *testing.T) {
	p := *composedPlan(t)
	p.LookAlikes = plan.LookAlikes{}
	page := pageOf(t, &p)
	assert.Contains(t, page, "No two piles, tubes or neighbours")
	assert.NotContains(t, page, `class="stacked alike"`)
}

// Whatever a painter or another program names, it stays text, in the page and its style.
func TestHostileWordsStayText(t *testing.T) {
	p := *composedPlan(t)
	bad := `<script>alert(1)</script>"'&<img:0>{{.Name}}</style>` + "\u202e\u0007"
	p.Name, p.Sight = bad, bad
	p.StandOut.Measure = bad
	p.StandOut.Disagreements = []plan.Disagreement{{Region: bad, Role: bad, Text: bad, Mend: &plan.Mend{Name: bad, Line: bad, Text: bad}}}
	p.StandOut.LostEdges = []plan.LostEdge{{A: bad, B: bad, Where: bad}}
	p.LookAlikes.Piles = []plan.LookAlike{{A: bad, B: bad, Tells: bad}}
	p.Tubes = &plan.Tubes{Kept: []string{bad}, Text: bad, Dropped: []plan.Dropped{{Name: bad, Text: bad, Colours: []string{bad}}}}
	p.Regions = append([]plan.Region{}, p.Regions...)
	r := &p.Regions[0]
	r.Name, r.Role, r.Scheme, r.Palette.Note = bad, bad, bad, bad
	r.Suggestions = []plan.Suggestion{{Paints: []string{bad}, Names: []string{bad}, White: bad, TieIns: []string{bad}, Why: bad, Line: bad}}
	page := pageOf(t, &p)
	for _, markup := range []string{"<script", "<img:", "ZgotmplZ"} {
		assert.NotContains(t, page, markup)
	}
	assert.Equal(t, 1, strings.Count(page, "</style>"))
	assert.GreaterOrEqual(t, strings.Count(page, "&lt;script&gt;alert(1)&lt;/script&gt;"), 18)
	assert.GreaterOrEqual(t, strings.Count(page, "{{.Name}}"), 18)
}

// The terminal says what to do next, within its width.
func TestComposedText(t *testing.T) {
	p := *composedPlan(t)
	p.Regions = slices.Clone(p.Regions)
	p.Regions[0].Palette.From = plan.Proposed
	p.Regions[2].Scheme, p.Regions[2].Suggestions = "quiet", p.Regions[0].Suggestions // and a palette of the painter's
	p.Regions[3].Scheme, p.Regions[3].Palette = "quiet", plan.Palette{From: plan.WholeBox}
	edge := p.StandOut.LostEdges[0]
	p.StandOut.LostEdges = []plan.LostEdge{edge, edge, edge, edge, edge}
	var b bytes.Buffer
	require.NoError(t, PlanText(&b, &p, "report.html", "", "study.png, study-gray.png", "days.ics"))
	for _, line := range strings.Split(b.String(), "\n") {
		assert.LessOrEqual(t, utf8.RuneCountInString(line), columns, line)
	}
	for _, text := range []string{
		"Stands out, first to last: A, B, C", "Not as meant: A is to be focal, but stands out last.\n      To mend it, in the painting file under \"upper", "        aim = \"value\"\n        value_shift = -1\n",
		"No single change was found\n      that mends it.", "Lost edge: A and B along D4:F4, 3 in", "and 2 shorter lost edges, in the report",
		"and Burnt Sienna, with Titanium White", "Few tubes: 3 tubes of 12", "10 pairs of piles, 1 pair of tubes, 1",
		"Study:  study.png, study-gray.png\n", "Days:   days.ics\n",
	} {
		assert.Contains(t, b.String(), text)
	}
	assert.Contains(t, b.String(), "No palette for D (quiet): it is mixed from the whole box")
	assert.NotContains(t, b.String(), "Palette for C", "the painter's own is no proposal")
	assert.LessOrEqual(t, strings.Count(b.String(), "\n"), 40, "lines: a screen")
}
