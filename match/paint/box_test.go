package paint

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestReadBox(t *testing.T) {
	file := write(t, `
name = "studio"
paints = [
  "titanium-white", # by id
  "YELLOW ochre",   # by name
  "PB29",           # the only paint of that name
  'Phthalo Blue (Green Shade)',
  "Payne's Gray",
]
`)
	box, err := ReadBox(file)
	require.NoError(t, err)
	assert.Equal(t, "studio", box.Name)
	assert.Equal(t, []string{"titanium-white", "yellow-ochre", "ultramarine-blue", "phthalo-blue-gs", "paynes-grey"}, ids(box.Paints))
}

func TestReadBoxSaysWhatIsWrong(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"a misspelt name", "paints = [\n\"titanum white\"]", `box.toml:2: unknown paint "titanum white"; did you mean "titanium-white", `},
		{"an unknown Colour Index name", `paints = ["PB92"]`, `box.toml:1: unknown paint "PB92"; did you mean "ultramarine-blue", `},
		{"a name without end", `paints = ["` + strings.Repeat("a", 500000) + `"]`, `box.toml:1: unknown paint "` + strings.Repeat("a", 60) + `…": it has 500000 characters; a name has at most 60`},
		{"part of a name", `paints = ["titanium"]`, `box.toml:1: unknown paint "titanium"; did you mean `},
		{"a Colour Index name of several", `paints = ["PR108"]`, `box.toml:1: "PR108" is the Colour Index name of 3 paints; write one of "cadmium-red-light", "cadmium-red-medium" or "cadmium-red-deep"`},
		{"a paint twice", "paints = [\n\"PB29\",\n\"Ultramarine Blue\"]", `box.toml:3: "Ultramarine Blue" is Ultramarine Blue, which is listed already; leave it out`},
		{"the same name twice", "paints = [\n\"PB29\",\n\n\"PB29\"]", `box.toml:4: "PB29" is Ultramarine Blue, which is listed already; leave it out`},
		{"a blank name", `paints = ["viridian", " "]`, `box.toml:1: a paint without a name; write one such as "titanium-white" or leave it out`},
		{"no paints", `name = "studio"`, `box.toml: lists no paints; write paints = ["titanium-white", "yellow-ochre"] with those you own`},
		{"an empty list", `paints = []`, `box.toml: lists no paints; write paints = `},
		{"an unknown key", "name = \"x\"\npaint = [\"viridian\"]", `box.toml:2: unknown key "paint"; a box has name, paints, [left] and [[tube]] blocks`},
		{"no TOML", "name = \"x\"\npaints = [viridian]", `box.toml:2:11: `},
		{"the wrong type", `paints = "viridian"`, `box.toml:1:10: `},
		{"a number for a name", `paints = [1, 2]`, `box.toml:1:11: `},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := ReadBox(write(t, c.text))
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.want)
			assert.NotContains(t, err.Error(), "\n", "one sentence")
		})
	}
}

func TestReadBoxWithoutAFile(t *testing.T) {
	_, err := ReadBox(filepath.Join(t.TempDir(), "none.toml"))
	assert.ErrorContains(t, err, "none.toml: cannot be opened: ")
	_, err = ReadBox(t.TempDir())
	assert.Error(t, err)
	large := filepath.Join(t.TempDir(), "large.toml")
	require.NoError(t, os.WriteFile(large, make([]byte, largestBox+1), 0o600))
	_, err = ReadBox(large)
	assert.ErrorContains(t, err, "large.toml: over 1 MiB")
}

func TestStarterBox(t *testing.T) {
	box := StarterBox()
	assert.Len(t, box.Paints, 12)
	for _, p := range box.Paints {
		assert.Contains(t, []string{"I", "II"}, p.Facts.Lightfastness, p.ID)
	}
}

// Kitten to sitting, the textbook pair, takes three edits (from memory).
func TestEdits(t *testing.T) {
	assert.Equal(t, 1, Edits("pb92", "pb29"))
	assert.Equal(t, 3, Edits("kitten", "sitting"))
	assert.Equal(t, 0, Edits("ochre", "ochre"))
	assert.Equal(t, 5, Edits("", "ochre"))
	assert.Equal(t, 5, Edits("ochre", ""))
}

func FuzzParseBox(f *testing.F) {
	for _, p := range Library() {
		f.Add([]byte(`paints = ["` + p.Name + `"]`))
	}
	f.Add([]byte("name = 1"))
	f.Add([]byte(tubeText("paint = 'viridian'", "0.5", "1")))
	f.Add([]byte("[tube]\nk = [1]"))
	f.Add([]byte("paints = ['viridian']\n[left]\nviridian = '3 ml' # about\n"))
	f.Add([]byte("paints = ['viridian']\nleft = { 'PG18' = 0, x.y = {} }\n"))
	f.Add([]byte("[paints]\nx = [\"\\u00e9\"]"))
	f.Fuzz(func(t *testing.T, text []byte) {
		if box, err := parseBox("box.toml", text); err == nil {
			assert.NotEmpty(t, box.Paints)
			for id, ml := range box.Left {
				assert.True(t, box.has(id) && ml >= 0 && ml <= mostLeft, "%s: %v", id, ml)
			}
		}
	})
}

func write(t *testing.T, text string) string {
	file := filepath.Join(t.TempDir(), "box.toml")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
	return file
}
