package colour

import (
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Two tolerances: half the last digit of a figure printed to four decimals, and
// what only rounding in the last bits may cost.
const (
	printed = 5e-5
	exact   = 1e-9
)

// tableLines returns the lines of a table, without its remarks.
func tableLines(t *testing.T, text string) []string {
	t.Helper()
	var lines []string
	for line := range strings.Lines(text) {
		if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "#") {
			lines = append(lines, line)
		}
	}
	return lines
}

// testTable returns the lines of a file in testdata, without its remarks.
func testTable(t *testing.T, name string) []string {
	t.Helper()
	text, err := os.ReadFile("testdata/" + name)
	require.NoError(t, err)
	return tableLines(t, string(text))
}

// randomLabs returns n colours, the same on every run, from well inside sRGB to
// far outside it.
func randomLabs(n int) []Lab {
	r := rand.New(rand.NewPCG(1, 2))
	labs := make([]Lab, n)
	for i := range labs {
		spread := []float64{2, 20, 120}[i%3]
		labs[i] = Lab{100 * r.Float64(), spread * (2*r.Float64() - 1), spread * (2*r.Float64() - 1)}
	}
	return labs
}

// apart returns the distance of two hues on a circle of turn.
func apart(a, b, turn float64) float64 {
	d := wrap(a-b, turn)
	return min(d, turn-d)
}
