package report

import (
	"fmt"
	"io"
	"strings"

	"tonewright/report/answer"
)

// BoxText writes the table of a box: what is easily confused and what the box lacks
// first, then the paints.
func BoxText(w io.Writer, a *answer.Box) error {
	var t text
	t.say(2, "Box: %s (%d)", a.Name, len(a.Paints))
	t.alike(a)
	if a.Gamut != nil {
		t.gamut(a.Gamut)
	}
	t.tubes(a)
	t.gap()
	t.line("Care")
	for _, c := range a.Cautions {
		whose := ""
		if len(c.Paints) > 0 {
			whose = strings.Join(c.Paints, ", ") + ": "
		}
		t.say(4, "  %s%s", whose, c.Text)
	}
	return t.to(w)
}

// mostOneWay is how many pairs that are alike one way are told in text. Ours: of the
// whole library there can be some 160, and those alike both ways matter more.
const mostOneWay = 20

// alike names the tubes that are easily taken for one another.
func (t *text) alike(a *answer.Box) {
	t.gap()
	if len(a.Alike) == 0 {
		t.say(2, "No two of these paints are easily taken for one another (%s).", a.Sight)
		return
	}
	t.say(2, "Easily taken for one another (%s): mark the tubes, keep the piles apart. The figures are CIEDE2000%s; up to %.0f is %s.", a.Sight, either(a.Full, "", ", in brackets that to full sight"), a.Close, answer.HardToTell)
	var label, other []answer.Alike
	for _, p := range a.Alike {
		if p.LabelOnly {
			label = append(label, p)
		} else {
			other = append(other, p)
		}
	}
	if len(label) > 0 {
		t.line("  Alike both thick and in white:")
	}
	for _, p := range label {
		t.say(6, "    %s, %s: %s%s. What tells is %s.", p.Names[0], p.Names[1], apartText(p, a.Full), either(p.Twins, ", to everyone", ""), p.Tells)
	}
	for _, p := range other[:min(len(other), mostOneWay)] {
		t.say(4, "  %s, %s, alike %s: %s. What tells is %s.", p.Names[0], p.Names[1], either(p.Masstone.Close, "thick", "in white"), apartText(p, a.Full), p.Tells)
	}
	if more := len(other) - mostOneWay; more > 0 {
		t.say(4, "  And %s alike only thick or only in white; --json has all.", count(more, "pair"))
	}
}

// apartText is "thick 4.3 (19.8), in white 8.9 (18.5)", in brackets to full sight.
func apartText(p answer.Alike, full bool) string {
	if full {
		return fmt.Sprintf("thick %.1f, in white %.1f", p.Masstone.Seen, p.Tint.Seen)
	}
	return fmt.Sprintf("thick %.1f (%.1f), in white %.1f (%.1f)", p.Masstone.Seen, p.Masstone.Full, p.Tint.Seen, p.Tint.Full)
}

// tubes lists the paints, three lines each, and one more where the box says what is left.
func (t *text) tubes(a *answer.Box) {
	t.gap()
	t.say(2, "The paints: thick and, below it, one part in four of %s; pigment and what the figures rest on. "+
		"Contrast is the light of one coat over black against that of one over white; a dark transparent paint covers by its depth, not by its body. "+
		"Days until touch dry; ASTM lightfastness; g of oil to 100 g of pigment. Tubes differ: the label knows more.", a.White)
	for _, p := range a.Paints {
		t.gap()
		t.line("%-28s%-16s%s", shorten(p.Name, 27), p.Masstone.Munsell, either(p.NearBlack, "near black: its tint has its hue", p.Masstone.Name))
		t.line("  %-26s%-16s%s", shorten(strings.Join(p.CI, " ")+", "+p.Basis, 25), p.Tint.Munsell, p.Tint.Name)
		t.say(4, "  %s, contrast %.2f; tints %s; %s, %s days; light %s; oil %s", p.Opacity, p.Contrast, p.Strength,
			p.Drying, span(float64(p.TouchDry[0]), float64(p.TouchDry[1])), p.Lightfastness, span(p.Oil[0], p.Oil[1]))
		if p.LeftML != nil {
			t.line("  left: %s", leftText(*p.LeftML))
		}
	}
}

// leftText is "37 ml", "none" where the tube is empty.
func leftText(ml float64) string {
	if ml == 0 {
		return "none"
	}
	return fmt.Sprintf("%g ml", ml)
}

// span words whole numbers from-to.
func span(from, to float64) string {
	if from == to {
		return fmt.Sprintf("%.0f", from)
	}
	return fmt.Sprintf("%.0f-%.0f", from, to)
}
