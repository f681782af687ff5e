package grid

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// By hand: twice an inch is 50.8 mm, of which 3 fit across 180 mm and 4 down 242 mm.
func TestCards(t *testing.T) {
	g, err := New(10.5*25.4, 8*25.4, 25.4, Inch)
	require.NoError(t, err)
	cards, err := g.Cards("C3:F7, a1", 180, 242, 2, 100)
	require.NoError(t, err)
	require.Len(t, cards, 5) // 4 × 5 cells: two columns of 2, rows of 2 and 3, and A1
	var names []string
	for _, c := range cards {
		names = append(names, c.From.String()+":"+c.To.String())
	}
	assert.Equal(t, []string{"C3:D4", "E3:F4", "C5:D7", "E5:F7", "A1:A1"}, names)
	b := cards[2].Box
	assert.InDeltaSlice(t, []float64{2 * 25.4, 4 * 25.4, 2 * 25.4, 3 * 25.4}, []float64{float64(b.X), float64(b.Y), float64(b.Width), float64(b.Height)}, 1e-9)

	one, err := g.Cards("C3:F7", 180, 242, 1, 100)
	require.NoError(t, err)
	assert.Len(t, one, 1)

	last, err := g.Cards("K8", 180, 242, 1, 100) // half a cell wide
	require.NoError(t, err)
	assert.InDelta(t, 12.7, float64(last[0].Width), 1e-9)
}

func TestCardsRefuse(t *testing.T) {
	g, err := New(100*25.4, 80*25.4, 25.4, Inch)
	require.NoError(t, err)
	for text, part := range map[string]string{"ZZ1": "cell ZZ1 is off the panel", "C3:": "not a cell", "F7:C3": "runs backwards", "": "not a cell"} {
		_, err := g.Cards(text, 180, 242, 1, 100)
		assert.ErrorContains(t, err, part, text)
	}
	_, err = g.Cards("A1", 180, 242, 8, 100)
	assert.ErrorContains(t, err, "a cell of 1 in, enlarged 8 times, is larger than the 7.09 × 9.53 in that a sheet has room for")
	_, err = g.Cards("A1:CV80", 180, 242, 7, 100)
	assert.ErrorContains(t, err, "make more than 100 cards")
}
