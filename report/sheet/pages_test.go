package sheet

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/grid"
	"tonewright/report/plan"
)

// words lists all texts of a page.
func words(marks []Mark) (list []string) {
	for _, m := range marks {
		switch m := m.(type) {
		case Text:
			list = append(list, m.Words)
		case Clip:
			list = append(list, words(m.Marks)...)
		}
	}
	return list
}

// The same options give the same bytes, as PDF and as SVG.
func TestSameBytes(t *testing.T) {
	for _, as := range []As{Drawing, Photo, Values} {
		o := Options{As: as, Kinds: []Kind{Whole, Panel, Cards, Table}, Cells: "C3:D4"}
		name := "two\u00a0spaces that look alike, two hyphens-\u00ad, Ω\u2126"
		p := planOf(t, plan.Options{Photo: demo, Name: name, Panel: inches(12, 16)}, o)
		var first []byte
		for range 3 { // chance may agree once
			var b bytes.Buffer
			book := Book{Title: name, Pages: pagesOf(t, p, o)}
			require.NoError(t, PDF(&b, book))
			for i := range book.Pages {
				require.NoError(t, SVG(&b, book, i))
			}
			if first == nil {
				first = b.Bytes()
			}
			assert.True(t, bytes.Equal(first, b.Bytes()), as)
		}
	}
}

// Any name prints: what the letters have no shape for becomes a question mark, in both
// kinds of file, and nothing in it is taken for markup.
func TestAnyName(t *testing.T) {
	o := Options{Kinds: []Kind{Whole, Table}}
	name := "Čajník <b>&\"' чайник βραστήρας 茶壶 🫖 \x00\xff"
	opt := plan.Options{Photo: demo, Name: name, Regions: []plan.RegionWish{{Name: name[:len(name)-2], Cells: "E3:J8"}}}
	pages := pagesOf(t, planOf(t, opt, o), o)
	book := Book{Title: name, Program: "test", Pages: pages}
	var pdf bytes.Buffer
	require.NoError(t, PDF(&pdf, book))
	for i := range pages {
		var svg bytes.Buffer
		require.NoError(t, SVG(&svg, book, i))
		decoder := xml.NewDecoder(&svg)
		for {
			_, err := decoder.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			require.NoError(t, err)
		}
	}
	assert.Equal(t, "Čajník <b>&\"' чайник βραστήρας ?? ?", printable("Čajník <b>&\"' чайник βραστήρας 茶壶 🫖", false))

	if _, err := exec.LookPath("pdftotext"); err != nil { // of the same package as pdftoppm
		if os.Getenv("TONEWRIGHT_BROWSER") == "required" {
			t.Fatal("pdftotext is not installed, and TONEWRIGHT_BROWSER=required")
		}
		t.Skip("pdftotext (poppler-utils) is not installed: the text of the PDF is not read back")
	}
	file := filepath.Join(t.TempDir(), "a.pdf")
	require.NoError(t, os.WriteFile(file, pdf.Bytes(), 0o644))
	text, err := exec.Command("pdftotext", "-layout", file, "-").Output()
	require.NoError(t, err)
	assert.Contains(t, string(text), "чайник βραστήρας ?? ?")
}

// Every sheet of the panel is named, and says what it is glued to; a panel that fits on
// one sheet says nothing of gluing.
func TestTileNames(t *testing.T) {
	o := Options{Kinds: []Kind{Panel}}
	pages := pagesOf(t, flatPlan(t, inches(20, 14), o), o)
	require.Len(t, pages, 6)
	for i, p := range pages {
		assert.Contains(t, p.About, fmt.Sprintf("row %d, sheet %d of 6", i/2+1, i+1))
		all := strings.Join(words(p.Marks), " ")
		assert.Equal(t, i > 0, strings.Contains(all, "Cut along the dashed"), "sheet %d", i+1)
		assert.Equal(t, i == 5, strings.Contains(all, "sheet 5 and sheet 4"), "sheet %d", i+1)
	}
	one := pagesOf(t, flatPlan(t, inches(6, 8), o), o)
	require.Len(t, one, 1)
	assert.NotContains(t, strings.Join(words(one[0].Marks), " "), "glue")
}

// Sheets are as few as may be: a panel of 9.5 × 16 in takes three lying A4 sheets, one
// below the other, where upright ones would be four, and two of A3.
func TestFewestSheets(t *testing.T) {
	g, err := grid.New(9.5*25.4, 16*25.4, 25.4, grid.Inch)
	require.NoError(t, err)
	o := Options{}.withDefaults()
	l, on, err := o.tiling(g, o.Paper)
	require.NoError(t, err)
	assert.Equal(t, grid.Millimetres(297), on.Width)
	assert.Len(t, l.Tiles, 3)
	a3, err := grid.ParsePaper("A3")
	require.NoError(t, err)
	l, _, err = o.tiling(g, a3)
	require.NoError(t, err)
	assert.Len(t, l.Tiles, 2)
}

// A mural is refused before the photo is decoded, with what to do instead; on one page it
// is drawn.
func TestTooManySheets(t *testing.T) {
	mural := plan.Options{Photo: demo, Panel: plan.Size{Width: 10000, Height: 3000, Unit: grid.Centimetre}}
	_, err := plan.Sheets(mural, Options{}.Wish())
	assert.ErrorContains(t, err, "a panel of 1000 × 300 cm takes 767 sheets of A4")
	assert.ErrorContains(t, err, "76 sheets with --paper A1")
	assert.ErrorContains(t, err, "--sheets whole")
	_, misused := errors.AsType[plan.UsageError](err)
	assert.True(t, misused)

	o := Options{Kinds: []Kind{Whole}}
	assert.Len(t, pagesOf(t, planOf(t, mural, o), o), 1)
	a1, _ := grid.ParsePaper("A1")
	o = Options{Kinds: []Kind{Panel}, Paper: a1}
	assert.Len(t, pagesOf(t, planOf(t, mural, o), o), 76)

	_, err = plan.Sheets(plan.Options{Photo: demo}, Options{Kinds: []Kind{Cards}}.Wish())
	assert.ErrorContains(t, err, "name them with --cards")
}

// Mirrored, the columns run from right to left, and the words do not.
func TestMirror(t *testing.T) {
	for _, k := range []Kind{Whole, Panel} {
		o := Options{Kinds: []Kind{k}, Mirror: true}
		pages := pagesOf(t, flatPlan(t, inches(6, 8), o), o)
		require.Len(t, pages, 1)
		var at [2]grid.Millimetres
		for _, m := range pages[0].Marks {
			if m, ok := m.(Text); ok && (m.Words == "A" || m.Words == "F") {
				at[map[string]int{"A": 0, "F": 1}[m.Words]] = m.At.X
			}
		}
		assert.InDelta(t, 5*25.4, float64(at[0]-at[1]), 1e-6, k)
		assert.Contains(t, pages[0].About, "mirrored")
	}
}

// A card has the names of the cells around it, and none off the panel.
func TestNeighbours(t *testing.T) {
	o := Options{Cells: "A3"}
	pages := pagesOf(t, flatPlan(t, inches(6, 8), o), o)
	require.Len(t, pages, 1)
	all := words(pages[0].Marks)
	for _, name := range []string{"A2", "A4", "B3"} {
		assert.Contains(t, all, name)
	}
	assert.NotContains(t, all, "@3")
}
