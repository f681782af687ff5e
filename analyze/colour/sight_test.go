package colour

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// copunctal holds where the lines of confusion of each kind of dichromat meet, x, y.
// Source: Smith, Pokorny 1975, Vision Research 15(2), 161-171; from memory.
var copunctal = []struct {
	kind string
	x, y float64
}{{"protan", 0.747, 0.253}, {"deutan", 1.080, -0.080}, {"tritan", 0.171, 0}}

// pair returns two colours of Y = 30 to either side of x, y, on the line to the
// point p, q.
func pair(x, y, p, q float64) (a, b Lab) {
	const half, lum = 0.03, 30
	n := math.Hypot(p-x, q-y)
	at := func(d float64) Lab {
		u, v := x+d*(p-x)/n, y+d*(q-y)/n
		return XYZ{u / v * lum, lum, (1 - u - v) / v * lum}.Lab()
	}
	return at(half), at(-half)
}

// A dichromat confuses what lies on one line through the copunctal point. Of
// pairs on such lines, each 16 to 34 CIEDE2000 apart, the kind whose line it is
// keeps less than a fifth; a tritan pair keeps more than half under protan and
// deutan, and a red-green pair more than four fifths under tritan.
func TestConfusionLines(t *testing.T) {
	for _, line := range copunctal {
		for _, base := range [][2]float64{{0.3127, 0.3290}, {0.36, 0.36}, {0.28, 0.33}} {
			a, b := pair(base[0], base[1], line.x, line.y)
			require.Greater(t, DeltaE00(a, b), 16.0)
			for _, eye := range copunctal {
				s := Sight{eye.kind, 1}
				kept := DeltaE00(s.See(a), s.See(b)) / DeltaE00(a, b)
				switch {
				case eye.kind == line.kind:
					assert.Less(t, kept, 0.2, "%v on the %s line by %v", s, line.kind, base)
				case line.kind == "tritan":
					assert.Greater(t, kept, 0.5, "%v on the %s line by %v", s, line.kind, base)
				case eye.kind == "tritan":
					assert.Greater(t, kept, 0.8, "%v on the %s line by %v", s, line.kind, base)
				}
			}
		}
	}
}

// The more severe, the less is left of a red-green pair, at every hundredth to
// 0.95; there what is left is the small angle between the published copunctal
// point and the one of the matrices, which no longer shrinks.
func TestSeverityTakesMore(t *testing.T) {
	for _, line := range copunctal[:2] {
		a, b := pair(0.3127, 0.3290, line.x, line.y)
		before := DeltaE00(a, b) + exact
		for i := range 96 {
			s := Sight{line.kind, float64(i) / 100}
			left := DeltaE00(s.See(a), s.See(b))
			assert.Less(t, left, before, "%v", s)
			before = left
		}
	}
}

// To a protan red is darker than to full sight, to a deutan it is not: textbook
// matter, as in the luminous efficiency of protanopes (Wyszecki, Stiles 1982, 5.14).
func TestRedIsDarkToProtan(t *testing.T) {
	red := FromSRGB(1, 0, 0)
	assert.Less(t, Sight{"protan", 1}.See(red).L, red.L-10)
	assert.Greater(t, Sight{"deutan", 1}.See(red).L, red.L)
}

// Machado, Oliveira, Fernandes 2009, matrices published with the paper: pure red,
// green and blue become the columns.
func TestMachadoEntries(t *testing.T) {
	for _, c := range []struct {
		s      Sight
		column int
		want   [3]float64
	}{
		{Sight{"protan", 1}, 0, [3]float64{0.152286, 0.114503, -0.003882}},
		{Sight{"protan", 0.6}, 1, [3]float64{0.769005, 0.829802, -0.02219}},
		{Sight{"deutan", 1}, 1, [3]float64{0.860646, 0.672501, 0.04294}},
		{Sight{"deutan", 0.8}, 2, [3]float64{-0.203881, 0.044646, 0.974421}},
		{Sight{"tritan", 1}, 2, [3]float64{-0.178779, 0.147602, 0.3039}},
		{Sight{"tritan", 0.3}, 0, [3]float64{0.905871, 0.026856, 0.01341}},
		// halfway between 0.5 and 0.6
		{Sight{"deutan", 0.55}, 0, [3]float64{(0.547494 + 0.498864) / 2, (0.181692 + 0.205199) / 2, -(0.01041 + 0.011131) / 2}},
	} {
		var rgb [3]float64
		rgb[c.column] = 1
		r, g, b := c.s.See(FromSRGB(rgb[0], rgb[1], rgb[2])).SRGB()
		for i, v := range []float64{r, g, b} {
			if c.want[i] < 0 {
				assert.Negative(t, v, "%v", c.s)
				continue
			}
			assert.InDelta(t, c.want[i], srgbCurve(v), 1e-6, "%v, column %d", c.s, c.column)
		}
	}
}

