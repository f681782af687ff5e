// Where rank and role disagree, and the smallest change that brings them together.

package plan

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
)

// scene is the picture as it is to be painted, for asking what a change would do.
type scene struct {
	*mixer
	lies     *analyze.Composition
	regions  []mixed
	proposed map[proposal][]match.Suggestion // asked for so far
}

// proposal is what palettes are asked for.
type proposal struct {
	region int
	wish   Wish
}

func newScene(m *mixer, lies *analyze.Composition, regions []mixed) *scene {
	return &scene{m, lies, regions, map[proposal][]match.Suggestion{}}
}

// palettes returns what is proposed for a region and a wish, asked for once.
func (s *scene) palettes(r int, wish Wish) []match.Suggestion {
	at := proposal{r, wish}
	list, known := s.proposed[at]
	if !known {
		list, _ = s.suggest(r, wish, s.regions)
		s.proposed[at] = list
	}
	return list
}

// standOutOf tells how the regions stand, in their entries too, and what of it is not
// as meant; lost edges aside.
func standOutOf(s *scene, regions []Region) StandOut {
	standings := s.standings(-1, mixed{})
	out := StandOut{Measure: measured, Order: make([]string, 0, len(regions))}
	byRank := make([]string, len(regions)+1)
	for i, st := range standings {
		if st.Rank > 0 {
			regions[i].Standing = standingOf(st, regions[i])
			byRank[st.Rank] = regions[i].Tag
		}
	}
	for _, tag := range byRank[1:] {
		if tag != "" {
			out.Order = append(out.Order, tag)
		}
	}
	out.Disagreements = s.disagreements(standings)
	return out
}

// measured names what the standing is measured by. Source: [Cheng2015], [Achanta2008].
const measured = "region contrast (Cheng et al. 2015) and centre-surround contrast (Achanta et al. 2008), in CIE L*a*b*, of the colour study"

// tonesOf returns a region's mixes with their shares of it.
func (s *scene) tonesOf(r int, x mixed) []analyze.Tone {
	shares := s.shares(r)
	tones := make([]analyze.Tone, len(x.aims))
	for j := range x.aims {
		tones[j] = analyze.Tone{Lab: x.look(j), Share: shares[j]}
	}
	return tones
}

// standings tells how the regions stand, with region r painted as x; r < 0: as they are.
func (s *scene) standings(r int, x mixed) []analyze.Standing {
	tones := make([][]analyze.Tone, len(s.regions))
	for i, region := range s.regions {
		if i == r {
			region = x
		}
		tones[i] = s.tonesOf(i, region)
	}
	return s.lies.Standings(tones)
}

// change is a line of the painting file that might mend, or two.
type change struct {
	region      int
	written     RegionWish // as the painting file will have it
	wish        RegionWish // the same with the palette that was proposed, if one was, for its own
	palette     bool       // it sets the palette
	line, words string
	size        float64 // as guessed: mean CIEDE2000 over the panel, by the square root of the region's share
}

// shiftSteps are the value shifts tried, by size. Ours: half a step is the least that
// is seen across a room, past two the drawing's values are no longer the photo's.
var shiftSteps = []float64{0.5, 1, 1.5, 2}

// rivalsTried is how many rivals are tried to be changed in place of the region. Ours.
const rivalsTried = 2

// mend returns the smallest change that takes region r out of the misplaced ones and
// adds none: of one line, else of two for one region; nil where there is none.
func (s *scene) mend(r int, rivals, misplaced []int) *Mend {
	changes := s.changesOf(r, s.wishes[r].role() == RoleFocal)
	for _, rival := range rivals[:min(rivalsTried, len(rivals))] {
		changes = append(changes, s.changesOf(rival, s.wishes[r].role() != RoleFocal)...)
	}
	if m := s.smallest(r, changes, misplaced); m != nil {
		return m
	}
	return s.smallest(r, pairs(changes), misplaced)
}

