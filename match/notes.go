// What a recipe misses, in the painter's words.

package match

import "tonewright/analyze/colour"

// describe fills in how the recipe differs from the aim.
func (r *Recipe) describe(aim colour.Lab) {
	r.ValueShift = colour.ValueOf(r.Lab.L) - colour.ValueOf(aim.L)
	r.ChromaShift = r.Lab.Munsell().Chroma - aim.Munsell().Chroma
}
