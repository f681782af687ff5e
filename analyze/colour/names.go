package colour

import (
	_ "embed"
	"math"
	"strconv"
	"strings"
	"sync"
)

// nameBlocks is the ISCC-NBS division of the Munsell solid into 267 names, in
// the layout its first lines tell.
// Source: [KellyJudd1976] section 13, colour-name charts.
//
//go:embed iscc_nbs.txt
var nameBlocks string

// block is a box in the Munsell solid that has one name; what lies on a minimum
// is in it, what lies on a maximum is not.
type block struct {
	hueMin, hueMax, valueMin, valueMax, chromaMin, chromaMax float64
	name                                                     string
}

// Name returns the ISCC-NBS name of m, "moderate orange", as the standard
// spells it ("grayish"). The 267 names leave no gap: every chroma from 0 up and
// every value from 0 to 10 has one; values outside are clamped.
// Source: [KellyJudd1976].
func (m Munsell) Name() string {
	hue := wrap(m.Hue-1, 100) + 1 // the charts run from 1R round to 1R, [1, 101)
	// Value 10 lies on the maximum of the topmost blocks and is meant to be in them.
	value := min(max(m.Value, 0), math.Nextafter(10, 0))
	chroma := max(m.Chroma, 0)
	for _, b := range blocks() {
		if b.holds(hue, value, chroma) {
			return b.name
		}
	}
	return "" // not a number, or an endless chroma
}

func (b block) holds(hue, value, chroma float64) bool {
	return b.hueMin <= hue && hue < b.hueMax &&
		b.valueMin <= value && value < b.valueMax &&
		b.chromaMin <= chroma && chroma < b.chromaMax
}

// blocks returns the blocks of all names; read on first use.
var blocks = sync.OnceValue(func() []block {
	var all []block
	for line := range strings.Lines(nameBlocks) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		name, boxes, _ := strings.Cut(line, ";")
		for box := range strings.SplitSeq(boxes, ";") {
			all = append(all, readBlock(name, strings.Fields(box)))
		}
	}
	return all
})

// readBlock returns the block written as six numbers, "-" for no end.
func readBlock(name string, fields []string) block {
	var n [6]float64
	for i, f := range fields {
		if f == "-" {
			n[i] = math.Inf(1)
			continue
		}
		v, err := strconv.ParseFloat(f, 64)
		if err != nil {
			panic("colour: iscc_nbs.txt: " + err.Error())
		}
		n[i] = v
	}
	return block{n[0], n[1], n[2], n[3], n[4], n[5], name}
}
