package paint

import (
	"bufio"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// shared returns a file of the folder of shared data beside the repository, or
// skips the test.
func shared(t *testing.T, name string) []byte {
	dir, err := os.Getwd()
	require.NoError(t, err)
	for dir != filepath.Dir(dir) {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			break
		}
		dir = filepath.Dir(dir)
	}
	text, err := os.ReadFile(filepath.Join(dir, "..", "shared", "data", name))
	if err != nil {
		t.Skipf("the shared folder beside the repository is missing, so %s cannot be compared", name)
	}
	return text
}

// The embedded table is held against the file it was made from, whose model is
// evaluated here anew from its published formula.
func TestLibraryAgainstItsSource(t *testing.T) {
	type sums struct {
		Floor, Level, Slope, Curve float64
		Bands, Edges, Bumps        [][3]float64
	}
	var file struct {
		Paints []struct {
			ID, Name, Opacity, Basis string
			CI                       []string
			K, S                     sums
			Blend                    map[string]float64
		}
	}
	require.NoError(t, json.Unmarshal(shared(t, "paint-optics.json"), &file))
	library := Library()
	require.Len(t, library, len(file.Paints))
	for i, want := range file.Paints {
		got := library[i]
		assert.Equal(t, []string{want.ID, want.Name, want.Opacity, want.Basis}, []string{got.ID, got.Name, got.Opacity, got.Basis})
		assert.Equal(t, want.CI, got.CI)
		for b := range got.K {
			nm := 400 + 10*float64(b)
			k, power := want.K.Floor, 0.0
			for _, c := range want.K.Bands {
				k += c[2] * math.Exp(-(nm-c[0])*(nm-c[0])/(2*c[1]*c[1]))
			}
			for _, c := range want.K.Edges {
				k += c[2] / (1 + math.Exp((nm-c[0])/c[1]))
			}
			for _, c := range want.S.Bumps {
				power += c[2] * math.Exp(-(nm-c[0])*(nm-c[0])/(2*c[1]*c[1]))
			}
			x := (nm - 550) / 150
			s := want.S.Level * math.Exp(want.S.Slope*x+want.S.Curve*x*x+power)
			if len(want.Blend) > 0 {
				k, s = 0, 0
				whole := 0.0
				for _, parts := range want.Blend {
					whole += parts
				}
				for id, parts := range want.Blend {
					k += known(t, id).K[b] * parts / whole
					s += known(t, id).S[b] * parts / whole
				}
			}
			assert.InEpsilon(t, k, got.K[b], exact, "%s, %v nm", got.ID, nm)
			assert.InEpsilon(t, s, got.S[b], exact, "%s, %v nm", got.ID, nm)
		}
	}
}

// Each line of the facts is found again, word for word, in the file of facts, but
// for the three taken by analogy.
func TestFactsAgainstTheirSource(t *testing.T) {
	var source [][]string
	lines := bufio.NewScanner(strings.NewReader(string(shared(t, "paint-facts.tsv"))))
	for lines.Scan() {
		source = append(source, strings.Split(lines.Text(), "\t"))
	}
	for _, row := range rows(factTable, 9) {
		if strings.Contains(row[8], "analogy with") {
			continue
		}
		ci, variety, _ := strings.Cut(row[0], "/")
		found := slices.ContainsFunc(source, func(s []string) bool {
			oil := s[9]
			if !strings.Contains(oil, "-") {
				oil += "-" + oil
			}
			named := variety == "" || strings.Contains(s[1], strings.ReplaceAll(variety, "-", " ")) || variety == "opaque" && strings.Contains(s[1], "iron oxide")
			return s[0] == ci && named && slices.Equal(row[1:7], []string{s[2], s[4], s[5] + "-" + s[6], s[7], s[8], oil}) && s[11] == row[8]
		})
		assert.True(t, found, "%v is not in the source", row)
	}
}

func TestLibraryIsSound(t *testing.T) {
	seen := map[string]bool{}
	for _, p := range Library() {
		assert.False(t, seen[p.ID] || seen[p.Name], "%s twice", p.ID)
		seen[p.ID], seen[p.Name] = true, true
		assert.Contains(t, Bases(), p.Basis, p.ID)
		assert.Contains(t, []string{"opaque", "semi-opaque", "semi-transparent", "transparent"}, p.Opacity, p.ID)
		assert.NotEmpty(t, p.CI, p.ID)
		assert.True(t, 0 < p.Facts.TouchDry[0] && p.Facts.TouchDry[0] <= p.Facts.TouchDry[1], p.ID)
		assert.True(t, 1 < p.Facts.Density && p.Facts.Density < 9, p.ID)
		assert.True(t, 5 < p.Facts.Oil[0] && p.Facts.Oil[0] <= p.Facts.Oil[1], p.ID)
		assert.NotEmpty(t, p.Facts.Source, p.ID)
		for b := range p.K {
			assert.True(t, p.K[b] > 0 && p.S[b] > 0, "%s, band %d", p.ID, b)
		}
	}
	assert.Len(t, Library(), 68)
}

// The caller's slice is its own.
func TestLibraryIsACopy(t *testing.T) {
	Library()[0].Name = "spoilt"
	assert.Equal(t, "Titanium White", Library()[0].Name)
}

func TestBlendFacts(t *testing.T) {
	green := known(t, "cadmium-green")
	assert.Equal(t, "slow", green.Facts.Drying, "as its cadmium yellow")
	assert.Equal(t, []string{"cadmium"}, green.Facts.Hazards)
	// One part of 4.35 g/cm³ and four of 3.32, by volume.
	assert.InDelta(t, (4.35+4*3.32)/5, green.Facts.Density, exact)
	assert.Equal(t, "very slow", known(t, "indigo").Facts.Drying, "as its ivory black")
}

// A word of a name finds the paints that have it, before names that are merely alike.
func TestFindSuggestsByAWord(t *testing.T) {
	for word, want := range map[string]string{
		"alizarin":    `did you mean "alizarin-crimson"?`,
		"Ultramarine": `did you mean "ultramarine-blue" or "ultramarine-violet"?`,
		"cobalt":      `did you mean "cobalt-`,
		"titanum":     `did you mean "titanium-white", `, // no name has it
	} {
		_, err := Find(nil, word)
		assert.ErrorContains(t, err, want)
	}
}
