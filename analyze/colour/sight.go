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
	if s.Full() {
		return "full sight"
	}
	return s.Kind + " " + strconv.FormatFloat(s.Severity, 'f', -1, 64)
}

// Full tells whether this is full sight: See changes nothing.
func (s Sight) Full() bool { return sights[s.Kind] == nil || !(s.Severity > 0) }

// See returns the colour that looks to full sight as c does to s. It may lie
// outside sRGB. Grays stay as they are. To a sight that is not full, c is first
// brought to the nearest light of each channel that sRGB has.
// Source: [Machado2009]: a matrix on linear-light sRGB, at each tenth of
// severity, and straight between the tenths.
// Ours, the bringing in: the matrices are for a display's light. Carried past it
// they drive a strong yellow's blue on below nothing, where Lab is steepest: two
// paints 1.8 CIEDE2000 apart to full sight were 3.4 apart to a protan, and are
// now 0.6. It costs the library's masstones up to 7.5 CIEDE2000 (indian yellow).
func (s Sight) See(c Lab) Lab {
	if s.Full() {
		return c
	}
	xyz := c.XYZ()
	r, g, b := colorful.XyzToLinearRgb(xyz.X/100, xyz.Y/100, xyz.Z/100)
	seen := s.matrix().times([3]float64{lit(r), lit(g), lit(b)})
	x, y, z := colorful.LinearRgbToXyz(seen[0], seen[1], seen[2])
	return XYZ{100 * x, 100 * y, 100 * z}.Lab()
}

// lit returns the nearest light that a display's channel gives.
func lit(channel float64) float64 { return min(max(channel, 0), 1) }

// Apart returns the CIEDE2000 between two colours to s, never more than to full
// sight: who lacks a kind of cone, or has a weak one, is told no more by the others.
// Source: [Machado2009] for what s sees; [Sharma2005].
// Ours, the bound: a matrix may turn two colours to where CIEDE2000 weighs them
// more, cobalt blue and pyrrole red from 46 to 62 to a deutan; that is a trait
// of the measure and no better sight.
func (s Sight) Apart(a, b Lab) float64 {
	full := DeltaE00(a, b)
	if s.Full() {
		return full
	}
	return min(full, DeltaE00(s.See(a), s.See(b)))
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
