package layer

import (
	"math"
	"testing"

	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
)

func touch(c Coat) Range { return Drying(c, Indoors).Touch }

// sooner tells that one range lies before another at both ends.
func sooner(t *testing.T, a, b Range, note string, args ...any) {
	t.Helper()
	assert.Less(t, a.From, b.From, append([]any{note}, args...)...)
	assert.Less(t, a.To, b.To, append([]any{note}, args...)...)
}

// A coat of one paint, of the film the facts are told of, takes their days.
func TestPaintAloneTakesItsDays(t *testing.T) {
	for _, p := range paint.Library() {
		days := touch(Coat{Paints: []paint.Paint{p}, Parts: []float64{3}, Film: thinFilm})
		assert.InDelta(t, float64(p.Facts.TouchDry[0]), days.From, 1e-9, p.ID)
		assert.InDelta(t, float64(p.Facts.TouchDry[1]), days.To, 1e-9, p.ID)
	}
}

// What dries before what: [Wehlte1975] p. 65 (lead, cobalt, manganese and Prussian blue
// speed oil, zinc white retards), [Saitzyk1987] (carbon blacks, cadmiums, alizarin and zinc
// white the slowest; cobalt and manganese colours and umbers fast), [Massey1967] (umbers
// and flake white fast).
func TestFastBeforeSlow(t *testing.T) {
	fast := []string{"lead-white", "cobalt-blue", "manganese-violet", "raw-umber", "burnt-umber", "prussian-blue"}
	slow := []string{"zinc-white", "cadmium-yellow-light", "cadmium-red-medium", "alizarin-crimson", "ivory-black", "lamp-black"}
	for _, a := range fast {
		for _, b := range slow {
			x, y := Drying(coat(t, a), Indoors), Drying(coat(t, b), Indoors)
			sooner(t, x.Touch, y.Touch, "%s before %s", a, b)
			sooner(t, x.Through, y.Through, "%s before %s", a, b)
			sooner(t, x.Wet, y.Wet, "%s before %s", a, b)
			assert.True(t, dryingOf(coat(t, a), Indoors).faster(dryingOf(coat(t, b), Indoors)), "%s clearly before %s", a, b)
		}
	}
	for _, black := range []string{"ivory-black", "lamp-black"} { // the slowest of all
		for _, p := range paint.Library() {
			if p.Facts.Drying != "very slow" {
				sooner(t, touch(coat(t, p.ID)), touch(coat(t, black)), "%s before %s", p.ID, black)
			}
		}
	}
	sooner(t, touch(coat(t, "yellow-ochre")), touch(coat(t, "cadmium-yellow-light")), "ochre is medium")
}

// Half a millimetre of stand oil in a cold, damp room: decades by the factors, which say
// nothing any more.
func TestNoCoatTakesForEver(t *testing.T) {
	c := coat(t, "ivory-black").with(Medium{StandOil, 20})
	c.Film = 1000
	d := Drying(c, Air{0, 95})
	assert.Equal(t, 1095.0, d.Through.To)
	assert.Equal(t, 1095.0, d.Touch.To)
	assert.NotEmpty(t, rulesOf(stacked(Laid{Coat: c})), "and it is told that it is no way to paint")
}

// Common practice, no source: after touch dry comes dry through, and blending ends before.
func TestDryInOrder(t *testing.T) {
	for _, p := range paint.Library() {
		for _, film := range []float64{5, 25, 60, 100, 180, 400} {
			for _, m := range []Medium{{}, {Linseed, 0.2}, {Alkyd, 0.3}, {StandOil, 1}, {Solvent, 1}} {
				d := Drying(Coat{[]paint.Paint{p}, []float64{1}, film, m, false}, Air{12, 70})
				for _, r := range []Range{d.Touch, d.Through, d.Wet} {
					assert.True(t, 0 < r.From && r.From < r.To && r.To < 1e4, "%s %g µm %s: %v", p.ID, film, m, r)
				}
				assert.Less(t, d.Wet.To, d.Touch.To)
				assert.LessOrEqual(t, d.Touch.From, d.Through.From)
				assert.LessOrEqual(t, d.Touch.To, d.Through.To)
			}
		}
	}
}

