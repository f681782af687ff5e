// Mixing the regions, each from its palette: the painter's, one proposed, or the box.

package plan

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
)

// mixer is what the regions are mixed from and for.
type mixer struct {
	box     []paint.Paint // to choose from: the owned paints, or the few kept
	mixing  match.Options
	key     ValueKey
	reach   [2]float64            // L* of the darkest and the lightest mix of the box
	wishes  []RegionWish          // by region; of a region the painter did not name the zero one
	colours [][]tone              // by region
	ring    func(a int) []float64 // shares of the regions around one
	values  func() [][]tone       // the colours of all regions parted by their values
	inUse   map[string][]string   // paint id → tags of the regions mixed with it so far
}

// tone is a colour of a region before it is mixed: as photographed, its lightness
// keyed; and its share of the panel.
type tone struct {
	lab   colour.Lab
	share float64
}

// mixed is a region as it will be painted: its palette and, by colour, aims and
// recipes. Parts of the recipes count in paints.
type mixed struct {
	palette     Palette
	paints      []paint.Paint
	aims        []colour.Lab
	ladder      *match.Ladder // of the palette; nil: the whole box
	recipes     [][]match.Recipe
	suggestions []match.Suggestion
	lacks       string // why nothing is proposed for a wish; "" where something is or nothing was wished for
}

// newMixer gathers what is mixed for; wishes may be fewer than regions.
func newMixer(opt Options, c analyze.Clustering, key ValueKey, ring func(a int) []float64) *mixer {
	m := &mixer{box: opt.Box.Paints, mixing: opt.Mixing, key: key, ring: ring, reach: [2]float64{key.PaintMin, key.PaintMax}, inUse: map[string][]string{}}
	m.wishes = make([]RegionWish, len(c.Clusters))
	copy(m.wishes, opt.Regions)
	m.colours = m.tonesIn(c)
	return m
}

// tonesIn returns the colours of a clustering by region, their lightness keyed.
func (m *mixer) tonesIn(c analyze.Clustering) (regions [][]tone) {
	pixels := float64(len(c.Of))
	for _, region := range c.Clusters {
		tones := make([]tone, len(region))
		for j, cluster := range region {
			tones[j] = tone{m.key.aim(cluster.Lab), float64(cluster.Pixels) / pixels}
		}
		regions = append(regions, tones)
	}
	return regions
}

// all mixes every region. Regions of the whole box come first, together; then the
// painter's palettes; then what is proposed, a complement after what it is one of,
// so that each knows the tubes in use before it.
func (m *mixer) all() []mixed {
	result := make([]mixed, len(m.colours))
	var plain, later []int
	for r, w := range m.wishes {
		switch {
		case len(w.Palette) == 0 && w.Wish.none():
			plain = append(plain, r)
		case len(w.Palette) > 0:
			result[r] = m.mix(r, w)
			m.use(r, result[r])
		default:
			later = append(later, r)
		}
	}
	m.mixPlain(plain, result)
	for len(later) > 0 {
		waiting := later[:0:0]
		for _, r := range later {
			if of := m.complementOf(r); of >= 0 && slices.Contains(later, of) && result[of].paints == nil {
				waiting = append(waiting, r)
				continue
			}
			m.propose(r, result)
		}
		if len(waiting) == len(later) {
			panic("plan: complements in a circle") // checkWishes refuses them
		}
		later = waiting
	}
	for r, w := range m.wishes {
		if len(w.Palette) > 0 && !w.Wish.none() {
			result[r].suggestions, result[r].lacks = m.suggest(r, w.Wish, result)
		}
	}
	return result
}

// propose mixes a region from the best palette for its wish, or from the whole box
// where there is none.
func (m *mixer) propose(r int, result []mixed) {
	w := m.wishes[r]
	suggestions, lacks := m.suggest(r, w.Wish, result)
	if len(suggestions) > 0 {
		w = withPalette(w, suggestions[0])
	}
	result[r] = m.mix(r, w)
	result[r].suggestions, result[r].lacks = suggestions, lacks
	if len(suggestions) > 0 {
		result[r].palette.From = Proposed
	}
	m.use(r, result[r])
}

// withPalette is the wish with a proposed palette for its own.
func withPalette(w RegionWish, s match.Suggestion) RegionWish {
	w.Aim, w.Palette, w.NoWhite = w.aim(), nil, s.White == nil
	for _, p := range s.Paints {
		w.Palette = append(w.Palette, p.ID)
	}
	return w
}

// mixPlain mixes the regions of the whole box in one search.
func (m *mixer) mixPlain(regions []int, result []mixed) {
	var aims []colour.Lab
	for _, r := range regions {
		aims = append(aims, m.bases(r, m.wishes[r].Shift)...)
	}
	recipes := match.Recipes(m.box, aims, m.mixing)
	for _, r := range regions {
		n := len(m.colours[r])
		result[r] = mixed{palette: m.wholeBox(), paints: m.box, aims: aims[:n:n], recipes: recipes[:n:n]}
		aims, recipes = aims[n:], recipes[n:]
		m.use(r, result[r])
	}
}

