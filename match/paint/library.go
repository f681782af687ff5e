// Package paint holds what is known of tubes of oil paint: their optics, their
// facts, the box of those a painter owns, and what layers of them look like.
package paint

import (
	_ "embed"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"tonewright/analyze/colour"
)

// Where the optics of a paint come from, the surest first.
// Source: [PaintOptics] basis.
const (
	Own     = "own tube" // fitted to measurements or swatches of the painter's own
	Fitted  = "fitted"   // to measured coefficients of one paint of the pigment
	Scaled  = "scaled"   // from a fitted paint of the same family
	Typical = "typical"  // from general knowledge of the pigment, from memory
	Blend   = "blend"    // a mixture of other paints of the library
)

// Bases lists every basis, the surest first.
func Bases() []string { return []string{Own, Fitted, Scaled, Typical, Blend} }

// Paint is a tube: a typical one of its name, since makers differ by several
// CIEDE2000. K and S are per unit thickness by volume; S of titanium white is 1.
type Paint struct {
	ID, Name string
	CI       []string // Colour Index names
	Opacity  string   // opaque, semi-opaque, semi-transparent or transparent
	Basis    string   // of K and S: one of Bases
	K, S     colour.Spectrum
	Facts    Facts
	Like     string // of an own tube, the id of the library paint it is a tube of
	Fit      Fit    // of an own tube, how its optics were found
}

// Fit tells how the optics of an own tube were found; zero for a library paint.
type Fit struct {
	Source string  // what was measured, in plain words
	Error  float64 // mean CIEDE2000 between what was measured and what the tube gives
	Away   float64 // CIEDE2000 from the typical tube: masstone or 1:4 tint, the farther
}

// White tells whether all its pigments are whites by their Colour Index names.
func (p Paint) White() bool { return p.all("PW") }

// Black tells whether all its pigments are blacks by their Colour Index names.
func (p Paint) Black() bool { return p.all("PBk") }

func (p Paint) all(kind string) bool {
	return len(p.CI) > 0 && !slices.ContainsFunc(p.CI, func(name string) bool { return !strings.HasPrefix(name, kind) })
}

// library is read once, when first asked for.
var library = sync.OnceValue(readLibrary)

// Library returns every paint known, whites first, blends last, in a fixed order.
// The slice is the caller's own.
// Source: [PaintOptics], [PaintFacts].
func Library() []Paint { return slices.Clone(library()) }

// paintTable has a line for each paint: id, name, Colour Index names, opacity,
// basis, line of the fact table, K, S. Curves are in the notation of parseModel;
// a blend has "=" for K and its parts by volume for S.
//
//go:embed paints.tsv
var paintTable string

// readLibrary reads the embedded tables. It panics if they are wrong: they are ours.
func readLibrary() []Paint {
	facts := readFacts()
	var paints []Paint
	for _, row := range rows(paintTable, 8) {
		p := Paint{ID: row[0], Name: row[1], CI: strings.Fields(row[2]), Opacity: row[3], Basis: row[4]}
		var err error
		if p.Basis == Blend {
			err = p.blend(paints, row[7])
		} else {
			err = p.read(facts, row[5], row[6], row[7])
		}
		if err != nil {
			panic(fmt.Sprintf("paint: %s: %v", p.ID, err))
		}
		paints = append(paints, p)
	}
	return paints
}

// rows splits a table into its lines and fields; lines that start with # are left out.
func rows(table string, fields int) (rows [][]string) {
	for line := range strings.Lines(table) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		row := strings.Split(strings.TrimRight(line, "\r\n"), "\t")
		if len(row) != fields {
			panic(fmt.Sprintf("paint: %q: wants %d fields", line, fields))
		}
		rows = append(rows, row)
	}
	return rows
}

// read fills in a paint of its own optics.
func (p *Paint) read(facts map[string]Facts, key, k, s string) (err error) {
	known := false
	if p.Facts, known = facts[key]; !known {
		return fmt.Errorf("no facts %q", key)
	}
	if p.K, err = parseAbsorption(k); err != nil {
		return err
	}
	p.S, err = parseScattering(s)
	return err
}

// blend fills in a paint made of others that stand before it: "id*parts id*parts".
func (p *Paint) blend(known []Paint, recipe string) error {
	var from []Paint
	var parts []float64
	for _, field := range strings.Fields(recipe) {
		id, number, _ := strings.Cut(field, "*")
		i := slices.IndexFunc(known, func(k Paint) bool { return k.ID == id })
		if i < 0 {
			return fmt.Errorf("no paint %q before it", id)
		}
		n, err := strconv.ParseFloat(number, 64)
		if err != nil {
			return err
		}
		from, parts = append(from, known[i]), append(parts, n)
	}
	p.K, p.S = Mix(from, parts)
	p.Facts = mixFacts(from, parts)
	return nil
}
