package sheet

import (
	"tonewright/grid"
	"tonewright/report/plan"
)

// draft is what goes onto a page, before it is known how many there will be.
type draft struct {
	paper grid.Paper
	about string // what is on it, for the head
	marks []Mark
}

// Pages lays out the sheets asked for. An error is a mistake in what was asked for.
func Pages(p *plan.SheetPlan, o Options) ([]Page, error) {
	b := &book{Options: o.withDefaults(), plan: p, grid: p.Grid.Layout()}
	if p.Picture != nil {
		b.shown = newShown(p.Picture, b.grid, b.As)
	}
	var drafts []draft
	for _, k := range b.Kinds {
		made, err := map[Kind]func() ([]draft, error){Whole: b.whole}[k]()
		if err != nil {
			return nil, err
		}
		drafts = append(drafts, made...)
	}
	pages := make([]Page, len(drafts))
	for i, d := range drafts {
		pages[i] = framed(d.paper, p.Name, d.about, i+1, len(drafts))
		pages[i].add(d.marks...)
	}
	return pages, nil
}

// check tells whether the sheets asked for can be made of a panel.
func (o Options) check(g grid.Grid) error { return nil }
