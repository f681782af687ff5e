// Tubes that a painter's eyes can hardly tell apart.

package match

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Close is the CIEDE2000 up to which two piles are easily taken for one another. Ours:
// piles lie apart on the palette, not edge to edge, where 1 is just seen, and tubes of
// one name differ between makers by several. Of the library's 2,278 pairs full sight
// then has 14 that are as one thick and in white: what the trade sells one for
// the other, such as mars yellow for yellow ochre. At 3 there are 5; at 8 there are 37,
// and lemon is taken for light cadmium yellow, which full sight does not.
const Close = 5

// Apart is the CIEDE2000 between two colours to full sight and to a painter's.
type Apart struct{ Full, Seen float64 }

// alike tells whether the painter's eyes take the two colours for one another.
func (a Apart) alike() bool { return a.Seen <= Close }

// lost tells whether they do and full sight does not.
func (a Apart) lost() bool { return a.alike() && a.Full > Close }

// Alike is a pair of tubes, by index in the box, A < B, that are close thick, or in
// white, or both.
type Alike struct {
	A, B           int
	Masstone, Tint Apart
	Twins          bool   // full sight, too, can hardly tell them apart
	LabelOnly      bool   // no look tells them apart: the label does, and use
	Tells          string // what does, as "a tint in white, where …"
}

// AlikeTubes returns the pairs that the sight takes for one another, thick or as a
// tint in white, where full sight does not; and the twins, which are close to full
// sight both ways. Those close both ways come first, in the order of the box.
func AlikeTubes(paints []paint.Paint, sight colour.Sight) []Alike {
	white := paint.TintingWhite(paints)
	var both, one []Alike
	for a := range paints {
		for b := a + 1; b < len(paints); b++ {
			masstones := [2]colour.Lab{paints[a].Masstone(), paints[b].Masstone()}
			tints := [2]colour.Lab{paints[a].Tint(white), paints[b].Tint(white)}
			p := Alike{A: a, B: b, Masstone: apart(masstones, sight), Tint: apart(tints, sight)}
			p.Twins = p.Masstone.Full <= Close && p.Tint.Full <= Close
			if !p.Twins && !p.Masstone.lost() && !p.Tint.lost() {
				continue
			}
			p.LabelOnly = p.Masstone.alike() && p.Tint.alike()
			p.Tells = p.tells([2]paint.Paint{paints[a], paints[b]}, seen(masstones, sight), seen(tints, sight))
			if p.LabelOnly {
				both = append(both, p)
			} else {
				one = append(one, p)
			}
		}
	}
	return slices.Concat(both, one)
}

func seen(pair [2]colour.Lab, sight colour.Sight) [2]colour.Lab {
	return [2]colour.Lab{sight.See(pair[0]), sight.See(pair[1])}
}

// apart is to a tenth, so that the last bit decides nothing.
func apart(pair [2]colour.Lab, sight colour.Sight) Apart {
	return Apart{roundTo(colour.DeltaE00(pair[0], pair[1]), 10), roundTo(sight.Apart(pair[0], pair[1]), 10)}
}

// tells says what still tells the two apart.
func (p *Alike) tells(of [2]paint.Paint, masstones, tints [2]colour.Lab) string {
	names := [2]string{of[0].Name, of[1].Name}
	switch {
	case p.LabelOnly:
		return inUse(of[0], of[1])
	case p.Masstone.alike():
		return fmt.Sprintf("a tint in white, where %s", differs(names, tints))
	}
	return fmt.Sprintf("the paint as it comes, where %s", differs(names, masstones))
}

// inUse says what tells two tubes apart that look alike: the label, and what they do
// where that differs.
func inUse(a, b paint.Paint) string {
	var first, second []string
	if a.Opacity != b.Opacity {
		first, second = append(first, "is "+a.Opacity), append(second, "is "+b.Opacity)
	}
	if a.Facts.Strength != b.Facts.Strength {
		first, second = append(first, "tints "+a.Facts.Strength), append(second, "tints "+b.Facts.Strength)
	}
	if len(first) == 0 {
		return "only the label"
	}
	return fmt.Sprintf("the label, and use: %s %s, %s %s", a.Name, strings.Join(first, " and "), b.Name, strings.Join(second, " and "))
}

// valueApart is the Munsell value that a painter sees two piles differ by. Ours: half
// a step of the scale that values are judged on.
const valueApart = 0.5

// differs says how the first colour seen differs from the second where it shows most.
func differs(names [2]string, pair [2]colour.Lab) string {
	value := colour.ValueOf(pair[0].L) - colour.ValueOf(pair[1].L)
	if math.Abs(value) >= valueApart {
		return fmt.Sprintf("%s is %s by %.1f value", names[0], either(value < 0, "darker", "lighter"), math.Abs(value))
	}
	redder, yellower := pair[0].A-pair[1].A, pair[0].B-pair[1].B
	if math.Abs(redder) > math.Abs(yellower) {
		return fmt.Sprintf("%s is the %s", names[0], either(redder < 0, "greener", "redder"))
	}
	return fmt.Sprintf("%s is the %s", names[0], either(yellower < 0, "bluer", "yellower"))
}
