// What to take care of with a medium.

package layer

import (
	"slices"

	"tonewright/match/paint"
)

// alkyd is the caution for alkyd mediums.
var alkyd = paint.Caution{
	Key: "alkyd", Kind: paint.OfMedium, Short: "alkyd: fresh air, no flame, off the skin",
	Text:   "Alkyd medium mostly holds white spirit, and metal driers, cobalt among them, which can make skin allergic. Give it fresh air, keep it from flames and off the skin; its rags heat by themselves as those with oil do." + paint.Defers,
	Source: "DermNet on allergy to cobalt (driers in paints and varnishes); what is in alkyd mediums from memory; the care is common practice",
}

// Cautions returns what to take care of with a medium, the gravest first; none for none.
// Stand oil, too, dries by taking up oxygen, and its rags heat.
func (m Medium) Cautions() []paint.Caution {
	var keys []string
	var own []paint.Caution
	switch {
	case m.none():
		return nil
	case m.Kind == Solvent:
		keys = []string{paint.Solvents}
	case m.Kind == Alkyd:
		keys, own = []string{paint.Rags, paint.Solvents}, []paint.Caution{alkyd}
	default:
		keys = []string{paint.Rags}
	}
	usual := slices.DeleteFunc(paint.StudioCautions(), func(c paint.Caution) bool { return !slices.Contains(keys, c.Key) })
	return append(usual, own...)
}
