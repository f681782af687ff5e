package report

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"tonewright/report/plan"
)

// workedPlan is the composed plan with coats, days and amounts, made up by hand: these
// tests are about how they are worded and drawn.
func workedPlan(t *testing.T) *plan.Plan {
	p := *composedPlan(t)
	p.Layers, p.Days, p.Amounts = workedLayers(&p), plan.Days{}, workedAmounts(&p)
	p.Days = workedDays(&p)
	p.Cautions = workedCautions(&p)
	return &p
}

// workedLayers gives each region a block-in, the first two a next pass and the first a
// glaze of a mix of its own.
func workedLayers(p *plan.Plan) plan.Layers {
	l := plan.Layers{
		Air: plan.Air{Celsius: 20, Humidity: 50}, Medium: "none", FilmUM: 100, Order: tagsIn(p.Regions),
		Text: "Drying times are estimates, not promises: the slowest paint of a mix by its share, at 20 °C and 50 % humidity. The thumb decides.",
	}
	slices.Reverse(l.Order)
	for _, tag := range l.Order {
		l.Coats = append(l.Coats, workedCoat(p, tag, 1, plan.PassBlockIn, "solvent 1:4"))
	}
	next := workedCoat(p, "B", 2, plan.PassNext, "linseed 1:10")
	next.Over = []string{"B.1", "C.1"}
	wet := workedCoat(p, "A", 2, plan.PassNext, "none")
	wet.Into, wet.Own = "A.1", true
	glaze := workedCoat(p, "A", 3, plan.PassGlaze, "linseed 1:3")
	parts := p.Regions[0].Colours[0].Recipe.Parts
	glaze.Mixes = []plan.CoatMix{{Pile: "glaze 1", On: []string{"A1", "A2"}, Parts: parts, TouchDry: plan.Span{From: 5, To: 14}, Slowest: "Alizarin Crimson", Oil: plan.Span{From: 0.6, To: 0.75}}}
	l.Coats = append(l.Coats, wet, next, glaze)
	l.Broken = []plan.Broken{
		{Rule: "fast over slow", Coats: []string{"A.1", "A.2"}, Reason: "The coat above dries before the one below has stopped moving, and cracks.",
			Mend: "Wait 9 days more before the next pass of A.", Line: "after = 12", Coat: "A.2", Source: "Common practice, no source"},
		{Rule: "fat over lean", Coats: []string{"B.1", "B.2"}, Reason: "The lean coat above is brittle over the fat one.", Mend: "Mix a tenth of linseed oil into B.2.", Source: "a handbook, p. 170"},
	}
	return l
}

func workedCoat(p *plan.Plan, tag string, n int, pass, medium string) plan.Coat {
	c := plan.Coat{
		ID: fmt.Sprintf("%s.%d", tag, n), Region: tag, Pass: pass, Medium: medium, FilmUM: 100,
		TouchDry: plan.Span{From: 2, To: 6}, GoOver: plan.Span{From: 3, To: 8}, WetFor: plan.Span{From: 0.5, To: 1.5},
		Oil: plan.Span{From: 0.44, To: 0.52}, Over: []string{}, Why: "It lies behind all that follows.",
	}
	for _, colour := range regionOf(p, tag).Colours {
		c.Mixes = append(c.Mixes, plan.CoatMix{ID: colour.ID, Pile: colour.ID, On: []string{colour.ID}, Parts: colour.Recipe.Parts, TouchDry: c.TouchDry, Slowest: colour.Recipe.Parts[0].Name, Oil: c.Oil})
	}
	return c
}

// workedDays paints one coat a session, in order, and then what comes after.
func workedDays(p *plan.Plan) plan.Days {
	d := plan.Days{Start: "2026-11-30", AWeek: 3, Text: "Three sessions a week, each as early as the coats below allow."}
	first := time.Date(2026, 11, 30, 0, 0, 0, 0, time.UTC)
	for i, c := range p.Layers.Coats {
		s := plan.Session{Number: i + 1, Day: 1 + i*7/3, Coats: []string{c.ID}, Dry: []string{}}
		s.Date = first.AddDate(0, 0, s.Day-1).Format(time.DateOnly)
		coat := &p.Layers.Coats[i]
		coat.Day, coat.Date, coat.OverDay = s.Day, s.Date, s.Day+3
		coat.OverDate = first.AddDate(0, 0, s.Day+2).Format(time.DateOnly)
		for _, m := range c.Mixes {
			s.Piles = append(s.Piles, plan.Pile{ID: m.Pile, ML: 1.24, Size: "a hazelnut", Tubes: "Titanium White 3/8 in, Viridian a dab", Parts: m.Parts})
		}
		if len(c.Over) > 0 {
			s.Dry, s.Reason = c.Over, "waits for "+c.Over[0]+" to dry"
		}
		d.Sessions = append(d.Sessions, s)
	}
	d.After = []plan.Event{
		{Name: "touch dry", Day: plan.Span{From: 33, To: 33}, From: "2027-01-01", To: "2027-01-01", Text: "All of it should be touch dry."},
		{Name: "varnish", Day: plan.Span{From: 200, To: 383}, From: "2027-06-17", To: "2027-12-17", Text: "Once it is dry all through, six to twelve months; a thin retouching varnish may go on sooner."},
	}
	return d
}

