// What is left in the tubes of a box, and what paint from a tube weighs.

package paint

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// LinseedDensity is of raw linseed oil, g/ml at 15 °C; stand oil and the oils of walnut,
// safflower and poppy lie within some 4 % of it (from memory).
// Source: [Gardner1911] chapter II; [Greenish1920] Oleum Lini has 0.930 to 0.940.
const LinseedDensity = 0.934

// TubeDensity returns what a millilitre of the paint weighs in its tube, in g/ml: pigment
// and the oil it takes to grind it, the middle of what is told of that. Makers differ, and
// a tube with fillers or more oil is lighter: see TestTubeDensityByAnotherTable.
// Source: 100 g of pigment and its oil, over the space both take; [PaintFacts].
func (p Paint) TubeDensity() float64 {
	oil := (p.Facts.Oil[0] + p.Facts.Oil[1]) / 2
	return (100 + oil) / (100/p.Facts.Density + oil/LinseedDensity)
}

// mostLeft is the most ml that can be left of one paint. Ours: 25 of the largest tubes,
// 200 ml; more is a slip of the finger.
const mostLeft = 5000

// ParseLeft returns the ml of the paint that an amount means: "37 ml", "60 g", "0". A
// number that is not 0 needs its unit.
func (p Paint) ParseLeft(amount string) (ml float64, err error) {
	number := strings.TrimRightFunc(amount, func(r rune) bool { return !(r >= '0' && r <= '9') })
	unit := strings.TrimSpace(amount[len(number):])
	n, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
	per, known := 1.0, true
	switch strings.ToLower(unit) {
	case "ml":
	case "g":
		per = 1 / p.TubeDensity()
	case "":
		known = n == 0
	default:
		known = false
	}
	switch ml = n * per; {
	case err != nil || math.IsNaN(n) || !known:
		return 0, fmt.Errorf(`%q is no amount of paint; write it like "37 ml" or "60 g"`, shortened(amount))
	case ml < 0:
		return 0, fmt.Errorf("%q is less than nothing; write 0 for an empty tube", shortened(amount))
	case ml > mostLeft:
		return 0, fmt.Errorf("%q is more than the %d ml that can be left of one paint; write what is left in its tubes", shortened(amount), mostLeft)
	}
	return ml, nil
}

// SetLeft notes what is left of a paint of the box, by a name that Find knows and an
// amount as ParseLeft reads it. The error says what is wrong, not where.
func (b *Box) SetLeft(name, amount string) error {
	p, err := Find(b.Paints, name)
	if err != nil {
		return err
	}
	if !b.has(p.ID) {
		return fmt.Errorf("%q is %s, which is not in the box; add it to paints, or leave it out here", name, p.Name)
	}
	if _, again := b.Left[p.ID]; again {
		return fmt.Errorf("%q is %s, of which it is said already what is left; keep one of the two", name, p.Name)
	}
	ml, err := p.ParseLeft(amount)
	if err != nil {
		return fmt.Errorf("%s: %w", p.ID, err)
	}
	if b.Left == nil {
		b.Left = map[string]float64{}
	}
	b.Left[p.ID] = ml
	return nil
}

// readLeft notes what a box file says is left.
func (b *Box) readLeft(file string, text []byte) error {
	for _, e := range leftEntries(text) {
		err := e.wrong
		if err == nil {
			err = b.SetLeft(e.name, e.amount)
		}
		if err != nil {
			return fmt.Errorf("%s:%d: left: %w", file, e.line, err)
		}
	}
	return nil
}

// leftEntry is a line of the table of what is left.
type leftEntry struct {
	name, amount string
	line         int
	wrong        error // what keeps it from being a name and an amount
}

// leftEntries returns what stands in the table "left" of a valid box, however that is
// written: below [left], as left = { … }, or as left.viridian = ….
func leftEntries(text []byte) (entries []leftEntry) {
	mark := len(text) - len(trimMark(text))
	p := unstable.Parser{}
	p.Reset(text[mark:])
	var table []string
	line, counted := 1, 0 // up to where lines are counted
	for p.NextExpression() {
		node := p.Expression()
		switch node.Kind {
		case unstable.Table, unstable.ArrayTable:
			table = keyOf(node)
		case unstable.KeyValue:
			at := mark + offset(node)
			line, counted = line+bytes.Count(text[counted:at], []byte("\n")), at
			entries = append(entries, entriesOf(slices.Concat(table, keyOf(node)), node.Value(), line)...)
		}
	}
	return entries
}

// entriesOf returns what a key, its table's before it, says is left.
func entriesOf(key []string, value *unstable.Node, line int) (entries []leftEntry) {
	switch {
	case key[0] != "left":
	case len(key) == 1 && value.Kind == unstable.InlineTable:
		for at := value.Children(); at.Next(); {
			entries = append(entries, entriesOf(append([]string{"left"}, keyOf(at.Node())...), at.Node().Value(), line)...)
		}
	case len(key) != 2 || value.Kind != unstable.String && value.Kind != unstable.Integer && value.Kind != unstable.Float:
		entries = append(entries, leftEntry{line: line, wrong: errors.New(`this is of the wrong kind; write what is left of a paint like titanium-white = "37 ml"`)})
	default:
		entries = append(entries, leftEntry{name: key[1], amount: string(value.Data), line: line})
	}
	return entries
}

// keyOf returns the parts of an expression's key.
func keyOf(node *unstable.Node) (parts []string) {
	for at := node.Key(); at.Next(); {
		parts = append(parts, string(at.Node().Data))
	}
	return parts
}
