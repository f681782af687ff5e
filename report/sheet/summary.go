// What the terminal says of the sheets.

package sheet

import (
	"fmt"
	"io"
	"strings"

	"tonewright/report/plan"
)

// Summary says on the terminal which sheets went into which files, and what to do with them.
func Summary(w io.Writer, files string, p *plan.SheetPlan, pages []Page) error {
	var b strings.Builder
	count := "1 page"
	if len(pages) != 1 {
		count = fmt.Sprintf("%d pages", len(pages))
	}
	fmt.Fprintf(&b, "Sheets: %s, %s\n", files, count)
	for from := 0; from < len(pages); {
		to := from
		for to+1 < len(pages) && pages[to+1].Kind == pages[from].Kind {
			to++
		}
		which := fmt.Sprintf("page %d", from+1)
		if to > from {
			which = fmt.Sprintf("pages %d-%d", from+1, to+1)
		}
		fmt.Fprintf(&b, "  %-12s %s\n", which, pages[from].Kind.words(pages[from].About, to-from+1))
		from = to + 1
	}
	for _, warning := range p.Warnings {
		fmt.Fprintf(&b, "Beware: %s\n", warning)
	}
	b.WriteString("Print at 100 %, not \"fit to page\", and measure the rule at the foot of a page first.\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// words says what so many pages of a kind hold, from what the first is about.
func (k Kind) words(about string, pages int) string {
	if pages == 1 {
		return about
	}
	photo := ""
	if at := strings.Index(about, ", photo at"); at >= 0 {
		photo = about[at:]
	}
	switch k {
	case Panel:
		return fmt.Sprintf("panel, actual size, on %d sheets to be glued together%s", pages, photo)
	case Cards:
		return fmt.Sprintf("%d cards of cells%s", pages, photo)
	}
	return about
}
