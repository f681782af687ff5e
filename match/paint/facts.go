// What is known of a paint beside its optics: drying, lasting, weight, hazards.

package paint

import (
	_ "embed"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Facts are about the pigment, by its Colour Index name, not about one maker's tube.
type Facts struct {
	Lightfastness string     // ASTM D4302 class, I (excellent) to V (very poor)
	Drying        string     // fast, medium, slow or very slow
	TouchDry      [2]int     // days until a thin coat is dry to the touch, from-to
	Strength      string     // of tinting: low, medium, high or very high
	Density       float64    // of the dry pigment, g/cm³
	Oil           [2]float64 // g of oil for 100 g of pigment, from-to
	Hazards       []string   // keys of Hazards; none: nothing beyond the usual care
	Source        string     // of each figure; mem is from memory, CP common practice
}

// Strong tells whether so little of the paint colours a pile that a touch is
// enough.
func (f Facts) Strong() bool { return f.Strength == "high" || f.Strength == "very high" }

// factTable has a line for each Colour Index name, or name/variety where one
// name covers pigments that differ.
//
//go:embed facts.tsv
var factTable string

// drying and strength and lightfastness, each from little to much.
var (
	dryings   = []string{"fast", "medium", "slow", "very slow"}
	strengths = []string{"low", "medium", "high", "very high"}
	lasting   = []string{"I", "II", "III", "IV", "V"}
)

// readFacts reads the embedded table. It panics if the table is wrong: it is ours.
func readFacts() map[string]Facts {
	facts := map[string]Facts{}
	for _, row := range rows(factTable, 9) {
		f := Facts{
			Lightfastness: oneOf(lasting, row[1]),
			Drying:        oneOf(dryings, strings.ReplaceAll(row[2], "-", " ")),
			Strength:      oneOf(strengths, strings.ReplaceAll(row[4], "-", " ")),
			Density:       number(row[5]),
			Source:        row[8],
		}
		from, to, _ := strings.Cut(row[3], "-")
		f.TouchDry = [2]int{int(number(from)), int(number(to))}
		from, to, _ = strings.Cut(row[6], "-")
		f.Oil = [2]float64{number(from), number(to)}
		if row[7] != "-" {
			f.Hazards = strings.Split(row[7], ",")
		}
		facts[row[0]] = f
	}
	return facts
}

func oneOf(words []string, word string) string {
	if !slices.Contains(words, word) {
		panic(fmt.Sprintf("paint: facts: %q is none of %v", word, words))
	}
	return word
}

func number(text string) float64 {
	n, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("paint: facts: " + err.Error())
	}
	return n
}

// mixFacts returns the facts of a blend: it dries with its slowest part, lasts as
// its poorest, tints as its strongest, carries the hazards of all, and weighs and
// drinks oil by volume and by weight.
// Ours: no figures for blended tubes were to hand.
func mixFacts(from []Paint, parts []float64) Facts {
	f := Facts{Source: "worked out from its parts"}
	light, dry, strength := 0, 0, 0
	var volume, mass float64
	for i, p := range from {
		light = max(light, slices.Index(lasting, p.Facts.Lightfastness))
		dry = max(dry, slices.Index(dryings, p.Facts.Drying))
		strength = max(strength, slices.Index(strengths, p.Facts.Strength))
		weight := parts[i] * p.Facts.Density
		volume, mass = volume+parts[i], mass+weight
		for end := range 2 {
			f.TouchDry[end] = max(f.TouchDry[end], p.Facts.TouchDry[end])
			f.Oil[end] += weight * p.Facts.Oil[end]
		}
		for _, h := range p.Facts.Hazards {
			if !slices.Contains(f.Hazards, h) {
				f.Hazards = append(f.Hazards, h)
			}
		}
	}
	f.Lightfastness, f.Drying, f.Strength = lasting[light], dryings[dry], strengths[strength]
	f.Density = mass / volume
	f.Oil = [2]float64{f.Oil[0] / mass, f.Oil[1] / mass}
	return f
}
