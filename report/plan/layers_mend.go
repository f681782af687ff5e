// Mends of the rules that the painter's coats break: each is tried before it is offered.

package plan

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"tonewright/match/layer"
)

// coatMend is one change to the painting file.
type coatMend struct {
	coats []coat // of the region, as they are then
	at    int    // index of the coat whose block the line stands in
	line  string // of a coat's block; "": no one line does it
	words string
	waits bool // it takes days, and changes nothing else
}

// longWait is the wait, in days, from which other paints are offered first. Ours: two
// weeks are about what the slowest paint takes to be dry to the touch.
const longWait = 14

// gravity ranks what comes of a broken rule. Ours, by how late it shows and whether time
// heals it: zinc white beneath grows brittle and lets go of all above whatever else is done;
// coats that move against each other crack after years; what wrinkles or stays soft shows
// within weeks; and what is laid too early is felt by the brush, and heals by waiting.
func gravity(rule string) int {
	switch rule {
	case layer.ZincBeneath:
		return 3
	case layer.FatOverLean, layer.FastOverSlow:
		return 2
	case layer.TooThick, layer.TooMuchMedium:
		return 1
	}
	return 0
}

// mend returns a change that does away with a fault and brings no other, or else only
// milder ones that a second change does away with, which the words name; false where none
// of those tried does. Where both other paints and waiting mend it, the words name both,
// and the line is of the better.
func (in layersFrom) mend(coats []coat, f layer.Fault) (coatMend, bool) {
	before := in.faults(coats)
	mends := in.mends(coats, f, before)
	for i, m := range mends {
		if !in.clears(coats, m, f, before) {
			continue
		}
		for _, other := range mends[i+1:] {
			if other.waits != m.waits && in.clears(coats, other, f, before) {
				m.words += " Or " + lowerFirst(other.words)
				break
			}
		}
		return m, true
	}
	for _, m := range mends {
		if second, found := in.second(coats, m, f, before); found {
			m.words += " Then " + lowerFirst(second.words)
			return m, true
		}
	}
	return coatMend{}, false
}

// lowerFirst returns a sentence as it goes on after another word.
func lowerFirst(sentence string) string { return strings.ToLower(sentence[:1]) + sentence[1:] }

// clears tells whether a change does away with a fault and brings no other.
func (in layersFrom) clears(coats []coat, m coatMend, f layer.Fault, before []layer.Fault) bool {
	after := in.faults(m.coats)
	return !has(after, m.coats, f, coats) && len(brought(before, coats, after, m.coats)) == 0
}

// second returns the change that does away with what a first one brings, where that does
// away with the fault and all that it brings is milder.
func (in layersFrom) second(coats []coat, m coatMend, f layer.Fault, before []layer.Fault) (coatMend, bool) {
	after := in.faults(m.coats)
	brings := brought(before, coats, after, m.coats)
	asGrave := func(g layer.Fault) bool { return gravity(g.Rule) >= gravity(f.Rule) }
	if has(after, m.coats, f, coats) || slices.ContainsFunc(brings, asGrave) {
		return coatMend{}, false
	}
	for _, g := range brings {
		for _, then := range in.mends(m.coats, g, after) {
			if in.clears(coats, then, f, before) {
				return then, true
			}
		}
	}
	return coatMend{}, false
}

// brought returns the faults of changed coats that they did not have before.
func brought(before []layer.Fault, coats []coat, after []layer.Fault, changed []coat) (brings []layer.Fault) {
	for _, g := range after {
		if !has(before, coats, g, changed) {
			brings = append(brings, g)
		}
	}
	return brings
}

// has tells whether a fault of some coats is among those of them as changed: the same rule
// between the same two.
func has(faults []layer.Fault, changed []coat, f layer.Fault, coats []coat) bool {
	return slices.ContainsFunc(faults, func(g layer.Fault) bool {
		return g.Rule == f.Rule && changed[g.Below].number == coats[f.Below].number && changed[g.Above].number == coats[f.Above].number
	})
}

// with returns a region's coats with one of them changed.
func with(coats []coat, at int, c coat) []coat {
	changed := slices.Clone(coats)
	changed[at] = c
	return changed
}

// mends lists the changes to try for a fault, the best first.
func (in layersFrom) mends(coats []coat, f layer.Fault, all []layer.Fault) (mends []coatMend) {
	if m, found := in.glazeLast(coats, f); found {
		mends = append(mends, m)
	}
	change := f.Change
	switch {
	case change.WaitDays > 0:
		return append(mends, in.laterMends(coats, f, all)...)
	case change.Medium != nil:
		return append(mends, in.mediumMend(coats, f, change.Coat, *change.Medium))
	case change.Film > 0:
		c := coats[change.Coat]
		c.film = change.Film
		times := strconv.FormatFloat(math.Floor(c.film/in.opt.Work.Film*100)/100, 'g', -1, 64)
		return append(mends, coatMend{
			coats: with(coats, change.Coat, c), at: change.Coat, line: "film = " + times,
			words: fmt.Sprintf("Lay %s no thicker than %s times an ordinary coat.", in.id(c), times),
		})
	}
	near, far := in.swapMends(coats, change.Coat, change.Swap.From, change.Swap.To)
	return append(append(mends, near...), far...)
}

