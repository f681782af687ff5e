// The keys of a [[layer]]: one coat of a region, as the painter sets it. It is not called
// [[coat]], since coat = 1.0 is a key, and TOML takes each name once.

package painting

import (
	"fmt"
	"strings"

	"tonewright/match"
	"tonewright/match/layer"
	"tonewright/report/plan"
)

// coat is a layer while it is read.
type coat struct {
	plan.CoatWish
	of    *reading
	table *table
}

// readLayers keeps the [[layer]] tables until the regions and the paints are read.
func readLayers(r *reading, v *value) error {
	blocks, err := v.blocks("layer")
	for _, t := range blocks {
		r.coats = append(r.coats, &coat{of: r, table: t})
	}
	return err
}

// layers reads all coats, in the order of painting.
func (r *reading) layers() error {
	begun := map[string]int{} // how many coats each region has
	if n := len(r.coats); n > plan.MostCoats {
		return faulty(r.coats[plan.MostCoats].table.line, "%d layers are too many: set at most %d", n, plan.MostCoats)
	}
	for _, c := range r.coats {
		if err := fill(c, c.table, layerKeys(), "in a layer", r.elsewhere()); err != nil {
			return err
		}
		if err := c.complete(begun); err != nil {
			return err
		}
		if begun[c.Region]++; begun[c.Region] > plan.MostOnRegion {
			return faulty(c.table.line, "%q has more than %d layers; take some out", c.Region, plan.MostOnRegion)
		}
		r.Options.Work.Coats = append(r.Options.Work.Coats, c.CoatWish)
	}
	return nil
}

// complete finds the coat's region, and what is wrong with the coat as a whole; begun are
// the regions that have one already.
func (c *coat) complete(begun map[string]int) error {
	if err := c.findRegion(); err != nil {
		return err
	}
	switch {
	case c.Pass == "":
		return faulty(c.table.line, "this layer of %q has no pass; write pass = %s", c.Region, alternatives(plan.Passes))
	case c.Wet && begun[c.Region] == 0:
		return faulty(c.table.lineOf("wet"), "wet: this is the first layer of %q, there is none to paint into; take the line out", c.Region)
	case c.After > 0 && begun[c.Region] == 0:
		return faulty(c.table.lineOf("after"), "after: this is the first layer of %q, there is none to wait for; take the line out", c.Region)
	}
	return nil
}

// findRegion gives the coat's region the name that it has.
func (c *coat) findRegion() error {
	if c.Region == "" {
		return faulty(c.table.lineOf("region"), `this layer names no region; write region = "kettle" with the name of one`)
	}
	var names []string
	for _, w := range c.of.wishes {
		if strings.EqualFold(w.Name, c.Region) {
			c.Region = w.Name
			return nil
		}
		names = append(names, w.Name)
	}
	line := c.table.lineOf("region")
	if len(names) == 0 {
		return faulty(line, "region: %q is the name of none: this file has no [[region]]; those found in the picture have no names yet, so write it with its place, or let tonewright start write them all", c.Region)
	}
	return faulty(line, "region: there is no region %q%s; there are %s", c.Region, meant(c.Region, names), strings.Join(names, ", "))
}

// longestMix is the most letters of a mix. Ours: six paints with their parts, by the
// longest names there are.
const longestMix = 400

// layerKeys are the keys of a [[layer]].
func layerKeys() []key[coat] {
	return []key[coat]{
		{"region", `"kettle"`, words(func(c *coat, text string) error {
			c.Region = strings.Join(strings.Fields(text), " ")
			return nil
		})},
		{"pass", `"glaze"`, oneOf(plan.Passes, func(c *coat, word string) { c.Pass = word })},
		{"mix", `"ivory-black 1, burnt-umber 2"`, readMix},
		{"medium", `"solvent 1:4"`, words(func(c *coat, text string) error {
			m, err := layer.ParseMedium(text)
			c.Medium = &m
			return err
		})},
		{"film", "0.5", measured(plan.LeastCoat, plan.MostCoat, " times an ordinary coat", func(c *coat, n float64) { c.Film = n })},
		{"wet", "true", yesNo(func(c *coat, yes bool) { c.Wet = yes })},
		{"after", "7", whole(plan.MostAfter, func(c *coat, n int) { c.After = n })},
	}
}

// readMix reads a mix of owned paints.
func readMix(c *coat, v *value) error {
	text, err := v.asText(longestMix)
	if err != nil {
		return err
	}
	owned := c.of.Options.Box.Paints
	pile, err := match.ParsePile(owned, text)
	if err != nil {
		return err
	}
	for _, p := range pile.Paints {
		if !hasPaint(owned, p.ID) {
			return c.of.notOwned(fmt.Sprintf("%q", p.ID), p)
		}
	}
	c.Pile = &pile
	return nil
}
