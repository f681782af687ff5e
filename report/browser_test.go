package report

import (
	"bytes"
	"context"
	"image/color"
	"image/png"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/report/plan"
)

// browser starts an empty Chromium, or skips the test where there is none.
// Required where TONEWRIGHT_BROWSER=required.
func browser(t *testing.T) context.Context {
	path, err := exec.LookPath("chromium")
	if err != nil {
		if os.Getenv("TONEWRIGHT_BROWSER") == "required" {
			t.Fatal("chromium is not installed, and TONEWRIGHT_BROWSER=required")
		}
		t.Skip("chromium is not installed: the report is not tried in a browser")
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.NoSandbox,
		chromedp.Flag("disable-gpu", true), chromedp.Flag("no-first-run", true),
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-background-networking", true),
		chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true),
		chromedp.UserDataDir(t.TempDir()))
	ctx, cancel := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	ctx, cancel = context.WithTimeout(ctx, 2*time.Minute)
	t.Cleanup(cancel)
	return ctx
}

// open writes the plan's report and opens it, noting requests and complaints.
func open(t *testing.T, ctx context.Context, p *plan.Plan, width int64) (requests, complaints *[]string) {
	var page bytes.Buffer
	require.NoError(t, HTML(&page, p))
	file := filepath.Join(t.TempDir(), "report.html")
	require.NoError(t, os.WriteFile(file, page.Bytes(), 0o644))

	requests, complaints = &[]string{}, &[]string{}
	address := (&url.URL{Scheme: "file", Path: file}).String()
	require.NoError(t, chromedp.Listen(ctx, func(event any) {
		switch e := event.(type) {
		case *network.EventRequestWillBeSent:
			if u := e.Request.URL; u != address && !strings.HasPrefix(u, "data:") {
				*requests = append(*requests, u)
			}
		case *runtime.EventExceptionThrown:
			*complaints = append(*complaints, e.ExceptionDetails.Text)
		case *runtime.EventConsoleAPICalled:
			*complaints = append(*complaints, string(e.Type))
		case *log.EventEntryAdded:
			*complaints = append(*complaints, e.Entry.Text)
		}
	}))
	_, err := chromedp.Call(ctx, network.Enable, network.EnableParams{})
	require.NoError(t, err)
	_, err = chromedp.Call(ctx, log.Enable, cdp.Empty{})
	require.NoError(t, err)
	require.NoError(t, chromedp.Do(ctx, chromedp.EmulateViewport(width, 900), chromedp.Navigate(address)))
	return requests, complaints
}

// ask evaluates an expression in the page.
func ask[T any](t *testing.T, ctx context.Context, expression string) T {
	answer, err := chromedp.Run(ctx, chromedp.Evaluate[T](expression))
	require.NoError(t, err)
	return answer
}

func TestReportInBrowser(t *testing.T) {
	ctx := browser(t)
	requests, complaints := open(t, ctx, demoPlan(t), 1280)

	shown := func(selector string) bool {
		return ask[string](t, ctx, `getComputedStyle(document.querySelector("`+selector+`")).display`) != "none"
	}
	assert.True(t, shown(".stage .photo"))
	assert.False(t, shown(".stage .five"))
	assert.True(t, shown(".stage .grid"))
	assert.False(t, shown(".stage .areas"))

	// By pointer.
	require.NoError(t, chromedp.Do(ctx, chromedp.Click(chromedp.CSS(`label[for=v-five]`)), chromedp.Click(chromedp.CSS(`label[for=show-areas]`))))
	assert.False(t, shown(".stage .photo"))
	assert.True(t, shown(".stage .five"))
	assert.True(t, shown(".stage .areas"))

	// By keyboard: the arrow keys go through the views, the space bar sets the grid.
	require.NoError(t, chromedp.Do(ctx, chromedp.Focus(chromedp.CSS(`#v-five`)), chromedp.KeyEvent(kb.ArrowRight)))
	assert.True(t, shown(".stage .nine"))
	require.NoError(t, chromedp.Do(ctx, chromedp.Focus(chromedp.CSS(`#show-grid`)), chromedp.KeyEvent(" ")))
	assert.False(t, shown(".stage .grid"))

	assert.Empty(t, *requests, "the page asks nobody for anything")
	assert.Empty(t, *complaints)
}

