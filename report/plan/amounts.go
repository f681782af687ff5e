// Amounts: how much of each mix and tube the painting takes.

package plan

import (
	"fmt"

	"tonewright/grid"
	"tonewright/match/paint"
)

// Amounts is how much paint to lay out, from areas, film and waste.
type Amounts struct {
	FilmUM  float64        `json:"film_um"` // wet, of an ordinary coat
	Waste   float64        `json:"waste"`   // what is laid out and not painted, as a share of what is
	Spread  float64        `json:"spread_m2_per_litre"`
	ML      float64        `json:"ml"` // of all tubes together
	Mixes   []MixAmount    `json:"mixes"`
	Tubes   []TubeAmount   `json:"tubes"`
	Mediums []MediumAmount `json:"mediums"`
	Text    string         `json:"text"`
}

// MixAmount is what one mix takes over all its coats, without medium. Colours mixed with
// the same parts are one mix, under the first one's tag.
type MixAmount struct {
	ID       string  `json:"id"`       // the tag of its pile
	CM2      float64 `json:"area_cm2"` // of the colours that are mixed so; where it is laid, each place once, of a pile that is for no colour
	Coats    int     `json:"coats"`
	ML       float64 `json:"ml"`        // laid out, the waste with it
	Grams    float64 `json:"grams"`     // the same
	MediumML float64 `json:"medium_ml"` // stirred in beside it
}

// TubeAmount is what the painting takes of one tube.
type TubeAmount struct {
	Paint   string   `json:"paint"`
	Name    string   `json:"name"`
	ML      float64  `json:"ml"`
	Grams   float64  `json:"grams"`
	Density float64  `json:"density_g_per_ml"`  // of the paint in its tube, pigment and oil
	LeftML  *float64 `json:"left_ml,omitempty"` // what the box says is left; none where it does not say
	BuyML   float64  `json:"buy_ml"`            // what is lacking: all of a paint that is not in the box; 0 where enough is left or nothing is said
	Text    string   `json:"text"`
}

// MediumAmount is what the painting takes of a medium.
type MediumAmount struct {
	Medium string  `json:"medium"`
	ML     float64 `json:"ml"`
}

// Pile is paint laid out for one session.
type Pile struct {
	ID       string  `json:"id"` // its tag
	ML       float64 `json:"ml"` // of paint
	MediumML float64 `json:"medium_ml"`
	Size     string  `json:"size"`       // in words a hand knows: "a hazelnut, heaped 2 cm wide"
	Tubes    string  `json:"from_tubes"` // what to squeeze out for it: "Titanium White 4 cm, Raw Umber 1.5 cm"
	Parts    []Part  `json:"parts"`
}

// amountsOf returns how much paint the coats of l take on the panel of g, and puts what
// is laid out for each session into d, each coat in its session. None of the lists is nil.
//
// A coat takes its area times its wet film, 1 ml for 1 µm on 1 m², and the waste on top;
// medium takes its part of the film. The usual film of 100 µm is common practice, no
// source; a house painter's brushed coat was reckoned at 81 µm, [Whitelead1914].
func amountsOf(regions []Region, l Layers, d *Days, g grid.Grid, box paint.Box, opt Options) Amounts {
	c := newCount(regions, l.Coats, g, box, opt)
	for i := range d.Sessions {
		d.Sessions[i].Piles = c.layOut(d.Sessions[i])
	}
	a := Amounts{
		FilmUM: l.FilmUM, Waste: c.waste, Spread: Round(1000/l.FilmUM, 2),
		Mixes: c.mixes(), Tubes: c.tubes(box), Mediums: c.mediums(), Text: c.text(l.FilmUM),
	}
	for _, t := range a.Tubes {
		a.ML += t.ML
	}
	a.ML = Round(a.ML, 2)
	return a
}

// text says what the amounts rest on.
func (c *count) text(film float64) string {
	return fmt.Sprintf("An estimate: the area of each mix under each coat, times its wet film, %.0f µm for an ordinary coat (1 litre on %.3g m²), "+
		"and %.0f %% on top for what stays on palette, knife and brush; nothing under %.1f ml is laid out. "+
		"A hand that lays it on thick takes several times as much: set the film to your own. "+
		"%s Ribbons are from a nozzle of %.0f mm; grams are of pigment and the oil it is ground in, and tubes differ by an eighth and more.",
		film, 1000/film, 100*c.waste, leastPile, sizesText(), nozzle)
}
