// Counting the paint: coat by coat, and session by session as it is laid out.

package plan

import (
	"cmp"
	"slices"

	"tonewright/grid"
	"tonewright/match"
	"tonewright/match/layer"
	"tonewright/match/paint"
)

// leastPile is the least that is laid out of a mix, in ml. Ours: under it parts cannot be
// told apart on the knife, 1 in 12 being a crumb of 4 mm, and most of it stays on knife and
// brush.
const leastPile = 0.5

// A stock is the paint of one mix over the whole painting.
type stock struct {
	id    string     // the pile's tag
	parts []Part     // as they are told
	of    match.Pile // the same, 1 in all
	light float64    // L* of the mix, thick

	colours bool     // it is mixed for colours, not for a coat only
	on      []string // where it is laid, if not
	cm2     float64
	coats   []string

	ml, medium float64 // laid out
}

// A load is what one coat takes of one stock.
type load struct {
	coat   string // id
	region int
	stock  int
	ml     float64 // of paint, as painted: the waste comes on top
	medium float64 // to one of paint
	kind   string  // of the medium
}

// A count adds up the paint.
type count struct {
	known  []paint.Paint // those of the box come before the library's
	waste  float64
	finish paint.Finish
	unit   grid.Unit
	stocks []stock
	loads  []load
	at     map[string]int // tag of a pile → its stock
	kinds  []MediumAmount // unrounded
}

func newCount(regions []Region, coats []Coat, g grid.Grid, box paint.Box, opt Options) *count {
	c := &count{known: slices.Concat(box.Paints, paint.Library()), waste: WasteUsual, finish: opt.Mixing.Finish, unit: g.Unit, at: map[string]int{}}
	if opt.Work.Waste != nil {
		c.waste = *opt.Work.Waste
	}
	panel := float64(g.Width) * float64(g.Height) / 100
	place := map[string]float64{} // tag of a colour → cm² it covers
	for _, r := range regions {
		for _, col := range r.Colours {
			place[col.ID] = col.PanelShare * panel
			s := c.stockOf(cmp.Or(col.SameAs, col.ID), col.Recipe.Parts)
			s.cm2 += place[col.ID]
			s.colours = true
		}
	}
	for _, coat := range coats {
		region := slices.IndexFunc(regions, func(r Region) bool { return r.Tag == coat.Region })
		c.addCoat(coat, region, leastShare*panel, place)
	}
	return c
}

// leastShare is what is covered at least of the panel: shares are told to four digits, and
// what rounds to nothing is painted all the same.
const leastShare = 0.5e-4

// addCoat notes what a coat takes of each of its piles, which covers so many cm² at least.
func (c *count) addCoat(coat Coat, region int, least float64, place map[string]float64) {
	medium, _ := layer.ParseMedium(coat.Medium) // written by String, so it is read back
	for _, m := range coat.Mixes {
		cm2 := 0.0
		for _, tag := range m.On {
			cm2 += place[tag]
		}
		s := c.stockOf(m.Pile, m.Parts)
		if !s.colours {
			s.laidOn(m.On, place)
		}
		if !slices.Contains(s.coats, coat.ID) {
			s.coats = append(s.coats, coat.ID)
		}
		film := max(cm2, least) / 1e4 * coat.FilmUM // ml, the medium with it
		c.loads = append(c.loads, load{coat.ID, region, c.at[m.Pile], film / (1 + medium.Parts), medium.Parts, medium.Kind})
	}
}

// stockOf returns the stock of a pile's tag, a new one where there is none.
func (c *count) stockOf(id string, parts []Part) *stock {
	n, there := c.at[id]
	if !there {
		n = len(c.stocks)
		c.at[id] = n
		of := knifed(parts, c.known)
		c.stocks = append(c.stocks, stock{id: id, parts: parts, of: of, light: c.lightOf(of)})
	}
	return &c.stocks[n]
}

// laidOn counts the places that a pile of no colour's is laid in, each once.
func (s *stock) laidOn(tags []string, place map[string]float64) {
	for _, tag := range tags {
		if !slices.Contains(s.on, tag) {
			s.on, s.cm2 = append(s.on, tag), s.cm2+place[tag]
		}
	}
}

// lightOf returns L* of a pile laid thick, to three digits.
func (c *count) lightOf(of match.Pile) float64 {
	k, s := of.Optics()
	r := paint.Thick(&k, &s, c.finish)
	return Round(r.Lab().L, 3)
}

// mixes returns what each mix takes that is painted with.
func (c *count) mixes() []MixAmount {
	list := []MixAmount{}
	for _, s := range c.stocks {
		if len(s.coats) > 0 {
			list = append(list, MixAmount{
				ID: s.id, CM2: Round(s.cm2, 2), Coats: len(s.coats),
				ML: Round(s.ml, 2), Grams: Round(s.ml*densityOf(s.of), 2), MediumML: Round(s.medium, 2),
			})
		}
	}
	return list
}

// densityOf returns what a millilitre of a pile of 1 in all weighs, in g/ml.
func densityOf(of match.Pile) (density float64) {
	for i, p := range of.Paints {
		density += of.Parts[i] * p.TubeDensity()
	}
	return density
}

// mediums returns what is stirred in, by kind.
func (c *count) mediums() []MediumAmount {
	list := []MediumAmount{}
	for _, m := range c.kinds {
		list = append(list, MediumAmount{m.Medium, Round(m.ML, 2)})
	}
	return list
}

// addMedium adds to what is taken of a kind of medium.
func (c *count) addMedium(kind string, ml float64) {
	if ml == 0 {
		return
	}
	i := slices.IndexFunc(c.kinds, func(m MediumAmount) bool { return m.Medium == kind })
	if i < 0 {
		i = len(c.kinds)
		c.kinds = append(c.kinds, MediumAmount{Medium: kind})
	}
	c.kinds[i].ML += ml
}
