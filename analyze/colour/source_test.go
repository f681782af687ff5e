package colour

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sourceTable returns the rows of a table of tab-separated columns under a
// heading line in ../shared/reference, beside the repository, and skips the test
// where that folder is missing: the packed tables serve without it.
func sourceTable(t *testing.T, name string) [][]string {
	t.Helper()
	root, err := filepath.Abs(".")
	require.NoError(t, err)
	for {
		if _, err := os.Stat(filepath.Join(root, "go.mod")); err == nil {
			break
		}
		require.NotEqual(t, root, filepath.Dir(root), "no go.mod above the package")
		root = filepath.Dir(root)
	}
	text, err := os.ReadFile(filepath.Join(root, "..", "shared", "reference", name))
	if err != nil {
		t.Skipf("the source table %s is not beside the repository, so the packed one is not compared with it", name)
	}
	var rows [][]string
	for _, line := range tableLines(t, string(text))[1:] {
		rows = append(rows, strings.Split(line, "\t"))
	}
	return rows
}

func TestRenotationIsPackedRight(t *testing.T) {
	packed := map[Munsell][2]float64{}
	for _, line := range tableLines(t, renotation) {
		row := wholeNumbers(line)
		for k := 2; k < len(row); k += 2 {
			packed[Munsell{float64(row[1]) / 10, float64(row[0]), float64(k)}] =
				[2]float64{float64(row[k]) / 1e4, float64(row[k+1]) / 1e4}
		}
	}
	rows := sourceTable(t, "munsell_real.tsv")
	assert.Len(t, packed, len(rows))
	for _, r := range rows {
		m := notation(t, r[0]+" "+r[1]+"/"+r[2])
		assert.Equal(t, [2]float64{decimal(t, r[3]), decimal(t, r[4])}, packed[m], "%v", r)
		assert.Equal(t, decimal(t, r[5]), magnesiumOxide[int(m.Value)-1], "%v", r)
	}
}

func TestNamesArePackedRight(t *testing.T) {
	names := map[string]string{}
	for _, r := range sourceTable(t, "iscc_nbs_centroids.txt") {
		names[r[0]] = r[1]
	}
	rows := sourceTable(t, "iscc_nbs_blocks.txt")
	assert.Len(t, rows, 932)
	for _, r := range rows { // the corner of the minima is in the block
		m := Munsell{decimal(t, r[1]), decimal(t, r[3]), decimal(t, r[5])}
		assert.Equal(t, names[r[7]], m.Name(), "%v", r)
	}
}

func TestSpectraArePackedRight(t *testing.T) {
	for _, r := range sourceTable(t, "cie1931_2deg_5nm.tsv") {
		if i, ok := band(t, r[0]); ok {
			for k := range observer {
				assert.Equal(t, decimal(t, r[1+k]), observer[k][i], "%v", r)
			}
		}
	}
	for _, r := range sourceTable(t, "illuminants_5nm_380_780.tsv") {
		if i, ok := band(t, r[0]); ok {
			assert.Equal(t, decimal(t, r[5]), daylight[i], "%v", r)
			assert.Equal(t, decimal(t, r[2]), lightC[i], "%v", r)
		}
	}
}

// band returns the band of a wavelength, if it is one of ours.
func band(t *testing.T, nm string) (int, bool) {
	t.Helper()
	v := int(decimal(t, nm))
	return (v - 400) / 10, v >= 400 && v <= 700 && v%10 == 0
}
