// How much paint the painting takes, and what to buy.

package report

import (
	"fmt"

	"tonewright/report/plan"
)

// amounts is the section; Tubes is empty where the plan has no amounts.
type amounts struct {
	Text    string
	Buy     string // "" where nothing is lacking, or nothing is said of what is left
	Tubes   []tubeRow
	Mediums string // how much of each; "" for none
	Mixes   []mixRow
	Many    bool // mixes, enough for several columns
	Known   bool // of some tube the box says what is left, or something is lacking
	Unknown bool // of some tube it does not
}

type tubeRow struct {
	Name, ML, Grams, Left, Buy, Text string
	Short                            bool // more is needed than is left
}

type mixRow struct{ Tag, Area, Coats, ML, Grams string }

func amountsOf(p *plan.Plan) amounts {
	a := amounts{Text: p.Amounts.Text, Buy: buyText(&p.Amounts), Tubes: []tubeRow{}, Mixes: []mixRow{}}
	for _, t := range p.Amounts.Tubes {
		row := tubeRow{Name: t.Name, ML: small(t.ML), Grams: small(t.Grams), Left: "not said", Buy: "–", Short: t.BuyML > 0}
		if t.LeftML != nil {
			row.Left, row.Text = small(*t.LeftML)+" ml", capital(t.Text)+"."
		} else {
			a.Unknown = true
		}
		if t.BuyML > 0 {
			row.Buy, row.Text = small(t.BuyML)+" ml", capital(t.Text)+"."
		}
		a.Known = a.Known || t.LeftML != nil || t.BuyML > 0
		a.Tubes = append(a.Tubes, row)
	}
	var mediums []string
	for _, m := range p.Amounts.Mediums {
		mediums = append(mediums, small(m.ML)+" ml of "+m.Medium)
	}
	a.Mediums = listed(mediums)
	for _, m := range p.Amounts.Mixes {
		a.Mixes = append(a.Mixes, mixRow{m.ID, small(m.CM2), fmt.Sprint(m.Coats), small(m.ML), small(m.Grams)})
	}
	a.Many = len(a.Mixes) > manyMixes
	return a
}

// manyMixes is how many stand in one column. Ours: about a screen.
const manyMixes = 12

// buyText lists what is lacking: "2.8 ml of Yellow Ochre and 1.2 ml of Viridian".
func buyText(a *plan.Amounts) string {
	var list []string
	for _, t := range a.Tubes {
		if t.BuyML > 0 {
			list = append(list, fmt.Sprintf("%s ml of %s", small(t.BuyML), t.Name))
		}
	}
	return listed(list)
}

// small words an amount: a tenth below 10, whole above.
func small(v float64) string {
	switch {
	case v > 0 && v < 0.05:
		return "under 0.1"
	case v < 9.95:
		return fmt.Sprintf("%.1f", plan.Round(v, 1)) // halves up, as the plan rounds
	}
	return fmt.Sprintf("%.0f", v)
}
