package plan

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/match"
	"tonewright/match/layer"
	"tonewright/match/paint"
)

// By hand: one session a week is one weekday, three are every other day and then a longer
// rest, seven are every day.
func TestSessionsAreSpreadOverTheWeek(t *testing.T) {
	for aWeek, days := range map[int][]int{
		1: {1, 8, 15, 22}, 2: {1, 4, 8, 11}, 3: {1, 3, 5, 8, 10, 12, 15}, 4: {1, 2, 4, 6, 8}, 7: {1, 2, 3, 4, 5, 6, 7, 8, 9},
	} {
		for slot, day := range days {
			assert.Equal(t, day, slotDay(slot, aWeek), "%d a week, session %d", aWeek, slot)
		}
	}
	for aWeek := 1; aWeek <= 7; aWeek++ {
		for slot := range 30 {
			assert.Equal(t, slotDay(slot, aWeek)+7, slotDay(slot+aWeek, aWeek))
			assert.Less(t, slotDay(slot, aWeek), slotDay(slot+1, aWeek))
		}
	}
}

// twoCoats are layers of one region: lead white over it, as many days apart as the painter
// sets.
func twoCoats(t testing.TB, after int, start string, aWeek int) Days {
	box := paint.Box{Paints: []paint.Paint{owned("lead-white")}}
	work := Work{Start: start, Sessions: aWeek, Coats: []CoatWish{
		{Region: "region 0", Pass: PassNext}, {Region: "region 0", Pass: PassNext, After: after},
	}}
	opt := onGround(t, "white", box, work)
	regions := madeRegions(rand.New(rand.NewPCG(1, 1)), opt, 1)
	return daysOf(layersOf(anywhere(regions, opt)), regions, opt.Work)
}

// The Gregorian calendar: 2028 has a 29 February, 2027 has not; December has 31 days; 28
// December 2026 is a Monday, as 25 December 2026, a Friday, shows in any printed calendar.
func TestDates(t *testing.T) {
	for _, c := range []struct {
		start string
		after int
		want  string
	}{
		{"2028-02-25", 4, "2028-02-29"}, {"2028-02-25", 5, "2028-03-01"}, {"2027-02-25", 4, "2027-03-01"},
		{"2026-12-28", 5, "2027-01-02"}, {"2100-02-25", 4, "2100-03-01"}, // no leap year: not divisible by 400
	} {
		d := twoCoats(t, c.after, c.start, 7)
		require.Len(t, d.Sessions, 2)
		assert.Equal(t, c.start, d.Start)
		assert.Equal(t, c.start, d.Sessions[0].Date)
		assert.Equal(t, c.want, d.Sessions[1].Date)
	}
	weekly := twoCoats(t, 5, "2026-12-28", 1)
	assert.Equal(t, "2027-01-04", weekly.Sessions[1].Date) // the next Monday
	counted := twoCoats(t, 5, "", 7)
	assert.Empty(t, counted.Start+counted.Sessions[1].Date+counted.After[0].From)
	assert.Equal(t, 6, counted.Sessions[1].Day)
}

// A painting is varnished 6 to 12 months after its last coat (common practice, no source);
// the calendar's own months are the measure, to two days.
func TestVarnish(t *testing.T) {
	d := twoCoats(t, 5, "2027-08-26", 7)
	last, err := time.Parse(time.DateOnly, d.Sessions[1].Date)
	require.NoError(t, err)
	varnish := d.After[len(d.After)-1]
	assert.Equal(t, "varnish", varnish.Name)
	for months, date := range map[int]string{6: varnish.From, 12: varnish.To} {
		on, err := time.Parse(time.DateOnly, date)
		require.NoError(t, err)
		assert.InDelta(t, 0, on.Sub(last.AddDate(0, months, 0)).Hours()/24, 2, date)
	}
	for _, e := range d.After {
		assert.LessOrEqual(t, e.Day.From, e.Day.To, e.Name)
		assert.GreaterOrEqual(t, e.Day.From, float64(d.Sessions[1].Day), e.Name)
		assert.LessOrEqual(t, e.From, e.To)
	}
}

// scheduleOf checks what has to hold of any schedule: each coat is laid once, none before
// what it lies on; a region's own coats are dry to the touch by the early end at least, and
// what a coat touches is wet or so dry; a session has no more piles than are wanted, but
// for a coat that alone has more.
func checkSchedule(t *testing.T, l Layers, d Days, piles int) {
	day, byID := dayOf(d), map[string]Coat{}
	count := 0
	for _, c := range l.Coats {
		byID[c.ID] = c
	}
	for i, s := range d.Sessions {
		count += len(s.Coats)
		require.Equal(t, i+1, s.Number)
		require.NotEmpty(t, s.Coats)
		if i > 0 {
			require.Greater(t, s.Day, d.Sessions[i-1].Day)
			assert.NotEmpty(t, s.Reason)
		}
		units, laid := 0, []string{}
		for _, id := range s.Coats {
			for _, m := range byID[id].Mixes {
				laid = withWord(laid, m.Pile)
			}
			if byID[id].Into == "" {
				units++
			}
		}
		assert.True(t, len(laid) <= piles || units == 1, "%v", s)
	}
	require.Equal(t, len(l.Coats), count)
	for _, c := range l.Coats {
		for _, id := range c.Over {
			below, gap := byID[id], float64(day[c.ID]-day[id])
			require.GreaterOrEqual(t, gap, 0.0)
			switch {
			case c.Own && c.Region == below.Region: // as set, see Broken
			case c.Region == below.Region:
				assert.GreaterOrEqual(t, gap, below.TouchDry.From, "%s over %s", c.ID, id)
			default:
				assert.True(t, gap <= below.WetFor.To || gap >= below.TouchDry.From, "%s beside %s after %v", c.ID, id, gap)
			}
		}
	}
	for i, c := range l.Coats {
		for _, above := range l.Coats[i+1:] {
			if above.Region != c.Region {
				continue
			}
			if gap := float64(day[above.ID] - day[c.ID]); above.After == 0 && above.Into == "" {
				assert.GreaterOrEqual(t, gap, c.GoOver.From, "%s over %s", above.ID, c.ID)
			}
			break
		}
	}
}