// Nothing is wider than the screen, every image is drawn, and whatever is to be
// pressed is at least 44 pixels high, on a phone as on a desk.
func TestReportFits(t *testing.T) {
	ctx := browser(t)
	p := workedPlan(t) // it has all that a report can have
	for _, width := range []int64{390, 820, 1280} {
		open(t, ctx, p, width)
		wide := ask[[]string](t, ctx, `[...document.querySelectorAll("body *")].filter(e => !e.closest(".scroll,.skip,caption,svg") && e.getBoundingClientRect().right > innerWidth + 1).map(e => e.className || e.tagName)`)
		broken := ask[[]string](t, ctx, `[...document.images].filter(i => i.complete && i.naturalWidth == 0 && i.loading != "lazy").map(i => i.alt)`)
		small := ask[[]string](t, ctx, `[...document.querySelectorAll("label,summary,nav a")].filter(e => e.getClientRects().length && e.getBoundingClientRect().height < 43.5).map(e => e.textContent)`)
		views := ask[[]string](t, ctx, `[...document.querySelectorAll(".view")].filter(e => getComputedStyle(e).display != "none").map(e => e.getAttribute("class"))`)
		assert.Equal(t, []string{"view photo paper"}, views, "only the chosen view shows at %d pixels", width)
		assert.Empty(t, wide, "wider than %d pixels", width)
		assert.Empty(t, broken, "images that do not draw")
		assert.Empty(t, small, "targets under 44 pixels")
	}
}

// On a phone the picture comes before the set-up, which has nothing in it that takes the
// focus, so that what is pressed comes in the order that is seen; elsewhere after it. The
// halves of a swatch are named on the page, once, at any width.
func TestOrderOnPhone(t *testing.T) {
	ctx := browser(t)
	p := composedPlan(t)
	for _, width := range []int64{390, 820, 1280} {
		open(t, ctx, p, width)
		first := ask[bool](t, ctx, `document.getElementById("picture").getBoundingClientRect().top < document.getElementById("setup").getBoundingClientRect().top`)
		assert.Equal(t, width == 390, first, "at %d pixels", width)
		assert.Empty(t, ask[[]string](t, ctx, `[...document.querySelectorAll("#setup :is(a,input,summary,button,[tabindex])")].map(e => e.outerHTML)`))
		assert.Equal(t, width == 390, ask[bool](t, ctx, `document.querySelector("nav [href='#setup']").getBoundingClientRect().height > 0`))

		head := ask[bool](t, ctx, `getComputedStyle(document.querySelector(".recipes thead")).display != "none"`)
		halves := ask[[]string](t, ctx, `[...document.querySelector(".swatch").children].map(e => getComputedStyle(e, "::before").content)`)
		named := []string{`"aim"`, `"mix"`}
		if head {
			named = []string{"none", "none"}
		}
		assert.Equal(t, named, halves, "at %d pixels", width)
	}
}

// The gray view shows each place as the gray of its own lightness: the page's filter
// is held against grays computed from L*, by the four flat blocks of a picture.
func TestGrayViewIsLightness(t *testing.T) {
	ctx := browser(t)
	p := blocksPlan(t, "a", "b")
	open(t, ctx, p, 1280)
	require.NoError(t, chromedp.Do(ctx, chromedp.Click(chromedp.CSS(`label[for=v-gray]`)), chromedp.Click(chromedp.CSS(`label[for=show-grid]`))))
	shot, err := chromedp.Run(ctx, chromedp.Screenshot(chromedp.CSS(`.stage .gray svg`)))
	require.NoError(t, err)
	m, err := png.Decode(bytes.NewReader(shot))
	require.NoError(t, err)
	margin := 480.0 / 26
	scale := float64(m.Bounds().Dx()) / (480 + 1.5*margin)
	for _, at := range [][2]int{{120, 90}, {360, 90}, {120, 270}, {360, 270}} {
		l := p.Pictures.Photo.At(at[1]*480 + at[0]).L
		got := color.NRGBAModel.Convert(m.At(int((float64(at[0])+margin)*scale), int((float64(at[1])+margin)*scale))).(color.NRGBA)
		for _, level := range []uint8{got.R, got.G, got.B} {
			assert.InDelta(t, float64(grayOf(l)), float64(level), 3, "%v: L* %.1f shown as %v", at, l, got)
		}
	}
}
