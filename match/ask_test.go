package match

import (
	"testing"

	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The oracle is the dense scan over the mixes that the question allows.
func TestPaintsThatMustBeInAndOtherFinishes(t *testing.T) {
	paints := own(9)
	aims := testAims(12, 5)
	for _, c := range []struct {
		finish paint.Finish
		with   []int
	}{
		{paint.Gloss, []int{4}}, {paint.Gloss, []int{2, 7}}, {paint.Gloss, []int{1, 3, 8}},
		{paint.Matt, nil}, {paint.Satin, []int{5}},
	} {
		oracle := denseWith(paints, aims, mostParts, c.finish, c.with)
		found := Recipes(paints, aims, Options{Finish: c.finish, With: c.with})
		for a := range aims {
			require.NotEmpty(t, found[a], "%v", c)
			least := min(oracle[a][1], oracle[a][2], oracle[a][3])
			// What is taken may be fewerWithin + easierWithin off for fewer paints and parts.
			assert.LessOrEqual(t, found[a][0].DeltaE, least+fewerWithin+easierWithin, "%v, aim %d", c, a)
			for _, r := range found[a] {
				for _, p := range c.with {
					assert.True(t, holdsPaint(r, p), "%v, aim %d: %v", c, a, r.Parts)
				}
				var parts []float64
				var of []paint.Paint
				for _, p := range r.Parts {
					of, parts = append(of, paints[p.Paint]), append(parts, p.Parts)
				}
				assert.Equal(t, labOf(of, parts, c.finish), r.Lab)
			}
		}
	}
}

func holdsPaint(r Recipe, paint int) bool {
	for _, p := range r.Parts {
		if p.Paint == paint {
			return true
		}
	}
	return false
}

// By definition of the surface: a matt black sends back its 3 %, which is L* 20.
func TestMattIsNeverDarkerThanItsShine(t *testing.T) {
	paints := box(t, "titanium-white", "ivory-black")
	gloss, _ := Reach(paints, paint.Gloss)
	matt, _ := Reach(paints, paint.Matt)
	assert.Less(t, gloss, 15.0)
	assert.Greater(t, matt, 20.0)
}

func TestWithIsChecked(t *testing.T) {
	paints := box(t, "titanium-white", "ivory-black")
	assert.Panics(t, func() { Recipes(paints, testAims(1, 1), Options{With: []int{2}}) })
	assert.Panics(t, func() { Recipes(paints, testAims(1, 1), Options{With: []int{0, 0, 0, 0}}) })
}
