// Own tubes in a box file: paints whose optics were fitted to the painter's own.

package paint

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2/unstable"

	"tonewright/analyze/colour"
)

// tubeBlock is a tube as it stands in a box file.
type tubeBlock struct {
	Name   string    `toml:"name"`
	Paint  string    `toml:"paint"`
	Source string    `toml:"source"`
	Error  float64   `toml:"error"`
	Away   float64   `toml:"away"`
	K      []float64 `toml:"k"`
	S      []float64 `toml:"s"`
}

// What a tube's numbers may be. Ours: the library's K goes up to 9.2 and its S from
// 0.005 to 1, and no two colours lie 200 CIEDE2000 apart.
const (
	mostK        = 100
	leastS       = 1e-4
	mostS        = 100
	mostDistance = 200
)

// longestName is the most letters of a tube's or a box's name: what a line of the
// terminal holds beside the figures. Ours.
const longestName = 60

// OwnTube returns an own tube of the library paint like, without optics yet. Its id
// is the name in small letters with hyphens; a name that means like itself, a Colour
// Index name that only like has included, or none, makes it take that paint's place.
// A name that means another library paint or several is an error, and so is one over
// 60 characters or with any that do not show.
func OwnTube(like Paint, name string) (Paint, error) {
	own := like
	own.Basis, own.Like = Own, like.ID
	if err := checkName(name); err != nil {
		return Paint{}, fmt.Errorf("a tube cannot be called %q: %w", shortened(name), err)
	}
	if fold(name) == "" {
		return own, nil
	}
	id := hyphened(name)
	if id == "" {
		return Paint{}, fmt.Errorf("a tube cannot be called %q; give it a name with letters", name)
	}
	for _, called := range []string{name, id} {
		one, several := among(library(), fold(called))
		switch {
		case len(several) > 1:
			return Paint{}, fmt.Errorf("a tube of %s cannot be called %q, which is the Colour Index name of %d paints; give it a name of its own", like.Name, name, len(several))
		case one != nil && one.ID != like.ID:
			return Paint{}, fmt.Errorf("a tube of %s cannot be called %q, which is another paint; give it a name of its own", like.Name, name)
		case one != nil:
			return own, nil
		}
	}
	own.ID, own.Name = id, strings.TrimSpace(name)
	return own, nil
}

// checkName refuses a name that is too long, or that holds control characters or marks
// that do not show, which could steer a terminal or make two names look the same.
func checkName(name string) error {
	if strings.ContainsFunc(name, func(r rune) bool { return unicode.In(r, unicode.Cc, unicode.Cf) }) {
		return errors.New("it holds characters that do not show; type it anew, on one line")
	}
	if n := utf8.RuneCountInString(name); n > longestName {
		return fmt.Errorf("it has %d characters; use at most %d", n, longestName)
	}
	return nil
}

// shortened returns the beginning of a name that is too long to be quoted whole.
func shortened(name string) string {
	if letters := []rune(name); len(letters) > longestName {
		return string(letters[:longestName]) + "…"
	}
	return name
}

// sameName tells whether a name is p's id or name, rather than its Colour Index name.
func sameName(p Paint, name string) bool {
	return fold(name) == fold(p.ID) || fold(name) == fold(p.Name)
}

// hyphened returns a name as an id: small letters and digits, all else one hyphen.
func hyphened(name string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	}), "-")
}

// findOwn returns the paint a box's list means: one of its own tubes by name or id,
// else one of the library, in whose place a tube of the same id stands.
func findOwn(tubes []Paint, name string) (Paint, error) {
	if i := slices.IndexFunc(tubes, func(own Paint) bool { return sameName(own, name) }); i >= 0 {
		return tubes[i], nil
	}
	p, err := find(name)
	if i := slices.IndexFunc(tubes, func(own Paint) bool { return own.ID == p.ID }); err == nil && i >= 0 {
		return tubes[i], nil
	}
	return p, err
}

// mostTubes is the most own tubes of a box. Ours: three times the library's paints. Each
// is held against all others by name: 199 take 0.2 s, 5,000 half a minute.
const mostTubes = 200

