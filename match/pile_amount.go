// How much of a paint is in a pile, as a painter writes it.

package match

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// The ends of a part that is typed, so that no slip of a key passes for one, and the
// most that touches and specks may be of a pile.
const (
	leastOfOne  = 0.001
	mostOfOne   = 1000
	mostTouched = 0.5
)

// longestName is the most bytes of a paint's name that is looked up: a longer one is no
// name, and takes long to find the nearest to.
const longestName = 200

// amountRange is the least and the most parts of one paint.
type amountRange struct{ least, most float64 }

// amount is how much of a paint of a name is in a pile.
type amount struct {
	name  string
	parts float64
	share float64 // of the whole pile, where measured in touches or specks; else 0
}

// parseAmount reads "yellow ochre 3", "3 parts of yellow ochre", "phthalo-blue touch",
// "2 touches of viridian", "viridian 2 touches" or a name alone. A number that is part
// of a name, as in "PB29", is none.
func parseAmount(field string, bounds amountRange) (amount, error) {
	words := strings.Fields(field)
	if len(words) == 0 {
		return amount{}, fmt.Errorf("a paint is missing between the commas; write it as \"yellow-ochre 3, titanium-white 1\"")
	}
	name, count, unit := splitAmount(words)
	if len(name) > longestName {
		return amount{}, fmt.Errorf("a paint's name is %d letters long; at most %d are read", len(name), longestName)
	}
	if !(count >= bounds.least && count <= bounds.most) {
		return amount{}, fmt.Errorf("%g %s of %s is out of range: from %g to %g", count, unit.plural(), name, bounds.least, bounds.most)
	}
	switch unit {
	case Touch:
		return amount{name: name, share: count * touchShare}, nil
	case Speck:
		return amount{name: name, share: count * speckShare}, nil
	}
	return amount{name: name, parts: count}, nil
}

// plural names the measure where there are several.
func (m Measure) plural() string {
	switch m {
	case Touch:
		return "touches"
	case Speck:
		return "specks"
	}
	return "parts"
}

// splitAmount takes the words of a paint apart: its name, a count, and of what.
func splitAmount(words []string) (name string, count float64, unit Measure) {
	last := len(words) - 1
	join := func(words []string) string { return strings.Join(words, " ") }
	if last > 1 { // "2 touches of viridian"
		count, counted := countOf(words[0])
		if unit, is := unitOf(words[1]); is && counted {
			name := words[2:]
			if len(name) > 1 && strings.EqualFold(name[0], "of") {
				name = name[1:]
			}
			return join(name), count, unit
		}
	}
	if unit, is := unitOf(words[last]); is && last > 0 {
		if count, counted := countOf(words[last-1]); counted && last > 1 { // "viridian 2 touches"
			return join(words[:last-1]), count, unit
		}
		if unit != Knife { // "viridian touch"
			return join(words[:last]), 1, unit
		}
	}
	for _, at := range []int{last, 0} {
		if n, err := strconv.ParseFloat(words[at], 64); err == nil && last > 0 {
			return join(slices.Delete(slices.Clone(words), at, at+1)), n, Knife
		}
	}
	return join(words), 1, Knife
}

// countOf reads the count before a unit: a number, or "a" for one.
func countOf(word string) (float64, bool) {
	if strings.EqualFold(word, "a") {
		return 1, true
	}
	n, err := strconv.ParseFloat(word, 64)
	return n, err == nil
}

// unitOf reads a unit, of one or of several.
func unitOf(word string) (Measure, bool) {
	switch strings.ToLower(word) {
	case "part", "parts":
		return Knife, true
	case "touch", "touches":
		return Touch, true
	case "speck", "specks":
		return Speck, true
	}
	return Knife, false
}

// amountWithin tells whether an unknown name has an amount among its words, as where
// the comma between two paints is left out.
func amountWithin(name string) bool {
	words := strings.Fields(name)
	return len(words) > 1 && slices.ContainsFunc(words, func(word string) bool {
		_, bad := strconv.ParseFloat(word, 64)
		unit, is := unitOf(word)
		return bad == nil || is && unit != Knife
	})
}
