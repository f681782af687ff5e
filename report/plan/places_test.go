package plan

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"tonewright/grid"
)

// By hand, 4 × 2 cells of 2 × 2 pixels: label 1 fills B1 and half of C1, label 2
// has a single pixel, a quarter of D2; label 3 has none.
func TestCellsOf(t *testing.T) {
	g := testGrid(t, 40, 20)
	got := cellsOf(g, 8, 4, 4, digits(
		"00111000",
		"00111000",
		"00000002",
		"00000000"))
	assert.Equal(t, []string{"B1", "C1"}, names(got[1]))
	assert.Equal(t, []string{"D2"}, names(got[2]))
	assert.Empty(t, got[3])
	assert.Equal(t, []string{"A1", "C1", "D1", "A2", "B2", "C2", "D2"}, names(got[0]))
	assert.Equal(t, []string{"B1", "C1", "D2"}, names(withColours(got[1], [][]grid.Cell{got[2], got[1]})))
}

// A speck of a sixteenth of a cell is in the cell that holds all of it, and not a
// word is lost of what is thinly spread: by hand, 2 cells of 4 × 4 pixels.
func TestCellsOfSmallThings(t *testing.T) {
	g := testGrid(t, 20, 10)
	got := cellsOf(g, 8, 4, 2, digits(
		"00000000",
		"01000000",
		"00000000",
		"00000000"))
	assert.Equal(t, []string{"A1"}, names(got[1]))
	assert.Equal(t, []grid.Cell{{Column: 1}}, fullest(g, 8, 4, digits("01000110", "00000000", "00000000", "00000000"), 1))
}

func digits(rows ...string) (of []uint8) {
	for _, digit := range strings.Join(rows, "") {
		of = append(of, uint8(digit-'0'))
	}
	return of
}

// A name is what can be printed of it: no codes, nothing that turns the line round; of
// blanks alone none is left.
func TestNamesAreClean(t *testing.T) {
	assert.Equal(t, "gnp.exe", clean("\u202egnp.exe"))
	assert.Equal(t, "a b", clean(" a\nb\u200f "))
	assert.Empty(t, clean(" \t\u2066 "))
	assert.Equal(t, "kettle", Options{Name: "  ", Photo: "a/kettle.jpg"}.withDefaults().Name)
	assert.Equal(t, "painting", Options{Photo: "a/ .jpg"}.withDefaults().Name)
}