// readTubes makes paints of the blocks of a box file, in their order.
func readTubes(file string, text []byte, blocks []tubeBlock) ([]Paint, error) {
	if len(blocks) > mostTubes {
		return nil, fmt.Errorf("%s: %d tubes are more than the %d that a box may hold; take out those that are used up", file, len(blocks), mostTubes)
	}
	var tubes []Paint
	places := blockPlaces(text)
	for i, block := range blocks {
		where := file
		if i < len(places) {
			where = fmt.Sprintf("%s:%d", file, 1+strings.Count(string(text[:places[i].from]), "\n"))
		}
		own, err := block.paint()
		if err != nil {
			return nil, fmt.Errorf("%s: tube %d: %v", where, i+1, err)
		}
		clash := func(q Paint) bool { return sameName(q, own.ID) || sameName(q, own.Name) }
		if slices.ContainsFunc(tubes, clash) {
			return nil, fmt.Errorf("%s: tube %d: %q is the name of a tube above it; give each its own", where, i+1, own.Name)
		}
		tubes = append(tubes, own)
	}
	return tubes, nil
}

// paint returns the tube of a block, checked.
func (b *tubeBlock) paint() (Paint, error) {
	if b.Paint == "" {
		return Paint{}, fmt.Errorf(`has no paint; write paint = "yellow-ochre" with the paint it is a tube of`)
	}
	like, err := find(b.Paint)
	if err != nil {
		return Paint{}, err
	}
	own, err := OwnTube(like, b.Name)
	if err != nil {
		return Paint{}, err
	}
	own.Fit = Fit{b.Source, b.Error, b.Away}
	if !(b.Error >= 0 && b.Error <= mostDistance && b.Away >= 0 && b.Away <= mostDistance) {
		return Paint{}, fmt.Errorf("error and away are CIEDE2000 differences, from 0 to %d", mostDistance)
	}
	if own.K, err = curveOf("k", b.K, 0, mostK); err != nil {
		return Paint{}, err
	}
	own.S, err = curveOf("s", b.S, leastS, mostS)
	return own, err
}

// curveOf checks the numbers of k or s.
func curveOf(key string, numbers []float64, least, most float64) (s colour.Spectrum, err error) {
	if len(numbers) != len(s) {
		return s, fmt.Errorf("%s has %d numbers; it needs %d, for 400 to 700 nm in steps of 10", key, len(numbers), len(s))
	}
	for i, n := range numbers {
		if !(n >= least && n <= most) || math.IsInf(n, 0) {
			return s, fmt.Errorf("%s at %.0f nm is %v; it must be from %v to %v", key, wavelength(i), n, least, most)
		}
		s[i] = n
	}
	return s, nil
}

// A stretch is a part of a text in bytes: [from, to).
type stretch struct{ from, to int }

// blockPlaces returns where each [[tube]] block of a valid box stands: from the start
// of its first line to the end of its last key's line. None where tubes are written
// in another way.
func blockPlaces(text []byte) (found []stretch) {
	mark := len(text) - len(trimMark(text))
	p := unstable.Parser{KeepComments: true}
	p.Reset(text[mark:])
	open := false     // a tube's block goes on until the next table
	unclosed := false // the last expression was of it
	for p.NextExpression() {
		node := p.Expression()
		start := lineStart(text, mark+offset(node))
		if unclosed {
			found[len(found)-1].to = contentEnd(text, start)
			unclosed = false
		}
		switch node.Kind {
		case unstable.ArrayTable, unstable.Table:
			if open = node.Kind == unstable.ArrayTable; open {
				found, unclosed = append(found, stretch{start, len(text)}), true
			}
		case unstable.KeyValue:
			unclosed = open
		}
	}
	if unclosed {
		found[len(found)-1].to = contentEnd(text, len(text))
	}
	return found
}

// offset returns where an expression begins, or its key.
func offset(node *unstable.Node) int {
	if node.Kind == unstable.Comment {
		return int(node.Raw.Offset)
	}
	key := node.Key()
	key.Next()
	return int(key.Node().Raw.Offset)
}

// lineStart returns where the line of a place begins.
func lineStart(text []byte, at int) int { return bytes.LastIndexByte(text[:at], '\n') + 1 }

// contentEnd returns the end of what stands before a place, without blank space.
func contentEnd(text []byte, at int) int { return len(bytes.TrimRight(text[:at], " \t\r\n")) }
