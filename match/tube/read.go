// Spectra from a spectrophotometer's file, whatever its maker.

package tube

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
	"unicode"

	"tonewright/analyze/colour"
)

// Sample is one measured reflectance, brought to the bands of colour.Spectrum, 0-1.
type Sample struct {
	Name  string
	R     colour.Spectrum
	Notes []string // what was assumed or extended, each one plain sentence
}

// raw is a sample as it stands in a file.
type raw struct {
	name    string
	line    int       // where it stands, or its values begin, from 1
	nm      []float64 // running up
	r       []float64
	percent bool // its header says so
}

// fewest is the least wavelengths a sample may have: 400 to 700 nm in steps of 20.
const fewest = 16

// Read returns the samples of a file of spectra, in its order: CGATS text (ANSI
// CGATS.17, ISO 28178) or CSV by comma, semicolon or tab, a sample a row or a sample
// a column. Steps of 1 to 20 nm, over 400-700 nm within a step; percent or 0-1.
// file is for errors, which say the line, and what to do.
// Source: [CGATS.17].
func Read(file string, data []byte) ([]Sample, error) {
	if bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")) {
		return nil, fmt.Errorf("%s: is written in UTF-16; save it as UTF-8", file)
	}
	text := strings.ToValidUTF8(string(bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))), "?")
	lines := strings.Split(strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(text), "\n")
	read := readTable
	if isCGATS(lines) {
		read = readCGATS
	}
	found, err := read(lines)
	if err != nil {
		return nil, fmt.Errorf("%s:%w", file, err)
	}
	if len(found) == 0 {
		return nil, fmt.Errorf("%s: has wavelengths but no samples; export it again with at least a masstone and a tint", file)
	}
	samples, err := finish(found)
	if err != nil {
		return nil, fmt.Errorf("%s:%w", file, err)
	}
	return samples, nil
}

// longestName is the most letters of a sample's name; what is over is cut off. Ours.
const longestName = 60

// plainName returns a sample's name on one line, at most 60 letters long, with "?" in
// the place of what does not show.
func plainName(name string) string {
	plain := []rune(strings.Map(func(r rune) rune {
		if r != '\t' && unicode.In(r, unicode.Cc, unicode.Cf) {
			return '?'
		}
		return r
	}, strings.ToValidUTF8(name, "?")))
	return string(plain[:min(len(plain), longestName)])
}

// Find returns the one sample of a name, in any case.
func Find(samples []Sample, name string) (Sample, error) {
	name = plainName(name)
	var found []Sample
	for _, s := range samples {
		if fold(s.Name) == fold(name) {
			found = append(found, s)
		}
	}
	switch len(found) {
	case 1:
		return found[0], nil
	case 0:
		return Sample{}, fmt.Errorf("no sample is called %q: the file has %s", name, list(samples))
	}
	return Sample{}, fmt.Errorf("%d samples are called %q; give each its own name in the file", len(found), name)
}

// fold returns a name without case and runs of blank space.
func fold(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }

// listed is how many samples an error names.
const listed = 8

// list returns the samples' names in quotes, the first few.
func list(samples []Sample) string {
	var names []string
	for _, s := range samples {
		names = append(names, strconv.Quote(s.Name))
	}
	if more := len(names) - listed; more > 0 {
		names = append(names[:listed], fmt.Sprintf("and %d more", more))
	}
	return strings.Join(names, ", ")
}
