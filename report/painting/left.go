// What is left in the tubes of a box that is listed in the painting file.

package painting

import (
	"github.com/pelletier/go-toml/v2/unstable"
)

// readLeft keeps the table [left] until the paints are known.
func readLeft(r *reading, v *value) error {
	if v.kind != unstable.InlineTable {
		return wrongKind{v.what()}
	}
	r.left = v.table
	return nil
}

// takeLeft gives the box what is left in its tubes. A box in place of the file's own has
// what its own file says.
func (r *reading) takeLeft() error {
	switch {
	case r.left == nil || r.given != nil:
		return nil
	case r.BoxFile != "":
		return faulty(r.left.line, "left: your paints are in %s; what is left in their tubes is written there, below a line [left]", r.BoxFile)
	}
	elsewhere := r.elsewhere()
	for _, e := range r.left.entries {
		if where, key := elsewhere[e.key]; key {
			return faulty(e.line, "left: %s is no paint; it stands %s", e.key, where)
		}
		v := &e.value
		if v.kind != unstable.String && v.kind != unstable.Integer && v.kind != unstable.Float {
			return faulty(e.line, `left: %s is %s; write it like titanium-white = "37 ml" or "60 g"`, bare(e.key), v.what())
		}
		if err := r.Options.Box.SetLeft(e.key, v.text); err != nil {
			return faulty(e.line, "left: %w", err)
		}
	}
	return nil
}