// smallest returns the smallest of the changes that mends. A change counts by the root of
// its region's share: by the share alone a small thing turned black would be a smaller
// change than a wall made a trace lighter. Ours. What a change would do is
// guessed from its aims first, and mixed only where it promises to mend.
func (s *scene) smallest(r int, changes []change, misplaced []int) *Mend {
	mends := func(standings []analyze.Standing) bool {
		left := s.misplaced(standings)
		added := func(l int) bool { return l == r || !slices.Contains(misplaced, l) }
		return !slices.ContainsFunc(left, added)
	}
	var promising []change
	for _, c := range changes {
		x := s.aim(c.region, c.wish)
		if c.size = Round(s.weight(c.region, s.distance(c.region, x)), 2); mends(s.standings(c.region, x)) {
			promising = append(promising, c)
		}
	}
	slices.SortStableFunc(promising, func(a, b change) int { return cmp.Compare(a.size, b.size) })
	var best *Mend
	size := math.Inf(1)
	for _, c := range promising[:min(replansTried, len(promising))] {
		then := s.again(c)
		if !mends(then.standings(-1, mixed{})) {
			continue
		}
		if d := s.to(then, c.region); s.weight(c.region, d) < size {
			size = s.weight(c.region, d)
			best = &Mend{Region: tagOf(c.region), Name: s.wishes[c.region].Name, Line: c.line,
				Change: Round(d, 2), Text: fmt.Sprintf("%s: %s.", s.label(c.region), c.words)}
		}
	}
	return best
}

// replansTried is how many promising changes are planned again. Ours: the first mends by
// itself nearly always, and another of the first is seldom smaller.
const replansTried = 6

// proposes tells whether a palette is proposed for any region: what is proposed may
// change with another region, or with the region's own values.
func (s *scene) proposes() bool {
	return slices.ContainsFunc(s.wishes, func(w RegionWish) bool { return len(w.Palette) == 0 && !w.Wish.none() })
}

// again is the scene as it would be planned with a change written into the painting
// file: parted by values where it now goes after them, and mixed again.
func (s *scene) again(c change) *scene {
	m := *s.mixer
	m.wishes, m.inUse = slices.Clone(s.wishes), map[string][]string{}
	m.wishes[c.region] = c.written
	if c.written.aim() == AimValue && s.wishes[c.region].aim() != AimValue {
		m.colours = slices.Clone(s.colours)
		m.colours[c.region] = s.values()[c.region]
	}
	if s.proposes() {
		return newScene(&m, s.lies, m.all())
	}
	regions := slices.Clone(s.regions)
	regions[c.region] = m.mix(c.region, c.written)
	return newScene(&m, s.lies, regions)
}

// settled is a region's wish with the palette that was proposed for it, if one was, for
// its own.
func (s *scene) settled(r int) RegionWish {
	w := s.wishes[r]
	if len(w.Palette) == 0 && len(s.regions[r].suggestions) > 0 {
		return withPalette(w, s.regions[r].suggestions[0])
	}
	return w
}

// pairs joins every palette with every shift for the same region.
func pairs(changes []change) (both []change) {
	for _, p := range changes {
		for _, v := range changes {
			if p.region == v.region && p.palette && !v.palette {
				c := p
				c.wish.Shift, c.written.Shift = v.wish.Shift, v.wish.Shift
				c.line, c.words = p.line+"\n"+v.line, p.words+", and "+v.words
				both = append(both, c)
			}
		}
	}
	return both
}

// distance returns how far a region's new colours are from its old, as a mean of
// CIEDE2000 over the panel.
func (s *scene) distance(r int, x mixed) (mean float64) {
	for j, t := range s.colours[r] {
		mean += t.share * colour.DeltaE00(s.regions[r].look(j), x.look(j))
	}
	return mean
}

