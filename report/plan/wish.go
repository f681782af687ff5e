// What can be wrong with a region that a painter asks for.

package plan

import (
	"errors"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"tonewright/analyze"
)

// MostRegions is how many regions a painter can name: one letter of the alphabet each,
// less one for the rest.
const MostRegions = 25

// RegionError is a mistake in one of the painter's regions.
type RegionError struct {
	Name string // of the region
	err  error
}

func (e RegionError) Error() string { return fmt.Sprintf("region %q: %v", e.Name, e.err) }

// Unwrap returns what is wrong, without the region's name.
func (e RegionError) Unwrap() error { return e.err }

// KeyError is a mistake that only shows once the photo or the regions are known, in what
// one key of a painting file, or the flag of its name, asks for.
type KeyError struct {
	Key string // "cell", "tubes"
	err error
}

func (e KeyError) Error() string { return e.err.Error() }

// Unwrap returns the error it holds.
func (e KeyError) Unwrap() error { return e.err }

// WrongKey returns a UsageError about what a key asks for, or the flag of its name.
func WrongKey(key string, err error) error { return Misused(KeyError{key, err}) }

// CheckRegionName tells why a region cannot have a name; nil if it can.
func CheckRegionName(name string) error {
	switch {
	case strings.TrimSpace(name) == "":
		return errors.New("a region needs a name, like kettle")
	case strings.EqualFold(name, analyze.TheRest):
		return fmt.Errorf("region %q: that name is kept for what no region covers; choose another", name)
	case strings.ContainsFunc(name, hidden) || !utf8.ValidString(name):
		return fmt.Errorf("region %q has characters that cannot be printed in its name: use letters", name)
	}
	return nil
}

// hidden tells what does not show: controls, and marks that make two names look the same.
func hidden(r rune) bool { return unicode.In(r, unicode.Cc, unicode.Cf) }
