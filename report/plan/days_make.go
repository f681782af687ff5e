// The schedule: coats onto the days of the sessions.

package plan

import (
	"fmt"
	"slices"
	"time"
)

// daysOf lays the coats onto sessions, each as early as it may be painted: none before
// the coats of its region beneath it can be gone over, none over or beside a neighbour's
// that is neither wet nor dry, and no more piles in a session than are wanted. None of
// its lists is nil. A start that is no date counts as none.
func daysOf(l Layers, regions []Region, work Work) Days {
	work = work.usual()
	d := Days{AWeek: work.Sessions, Sessions: []Session{}, After: []Event{}}
	start, err := time.Parse(time.DateOnly, work.Start)
	if err == nil {
		d.Start = work.Start
	}
	s := newSchedule(l, work)
	for slot := 0; len(s.day) < len(l.Coats); slot++ {
		s.fill(slot)
	}
	for _, day := range s.taken {
		d.Sessions = append(d.Sessions, s.session(len(d.Sessions)+1, day))
	}
	d.After = s.after()
	if err == nil {
		d.date(start)
	}
	d.Text = d.text()
	return d
}

// slotDay returns the day of a session slot, 1 for the first: as evenly over the week as
// whole days allow.
func slotDay(slot, aWeek int) int { return 1 + slot/aWeek*7 + slot%aWeek*7/aWeek }

// schedule is the coats as they are laid onto days.
type schedule struct {
	coats []Coat
	at    map[string]int // id → index
	work  Work
	day   map[int]int      // index → the day it is laid
	why   map[int]string   // index → what kept it back last
	piles map[int][]string // day → piles laid out
	taken []int            // days with a coat, in order
}

func newSchedule(l Layers, work Work) *schedule {
	s := &schedule{coats: l.Coats, at: map[string]int{}, work: work, day: map[int]int{}, why: map[int]string{}, piles: map[int][]string{}}
	for i, c := range l.Coats {
		s.at[c.ID] = i
	}
	return s
}

// fill lays the coats that may be laid on a slot's day.
func (s *schedule) fill(slot int) {
	day := slotDay(slot, s.work.Sessions)
	for i := range s.coats {
		if _, laid := s.day[i]; laid || s.coats[i].joins() {
			continue
		}
		unit := s.unit(i)
		if why := s.hinders(unit, day); why != "" {
			s.why[i] = why
			continue
		}
		for _, u := range unit {
			s.day[u] = day
			s.piles[day] = s.pilesWith(day, u)
		}
		if len(s.taken) == 0 || s.taken[len(s.taken)-1] != day {
			s.taken = append(s.taken, day)
		}
	}
}

// joins tells whether a coat is painted on the day of the one before, into it.
func (c Coat) joins() bool { return c.Into != "" && c.After == 0 }

// unit returns a coat and those that are painted into it on the same day while it is wet.
func (s *schedule) unit(i int) []int {
	unit := []int{i}
	for j := i + 1; j < len(s.coats); j++ {
		if c := s.coats[j]; c.joins() && c.Into == s.coats[unit[len(unit)-1]].ID {
			unit = append(unit, j)
		}
	}
	return unit
}

// hinders says what keeps coats from being laid on a day; "" where nothing does.
func (s *schedule) hinders(unit []int, day int) string {
	for _, u := range unit {
		for _, id := range s.coats[u].Over {
			below := s.at[id]
			if slices.Contains(unit, below) {
				continue
			}
			laid, is := s.day[below]
			if !is {
				return fmt.Sprintf("comes after %s", id)
			}
			if !s.bears(below, u, day-laid) {
				return fmt.Sprintf("waits for %s to dry", id)
			}
		}
	}
	if have := s.piles[day]; len(have) > 0 {
		for _, u := range unit {
			if len(s.pilesWith(day, u)) > s.work.Piles {
				return "the palette of the session before was full"
			}
		}
	}
	return ""
}

// bears tells whether a coat can be gone over by another after so many days.
func (s *schedule) bears(below, above, days int) bool {
	lower, upper := s.coats[below], s.coats[above]
	if lower.Region != upper.Region {
		return float64(days) <= lower.WetFor.To || float64(days) >= planned(lower.TouchDry)
	}
	if s.before(above) != below {
		return float64(days) >= lower.TouchDry.From
	}
	if upper.After > 0 {
		return days >= upper.After
	}
	return float64(days) >= planned(lower.GoOver)
}

// before returns the region's coat before one, -1 for its first.
func (s *schedule) before(i int) int {
	for b := i - 1; b >= 0; b-- {
		if s.coats[b].Region == s.coats[i].Region {
			return b
		}
	}
	return -1
}

// pilesWith returns the piles of a day with those of one more coat.
func (s *schedule) pilesWith(day, coat int) []string {
	piles := slices.Clone(s.piles[day])
	for _, m := range s.coats[coat].Mixes {
		if !slices.Contains(piles, m.Pile) {
			piles = append(piles, m.Pile)
		}
	}
	return piles
}

// session writes a day as data.
func (s *schedule) session(number, day int) Session {
	e := Session{Number: number, Day: day, Coats: []string{}, Mixes: append([]string{}, s.piles[day]...), Dry: []string{}, Piles: []Pile{}}
	for i, c := range s.coats {
		if s.day[i] != day {
			continue
		}
		e.Coats = append(e.Coats, c.ID)
		for _, id := range c.Over {
			below := s.at[id]
			wet := s.coats[below].Region != c.Region && float64(day-s.day[below]) <= s.coats[below].WetFor.To
			if s.day[below] != day && !wet && !slices.Contains(e.Dry, id) {
				e.Dry = append(e.Dry, id)
			}
		}
		if e.Reason == "" {
			e.Reason = s.why[i]
		}
	}
	return e
}
