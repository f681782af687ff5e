package answer

import (
	"tonewright/match"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// Gamut is what the mixes of a box reach, against those of all paints together.
type Gamut struct {
	AllPaints   int        `json:"all_paints"` // how many they are
	Darkest     float64    `json:"darkest"`    // Munsell values
	Lightest    float64    `json:"lightest"`
	AllDarkest  float64    `json:"all_darkest"`
	AllLightest float64    `json:"all_lightest"`
	Share       float64    `json:"share"` // of the volume of Munsell's solid that all paints reach
	ShortBy     float64    `json:"short_by"`
	Values      []int      `json:"values"` // of the columns of each hue
	Hues        []HueReach `json:"hues"`
	Gaps        []Stretch  `json:"gaps"`     // the widest first
	Widening    []Widening `json:"widening"` // each alone, the one that adds most first
}

// HueReach is the most Munsell chroma of a half family of hue at each value.
type HueReach struct {
	Hue  string    `json:"hue"`
	Word string    `json:"word"`
	Box  []float64 `json:"box"`
	All  []float64 `json:"all"`

	Short []bool `json:"short"` // by ShortBy or more
}

// Stretch is a row of values of one hue in which chroma differs, most at Value.
type Stretch struct {
	Hue   string  `json:"hue"`
	Word  string  `json:"word"`
	From  int     `json:"from"`
	To    int     `json:"to"`
	Value int     `json:"value"`
	Less  float64 `json:"less"`
	More  float64 `json:"more"`
}

// Widening is what one more paint would do.
type Widening struct {
	ID            string    `json:"paint"`
	Name          string    `json:"name"`
	CI            []string  `json:"ci"`
	Lightfastness string    `json:"lightfastness"`
	Share         float64   `json:"share"` // of the volume, with it
	Where         []Stretch `json:"where"` // where it adds most first
}

func gamutOf(owned []paint.Paint) *Gamut {
	g := match.GamutOf(owned, paint.Library())
	a := &Gamut{
		AllPaints: g.AllPaints,
		Darkest:   plan.Round(g.Darkest, 1), Lightest: plan.Round(g.Lightest, 1),
		AllDarkest: plan.Round(g.AllDarkest, 1), AllLightest: plan.Round(g.AllLightest, 1),
		Share: plan.Round(g.Share, 3), ShortBy: match.ShortBy, Values: []int{}, Hues: []HueReach{},
		Gaps: stretchesOf(g.Gaps), Widening: []Widening{},
	}
	for v := match.LowestValue; v <= match.HighestValue; v++ {
		a.Values = append(a.Values, v)
	}
	for _, h := range g.Hues {
		a.Hues = append(a.Hues, HueReach{h.Hue, h.Word, h.Box[:], h.All[:], shortAt(g.Gaps, h.Hue)})
	}
	for _, w := range g.Widening {
		p := w.Paint
		a.Widening = append(a.Widening, Widening{p.ID, p.Name, p.CI, p.Facts.Lightfastness, plan.Round(w.Share, 3), stretchesOf(w.Where)})
	}
	return a
}

func stretchesOf(stretches []match.Stretch) []Stretch {
	all := []Stretch{}
	for _, s := range stretches {
		all = append(all, Stretch(s))
	}
	return all
}

// shortAt tells, value by value, whether a hue is in a gap.
func shortAt(gaps []match.Stretch, hue string) []bool {
	short := make([]bool, match.HighestValue-match.LowestValue+1)
	for _, s := range gaps {
		for v := s.From; s.Hue == hue && v <= s.To; v++ {
			short[v-match.LowestValue] = true
		}
	}
	return short
}