// mix mixes one region as wished.
func (m *mixer) mix(r int, w RegionWish) mixed {
	x := m.aim(r, w)
	x.recipes = match.Recipes(x.paints, x.aims, m.mixing)
	if x.ladder != nil {
		lo, hi := lightnessRange(m.bases(r, w.Shift))
		x.palette.Note = x.ladder.Lacks(m.box, lo, hi)
	}
	if x.palette.Aim == AimValue {
		x.palette.Note = strings.TrimSpace(x.palette.Note + " " + x.idle())
	}
	return x
}

// idle says which paints of a palette followed by value are in none of a region's
// mixes: the palette has one mix for a value, so that of two darks only the lighter is
// seen in a region of middle values. "" where each is used.
func (x mixed) idle() string {
	used := make([]bool, len(x.paints))
	for _, recipes := range x.recipes {
		for _, part := range recipes[0].Parts {
			used[part.Paint] = true
		}
	}
	var names []string
	for i, p := range x.paints {
		if !used[i] && p.ID != x.palette.White {
			names = append(names, p.Name)
		}
	}
	if len(names) == 0 {
		return ""
	}
	is := "is"
	if len(names) > 1 {
		is = "are"
	}
	return fmt.Sprintf("%s %s in none of these mixes: by value a palette runs from its darkest paint over the next to its lightest and white, one mix for each value, and this region has no values of that stretch. With aim = \"photo\" its paints mix freely.",
		match.Listed(names), is)
}

// aim returns a region's palette, without its note, and what it aims at, not mixed yet:
// what the palette lacks is dear to find out, and many are asked for that are not taken.
func (m *mixer) aim(r int, w RegionWish) mixed {
	bases := m.bases(r, w.Shift)
	if len(w.Palette) == 0 {
		return mixed{palette: m.wholeBox(), paints: m.box, aims: bases}
	}
	of := paletteOf(w, m.box)
	ladder := match.LadderOf(of.paints, of.white, m.mixing.Finish)
	x := mixed{palette: of.entry(w, ladder), paints: of.all(), aims: bases, ladder: ladder}
	if w.aim() == AimValue {
		x.aims = onLadder(ladder, bases)
	}
	return x
}

// look returns the colour that one of a region's colours is painted in; of what is not
// mixed yet, its aim.
func (x mixed) look(j int) colour.Lab {
	if x.recipes == nil {
		return x.aims[j]
	}
	return x.recipes[j][0].Lab
}

// bases returns a region's colours as photographed and keyed, lightened by so many
// Munsell value steps as far as the box reaches.
func (m *mixer) bases(r int, shift float64) []colour.Lab {
	aims := make([]colour.Lab, len(m.colours[r]))
	for j, t := range m.colours[r] {
		aims[j] = t.lab
		aims[j].L = m.key.shifted(t.lab.L, shift)
	}
	return aims
}

// shifted returns a keyed lightness moved by so many Munsell value steps, within
// what the box reaches.
func (k ValueKey) shifted(l, steps float64) float64 {
	if steps == 0 {
		return l
	}
	value := min(10, max(0, colour.ValueOf(l)+steps))
	return min(max(l, k.PaintMax), max(min(l, k.PaintMin), colour.LOf(value)))
}

// onLadder returns what a palette makes of each lightness; past its reach, the
// lightness wanted with the hue of its end, which the recipe will miss.
func onLadder(l *match.Ladder, bases []colour.Lab) []colour.Lab {
	aims := make([]colour.Lab, len(bases))
	for j, b := range bases {
		aim, _ := l.At(b.L)
		aim.L = b.L
		aims[j] = aim
	}
	return aims
}

// lightnessRange returns the least and the greatest L* of some colours; none: 50, 50.
func lightnessRange(colours []colour.Lab) (lo, hi float64) {
	if len(colours) == 0 {
		return 50, 50
	}
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, c := range colours {
		lo, hi = min(lo, c.L), max(hi, c.L)
	}
	return lo, hi
}

// use notes the tubes of a region's first recipes.
func (m *mixer) use(r int, x mixed) {
	tag := tagOf(r)
	for _, recipes := range x.recipes {
		for _, part := range recipes[0].Parts {
			id := x.paints[part.Paint].ID
			if !slices.Contains(m.inUse[id], tag) {
				m.inUse[id] = append(m.inUse[id], tag)
			}
		}
	}
}

// share returns a region's share of the panel.
func (m *mixer) share(r int) (sum float64) {
	for _, t := range m.colours[r] {
		sum += t.share
	}
	return sum
}

// shares returns the shares of a region's colours, summing to 1.
func (m *mixer) shares(r int) []float64 {
	shares := make([]float64, len(m.colours[r]))
	for j, t := range m.colours[r] {
		shares[j] = t.share / m.share(r)
	}
	return shares
}
