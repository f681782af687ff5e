package match

import (
	"fmt"
	"testing"
	"tonewright/analyze/colour"
	"tonewright/match/paint"
)

func TestTmpShow(t *testing.T) {
	p := paint.StarterBox().Paints
	aims := append(testAims(14, 5), colour.Lab{}, colour.Lab{L: 100}, colour.Lab{L: 50}, colour.Lab{L: 3, A: 1})
	for a, rs := range Recipes(p, aims, Options{}) {
		fmt.Printf("%v %s\n", aims[a], aims[a].Munsell())
		for _, r := range rs {
			for _, x := range r.Parts {
				fmt.Printf("   %.3g %s %v", x.Parts, p[x.Paint].ID, x.Touch)
			}
			fmt.Printf(" | dE %.2f v %.2f c %.2f %s %s | %s\n", r.DeltaE, r.ValueShift, r.ChromaShift, r.Lab.Munsell(), r.Basis, r.Note)
		}
	}
}
