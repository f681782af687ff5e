package answer

import (
	"cmp"
	"fmt"
	"slices"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
)

// Rounds is the log of a painting: the piles that were mixed and measured. It is a
// text file of one line a round with tabs between its columns, for the eye, for a
// spreadsheet, and to be read back. Lines that begin with # are the painter's own.
type Rounds struct {
	list  []round
	below []string      // comments under the last round
	owned []paint.Paint // that the piles' paints are looked up among, before the library
}

// round is one line of the log.
type round struct {
	above    []string // comments over it
	date     string   // YYYY-MM-DD
	aimed    string   // the plan's tag or the colour, as typed
	aim      colour.Lab
	photo    string     // its file name
	pile     loggedPile // none where none was told
	measured colour.Lab
	spread   float64
	deltaE   float64
	advice   string
	then     loggedPile // the pile if the advice is taken
}

// loggedPile is a pile in the log. A pile of a paint that is not known here, such as a
// tube of another box, has no paints but its text, to be written again as it was.
type loggedPile struct {
	match.Pile
	unread string
}

// unknown tells whether a paint of the round is not known here.
func (r round) unknown() bool { return r.pile.unread != "" || r.then.unread != "" }

// add puts a round at the bottom. Where it is the last one for its aim measured from
// the same photo once more, it takes the place of that.
func (l *Rounds) add(r round) {
	if i := l.placeOf(r); i >= 0 {
		l.remove(i)
	}
	r.above, l.below = l.below, nil
	l.list = append(l.list, r)
}

// before returns the rounds that a round comes after: all but itself.
func (l *Rounds) before(r round) []round {
	list := slices.Clone(l.list)
	if i := l.placeOf(r); i >= 0 {
		return slices.Delete(list, i, i+1)
	}
	return list
}

// placeOf returns where a round is in the log already; -1 where it is not.
func (l *Rounds) placeOf(r round) int {
	i := lastOf(l.list, r.aim)
	if i < 0 || inColumn(l.list[i].photo) != inColumn(r.photo) || labText(l.list[i].measured) != labText(r.measured) {
		return -1
	}
	return i
}

// remove takes a round out and leaves the comments over it.
func (l *Rounds) remove(i int) {
	if above := l.list[i].above; i+1 < len(l.list) {
		l.list[i+1].above = slices.Concat(above, l.list[i+1].above)
	} else {
		l.below = slices.Concat(above, l.below)
	}
	l.list = slices.Delete(l.list, i, i+1)
}

// lastOf returns the place of the last round for an aim; -1 if none. It goes by the
// colour: a plan that was made anew may give its tag to another.
func lastOf(list []round, aim colour.Lab) int {
	for i := len(list) - 1; i >= 0; i-- {
		if labText(list[i].aim) == labText(aim) {
			return i
		}
	}
	return -1
}

// countOf returns how many rounds an aim has had.
func countOf(list []round, aim colour.Lab) (n int) {
	for _, r := range list {
		if labText(r.aim) == labText(aim) {
			n++
		}
	}
	return n
}

// learnable returns the rounds whose piles are known: what tubes are learned from.
func learnable(list []round) (rounds []match.Round) {
	for _, r := range list {
		if len(r.pile.Paints) > 0 && !r.unknown() {
			rounds = append(rounds, match.Round{Pile: r.pile.Pile, Measured: r.measured, Spread: r.spread})
		}
	}
	return rounds
}

// unknownText says that rounds have paints that are not known here; "" where none has.
func unknownText(list []round, box string) string {
	unread, n := "", 0
	for _, r := range list {
		if r.unknown() {
			unread, n = cmp.Or(r.pile.unread, r.then.unread), n+1
		}
	}
	if n == 0 {
		return ""
	}
	rounds := fmt.Sprintf("%d rounds in the log, whose piles have", n)
	if n == 1 {
		rounds = "1 round in the log, whose pile has"
	}
	return fmt.Sprintf("Nothing is learned from %s a paint that neither %s nor the library knows (%s): give the --box this log was made with.", rounds, box, unread)
}
