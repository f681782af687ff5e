// Schemes: what palettes are wished for, and regions that are another's complement.

package painting

import (
	"fmt"
	"strings"

	"tonewright/match"
)

// schemes are those that need no other region.
var schemes = []string{string(match.Monochrome), string(match.Analogous), string(match.Quiet)}

// complementOf begins the scheme of a region that is another's complement.
const complementOf = string(match.Complement) + " of"

// readScheme reads a scheme; that the other region is there is seen when all are read.
func readScheme(w *wish, text string) error {
	scheme := strings.Join(strings.Fields(text), " ")
	lower := strings.ToLower(scheme)
	for _, s := range schemes {
		if lower == s {
			w.Wish.Scheme = match.Scheme(s)
			return nil
		}
	}
	if lower == string(match.Complement) || lower == complementOf {
		return fmt.Errorf(`say of which region, like "%s lemon"`, complementOf)
	}
	if n := len(complementOf) + 1; len(scheme) > n && strings.EqualFold(scheme[:n], complementOf+" ") {
		w.Wish.Scheme, w.Wish.Of = match.Complement, scheme[n:]
		return nil
	}
	return fmt.Errorf(`%q is not known%s: write %s, or "%s NAME" with another region's name`, text, meant(lower, schemes), alternatives(schemes), complementOf)
}

// complements finds the regions that others are the complements of.
func (r *reading) complements() error {
	byName := map[string]*wish{}
	var names []string
	for _, w := range r.wishes {
		byName[strings.ToLower(w.Name)] = w
		names = append(names, w.Name)
	}
	for _, w := range r.wishes {
		if w.Wish.Scheme != match.Complement {
			continue
		}
		other := byName[strings.ToLower(w.Wish.Of)]
		if other == nil {
			return faulty(w.table.lineOf("scheme"), "scheme: there is no region %q to be the complement of; there are %s", w.Wish.Of, strings.Join(names, ", "))
		}
		w.Wish.Of = other.Name
	}
	for _, w := range r.wishes {
		if circle := circleOf(w, byName); circle != "" {
			return faulty(w.table.lineOf("scheme"), "scheme: %s: a circle, which has no beginning; give one of them a palette, or a hue in place of its scheme", circle)
		}
	}
	return nil
}

// circleOf says how a region is its own complement by way of others; "" if it is not, or
// if a palette settles one of them.
func circleOf(w *wish, byName map[string]*wish) string {
	path := fmt.Sprintf("%q", w.Name)
	for at, steps := w, 0; at.Wish.Of != "" && len(at.Palette) == 0 && steps < len(byName); steps++ {
		at = byName[strings.ToLower(at.Wish.Of)]
		path += fmt.Sprintf(" is the complement of %q", at.Name)
		if at == w {
			return path
		}
		path += ", which"
	}
	return ""
}
