package answer

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/match"
)

func pileOf(t *testing.T, text string) match.Pile {
	p, err := match.ParsePile(nil, text)
	require.NoError(t, err)
	return p
}

func someRound(t *testing.T) round {
	return round{
		date: "2026-11-25", aimed: "A1", aim: colour.Lab{L: 52.125, A: -3, B: 18.4}, photo: "pile.jpg",
		pile: loggedPile{Pile: pileOf(t, "yellow-ochre 3, titanium-white 1")}, measured: colour.Lab{L: 50, A: 0.25, B: -7.5},
		spread: 0.7, deltaE: 4.2, advice: "Add a touch of Viridian.", then: loggedPile{Pile: pileOf(t, "yellow-ochre 3, titanium-white 1, viridian 0.125")},
	}
}

// Identity: a log that is written and read back is written the same.
func TestLogIsReadBack(t *testing.T) {
	log := &Rounds{}
	log.add(someRound(t))
	odd := someRound(t)
	odd.photo, odd.aimed, odd.pile, odd.then = "a\tb\n.jpg", "lab(52,\t18, 30)", loggedPile{}, loggedPile{}
	log.add(odd)
	text := log.text()
	again, err := parseRounds("log.tsv", string(text), nil)
	require.NoError(t, err)
	require.Len(t, again.list, 2)
	assert.Equal(t, string(text), string(again.text()))
	assert.Equal(t, "a b .jpg", again.list[1].photo)
	assert.Empty(t, again.list[1].pile.Paints)
	assert.InDelta(t, 0.125, again.list[0].then.Parts[2], 1e-9)
	spreadsheet := "\ufeff" + strings.ReplaceAll(string(text), "\n", "\r\n") // as some save it
	again, err = parseRounds("log.tsv", spreadsheet, nil)
	require.NoError(t, err)
	assert.Equal(t, string(text), string(again.text()))
}

func TestLogSaysWhichLineIsWrong(t *testing.T) {
	log := &Rounds{}
	log.add(someRound(t))
	good := string(log.text())
	for _, c := range []struct{ old, new, want string }{
		{"2026-11-25", "yesterday", `log.tsv:3: date "yesterday" is not written as 2026-11-25; mend the line or take it out`},
		{"52.13 -3 18.4", "52 -3", `log.tsv:3: aim: "52 -3" is not three numbers`},
		{"50 0.25 -7.5", "5000 0 0", `log.tsv:3: measured: "5000 0 0" is not three numbers L a b from -1000 to 1000`},
		{"50 0.25 -7.5", "NaN 0 0", `log.tsv:3: measured: "NaN 0 0" is not three numbers`},
		{"yellow-ochre 3, titanium-white 1\t", "gold -3\t", `log.tsv:3: pile "gold -3": -3 parts of gold is out of range`},
		{"\t0.7\t", "\t-1\t", `log.tsv:3: spread: "-1" is no number from 0 to 200`},
		{"\t4.2\t", "\tInf\t", `log.tsv:3: CIEDE2000: "Inf" is no number`},
		{"\tpile.jpg", "", "log.tsv:3: has 9 columns, not 10 with tabs between"},
		{"# tonewright", "# other", "log.tsv: is no log of rounds, and is left as it is; choose another file with --log"},
		{"spread", "spreads", "log.tsv: is no log of rounds"},
	} {
		text := strings.Replace(good, c.old, c.new, 1)
		require.NotEqual(t, good, text, c.old)
		_, err := parseRounds("log.tsv", text, nil)
		assert.ErrorContains(t, err, c.want)
	}
	for _, text := range []string{"", "\n", "date\n"} {
		_, err := parseRounds("log.tsv", text, nil)
		assert.ErrorContains(t, err, "is no log of rounds", "%q", text)
	}
}

func TestNoLogYet(t *testing.T) {
	log, err := ReadRounds(filepath.Join(t.TempDir(), "none.tsv"), nil)
	require.NoError(t, err)
	assert.Empty(t, log.list)
	large := filepath.Join(t.TempDir(), "large.tsv")
	require.NoError(t, os.WriteFile(large, make([]byte, largestLog+1), 0o600))
	_, err = ReadRounds(large, nil)
	assert.ErrorContains(t, err, "over 1 MiB")
}

// The same photo once more takes the place of its round; another of the aim is the
// next; another aim counts for itself.
func TestARoundIsNotCountedTwice(t *testing.T) {
	log := &Rounds{}
	first := someRound(t)
	log.add(first)
	log.add(first)
	require.Len(t, log.list, 1)
	second := first
	second.photo = "pile2.jpg"
	assert.Equal(t, 1, countOf(log.before(second), second.aim))
	log.add(second)
	other := first
	other.aim.L += 10
	assert.Zero(t, countOf(log.before(other), other.aim))
	log.add(other)
	assert.Len(t, log.list, 3)
	assert.Len(t, log.before(second), 2, "all but itself, though another came after")
}

// The pile is the typed one, else the log's, else the plan's.
func TestPileNow(t *testing.T) {
	r := someRound(t)
	wanted := planned{aim: r.aim, pile: pileOf(t, "burnt-umber 1")}
	typed := pileOf(t, "viridian 1")
	p, from := pileNow(typed, []round{r}, wanted)
	assert.Equal(t, "viridian 1", p.String())
	assert.Contains(t, from, "as you gave it")
	p, from = pileNow(match.Pile{}, []round{r}, wanted)
	assert.Equal(t, r.then.Pile.String(), p.String())
	assert.Contains(t, from, "after the advice of 2026-11-25")
	p, from = pileNow(match.Pile{}, nil, wanted)
	assert.Equal(t, "burnt-umber 1", p.String())
	assert.Contains(t, from, "the plan's recipe")
	p, _ = pileNow(match.Pile{}, nil, planned{aim: r.aim})
	assert.Empty(t, p.Paints)
	strange := r
	strange.then = loggedPile{unread: "my-ochre 3"}
	p, from = pileNow(match.Pile{}, []round{r, strange}, wanted)
	assert.Empty(t, p.Paints, "neither the round's before nor the plan's")
	assert.Contains(t, from, "has a paint that is not known here")
}

// Whatever is read as a log is written and read back the same; nothing panics.
func FuzzParseRounds(f *testing.F) {
	head := logMark + "\n" + logColumns + "\n"
	f.Add(head)
	f.Add(head + "# mine\n2026-11-25\tA1\t52 -3 400\tpile.jpg\tgold 3, viridian touch\t120 0 0\t0.7\t4.2\tAdd it.\tPB29 2 touches, PY43 5e8  \n#\n")
	f.Add(head + "2026-11-25\tA1\t52 -3 18\tpile.jpg\tyellow-ochre 3, viridian touch\t50 0 0\t0.7\t4.2\tAdd it.\t-\n")
	f.Add(head + "2026-11-25\t\t100 150 -150\t\t-\t0 0 0\t0\t200\t\tPB29\n")
	f.Fuzz(func(t *testing.T, text string) {
		log, err := parseRounds("log.tsv", text, nil)
		if err != nil {
			return
		}
		written := string(log.text())
		again, err := parseRounds("log.tsv", written, nil)
		require.NoError(t, err)
		assert.Equal(t, written, string(again.text()))
	})
}
