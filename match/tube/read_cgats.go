// The text form of CGATS: keywords, a list of fields, then a line for each sample.

package tube

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// isCGATS tells whether a file has a list of fields as CGATS writes it.
func isCGATS(lines []string) bool {
	return slices.ContainsFunc(lines, func(line string) bool { return keyword(line) == "BEGIN_DATA_FORMAT" })
}

// keyword returns the first word of a line in capitals.
func keyword(line string) string {
	words := strings.Fields(line)
	if len(words) == 0 {
		return ""
	}
	return strings.ToUpper(words[0])
}

// cgats is where the reader stands in the file.
type cgats struct {
	fields      []string
	heads       header // of fields, once they are all there
	wantFields  int    // as the file says; 0: it does not
	wantSets    int
	sets        int
	inside      string // the list being read: "", formats or values
	found       []raw
	anySpectrum bool
}

const (
	formats = "BEGIN_DATA_FORMAT"
	values  = "BEGIN_DATA"
)

// readCGATS returns the samples of every table that has spectra. Errors begin as
// after "file:", as readTable's do.
func readCGATS(lines []string) ([]raw, error) {
	var c cgats
	for i, line := range lines {
		if err := c.read(line, i+1); err != nil {
			return nil, fmt.Errorf("%d: %w", i+1, err)
		}
	}
	if c.inside != "" {
		return nil, fmt.Errorf("%d: the file ends within %s; it was cut short, so export it again", len(lines), c.inside)
	}
	if !c.anySpectrum {
		return nil, fmt.Errorf(" has no spectra: no fields such as SPECTRAL_NM400; export it again with spectral reflectance")
	}
	return c.found, nil
}

// read takes in one line.
func (c *cgats) read(line string, number int) error {
	if trimmed := strings.TrimSpace(line); trimmed == "" || strings.HasPrefix(trimmed, "#") {
		return nil
	}
	switch word := keyword(line); word {
	case "BEGIN_DATA_FORMAT":
		c.fields, c.inside = nil, formats
	case "END_DATA_FORMAT":
		c.inside = ""
		return c.checkFields()
	case "BEGIN_DATA":
		c.sets, c.inside = 0, values
		return c.lookThrough()
	case "END_DATA":
		c.inside = ""
		return c.checkSets()
	case "NUMBER_OF_FIELDS", "NUMBER_OF_SETS":
		if c.inside == "" {
			return c.count(word, line)
		}
		fallthrough
	default:
		return c.content(line, number)
	}
	return nil
}

// content takes in a line of the list being read; a line outside of them is about the
// file.
func (c *cgats) content(line string, number int) error {
	switch c.inside {
	case formats:
		c.fields = append(c.fields, words(line)...)
	case values:
		c.sets++
		return c.sample(line, number)
	}
	return nil
}

// count reads how many fields or samples the file says it has.
func (c *cgats) count(word, line string) error {
	given := strings.Trim(strings.TrimSpace(strings.TrimSpace(line)[len(word):]), `"`)
	n, err := strconv.Atoi(given)
	if err != nil || n < 0 {
		return fmt.Errorf("%s is %q, which is no count", word, plainName(given))
	}
	if word == "NUMBER_OF_FIELDS" {
		c.wantFields = n
	} else {
		c.wantSets = n
	}
	return nil
}

func (c *cgats) checkFields() error {
	want := c.wantFields
	c.wantFields = 0
	if want != 0 && want != len(c.fields) {
		return fmt.Errorf("NUMBER_OF_FIELDS is %d, but %d fields are named; export the file again", want, len(c.fields))
	}
	return nil
}

func (c *cgats) checkSets() error {
	want := c.wantSets
	c.wantSets = 0
	if want != 0 && want != c.sets {
		return fmt.Errorf("NUMBER_OF_SETS is %d, but there are %d; the file was cut short, so export it again", want, c.sets)
	}
	return nil
}

// lookThrough finds the wavelengths among the fields.
func (c *cgats) lookThrough() error {
	heads, wrong := headingsOf(c.fields)
	if wrong != "" {
		return fmt.Errorf("of the fields, %s; export each wavelength once, in order", wrong)
	}
	if c.heads = heads; len(c.heads.at) == 0 {
		return nil
	}
	c.anySpectrum = true
	return c.heads.ready()
}

// sample reads a line of values; one of a table without spectra is passed over.
func (c *cgats) sample(line string, number int) error {
	if len(c.heads.at) == 0 {
		return nil
	}
	cells := strings.Split(strings.Trim(line, "\t"), "\t")
	if len(cells) != len(c.fields) {
		cells = words(line)
	}
	if len(cells) != len(c.fields) {
		return fmt.Errorf("has %d values where %d fields are named; put names with blanks in quotes", len(cells), len(c.fields))
	}
	for i := range cells {
		cells[i] = strings.Trim(strings.TrimSpace(cells[i]), `"`)
	}
	r, err := c.heads.sample(cells, number)
	if err != nil {
		return err
	}
	if r.name == "" {
		r.name = fmt.Sprintf("sample %d", len(c.found)+1)
	}
	c.found = append(c.found, r)
	return nil
}

// words splits at blanks, but not within double quotes, which are taken off.
func words(line string) (found []string) {
	var word strings.Builder
	quoted, open := false, false
	for _, r := range line {
		switch {
		case r == '"':
			quoted, open = !quoted, true
		case !quoted && (r == ' ' || r == '\t'):
			if open {
				found = append(found, word.String())
			}
			word.Reset()
			open = false
		default:
			word.WriteRune(r)
			open = true
		}
	}
	if open {
		found = append(found, word.String())
	}
	return found
}
