package colour

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"github.com/lucasb-eyer/go-colorful"
)

// Sight is a painter's colour vision. Kind is "protan" (weak red cones), "deutan"
// (weak green), "tritan" (weak blue) or "full"; any other, such as that of the
// zero Sight, is full sight too. Severity runs from 0, as full sight, to 1, the
// one kind of cone is of no use; values outside are clamped.
type Sight struct {
	Kind     string
	Severity float64
}

// sightForm is a kind of sight, or the name of its lack or weakness, and a severity.
var sightForm = regexp.MustCompile(`^(?:(full)(?: sight)?|(?:(protan|deutan|tritan)|(prot|deuter|trit)an(?:opia|omaly))(?:[\s:]+` + digits + `)?)$`)

// sightKinds gives the kind by the stem of the names of its lack and weakness.
var sightKinds = map[string]string{"prot": "protan", "deuter": "deutan", "trit": "tritan"}

// ParseSight returns the sight written as a kind and a severity, "deutan 0.8" or
// "deutan:0.8", or "full". Deuteranopia and deuteranomaly mean deutan, and the
// other names alike; large and small letters are one.
// Severity is 1 where none is given, for an -anomaly too: the safe side, as what
// can be told apart at 1 can be at less.
// It is an error to write it otherwise or to go outside 0-1.
func ParseSight(text string) (Sight, error) {
	f := sightForm.FindStringSubmatch(strings.ToLower(strings.TrimSpace(text)))
	if f == nil {
		return Sight{}, fmt.Errorf("sight %q: not a sight; write full, protan, deutan or tritan, the last three with a severity if you know it, such as deutan 0.8", text)
	}
	if f[1] != "" {
		return Sight{Kind: "full"}, nil
	}
	s := Sight{Kind: f[2] + sightKinds[f[3]], Severity: 1}
	if f[4] != "" {
		s.Severity = toNumber(f[4])
	}
	if s.Severity > 1 {
		return Sight{}, fmt.Errorf("sight %q: severity out of range; it runs from 0, as full sight, to 1, such as deutan 0.8", text)
	}
	return s, nil
}

// String returns the sight as ParseSight reads it, "deutan 0.8" or "full sight".
func (s Sight) String() string {
	if s.isFull() {
		return "full sight"
	}
	return s.Kind + " " + strconv.FormatFloat(s.Severity, 'f', -1, 64)
}

// isFull tells whether See changes nothing.
func (s Sight) isFull() bool { return sights[s.Kind] == nil || !(s.Severity > 0) }

// See returns the colour that looks to full sight as c does to s. It may lie
// outside sRGB, as c may. Grays stay as they are.
// Source: [Machado2009]: a matrix on linear-light sRGB, at each tenth of
// severity, and straight between the tenths.
func (s Sight) See(c Lab) Lab {
	if s.isFull() {
		return c
	}
	xyz := c.XYZ()
	r, g, b := colorful.XyzToLinearRgb(xyz.X/100, xyz.Y/100, xyz.Z/100)
	seen := s.matrix().times([3]float64{r, g, b})
	x, y, z := colorful.LinearRgbToXyz(seen[0], seen[1], seen[2])
	return XYZ{100 * x, 100 * y, 100 * z}.Lab()
}

// matrix returns what s makes of linear-light sRGB; s is not full.
func (s Sight) matrix() (m matrix) {
	table := sights[s.Kind]
	tenths := 10 * min(s.Severity, 1)
	low := min(int(tenths), len(table)-2)
	t := tenths - float64(low)
	for i := range m {
		for j := range m[i] {
			a, b := table[low][i][j], table[low+1][i][j]
			m[i][j] = a + t*(b-a)
		}
	}
	return m
}
