package answer

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze"
	"tonewright/analyze/colour"
	"tonewright/match"
	"tonewright/match/paint"
	"tonewright/report/plan"
)

// judged is the answer on a pile that was measured, as SwatchFor has it.
func judged(t *testing.T, pile string, measured, aim colour.Lab, useless ...string) (*Swatch, round) {
	now := round{date: "2026-11-25", aimed: "A1", aim: aim, photo: "pile.jpg", measured: measured, pile: loggedPile{Pile: pileOf(t, pile)}}
	a := &Swatch{Add: []Addition{}, Learned: []Learned{}, Warnings: []string{}, Pile: plan.PartsOf(now.pile.Pile), Aim: Aim{From: "A1"}}
	a.judge(&now, reading{swatch: analyze.Swatch{Lab: measured}, useless: useless}, nil, paint.StarterBox().Paints)
	return a, now
}

func looks(t *testing.T, pile string) colour.Lab {
	k, s := pileOf(t, pile).Optics()
	return paint.Paint{K: k, S: s}.Masstone()
}

// A pile typed for another: the ochre was a sienna. It is said, with what to do; a pile
// that is as told raises no doubt.
func TestAMistypedPileIsDoubted(t *testing.T) {
	aim := looks(t, "yellow-ochre 3, titanium-white 2")
	a, _ := judged(t, "yellow-ochre 2, titanium-white 3", looks(t, "burnt-sienna 1, yellow-ochre 2, titanium-white 4"), aim)
	require.Len(t, a.Warnings, 1)
	assert.Contains(t, a.Warnings[0], "Check what is in the pile")
	assert.Contains(t, a.Warnings[0], `tonewright swatch --forget --aim "A1"`)
	honest, _ := judged(t, "yellow-ochre 2, titanium-white 3", looks(t, "yellow-ochre 2.4, titanium-white 3"), aim)
	assert.Empty(t, honest.Warnings)
}

// A photo that is not to be gone by gives no orders, teaches nothing and leaves no pile.
func TestAWorthlessPhotoGivesNoOrders(t *testing.T) {
	pile := "yellow-ochre 2, titanium-white 3"
	a, _ := judged(t, pile, looks(t, pile), colour.Lab{L: 50}, "Photograph it again: why.", "Draw it again.")
	assert.Equal(t, "again", a.Verdict)
	assert.Equal(t, "Photograph it again: why.", a.Advice)
	assert.Equal(t, []string{"Draw it again."}, a.Warnings)
	assert.Empty(t, a.Add)
	assert.Nil(t, a.Then)
	assert.Nil(t, a.Fresh)
	assert.Empty(t, a.Learned)
}

// With a pile to be mixed anew, what to add is for mending and stands apart; the log has
// the fresh pile. Common practice, no source: black is not made pale.
func TestAnewKeepsMendingApart(t *testing.T) {
	black := looks(t, "ivory-black 1")
	a, now := judged(t, "ivory-black 1", black, looks(t, "titanium-white 30, ivory-black 1"))
	require.Equal(t, "anew", a.Verdict)
	assert.Empty(t, a.Add)
	assert.Nil(t, a.Then)
	require.NotNil(t, a.Mended)
	assert.NotEmpty(t, a.Mended.Add)
	assert.Greater(t, a.Mended.Then.DeltaE, 3.0)
	assert.Contains(t, a.Advice, "Start again: mended with as much paint as is in it")
	assert.Equal(t, "titanium-white", now.then.Paints[0].ID)
}