// That a speck of black does not set the pace of a pile and a quarter does, is common
// practice, no source.
func TestSlowPaintByShare(t *testing.T) {
	white := touch(coat(t, "lead-white"))
	black := touch(coat(t, "lamp-black"))
	speck := touch(coat(t, "lead-white", 127, "lamp-black", 1))
	assert.InEpsilon(t, white.From, speck.From, 0.05)
	assert.InEpsilon(t, white.To, speck.To, 0.05)
	before := white
	for _, parts := range []float64{1. / 32, 1. / 12, 1. / 4, 1, 3, 12} {
		mixed := touch(coat(t, "lead-white", 1, "lamp-black", parts))
		sooner(t, before, mixed, "black %g", parts)
		sooner(t, mixed, black, "black %g", parts)
		before = mixed
	}

	// Without driers, a quarter of a very slow paint has the pile wait for it.
	ochre := touch(coat(t, "yellow-ochre", 3, "lamp-black", 1))
	assert.InDelta(t, black.To, ochre.To, 1e-9)
	assert.Less(t, ochre.From, black.From)
	assert.Equal(t, touch(coat(t, "yellow-ochre")).To, touch(coat(t, "yellow-ochre")).To)
	assert.Less(t, touch(coat(t, "yellow-ochre", 31, "lamp-black", 1)).To, 6*1.05, "a touch")
}

// [Uebele1913] on umber, [Wehlte1975]: a little of a drier speeds the rest, more than as
// much of a paint that is as fast but no drier.
func TestDriersSpeedTheRest(t *testing.T) {
	alone := touch(coat(t, "alizarin-crimson"))
	with := touch(coat(t, "alizarin-crimson", 11, "burnt-umber", 1))
	sooner(t, with, alone, "a part of umber in twelve")
	sooner(t, with, touch(coat(t, "alizarin-crimson", 11, "raw-sienna", 1)), "raw sienna is as fast and no drier")
	assert.Less(t, with.From, 0.75*alone.From, "more than its share")
	for _, id := range []string{"burnt-umber", "raw-umber", "lead-white", "cobalt-blue", "manganese-violet", "prussian-blue"} {
		assert.True(t, drier(tube(t, id)), id)
	}
	for _, id := range []string{"cerulean-blue", "ultramarine-blue", "zinc-white", "titanium-white", "raw-sienna", "ivory-black"} {
		assert.False(t, drier(tube(t, id)), id)
	}
}

// Whatever is raised, days do not fall: the film, damp, cold, and the share of the slower
// of any two paints.
func TestMonotone(t *testing.T) {
	never := func(a, b Dries, note string, args ...any) {
		t.Helper()
		for _, p := range [][2]Range{{a.Touch, b.Touch}, {a.Through, b.Through}, {a.Wet, b.Wet}} {
			assert.LessOrEqual(t, p[0].From, p[1].From*(1+1e-12), append([]any{note}, args...)...)
			assert.LessOrEqual(t, p[0].To, p[1].To*(1+1e-12), append([]any{note}, args...)...)
		}
	}
	mix := coat(t, "titanium-white", 3, "burnt-umber", 1, "alizarin-crimson", 2)
	for film := 5.0; film < 600; film += 5 {
		thin, thick := mix, mix
		thin.Film, thick.Film = film, film+5
		a, b := Drying(thin, Indoors), Drying(thick, Indoors)
		never(a, b, "%g µm", film)
		assert.Less(t, a.Touch.To, b.Touch.To)
	}
	for step := 0.0; step < 100; step++ {
		never(Drying(mix, Air{20, step}), Drying(mix, Air{20, step + 1}), "%g %%", step)
		never(Drying(mix, Air{41 - step/2, 50}), Drying(mix, Air{40 - step/2, 50}), "%g °C", 40-step/2)
	}
	all := paint.Library()
	for i, a := range all {
		for _, b := range all[i+1:] {
			if a.Facts.TouchDry[0] > b.Facts.TouchDry[0] {
				a, b = b, a
			}
			for share := 1.; share < 12; share++ {
				less := Drying(Coat{[]paint.Paint{a, b}, []float64{13 - share, share - 1 + 1e-3}, 100, Medium{}, false}, Indoors)
				more := Drying(Coat{[]paint.Paint{a, b}, []float64{12 - share, share + 1e-3}, 100, Medium{}, false}, Indoors)
				never(less, more, "%s, %g of %s", a.ID, share, b.ID)
			}
		}
	}
}

