package sheet

import (
	"bytes"
	"context"
	"image"
	"image/draw"
	"image/png"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/grid"
	"tonewright/report/plan"
)

// browsed has Chromium draw a page as SVG at three times its 96 dots to the inch; the test
// is left out where there is no Chromium, but not where TONEWRIGHT_BROWSER says that all
// that tests use must be there.
func browsed(t *testing.T, p Page) raster {
	t.Helper()
	path, err := exec.LookPath("chromium")
	if err != nil {
		if os.Getenv("TONEWRIGHT_BROWSER") == "required" {
			t.Fatal("chromium is not installed, and TONEWRIGHT_BROWSER=required")
		}
		t.Skip("chromium is not installed: SVG is not measured")
	}
	var b bytes.Buffer
	require.NoError(t, SVG(&b, Book{Title: "test <&>", Pages: []Page{p}}, 0))
	file := filepath.Join(t.TempDir(), "sheet.svg")
	require.NoError(t, os.WriteFile(file, b.Bytes(), 0o644))
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox,
		chromedp.Flag("disable-gpu", true), chromedp.Flag("no-first-run", true), chromedp.UserDataDir(t.TempDir()))
	ctx, cancel := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	ctx, cancel = context.WithTimeout(ctx, 2*time.Minute)
	t.Cleanup(cancel)
	css := func(m grid.Millimetres) int64 { return int64(m/25.4*96 + 1) }
	require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(css(p.Width), css(p.Height), chromedp.EmulateScale(3)),
		chromedp.Navigate((&url.URL{Scheme: "file", Path: file}).String())))
	shot, err := chromedp.Run(ctx, chromedp.CaptureScreenshot())
	require.NoError(t, err)
	m, err := png.Decode(bytes.NewReader(shot))
	require.NoError(t, err)
	gray := image.NewGray(image.Rect(0, 0, int(float64(p.Width)/25.4*288), int(float64(p.Height)/25.4*288)))
	draw.Draw(gray, gray.Rect, m, m.Bounds().Min, draw.Src)
	return raster{gray, 288}
}

// A page as SVG measures the same as in PDF.
func TestSVGIsTrue(t *testing.T) {
	slow(t)
	o := Options{Kinds: []Kind{Panel}}
	r := browsed(t, pagesOf(t, flatPlan(t, inches(6, 8), o), o)[0])
	above, below := r.rule(t)
	assertLengths(t, []float64{0, 50, 100}, above, "rule")
	assertLengths(t, []float64{0, 25.4, 50.8, 76.2, 101.6}, below, "rule")
	assertPitch(t, r.uprights(14, 168.5, 60, 62), 25.4, 7)
	assertPitch(t, r.levels(40, 41, 20, 265), 25.4, 9)
}

// A photo in SVG fills the panel's sides and no more: the demo's is dark in all corners.
func TestSVGPhoto(t *testing.T) {
	slow(t)
	o := Options{Kinds: []Kind{Whole}, As: Photo}
	p := planOf(t, plan.Options{Photo: demo}, o)
	r := browsed(t, pagesOf(t, p, o)[0])
	v, _ := wholeView(p.Grid.Layout(), room(grid.Paper{Width: 297, Height: 210}), false)
	b := v.box()
	level := func(x, y grid.Millimetres) uint8 { return r.GrayAt(r.dot(float64(x)), r.dot(float64(y))).Y }
	for _, x := range [][2]grid.Millimetres{{b.X, 1}, {b.X + b.Width, -1}} {
		for _, y := range [][2]grid.Millimetres{{b.Y, 1}, {b.Y + b.Height, -1}} {
			assert.Less(t, level(x[0]+0.7*x[1], y[0]+0.7*y[1]), uint8(160), "inside of %.1f, %.1f", x[0], y[0])
			assert.Equal(t, uint8(255), level(x[0]-0.7*x[1], y[0]-0.7*y[1]), "outside of %.1f, %.1f", x[0], y[0])
		}
	}
}
