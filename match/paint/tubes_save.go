// Putting an own tube into the text of a box file.

package paint

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"tonewright/analyze/colour"
)

// KeepTube returns what to write to a box file so that it holds an own tube: in the
// place of the [[tube]] block of the same id, comments inside it included, else at the
// end. Every other byte stays as it was. A file that is not there, fresh, becomes a box
// of that tube alone. own comes from OwnTube and has its optics.
// What is returned reads back as the same tube, to the last digit. The error says what
// is wrong with the file or the tube.
func KeepTube(file string, own Paint) (text []byte, fresh bool, err error) {
	text, err = readBoxText(file)
	if fresh = errors.Is(err, os.ErrNotExist); err != nil && !fresh {
		return nil, false, err
	}
	if text, err = withTube(file, text, own); err == nil && len(text) > largestBox {
		err = fmt.Errorf("%s: is full: with this tube it would be over 1 MiB; take tubes out that are used up", file)
	}
	return text, fresh, err
}

// withTube returns the text of a box file with an own tube in it; file is for errors.
func withTube(file string, text []byte, own Paint) ([]byte, error) {
	if own.Basis != Own {
		return nil, fmt.Errorf("%s: %s is not an own tube; only those are kept in a box file", file, own.Name)
	}
	with, err := placeTube(file, text, own)
	if err != nil {
		return nil, err
	}
	if err := sameMeanings(file, text, with); err != nil {
		return nil, fmt.Errorf("%s cannot be kept: %w", own.Name, err)
	}
	box, err := parseBox(file, with)
	if err != nil {
		return nil, fmt.Errorf("%s cannot be kept: %w", own.Name, err)
	}
	if err := sameMeanings(file, text, with); err != nil {
		return nil, fmt.Errorf("%s cannot be kept: %w", own.Name, err)
	}
	i := slices.IndexFunc(box.Paints, func(p Paint) bool { return p.ID == own.ID })
	if i < 0 || !sameTube(box.Paints[i], own) {
		return nil, fmt.Errorf("%s: %s cannot be kept so that it reads back the same", file, own.Name)
	}
	return with, nil
}

// sameMeanings checks that every name in a box's list that meant a paint before still
// means the paint of that id after.
func sameMeanings(file string, before, after []byte) error {
	list, err := decodeBox(file, before)
	if err != nil {
		return err
	}
	was, now := tubesOf(before), tubesOf(after)
	places := places(after, list.Paints)
	for i, name := range list.Paints {
		p, unknown := findOwn(was, name)
		if q, err := findOwn(now, name); unknown == nil && (err != nil || q.ID != p.ID) {
			return fmt.Errorf("%s%s: %q would no longer mean %s; give the tube another name", file, places[i], name, p.Name)
		}
	}
	return nil
}

// tubesOf returns the own tubes of a box's text, without those that are wrong.
func tubesOf(text []byte) (tubes []Paint) {
	list, err := decodeBox("", text)
	if err != nil {
		return nil
	}
	for _, block := range list.Tubes {
		if own, err := block.paint(); err == nil {
			tubes = append(tubes, own)
		}
	}
	return tubes
}

// sameTube tells whether two own tubes say the same.
func sameTube(a, b Paint) bool {
	return a.ID == b.ID && a.Name == b.Name && a.Like == b.Like && a.Fit == b.Fit && a.K == b.K && a.S == b.S
}

// placeTube puts the tube's block where it belongs.
func placeTube(file string, text []byte, own Paint) ([]byte, error) {
	end := lineEnd(text)
	block := strings.ReplaceAll(blockOf(own), "\n", end)
	if len(bytes.TrimSpace(trimMark(text))) == 0 {
		return fmt.Appendf(nil, "%spaints = [%s]\n\n%s\n", nameLine(file), TOMLString(own.ID), blockOf(own)), nil
	}
	list, err := decodeBox(file, text)
	if err != nil {
		return nil, err
	}
	places := blockPlaces(text)
	if len(places) != len(list.Tubes) {
		return nil, errors.New(file + ": its tubes are not written as [[tube]] blocks; write each as one, so that others can be added")
	}
	for i, at := range places {
		if known, err := list.Tubes[i].paint(); err == nil && known.ID == own.ID {
			return slices.Concat(text[:at.from], []byte(block), text[at.to:]), nil
		}
	}
	blank := text[len(bytes.TrimRight(text, "\r\n")):]
	gap := strings.Repeat(end, max(0, 2-bytes.Count(blank, []byte("\n"))))
	return slices.Concat(text, []byte(gap+block+end)), nil
}

// nameLine returns the line with a new box's name, its file's; none where a box cannot
// be called so.
func nameLine(file string) string {
	name := strings.TrimSuffix(filepath.Base(file), filepath.Ext(file))
	if checkName(name) != nil || !utf8.ValidString(name) {
		return ""
	}
	return "name = " + TOMLString(name) + "\n"
}

// lineEnd returns how most lines of a text end.
func lineEnd(text []byte) string {
	if 2*bytes.Count(text, []byte("\r\n")) > bytes.Count(text, []byte("\n")) {
		return "\r\n"
	}
	return "\n"
}

// blockOf returns a tube as a [[tube]] block, without a newline at its end.
func blockOf(own Paint) string {
	var b strings.Builder
	b.WriteString("[[tube]]\n")
	fmt.Fprintf(&b, "name = %s\npaint = %s\n", TOMLString(own.Name), TOMLString(own.Like))
	fmt.Fprintf(&b, "source = %s\n", TOMLString(own.Fit.Source))
	fmt.Fprintf(&b, "error = %s # of the fit, mean CIEDE2000\n", decimal(own.Fit.Error))
	fmt.Fprintf(&b, "away = %s # from the typical tube, CIEDE2000\n", decimal(own.Fit.Away))
	fmt.Fprintf(&b, "k = [ # 400 to 700 nm in steps of 10\n%s]\n", curveLines(&own.K))
	fmt.Fprintf(&b, "s = [\n%s]", curveLines(&own.S))
	return b.String()
}

// curveLines returns the numbers of a curve, ten to a line.
func curveLines(s *colour.Spectrum) string {
	var b strings.Builder
	for i, n := range s {
		switch {
		case i%10 == 0:
			b.WriteString("  ")
		default:
			b.WriteString(" ")
		}
		b.WriteString(decimal(n) + ",")
		if i%10 == 9 || i == len(s)-1 {
			b.WriteString("\n")
		}
	}
	return b.String()
}

// decimal returns the shortest figure that reads back the same.
func decimal(n float64) string { return strconv.FormatFloat(n, 'g', -1, 64) }

// TOMLString returns text as a TOML basic string: in quotes, with quotes, backslashes
// and control characters escaped.
func TOMLString(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range strings.ToValidUTF8(text, "\uFFFD") {
		switch {
		case r == '"' || r == '\\':
			b.WriteString(`\` + string(r))
		case r < ' ' || r == 0x7f:
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String() + `"`
}
