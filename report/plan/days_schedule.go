// Coats on days, one slot after the other.

package plan

import (
	"fmt"
	"slices"
)

// schedule is the coats as they are laid onto days. Its maps are by index in coats.
type schedule struct {
	coats    []Coat
	work     Work
	left     map[int]int       // the slot that a coat is left for
	slot     map[int]int       // of the session it is laid in
	day      map[int]int       // it is laid
	hindered map[int]hindrance // what kept it from the last slot that it was not laid in
	piles    map[int][]string  // day → piles laid out
	taken    []int             // days with a coat, in order
	names    map[string]string // of the regions, by tag
	asked    int               // how often it was asked what hinders a coat
}

// hindrance is what keeps a coat from a session.
type hindrance struct {
	by   string // one of the following; "": nothing
	coat int    // for waits and follows, the one it waits for
}

const (
	waitsFor = "waits"   // for a coat to dry
	follows  = "follows" // a coat that is not laid yet
	noRoom   = "no room" // on the palette
	isLeft   = "left"    // for another session
)

// fill lays the coats that may be laid in a slot, and notes what keeps the others.
func (s *schedule) fill(slot int) {
	day := slotDay(slot, s.work.Sessions)
	for next := s.next(slot, day); next >= 0; next = s.next(slot, day) {
		for _, u := range s.unit(next) {
			s.piles[day] = s.withPiles(s.piles[day], u)
			s.slot[u], s.day[u] = slot, day
		}
		if len(s.taken) == 0 || s.taken[len(s.taken)-1] != day {
			s.taken = append(s.taken, day)
		}
	}
	for i := range s.coats {
		if _, laid := s.day[i]; !laid {
			s.hindered[i] = s.hinders(i, slot, day)
		}
	}
}

// next returns the coat to be laid next in a slot: the first that may be, but one that
// touches a coat of that day before others, which it would else have to wait for to dry;
// -1 where none may.
func (s *schedule) next(slot, day int) int {
	first := -1
	for i := range s.coats {
		if _, laid := s.day[i]; laid || s.coats[i].joins() || s.hinders(i, slot, day).by != "" {
			continue
		}
		if slices.ContainsFunc(s.coats[i].rests, func(r rest) bool { return s.day[r.on] == day }) {
			return i
		}
		if first < 0 {
			first = i
		}
	}
	return first
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

// hinders returns what keeps a coat, with those painted into it, from a slot.
func (s *schedule) hinders(i, slot, day int) hindrance {
	s.asked++
	unit := s.unit(i)
	for _, u := range unit {
		for _, r := range s.coats[u].rests {
			if slices.Contains(unit, r.on) {
				continue
			}
			if laid, is := s.day[r.on]; !is {
				return hindrance{follows, r.on}
			} else if !r.bears(day - laid) {
				return hindrance{waitsFor, r.on}
			}
		}
	}
	piles := s.piles[day]
	for _, u := range unit {
		piles = s.withPiles(piles, u)
	}
	switch {
	case len(s.piles[day]) > 0 && len(piles) > s.work.Piles:
		return hindrance{by: noRoom}
	case slot < s.left[i]:
		return hindrance{by: isLeft}
	}
	return hindrance{}
}

// bears tells whether the coat beneath can be gone over, or beside, after so many days.
func (r rest) bears(days int) bool { return float64(days) >= r.days || float64(days) <= r.wet }

// withPiles returns piles and those of one more coat.
func (s *schedule) withPiles(piles []string, coat int) []string {
	piles = slices.Clone(piles)
	for _, m := range s.coats[coat].Mixes {
		piles = withWord(piles, m.Pile)
	}
	return piles
}

// sooner tells whether a schedule is over before another, or as soon with its coats laid
// earlier.
func (s *schedule) sooner(than *schedule) bool {
	if len(s.taken) == 0 {
		return false
	}
	last, others := s.taken[len(s.taken)-1], than.taken[len(than.taken)-1]
	return last < others || last == others && s.allDays() < than.allDays()
}

func (s *schedule) allDays() (sum int) {
	for i := range s.coats {
		sum += s.day[i]
	}
	return sum
}

// waitedFor lists the coats that the last session waits for, and what those waited for.
func (s *schedule) waitedFor() (chain []int) {
	if len(s.taken) == 0 {
		return nil
	}
	for i := range s.coats {
		if s.day[i] != s.taken[len(s.taken)-1] {
			continue
		}
		for h, was := s.hindered[i]; was && h.by == waitsFor && !slices.Contains(chain, h.coat); h, was = s.hindered[h.coat] {
			chain = append(chain, h.coat)
		}
	}
	return chain
}

// dryFor lists the coats that have to be dry to the touch before one is laid: those it
// lies on, but for a neighbour's that is still wet then.
func (s *schedule) dryFor(i int) (ids []string) {
	for _, r := range s.coats[i].rests {
		id, after := s.coats[r.on].ID, s.day[i]-s.day[r.on]
		if r.days > 0 && float64(after) > r.wet && slices.Contains(s.coats[i].Over, id) {
			ids = append(ids, id)
		}
	}
	return ids
}

// words says why a coat was not laid before.
func (s *schedule) words(i int, h hindrance) string {
	coat, other := s.called(i), s.called(h.coat)
	switch {
	case h.by == waitsFor && s.coats[i].Region == s.coats[h.coat].Region:
		return fmt.Sprintf("%s waits for %s beneath it", coat, s.coats[h.coat].ID)
	case h.by == waitsFor:
		return fmt.Sprintf("%s waits for %s, which it touches", coat, other)
	case h.by == noRoom:
		return fmt.Sprintf("%s had no room on the palette before", coat)
	case h.by == isLeft && s.meets(i):
		return fmt.Sprintf("%s is left for the day of what it touches, so that neither waits for the other to dry", coat)
	case h.by == isLeft:
		return fmt.Sprintf("%s is left for later, since so all is done sooner", coat)
	}
	return fmt.Sprintf("%s comes after %s", coat, other)
}

// meets tells whether a coat is laid on the day of another that it touches.
func (s *schedule) meets(i int) bool {
	on := func(r rest) bool { return s.day[r.on] == s.day[i] }
	if slices.ContainsFunc(s.coats[i].rests, on) {
		return true
	}
	for j, c := range s.coats {
		if s.day[j] == s.day[i] && slices.ContainsFunc(c.rests, func(r rest) bool { return r.on == i }) {
			return true
		}
	}
	return false
}

// called names a coat and its region.
func (s *schedule) called(i int) string {
	c := s.coats[i]
	return fmt.Sprintf("%s (%s)", c.ID, s.names[c.Region])
}
