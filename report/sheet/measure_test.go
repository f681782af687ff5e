package sheet

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"tonewright/grid"
	"tonewright/report/plan"
)

// trueTo is how near a printed length must come to what it stands for, in millimetres.
const trueTo = 0.2

// print300 is the fineness that pages are drawn at to be measured: a dot is 0.085 mm.
const print300 = 300

// raster is a page as a printer would draw it.
type raster struct {
	*image.Gray
	dots float64 // to the inch
}

// printed writes the pages as PDF and has them drawn by another program, pdftoppm of
// poppler; the test is left out where there is none, but not where TONEWRIGHT_BROWSER
// says that all that tests use must be there.
func printed(t *testing.T, pages []Page) []raster {
	t.Helper()
	if _, err := exec.LookPath("pdftoppm"); err != nil {
		if os.Getenv("TONEWRIGHT_BROWSER") == "required" {
			t.Fatal("pdftoppm is not installed, and TONEWRIGHT_BROWSER=required")
		}
		t.Skip("pdftoppm (poppler-utils) is not installed: printed lengths are not measured")
	}
	folder := t.TempDir()
	var b bytes.Buffer
	require.NoError(t, PDF(&b, Book{Title: "test", Program: "test", Pages: pages}))
	file := filepath.Join(folder, "sheets.pdf")
	require.NoError(t, os.WriteFile(file, b.Bytes(), 0o644))
	said, err := exec.Command("pdftoppm", "-gray", "-r", fmt.Sprint(print300), file, filepath.Join(folder, "page")).CombinedOutput()
	require.NoError(t, err, string(said))
	require.Empty(t, string(said), "pdftoppm complains of the file")
	names, err := filepath.Glob(filepath.Join(folder, "page*.pgm")) // in order: the numbers are padded
	require.NoError(t, err)
	require.Len(t, names, len(pages))
	rasters := make([]raster, len(names))
	for i, name := range names {
		data, err := os.ReadFile(name)
		require.NoError(t, err)
		rasters[i] = readPGM(t, data)
	}
	return rasters
}

// readPGM reads a gray raster as pdftoppm writes it: a head of four words, then a byte
// for each dot.
func readPGM(t *testing.T, data []byte) raster {
	t.Helper()
	var w, h int
	_, err := fmt.Sscanf(string(data[:40]), "P5\n%d %d\n255\n", &w, &h)
	require.NoError(t, err)
	return raster{&image.Gray{Pix: data[len(data)-w*h:], Stride: w, Rect: image.Rect(0, 0, w, h)}, print300}
}

func (r raster) dot(mm float64) int { return int(math.Round(mm / 25.4 * r.dots)) }
func (r raster) mm(dot float64) float64 {
	return dot / r.dots * 25.4
}

// uprights returns where dark upright lines stand that run through the band from y0 to y1
// all the way, between x0 and x1; all in millimetres.
func (r raster) uprights(x0, x1, y0, y1 float64) []float64 {
	return r.lines(x0, x1, y0, y1, func(x, y int) uint8 { return r.GrayAt(x, y).Y })
}

// levels returns where dark level lines lie, likewise: between y0 and y1, through the
// band from x0 to x1.
func (r raster) levels(x0, x1, y0, y1 float64) []float64 {
	return r.lines(y0, y1, x0, x1, func(y, x int) uint8 { return r.GrayAt(x, y).Y })
}

func (r raster) lines(from, to, band0, band1 float64, at func(along, across int) uint8) []float64 {
	var found []float64
	sum, weight := 0.0, 0.0
	for i := r.dot(from); i <= r.dot(to); i++ {
		dark := 0.0
		for j := r.dot(band0); j < r.dot(band1); j++ {
			dark += 255 - float64(at(i, j))
		}
		if dark /= 255 * float64(r.dot(band1)-r.dot(band0)); dark > 0.1 {
			sum, weight = sum+dark*(float64(i)+0.5), weight+dark
			continue
		}
		if weight > 0 {
			found = append(found, r.mm(sum/weight))
			sum, weight = 0, 0
		}
	}
	return found
}

// rule measures the check rule of a page: how far its long marks stand from the first,
// millimetres above the line and inches below. It is found as the lowest level line of
// four inches or so from the left margin.
func (r raster) rule(t *testing.T) (above, below []float64) {
	t.Helper()
	high := r.mm(float64(r.Rect.Dy()))
	base := r.levels(20, 100, high-25, high-8)
	require.Len(t, base, 1, "the rule's line")
	for _, side := range []struct {
		to *[]float64
		at float64
	}{{&above, base[0] - 2.5}, {&below, base[0] + 2.5}} {
		marks := r.uprights(5, 114, side.at-0.2, side.at+0.2)
		for _, m := range marks {
			*side.to = append(*side.to, m-marks[0])
		}
	}
	return above, below
}

// flatPlan is what sheets show of a picture without anything in it, so that all lines on
// its pages are the grid's.
func flatPlan(t *testing.T, panel plan.Size, o Options) *plan.SheetPlan {
	t.Helper()
	return squarePlan(t, panel, image.Rectangle{}, o)
}

// squarePlan is the same with a black rectangle in it, in pixels of a picture 600 wide.
func squarePlan(t *testing.T, panel plan.Size, black image.Rectangle, o Options) *plan.SheetPlan {
	t.Helper()
	m := image.NewGray(image.Rect(0, 0, 600, int(600*panel.Height/panel.Width)))
	for i := range m.Pix {
		if m.Pix[i] = 255; (image.Point{X: i % m.Stride, Y: i / m.Stride}).In(black) {
			m.Pix[i] = 0
		}
	}
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, m))
	file := filepath.Join(t.TempDir(), "flat.png")
	require.NoError(t, os.WriteFile(file, b.Bytes(), 0o644))
	return planOf(t, plan.Options{Photo: file, Panel: panel}, o)
}

func planOf(t *testing.T, opt plan.Options, o Options) *plan.SheetPlan {
	t.Helper()
	p, err := plan.Sheets(opt, o.Wish())
	require.NoError(t, err)
	return p
}

func pagesOf(t *testing.T, p *plan.SheetPlan, o Options) []Page {
	t.Helper()
	pages, err := Pages(p, o)
	require.NoError(t, err)
	return pages
}

func inches(w, h float64) plan.Size {
	return plan.Size{Width: grid.Millimetres(w * 25.4), Height: grid.Millimetres(h * 25.4), Unit: grid.Inch}
}
