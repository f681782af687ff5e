// Few tubes in words.

package plan

import (
	"fmt"
	"strings"

	"tonewright/match"
	"tonewright/match/paint"
)

// mostTags is how many tags are named of the colours that a tube would bring nearer.
// Ours: more are not read, and the list has them all.
const mostTags = 6

// tubesOf writes which tubes of a box were chosen as data; ids are the tags of the aims.
func tubesOf(f match.Fewest, wish TubeWish, box []paint.Paint, ids []string) *Tubes {
	t := &Tubes{
		Kept: []string{}, MeanError: Round(f.MeanError, 2), FullError: Round(f.FullError, 2),
		Proven: f.Proven, Dropped: []Dropped{}, Text: tubesText(f, wish, len(box)),
	}
	for _, p := range f.Kept {
		t.Kept = append(t.Kept, box[p].ID)
	}
	for _, d := range f.Dropped {
		t.Dropped = append(t.Dropped, droppedOf(d, box[d.Paint], ids))
	}
	return t
}

func droppedOf(d match.DroppedPaint, p paint.Paint, ids []string) Dropped {
	e := Dropped{Paint: p.ID, Name: p.Name, Gain: Round(d.Gain, 2), Colours: []string{}}
	for _, a := range d.Nearer {
		e.Colours = append(e.Colours, ids[a])
	}
	e.Text = p.Name + ": " + bought(d, e.Colours) + "."
	return e
}

// bought says what a dropped tube would have bought.
func bought(d match.DroppedPaint, tags []string) string {
	off := fmt.Sprintf("%.1f off the mean", d.Gain)
	if Round(d.Gain, 1) == 0 {
		off = "less than 0.1 off the mean"
	}
	switch {
	case len(tags) > 0:
		if more := len(tags) - mostTags; more > 1 {
			tags = append(tags[:mostTags:mostTags], fmt.Sprintf("%d more", more))
		}
		return fmt.Sprintf("would bring %s nearer, by up to %.1f; %s", match.Listed(tags), d.UpTo, off)
	case Round(d.Gain, 1) == 0:
		return "nothing this picture asks for"
	}
	return "would bring no colour nearer by 1 or more; " + off
}

// tubesText says how well the tubes do, and what of the wish is not met.
func tubesText(f match.Fewest, wish TubeWish, box int) string {
	kept := len(f.Kept)
	said := []string{fmt.Sprintf("%d of %d tubes: mean error %.1f CIEDE2000, %.1f with all %d.", kept, box, f.MeanError, f.FullError, box)}
	switch {
	case kept == box:
		said[0] = fmt.Sprintf("Every tube of the box is kept, %d: mean error %.1f CIEDE2000.", box, f.MeanError)
	case Round(f.MeanError, 1) <= Round(f.FullError, 1):
		said[0] = fmt.Sprintf("%d of %d tubes: mean error %.1f CIEDE2000, as near as with all %d.", kept, box, f.MeanError, box)
	}
	if wish.Within == 0 && wish.Most > kept && kept < box {
		said = append(said, "No recipe needs one more.")
	}
	if len(f.Over) > 0 {
		said = append(said, overText(f.Over, wish))
	}
	if !f.Proven {
		said = append(said, "The search was cut short or had to guess: a slightly better choice may exist.")
	}
	return strings.Join(said, " ")
}

// overText names the regions that miss by more than was wished for.
func overText(over []match.RegionError, wish TubeWish) string {
	var regions []string
	for _, o := range over {
		regions = append(regions, fmt.Sprintf("%s (%.1f)", tagOf(o.Region), o.Error))
	}
	cure := "more tubes or a wider limit may do"
	if wish.Most == 0 {
		cure = "the whole box does hardly better there"
	}
	return fmt.Sprintf("Not within %g: %s; %s.", wish.Within, match.Listed(regions), cure)
}
