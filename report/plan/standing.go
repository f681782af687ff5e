// What stands out in the colour study, and where that is not what the painter meant.

package plan

import (
	"fmt"

	"tonewright/analyze"
)

// StandOut is the order in which regions catch the eye, and what is not as meant.
type StandOut struct {
	Measure       string         `json:"measure"`
	Order         []string       `json:"order"` // tags, the strongest first
	Disagreements []Disagreement `json:"disagreements"`
	LostEdges     []LostEdge     `json:"lost_edges"`
}

// Standing is how strongly a region differs from what is around it and from the
// whole picture, in the colour study. Shares say by what it differs.
type Standing struct {
	Rank    int     `json:"rank"`    // 1 stands out most
	Score   float64 `json:"score"`   // of the strongest region's, 0-1
	Around  float64 `json:"around"`  // mean difference from its surroundings, CIE 1976 L*a*b* units
	Overall float64 `json:"overall"` // mean difference from the whole picture, its own part counted as none, weighted by size and nearness, the same units
	Value   float64 `json:"value"`   // shares of the difference, summing to 1
	Chroma  float64 `json:"chroma"`
	Hue     float64 `json:"hue"`
	Text    string  `json:"text"`
}

// Disagreement is a region whose rank does not fit its role.
type Disagreement struct {
	Region string `json:"region"` // tag
	Role   string `json:"role"`
	Rank   int    `json:"rank"`
	Text   string `json:"text"`
	Mend   *Mend  `json:"mend"` // nil where no single change mends it
}

// Mend is the smallest change found that brings rank and role together.
type Mend struct {
	Region string  `json:"region"` // tag of the region to change
	Name   string  `json:"name"`
	Line   string  `json:"line"`   // to put into the painting file, under that region; or two lines
	Change float64 `json:"change"` // mean CIEDE2000 over the whole panel
	Text   string  `json:"text"`
}

// LostEdge is a border along which two regions have nearly the same value.
type LostEdge struct {
	A          string   `json:"a"` // tags
	B          string   `json:"b"`
	Cells      []string `json:"cells"`
	Where      string   `json:"where"`       // the same in short: "D4:F4"
	LengthMM   float64  `json:"length_mm"`   // on the panel
	Share      float64  `json:"share"`       // of the whole border of the two, 0-1
	ValueApart float64  `json:"value_apart"` // Munsell, the mean along it
	DeltaE     float64  `json:"delta_e"`     // CIEDE2000, the mean along it: what colour alone still tells
	Text       string   `json:"text"`
}

// standingOf returns a region's standing with its words, or nil for one without anything
// to paint.
func standingOf(s analyze.Standing, r Region) *Standing {
	if s.Rank == 0 {
		return nil
	}
	return &Standing{
		Rank: s.Rank, Score: Round(s.Score, 2), Around: Round(s.Around, 1), Overall: Round(s.Overall, 1),
		Value: Round(s.Value, 2), Chroma: Round(s.Chroma, 2), Hue: Round(s.Hue, 2),
		Text: standingText(s, r.Name),
	}
}

// standingText says in words how a region stands out and by what.
func standingText(s analyze.Standing, name string) string {
	around := Round(s.Around, 0)
	if around == 0 {
		return fmt.Sprintf("Does not catch the eye: nothing parts %s from what is around it.", name)
	}
	place := "First to catch the eye"
	if s.Rank > 1 {
		place = fmt.Sprintf("No. %d to catch the eye", s.Rank)
	}
	return fmt.Sprintf("%s: %s what is around it (%.0f L*a*b*), %s.", place, distance(around), around, byWhat(s))
}

// distance is a difference in L*a*b* units in words. Ours: under 10 a painter would call
// it the same colour in another light, from 50 on two colours that have nothing in common;
// the demo's wall is 20 from what is around it, its lemon 63.
func distance(around float64) string {
	switch {
	case around < 10:
		return "close to"
	case around < 25:
		return "some way from"
	case around < 50:
		return "far from"
	}
	return "very far from"
}

// alike is the part of the largest share from which another counts as much. Ours.
const alike = 0.8

// byWhat names what most of the difference is: the largest share, and what is about as
// large.
func byWhat(s analyze.Standing) string {
	parts := []struct {
		share float64
		name  string
	}{{Round(s.Value, 2), "value"}, {Round(s.Chroma, 2), "chroma"}, {Round(s.Hue, 2), "hue"}}
	most := max(parts[0].share, parts[1].share, parts[2].share)
	var names []string
	for _, p := range parts {
		if p.share >= alike*most {
			names = append(names, p.name)
		}
	}
	switch len(names) {
	case 1:
		return "by " + names[0] + " most"
	case 2:
		return "by " + names[0] + " and " + names[1]
	}
	return "by value, chroma and hue alike"
}
