package match

import "testing"

func BenchmarkRecipes24(b *testing.B) {
	p, a := own(24), testAims(100, 1)
	for b.Loop() {
		Recipes(p, a, Options{})
	}
}
func BenchmarkRecipes40(b *testing.B) {
	p, a := own(40), testAims(100, 1)
	for b.Loop() {
		Recipes(p, a, Options{})
	}
}