func workedAmounts(p *plan.Plan) plan.Amounts {
	a := plan.Amounts{FilmUM: 100, Waste: 0.3, Spread: 10, Mediums: []plan.MediumAmount{{Medium: "linseed", ML: 2.1}}, Text: "At 100 µm wet a litre covers 10 m²; 30 % more is laid out than is painted."}
	for _, r := range p.Regions {
		for _, c := range r.Colours {
			a.Mixes = append(a.Mixes, plan.MixAmount{ID: c.ID, CM2: 61.5, Coats: 2, ML: 1.6, Grams: 2.9})
		}
	}
	left := []float64{37, 0.4}
	for i, c := range p.Paints {
		tube := plan.TubeAmount{Paint: c.ID, Name: c.Name, ML: 3.2, Grams: 6.1, Density: 1.9, Text: "takes about 3 ml"}
		if i < len(left) {
			tube.LeftML, tube.BuyML, tube.Text = &left[i], []float64{0, 2.8}[i], []string{"enough", "buy one"}[i]
		}
		a.Tubes, a.ML = append(a.Tubes, tube), a.ML+tube.ML
	}
	return a
}

// workedCautions gives cautions of every kind, and their keys to coats and sessions.
func workedCautions(p *plan.Plan) []plan.Caution {
	for i := range p.Layers.Coats {
		p.Layers.Coats[i].Cautions = []string{"solvent"}
		p.Days.Sessions[i].Cautions = []string{"cadmium", "solvent"}
	}
	return []plan.Caution{
		{Key: "cadmium", Kind: "pigment", Short: "cadmium: no dry sanding, no spraying", Text: "Harmful if breathed in or swallowed: never sand it dry or spray it. Labels come first.",
			Paints: []string{"Cadmium Red Light", "Cadmium Yellow Lemon"}, Colours: []string{"A1", "B2"}, Source: "from memory"},
		{Key: "solvent", Kind: "medium", Short: "solvent: open a window", Text: "The vapour of solvents harms: open two windows, keep the pot shut. Labels come first.", Coats: []string{"A.1", "B.1"}, Source: "[HSE] EH40"},
		{Key: "rags", Kind: "studio", Short: "oily rags: under water or spread out", Text: "Rags with drying oil heat up by themselves and can catch fire. Labels come first.", Source: "Common practice, no source"},
		{Key: "fades", Kind: "lightfastness", Short: "Alizarin Crimson fades in tints", Text: "Alizarin Crimson is weak in tints and glazes. Labels come first.", Paints: []string{"Alizarin Crimson"}, Colours: []string{"A1"}, Source: "[ASTM D4303]"},
	}
}

// An estimate is said in the unit that suits each end, and no finer than it is known.
func TestTimeText(t *testing.T) {
	for _, c := range []struct {
		from, to float64
		want     string
	}{
		{1.0 / 24, 1.0 / 24, "1 hour"}, {0, 0.1, "1 to 2 hours"}, {0.1, 2.4, "2 hours to 2 days"}, {0.4, 0.6, "12 hours"}, {0.7, 8, "18 hours to 8 days"},
		{1, 1.2, "1 day"}, {2, 6, "2 to 6 days"}, {5, 5.2, "5 days"}, {6, 28, "6 days to 4 weeks"}, {35, 70, "5 to 10 weeks"}, {182.6, 365.25, "6 to 12 months"},
	} {
		assert.Equal(t, c.want, timeText(plan.Span{From: c.from, To: c.to}))
	}
}

// Of the coats that have to be dry a thumb reaches the uppermost: each region once, in
// the plan's order, by its name where that has no comma.
func TestPlacesToTouch(t *testing.T) {
	p := workedPlan(t)
	p.Regions = slices.Clone(p.Regions)
	p.Regions[1].Name = "bottle"
	name := coatNamerOf(p)
	assert.Equal(t, "bottle and C", name.placesText([]string{"C.1", "B.1", "B.2"}))
	assert.Equal(t, "block-in of bottle, C, 1 more; next pass of bottle", name.passes([]string{"B.1", "C.1", "D.1", "B.2"}, 2))
	assert.Empty(t, name.placesText([]string{"Z.9"}))
}

// What the plan says of days it says in one line, dated or counted.
func TestSpanText(t *testing.T) {
	p := workedPlan(t)
	assert.Equal(t, "12 sessions from Mon 30 Nov 2026 to Fri 25 Dec 2026, 3 a week", spanText(&p.Days))
	p.Days.Start = ""
	assert.Equal(t, "12 sessions within 26 days, 3 a week", spanText(&p.Days))
	p.Days.Sessions, p.Days.Start = p.Days.Sessions[:1], "2026-11-30"
	assert.Equal(t, "1 session on Mon 30 Nov 2026, 3 a week", spanText(&p.Days))
	p.Days.Sessions = nil
	assert.Empty(t, spanText(&p.Days))
}
