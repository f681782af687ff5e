// Estimates of days in words, and lists of words.

package plan

import "fmt"

// words writes an estimate of days: "2 to 5", or "3" where both ends are.
func (s Span) words() string {
	from, to := wholeDays(s.From), wholeDays(s.To)
	if from == to {
		return from
	}
	return from + " to " + to
}

// wholeDays writes days without a fraction, but for less than one.
func wholeDays(days float64) string {
	if days < 1 {
		return fmt.Sprintf("%.1f", days)
	}
	return fmt.Sprintf("%.0f", days)
}

// withWord adds a word that is not in a list yet.
func withWord(words []string, word string) []string {
	for _, have := range words {
		if have == word {
			return words
		}
	}
	return append(words, word)
}
