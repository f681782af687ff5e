package match

import (
	"testing"

	"tonewright/analyze/colour"
	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
)

// A near gray can be had from black or from two earths and a blue, or from red and green;
// the last goes red or green when one part is off by a fifth. By figures of ours, one
// part of pyrrole red and 11 of viridian strays by 4 CIEDE2000, ivory black with a
// touch of white by 0.7.
func TestGraysAreSteady(t *testing.T) {
	paints := paint.StarterBox().Paints
	s := newSearch(paints, nil, Options{}.defaulted())
	var aims []colour.Lab
	for l := 8.0; l <= 60; l += 4 {
		for _, tint := range []colour.Lab{{A: 1, B: -2}, {A: -2, B: 1}, {A: 2, B: 2}, {A: -1, B: -4}} {
			aims = append(aims, colour.Lab{L: l, A: tint.A, B: tint.B})
		}
	}
	sum := 0.0
	for _, recipes := range Recipes(paints, aims, Options{}) {
		first := recipes[0]
		var of []paint.Paint
		var parts []float64
		for _, p := range first.Parts {
			of, parts = append(of, paints[p.Paint]), append(parts, p.Parts)
		}
		most := 0.0
		for i, right := range parts {
			for _, by := range []float64{0.8, 1.2} {
				parts[i] = right * by
				most = max(most, colour.DeltaE00(first.Lab, labOf(of, parts, paint.Gloss)))
			}
			parts[i] = right
		}
		sum += most
	}
	assert.Less(t, sum/float64(len(aims)), 2.3, "without the rule the mean is 2.47")
	red, green := int32(4), int32(10)
	assert.Equal(t, "pyrrole-red viridian", paints[red].ID+" "+paints[green].ID)
	balance := mix{set: set{red, green, -1}, measure: measure{1, 11}}
	balance.lab = s.lab(balance.set, balance.measure)
	assert.Greater(t, s.strays(balance), 3.0)
}
