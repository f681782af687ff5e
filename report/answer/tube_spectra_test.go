package answer

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// spectraFile writes samples as a spectrophotometer would, a sample a row.
func spectraFile(t *testing.T, names []string, samples []colour.Spectrum) string {
	var b strings.Builder
	b.WriteString("Sample")
	for band := range colour.Bands {
		fmt.Fprintf(&b, ",%d nm", 400+10*band)
	}
	for i, s := range samples {
		b.WriteString("\n" + names[i])
		for _, r := range s {
			fmt.Fprintf(&b, ",%.5f", r)
		}
	}
	file := filepath.Join(t.TempDir(), "tube.csv")
	require.NoError(t, os.WriteFile(file, []byte(b.String()), 0o600))
	return file
}

// ultramarine is a tube a little stronger than the typical one, with films over grounds
// that are not those of a usual chart, and those grounds.
func ultramarine(t *testing.T, black, pale float64) (real paint.Paint, file string) {
	b := boxOf(t, "ultramarine-blue", "titanium-white")
	real, white := b.Paints[0].Vary(1.2, 1.1, 2), b.Paints[1]
	k, s := paint.Mix([]paint.Paint{real, white}, []float64{1, 4})
	var dark, light colour.Spectrum
	for band := range dark {
		dark[band], light[band] = black, pale
	}
	over := func(ground colour.Spectrum) colour.Spectrum {
		return paint.Film(&real.K, &real.S, 2, &ground, paint.Gloss)
	}
	return real, spectraFile(t, []string{"masstone", "tint 1:4", "on black", "on white", "black", "white"}, []colour.Spectrum{
		paint.Thick(&real.K, &real.S, paint.Gloss), paint.Thick(&k, &s, paint.Gloss), over(dark), over(light), dark, light,
	})
}

// Grounds that were measured are taken; the usual chart's are said to be assumed.
func TestTubeTakesMeasuredGrounds(t *testing.T) {
	real, file := ultramarine(t, 0.015, 0.78)
	opt := TubeOptions{File: file, Paint: "ultramarine-blue", OverBlack: []string{"on black"}, OverWhite: []string{"on white"}}
	assumed, err := TubeFor(opt)
	require.NoError(t, err)
	opt.BareBlack, opt.BareWhite = "black", "white"
	measured, err := TubeFor(opt)
	require.NoError(t, err)
	t.Logf("worst %.2f with a usual chart's grounds, %.2f with those measured", assumed.Worst, measured.Worst)
	assert.Less(t, measured.Worst, 0.2)
	assert.Greater(t, assumed.Worst, 5*measured.Worst)
	assert.Contains(t, strings.Join(assumed.Notes, " "), "The black under the films was taken to reflect 1 %")
	assert.NotContains(t, strings.Join(measured.Notes, " "), "under the films")
	_, opt.File = ultramarine(t, 0.05, 0.6)
	again, err := TubeFor(opt)
	require.NoError(t, err)
	assert.Less(t, again.Worst, 0.2)
	opt.BareBlack, opt.BareWhite = "", ""
	_, err = TubeFor(opt)
	assert.ErrorContains(t, err, "measure the bare black and white under the films, which were taken to be a usual chart's")
	assert.InDelta(t, paint.ContrastRatio(&real.K, &real.S), measured.Contrast[0], 0.03)
}

// What is kept is a box that reads back, and nothing is written before the command does.
func TestTubeTextToKeep(t *testing.T) {
	_, file := ultramarine(t, 0.03, 0.75)
	box := filepath.Join(t.TempDir(), "mine.toml")
	a, err := TubeFor(TubeOptions{File: file, Paint: "ultramarine-blue", Box: box})
	require.NoError(t, err)
	assert.Equal(t, box, a.KeptIn)
	assert.Len(t, a.Warnings, 1)
	assert.NoFileExists(t, box)
	require.NoError(t, os.WriteFile(box, a.BoxText, 0o600))
	read, err := paint.ReadBox(box)
	require.NoError(t, err)
	assert.Equal(t, a.Paint.K, read.Paints[0].K)

	a, err = TubeFor(TubeOptions{File: file, Paint: "ultramarine-blue"})
	require.NoError(t, err)
	assert.Empty(t, a.KeptIn)
	assert.Nil(t, a.BoxText)

	require.NoError(t, os.WriteFile(box, make([]byte, 1<<20+1), 0o600))
	_, err = TubeFor(TubeOptions{File: file, Paint: "ultramarine-blue", Box: box})
	assert.ErrorContains(t, err, "mine.toml: over 1 MiB is no list of paints")
}

// A typical tube's own spectra: nothing differs, which is said as box says it.
func TestTubeThatIsTypical(t *testing.T) {
	b := boxOf(t, "viridian", "titanium-white")
	k, s := paint.Mix(b.Paints, []float64{1, 4})
	file := spectraFile(t, []string{"masstone", "tint 1:4"}, []colour.Spectrum{
		paint.Thick(&b.Paints[0].K, &b.Paints[0].S, paint.Gloss), paint.Thick(&k, &s, paint.Gloss)})
	a, err := TubeFor(TubeOptions{File: file, Paint: "viridian"})
	require.NoError(t, err)
	assert.True(t, a.Close)
	assert.Equal(t, "the same to the eye", a.Masstone.Words)
	assert.Equal(t, "covers as well and tints as strongly", a.Words)
	assert.False(t, a.Checked, "a masstone and one tint check nothing")
}

// How a tube covers and tints is worded from figures: a paint that scatters half as
// much covers less, one with twice the absorption tints stronger.
func TestTubeWords(t *testing.T) {
	assert.Equal(t, "covers less and tints stronger", tubeWords([2]float64{0.70, 0.80}, 1.3))
	assert.Equal(t, "covers more and tints weaker", tubeWords([2]float64{0.90, 0.80}, 0.8))
	assert.Equal(t, "covers as well and tints as strongly", tubeWords([2]float64{0.81, 0.80}, 1.04))
}

// A tube that is not the paint it is said to be is refused with what it reads like; the
// painter may insist.
func TestTubeOfAnotherPaint(t *testing.T) {
	_, file := ultramarine(t, 0.03, 0.75)
	_, err := TubeFor(TubeOptions{File: file, Paint: "burnt-sienna"})
	assert.ErrorContains(t, err, "this is hardly Burnt Sienna: it is ")
	assert.ErrorContains(t, err, "; it reads like Ultramarine Blue; say --paint ultramarine-blue, or --anyway if the label is right")
	a, err := TubeFor(TubeOptions{File: file, Paint: "burnt-sienna", Anyway: true})
	require.NoError(t, err)
	require.Len(t, a.Warnings, 1)
	assert.Contains(t, a.Warnings[0], "This is hardly Burnt Sienna: ")
	assert.Equal(t, "burnt-sienna", a.ID)

	b := boxOf(t, "burnt-sienna", "burnt-umber")
	assert.Equal(t, "check the parts of the tint, or say --anyway if they and the label are right", whatElse(b.Paints[0], b.Paints[0]))
}
