// Pages composed from what is wanted, in order.

package sheet

import (
	"errors"
	"slices"

	"tonewright/grid"
	"tonewright/report/plan"
)

// draft is what goes onto a page, before it is known how many there will be.
type draft struct {
	kind  Kind
	paper grid.Paper
	about string // what is on it, for the head
	next  string // what to do with it, for the foot
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
		made, err := map[Kind]func() ([]draft, error){Whole: b.whole, Panel: b.panel, Cards: b.cards, Table: b.table}[k]()
		if err != nil {
			return nil, err
		}
		for i := range made {
			made[i].kind = k
		}
		drafts = append(drafts, made...)
	}
	pages := make([]Page, len(drafts))
	for i, d := range drafts {
		if d.kind != Table {
			d.about += b.shownAs()
		}
		pages[i] = framed(d, p.Name, i+1, len(drafts))
		pages[i].add(d.marks...)
	}
	return pages, nil
}

// shownAs says for the head of a page how its picture is to be read.
func (b *book) shownAs() (words string) {
	if b.Mirror {
		words = ", mirrored"
	}
	switch {
	case b.As == Values:
		words += "; Munsell values, 1 dark to 9 light"
	case b.As == Drawing && slices.Contains(b.Kinds, Table):
		words += "; numbers as in the table"
	}
	return words
}

// check tells whether the sheets asked for can be made of a panel.
func (o Options) check(g grid.Grid) (err error) {
	for _, k := range o.Kinds {
		switch k {
		case Panel:
			err = o.checkPanel(g)
		case Cards:
			if o.Cells == "" {
				return errors.New("cards need cells: name them with --cards, like C3:F7")
			}
			_, _, err = o.cutCards(g)
		}
		if err != nil {
			return err
		}
	}
	return nil
}
