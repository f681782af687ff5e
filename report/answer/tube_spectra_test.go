package answer

import (
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
	"tonewright/report/plan"
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
	assert.Equal(t, "covers just as well", tubeWords([2]float64{0.81, 0.80}, 0), "a white")
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

// A white's own tube has no tinting strength to tell: not in words, not in JSON.
func TestTubeOfAWhite(t *testing.T) {
	b := boxOf(t, "titanium-white", "titanium-white")
	own := b.Paints[0].Vary(50, 1, 0)
	k, s := paint.Mix([]paint.Paint{own, b.Paints[1]}, []float64{1, 1})
	file := spectraFile(t, []string{"masstone", "tint 1:1"}, []colour.Spectrum{
		paint.Thick(&own.K, &own.S, paint.Gloss), paint.Thick(&k, &s, paint.Gloss)})
	a, err := TubeFor(TubeOptions{File: file, Paint: "titanium-white"})
	require.NoError(t, err)
	assert.Equal(t, "covers more", a.Words)
	written, err := json.Marshal(a)
	require.NoError(t, err)
	assert.NotContains(t, string(written), `"strength"`)
}

// What is typed wrongly is said to be so, with the flag that it was typed for.
func TestTubeSaysWhatWasAskedWrongly(t *testing.T) {
	_, file := ultramarine(t, 0.03, 0.75)
	for _, c := range []struct {
		name string
		opt  TubeOptions
		want string
	}{
		{"parts without end", TubeOptions{Tints: []string{"tint 1:4=1e308:1e308"}}, `--tint: "1e308:1e308" is no ratio of paint to white; write it as 1:4`},
		{"no paint", TubeOptions{Tints: []string{"tint 1:4=0:4"}}, `--tint: a tint of 0 parts to 4 of white is none; write figures over 0, at most 1000`},
		{"below nothing", TubeOptions{Tints: []string{"tint 1:4=-1:4"}}, `a tint of -1 parts to 4 of white is none`},
		{"no number", TubeOptions{Tints: []string{"tint 1:4=NaN:4"}}, `"NaN:4" is no ratio`},
		{"without end", TubeOptions{Tints: []string{"tint 1:4=Inf:4"}}, `"Inf:4" is no ratio`},
		{"in another notation", TubeOptions{Tints: []string{"tint 1:4=0x1:4"}}, `"0x1:4" is no ratio`},
		{"too much", TubeOptions{Tints: []string{"tint 1:4=1001:1001"}}, `at most 1000`},
		{"too weak", TubeOptions{Tints: []string{"tint 1:4=1:51"}}, `a tint of 1 parts to 51 of white is out of range`},
		{"parts that only the sample says", TubeOptions{Tints: []string{"tint 0:4"}}, `--tint: sample "tint 0:4": a tint of 0 parts to 4 of white is none`},
		{"an empty tint", TubeOptions{Tints: []string{""}}, `--tint "" does not say which tint; write it as SAMPLE=1:4, or in a photo as x,y,w,h=1:4`},
		{"parts alone", TubeOptions{Tints: []string{"=1:4"}}, `--tint "=1:4" does not say which tint`},
		{"the masstone as a tint", TubeOptions{Tints: []string{"masstone=1:4"}}, `--tint: "masstone" is given already, as --masstone; each sample is wanted once`},
		{"a tint twice", TubeOptions{Tints: []string{"tint 1:4", "TINT 1:4=1:10"}}, `--tint: "tint 1:4" is given already, as --tint`},
		{"a film's sample twice", TubeOptions{OverBlack: []string{"on black"}, OverWhite: []string{"on black"}}, `--over-white: "on black" is given already, as --over-black`},
		{"more tints than any chart has", TubeOptions{Tints: make([]string, 31)}, `--tint: 31 tints are more than the 30 that can be fitted at once`},
		{"a card", TubeOptions{Card: "1,1,1,1"}, "--card: " + file + " holds spectra, which need no card; leave it out"},
		{"a card's colour", TubeOptions{CardIs: "gray"}, "--card-is: " + file + " holds spectra, which need no card; leave it out"},
		{"a finish", TubeOptions{Finish: "gloss"}, "--finish: " + file + " holds spectra, for which --shine says how the surface was measured; leave it out"},
		{"another paint's Colour Index name", TubeOptions{Name: "PW6"}, `--name: a tube of Ultramarine Blue cannot be called "PW6", which is another paint`},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.opt.File, c.opt.Paint = file, "ultramarine-blue"
			_, err := TubeFor(c.opt)
			require.ErrorContains(t, err, c.want)
			usage, ok := errors.AsType[plan.UsageError](err)
			assert.True(t, ok, "%v", usage)
		})
	}
}

