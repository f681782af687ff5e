// The cautions: short where they are needed, in full in a section of their own.

package report

import (
	"slices"
	"strings"

	"tonewright/report/plan"
)

// carer knows the cautions by their keys.
type carer []plan.Caution

// short returns the short forms of all, each with its paints.
func (c carer) short() []string {
	words := []string{}
	for _, caution := range c {
		words = append(words, capital(caution.Short))
	}
	return words
}

// keys returns the short forms of these cautions.
func (c carer) keys(keys []string) []string {
	words := []string{}
	for _, caution := range c {
		if slices.Contains(keys, caution.Key) {
			words = append(words, caution.Short)
		}
	}
	return words
}

// colour returns the short forms of what a colour's paints call for.
func (c carer) colour(tag string) []string {
	words := []string{}
	for _, caution := range c {
		if slices.Contains(caution.Colours, tag) {
			words = append(words, caution.Short)
		}
	}
	return words
}

// careGroup is cautions of one kind.
type careGroup struct {
	Title string
	Rows  []careRow
}

// careRow is a caution in full.
type careRow struct {
	Short, Paints, Text string
	Colours, Coats      []string
	Source              string
}

// careTitles are the kinds of cautions in the page's words.
var careTitles = map[string]string{"pigment": "Paints", "medium": "Mediums and solvents", "studio": "In the studio", "lightfastness": "Colours that fade"}

// careGroups puts cautions of one kind that follow one another, as they do in a plan,
// under one title.
func careGroups(list []plan.Caution) []careGroup {
	groups := []careGroup{}
	for i, c := range list {
		if i == 0 || c.Kind != list[i-1].Kind {
			groups = append(groups, careGroup{Title: careTitles[c.Kind]})
		}
		last := &groups[len(groups)-1]
		last.Rows = append(last.Rows, careRow{capital(c.Short), strings.Join(c.Paints, ", "), c.Text, c.Colours, c.Coats, c.Source})
	}
	return groups
}
