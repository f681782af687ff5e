// How a pile differs from its aim, as one painter would tell another.

package match

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

// Difference is how a measured colour differs from its aim.
type Difference struct {
	Value  float64 // Munsell steps; positive is too light
	Chroma float64 // Munsell steps; positive is too strong
	Hue    float64 // Munsell hue steps of 100, positive from red towards yellow and on round; 0 where one of them is neutral
	Words  string  // "half a value too dark, a little too red, a trace too strong", what is seen most first
	Shifts string  // the same in figures: "darker by 0.5 value and turned 2 hue steps towards red"
}

// Up to what CIEDE2000 of its own a difference in chroma or hue is called a trace, a
// little, or clear. Ours: under 1 it is not seen side by side. Munsell steps would not
// do, since one step of chroma is seen four times as well near gray as in a bright red.
const (
	aTrace  = 2
	aLittle = 4
	clearly = 8
)

func degree(deltaE float64) string {
	switch {
	case deltaE < aTrace:
		return "a trace"
	case deltaE < aLittle:
		return "a little"
	case deltaE < clearly:
		return "clearly"
	}
	return "far"
}

// Differ returns how a measured colour differs from its aim.
func Differ(measured, aim colour.Lab) Difference {
	m := missOf(aim, measured, aim.Munsell())
	return Difference{m.valueShift(), m.chromaShift(), m.hueShift(), m.tooMuch(), m.shifts()}
}

// Turn says how a tube's shift turns the tints of a paint: "a little towards green"; ""
// where it is not seen. The tint is one part to four of Titanium White.
func (t Tube) Turn(p paint.Paint) string {
	white, err := paint.Find(nil, "titanium-white")
	if err != nil {
		return ""
	}
	tint := func(p paint.Paint) colour.Lab { return Pile{[]paint.Paint{p, white}, []float64{1, 4}}.look() }
	from := tint(p)
	m := missOf(from, tint(p.Vary(1, 1, t.Shift)), from.Munsell())
	if m.hue < matches || m.hueShift() == 0 {
		return ""
	}
	return degree(m.hue) + " towards " + m.towards()
}

// tooMuch says what is too much: every difference that is seen, the one that is seen
// most first.
func (m miss) tooMuch() string {
	type word struct {
		seen float64
		text string
	}
	words := []word{{m.value, valueWords(m.valueShift())}, {m.chroma, m.chromaWords()}, {m.hue, m.hueWords()}}
	slices.SortStableFunc(words, func(a, b word) int { return cmp.Compare(b.seen, a.seen) })
	var worth []string
	for _, w := range words {
		if w.text != "" {
			worth = append(worth, w.text)
		}
	}
	if len(worth) == 0 {
		return "no difference that is seen"
	}
	return strings.Join(worth, ", ")
}

// valueWords says "half a value too dark"; nothing under a tenth.
func valueWords(shift float64) string {
	side := either(shift < 0, "too dark", "too light")
	quarters := int(math.Round(4 * math.Abs(shift)))
	switch {
	case math.Abs(shift) < valueWord:
		return ""
	case quarters == 0:
		return "a trace " + side
	case quarters < 4:
		return [...]string{"", "a quarter of a value ", "half a value ", "three quarters of a value "}[quarters] + side
	}
	halves := math.Round(2 * math.Abs(shift))
	if halves == 2 {
		return "one value " + side
	}
	return fmt.Sprintf("%g values %s", halves/2, side)
}

// chromaWords says "a little too strong". A gray that has taken on a colour is
// neither strong nor dull: that colour is named.
func (m miss) chromaWords() string {
	switch {
	case m.chroma < matches:
		return ""
	case m.chromaShift() < 0:
		return degree(m.chroma) + " too dull"
	case m.aim.Chroma < neutral:
		return degree(m.chroma) + " too " + colour.HueName(m.mix.Hue)
	}
	return degree(m.chroma) + " too strong"
}

// hueWords says "a little too red". Where either is a gray there is nothing to say.
func (m miss) hueWords() string {
	turn := m.hueShift()
	switch {
	case m.hue < matches || turn == 0:
		return ""
	case math.Abs(turn) > 10: // past the family beside
		return degree(m.hue) + " too " + colour.HueName(m.mix.Hue)
	}
	return degree(m.hue) + " too " + m.towards()
}