// One ground lies under all films, and is named once.
func TestTubeOfTwoFilmsOverOneGround(t *testing.T) {
	b := boxOf(t, "ultramarine-blue", "titanium-white")
	real := b.Paints[0]
	k, s := paint.Mix(b.Paints, []float64{1, 4})
	var dark, light colour.Spectrum
	for band := range dark {
		dark[band], light[band] = 0.05, 0.6
	}
	film := func(thick float64, ground colour.Spectrum) colour.Spectrum {
		return paint.Film(&real.K, &real.S, thick, &ground, paint.Gloss)
	}
	file := spectraFile(t, []string{"masstone", "tint 1:4", "b1", "w1", "b2", "w2", "black", "white"}, []colour.Spectrum{
		paint.Thick(&real.K, &real.S, paint.Gloss), paint.Thick(&k, &s, paint.Gloss), film(1, dark), film(1, light), film(3, dark), film(3, light), dark, light})
	a, err := TubeFor(TubeOptions{File: file, Paint: "ultramarine-blue", OverBlack: []string{"b1", "b2"}, OverWhite: []string{"w1", "w2"}, BareBlack: "black", BareWhite: "white"})
	require.NoError(t, err)
	assert.Less(t, a.Worst, 0.2)
	assert.Equal(t, "spectra: masstone, tint 1:4, b1, w1, b2, w2, black, white", a.Source)
}

// A file that is neither spectra nor a photo is not taken for one of them.
func TestTubeOfNoFile(t *testing.T) {
	noise := make([]byte, 4096)
	random := rand.New(rand.NewPCG(5, 6))
	for i := range noise {
		noise[i] = byte(random.IntN(256))
	}
	for _, c := range []struct{ name, text, want string }{
		{"empty.jpg", "", "is empty; export the spectra again, or copy the photo again from the camera"},
		{"cut.jpg", "\xff\xd8", "the file ends early"},
		{"cut.jpg", "\xff\xd8\xff\xe0\x00\x10JFIF", "the file ends early"},
		{"noise.bin", string(noise), "this is not a photo in a format that is read (JPEG, PNG, WebP, TIFF, HEIC); save it as one of these; nor is it text, as spectra are"},
		{"letter.txt", "Dear friend,", "has no row or column of wavelengths"},
		{"large.csv", strings.Repeat("1,2\n", mostText/4+1), "is over 4 MiB, which is no file of spectra"},
	} {
		file := filepath.Join(t.TempDir(), c.name)
		require.NoError(t, os.WriteFile(file, []byte(c.text), 0o600))
		for _, card := range []string{"", "1,1,1,1"} {
			_, err := TubeFor(TubeOptions{File: file, Paint: "ultramarine-blue", Card: card})
			require.ErrorContains(t, err, file+": ")
			assert.ErrorContains(t, err, c.want)
			_, usage := errors.AsType[plan.UsageError](err)
			assert.False(t, usage, "%v", err)
		}
	}
	_, err := TubeFor(TubeOptions{File: os.DevNull, Paint: "ultramarine-blue"})
	assert.ErrorContains(t, err, "is a folder, a device or a pipe; name an ordinary file")
}
