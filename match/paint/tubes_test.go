package paint

import (
	"bytes"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tubeText is a tube's block written by hand, apart from the writer.
func tubeText(head string, k, s string) string {
	return "[[tube]]\n" + head + "\nk = [" + strings.Repeat(k+", ", 31) + "]\ns = [" + strings.Repeat(s+", ", 31) + "]\n"
}

func TestBoxWithTubes(t *testing.T) {
	box, err := ReadBox(write(t, `
name = "studio"
paints = ["titanium-white", "my warm OCHRE", "viridian", "PB29"]

`+tubeText(`name = "My warm ochre"
paint = "Yellow Ochre"
source = "spectra"
error = 0.31
away = 3.2`, "0.25", "0.5")+tubeText(`paint = "PB29"`, "1", "0.1")+tubeText("name = 'Ochre, thin'\npaint = 'yellow-ochre'", "0.125", "2")))
	require.NoError(t, err)
	assert.Equal(t, []string{"titanium-white", "my-warm-ochre", "viridian", "ultramarine-blue", "ochre-thin"}, ids(box.Paints))
	own, like := box.Paints[1], known(t, "yellow-ochre")
	assert.Equal(t, "My warm ochre", own.Name)
	assert.Equal(t, Own, own.Basis)
	assert.Equal(t, "yellow-ochre", own.Like)
	assert.Equal(t, Fit{"spectra", 0.31, 3.2}, own.Fit)
	assert.Equal(t, like.Facts, own.Facts)
	assert.Equal(t, 0.25, own.K[30])
	assert.Equal(t, 0.5, own.S[0])
	assert.Equal(t, Own, box.Paints[3].Basis, "takes the place of the library's")
	assert.Equal(t, "Ultramarine Blue", box.Paints[3].Name)
	assert.Equal(t, Fitted, like.Basis, "the library is left alone")
}

func TestBoxSaysWhatIsWrongWithATube(t *testing.T) {
	good := "paints = ['viridian']\n\n"
	for _, c := range []struct{ name, text, want string }{
		{"no paint", tubeText("name = 'x'", "1", "1"), `box.toml:3: tube 1: has no paint; write paint = "yellow-ochre"`},
		{"an unknown paint", tubeText("paint = 'yelow ochre'", "1", "1"), `box.toml:3: tube 1: unknown paint "yelow ochre"; did you mean "yellow-ochre"`},
		{"another paint's name", tubeText("paint = 'viridian'\nname = 'Yellow, Ochre'", "1", "1"), `box.toml:3: tube 1: a tube of Viridian cannot be called "Yellow, Ochre", which is another paint`},
		{"no letters", tubeText("paint = 'viridian'\nname = '!'", "1", "1"), `box.toml:3: tube 1: a tube cannot be called "!"`},
		{"another paint's Colour Index name", tubeText("paint = 'viridian'\nname = 'pw 6'", "1", "1"), `box.toml:3: tube 1: a tube of Viridian cannot be called "pw 6", which is another paint`},
		{"a Colour Index name with marks", tubeText("paint = 'viridian'\nname = 'P/B,29'", "1", "1"), `a tube of Viridian cannot be called "P/B,29", which is another paint`},
		{"a Colour Index name of several", tubeText("paint = 'cadmium-red-deep'\nname = 'PR108'", "1", "1"), `a tube of Cadmium Red Deep cannot be called "PR108", which is the Colour Index name of 3 paints; give it a name of its own`},
		{"a mark that turns the writing", tubeText("paint = 'viridian'\nname = \"a\u202eb\"", "1", "1"), `box.toml:3: tube 1: a tube cannot be called "a\u202eb": it holds characters that do not show`},
		{"two lines", tubeText("paint = 'viridian'\nname = \"a\\nb\"", "1", "1"), `a tube cannot be called "a\nb": it holds characters that do not show`},
		{"a long name", tubeText("paint = 'viridian'\nname = '"+strings.Repeat("é", 61)+"'", "1", "1"), `é…": it has 61 characters; use at most 60`},
		{"a name that another's id means", tubeText("paint = 'viridian'\nname = 'a/b'", "1", "1") + tubeText("paint = 'viridian'\nname = 'ab'", "1", "1"), `tube 2: "ab" is the name of a tube above it`},
		{"a box with an escape in its name", "name = \"\\u001b[2J\"", `box.toml: a box cannot be called "\x1b[2J": it holds characters that do not show`},
		{"a box with a long name", "name = '" + strings.Repeat("x", 61) + "'", `x…": it has 61 characters; use at most 60`},
		{"too few numbers", "[[tube]]\npaint = 'viridian'\nk = [1]\ns = [1]", `box.toml:3: tube 1: k has 1 numbers; it needs 31, for 400 to 700 nm in steps of 10`},
		{"no s", "[[tube]]\npaint = 'viridian'\nk = [" + strings.Repeat("1,", 31) + "]", `box.toml:3: tube 1: s has 0 numbers`},
		{"not a number", tubeText("paint = 'viridian'", "nan", "1"), `box.toml:3: tube 1: k at 400 nm is NaN; it must be from 0 to 100`},
		{"without end", tubeText("paint = 'viridian'", "1", "inf"), `box.toml:3: tube 1: s at 400 nm is +Inf; it must be from 0.0001 to 100`},
		{"negative", tubeText("paint = 'viridian'", "-0.1", "1"), `box.toml:3: tube 1: k at 400 nm is -0.1; it must be`},
		{"no scattering", tubeText("paint = 'viridian'", "1", "0"), `box.toml:3: tube 1: s at 400 nm is 0; it must be`},
		{"a negative error", tubeText("paint = 'viridian'\nerror = -1.0", "1", "1"), `box.toml:3: tube 1: error and away are CIEDE2000 differences, from 0 to 200`},
		{"an unknown key", tubeText("paint = 'viridian'\ncolour = 'green'", "1", "1"), `box.toml:5: unknown key "tube.colour"; a box has name, paints, [left] and [[tube]] blocks, and a tube has name, paint, source, error, away, k and s`},
		{"the wrong kind", tubeText("paint = 3", "1", "1"), `box.toml:4:9: `},
		{"two of a name", tubeText("paint = 'viridian'", "1", "1") + "\n# again\n" + tubeText("paint = 'viridian'", "1", "1"), `box.toml:9: tube 2: "Viridian" is the name of a tube above it; give each its own`},
		{"more tubes than a box has", strings.Repeat(tubeText("paint = 'viridian'", "1", "1"), 201), `box.toml: 201 tubes are more than the 200 that a box may hold; take out those that are used up`},
		{"listed twice", "", `box.toml:1: "mine" is mine, which is listed already; leave it out`},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := good + c.text
			if c.text == "" {
				text = "paints = ['mine', 'mine']\n" + tubeText("name = 'mine'\npaint = 'viridian'", "1", "1")
			}
			_, err := ReadBox(write(t, text))
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.want)
			assert.NotContains(t, err.Error(), "\n", "one sentence")
		})
	}
}