// laterMends lays a coat later, or one that dries too fast for what is beneath with oil in
// place of its alkyd, or over a near paint: these first where the wait is long.
func (in layersFrom) laterMends(coats []coat, f layer.Fault, all []layer.Fault) []coatMend {
	wait, after := in.waitMend(coats, f.Above, all)
	if f.Rule != layer.FastOverSlow {
		return []coatMend{wait}
	}
	others, _ := in.swapMends(coats, f.Below, in.slowest(coats[f.Below]), "")
	if m := coats[f.Above].medium; m.Kind == layer.Alkyd {
		oil := layer.Medium{Kind: layer.Linseed, Parts: m.Parts}
		for _, g := range all { // one change for both where it is too lean as well
			if g.Change.Medium != nil && g.Change.Coat == f.Above {
				oil = *g.Change.Medium
			}
		}
		out := in.mediumMend(coats, f, f.Above, oil)
		others = append([]coatMend{out}, others...)
	}
	if after > longWait {
		return append(others, wait)
	}
	return append([]coatMend{wait}, others...)
}

// mediumMend takes another medium in a coat.
func (in layersFrom) mediumMend(coats []coat, f layer.Fault, at int, m layer.Medium) coatMend {
	c := coats[at]
	old := c.medium
	c.medium = m
	words := fmt.Sprintf("Take %s in %s", c.medium, in.id(c))
	if c.medium.String() == layer.None {
		words = fmt.Sprintf("Take no medium in %s", in.id(c))
	}
	if old.Kind == layer.Alkyd && c.medium.Kind != layer.Alkyd {
		words += ", without the alkyd"
		if at == f.Above && f.Below != f.Above {
			words += ", which dries fast over slower oil"
		}
	}
	return coatMend{coats: with(coats, at, c), at: at, line: fmt.Sprintf("medium = %q", c.medium), words: words + "."}
}

// glazeLast moves a glaze above the last of the other coats that lie over it; false where
// the fault is not that of another coat over a glaze.
func (in layersFrom) glazeLast(coats []coat, f layer.Fault) (coatMend, bool) {
	if coats[f.Below].pass != PassGlaze || coats[f.Above].pass == PassGlaze {
		return coatMend{}, false
	}
	last := f.Above
	for i := f.Above; i < len(coats); i++ {
		if coats[i].pass != PassGlaze {
			last = i
		}
	}
	glaze := coats[f.Below]
	moved := slices.Delete(slices.Clone(coats), f.Below, f.Below+1)
	moved = slices.Insert(moved, last, glaze) // last is one lower now, and the glaze goes behind it
	for i := range moved {
		moved[i].soaks = i == 0 && coats[0].soaks
	}
	if moved[0].wet { // a first coat has none to be laid into
		return coatMend{}, false
	}
	return coatMend{coats: moved, words: fmt.Sprintf("A glaze comes last: move %s's [[layer]] below %s's.", in.id(glaze), in.id(coats[last]))}, true
}

// waitMend lays a coat later, by as much as all faults ask that it is the upper one of, and
// no earlier than coats without a day of their own are planned; after is the days
// between them.
func (in layersFrom) waitMend(coats []coat, above int, all []layer.Fault) (m coatMend, after float64) {
	c, wait := coats[above], 0.0
	for _, f := range all {
		if f.Above == above {
			wait = max(wait, f.Change.WaitDays)
		}
	}
	below := coats[above-1]
	rest := days(goOver(below, c, in.opt.Work.Air))
	c.after = int(max(math.Ceil(waits(below, c, true, in.opt.Work.Air)+wait), planned(rest)))
	line := fmt.Sprint("after = ", c.after)
	if c.wet {
		c.wet = false
		line += "\nwet = false"
	}
	words := fmt.Sprintf("Lay %s %d days after %s, by the thumb", in.id(c), c.after, in.id(below))
	if late := int(math.Ceil(rest.To)); late > c.after {
		words += fmt.Sprintf("; it may take %d days", late)
	}
	return coatMend{coats: with(coats, above, c), at: above, line: line, words: words + ".", waits: true}, float64(c.after)
}

// slowest returns the paint that a coat waits for: of its first pile.
func (in layersFrom) slowest(c coat) string {
	laid := c.laid(c.piles[0])
	return laid.Paints[layer.Drying(laid, in.opt.Work.Air).Slowest].ID
}
