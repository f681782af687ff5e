// Harmony: Munsell's circle with the regions on it, and what it says in words.

package report

import (
	"fmt"
	"slices"
	"strings"

	"tonewright/report/plan"
)

// harmony is the section; it is left out where the plan says nothing of hues.
type harmony struct {
	Shown       bool
	Gray        string // what of the panel has no hue
	Alt         string // what the circle shows, in words
	Wheel       wheel
	Rows        []hueRow
	Pairs, More []pairRow
	MoreLabel   string
	Analogous   string
	Ties, Once  []tieRow
}

// hueRow is a row of the table beside the circle.
type hueRow struct {
	Tag, Region, Name           string // Tag is Region's, with the hue where it has several
	Hue, Spread                 string
	Value, Chroma, Share, Heavy string
}

type pairRow struct{ A, B, Text string }

// tieRow is a tube; Regions are all of the plan's, so that they stand below one another.
type tieRow struct {
	Name    string
	Regions []tieCell
}

type tieCell struct {
	Tag string
	In  bool
}

// mostPairs is how many pairs are drawn and listed at once; more are folded away.
const mostPairs = 4

func newHarmony(p *plan.Plan) harmony {
	h := p.Harmony
	if h.Hues == nil {
		return harmony{}
	}
	tags := hueTags(h.Hues)
	out := harmony{
		Shown: true, Gray: grayText(h), Analogous: h.Analogous,
		Rows: []hueRow{}, Pairs: []pairRow{}, More: []pairRow{},
	}
	for i, one := range h.Hues {
		out.Rows = append(out.Rows, hueRow{
			Tag: tags[i], Region: one.Region, Name: one.Name, Hue: one.Word + ", " + one.Hue, Spread: fmt.Sprintf("%.0f", one.Spread),
			Value: fmt.Sprintf("%.1f", one.Value), Chroma: fmt.Sprintf("%.1f", one.Chroma), Share: percent(one.Share), Heavy: fmt.Sprintf("%.0f", one.Weight),
		})
	}
	for i, c := range h.Complements {
		row := pairRow{tags[hueAt(h.Hues, c.A, c.HueA)], tags[hueAt(h.Hues, c.B, c.HueB)], c.Text}
		if i < mostPairs {
			out.Pairs = append(out.Pairs, row)
		} else {
			out.More = append(out.More, row)
		}
	}
	if n := len(out.More); n > 0 {
		out.MoreLabel = count(n, "lighter pair")
	}
	out.Ties, out.Once = tieRows(h.Ties, p.Regions), tieRows(h.Once, p.Regions)
	out.Wheel = newWheel(h, tags)
	out.Alt = wheelAlt(h, tags)
	return out
}

// hueTags returns the tag of each hue: its region's, and the letters of its family
// where the region has several hues.
func hueTags(hues []plan.HueShare) []string {
	count := map[string]int{}
	for _, h := range hues {
		count[h.Region]++
	}
	tags := make([]string, len(hues))
	for i, h := range hues {
		tags[i] = h.Region
		if count[h.Region] > 1 {
			tags[i] += " " + familyLetters(h.Hue)
		}
	}
	return tags
}

// hueAt returns which of the hues is the region's one of this notation.
func hueAt(hues []plan.HueShare, region, hue string) int {
	return max(0, slices.IndexFunc(hues, func(h plan.HueShare) bool { return h.Region == region && h.Hue == hue }))
}

// grayText says what of the panel is not on the circle.
func grayText(h plan.Harmony) string {
	if len(h.Hues) == 0 {
		return "No mix of this plan is strong enough to have a hue."
	}
	var texts []string
	if h.Neutral > 0 {
		texts = append(texts, percent(h.Neutral)+" of the panel is too gray to have a hue")
	}
	if h.Slight > 0 {
		texts = append(texts, percent(h.Slight)+" is in hues too slight to be listed")
	}
	if len(texts) == 0 {
		return "All of the panel has a hue."
	}
	return capital(strings.Join(texts, ", and ")) + "."
}

func tieRows(ties []plan.Tie, regions []plan.Region) []tieRow {
	rows := []tieRow{}
	for _, t := range ties {
		row := tieRow{Name: t.Name}
		for _, r := range regions {
			row.Regions = append(row.Regions, tieCell{r.Tag, slices.Contains(t.Regions, r.Tag)})
		}
		rows = append(rows, row)
	}
	return rows
}

// wheelAlt says what the circle shows.
func wheelAlt(h plan.Harmony, tags []string) string {
	var b strings.Builder
	b.WriteString("Munsell's circle of hues, red at the top and on through orange and yellow clockwise.")
	for i, one := range h.Hues {
		fmt.Fprintf(&b, " %s: %s, %s, chroma %.1f, %s of the panel.", tags[i], one.Word, one.Hue, one.Chroma, percent(one.Share))
	}
	for _, c := range h.Complements[:min(mostPairs, len(h.Complements))] {
		line := "A dashed"
		if c.Touch {
			line = "A solid"
		}
		fmt.Fprintf(&b, " %s line joins %s and %s.", line, tags[hueAt(h.Hues, c.A, c.HueA)], tags[hueAt(h.Hues, c.B, c.HueB)])
	}
	return b.String()
}
