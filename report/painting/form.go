// What is wrong with the form of a painting file, in a painter's words.

package painting

import (
	"errors"
	"fmt"
	"strings"

	"github.com/pelletier/go-toml/v2"

	"tonewright/report/plan"
)

// slips are the usual ones: how the TOML reader begins to tell of each, or a part of it,
// and what a painter is told. The first that fits is taken.
var slips = []struct{ told, say string }{
	{"after array value", "the list before this lacks a comma or its closing ]"},
	{"array is incomplete", "a list is not closed; end it with ]"},
	{"after inline table", `what stands in { } is parted by commas and closed by }, like {kind = "deutan", severity = 0.8}`},
	{"inline table is incomplete", "a { is not closed; end it with }"},
	{"array table name", "two brackets stand on each side, like [[region]]"},
	{"close table name", "brackets are closed, like [[region]]"},
	{"strings cannot have new lines", "the quotes that are opened here are not closed on the same line"},
	{"not terminated", "the quotes that are opened here are never closed"},
	{"strings cannot have control", "there is a character between these quotes that does not show; type them anew"},
	{"invalid escape character", `in "double quotes" a backslash is written twice; or put what stands here into 'single quotes'`},
	{"expected '='", `a key is set with =, like role = "focal"`},
	{"character at start of key", `a line begins with a key, like role = "focal", or with # where it is a note`},
	{"strings must be quoted", startOfValue},
	{"start of value", startOfValue},
	{"expected keyword", startOfValue},
	{"expected value", startOfValue},
	{"expected number", startOfValue},
	{"expected newline but got U+002C", "one value stands behind a key; decimals have a point, like 0.3, and lists brackets, like [1, 2]"},
	{"expected newline", "what stands here is too much: a line ends with its value, or with a note after a #"},
	{"impossible date", "there is no such day; a date is written like 2026-12-01"},
	{"dates are expected", "a date is written with all its digits, like 2026-12-01"},
	{"strconv", "this number cannot be read, it is too large or too small"},
	{"too large to fit", "this number is too large"},
	{"invalid UTF-8", "there is a character here that is not UTF-8; save the file as UTF-8"},
}

const startOfValue = `what stands here is no value: text is written in straight quotes, like "black", numbers like 0.3, yes as true and no as false`

// formError says in one sentence what the TOML reader found.
func formError(file string, err error) error {
	wrong := (*toml.DecodeError)(nil)
	if !errors.As(err, &wrong) {
		return plan.Misused(fmt.Errorf("%s: %w", file, err))
	}
	line, column := wrong.Position()
	reason := strings.TrimPrefix(wrong.Error(), "toml: ")
	for _, slip := range slips {
		if strings.Contains(reason, slip.told) {
			return plan.Misused(fmt.Errorf("%s:%d:%d: %s", file, line, column, slip.say))
		}
	}
	if key, ok := strings.CutSuffix(reason, ", but should be an array table"); ok {
		key, _, _ = strings.Cut(strings.TrimPrefix(key, "key "), " already exists as a ")
		reason = fmt.Sprintf("[[%s]] stands here, and elsewhere %[1]s without its two brackets; write [[%[1]s]] each time", bare(key))
		if key == "coat" {
			reason = "coat " + coatIsThickness
		}
	}
	if key, twice := strings.CutSuffix(reason, " is already defined"); twice {
		reason = strings.TrimPrefix(key, "key ") + " is set twice; keep one of the two lines"
	}
	return plan.Misused(fmt.Errorf("%s:%d:%d: %s", file, line, column, reason))
}