// to returns the same for a region of another scene, which may be parted otherwise:
// each of its colours is held against the one that is nearest to it in the photo.
func (s *scene) to(then *scene, r int) (mean float64) {
	for j, t := range then.colours[r] {
		nearest, at := math.Inf(1), 0
		for i, old := range s.colours[r] {
			if d := colour.DeltaE00(t.lab, old.lab); d < nearest {
				nearest, at = d, i
			}
		}
		mean += t.share * colour.DeltaE00(s.regions[r].look(at), then.regions[r].look(j))
	}
	return mean
}

// weight is what a change of that mean CIEDE2000 over the panel counts for.
func (s *scene) weight(r int, mean float64) float64 { return mean / math.Sqrt(s.share(r)) }

// changesOf lists changes to a region that may make it stand out more, or less.
func (s *scene) changesOf(r int, more bool) []change {
	w := s.wishes[r]
	if w.Name == "" { // what no region covers is not in the painting file
		return nil
	}
	var list []change
	for _, step := range shiftSteps {
		for _, by := range []float64{step, -step} {
			c := change{region: r, written: w, wish: s.settled(r)}
			c.wish.Shift = Round(w.Shift+by, 3)
			c.written.Shift = c.wish.Shift
			if math.Abs(c.wish.Shift) > MostShift {
				continue
			}
			c.line = fmt.Sprintf("value_shift = %g", c.wish.Shift)
			c.words = fmt.Sprintf("paint it %s by %s", lighter(by), steps(math.Abs(by)))
			list = append(list, c)
		}
	}
	for _, wish := range s.wishesFor(r, more) {
		for _, p := range s.palettes(r, wish) {
			if p.Covered < wellCovered || (p.White == nil) != (w.NoWhite || paint.OwnWhite(s.box) == nil) {
				continue
			}
			c := change{region: r, wish: w, palette: true}
			c.wish.Palette = ids(p.Paints)
			c.written = c.wish
			c.line = paletteLine(p.Paints)
			c.words = fmt.Sprintf("paint it from %s", paletteWords(p))
			list = append(list, c)
		}
	}
	return list
}

// wellCovered is the share of a region whose values a palette must reach to be
// offered as a mend. Ours.
const wellCovered = 0.8

// neighboursTried is how many of a region's neighbours its complements are tried to,
// those that have most of what is around it. Ours: each is a search for palettes.
const neighboursTried = 3

// wishesFor lists what palettes to ask for: to stand out, its own hue at full strength
// and the complements of its neighbours; to keep back, quiet ones.
func (s *scene) wishesFor(r int, more bool) []Wish {
	if !more {
		return []Wish{{Scheme: match.Quiet}}
	}
	var list []Wish
	if hue, ok := hueOf(s.regions[r], s.colours[r]); ok {
		text, _, _ := strings.Cut(colour.Munsell{Hue: hue, Value: 5, Chroma: 10}.Short(), " ")
		list = append(list, Wish{Hue: text})
	}
	ring := s.ring(r)
	around := slices.DeleteFunc(indices(len(ring)), func(other int) bool {
		_, hued := hueOf(s.regions[other], s.colours[other])
		return ring[other] == 0 || s.wishes[other].Name == "" || !hued
	})
	slices.SortStableFunc(around, func(a, b int) int { return cmp.Compare(Round(ring[b], 6), Round(ring[a], 6)) })
	for _, other := range around[:min(neighboursTried, len(around))] {
		list = append(list, Wish{Scheme: match.Complement, Of: s.wishes[other].Name})
	}
	return list
}

func indices(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = i
	}
	return list
}

func paletteWords(s match.Suggestion) string {
	var names []string
	for _, p := range s.Paints {
		names = append(names, p.Name)
	}
	if s.White != nil {
		names = append(names, s.White.Name)
	}
	return match.Listed(names)
}

// steps words one of shiftSteps.
func steps(by float64) string {
	switch by {
	case 0.5:
		return "half a value"
	case 1:
		return "one value"
	}
	return fmt.Sprintf("%g values", by)
}

func lighter(by float64) string {
	if by < 0 {
		return "darker"
	}
	return "lighter"
}
