package answer

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
)

// Identity: whatever --aim, --pile and a photo let through is read back from the log, for
// round after round, by a box that knows the paints and by one that does not.
func TestWhateverIsWrittenIsReadBack(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 9))
	own := paint.StarterBox().Paints
	own[1].ID, own[1].Name, own[1].CI, own[1].Basis = "my-ochre", "My Ochre", nil, paint.Own
	log := &Rounds{owned: own}
	for i := range 300 {
		log.add(anyRound(random, own, i))
	}
	text, err := log.Text("log.tsv")
	require.NoError(t, err)
	known, err := parseRounds("log.tsv", string(text), own)
	require.NoError(t, err)
	strange, err := parseRounds("log.tsv", string(text), nil)
	require.NoError(t, err)
	assert.Equal(t, string(text), string(known.text()))
	assert.Equal(t, string(text), string(strange.text()))
	require.Len(t, known.list, len(log.list))
	left := 0
	for i, r := range known.list {
		assert.False(t, r.unknown())
		assert.Len(t, r.then.Paints, len(log.list[i].then.Paints))
		assert.InDelta(t, log.list[i].measured.L, r.measured.L, 0.005+1e-9) // two decimals
		if strings.Contains(r.pile.String()+r.then.String(), "my-ochre") {
			assert.True(t, strange.list[i].unknown())
			left++
		}
	}
	assert.Len(t, learnable(strange.list), len(log.list)-left)
	assert.Positive(t, left)
	assert.Less(t, left, len(log.list))
}

// anyRound is a round of a pile as it may have grown, by a card that may be the wrong one.
func anyRound(random *rand.Rand, owned []paint.Paint, i int) round {
	pile := func() (p loggedPile) {
		for _, of := range random.Perm(len(owned))[:1+random.IntN(8)] {
			p.Paints = append(p.Paints, owned[of])
			p.Parts = append(p.Parts, []float64{1000, 1409.0625, 1.0 / 128, 1e6, 3}[random.IntN(5)]*(0.001+random.Float64()))
		}
		return p
	}
	between := func(from, to float64) float64 { return from + (to-from)*random.Float64() }
	return round{
		date: "2026-11-25", aimed: "A\t1\n", photo: fmt.Sprintf(" # a\tphoto\xff\r\n%d.jpg", i),
		aim: colour.Lab{L: between(-5, 105), A: between(-250, 250), B: between(-300, 350)}, measured: colour.Lab{L: between(-1, 400), A: between(-200, 200), B: between(-200, 200)},
		spread: between(0, 60), deltaE: between(0, 150), advice: "Add\tit.\n", pile: pile(), then: pile(),
	}
}

// What could not be read again is not written, and says what to look at.
func TestALogThatWouldNotBeReadIsRefused(t *testing.T) {
	for name, change := range map[string]func(*round){
		"aim":      func(r *round) { r.aim.B = 1001 },
		"measured": func(r *round) { r.measured.L = 5000 },
		"spread":   func(r *round) { r.spread = 201 },
		"date":     func(r *round) { r.date = "today" },
		"pile": func(r *round) {
			r.then = loggedPile{Pile: match.Pile{Paints: r.pile.Paints, Parts: []float64{1e10, 1}}}
		},
	} {
		r := someRound(t)
		change(&r)
		log := &Rounds{}
		log.add(r)
		_, err := log.Text("log.tsv")
		assert.ErrorContains(t, err, "log.tsv: is left as it is, since the new round could not be read back: log.tsv:3: "+name)
	}
	full := &Rounds{below: []string{"#" + strings.Repeat("x", largestLog)}}
	_, err := full.Text("log.tsv")
	assert.ErrorContains(t, err, "is full")
}

// Comments and blanks at the ends of lines are let through, and comments kept in their
// places, also when the round under them is measured anew or forgotten.
func TestCommentsInTheLog(t *testing.T) {
	log := &Rounds{}
	first, second := someRound(t), someRound(t)
	second.photo = "pile2.jpg"
	log.add(first)
	log.add(second)
	lines := strings.Split(strings.TrimSuffix(string(log.text()), "\n"), "\n")
	require.Len(t, lines, 4)
	written := strings.Join([]string{lines[0] + "  ", lines[1] + "\t", "# first", lines[2] + " \t", "", "# second\t", lines[3], "#last", ""}, "\n")
	tidy := strings.Join([]string{lines[0], lines[1], "# first", lines[2], "# second", lines[3], "#last", ""}, "\n")
	again, err := parseRounds("log.tsv", written, nil)
	require.NoError(t, err)
	assert.Equal(t, tidy, string(again.text()))
	again.add(second)
	assert.Equal(t, strings.Join([]string{lines[0], lines[1], "# first", lines[2], "# second", "#last", lines[3], ""}, "\n"), string(again.text()))
	again.remove(0)
	assert.Equal(t, strings.Join([]string{lines[0], lines[1], "# first", "# second", "#last", lines[3], ""}, "\n"), string(again.text()))
	again.remove(0)
	assert.Equal(t, strings.Join([]string{lines[0], lines[1], "# first", "# second", "#last", ""}, "\n"), string(again.text()))
}

// A round of another box's tube is kept as it is, teaches nothing, and says what to do.
func TestAnotherBoxsTube(t *testing.T) {
	log := &Rounds{}
	log.add(someRound(t))
	other := someRound(t)
	other.photo = "other.jpg"
	log.add(other)
	text := strings.Replace(string(log.text()), "yellow-ochre 3, titanium-white 1\t", "titanium-white 1, my-ochre 3.50\t", 1)
	read, err := parseRounds("log.tsv", text, nil)
	require.NoError(t, err)
	assert.Equal(t, text, string(read.text()))
	assert.Len(t, learnable(read.list), 1)
	assert.Equal(t, "Nothing is learned from 1 round in the log, whose pile has a paint that neither starter box nor the library knows (titanium-white 1, my-ochre 3.50): give the --box this log was made with.",
		unknownText(read.list, "starter box"))
	assert.Empty(t, unknownText(log.list, "starter box"))
}
