// What a painter should be told of a paint's hazards, in plain words.

package paint

import "slices"

// cautions has the usual care for each hazard key of the facts, in the order
// they are told. They are common practice and defer to the label.
// Source: [PaintFacts] hazards, from memory; common practice, no source for the care.
var cautions = []struct{ hazard, text string }{
	{"lead", "Lead pigment: poisonous if swallowed or breathed and builds up in the body. Wear gloves, never sand or spray it, keep it from children and food; its sale is restricted in places. Follow the label and the safety data sheet."},
	{"cadmium", "Cadmium pigment: may cause cancer if its dust is breathed. Do not sand or spray it, wash hands before eating, let no rinsings reach the drain. Follow the label and the safety data sheet."},
	{"cobalt", "Cobalt pigment: can make skin allergic. Keep it off the skin and do not spray it. Follow the label and the safety data sheet."},
	{"manganese", "Manganese pigment: its dust is harmful. Do not sand or spray it dry. Follow the label and the safety data sheet."},
	{"nickel", "Nickel pigment: the nickel is bound, yet may trouble allergic skin. Keep it off the skin and do not spray it. Follow the label and the safety data sheet."},
	{"zinc", "Zinc white: harmful to water life, so no rinsings down the drain; its film turns brittle in some years, so keep it out of under-layers. Follow the label and the safety data sheet."},
	{"antimony", "Antimony pigment: do not sand or spray it. Follow the label and the safety data sheet."},
	{"vanadium", "Vanadium pigment: its dust harms the lungs. Do not sand or spray it. Follow the label and the safety data sheet."},
	{"cyanide", "Prussian blue: safe as paint, but never heat it strongly or let it meet acid, which frees cyanide. Follow the label and the safety data sheet."},
	{"soot", "Carbon black: its dry dust may cause cancer if breathed; in oil it is bound. Do not sand or spray it. Follow the label and the safety data sheet."},
}

// fading is told of a paint whose lightfastness is III or worse.
// Source: [ASTMD4302] classes I and II are the ones for artists' paints.
const fading = "Fades: lightfastness is rated under the two classes meant for lasting work, and tints go first. Keep it for studies, or take a lasting paint of like colour."

// Cautions returns what to tell the painter of this paint, the gravest first;
// none when nothing beyond the usual care is known.
func (p Paint) Cautions() []string {
	var texts []string
	for _, c := range cautions {
		if slices.Contains(p.Facts.Hazards, c.hazard) {
			texts = append(texts, c.text)
		}
	}
	if slices.Index(lasting, p.Facts.Lightfastness) >= 2 {
		texts = append(texts, fading)
	}
	return texts
}
