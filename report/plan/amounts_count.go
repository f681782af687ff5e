// Counting the paint: coat by coat, and session by session as it is laid out.

package plan

import (
	"slices"

	"tonewright/grid"
	"tonewright/match"
	"tonewright/match/layer"
	"tonewright/match/paint"
)

// leastPile is the least that is laid out of a mix, in ml. Ours: under it parts cannot be
// told apart on the knife, 1 in 12 being a crumb of 3 mm, and it skins over before it is
// used.
const leastPile = 0.5

// A stock is the paint of one mix over the whole painting.
type stock struct {
	id     string
	region int        // where it is first used
	parts  []Part     // as they are told
	of     match.Pile // the same, 1 in all
	light  float64    // L* of the mix, thick
	cm2    float64
	coats  int

	ml, medium float64 // laid out
}

// A load is what one coat takes of one stock.
type load struct {
	coat, stock int
	ml          float64 // of paint, as painted: the waste comes on top
	medium      float64 // to one of paint
	kind        string  // of the medium
}

// A count adds up the paint.
type count struct {
	known  []paint.Paint // those of the box come before the library's
	coats  []Coat
	waste  float64
	unit   grid.Unit
	stocks []stock
	loads  []load
	at     map[string]int // id of a mix → its stock
	kinds  []MediumAmount // unrounded
}

func newCount(regions []Region, coats []Coat, g grid.Grid, box paint.Box, work Work) *count {
	c := &count{known: slices.Concat(box.Paints, paint.Library()), coats: coats, waste: WasteUsual, unit: g.Unit, at: map[string]int{}}
	if work.Waste != nil {
		c.waste = *work.Waste
	}
	panel := float64(g.Width) * float64(g.Height) / 100 // cm²
	for i, r := range regions {
		for _, col := range r.Colours {
			first := col.ID
			if col.SameAs != "" {
				first = col.SameAs
			}
			n := c.stockOf(first, i, col.Recipe.Parts)
			c.at[col.ID] = n
			c.stocks[n].cm2 += col.PanelShare * panel
		}
	}
	for i := range coats {
		c.load(i, regions, panel)
	}
	return c
}

// stockOf returns the stock of an id, a new one where there is none.
func (c *count) stockOf(id string, region int, parts []Part) int {
	if n, known := c.at[id]; known {
		return n
	}
	of := knifed(parts, c.known)
	c.at[id] = len(c.stocks)
	c.stocks = append(c.stocks, stock{id: id, region: region, parts: parts, of: of, light: lightOf(of)})
	return c.at[id]
}

// lightOf returns L* of a pile laid thick, to three digits.
func lightOf(of match.Pile) float64 {
	k, s := of.Optics()
	r := paint.Thick(&k, &s, paint.Gloss)
	return Round(r.Lab().L, 3)
}

// leastShare is what a colour has at least of the panel: shares are told to four digits,
// and what rounds to nothing is painted all the same.
const leastShare = 0.5e-4

// load notes what a coat takes of each of its mixes.
func (c *count) load(i int, regions []Region, panel float64) {
	coat := c.coats[i]
	region := slices.IndexFunc(regions, func(r Region) bool { return r.Tag == coat.Region })
	if region < 0 {
		return
	}
	medium, _ := layer.ParseMedium(coat.Medium) // written by String, so it is read back
	shares := coatShares(coat, regions[region])
	used := map[int]bool{}
	for j, m := range coat.Mixes {
		id := m.ID
		if id == "" {
			id = coat.ID
		}
		n := c.stockOf(id, region, m.Parts)
		cm2 := max(shares[j], leastShare) * panel
		if m.ID == "" {
			c.stocks[n].cm2 += cm2
		}
		if !used[n] {
			c.stocks[n].coats++
		}
		used[n] = true
		film := cm2 / 1e4 * coat.FilmUM // ml, the medium with it
		c.loads = append(c.loads, load{i, n, film / (1 + medium.Parts), medium.Parts, medium.Kind})
	}
}

// coatShares returns how much of the panel each mix of a coat covers: a colour's mix what
// the colour covers, a mix of the coat's own the region. A block-in covers its region
// whichever mixes it is made with.
func coatShares(coat Coat, r Region) []float64 {
	shares, sum := make([]float64, len(coat.Mixes)), 0.0
	for i, m := range coat.Mixes {
		shares[i] = mixShare(m, r)
		sum += shares[i]
	}
	if coat.Pass == PassBlockIn && sum > 0 {
		for i := range shares {
			shares[i] *= r.Share / sum
		}
	}
	return shares
}

// mixShare returns how much of the panel a mix covers in a region.
func mixShare(m CoatMix, r Region) (share float64) {
	if m.ID == "" {
		return r.Share
	}
	if i := slices.IndexFunc(r.Colours, func(c Colour) bool { return c.ID == m.ID }); i >= 0 {
		return r.Colours[i].PanelShare
	}
	for _, c := range r.Colours { // the mix goes by the tag of another region's colour
		if c.SameAs == m.ID {
			share += c.PanelShare
		}
	}
	return share
}

// mixes returns what each mix takes that is painted with.
func (c *count) mixes() []MixAmount {
	list := []MixAmount{}
	for _, s := range c.stocks {
		if s.coats > 0 {
			list = append(list, MixAmount{
				ID: s.id, CM2: Round(s.cm2, 2), Coats: s.coats,
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
