package sheet

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Every row of every contour stands in the table once and in order, under its heading; no
// column ends with a heading and nothing under it, or is longer than the page.
func TestColumnsHoldEveryRow(t *testing.T) {
	for fit := 20; fit < 60; fit++ {
		var blocks [][]row
		var want, got []string
		for n := range 30 {
			block := []row{heading(fmt.Sprint("contour ", n)), tableHead}
			for i := range 1 + n*7%40 {
				block = append(block, row{words: [5]string{fmt.Sprint(n, "-", i)}})
				want = append(want, fmt.Sprint(n, "-", i))
			}
			blocks = append(blocks, append(block, row{}))
		}
		for _, column := range columns(blocks, fit) {
			assert.LessOrEqual(t, len(column), fit)
			for i, r := range column {
				switch {
				case r.bold:
					assert.Equal(t, tableHead, column[i+1])
					assert.NotEmpty(t, column[i+2].words[0], "nothing under %s", r.words[0])
				case r != tableHead && r != (row{}):
					got = append(got, r.words[0])
				}
			}
			assert.True(t, len(column) == 0 || column[0].bold, "a column begins with a heading")
		}
		assert.Equal(t, want, got)
	}
}
