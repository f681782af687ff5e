package plan

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze"
	"tonewright/analyze/colour"
)

// striped is a study of upright stripes of piles, each so many pixels broad.
func striped(h int, looks []colour.Lab, piles, breadths []int) (*analyze.Picture, []uint16) {
	var row []uint16
	for i, pile := range piles {
		for range breadths[i] {
			row = append(row, uint16(pile))
		}
	}
	p := &analyze.Picture{Width: len(row), Height: h}
	var of []uint16
	for range h {
		of = append(of, row...)
		for _, pile := range row {
			c := looks[pile]
			p.Lab = append(p.Lab, float32(c.L), float32(c.A), float32(c.B))
		}
	}
	return p, of
}

// A dichromat's sight is a projection: it takes a colour for what it sees of it, and that
// for itself ([Brettel1997]). A red and that are one to it, and a border between them is
// lost; a lighter one is not.
func TestLostBorders(t *testing.T) {
	deutan := colour.Sight{Kind: "deutan", Severity: 1}
	red := colour.Lab{L: 45, A: 45, B: 25}
	twin := deutan.See(red)
	require.Greater(t, colour.DeltaE00(red, twin), 20.0)
	require.Less(t, deutan.Apart(red, twin), 1.0)
	light := colour.Lab{L: 75, A: twin.A, B: twin.B}
	looks := []colour.Lab{red, twin, light}
	const h = 300

	columns := func(piles, breadths []int) (at []int) {
		study, of := striped(h, looks, piles, breadths)
		lost := lostBorders(study, of, deutan)
		for x := range study.Width {
			n := 0
			for y := range h {
				if lost[y*study.Width+x] {
					n++
				}
			}
			if n > 0 {
				at = append(at, x)
				assert.Equal(t, h, n, "all of the column")
			}
		}
		return at
	}
	assert.Equal(t, []int{199}, columns([]int{0, 1}, []int{200, 200}), "one line, between the two")
	assert.Empty(t, columns([]int{0, 2}, []int{200, 200}), "the lighter side is seen")
	assert.Empty(t, columns([]int{0, 1, 2}, []int{200, 2, 200}), "a thin twin between the two is no side of a border")
	assert.Equal(t, []int{200}, columns([]int{0, 2, 1}, []int{200, 2, 200}), "nor is a thin light one, and the sides are one to it past it")
	assert.Equal(t, []int{199, 239}, columns([]int{2, 0, 1, 0}, []int{150, 50, 40, 160}), "a broad one has two")
}

// A lost border counts from a finger's breadth on: here a light thing has a notch in it,
// so many pixels high, of what the red beside it looks like.
func TestLostBordersAreNoSpecks(t *testing.T) {
	deutan := colour.Sight{Kind: "deutan", Severity: 1}
	red := colour.Lab{L: 45, A: 45, B: 25}
	twin := deutan.See(red)
	looks := []colour.Lab{red, twin, {L: 75, A: twin.A, B: twin.B}}
	for high, want := range map[int]bool{7: false, 40: true} {
		study, of := striped(300, looks, []int{0, 2}, []int{200, 200})
		notch, as := striped(high, looks, []int{0, 1}, []int{200, 200})
		copy(of[100*400:], as)
		copy(study.Lab[3*100*400:], notch.Lab)
		assert.Equal(t, want, slices.Contains(lostBorders(study, of, deutan), true), "%d pixels", high)
	}
}
