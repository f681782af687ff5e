// Outlines: points as measured with a ruler, from the top left.

package painting

import (
	"fmt"

	"github.com/pelletier/go-toml/v2/unstable"

	"tonewright/grid"
)

// mostPoints is the most points of a region's outline. Ours: far over what a hand
// measures, and drawn in no time.
const mostPoints = 10000

// unit returns the unit that outlines are measured in: the panel's.
func (r *reading) unit() grid.Unit {
	switch o := r.Options; {
	case o.Panel.Unit != "":
		return o.Panel.Unit
	case o.Cell.Unit != "":
		return o.Cell.Unit
	}
	return grid.Inch
}

// called returns a unit as a word.
func called(unit grid.Unit) string {
	if unit == grid.Inch {
		return "inches"
	}
	return string(unit)
}

// readOutline reads a ring of points, or a list of rings.
func readOutline(w *wish, v *value) error {
	if v.kind != unstable.Array {
		return wrongKind{v.what()}
	}
	if len(v.items) == 0 {
		return fmt.Errorf("has no points; write three or more, like [[1.5, 2], [4, 2], [4, 5.5]]")
	}
	rings := []value{*v}
	if first := v.items[0]; len(first.items) > 0 && first.items[0].kind == unstable.Array {
		rings = v.items
	}
	points := 0
	for i := range rings {
		ring, err := readRing(&rings[i], w.of.unit())
		if err != nil {
			return err
		}
		if points += len(ring); points > mostPoints {
			return fmt.Errorf("has over %d points; leave out those that lie on a straight line", mostPoints)
		}
		w.Outline = append(w.Outline, ring)
	}
	return nil
}

func readRing(v *value, unit grid.Unit) ([]grid.Point, error) {
	if v.kind != unstable.Array {
		return nil, faulty(v.line, "%s stands among the rings; a ring is a list of points, like [[1.5, 2], [4, 2], [4, 5.5]]", v.what())
	}
	if len(v.items) < 3 {
		return nil, faulty(v.line, "a ring has too few points, %d; it needs three or more, like [[1.5, 2], [4, 2], [4, 5.5]]", len(v.items))
	}
	ring := make([]grid.Point, len(v.items))
	for i := range v.items {
		var err error
		if ring[i], err = readPoint(&v.items[i], unit); err != nil {
			return nil, err
		}
	}
	return ring, nil
}

// readPoint reads [x, y]; whether it is on the panel the plan will say.
func readPoint(v *value, unit grid.Unit) (p grid.Point, err error) {
	if v.kind != unstable.Array || len(v.items) != 2 {
		return p, faulty(v.line, "%s is no point; write it like [1.5, 2]: from the left and from the top, in %s", v.brief(), called(unit))
	}
	for i, at := range []*grid.Millimetres{&p.X, &p.Y} {
		n, err := v.items[i].asNumber()
		if _, ok := err.(wrongKind); ok {
			return p, faulty(v.line, "%s stands in a point; write it like [1.5, 2]: from the left and from the top, in %s", v.items[i].what(), called(unit))
		}
		if err != nil {
			return p, err
		}
		if *at = unit.Of(n); !(*at >= 0 && *at <= grid.Largest) {
			return p, faulty(v.items[i].line, "%s is off the panel; points are measured in %s from its top left, so they are 0 or more", shortened(v.items[i].text), called(unit))
		}
	}
	return p, nil
}

// brief says what a value is, of a list how long.
func (v *value) brief() string {
	if v.kind == unstable.Array {
		return fmt.Sprintf("a list of %d", len(v.items))
	}
	return v.what()
}