// The words for each end, by the figures as they are printed.
func TestWordsOfAdvice(t *testing.T) {
	some := []match.Addition{{Paint: pileOf(t, "viridian").Paints[0], Count: 1, Measure: match.Touch}}
	for _, c := range []struct {
		is   match.Correction
		want string
	}{
		{match.Correction{Verdict: match.Anew, Additions: some, Remaining: 7, Fresh: &match.Recipe{DeltaE: 3.44}},
			"Start again: mended with as much paint as is in it, it would still be 7.0 CIEDE2000 off. A fresh pile misses too, by 3.4: these paints come no nearer. Keep the old pile for something else."},
		{match.Correction{Verdict: match.Anew, Remaining: 7, Fresh: &match.Recipe{DeltaE: 2.04}, Keep: 0.25},
			"Start again: nothing that you own mends it. Of the old pile, up to a quarter as much as there is fresh paint may be stirred in."},
		{match.Correction{Verdict: match.Short, Additions: some, Remaining: 2.6, Fresh: &match.Recipe{DeltaE: 0.8}},
			"Add a touch of Viridian: near, 2.6 CIEDE2000 off. If that is not near enough, a fresh pile would be 0.8 off. Keep the old pile for something else."},
		{match.Correction{Verdict: match.Short, Additions: some, Remaining: 6},
			"These paints do not get it within 2 CIEDE2000. Nearest: add a touch of Viridian."},
		{match.Correction{Verdict: match.Short, Remaining: 2.04}, "Leave it: what adding would win is less than a camera can tell."},
		{match.Correction{Verdict: match.Short, Remaining: 6}, "Nothing that you own brings it clearly nearer."},
		{match.Correction{Verdict: match.Off}, "Say with --pile what is in it, to be told what to add."},
	} {
		assert.Equal(t, c.want, (&Swatch{}).adviceText(c.is, nil))
	}
}

// The plan's box is taken where none is given; own tubes want theirs.
func TestSwatchBox(t *testing.T) {
	file := filepath.Join(t.TempDir(), "plan.json")
	write := func(text string) { require.NoError(t, os.WriteFile(file, []byte(text), 0o600)) }
	box, note, err := SwatchBox(nil, file)
	require.NoError(t, err)
	assert.Equal(t, "starter box", box.Name, "no plan yet")
	assert.Empty(t, note)
	write(`{"tool":"tonewright","box":{"name":"two","paints":["yellow-ochre","titanium-white"]},"regions":[]}`)
	box, _, err = SwatchBox(nil, file)
	require.NoError(t, err)
	assert.Equal(t, "two", box.Name)
	require.Len(t, box.Paints, 2)
	assert.Equal(t, "yellow-ochre", box.Paints[0].ID)
	same := paint.Box{Name: "mine", Paints: []paint.Paint{box.Paints[1], box.Paints[0]}}
	_, note, err = SwatchBox(&same, file)
	require.NoError(t, err)
	assert.Empty(t, note, "the order is nothing")
	other := paint.StarterBox()
	box, note, err = SwatchBox(&other, file)
	require.NoError(t, err)
	assert.Equal(t, "starter box", box.Name)
	assert.Contains(t, note, "was made with other paints (two)")
	for _, own := range []string{
		`{"tool":"tonewright","box":{"name":"two","paints":["yellow-ochre","titanium-white"]},"paints":[{"paint":"yellow-ochre","basis":"own tube"}],"regions":[]}`,
		`{"tool":"tonewright","box":{"name":"two","paints":["my-tube","titanium-white"]},"regions":[]}`,
	} {
		write(own)
		_, _, err = SwatchBox(nil, file)
		assert.ErrorContains(t, err, "give that with --box")
		assert.ErrorAs(t, err, new(plan.UsageError))
	}
}

// The last round for an aim goes, and no other.
func TestForget(t *testing.T) {
	log := &Rounds{}
	first, second, other := someRound(t), someRound(t), someRound(t)
	second.photo, other.photo = "pile2.jpg", "other.jpg"
	other.aimed, other.aim = "N 5", colour.Lab{L: colour.LOf(5)}
	for _, r := range []round{first, second, other} {
		log.add(r)
	}
	gone, err := Forget(log, "log.tsv", SwatchOptions{Aim: "lab(52.125, -3, 18.4)"})
	require.NoError(t, err)
	assert.Equal(t, "pile2.jpg", gone.Photo)
	assert.Equal(t, 2, gone.Left)
	require.Len(t, log.list, 2)
	assert.Equal(t, []string{"pile.jpg", "other.jpg"}, []string{log.list[0].photo, log.list[1].photo})
	_, err = Forget(log, "log.tsv", SwatchOptions{Aim: "N 2"})
	assert.ErrorContains(t, err, "log.tsv: has no round for N 2 to forget; it has some for A1, N 5")
}

// A pile's parts that are whole are counted; others are not.
func TestWholePartsAreCounted(t *testing.T) {
	parts := plan.PartsOf(pileOf(t, "titanium-white 3, yellow-ochre 1.5, viridian touch"))
	assert.Equal(t, []int{3, 0, 0}, []int{parts[0].Count, parts[1].Count, parts[2].Count})
	assert.InDelta(t, 4.5/31, parts[2].Parts, 5e-5) // four decimals; 1/32 of the pile by definition
}
