// The painter's sight, as text or as a table.

package painting

import (
	"fmt"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"tonewright/analyze/colour"
)

// sightTable is sight = {kind = "deutan", severity = 0.8}.
type sightTable struct {
	kind     colour.Sight
	severity float64
}

// readSight reads "deutan 0.8", or a table of a kind and a severity.
func readSight(r *reading, v *value) (err error) {
	if v.kind != unstable.InlineTable {
		return words(func(r *reading, text string) (err error) {
			r.Options.Sight, err = colour.ParseSight(text)
			return err
		})(r, v)
	}
	t := sightTable{severity: 1}
	if err := fill(&t, v.table, sightKeys(), "of sight", r.elsewhere()); err != nil {
		return err
	}
	if t.kind.Kind == "" {
		return faulty(v.line, `has no kind; write it like {kind = "deutan", severity = 0.8}`)
	}
	if r.Options.Sight = t.kind; !t.kind.Full() {
		r.Options.Sight.Severity = t.severity
	}
	return nil
}

func sightKeys() []key[sightTable] {
	return []key[sightTable]{
		{"kind", `"deutan"`, words(func(t *sightTable, text string) (err error) {
			if strings.ContainsAny(text, "0123456789") {
				return fmt.Errorf("%q is more than a kind: the number belongs to severity", text)
			}
			t.kind, err = colour.ParseSight(text)
			return err
		})},
		{"severity", "0.8", number(0, 1, func(t *sightTable, n float64) { t.severity = n })},
	}
}