// ownTube is a tube of viridian with figures that need all their digits.
func ownTube(t testing.TB, name string) Paint {
	like, err := find("viridian")
	require.NoError(t, err)
	own, err := OwnTube(like, name)
	require.NoError(t, err)
	own = own.Vary(1.1, 0.9, 3)
	own.Fit = Fit{Source: `"thick" C:\`, Error: 1. / 3, Away: math.Pi}
	return own
}

func TestWithTube(t *testing.T) {
	own := ownTube(t, "My green")
	first, err := withTube("studio.toml", nil, own)
	require.NoError(t, err)
	box, err := parseBox("studio.toml", first)
	require.NoError(t, err)
	assert.Equal(t, "studio", box.Name)
	assert.Equal(t, []Paint{own}, box.Paints)

	// Everything but the block itself is kept to the byte, wherever the block stands.
	before := "# my paints\r\nname = 'x' # here\npaints = ['viridian',\n  'ivory-black'] # and these\n\n"
	after := "\n# the blue one\n" + tubeText("paint = 'PB29'", "1", "1") + "# the end"
	old := "[[ tube ]] # old\n" + strings.TrimPrefix(tubeText("name = 'my green' \npaint = 'viridian'", "1", "1"), "[[tube]]\n")
	for _, mark := range []string{"", "\xef\xbb\xbf"} {
		with, err := withTube("box.toml", []byte(mark+before+old+after), own)
		require.NoError(t, err)
		assert.True(t, bytes.HasPrefix(with, []byte(mark+before+"[[tube]]\nname = \"My green\"\n")), "%s", with)
		assert.True(t, bytes.HasSuffix(with, []byte("]\n"+after)), "%s", with)
		again, err := withTube("box.toml", with, own)
		require.NoError(t, err)
		assert.Equal(t, string(with), string(again))

		other := ownTube(t, "")
		with, err = withTube("box.toml", []byte(mark+before+old+after), other)
		require.NoError(t, err)
		assert.True(t, bytes.HasPrefix(with, []byte(mark+before+old+after+"\n\n[[tube]]\n")))
		box, err := parseBox("box.toml", with)
		require.NoError(t, err)
		assert.Equal(t, []string{"viridian", "ivory-black", "my-green", "ultramarine-blue"}, ids(box.Paints))
		assert.Equal(t, other, box.Paints[0])
	}
}

// A box written on Windows keeps its line ends: no line ends in another way, and an
// empty line stands before a new tube.
func TestWithTubeKeepsLineEnds(t *testing.T) {
	own := ownTube(t, "My green")
	for _, text := range []string{"paints = ['viridian']\r\n", "paints = ['viridian']\r\n\r\n" + strings.ReplaceAll(tubeText("name = 'my green'\npaint = 'viridian'", "1", "1"), "\n", "\r\n")} {
		with, err := withTube("box.toml", []byte(text), own)
		require.NoError(t, err)
		assert.Equal(t, bytes.Count(with, []byte("\n")), bytes.Count(with, []byte("\r\n")), "%q", with)
		assert.True(t, bytes.HasPrefix(with, []byte("paints = ['viridian']\r\n\r\n[[tube]]\r\nname")), "%q", with)
		_, err = parseBox("box.toml", with)
		assert.NoError(t, err)
	}
}

// A tube may not change what a name in the list means: the Colour Index name of its own
// paint stands for it, that of another is refused, and a name listed stays a name.
func TestWithTubeKeepsMeanings(t *testing.T) {
	white := known(t, "titanium-white")
	own, err := OwnTube(white, "PW6")
	require.NoError(t, err)
	assert.Equal(t, "titanium-white", own.ID)
	with, err := withTube("box.toml", []byte("paints = ['PW6', 'PB29']"), own)
	require.NoError(t, err)
	box, err := parseBox("box.toml", with)
	require.NoError(t, err)
	assert.Equal(t, []string{"titanium-white", "ultramarine-blue"}, ids(box.Paints))
	assert.Equal(t, Own, box.Paints[0].Basis)

	_, err = OwnTube(known(t, "zinc-white"), "PW6")
	assert.EqualError(t, err, `a tube of Zinc White cannot be called "PW6", which is another paint; give it a name of its own`)

	text := "paints = [\n'Green/2']\n" + tubeText("name = 'Green/2'\npaint = 'viridian'", "1", "1")
	_, err = withTube("box.toml", []byte(text), ownTube(t, "Green 2")) // of the same id
	assert.EqualError(t, err, `Green 2 cannot be kept: box.toml:2: "Green/2" would no longer mean Green/2; give the tube another name`)
	_, err = withTube("box.toml", []byte(text), ownTube(t, "Green/2"))
	assert.NoError(t, err)
}

// Two tubes of one pigment are told apart by name.
func TestFindAmongTwoTubesOfOnePigment(t *testing.T) {
	owned := []Paint{ownTube(t, "Green A"), ownTube(t, "Green B")}
	_, err := Find(owned, "PG18")
	assert.EqualError(t, err, `"PG18" is the Colour Index name of 2 of your paints; write one of "green-a" or "green-b"`)
	p, err := Find(owned, "green b")
	require.NoError(t, err)
	assert.Equal(t, "green-b", p.ID)
	p, err = Find(owned[:1], "PG18")
	require.NoError(t, err)
	assert.Equal(t, "green-a", p.ID)
}

func TestWithTubeSaysWhatIsWrong(t *testing.T) {
	good := []byte("paints = ['viridian']")
	_, err := withTube("box.toml", good, known(t, "viridian"))
	assert.ErrorContains(t, err, "box.toml: Viridian is not an own tube")
	_, err = withTube("box.toml", []byte("paints = 3"), ownTube(t, "x"))
	assert.ErrorContains(t, err, "box.toml:1:10: ")
	_, err = withTube("box.toml", []byte("paints = ['viridan']"), ownTube(t, "x"))
	assert.ErrorContains(t, err, `unknown paint "viridan"`)
	bad := ownTube(t, "x")
	bad.S[3] = 0
	_, err = withTube("box.toml", good, bad)
	assert.ErrorContains(t, err, "s at 430 nm is 0")
	bad = ownTube(t, "x")
	bad.Fit.Source = "\xff"
	_, err = withTube("box.toml", good, bad)
	assert.ErrorContains(t, err, "reads back the same")
	_, err = withTube("box.toml", []byte("tube = [{paint = 'viridian', k = [], s = []}]"), ownTube(t, "x"))
	assert.ErrorContains(t, err, "not written as [[tube]] blocks")
}

// Whatever box a tube is put into, it is there afterwards and all else as it was.
func FuzzWithTube(f *testing.F) {
	f.Add([]byte("paints = ['viridian']"), "My green", "spectra", 0.5)
	f.Add([]byte("name = 'x'\n[[tube]]\npaint='PB29'\n# one\n"), "", "a\n\"b\"", 1e-7)
	f.Add([]byte("\xef\xbb\xbfpaints = ['viridian']\r\n"+tubeText("paint = 'PB29'", "1", "1")+"\r\n# end"), "é ö", "", 3.)
	f.Add([]byte("paints = ['PB29']\n[left]\nPB29 = '3 g'"), "", "", 1.)
	f.Fuzz(func(t *testing.T, text []byte, name, source string, k float64) {
		like := known(t, "ultramarine-blue")
		own, err := OwnTube(like, name)
		if err != nil {
			return
		}
		own.Fit.Source, own.K[7] = source, k
		was, bad := parseBox("box.toml", text)
		with, err := withTube("box.toml", text, own)
		if err != nil {
			return
		}
		now, err := parseBox("box.toml", with)
		require.NoError(t, err)
		if bad != nil {
			assert.True(t, len(bytes.TrimSpace(bytes.TrimPrefix(text, byteOrderMark))) == 0 || bytes.HasPrefix(with, text), "only a box without any paint may have been no box before")
			return
		}
		for _, p := range was.Paints {
			if p.ID != own.ID {
				assert.Contains(t, now.Paints, p)
			}
		}
		assert.Equal(t, was.Left, now.Left)
		twice, err := withTube("box.toml", with, own)
		require.NoError(t, err)
		assert.Equal(t, string(with), string(twice))
	})
}

// What is to be written comes from the file as ReadBox takes it, up to 1 MiB.
func TestKeepTube(t *testing.T) {
	own := ownTube(t, "My green")
	there := write(t, "paints = ['viridian'] # mine\n")
	text, fresh, err := KeepTube(there, own)
	require.NoError(t, err)
	assert.False(t, fresh)
	assert.True(t, strings.HasPrefix(string(text), "paints = ['viridian'] # mine\n\n[[tube]]\n"), "%s", text)

	text, fresh, err = KeepTube(there+".new.toml", own)
	require.NoError(t, err)
	assert.True(t, fresh)
	assert.True(t, strings.HasPrefix(string(text), "name = \"box.toml.new\"\npaints = [\"my-green\"]\n"), "%s", text)

	_, _, err = KeepTube(write(t, strings.Repeat("#\n", largestBox/2+1)), own)
	assert.ErrorContains(t, err, "box.toml: over 1 MiB is no list of paints")
	_, _, err = KeepTube(write(t, "paints = ['viridian']\n"+strings.Repeat("#\n", largestBox/2-20)), own)
	assert.ErrorContains(t, err, "box.toml: is full: with this tube it would be over 1 MiB")
	text, _, err = KeepTube(filepath.Join(t.TempDir(), strings.Repeat("x", 61)+".toml"), own)
	require.NoError(t, err)
	assert.True(t, strings.HasPrefix(string(text), "paints = [\"my-green\"]\n"), "a name that a box cannot have is left out: %s", text)
	_, _, err = KeepTube(t.TempDir(), own)
	assert.ErrorContains(t, err, "is a folder, a device or a pipe")
}