func TestMachadoIsPackedRight(t *testing.T) {
	kinds := map[string]string{"Protanomaly": "protan", "Deuteranomaly": "deutan", "Tritanomaly": "tritan"}
	rows := sourceTable(t, "machado2009_matrices.tsv")
	assert.Len(t, rows, 33)
	for _, r := range rows {
		m := sights[kinds[r[0]]][int(math.Round(10*decimal(t, r[1])))]
		for i, text := range r[2:] {
			assert.Equal(t, decimal(t, text), m[i/3][i%3], "%v", r)
		}
	}
}

// A weaker sight never sees more. Strong yellows, past sRGB, and pairs of strong
// hues are where the matrices alone would have it: figures in the comments of
// See and Apart.
func TestAWeakerSightSeesNoMore(t *testing.T) {
	strong := []Lab{{85, 3, 103.2}, {85.7, 1.7, 112.2}, {80.9, 15.8, 101.1}, {38, 3, -47}, {45, 63, 49}, {40, -60, 10}, {60, 5, -60}, {50, 80, -40}}
	for _, line := range copunctal {
		for i := range 11 {
			s := Sight{line.kind, float64(i) / 10}
			for _, a := range strong {
				for _, b := range strong {
					assert.LessOrEqual(t, s.Apart(a, b), DeltaE00(a, b), "%v, %v and %v", s, a, b)
				}
			}
		}
	}
	// The first two alone, by what is seen: no bound needed.
	protan := Sight{"protan", 1}
	assert.Less(t, DeltaE00(protan.See(strong[0]), protan.See(strong[1])), DeltaE00(strong[0], strong[1]))
	assert.Equal(t, DeltaE00(strong[0], strong[3]), Sight{}.Apart(strong[0], strong[3]))
	assert.Less(t, protan.Apart(strong[4], strong[5]), 0.8*DeltaE00(strong[4], strong[5]), "a red and a green")
}

// The rows of the published matrices add up to 1 within their last digit, so that
// grays stay.
func TestGraysStay(t *testing.T) {
	for _, line := range copunctal {
		for i := range 11 {
			s := Sight{line.kind, float64(i) / 10}
			for _, row := range s.matrix() {
				assert.InDelta(t, 1, row[0]+row[1]+row[2], 1.1e-6, "%v", s)
			}
			assert.Less(t, DeltaE00(Lab{L: 50}, s.See(Lab{L: 50})), 1e-3, "%v", s)
		}
	}
}

func TestFullSightSeesAll(t *testing.T) {
	c := Lab{50, 40, -30}
	for _, s := range []Sight{{}, {"full", 1}, {"deutan", 0}, {"deutan", -1}, {"deutan", math.NaN()}, {"other", 1}} {
		assert.Equal(t, c, s.See(c), "%+v", s)
		assert.Equal(t, "full sight", s.String())
	}
	assert.Equal(t, Sight{"deutan", 1}.See(c), Sight{"deutan", 7}.See(c))
}

func TestParseSight(t *testing.T) {
	for text, want := range map[string]Sight{
		"full":              {"full", 0},
		"full sight":        {"full", 0},
		"deutan":            {"deutan", 1},
		" Protan 0.6 ":      {"protan", 0.6},
		"deutan:0.8":        {"deutan", 0.8},
		"tritan : .25":      {"tritan", 0.25},
		"deutan 0":          {"deutan", 0},
		"protan 1":          {"protan", 1},
		"deuteranopia":      {"deutan", 1},
		"Protanopia":        {"protan", 1},
		"tritanopia":        {"tritan", 1},
		"deuteranomaly":     {"deutan", 1},
		"deuteranomaly 0.4": {"deutan", 0.4},
		"protanomaly:0.55":  {"protan", 0.55},
	} {
		s, err := ParseSight(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, s, text)
		again, err := ParseSight(s.String())
		require.NoError(t, err, text)
		assert.Equal(t, s.String(), again.String())
	}
	assert.Equal(t, "deutan 0.85", Sight{"deutan", 0.85}.String())
	assert.Equal(t, "deutan 1", Sight{"deutan", 1}.String())
}

func TestParseSightRefuses(t *testing.T) {
	const form = "not a sight; write full, protan, deutan or tritan, the last three with a severity if you know it, such as deutan 0.8"
	for text, want := range map[string]string{
		"":               form,
		"green":          form,
		"full 0.5":       form,
		"deutan0.8":      form,
		"deutan -0.2":    form,
		"deutan 80%":     form,
		"deutan NaN":     form,
		"deutan 1.5":     "severity out of range; it runs from 0, as full sight, to 1, such as deutan 0.8",
		"protanopia:100": "severity out of range; it runs from 0, as full sight, to 1, such as deutan 0.8",
	} {
		_, err := ParseSight(text)
		require.Error(t, err, text)
		assert.Equal(t, `sight "`+text+`": `+want, err.Error())
	}
}

func BenchmarkSee(b *testing.B) {
	s, c := Sight{"deutan", 0.85}, Lab{50, 40, -30}
	for b.Loop() {
		sink = s.See(c)
	}
}
