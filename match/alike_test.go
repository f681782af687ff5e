package match

import (
	"math"
	"strings"
	"testing"

	"tonewright/analyze/colour"
	"tonewright/match/paint"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pairOf returns the pair of two tubes among those found alike, if it is there.
func pairOf(paints []paint.Paint, found []Alike, a, b string) (Alike, bool) {
	for _, p := range found {
		if paints[p.A].ID == a && paints[p.B].ID == b {
			return p, true
		}
	}
	return Alike{}, false
}

// Mars yellow is sold for yellow ochre, venetian red is a red iron oxide, and the
// whites are white: twins to every sight. Common practice, no source. The primaries
// of the starter box are not.
func TestTwins(t *testing.T) {
	library := paint.Library()
	found := AlikeTubes(library, colour.Sight{})
	for _, pair := range [][2]string{{"yellow-ochre", "mars-yellow"}, {"venetian-red", "red-iron-oxide"}, {"titanium-white", "zinc-white"}} {
		p, ok := pairOf(library, found, pair[0], pair[1])
		require.True(t, ok, "%v", pair)
		assert.True(t, p.Twins)
		assert.Contains(t, p.Tells, "the label")
	}
	// Zinc white is the transparent, weaker white. Common practice, no source.
	whites, _ := pairOf(library, found, "titanium-white", "zinc-white")
	assert.Equal(t, "the label, and use: Titanium White is opaque and tints high, Zinc White is semi-transparent and tints low", whites.Tells)
	assert.Equal(t, "only the label", inUse(library[0], library[0]))
	for _, p := range found {
		assert.True(t, p.Twins, "%s and %s are told apart by full sight", library[p.A].ID, library[p.B].ID)
		assert.Less(t, p.A, p.B)
		assert.Equal(t, p.Masstone.Full, p.Masstone.Seen)
	}
	assert.Len(t, found, 14) // the figure in the comment at Close
	assert.Empty(t, AlikeTubes(paint.StarterBox().Paints, colour.Sight{}))
}

// To an eye without green cones rose and viridian in white are one, in value and in
// hue, though one is pink and one a blue-green: what such a sight confuses lies on a
// line through its copunctal point. Source: x 1.080, y -0.080, [Smith1975],
// from memory.
func TestRoseAndViridianAreOneToDeutan(t *testing.T) {
	paints := paint.StarterBox().Paints
	p, ok := pairOf(paints, AlikeTubes(paints, colour.Sight{Kind: "deutan", Severity: 1}), "quinacridone-rose", "viridian")
	require.True(t, ok)
	assert.False(t, p.Twins)
	assert.Greater(t, p.Tint.Full, 20.0)
	assert.LessOrEqual(t, p.Tint.Seen, float64(Close))
	assert.Equal(t, "the paint as it comes, where Quinacridone Rose is lighter by 2.4 value", p.Tells)

	white := paint.TintingWhite(paints)
	angle := func(i int) float64 {
		c := paints[i].Tint(white).XYZ()
		sum := c.X + c.Y + c.Z
		return math.Atan2(c.Y/sum+0.080, c.X/sum-1.080) * 180 / math.Pi
	}
	assert.InDelta(t, angle(p.A), angle(p.B), 1.5)
	assert.Greater(t, math.Abs(angle(1)-angle(8)), 10.0, "a lemon yellow and a blue lie far off one line")
}

// A weaker sight never sees more, not of the strong yellows either, which lie past what
// its model is for: two that are one to full sight are one to a protan, and he takes
// for one another two whose tints already are close to all.
func TestYellowsToProtan(t *testing.T) {
	library, protan := paint.Library(), colour.Sight{Kind: "protan", Severity: 1}
	found := AlikeTubes(library, protan)
	p, ok := pairOf(library, found, "cadmium-yellow-light", "hansa-yellow-medium")
	require.True(t, ok)
	assert.True(t, p.Twins && p.LabelOnly)
	assert.LessOrEqual(t, p.Masstone.Seen, p.Masstone.Full)
	p, ok = pairOf(library, found, "cadmium-yellow-medium", "hansa-yellow-medium")
	require.True(t, ok)
	assert.False(t, p.Twins)
	assert.True(t, p.LabelOnly)
	for _, kind := range []string{"protan", "deutan", "tritan"} {
		for _, p := range AlikeTubes(library, colour.Sight{Kind: kind, Severity: 1}) {
			assert.LessOrEqual(t, p.Masstone.Seen, p.Masstone.Full, "%s: %+v", kind, p)
			assert.LessOrEqual(t, p.Tint.Seen, p.Tint.Full, "%s: %+v", kind, p)
		}
	}
}

// A blue-yellow difference is not lost to a red-green deficiency, nor a red-green one
// to a blue-yellow deficiency. Common practice, no source.
func TestWhatASightKeeps(t *testing.T) {
	paints := box(t, "titanium-white", "cadmium-yellow-lemon", "ultramarine-blue", "pyrrole-red", "viridian")
	assert.Empty(t, AlikeTubes(paints, colour.Sight{Kind: "tritan", Severity: 1}))
	for _, kind := range []string{"protan", "deutan"} {
		_, ok := pairOf(paints, AlikeTubes(paints, colour.Sight{Kind: kind, Severity: 1}), "cadmium-yellow-lemon", "ultramarine-blue")
		assert.False(t, ok, kind)
	}
}

// The weaker the deficiency, the fewer pairs are lost.
func TestSeverityOfSight(t *testing.T) {
	library, before := paint.Library(), len(AlikeTubes(paint.Library(), colour.Sight{}))
	for _, severity := range []float64{0.3, 0.6, 1} {
		n := len(AlikeTubes(library, colour.Sight{Kind: "deutan", Severity: severity}))
		assert.Greater(t, n, before, "severity %v", severity)
		before = n
	}
}

// Pairs close both ways come before those close one way.
func TestAlikeBothWaysFirst(t *testing.T) {
	oneWay := false
	for _, p := range AlikeTubes(paint.Library(), colour.Sight{Kind: "protan", Severity: 1}) {
		both := p.Twins || p.Masstone.Seen <= Close && p.Tint.Seen <= Close
		assert.False(t, both && oneWay, "%+v", p)
		oneWay = oneWay || !both
		assert.Equal(t, both, p.LabelOnly)
		assert.Equal(t, both, strings.Contains(p.Tells, "the label"))
	}
	assert.True(t, oneWay)
}

func TestAlikeOfOneAndNone(t *testing.T) {
	assert.Empty(t, AlikeTubes(nil, colour.Sight{}))
	assert.Empty(t, AlikeTubes(box(t, "viridian"), colour.Sight{Kind: "deutan", Severity: 1}))
}

// By hand.
func TestDiffers(t *testing.T) {
	for want, pair := range map[string][2]colour.Lab{
		"A is lighter by 2.0 value": {{L: colour.LOf(6), A: 50}, {L: colour.LOf(4)}},
		"A is darker by 0.6 value":  {{L: colour.LOf(5)}, {L: colour.LOf(5.6)}},
		"A is the redder":           {{L: 50, A: 8, B: 1}, {L: 50}},
		"A is the greener":          {{L: 50, A: -8, B: 1}, {L: 50}},
		"A is the yellower":         {{L: 50, A: 1, B: 8}, {L: 50}},
		"A is the bluer":            {{L: 51, A: 1, B: -8}, {L: 50}},
	} {
		assert.Equal(t, want, differs([2]string{"A", "B"}, pair))
	}
}
