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

// marks returns what these cautions are of, in a word or two: a short form up to its
// colon.
func (c carer) marks(is func(plan.Caution) bool) []string {
	words := []string{}
	for _, caution := range c {
		if is(caution) {
			word, _, _ := strings.Cut(caution.Short, ":")
			words = append(words, word)
		}
	}
	return words
}

// coat returns the marks of what a coat calls for.
func (c carer) coat(coat *plan.Coat) []string {
	return c.marks(func(caution plan.Caution) bool { return slices.Contains(coat.Cautions, caution.Key) })
}

// colour returns the marks of what a colour's paints call for.
func (c carer) colour(tag string) []string {
	return c.marks(func(caution plan.Caution) bool { return slices.Contains(caution.Colours, tag) })
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

// careSection is the section of all cautions; Shared is the sentence that they would
// end in, said once above them.
type careSection struct {
	Shared string
	Groups []careGroup
}

func careOf(list []plan.Caution) careSection {
	shared := sharedEnd(list)
	return careSection{shared, careGroups(list, shared)}
}

// sharedEnd returns the last sentence of the first text where others end in it too, "" if
// none does.
func sharedEnd(list []plan.Caution) string {
	if len(list) < 2 {
		return ""
	}
	text := list[0].Text
	end := text[strings.LastIndex(strings.TrimSuffix(text, "."), ". ")+1:]
	if !slices.ContainsFunc(list[1:], func(c plan.Caution) bool { return strings.HasSuffix(c.Text, end) }) {
		return ""
	}
	return strings.TrimSpace(end)
}

// careGroup is cautions of one kind.
type careGroup struct {
	Title string
	Rows  []careRow
}

// careRow is a caution in full.
type careRow struct {
	Paints, Text   string // Paints is "" where the text begins with them
	Colours, Coats []string
	Source         string
}

// careTitles are the kinds of cautions in the page's words.
var careTitles = map[string]string{"pigment": "Paints", "medium": "Mediums and solvents", "studio": "In the studio", "lightfastness": "Colours that fade"}

// careGroups puts cautions of one kind that follow one another, as they do in a plan,
// under one title.
func careGroups(list []plan.Caution, shared string) []careGroup {
	groups := []careGroup{}
	for i, c := range list {
		if i == 0 || c.Kind != list[i-1].Kind {
			groups = append(groups, careGroup{Title: careTitles[c.Kind]})
		}
		last := &groups[len(groups)-1]
		paints := strings.Join(c.Paints, ", ")
		if strings.HasPrefix(c.Text, paints) {
			paints = ""
		}
		last.Rows = append(last.Rows, careRow{paints, strings.TrimSuffix(c.Text, " "+shared), c.Colours, c.Coats, c.Source})
	}
	return groups
}
