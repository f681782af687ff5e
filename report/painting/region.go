// The keys of a region: where it lies and what is wanted of it.

package painting

import (
	"fmt"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/grid"
	"tonewright/match"
	"tonewright/report/plan"
)

// wish is a region while it is read.
type wish struct {
	plan.RegionWish
	of     *reading
	table  *table
	whites []string // of the palette
}

// readRegions keeps the [[region]] tables until the keys above them are read.
func readRegions(r *reading, v *value) error {
	blocks, err := v.blocks("region")
	for _, t := range blocks {
		r.wishes = append(r.wishes, &wish{of: r, table: t})
	}
	return err
}

// regions reads all regions and holds them against one another.
func (r *reading) regions() error {
	r.lines = map[string]int{}
	for i, w := range r.wishes {
		if i == plan.MostRegions {
			return faulty(w.table.line, "%d regions are too many: name at most %d", len(r.wishes), plan.MostRegions)
		}
		if err := r.region(w); err != nil {
			return err
		}
	}
	if err := r.complements(); err != nil {
		return err
	}
	for _, w := range r.wishes {
		r.Options.Regions = append(r.Options.Regions, w.RegionWish)
	}
	return nil
}

// region reads one region.
func (r *reading) region(w *wish) error {
	if err := fill(w, w.table, regionKeys(), "in a region", r.elsewhere()); err != nil {
		return err
	}
	if err := plan.CheckRegionName(w.Name); err != nil {
		return faulty(w.table.lineOf("name"), "name: %w", err)
	}
	key := strings.ToLower(w.Name)
	if line := r.lines[key]; line != 0 {
		return faulty(w.table.lineOf("name"), "name: %q is the name of a region above already; give each its own", w.Name)
	}
	place, err := w.place()
	if err != nil {
		return err
	}
	r.lines[key] = w.table.lineOf(place)
	if len(w.whites) > 0 && w.NoWhite {
		return faulty(w.table.lineOf("white"), "white: is false, but %s is in the palette; take one of the two out", w.whites[0])
	}
	if w.NoWhite && len(w.Palette) == 0 && w.Wish == (plan.Wish{}) {
		return faulty(w.table.lineOf("white"), "white: is false, which needs a palette, a scheme or a hue; give the region one, or take white out")
	}
	if w.Aim == plan.AimValue && len(w.Palette) == 0 && w.Wish == (plan.Wish{}) {
		return faulty(w.table.lineOf("aim"), `aim: "value" needs a palette, a scheme or a hue beside it`)
	}
	if w.Wish.Scheme == match.Complement && w.Wish.Hue != "" {
		return faulty(w.table.lineOf("hue"), "hue: a complement takes its hue from the other region; keep hue or scheme")
	}
	return nil
}

// place returns the one key that says where the region lies.
func (w *wish) place() (string, error) {
	place := ""
	for _, e := range w.table.entries {
		switch {
		case e.key != "cells" && e.key != "outline" && e.key != "mask":
		case place == "":
			place = e.key
		default:
			return "", faulty(e.line, "%s: region %q has %s already; keep one of cells, outline and mask", e.key, w.Name, place)
		}
	}
	if place == "" {
		return "", faulty(w.table.line, `region %q is nowhere; say where it lies with cells = "C3:F7, G4", with outline, or with mask`, w.Name)
	}
	return place, nil
}

// regionKeys are the keys of a [[region]].
func regionKeys() []key[wish] {
	return []key[wish]{
		{"name", `"kettle"`, words(func(w *wish, text string) error {
			w.Name = strings.Join(strings.Fields(text), " ") // as a scheme names it
			return nil
		})},
		{"cells", `"C3:F7, G4"`, readCells},
		{"outline", "[[1.5, 2], [4, 2], [4, 5.5]]", readOutline},
		{"mask", `"kettle-mask.png"`, func(w *wish, v *value) (err error) {
			w.Mask, err = w.of.path(v)
			return err
		}},
		{"role", `"focal"`, oneOf(plan.Roles, func(w *wish, word string) { w.Role = word })},
		{"palette", `["yellow-ochre", "burnt-umber"]`, readPalette},
		{"white", "false", yesNo(func(w *wish, yes bool) { w.NoWhite = !yes })},
		{"aim", `"value"`, oneOf(plan.Aims, func(w *wish, word string) { w.Aim = word })},
		{"scheme", `"analogous"`, func(w *wish, v *value) error {
			text, err := v.asText(len(complementOf) + 1 + longestWord)
			if err != nil {
				return err
			}
			return readScheme(w, text)
		}},
		{"hue", `"5YR"`, words(func(w *wish, text string) error {
			w.Wish.Hue = strings.TrimSpace(text)
			_, err := colour.ParseHue(text)
			return err
		})},
		{"value_shift", "0.5", number(-plan.MostShift, plan.MostShift, func(w *wish, n float64) { w.Shift = n })},
	}
}

// readCells reads a list of cells; whether they are on the panel the plan will say.
func readCells(w *wish, v *value) (err error) {
	if w.Cells, err = v.asText(longestPath); err != nil {
		return err
	}
	if err := grid.CheckCells(w.Cells); err != nil {
		return fmt.Errorf(`%w; write cells and ranges of them, like "C3:F7, G4"`, err)
	}
	return nil
}
