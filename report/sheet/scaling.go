// A PDF that asks to be printed unscaled.

package sheet

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
)

// lastParts finds, at the end of a PDF, the catalogue, which is its last object, and what
// its trailer says.
var lastParts = regexp.MustCompile(`(?s)\n(\d+) 0 obj\n<<\n(/Type /Catalog.*?)>>\nendobj\nxref\n.*trailer\n<<\n(.*)>>\nstartxref\n(\d+)\n%%EOF\n$`)

// unscaled returns a PDF that asks programs to offer it for print at its own size, not
// fitted to the page, as many do unasked. The library that wrote it cannot say so; a PDF
// may be changed by what is added to its end: here its catalogue, written once more.
// Source: [ISO32000] 7.5.6 incremental updates, 12.2 viewer preferences, PrintScaling.
func unscaled(pdf []byte) ([]byte, error) {
	from := bytes.LastIndex(pdf, []byte("\n<<\n/Type /Catalog"))
	if from < 0 {
		return nil, errors.New("the sheets' PDF has no catalogue")
	}
	from = bytes.LastIndexByte(pdf[:from], '\n')
	found := lastParts.FindSubmatch(pdf[max(0, from):])
	if found == nil {
		return nil, errors.New("the sheets' PDF ends in an unknown way")
	}
	number, catalogue, trailer, table := found[1], found[2], found[3], found[4]
	at := len(pdf)
	pdf = fmt.Appendf(pdf, "%s 0 obj\n<<\n%s/ViewerPreferences <</PrintScaling /None>>\n>>\nendobj\n", number, catalogue)
	again := len(pdf)
	return fmt.Appendf(pdf, "xref\n%s 1\n%010d 00000 n \ntrailer\n<<\n%s/Prev %s\n>>\nstartxref\n%d\n%%%%EOF\n", number, at, trailer, table, again), nil
}
