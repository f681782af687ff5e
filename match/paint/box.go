// The box: the paints a painter owns, read from a TOML list.

package paint

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
)

// Box is the paints a painter owns, in the order listed.
type Box struct {
	Name   string
	Paints []Paint
	Left   map[string]float64 // ml left in the tubes, by id; a paint it does not name is not known of
}

// starter is the box taken when none is given. Ours: a white; of each primary one
// that leans cool and one that leans warm (lemon and deep yellow, rose and red,
// green-shade and red blue), so that every bright secondary has parents that
// lean its way; a green, an ochre, a red and a dark earth for the quiet colours most
// photographs are made of; a black. None is rated under lightfastness II.
var starter = []string{
	"titanium-white",
	"cadmium-yellow-lemon", "cadmium-yellow-deep", "yellow-ochre",
	"pyrrole-red", "quinacridone-rose", "burnt-sienna", "burnt-umber",
	"ultramarine-blue", "phthalo-blue-gs", "viridian", "ivory-black",
}

// StarterBox returns the box of 12 common paints that is taken when the painter
// gives none.
func StarterBox() Box {
	box := Box{Name: "starter box"}
	for _, id := range starter {
		i := slices.IndexFunc(library(), func(p Paint) bool { return p.ID == id })
		box.Paints = append(box.Paints, library()[i])
	}
	return box
}

// largestBox is the most bytes a box file may have: far over any list of tubes.
const largestBox = 1 << 20

// ReadBox reads a box file: TOML with a name and a list of paints, each by id,
// by name in any case, or by a Colour Index name that only one paint has:
//
//	name = "studio"
//	paints = ["titanium-white", "Yellow Ochre", "PB29"]
//	[left]                      # in their tubes
//	titanium-white = "37 ml"    # or "60 g"
//
// Beside them it may hold own tubes, each in a [[tube]] block: see KeepTube. A tube
// stands where paints names it, or names the paint it takes the place of; else last.
//
// Errors say the file, the line where it is known, and what to write instead.
func ReadBox(file string) (Box, error) {
	text, err := readBoxText(file)
	if err != nil {
		return Box{}, err
	}
	return parseBox(file, text)
}

// readBoxText returns a box file as it stands, which is no larger than a box may be.
// errors.Is(err, os.ErrNotExist) tells a file that is not there.
func readBoxText(file string) ([]byte, error) {
	text, err := ReadRegular(file, largestBox)
	if err != nil {
		return nil, err
	}
	if len(text) > largestBox {
		return nil, fmt.Errorf("%s: over 1 MiB is no list of paints; give a TOML file with name and paints", file)
	}
	return text, nil
}

// byteOrderMark is what some editors put before UTF-8.
var byteOrderMark = []byte("\xef\xbb\xbf")

// TOMLText returns what a TOML file holds without the mark that some editors put
// before it; UTF-16 is an error that names the file.
func TOMLText(file string, text []byte) ([]byte, error) {
	if bytes.HasPrefix(text, []byte("\xff\xfe")) || bytes.HasPrefix(text, []byte("\xfe\xff")) {
		return nil, fmt.Errorf("%s: is written in UTF-16; save it as UTF-8", file)
	}
	return trimMark(text), nil
}

func trimMark(text []byte) []byte { return bytes.TrimPrefix(text, byteOrderMark) }

// boxFile is a box as it stands in its file.
type boxFile struct {
	Name   string         `toml:"name"`
	Paints []string       `toml:"paints"`
	Left   map[string]any `toml:"left"` // see leftEntries
	Tubes  []tubeBlock    `toml:"tube"`
}

// decodeBox reads the form of a box file, not yet what its names mean.
func decodeBox(file string, text []byte) (list boxFile, err error) {
	text, err = TOMLText(file, text)
	if err != nil {
		return list, err
	}
	if manyKeys(text) {
		return list, fmt.Errorf("%s: has more than %d keys, which is no box; give a TOML file with name and paints", file, mostKeys)
	}
	decoder := toml.NewDecoder(bytes.NewReader(text)).DisallowUnknownFields()
	if err := decoder.Decode(&list); err != nil {
		return list, tomlError(file, err)
	}
	return list, nil
}

// mostKeys is the most keys of a box file. Ours: 200 tubes have 1600, their tables' with
// them, and what is left of all paints is told in 300 more. The TOML reader holds every key against all others:
// 60,000 took it 10 s.
const mostKeys = 2000