// Twice as thick, a thin film takes about twice as long: common practice, no source. Dry
// through goes up to the square of the film, as fronts in a curing coating do: [Erich2006].
func TestFilm(t *testing.T) {
	c := coat(t, "titanium-white")
	thin := Drying(c, Indoors)
	c.Film = 200
	thick := Drying(c, Indoors)
	assert.True(t, 1.5 < thick.Touch.From/thin.Touch.From && thick.Touch.From/thin.Touch.From < 2)
	assert.True(t, 2 < thick.Touch.To/thin.Touch.To && thick.Touch.To/thin.Touch.To < 3)
	assert.InDelta(t, 2, thick.Through.From/thin.Through.From, 1e-9)
	assert.InDelta(t, 4, thick.Through.To/thin.Through.To, 1e-9)
	// Solvent leaves a film as thin as paint laid so thin.
	c.Medium = Medium{Solvent, 1}
	assert.Equal(t, thin.Touch, Drying(c, Indoors).Touch)
}

// Chemical change goes two to three times as fast for 10 °C (rule of thumb, from memory).
// By [Dick1872] no. 2735 moist or cold air delays drying.
func TestAir(t *testing.T) {
	c := coat(t, "titanium-white")
	warm, cold := touch(c), Drying(c, Air{10, 50}).Touch
	assert.InDelta(t, 1.5, cold.From/warm.From, 1e-9)
	assert.InDelta(t, 2.5, cold.To/warm.To, 1e-9)
	damp := Drying(c, Air{20, 85}).Touch
	assert.Equal(t, warm.From, damp.From)
	assert.Greater(t, damp.To, 1.2*warm.To)
	dry := Drying(c, Air{20, 20}).Touch
	assert.Less(t, dry.From, warm.From)
	assert.Equal(t, warm.To, dry.To)
}

// Oils in the order in which glossaries have them dry: linseed 3-5 days, walnut 4-5, poppy
// 5-7, stand oil 7-14; an alkyd sooner than its paint alone: common practice, no source.
func TestMediumsInOrder(t *testing.T) {
	white := coat(t, "titanium-white")
	plain := touch(white)
	before := touch(white.with(Medium{Alkyd, 0.25}))
	sooner(t, before, plain, "alkyd")
	assert.LessOrEqual(t, touch(white.with(Medium{Alkyd, 0.25})).From, plain.From/2, "an alkyd halves it")
	for _, kind := range []string{Linseed, Walnut, Safflower, StandOil} {
		days := touch(white.with(Medium{kind, 0.25}))
		sooner(t, before, days, kind)
		assert.LessOrEqual(t, plain.From, days.From)
		assert.Less(t, plain.To, days.To)
		more := touch(white.with(Medium{kind, 0.5}))
		assert.LessOrEqual(t, days.From, more.From)
		assert.Less(t, days.To, more.To)
		before = days
	}
	assert.Less(t, touch(white.with(Medium{Solvent, 0.5})).To, plain.To, "solvent only thins the film")
	for _, kind := range Kinds() {
		_, known := mediums[kind]
		assert.Equal(t, kind != None && kind != Solvent, known, kind)
	}
}

// What paint lies on matters, [Dick1872] no. 2735: an absorbent ground may hasten it, and
// does not slow it (common practice, no source).
func TestAbsorbentGround(t *testing.T) {
	c := coat(t, "titanium-white")
	before := touch(c)
	c.Soaks = true
	assert.Less(t, touch(c).From, before.From)
	assert.LessOrEqual(t, touch(c).To, before.To)
}

func TestSlowest(t *testing.T) {
	slowest := func(mix ...any) string {
		c := coat(t, mix...)
		return c.Paints[Drying(c, Indoors).Slowest].ID
	}
	assert.Equal(t, "lamp-black", slowest("lead-white", 11, "lamp-black", 1))
	assert.Equal(t, "lead-white", slowest("lead-white", 31, "lamp-black", 1))
	assert.Equal(t, "titanium-white", slowest("alizarin-crimson", 1, "titanium-white", 3), "as slow, and more of it")
	assert.Equal(t, "alizarin-crimson", slowest("alizarin-crimson", 2, "titanium-white", 2), "as slow, and first")
	all := Coat{Film: 100}
	for _, p := range paint.Library() {
		all.Paints, all.Parts = append(all.Paints, p), append(all.Parts, 1)
	}
	assert.Equal(t, "very slow", all.Paints[Drying(all, Indoors).Slowest].Facts.Drying, "of a pile of specks, the slowest")
	assert.Equal(t, Dries{Slowest: -1}, Drying(Coat{}, Indoors))
}

func TestIndoorsChangesNothing(t *testing.T) {
	f := airFactor(Indoors)
	assert.Equal(t, Range{1, 1}, f)
	assert.False(t, math.IsNaN(airFactor(Air{}).To))
}
