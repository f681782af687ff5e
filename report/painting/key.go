// The keys of a table: which there are, and reading what they are set to.

package painting

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2/unstable"

	"tonewright/match/paint"
	"tonewright/report/plan"
)

// key is one that T can be given.
type key[T any] struct {
	name string
	like string // how it is set, for errors
	read func(to *T, v *value) error
}

// fault is what is wrong on a line.
type fault struct {
	line int
	err  error
}

func (f fault) Error() string { return f.err.Error() }

func faulty(line int, format string, args ...any) error {
	return fault{line, fmt.Errorf(format, args...)}
}

// fill gives to what the keys of a table say. what names the table: "here", "in a region".
// other are keys that stand elsewhere, and where.
func fill[T any](to *T, t *table, keys []key[T], what string, other map[string]string) error {
	for _, e := range t.entries {
		i := slices.IndexFunc(keys, func(k key[T]) bool { return k.name == e.key })
		if i < 0 {
			return unknownKey(e, namesOf(keys), what, other)
		}
		if err := keys[i].read(to, &e.value); err != nil {
			return keys[i].fault(e, err)
		}
	}
	return nil
}

// fault says what is wrong with the key's value, on its line unless it is on one of its own.
func (k key[T]) fault(e *entry, err error) error {
	if wrong, ok := err.(wrongKind); ok {
		return faulty(e.line, "%s is %s; write it like %s = %s", k.name, wrong.is, k.name, k.like)
	}
	if f, ok := err.(fault); ok {
		return faulty(f.line, "%s: %w", k.name, f.err)
	}
	return faulty(e.line, "%s: %w", k.name, err)
}

func namesOf[T any](keys []key[T]) (names []string) {
	for _, k := range keys {
		names = append(names, k.name)
	}
	return names
}

// unknownKey says that a key is none, where it belongs or which one may be meant, and
// which there are.
func unknownKey(e *entry, known []string, what string, other map[string]string) error {
	hint := ""
	if where, ok := other[e.key]; ok {
		hint = "; it stands " + where
	} else if near := nearest(e.key, known); near != "" {
		hint = "; did you mean " + near + "?"
	}
	return faulty(e.line, "%s is not a key %s%s%s keys %s are %s", bare(e.key), what, hint, stop(hint), what, strings.Join(known, ", "))
}

// stop ends what stands before a last clause.
func stop(hint string) string {
	if strings.HasSuffix(hint, "?") {
		return ""
	}
	return ";"
}

// bare returns a key as it can be printed: letters that only look like those of a key
// show what they are.
func bare(key string) string {
	if plain := strconv.QuoteToASCII(shortened(key)); plain != `"`+key+`"` || key == "" {
		return plain
	}
	return key
}

// longestWord is the most letters of what is no path and no list of cells. Ours: what a
// line of an error holds.
const longestWord = 100

// shortened returns the beginning of a text that is too long to be quoted whole.
func shortened(text string) string {
	if letters := []rune(text); len(letters) > longestWord {
		return string(letters[:longestWord]) + "…"
	}
	return text
}

// nearest returns which of the words may be meant; "" where none is like it. Ours: up to
// two slips, three in a long word, and fewer than half of its letters.
func nearest(word string, known []string) string {
	word = strings.ToLower(shortened(word))
	edits := func(k string) int { return paint.Edits(word, k) }
	best := slices.MinFunc(known, func(a, b string) int { return cmp.Compare(edits(a), edits(b)) })
	most := 2
	if len(best) >= 8 {
		most = 3
	}
	if n := edits(best); n > most || 2*n >= utf8.RuneCountInString(best) {
		return ""
	}
	return best
}

// wrongKind tells a value of another kind than the key takes.
type wrongKind struct{ is string }

func (w wrongKind) Error() string { return "is " + w.is }

// text returns text of at most most letters.
func (v *value) asText(most int) (string, error) {
	if v.kind != unstable.String {
		return "", wrongKind{v.what()}
	}
	if n := utf8.RuneCountInString(v.text); n > most {
		return "", faulty(v.line, "%q has %d letters; at most %d", shortened(v.text), n, most)
	}
	return v.text, nil
}

// asNumber returns a number; nan and inf are taken as they stand.
func (v *value) asNumber() (float64, error) {
	if v.kind != unstable.Integer && v.kind != unstable.Float {
		return 0, wrongKind{v.what()}
	}
	text := strings.ReplaceAll(v.text, "_", "")
	if n, err := strconv.ParseInt(text, 0, 64); v.kind == unstable.Integer && err == nil {
		return float64(n), nil
	}
	n, err := strconv.ParseFloat(text, 64)
	if err != nil && !math.IsInf(n, 0) {
		return 0, faulty(v.line, "%q is not a number", shortened(v.text))
	}
	if n == 0 {
		return 0, nil // not -0, which would be printed so
	}
	return n, nil
}

// words reads text by a function that says what is wrong with it.
func words[T any](read func(to *T, text string) error) func(*T, *value) error {
	return func(to *T, v *value) error {
		text, err := v.asText(longestWord)
		if err != nil {
			return err
		}
		return read(to, text)
	}
}

// yesNo reads true or false.
func yesNo[T any](set func(to *T, yes bool)) func(*T, *value) error {
	return func(to *T, v *value) error {
		if v.kind != unstable.Bool {
			return wrongKind{v.what()}
		}
		set(to, v.text == "true")
		return nil
	}
}

// number reads a number from least to most.
func number[T any](least, most float64, set func(to *T, n float64)) func(*T, *value) error {
	return measured(least, most, "", set)
}

// measured reads a number from least to most; unit says behind them what they measure.
func measured[T any](least, most float64, unit string, set func(to *T, n float64)) func(*T, *value) error {
	return func(to *T, v *value) error {
		n, err := v.asNumber()
		if err != nil {
			return err
		}
		if !(n >= least && n <= most) {
			return fmt.Errorf("%s is out of range: %g to %g%s", shortened(v.text), least, most, unit)
		}
		set(to, n)
		return nil
	}
}

// whole reads a whole number from 1 to most.
func whole[T any](most int, set func(to *T, n int)) func(*T, *value) error {
	return func(to *T, v *value) error {
		n, err := v.asNumber()
		if err != nil {
			return err
		}
		if !(n >= 1 && n <= float64(most)) || n != math.Trunc(n) {
			return fmt.Errorf("%s is not a whole number from 1 to %d", shortened(v.text), most)
		}
		set(to, int(n))
		return nil
	}
}

// oneOf reads one of a few words, in any case.
func oneOf[T any](known []string, set func(to *T, word string)) func(*T, *value) error {
	return words(func(to *T, text string) error {
		word := strings.ToLower(strings.TrimSpace(text))
		if !slices.Contains(known, word) {
			return fmt.Errorf("%q is not known%s: write %s", text, meant(word, known), alternatives(known))
		}
		set(to, word)
		return nil
	})
}

// meant asks whether the nearest of the words is meant, if one is near.
func meant(word string, known []string) string {
	if near := nearest(word, known); near != "" {
		return fmt.Sprintf("; did you mean %q?", near)
	}
	return ""
}

// alternatives returns "a", "b" or "c".
func alternatives(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = strconv.Quote(w)
	}
	last := len(quoted) - 1
	if last == 0 {
		return quoted[0]
	}
	return strings.Join(quoted[:last], ", ") + " or " + quoted[last]
}

// misused makes of what is wrong on a line an error that names file and line.
func misused(file string, err error) error {
	if f, ok := err.(fault); ok {
		return plan.Misused(fmt.Errorf("%s:%d: %w", file, f.line, f.err))
	}
	return err
}
