package report

import (
	"bytes"
	"context"
	"fmt"
	"image/color"
	"image/png"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"tonewright/analyze/colour"
)

// ground returns the colour that most of an element's screenshot has.
func ground(t *testing.T, ctx context.Context, selector string) colour.Lab {
	shot, err := chromedp.Run(ctx, chromedp.Screenshot(chromedp.CSS(selector)))
	require.NoError(t, err)
	m, err := png.Decode(bytes.NewReader(shot))
	require.NoError(t, err)
	count := map[color.RGBA]int{}
	var most color.RGBA
	for y := range m.Bounds().Dy() {
		for x := range m.Bounds().Dx() {
			c := color.RGBAModel.Convert(m.At(m.Bounds().Min.X+x, m.Bounds().Min.Y+y)).(color.RGBA)
			if count[c]++; count[c] > count[most] {
				most = c
			}
		}
	}
	return colour.FromSRGB(float64(most.R)/255, float64(most.G)/255, float64(most.B)/255)
}

func seenBy(t *testing.T, ctx context.Context, kind emulation.SetEmulatedVisionDeficiencyType) {
	_, err := chromedp.Call(ctx, emulation.SetEmulatedVisionDeficiency, emulation.SetEmulatedVisionDeficiencyParams{Type: kind})
	require.NoError(t, err)
}

// The chosen view's button stands out from the others in lightness, whoever looks:
// [WCAG22] 1.4.11. The browser's own simulation is a second implementation of sight.
func TestChosenViewShowsToEverySight(t *testing.T) {
	ctx := browser(t)
	open(t, ctx, demoPlan(t), 1280)
	for _, kind := range []emulation.SetEmulatedVisionDeficiencyType{
		emulation.SetEmulatedVisionDeficiencyTypeNone, emulation.SetEmulatedVisionDeficiencyTypeProtanopia, emulation.SetEmulatedVisionDeficiencyTypeDeuteranopia,
		emulation.SetEmulatedVisionDeficiencyTypeTritanopia, emulation.SetEmulatedVisionDeficiencyTypeAchromatopsia,
	} {
		seenBy(t, ctx, kind)
		chosen, other := ground(t, ctx, `label[for=v-photo]`), ground(t, ctx, `label[for=v-gray]`)
		assert.GreaterOrEqual(t, contrast(chosen, other), float64(markContrast), "%s: %v and %v", kind, chosen, other)
	}
	weight := func(selector string) string {
		return ask[string](t, ctx, `getComputedStyle(document.querySelector("`+selector+`")).fontWeight`)
	}
	assert.NotEqual(t, weight(`label[for=v-photo]`), weight(`label[for=v-gray]`))

	// The simulation is at work: it takes the colour out of a red.
	ask[bool](t, ctx, `(document.querySelector("label[for=v-photo]").style.background="#c02020",true)`)
	assert.Less(t, ground(t, ctx, `label[for=v-photo]`).Chroma(), 2.0)
	seenBy(t, ctx, emulation.SetEmulatedVisionDeficiencyTypeNone)
	assert.Greater(t, ground(t, ctx, `label[for=v-photo]`).Chroma(), 50.0)
}

// faintText is a script that lists the shown texts whose contrast with what is behind
// them is under 4.5, or 3 where they are large. Behind a text of a drawing is its halo, its box
// or the field of the circle; behind any other the nearest ground.
const faintText = `(() => {
  const parse = c => (c.match(/[\d.]+/g) || []).map(Number);
  const clear = c => c == "none" || c == "transparent" || parse(c)[3] === 0;
  const light = c => { const [r, g, b] = parse(c).map(v => (v /= 255) <= .04045 ? v / 12.92 : ((v + .055) / 1.055) ** 2.4); return .2126 * r + .7152 * g + .0722 * b; };
  const behind = e => {
    const style = getComputedStyle(e);
    if (e.ownerSVGElement) {
      if (!clear(style.stroke)) return style.stroke;
      const box = e.parentNode.querySelector(":scope > rect") || e.closest(".wheel")?.querySelector(".field");
      if (box) return getComputedStyle(box).fill;
      e = e.closest(".stage") || e.closest("svg");
    }
    for (; e; e = e.parentElement) { const b = getComputedStyle(e).backgroundColor; if (!clear(b)) return b; }
    return "rgb(255, 255, 255)";
  };
  const faint = [];
  for (const e of document.querySelectorAll("body *")) {
    if (![...e.childNodes].some(n => n.nodeType == 3 && n.data.trim()) || !e.getClientRects().length || e.closest("defs,style,title,.skip,caption")) continue;
    const style = getComputedStyle(e), size = parseFloat(style.fontSize);
    const a = light(e.ownerSVGElement ? style.fill : style.color), b = light(behind(e));
    const ratio = (Math.max(a, b) + .05) / (Math.min(a, b) + .05);
    const large = size >= 24 || size >= 18.66 && style.fontWeight >= 700;
    if (ratio < (large ? 3 : 4.5)) faint.push((e.getAttribute("class") || e.tagName) + " " + e.textContent.trim().slice(0, 30) + " " + ratio.toFixed(2));
  }
  return [...new Set(faint)];
})()`

// Every text of the page reads on what is behind it, by day, by night and on paper:
// [WCAG22] 1.4.3.
func TestEveryTextReads(t *testing.T) {
	ctx := browser(t)
	p := *workedPlan(t)
	p.Harmony = sampleHarmony(t)
	open(t, ctx, &p, 1280)
	ask[bool](t, ctx, `(document.querySelectorAll("details").forEach(d => d.open = true), true)`)
	for _, dress := range []struct{ media, scheme string }{{"screen", "light"}, {"screen", "dark"}, {"print", "light"}} {
		_, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Media: dress.media, Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: dress.scheme}}})
		require.NoError(t, err)
		assert.Empty(t, ask[[]string](t, ctx, faintText), fmt.Sprint(dress))
	}
	// The script finds what it is there for.
	ask[bool](t, ctx, `(document.querySelector("h1").style.color = "#bbb", true)`)
	assert.Len(t, ask[[]string](t, ctx, faintText), 1)
}
