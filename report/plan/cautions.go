// Cautions: what to take care of, for what the plan uses.

package plan

import (
	"cmp"
	"slices"

	"tonewright/match/layer"
	"tonewright/match/paint"
)

// heed puts the cautions into a plan whose regions, layers and days are made: all of them
// into Cautions, and into each coat and session the keys of those it calls for.
func heed(p *Plan, box []paint.Paint) {
	p.Cautions = cautionsOf(p.Regions, p.Layers, box)
	for i := range p.Layers.Coats {
		c := &p.Layers.Coats[i]
		c.Cautions = keysFor(p.Cautions, []string{c.ID})
	}
	for i := range p.Days.Sessions {
		s := &p.Days.Sessions[i]
		s.Cautions = keysFor(p.Cautions, s.Coats)
		if !slices.Contains(s.Cautions, paint.Rags) { // each session leaves some
			s.Cautions = append(s.Cautions, paint.Rags)
		}
	}
}

// keysFor returns the keys of the cautions for some coats, in their order.
func keysFor(cautions []Caution, coats []string) []string {
	keys := []string{}
	for _, c := range cautions {
		if slices.ContainsFunc(c.Coats, func(id string) bool { return slices.Contains(coats, id) }) {
			keys = append(keys, c.Key)
		}
	}
	return keys
}

// cautionsOf returns the cautions for the first recipes and the coats: of their pigments,
// the gravest first; of every oil painting and of their mediums; of their paints'
// lightfastness, the worst first.
func cautionsOf(regions []Region, l Layers, box []paint.Paint) []Caution {
	uses := usesOf(regions, l)
	paints := paintsIn(uses, box)
	list := pigmentCautions(paints)
	for i := range list {
		called := idsThatCall(paints, list[i].Key)
		list[i].mark(uses, func(u use) bool {
			return u.share(func(id string) bool { return slices.Contains(called, id) }) > 0
		})
	}
	list = append(list, mediumCautions(uses)...)
	return append(list, fadingCautions(uses, paints, box)...)
}

// CautionsFor returns the usual cautions for paints, each with the names of those it
// is for; then those for every oil painting, and those for lightfastness.
func CautionsFor(paints []paint.Paint) []Caution {
	list := pigmentCautions(paints)
	for _, c := range paint.StudioCautions() {
		list = append(list, cautionOf(c))
	}
	return append(list, forPaints(paint.Fadings(), paints)...)
}

// pigmentCautions returns those for the hazards of paints, the gravest first.
func pigmentCautions(paints []paint.Paint) []Caution { return forPaints(paint.Hazards(), paints) }

// forPaints returns those of the cautions that a paint calls for, with the names of all
// that do.
func forPaints(all []paint.Caution, paints []paint.Paint) []Caution {
	list := []Caution{}
	for _, known := range all {
		c := cautionOf(known)
		for _, p := range paints {
			if calls(p, c.Key) {
				c.Paints = append(c.Paints, p.Name)
			}
		}
		if len(c.Paints) > 0 {
			list = append(list, c)
		}
	}
	return list
}

func calls(p paint.Paint, key string) bool {
	return slices.ContainsFunc(p.Cautions(), func(c paint.Caution) bool { return c.Key == key })
}

func idsThatCall(paints []paint.Paint, key string) (ids []string) {
	for _, p := range paints {
		if calls(p, key) {
			ids = append(ids, p.ID)
		}
	}
	return ids
}

func cautionOf(c paint.Caution) Caution {
	return Caution{
		Text: c.Text, Key: c.Key, Short: c.Short, Kind: c.Kind, Source: c.Source,
		Paints: []string{}, Colours: []string{}, Coats: []string{}, Instead: []Other{},
	}
}

// mediumCautions returns those of every oil painting and those the mediums call for,
// marked where a medium does.
func mediumCautions(uses []use) (list []Caution) {
	all := paint.StudioCautions()
	for _, u := range uses {
		for _, c := range u.medium.Cautions() {
			if !slices.ContainsFunc(all, func(have paint.Caution) bool { return have.Key == c.Key }) {
				all = append(all, c)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b paint.Caution) int { return cmp.Compare(rank(a.Kind), rank(b.Kind)) })
	for _, known := range all {
		c := cautionOf(known)
		c.mark(uses, func(u use) bool {
			return slices.ContainsFunc(u.medium.Cautions(), func(m paint.Caution) bool { return m.Key == c.Key })
		})
		list = append(list, c)
	}
	return list
}

// rank puts what is said of mediums before what is said of the studio.
func rank(kind string) int { return slices.Index([]string{paint.OfMedium, paint.OfStudio}, kind) }

// mark notes the mixes and the coats that a caution is for.
func (c *Caution) mark(uses []use, is func(use) bool) {
	for _, u := range uses {
		if !is(u) {
			continue
		}
		if !slices.Contains(c.Colours, u.tag) {
			c.Colours = append(c.Colours, u.tag)
		}
		if u.coat != "" && !slices.Contains(c.Coats, u.coat) {
			c.Coats = append(c.Coats, u.coat)
		}
	}
}

// use is a mix as it is used: as a first recipe, or in a coat.
type use struct {
	tag    string // of the colour; of the pile for a mix of the coat's own
	coat   string // id; "" for a first recipe
	parts  []Part
	medium layer.Medium
	thin   bool // the film of its paint, the medium aside, and open to the light
}

// thinCoat is the part of an ordinary coat up to which a film counts as thin. Ours: a
// glaze is laid at about half, see match.Glaze.
const thinCoat = 0.5

// usesOf lists every use: first recipes in order, then the coats.
func usesOf(regions []Region, l Layers) (uses []use) {
	for _, r := range regions {
		for _, c := range r.Colours {
			uses = append(uses, use{tag: c.ID, parts: c.Recipe.Parts})
		}
	}
	for i, c := range l.Coats {
		medium, _ := layer.ParseMedium(c.Medium) // written by Medium.String
		thin := c.Pass == PassGlaze || c.FilmUM/(1+medium.Parts) <= thinCoat*l.FilmUM && !paintedOver(c, l.Coats[i+1:])
		for _, m := range c.Mixes {
			uses = append(uses, use{cmp.Or(m.ID, m.Pile, c.ID), c.ID, m.Parts, medium, thin})
		}
	}
	return uses
}

// paintedOver tells whether one of the coats after a block-in is painted over it: little light
// reaches it then.
func paintedOver(c Coat, after []Coat) bool {
	return c.Pass == PassBlockIn && slices.ContainsFunc(after, func(over Coat) bool { return over.Region == c.Region && over.Pass == PassNext })
}

// has tells whether a paint is in the mix.
func (u use) has(id string) bool { return u.share(func(p string) bool { return p == id }) > 0 }

// share returns the parts of those paints in the mix.
func (u use) share(of func(id string) bool) (parts float64) {
	for _, part := range u.parts {
		if of(part.Paint) {
			parts += part.Parts
		}
	}
	return parts
}

// paintsIn returns the paints of the uses: the box's in its order, then any others in
// the library's.
func paintsIn(uses []use, box []paint.Paint) (paints []paint.Paint) {
	for _, p := range slices.Concat(box, paint.Library()) {
		used := slices.ContainsFunc(uses, func(u use) bool { return u.has(p.ID) })
		if used && !slices.ContainsFunc(paints, func(have paint.Paint) bool { return have.ID == p.ID }) {
			paints = append(paints, p)
		}
	}
	return paints
}
