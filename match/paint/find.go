// Finding a paint by what a painter calls it.

package paint

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"
)

// Find returns the paint that a painter means by an id, a name or a Colour Index
// name that only one paint has, in any case: one of the owned paints, else one of the
// library. The error suggests the nearest known ones.
func Find(owned []Paint, name string) (Paint, error) {
	p, several := among(owned, fold(name))
	switch {
	case len(several) > 1:
		return Paint{}, fmt.Errorf("%q is the Colour Index name of %d of your paints; write one of %s", name, len(several), quoted(ids(several)))
	case p != nil:
		return *p, nil
	}
	return find(name)
}

// find returns the paint of the library that a name means.
func find(name string) (Paint, error) {
	wanted := fold(name)
	if wanted == "" {
		return Paint{}, fmt.Errorf("a paint without a name; write one such as %q or leave it out", library()[0].ID)
	}
	p, byIndex := among(library(), wanted)
	if p != nil {
		return *p, nil
	}
	switch letters := utf8.RuneCountInString(name); {
	case letters > longestName: // the nearest to a whole file would be sought for minutes
		return Paint{}, fmt.Errorf("unknown paint %q: it has %d characters; a name has at most %d", shortened(name), letters, longestName)
	case len(byIndex) == 0:
		return Paint{}, fmt.Errorf("unknown paint %q; did you mean %s?", name, quoted(nearest(wanted)))
	}
	return Paint{}, fmt.Errorf("%q is the Colour Index name of %d paints; write one of %s", name, len(byIndex), quoted(ids(byIndex)))
}

// among returns the one paint of a folded name; nil where there is none, or where
// several have it as their Colour Index name, which are returned then.
func among(paints []Paint, wanted string) (one *Paint, several []Paint) {
	for i, p := range paints {
		if wanted == fold(p.ID) || wanted == fold(p.Name) {
			return &paints[i], nil
		}
		if len(p.CI) == 1 && wanted == fold(p.CI[0]) {
			several = append(several, p)
			one = &paints[i]
		}
	}
	if len(several) == 1 {
		return one, nil
	}
	return nil, several
}

// fold returns a name without what people write differently: case, spaces,
// hyphens, brackets, apostrophes, and the two spellings of grey.
func fold(name string) string {
	folded := strings.Map(func(r rune) rune {
		if strings.ContainsRune(" \t-_()'’.", r) {
			return -1
		}
		return r
	}, strings.ToLower(name))
	return strings.ReplaceAll(folded, "gray", "grey")
}

// wordLetters is how long what is typed must be to count as a word of a name. Ours: "red"
// is one, two letters are chance.
const wordLetters = 3

// suggestions is how many names an error offers.
const suggestions = 3

// nearest returns the ids whose id, name or Colour Index name is fewest edits
// away from a folded name; where some hold it as a word, only those. Equal ones in the
// library's order.
func nearest(wanted string) []string {
	type near struct {
		id    string
		holds bool
		edits int
	}
	var list []near
	for _, p := range library() {
		holds := len(wanted) >= wordLetters && (strings.Contains(fold(p.ID), wanted) || strings.Contains(fold(p.Name), wanted))
		n := near{p.ID, holds, min(Edits(wanted, fold(p.ID)), Edits(wanted, fold(p.Name)))}
		for _, ci := range p.CI {
			n.edits = min(n.edits, Edits(wanted, fold(ci)))
		}
		list = append(list, n)
	}
	slices.SortStableFunc(list, func(a, b near) int {
		switch {
		case a.holds == b.holds:
			return a.edits - b.edits
		case a.holds:
			return -1
		}
		return 1
	})
	var found []string
	for _, n := range list[:suggestions] {
		if n.holds == list[0].holds {
			found = append(found, n.id)
		}
	}
	return found
}

// Edits returns how many letters must be put in, taken out, changed or swapped with
// the next one to turn a into b.
// Source: [Damerau1964], each place edited once.
func Edits(a, b string) int {
	from, to := []rune(a), []rune(b)
	rows := make([][]int, len(from)+1) // rows[i][j]: edits from the first i letters to the first j
	for i := range rows {
		rows[i] = make([]int, len(to)+1)
		rows[i][0] = i
	}
	for j := range to {
		rows[0][j+1] = j + 1
	}
	for i := range from {
		for j := range to {
			change := rows[i][j]
			if from[i] != to[j] {
				change++
			}
			least := min(change, rows[i][j+1]+1, rows[i+1][j]+1)
			if i > 0 && j > 0 && from[i] == to[j-1] && from[i-1] == to[j] {
				least = min(least, rows[i-1][j-1]+1)
			}
			rows[i+1][j+1] = least
		}
	}
	return rows[len(from)][len(to)]
}

func ids(paints []Paint) (ids []string) {
	for _, p := range paints {
		ids = append(ids, p.ID)
	}
	return ids
}

// quoted returns "a", "b" or "c".
func quoted(names []string) string {
	var b strings.Builder
	for i, name := range names {
		switch {
		case i == 0:
		case i == len(names)-1:
			b.WriteString(" or ")
		default:
			b.WriteString(", ")
		}
		fmt.Fprintf(&b, "%q", name)
	}
	return b.String()
}
