// The paints: a box file, a list of names, or the starter box; and palettes from them.

package painting

import (
	"fmt"
	"path/filepath"
	"slices"

	"github.com/pelletier/go-toml/v2/unstable"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

func readPaints(r *reading, v *value) error {
	if v.kind != unstable.Array {
		return wrongKind{v.what()}
	}
	r.paints = v
	return nil
}

// takeBox finds the paints that the painter owns.
func (r *reading) takeBox() (err error) {
	switch {
	case r.BoxFile != "" && r.paints != nil:
		return faulty(r.boxLine, "box and paints are both here; keep one of them: the paints you own stand in a file or in a list")
	case r.given != nil:
		r.Options.Box = *r.given
	case r.BoxFile != "":
		if r.Options.Box, err = paint.ReadBox(r.BoxFile); err != nil {
			return fmt.Errorf("%s:%d: box: %w", r.file, r.boxLine, err)
		}
	case r.paints != nil:
		r.Options.Box, err = r.listed()
	default:
		r.Options.Box = paint.StarterBox()
	}
	return err
}

// listed returns the box of the paints listed in the file.
func (r *reading) listed() (paint.Box, error) {
	box := paint.Box{Name: filepath.Base(r.file)}
	for i := range r.paints.items {
		item := &r.paints.items[i]
		p, err := paintOf(nil, item)
		if err != nil {
			return box, faulty(item.line, "paints: %w", err)
		}
		if hasPaint(box.Paints, p.ID) {
			return box, faulty(item.line, "paints: %q is %s, which is listed already; leave it out", item.text, p.Name)
		}
		box.Paints = append(box.Paints, p)
	}
	if len(box.Paints) == 0 {
		return box, faulty(r.paints.line, `paints: lists none; write paints = ["titanium-white", "yellow-ochre"] with those you own`)
	}
	if starter := paint.StarterBox(); slices.EqualFunc(box.Paints, starter.Paints, samePaint) {
		return starter, nil
	}
	return box, nil
}

// paintOf returns the paint that an item of a list names.
func paintOf(owned []paint.Paint, item *value) (paint.Paint, error) {
	name, err := item.asText(longestWord)
	if wrong, ok := err.(wrongKind); ok {
		return paint.Paint{}, fmt.Errorf(`%s stands in the list; write each paint's name in quotes, like "yellow-ochre"`, wrong.is)
	}
	if err != nil {
		return paint.Paint{}, err
	}
	return paint.Find(owned, name)
}

func samePaint(a, b paint.Paint) bool { return a.ID == b.ID }

func hasPaint(paints []paint.Paint, id string) bool {
	return slices.ContainsFunc(paints, func(p paint.Paint) bool { return p.ID == id })
}

// mostPalette is how many paints a region's palette may have beside white. Common
// practice, no source: past that it is a box again.
const mostPalette = 5

// readPalette reads a region's paints, which must be owned.
func readPalette(w *wish, v *value) error {
	if v.kind != unstable.Array {
		return wrongKind{v.what()}
	}
	owned, coloured := w.of.Options.Box.Paints, 0
	for i := range v.items {
		item := &v.items[i]
		p, err := paintOf(owned, item)
		switch {
		case err != nil:
			return faulty(item.line, "%w", err)
		case !hasPaint(owned, p.ID):
			return faulty(item.line, "%w", w.of.notOwned(fmt.Sprintf("%q", item.text), p))
		case slices.Contains(w.Palette, p.ID):
			return faulty(item.line, "%q is %s, which is listed already; leave it out", item.text, p.Name)
		}
		w.Palette = append(w.Palette, p.ID)
		if p.White() {
			w.whites = append(w.whites, p.ID)
		} else if coloured++; coloured > mostPalette {
			return faulty(item.line, "%q is one too many: a palette is 1 to %d paints, beside white", item.text, mostPalette)
		}
	}
	if coloured == 0 {
		return faulty(v.line, "names no paint but white; name 1 to %d others, or leave it out for the whole box", mostPalette)
	}
	return nil
}

// notOwned says of a paint, as it was called, that it is not in the box, and what to do.
func (r *reading) notOwned(called string, p paint.Paint) error {
	return fmt.Errorf("%s is not in your box; nearest to its colour there are %s; to use it, add %q to %s", called, nearColours(r.Options.Box.Paints, p), p.ID, r.boxPlace())
}

// nearColours returns the ids of up to three owned paints that are nearest to p in a tint,
// the nearest first; of equal ones the first owned.
func nearColours(owned []paint.Paint, p paint.Paint) string {
	white := paint.TintingWhite(owned)
	apart := func(q paint.Paint) int { // in hundredths, so that no last bit decides
		return int(100 * colour.DeltaE00(q.Tint(white), p.Tint(white)))
	}
	near := slices.Clone(owned)
	slices.SortStableFunc(near, func(a, b paint.Paint) int { return apart(a) - apart(b) })
	var ids []string
	for _, q := range near[:min(3, len(near))] {
		ids = append(ids, q.ID)
	}
	return alternatives(ids)
}

// boxPlace says where a paint is added to the box.
func (r *reading) boxPlace() string {
	switch {
	case r.given != nil:
		return "the box file that --box names"
	case r.BoxFile != "":
		return "paints in " + r.BoxFile
	case r.paints != nil:
		return fmt.Sprintf("paints on line %d", r.paints.line)
	}
	return "a list of yours, paints = [...], above the first [[region]]"
}