// Over random regions, surroundings, grounds, airs, coats of the painter's, sessions and
// piles no coat is laid before it may be.
func TestNoCoatBeforeItMay(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 9))
	for range 30 {
		work := Work{
			Sessions: 1 + random.IntN(7), Piles: 3 + random.IntN(10), Film: 40 + 100*random.Float64(),
			Air: layer.Air{Celsius: 5 + 30*random.Float64(), Humidity: 20 + 60*random.Float64()},
		}
		regions := 2 + random.IntN(6)
		if random.IntN(2) == 0 {
			for r := range 2 {
				for range 1 + random.IntN(3) {
					work.Coats = append(work.Coats, CoatWish{
						Region: fmt.Sprint("region ", r), Pass: []string{PassBlockIn, PassNext, PassGlaze}[random.IntN(3)],
						Wet: random.IntN(3) == 0, After: max(0, random.IntN(30)-15),
					})
				}
			}
		}
		opt := onGround(t, []string{"black", "white", "gray"}[random.IntN(3)], aBox(random), work)
		var colours []int
		for range regions {
			colours = append(colours, 1+random.IntN(6))
		}
		made := madeRegions(random, opt, colours...)
		in := anywhere(made, opt)
		border := make([]bool, regions*regions)
		for i := range border {
			border[i] = random.IntN(2) == 0
		}
		in.touch = func(a, b int) bool { return a != b && border[min(a, b)*regions+max(a, b)] }
		in.behind = random.Perm(regions)
		l := layersOf(in)
		checkSchedule(t, l, daysOf(l, made, opt.Work), work.Piles)
	}
}

// What is laid out and asked to be dry on a day is of that day's coats, and two sessions
// that could be one are not made: with room for all and nothing beneath, one does.
func TestOneSessionWhereOneDoes(t *testing.T) {
	opt := onGround(t, "white", paint.StarterBox(), Work{Piles: 40})
	regions := madeRegions(rand.New(rand.NewPCG(6, 6)), opt, 3, 3, 3)
	d := daysOf(layersOf(anywhere(regions, opt)), regions, opt.Work)
	require.Len(t, d.Sessions, 1)
	assert.Empty(t, d.Sessions[0].Dry)
	assert.Len(t, d.Sessions[0].Coats, 3)
}

// The demo is planned as a small panel is painted: blocked in in one session, then a few
// sessions within some weeks (common practice for a panel of 9 by 12 inches, no source).
func TestDemoIsPaintedInWeeks(t *testing.T) {
	ground, err := ParseGround("black")
	require.NoError(t, err)
	p, err := Make(Options{Photo: demo, Ground: ground})
	require.NoError(t, err)
	n := len(p.Days.Sessions)
	require.NotZero(t, n)
	assert.GreaterOrEqual(t, n, 3)
	assert.LessOrEqual(t, n, 8)
	assert.LessOrEqual(t, p.Days.Sessions[n-1].Day, 42)
	assert.Empty(t, p.Layers.Broken)
	for _, id := range p.Days.Sessions[0].Coats {
		assert.Equal(t, "1", id[len(id)-1:])
	}
	assert.Len(t, p.Days.Sessions[0].Coats, len(p.Regions))
}

// A neighbour is held to be wet by the middle of the estimate, as days are planned:
// titanium white is touch dry in 6 to 12 days and blends for 0.15 to 0.4 of them, 0.9 to
// 4.8 days, the middle 2.85.
func TestNeighboursAreWetByTheMiddle(t *testing.T) {
	c := coat{film: FilmUsual, piles: []pileOn{{of: match.Pile{Paints: []paint.Paint{known(t, "titanium-white")}, Parts: []float64{1}}}}}
	assert.InDelta(t, 2, wetFor(c, layer.Indoors), 0)
}

// The earliest day to go over a coat is never before its estimate is over: half a day more
// is another day. By hand; December has 31 days.
func TestCoatsKnowTheirDays(t *testing.T) {
	coats := []Coat{{ID: "A.1", GoOver: Span{2.4, 9}}, {ID: "A.2", GoOver: Span{2, 9}}, {ID: "B.1"}}
	d := Days{Sessions: []Session{{Day: 1, Coats: []string{"B.1"}}, {Day: 29, Coats: []string{"A.1", "A.2"}}}}
	d.onto(coats)
	assert.Equal(t, []int{29, 32, 29, 31, 1, 1}, []int{coats[0].Day, coats[0].OverDay, coats[1].Day, coats[1].OverDay, coats[2].Day, coats[2].OverDay})
	assert.Empty(t, coats[0].Date+coats[0].OverDate)
	d.Start = "2026-12-01"
	d.onto(coats)
	assert.Equal(t, []string{"2026-12-29", "2027-01-01", "2026-12-31", "2026-12-01"}, []string{coats[0].Date, coats[0].OverDate, coats[1].OverDate, coats[2].Date})
}
