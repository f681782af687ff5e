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
	work  Work
	day   map[int]int      // index → the day it is laid
	why   map[int]string   // index → what kept it back last
	piles map[int][]string // day → piles laid out
	taken []int            // days with a coat, in order
}

func newSchedule(l Layers, work Work) *schedule {
	s := &schedule{coats: l.Coats, work: work, day: map[int]int{}, why: map[int]string{}, piles: map[int][]string{}}
	return s
}

// fill lays the coats that may be laid on a slot's day, and notes what keeps the others.
func (s *schedule) fill(slot int) {
	day := slotDay(slot, s.work.Sessions)
	for next := s.next(day); next >= 0; next = s.next(day) {
		for _, u := range s.unit(next) {
			s.piles[day] = s.pilesWith(day, u)
			s.day[u] = day
		}
		if len(s.taken) == 0 || s.taken[len(s.taken)-1] != day {
			s.taken = append(s.taken, day)
		}
	}
	for i := range s.coats {
		if _, laid := s.day[i]; !laid {
			s.why[i] = s.hinders(s.unit(i), day)
		}
	}
}

// next returns the coat to be laid next on a day: the first that may be, but one that
// touches a coat of that day before others, which it would else have to wait for to dry;
// -1 where none may.
func (s *schedule) next(day int) int {
	first := -1
	for i := range s.coats {
		if _, laid := s.day[i]; laid || s.coats[i].joins() || s.hinders(s.unit(i), day) != "" {
			continue
		}
		if s.touches(i, day) {
			return i
		}
		if first < 0 {
			first = i
		}
	}
	return first
}

// touches tells whether a coat rests on one of a day.
func (s *schedule) touches(i, day int) bool {
	return slices.ContainsFunc(s.coats[i].rests, func(r rest) bool { return s.day[r.on] == day })
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
		for _, r := range s.coats[u].rests {
			if slices.Contains(unit, r.on) {
				continue
			}
			laid, is := s.day[r.on]
			if !is {
				return fmt.Sprintf("comes after %s", s.coats[r.on].ID)
			}
			if !r.bears(day - laid) {
				return fmt.Sprintf("waits for %s to dry", s.coats[r.on].ID)
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

// bears tells whether the coat beneath can be gone over, or beside, after so many days.
func (r rest) bears(days int) bool { return float64(days) >= r.days || float64(days) <= r.wet }

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
		for _, r := range c.rests {
			id, after := s.coats[r.on].ID, day-s.day[r.on]
			if float64(after) > r.wet && r.days > 0 && slices.Contains(c.Over, id) && !slices.Contains(e.Dry, id) {
				e.Dry = append(e.Dry, id)
			}
		}
		if e.Reason == "" {
			e.Reason = s.why[i]
		}
	}
	return e
}
