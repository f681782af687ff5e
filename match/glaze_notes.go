// What glazes cannot do, in the painter's words.

package match

import (
	"fmt"

	"tonewright/analyze/colour"
)

// When a limit is told. Ours: a quarter of a value is more than a glaze's own choice of
// thickness, see media; hues lie across where they are over a quarter of the circle
// apart, from where on two colours of one chroma mix to less than 0.71 of it, and 2
// chroma is a chip of the Munsell book.
const (
	lighterWord = 0.25
	acrossFrom  = 25 // Munsell hue steps, of 100
	acrossLeast = 2  // Munsell chroma under which a colour lies across from nothing
)

// glazeWarnings says what no glaze can do for an aim over what lies beneath, with its
// number, and what to do.
func glazeWarnings(bare, aim colour.Lab, advice GlazeAdvice, any bool) (warnings []string) {
	if !any {
		return []string{"None of these paints glazes: all are opaque, semi-opaque or white, and thinned they scumble. Add a transparent paint to the box."}
	}
	if advice.Bare <= matches {
		return []string{fmt.Sprintf("No glaze is needed: what lies beneath matches the aim (CIEDE2000 %.1f).", advice.Bare)}
	}
	beneath, wanted := bare.Munsell(), aim.Munsell()
	if lighter := wanted.Value - beneath.Value; lighter > lighterWord {
		warnings = append(warnings, fmt.Sprintf("The aim is %.1f value lighter than what lies beneath, and a glaze takes light away: repaint that lighter and glaze it when dry, or scumble a lighter, opaque paint over it.", lighter))
	}
	apart := colour.HuesApart(wanted.Hue, beneath.Hue)
	across := apart > acrossFrom && min(beneath.Chroma, wanted.Chroma) >= acrossLeast
	switch short := advice.short(beneath, wanted); {
	case across && short >= chromaWord:
		warnings = append(warnings, fmt.Sprintf("The aim's hue lies across from what lies beneath, %s over %s: a glaze goes through gray there, and the nearest falls %.1f chroma short. Choose an underpainting nearer to %s, and lighter.",
			familyOf(wanted), familyOf(beneath), short, familyOf(wanted)))
	case short >= dull:
		warnings = append(warnings, fmt.Sprintf("The aim is stronger than these glazes get here: the nearest falls %.1f chroma short. Choose a lighter or stronger underpainting of that hue.", short))
	}
	if len(advice.Best) == 0 {
		warnings = append(warnings, fmt.Sprintf("No glaze of these paints comes nearer to the aim than what lies beneath (CIEDE2000 %.1f).", advice.Bare))
	}
	return warnings
}

// short returns by how much chroma the nearest glaze, or the bare layer where none is
// nearer, falls short of the aim.
func (a GlazeAdvice) short(beneath, wanted colour.Munsell) float64 {
	if len(a.Best) == 0 {
		return wanted.Chroma - beneath.Chroma
	}
	return -a.Best[0].ChromaShift
}