// manyKeys tells whether a text has more keys than a box.
func manyKeys(text []byte) bool {
	p, n := unstable.Parser{}, 0
	for p.Reset(text); p.NextExpression() && n <= mostKeys; {
		n += keysIn(p.Expression())
	}
	return n > mostKeys
}

// keysIn counts the keys of an expression, each part of one with dots and those of inline
// tables with them.
func keysIn(node *unstable.Node) (n int) {
	switch node.Kind {
	case unstable.Table, unstable.ArrayTable:
		return len(keyOf(node))
	case unstable.KeyValue:
		return len(keyOf(node)) + keysIn(node.Value())
	case unstable.InlineTable, unstable.Array:
		for at := node.Children(); at.Next(); {
			n += keysIn(at.Node())
		}
	}
	return n
}

func parseBox(file string, text []byte) (Box, error) {
	list, err := decodeBox(file, text)
	if err != nil {
		return Box{}, err
	}
	if err := checkName(list.Name); err != nil {
		return Box{}, fmt.Errorf("%s: a box cannot be called %q: %w", file, shortened(list.Name), err)
	}
	if len(list.Paints) == 0 && len(list.Tubes) == 0 {
		return Box{}, fmt.Errorf(`%s: lists no paints; write paints = ["titanium-white", "yellow-ochre"] with those you own`, file)
	}
	tubes, err := readTubes(file, text, list.Tubes)
	if err != nil {
		return Box{}, err
	}
	box := Box{Name: list.Name}
	if box.Name == "" {
		box.Name = filepath.Base(file)
	}
	places := places(text, list.Paints)
	for i, name := range list.Paints {
		p, err := findOwn(tubes, name)
		if err != nil {
			return Box{}, fmt.Errorf("%s%s: %v", file, places[i], err)
		}
		if box.has(p.ID) {
			return Box{}, fmt.Errorf("%s%s: %q is %s, which is listed already; leave it out", file, places[i], name, p.Name)
		}
		box.Paints = append(box.Paints, p)
	}
	for _, own := range tubes {
		if !box.has(own.ID) {
			box.Paints = append(box.Paints, own)
		}
	}
	if err := box.readLeft(file, text); err != nil {
		return Box{}, err
	}
	return box, nil
}

// has tells whether a paint of that id is in the box.
func (b *Box) has(id string) bool {
	return slices.ContainsFunc(b.Paints, func(p Paint) bool { return p.ID == id })
}

// tomlError says in one sentence what the TOML reader found.
func tomlError(file string, err error) error {
	if unknown := (*toml.StrictMissingError)(nil); errors.As(err, &unknown) {
		first := unknown.Errors[0]
		line, _ := first.Position()
		return fmt.Errorf("%s:%d: unknown key %q; a box has name, paints, [left] and [[tube]] blocks, and a tube has name, paint, source, error, away, k and s", file, line, strings.Join(first.Key(), "."))
	}
	if wrong := (*toml.DecodeError)(nil); errors.As(err, &wrong) {
		line, column := wrong.Position()
		reason := strings.TrimPrefix(wrong.Error(), "toml: ")
		if strings.Contains(reason, "cannot decode") || strings.Contains(reason, "cannot store") {
			reason = "this is of the wrong kind" // the reader's own words name our code
		}
		return fmt.Errorf(`%s:%d:%d: %s; a box is written as name = "…" and paints = ["…", "…"]`, file, line, column, reason)
	}
	return fmt.Errorf("%s: %v", file, err)
}

// places returns ":line" for each name where it stands in quotes in the text,
// in order; "" where escapes hide it.
func places(text []byte, names []string) []string {
	found := make([]string, len(names))
	lines := strings.Split(string(text), "\n")
	line, column := 0, 0
	for i, name := range names {
		if l, c := findQuoted(lines, name, line, column); l >= 0 {
			line, column = l, c
			found[i] = fmt.Sprintf(":%d", line+1)
		}
	}
	return found
}

// findQuoted returns the line where name stands in quotes at or after a place,
// and the column past it; -1 if nowhere.
func findQuoted(lines []string, name string, line, column int) (int, int) {
	for ; line < len(lines); line, column = line+1, 0 {
		rest := lines[line][column:]
		for _, quote := range []string{`"`, `'`} {
			if i := strings.Index(rest, quote+name+quote); i >= 0 {
				return line, column + i + len(name) + 2
			}
		}
	}
	return -1, 0
}
