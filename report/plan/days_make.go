// The schedule: coats onto the days of the sessions.

package plan

import (
	"maps"
	"math"
	"time"
)

// daysOf lays the coats onto sessions, each as early as it may be painted: none before
// the coats of its region beneath it can be gone over, none over or beside a neighbour's
// that is neither wet nor dry, and no more piles in a session than are wanted. None of
// its lists is nil. A start that is no date counts as none.
func daysOf(l Layers, regions []Region, work Work) Days {
	work = work.usual()
	d := Days{AWeek: work.Sessions, Sessions: []Session{}, After: []Event{}}
	s := scheduled(l.Coats, work)
	s.names = namesOf(regions)
	for _, day := range s.taken {
		d.Sessions = append(d.Sessions, s.session(len(d.Sessions)+1, day))
	}
	d.After = s.after()
	if start, err := time.Parse(time.DateOnly, work.Start); err == nil {
		d.date(start)
	}
	d.Text = d.text()
	return d
}

// namesOf returns the regions' names by their tags.
func namesOf(regions []Region) map[string]string {
	names := map[string]string{}
	for _, r := range regions {
		names[r.Tag] = r.Name
	}
	return names
}

// scheduled lays the coats onto days, and then tries whether it is over sooner if a coat
// that others wait for is left for a later session, with those that it touches.
func scheduled(coats []Coat, work Work) *schedule {
	best := greedy(coats, work, nil)
	asked := best.asked
	for better := true; better; {
		better = false
		for _, i := range best.waitedFor() {
			for by := 1; by <= mostLeft && !better && asked < mostAsked; by++ {
				left := maps.Clone(best.left)
				left[i] = best.slot[i] + by
				s := greedy(coats, work, left)
				asked += s.asked
				if s.sooner(best) {
					best, better = s, true
				}
			}
			if better {
				break
			}
		}
	}
	return best
}

// mostAsked is how often it is asked whether a coat may be laid before no better schedule
// is looked for. Ours: plans of photos ask 61 to 1,800 times; this many are done in about
// a second.
const mostAsked = 100_000

// mostLeft is by how many sessions a coat is left for later. Ours.
const mostLeft = 3

// greedy lays each coat onto the first slot that may have it, but none before the slot
// that it is left for.
func greedy(coats []Coat, work Work, left map[int]int) *schedule {
	s := newSchedule(coats, work, left)
	for slot := 0; len(s.day) < len(coats); {
		before := len(s.day)
		s.fill(slot)
		if slot++; len(s.day) == before {
			slot = max(slot, s.nextChange(slot-1)-1) // the slot before it tells what kept the coats
		}
	}
	return s
}

func newSchedule(coats []Coat, work Work, left map[int]int) *schedule {
	if left == nil {
		left = map[int]int{}
	}
	return &schedule{
		coats: coats, work: work, left: left,
		slot: map[int]int{}, day: map[int]int{}, hindered: map[int]hindrance{}, piles: map[int][]string{},
	}
}

// nextChange returns the first slot after one at which what keeps some coat may have ended:
// a coat beneath is dry, or it is the slot that it is left for. Until then all that can
// change is that wet paint sets.
func (s *schedule) nextChange(slot int) int {
	next, day := math.MaxInt, slotDay(slot, s.work.Sessions)
	for i, c := range s.coats {
		if _, laid := s.day[i]; laid {
			continue
		}
		if left := s.left[i]; left > slot {
			next = min(next, left)
		}
		for _, r := range c.rests {
			if laid, is := s.day[r.on]; is && float64(laid)+r.days > float64(day) {
				next = min(next, slotFrom(laid+int(math.Ceil(r.days)), s.work.Sessions))
			}
		}
	}
	return next
}

// slotFrom returns the first slot on or after a day.
func slotFrom(day, aWeek int) int {
	slot := (day - 1) / 7 * aWeek
	for slotDay(slot, aWeek) < day {
		slot++
	}
	return slot
}

// slotDay returns the day of a session slot, 1 for the first: as evenly over the week as
// whole days allow.
func slotDay(slot, aWeek int) int { return 1 + slot/aWeek*7 + slot%aWeek*7/aWeek }

// session writes a day as data.
func (s *schedule) session(number, day int) Session {
	e := Session{Number: number, Day: day, Coats: []string{}, Dry: []string{}, Piles: []Pile{}, Cautions: []string{}}
	for i, c := range s.coats {
		if s.day[i] != day {
			continue
		}
		e.Coats = append(e.Coats, c.ID)
		for _, id := range s.dryFor(i) {
			e.Dry = withWord(e.Dry, id)
		}
		if h, was := s.hindered[i]; was && e.Reason == "" {
			e.Reason = s.words(i, h)
		}
	}
	return e
}
