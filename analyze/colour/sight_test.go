package colour

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// copunctal holds where the lines of confusion of each kind of dichromat meet, x, y,
// with the fundamentals that See stands on; near is the point of another reckoning.
// Source: Wyszecki, Stiles 1982, Color Science, table 1(8.2.5) and p. 615, after Smith,
// Pokorny 1975, Vision Research 15(2), 161-171: 0.7465, 0.2535; 1.4000, -0.4000;
// 0.1748, 0.0000. Near: the same authors' for the observer of 1931. All from memory.
var copunctal = []struct {
	kind string
	x, y float64
	near [2]float64
}{
	{"protan", 0.7465, 0.2535, [2]float64{0.747, 0.253}},
	{"deutan", 1.400, -0.400, [2]float64{1.080, -0.080}},
	{"tritan", 0.1748, 0, [2]float64{0.171, 0}},
}

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

// bases are the middles of the pairs: about white, in the yellows, in the greens.
var bases = [][2]float64{{0.3127, 0.3290}, {0.36, 0.36}, {0.28, 0.33}}

// caught returns what the cones that a kind has not lost catch.
func caught(kind string, c Lab) (a, b float64) {
	xyz := c.XYZ()
	lms := cones.times([3]float64{xyz.X, xyz.Y, xyz.Z})
	lacks := map[string]int{"protan": 0, "deutan": 1, "tritan": 2}[kind]
	return lms[(lacks+1)%3], lms[(lacks+2)%3]
}

// A dichromat confuses what lies on one line through the copunctal point and is made
// as light to the cones that are left. Such pairs, 16 to 34 CIEDE2000 apart, collapse
// to under 0.1, and under 2 on the line to the other reckoning's point; across the
// lines a tritan pair keeps more than half under protan and deutan, and a red-green
// pair more than three fifths under tritan.
func TestConfusionLines(t *testing.T) {
	for _, line := range copunctal {
		for _, base := range bases {
			for _, eye := range copunctal {
				s := Sight{eye.kind, 1}
				a, b := pair(base[0], base[1], line.x, line.y)
				if eye.kind == line.kind {
					b = evened(line.kind, a, b)
				}
				full := DeltaE00(a, b)
				require.Greater(t, full, 14.0)
				seen := DeltaE00(s.See(a), s.See(b))
				switch {
				case eye.kind == line.kind:
					assert.Less(t, seen, 0.1, "%v on its line by %v", s, base)
				case line.kind == "tritan":
					assert.Greater(t, seen, 0.5*full, "%v on the %s line by %v", s, line.kind, base)
				case eye.kind == "tritan":
					assert.Greater(t, seen, 0.6*full, "%v on the %s line by %v", s, line.kind, base)
				}
			}
			a, b := pair(base[0], base[1], line.near[0], line.near[1])
			b = evened(line.kind, a, b)
			s := Sight{line.kind, 1}
			assert.Less(t, DeltaE00(s.See(a), s.See(b)), 2.0, "%v, the other reckoning, by %v", s, base)
		}
	}
}

// evened returns b made lighter or darker until one kind of cone that is left catches
// as much of it as of a.
func evened(kind string, a, b Lab) Lab {
	_, want := caught(kind, a)
	_, have := caught(kind, b)
	xyz := b.XYZ()
	k := want / have
	return XYZ{k * xyz.X, k * xyz.Y, k * xyz.Z}.Lab()
}

// The more severe, the less of red and green is left of a pair on the line, at every
// hundredth to 1; its lightness is another matter, since Y weighs the lacking cone in.
func TestSeverityTakesMore(t *testing.T) {
	for _, line := range copunctal[:2] {
		a, b := pair(0.3127, 0.3290, line.x, line.y)
		before := math.Inf(1)
		for i := range 101 {
			s := Sight{line.kind, float64(i) / 100}
			p, q := s.See(a), s.See(b)
			left := math.Hypot(p.A-q.A, p.B-q.B)
			assert.Less(t, left, before, "%v", s)
			before = left
		}
		assert.Less(t, before, 0.5, line.kind)
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
		{Sight{"protan", 0.9}, 0, [3]float64{0.203876, 0.112975, -0.005222}},
		{Sight{"protan", 0.6}, 1, [3]float64{0.769005, 0.829802, -0.02219}},
		{Sight{"deutan", 0.7}, 1, [3]float64{0.731899, 0.731012, 0.034333}},
		{Sight{"deutan", 0.8}, 2, [3]float64{-0.203881, 0.044646, 0.974421}},
		{Sight{"tritan", 0.9}, 2, [3]float64{-0.153531, 0.127074, 0.399838}},
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

// machados are the names that the published table gives the kinds.
var machados = map[string]string{"Protanomaly": "protan", "Deuteranomaly": "deutan", "Tritanomaly": "tritan"}

// machado returns the matrices of the published table by kind and tenth of severity.
func machado(t *testing.T) map[string]*[11]matrix {
	t.Helper()
	rows := sourceTable(t, "machado2009_matrices.tsv")
	require.Len(t, rows, 33)
	all := map[string]*[11]matrix{"protan": {}, "deutan": {}, "tritan": {}}
	for _, r := range rows {
		m := &all[machados[r[0]]][int(math.Round(10*decimal(t, r[1])))]
		for i, text := range r[2:] {
			m[i/3][i%3] = decimal(t, text)
		}
	}
	return all
}

func TestMachadoIsPackedRight(t *testing.T) {
	for kind, table := range machado(t) {
		assert.Equal(t, table[:10], sights[kind][:], kind)
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

// The rows of the published matrices, of all 33, add up to 1 within their last digit,
// so that grays stay.
func TestMachadosRowsSumToOne(t *testing.T) {
	for kind, table := range machado(t) {
		for i, m := range table {
			for _, row := range m {
				assert.InDelta(t, 1, row[0]+row[1]+row[2], 1.1e-6, "%s 0.%d", kind, i)
			}
		}
	}
}

func TestGraysStay(t *testing.T) {
	for _, line := range copunctal {
		for i := range 101 {
			s := Sight{line.kind, float64(i) / 100}
			for _, l := range []float64{0, 5, 50, 100} {
				assert.Less(t, DeltaE00(Lab{L: l}, s.See(Lab{L: l})), 1e-3, "%v", s)
			}
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
