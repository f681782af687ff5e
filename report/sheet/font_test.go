package sheet

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"
	"testing"

	"codeberg.org/go-pdf/fpdf"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
)

// Letters are as wide as the PDF library, which reads the same fonts by itself, takes them.
func TestWidths(t *testing.T) {
	f := fpdf.New("P", "mm", "A4", "")
	f.AddUTF8FontFromBytes("Go", "", goregular.TTF)
	f.AddUTF8FontFromBytes("Go", "B", gobold.TTF)
	for _, words := range []string{"Draw the grid on the panel, 1 : 1.25", "βραστήρας чайник Čajník", "12 × 16 in “…”"} {
		for _, bold := range []bool{false, true} {
			style := map[bool]string{true: "B"}[bold]
			f.SetFont("Go", style, 100/25.4*72)
			assert.InDelta(t, f.GetStringWidth(words), float64(widthOf(words, 100, bold)), 0.2*float64(len([]rune(words))), words) // it rounds each letter to a thousandth
		}
	}
	assert.Greater(t, len(faceOf(false)), 600) // the fonts say that they hold the WGL4 set, which has 652
}

func TestWrap(t *testing.T) {
	lines := wrap("it must read 100\u00a0mm and 4\u00a0in here", 20, 2, false)
	require.Greater(t, len(lines), 1)
	for _, l := range lines {
		assert.LessOrEqual(t, float64(widthOf(l, 2, false)), 20.0, l)
		assert.NotRegexp(t, `100$|4$`, l)
	}
	assert.Equal(t, "abc", shorten("abc", 100, 2, false))
	assert.Equal(t, "…", shorten("abc", 0, 2, false))
}

// The file asks to be printed at its own size, and its last table of places leads to the
// catalogue that says so.
func TestUnscaled(t *testing.T) {
	o := Options{Kinds: []Kind{Whole}}
	var b bytes.Buffer
	require.NoError(t, PDF(&b, Book{Title: "endobj >> stream", Pages: pagesOf(t, flatPlan(t, inches(6, 8), o), o)}))
	end := regexp.MustCompile(`startxref\n(\d+)\n%%EOF\n$`).FindSubmatch(b.Bytes())
	require.NotNil(t, end)
	at, err := strconv.Atoi(string(end[1]))
	require.NoError(t, err)
	table := regexp.MustCompile(`^xref\n(\d+) 1\n(\d{10}) 00000 n \ntrailer\n`).FindSubmatch(b.Bytes()[at:])
	require.NotNil(t, table)
	object, err := strconv.Atoi(string(table[2]))
	require.NoError(t, err)
	catalogue := b.Bytes()[object:at]
	assert.True(t, bytes.HasPrefix(catalogue, fmt.Appendf(nil, "%s 0 obj\n", table[1])))
	assert.Contains(t, string(catalogue), "/PrintScaling /None")
	assert.Contains(t, string(b.Bytes()[at:]), fmt.Sprintf("/Root %s 0 R", table[1]))

	_, err = unscaled([]byte("no PDF"))
	assert.Error(t, err)
}
